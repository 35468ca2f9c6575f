/**
 * `npm run fuzz -- --minutes 10`: hostile input for as long as one likes, by one process at work and one that watches
 * it. `--target NAME` for one kind, `--seed N` to begin elsewhere, `--case NAME:SEED` for a single one. What is found
 * is told with its seed, and its text is kept in `out/fuzz`.
 */
import { fork } from 'node:child_process'
import { mkdirSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'

/** ms of the clock for one case before it counts as hanging; a busy machine takes several times as long as a still one. */
const PATIENCE = 60_000
/** ms of processor: what takes longer is told as slow, unless its target grants it more. */
const SLOW = 8_000

const { values } = parseArgs({
  options: {
    minutes: { type: 'string', default: '10' },
    seed: { type: 'string', default: String(Date.now() % 1e9) },
    target: { type: 'string', multiple: true },
    case: { type: 'string' },
  },
})

const root = fileURLToPath(new URL('..', import.meta.url))
const kept = `${root}out/fuzz`

let child = null

async function started() {
  const starting = fork(`${root}scripts/fuzz-child.mjs`, { execArgv: ['--max-old-space-size=2048'] })
  const { targets } = await new Promise((resolve, reject) => {
    starting.once('message', resolve)
    starting.once('exit', () => reject(new Error('the process that runs the cases does not start')))
  })
  starting.removeAllListeners()
  return { process: starting, targets }
}

/** How a case ended; a process that hangs or dies is ended, and the next case gets another. */
async function ask(asked) {
  child ??= await started()
  const running = child.process
  return new Promise((resolve) => {
    const end = (told) => {
      clearTimeout(timer)
      running.removeAllListeners()
      resolve(told)
    }
    const lost = (wrong) => {
      running.kill('SIGKILL')
      child = null
      end({ text: null, took: PATIENCE, wrong })
    }
    const timer = setTimeout(() => lost('hangs'), PATIENCE)
    running.once('message', end)
    running.once('exit', (code, signal) => lost(`the process ended (${code ?? signal})`))
    running.send({ ...asked, slow: SLOW })
  })
}

const tally = new Map()
let found = 0

async function tell(name, seed) {
  const { text, took, wrong, isSlow = false } = await ask({ target: name, seed })
  const row = tally.get(name) ?? { cases: 0, wrong: 0, slow: 0, longest: 0 }
  tally.set(name, row)
  row.cases++
  row.longest = Math.max(row.longest, took)
  if (wrong === null && !isSlow) return
  row[wrong === null ? 'slow' : 'wrong']++
  found++
  mkdirSync(kept, { recursive: true })
  const drawn = text ?? (await ask({ target: name, seed, only: 'draw' })).text
  writeFileSync(`${kept}/${name}-${seed}.txt`, drawn)
  console.log(`✗ ${name}:${seed} ${wrong ?? `takes ${Math.round(took)} ms of processor`}`)
}

child = await started()
if (values.case) {
  const [name, seed] = values.case.split(':')
  await tell(name, Number(seed))
} else {
  const ends = Date.now() + Number(values.minutes) * 60_000
  const chosen = child.targets.filter(({ name }) => values.target?.includes(name) ?? true)
  let seed = Number(values.seed)
  while (Date.now() < ends)
    for (const { name, perRound } of chosen)
      for (let times = 0; times < perRound && Date.now() < ends; times++) await tell(name, seed++)
  console.log(`last seed ${seed}`)
}

child?.process.kill()
for (const [name, { cases, wrong, slow, longest }] of tally)
  console.log(`${name}: ${cases} cases, ${wrong} wrong, ${slow} slow, the longest ${Math.round(longest)} ms`)
console.log(`${found} found`)
process.exit(found > 0 ? 1 : 0)
