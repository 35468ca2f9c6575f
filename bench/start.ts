/**
 * From the start of the program to its first drawing, against an Electron that shows an empty page, in turns. Needs an
 * Electron and a display (`xvfb-run`).
 */
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { _electron } from 'playwright-core'
import type { Page } from 'playwright-core'
import { findElectron, hasDisplay } from '../scripts/capabilities.mjs'
import { build, projectRoot } from '../tests/stories/desktop'
import { blanketProject } from './engine'
import { milliseconds } from './measure'
import type { Row } from './measure'

/** Starts of each; the best counts, after one that is not timed. */
const STARTS = 5
/** How much longer than an empty page at most: from the first measurement, so that it grows no further. */
const MOST = 5

const EMPTY_MAIN = `const { app, BrowserWindow } = require('electron')
app.whenReady().then(() => {
  const window = new BrowserWindow({ width: 1366, height: 820, show: false })
  window.once('ready-to-show', () => window.show())
  window.loadFile('index.html')
})
app.on('window-all-closed', () => app.quit())
`

/** ms until `isDrawn` and one more frame. */
async function start(
  executablePath: string,
  words: readonly string[],
  isDrawn: (page: Page) => Promise<unknown>,
): Promise<number> {
  const from = performance.now()
  const app = await _electron.launch({ executablePath, args: [...words, '--no-sandbox'] })
  try {
    const page = await app.firstWindow()
    await isDrawn(page)
    await page.evaluate(() => new Promise((seen) => requestAnimationFrame(() => setTimeout(seen))))
    return performance.now() - from
  } finally {
    await app.close()
  }
}

/** Something of the map is on its canvas: it has more than one colour. */
const mapIsDrawn = (page: Page) =>
  page.waitForFunction(() =>
    [...document.querySelectorAll('canvas')].some((canvas) => {
      const { width, height } = canvas
      const pixels =
        width * height > 0 ? canvas.getContext('2d')?.getImageData(0, 0, width, height).data : null
      return pixels?.some((value, at) => at % 4 === 3 && value > 0 && value !== pixels[3])
    }),
  )

/** Null where there is no Electron or no display. */
export async function benchStart(): Promise<Row[] | null> {
  const electron = findElectron()
  if (!electron || !hasDisplay()) return null
  await build()
  const folder = await mkdtemp(join(tmpdir(), 'petalyard-bench-'))
  try {
    const empty = join(folder, 'empty')
    await mkdir(empty)
    await writeFile(join(empty, 'package.json'), '{ "name": "empty", "main": "main.js" }')
    await writeFile(join(empty, 'main.js'), EMPTY_MAIN)
    await writeFile(join(empty, 'index.html'), '<!doctype html><title>Empty</title><p>Empty</p>')
    const file = join(folder, 'Start.petalyard')
    await writeFile(file, JSON.stringify(blanketProject(20, 15)))
    let [ours, theirs] = [Infinity, Infinity]
    for (let time = 0; time <= STARTS; time++) {
      const data = (name: string) => `--user-data-dir=${join(folder, `${name}-${time}`)}`
      const one = await start(electron, [empty, data('empty')], (page) => page.locator('p').waitFor())
      const other = await start(electron, [projectRoot, data('ours'), file], mapIsDrawn)
      // What the machine has read once stands ready for every later start.
      if (time > 0) [theirs, ours] = [Math.min(theirs, one), Math.min(ours, other)]
    }
    const ratio = ours / theirs
    return [
      {
        what: 'start to first drawing, 300 motifs, against an empty page',
        ours: milliseconds(ours),
        baseline: milliseconds(theirs),
        ratio: `${ratio.toFixed(2)} ×`,
        wanted: `≤ ${MOST} ×`,
        met: ratio <= MOST,
      },
    ]
  } finally {
    await rm(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 })
  }
}
