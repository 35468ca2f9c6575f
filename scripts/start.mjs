#!/usr/bin/env node
/**
 * `npm start`: builds what is missing and opens the window. On the desktop where Electron and a display can be
 * had, else in the default browser. `npm start -- throw.petalyard` opens a project.
 */
import { spawn } from 'node:child_process'
import { join, resolve } from 'node:path'
import { findElectron, hasDisplay } from './capabilities.mjs'
import { fetchElectron } from './electron-fetch.mjs'
import { root } from './fresh-build.mjs'
import { buildDesktop, buildWindow } from './window-build.mjs'

/** A desktop that ends with an error so soon never showed its window (ms). */
const TOO_SOON_MS = 5_000

const asked = process.argv.slice(2)
if (asked.some((word) => word === '--help' || word === '-h')) {
  console.log(
    `npm start                     opens the window, on the desktop or in the browser
npm start -- FILE...          opens projects in it
npm start -- --help           shows this

What is missing is built first. The command line has its own help:
node scripts/petalyard.mjs --help`,
  )
  process.exit(0)
}
const unknown = asked.find((word) => word.startsWith('-'))
if (unknown !== undefined) {
  console.error(`npm start does not know '${unknown}'. npm start -- --help shows what it knows.`)
  process.exit(2)
}

// `npm run` changes into the project's folder; files are meant from where it was called.
const files = asked.map((file) => resolve(process.env.INIT_CWD ?? process.cwd(), file))

/** Runs a program in our place: same terminal, same signals. Resolves with its exit code. */
function become(program, words, how = {}) {
  return new Promise((done) => {
    const child = spawn(program, words, { stdio: 'inherit', cwd: root, ...how })
    const pass = (signal) => child.kill(signal)
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, pass)
    child.on('error', () => done(1))
    child.on('exit', (code, signal) => {
      for (const each of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.off(each, pass)
      done(code ?? (signal === 'SIGINT' || signal === 'SIGTERM' ? 0 : 1))
    })
  })
}

/** Null when the desktop window was open and is closed, else why it could not be opened. */
async function runDesktop() {
  if (!hasDisplay()) return 'There is no display here'
  let electron = findElectron()
  if (!electron && process.env.ELECTRON_OVERRIDE_DIST_PATH)
    return 'There is no Electron in ELECTRON_OVERRIDE_DIST_PATH'
  if (!electron) {
    const isTerminal = process.stdout.isTTY
    const reason = await fetchElectron((line) => isTerminal && process.stdout.write(`\r${line}`))
    if (isTerminal) process.stdout.write('\r')
    if (reason !== null) return `Electron could not be fetched (${reason})`
    electron = findElectron()
    if (!electron) return 'Electron was fetched, but its program is not there'
  }
  const startedAt = Date.now()
  const code = await become(electron, [root, ...files], { stdio: ['ignore', 'inherit', 'ignore'] })
  if (code !== 0 && Date.now() - startedAt < TOO_SOON_MS) return 'Electron does not run on this machine'
  process.exitCode = code
  return null
}

try {
  if (await buildWindow()) console.log('Built the window.')
  if (await buildDesktop()) console.log('Built what stands behind it.')
  const reason = await runDesktop()
  if (reason !== null) {
    console.log(`${reason}, so Petalyard opens in your browser instead.`)
    process.exitCode = await become(process.execPath, [join(root, 'out', 'main', 'browser.cjs'), ...files])
  }
} catch (error) {
  console.error(`petalyard could not start: ${error instanceof Error ? error.message : error}`)
  process.exitCode = 1
}
