/**
 * What this machine can run beyond plain Node. Test files say in their names what they need:
 * `map.pdf.test.ts` the PDF tools, `window.browser.test.ts` Chromium, `start.desktop.test.ts` Electron,
 * `packed.package.test.ts` a packed program.
 */
import { accessSync, constants, readFileSync } from 'node:fs'
import { delimiter, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { whyNotPacked } from './dist-program.mjs'

const root = fileURLToPath(new URL('..', import.meta.url))

/** Path of the first of these programs that can be run, or null. */
function findProgram(...names) {
  for (const name of names)
    for (const folder of (process.env.PATH ?? '').split(delimiter)) {
      const path = join(folder, name)
      if (isProgram(path)) return path
    }
  return null
}

function isProgram(path) {
  try {
    accessSync(path, constants.X_OK)
    return true
  } catch {
    return false
  }
}

/** Path of the Electron binary, without asking the package: that would fetch it. */
export function findElectron() {
  const name =
    { darwin: 'Electron.app/Contents/MacOS/Electron', win32: 'electron.exe' }[process.platform] ?? 'electron'
  const own = process.env.ELECTRON_OVERRIDE_DIST_PATH
  if (own) return isProgram(join(own, name)) ? join(own, name) : null
  const packaged = join(root, 'node_modules', 'electron')
  try {
    const path = join(packaged, 'dist', readFileSync(join(packaged, 'path.txt'), 'utf8').trim())
    return isProgram(path) ? path : null
  } catch {
    return null
  }
}

/** Path of a Chromium (`PETALYARD_CHROMIUM` names another one), or null. */
export function findChromium() {
  const own = process.env.PETALYARD_CHROMIUM
  if (own) return isProgram(own) ? own : null
  return findProgram('chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable')
}

/** Whether windows can be opened: on a display, or on a virtual one that is at hand. */
export const hasDisplay = () =>
  process.platform !== 'linux' || Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY)
export const findVirtualDisplay = () => findProgram('xvfb-run')

const NO_DISPLAY = 'there is neither a display nor xvfb-run'
const PDF_TOOLS = ['qpdf', 'pdftoppm', 'pdftotext', 'pdffonts']

/** Each need with the reason why this machine cannot meet it, or null where it can. */
export function missingCapabilities() {
  const tools = PDF_TOOLS.filter((name) => !findProgram(name))
  const desktop = !findElectron()
    ? 'there is no Electron binary (ELECTRON_OVERRIDE_DIST_PATH can name its folder)'
    : !hasDisplay() && !findVirtualDisplay()
      ? NO_DISPLAY
      : null
  return {
    desktop,
    package: whyNotPacked() ?? (hasDisplay() || findVirtualDisplay() ? null : NO_DISPLAY),
    browser: findChromium() ? null : 'there is no Chromium (PETALYARD_CHROMIUM can name one)',
    pdf: tools.length === 0 ? null : `there is no ${tools.join(', ')}`,
  }
}
