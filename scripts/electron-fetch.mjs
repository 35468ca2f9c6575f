/** Fetches the Electron binary with the package's own installer, telling how far it is, not waiting for ever. */
import { spawn } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { root } from './fresh-build.mjs'

/** A download without a byte is given up after this time. */
export const PATIENCE_MS = 20_000
const LOOK_EVERY_MS = 500

/** Bytes in a folder so far; files that vanish meanwhile count nothing. */
function sizeOf(folder) {
  let bytes = 0
  let names
  try {
    names = readdirSync(folder, { recursive: true })
  } catch {
    return 0
  }
  for (const name of names) bytes += statSync(join(folder, name), { throwIfNoEntry: false })?.size ?? 0
  return bytes
}

/** Null when the binary is there now, else why not, in a few words. `tell` is told of the progress. */
export async function fetchElectron(tell, { patience = PATIENCE_MS, installer } = {}) {
  const electron = join(root, 'node_modules', 'electron')
  const script = installer ?? join(electron, 'install.js')
  if (!existsSync(script)) return 'its package is not installed; run npm ci'
  const workshop = mkdtempSync(join(tmpdir(), 'petalyard-electron-'))
  try {
    const child = spawn(process.execPath, [script], {
      stdio: ['ignore', 'ignore', 'pipe'],
      // The installer downloads into the temporary folder: one of our own, so that its bytes can be counted.
      env: { ...process.env, TMPDIR: workshop, TMP: workshop, TEMP: workshop, ELECTRON_GET_NO_PROGRESS: '1' },
    })
    let said = ''
    child.stderr.on('data', (data) => (said += data))
    let isGivenUp = false
    let bytes = 0
    let changedAt = Date.now()
    const look = setInterval(() => {
      const now = sizeOf(workshop) + sizeOf(join(electron, 'dist'))
      if (now !== bytes) {
        bytes = now
        changedAt = Date.now()
        tell(`Fetching Electron: ${(bytes / 1e6).toFixed(0)} MB so far`)
      } else if (Date.now() - changedAt >= patience) {
        isGivenUp = true
        child.kill('SIGKILL')
      }
    }, LOOK_EVERY_MS)
    const code = await new Promise((resolve) => {
      child.on('error', () => resolve(1))
      child.on('close', resolve)
    })
    clearInterval(look)
    if (code === 0) return null
    if (isGivenUp) return `nothing came for ${patience / 1000} s`
    return reasonFrom(said)
  } finally {
    rmSync(workshop, { recursive: true, force: true })
  }
}

function reasonFrom(said) {
  const first = said.split('\n').find((line) => /error/i.test(line)) ?? ''
  const reason = first.replace(/^\s*(\w*Error|Error):\s*/i, '').trim()
  return reason === '' || reason === 'fetch failed' ? 'its download cannot be reached' : reason
}
