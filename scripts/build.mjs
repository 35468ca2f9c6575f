/**
 * Builds everything (`npm run build`): the window, what stands behind it (the desktop's main process, its
 * preload, the loopback server) and the command line. With names it builds those alone:
 * `npm run build -- window desktop command`.
 */
import { buildCommand } from './command-build.mjs'
import { buildDesktop, buildWindow } from './window-build.mjs'

const TARGETS = { window: buildWindow, desktop: buildDesktop, command: buildCommand }

const wished = process.argv.slice(2)
const unknown = wished.filter((name) => !(name in TARGETS))
if (unknown.length > 0) {
  console.error(`build: no target ${unknown.join(', ')}; there are ${Object.keys(TARGETS).join(', ')}`)
  process.exit(2)
}
for (const name of wished.length > 0 ? wished : Object.keys(TARGETS)) {
  const start = performance.now()
  try {
    await TARGETS[name]()
  } catch (error) {
    console.error(`build: ${name} failed: ${error instanceof Error ? error.message : error}`)
    process.exit(1)
  }
  console.log(`built ${name} in ${Math.round(performance.now() - start)} ms`)
}
