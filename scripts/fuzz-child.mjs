/** Runs cases one after the other for `scripts/fuzz.mjs`; one that hangs or dies takes nobody with it. */
import { fileURLToPath } from 'node:url'
import { createServer, createServerModuleRunner } from 'vite'
import { phoneScript } from './phone-script.mjs'

const server = await createServer({
  root: fileURLToPath(new URL('..', import.meta.url)),
  configFile: false,
  appType: 'custom',
  logLevel: 'error',
  server: { middlewareMode: true, watch: null, hmr: false, ws: false },
  optimizeDeps: { noDiscovery: true },
  plugins: [phoneScript()],
})
const runner = createServerModuleRunner(server.environments.ssr)
const { TARGETS, drawn, runCase } = await runner.import('/tests/fuzz/targets.ts')

/** ms of processor since the process began. */
const processorTime = () => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

async function answer({ target: name, seed, only, slow: usual }) {
  const target = TARGETS.find((known) => known.name === name)
  const text = drawn(target, seed)
  const slow = target.slow ?? usual
  if (only === 'draw') return { text, took: 0, wrong: null }
  const before = processorTime()
  try {
    await runCase(target, text)
    const took = processorTime() - before
    return { text, took, wrong: null, isSlow: took > slow }
  } catch (error) {
    return { text, took: processorTime() - before, wrong: error?.stack ?? String(error) }
  }
}

process.on('message', async (asked) => {
  const told = await answer(asked)
  // A text is long: it is handed over only where it is to be kept.
  const isKept = told.wrong !== null || told.isSlow || asked.only === 'draw'
  process.send({ ...told, text: isKept ? told.text : '' })
})
process.send({ targets: TARGETS.map(({ name, perRound }) => ({ name, perRound })) })
