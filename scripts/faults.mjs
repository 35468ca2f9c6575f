/**
 * `npm run faults -- --times 100`: what docs/faults.md names that goes by luck, many times over: saves that fail and are
 * killed, locks, clocks, and the desktop killed while somebody edits. Not part of `npm test`, which does each of them
 * once. `--part files` or `--part kills` does one of the two.
 */
import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { findElectron, findVirtualDisplay, hasDisplay } from './capabilities.mjs'
import { root } from './fresh-build.mjs'

const FILES = [
  'save',
  'regular-file',
  'session/session',
  'session/kept',
  'session/file-locks',
  'session/own-folder',
  'session/clock',
  'session/killed',
].map((name) => `tests/src-main/documents/${name}.test.ts`)
const KILLS = 'tests/stories/recovery.desktop.test.ts'

const { values } = parseArgs({
  options: { times: { type: 'string', default: '100' }, part: { type: 'string' } },
})
const times = Number(values.times)
const gone = [...FILES, KILLS].filter((file) => !existsSync(join(root, file)))
if (gone.length > 0 || !(times >= 1)) {
  console.error(gone.length > 0 ? `faults: there is no ${gone.join(', ')}` : 'faults: --times is a number')
  process.exit(2)
}

let lost = 0

/** Runs tests; what fails is shown whole. */
function run(what, words, before = [], env = {}) {
  const [program, ...rest] = [...before, join(root, 'node_modules', '.bin', 'vitest'), 'run', ...words]
  const told = spawnSync(program, rest, {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 2 ** 26,
    env: { ...process.env, ...env },
  })
  if (told.status === 0) return
  lost++
  console.log(`✗ ${what}\n${told.stdout}${told.stderr}`)
}

if (values.part !== 'kills') {
  const startedAt = Date.now()
  for (let time = 1; time <= times; time++) {
    run(`time ${time}`, ['--project', 'main', ...FILES])
    if (time % 10 === 0)
      console.log(`${time} times, ${lost} failed (${Math.round((Date.now() - startedAt) / 1000)} s)`)
  }
}
if (values.part !== 'files') {
  const display = hasDisplay() ? null : findVirtualDisplay()
  if (!findElectron() || (!hasDisplay() && !display)) {
    console.log('Left out: kills of the desktop: there is no Electron or no display')
  } else {
    const before = display ? [display, '-a', '-s', '-screen 0 1920x1080x24'] : []
    run('kills', ['--project', 'stories', KILLS], before, { PETALYARD_KILLS: String(times) })
    console.log(`killed ${times} times in each place, ${lost} failed`)
  }
}
process.exit(lost > 0 ? 1 : 0)
