/**
 * How quickly the map follows the hand: 2,500 motifs of eight petals panned, zoomed and painted in Chromium,
 * beside a scene with one Konva node for each petal in the same run. Needs a Chromium.
 */
import { fileURLToPath } from 'node:url'
import { chromium } from 'playwright-core'
import type { Browser, Page } from 'playwright-core'
import { createServer } from 'vite'
import type { ViteDevServer } from 'vite'
import { findChromium } from '../scripts/capabilities.mjs'
import type { Bench, Frames } from './drawing-page/page'
import { spread } from './measure'
import type { Spread } from './measure'

const BENCH_MOTIFS = { columns: 50, rows: 50 } as const
/** Frames measured for each gesture. */
const FRAMES = { drawing: 180, nodes: 24 } as const
const GESTURES = ['pan', 'zoom', 'paint'] as const
type Gesture = (typeof GESTURES)[number] | 'drag'
/** Items of the panel of which one is dragged: as many as a panel may hold. */
export const BENCH_ITEMS = 500

interface GestureResult {
  readonly gesture: Gesture
  readonly drawing: { readonly script: Spread; readonly frame: Spread }
  readonly nodes: { readonly script: Spread; readonly frame: Spread }
  /** How many times better the median frame is. */
  readonly ratio: number
}

/** In the page. */
declare const bench: Bench

/** Starts the bench's page; for the bench and for looking at the drawing. Null where there is no Chromium. */
export async function openBenchPage(
  size = { width: 1280, height: 800 },
  deviceScaleFactor = 1,
): Promise<{ page: Page; close: () => Promise<void> } | null> {
  const executablePath = findChromium()
  if (!executablePath) return null
  let server: ViteDevServer | null = null
  let browser: Browser | null = null
  const close = async () => {
    await browser?.close()
    await server?.close()
  }
  try {
    server = await createServer({
      configFile: false,
      root: fileURLToPath(new URL('drawing-page', import.meta.url)),
      logLevel: 'error',
      cacheDir: fileURLToPath(new URL('../out/bench-cache', import.meta.url)),
      optimizeDeps: {
        include: ['konva', 'culori', 'flatbush', 'd3-polygon', 'clipper2-ts', 'polylabel', 'zod'],
      },
      server: { host: '127.0.0.1', port: 0, hmr: false, watch: null, fs: { strict: false } },
    })
    await server.listen()
    browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] })
    const page = await browser.newPage({ viewport: size, deviceScaleFactor })
    await page.goto(server.resolvedUrls!.local[0]!)
    await page.waitForFunction(() => 'bench' in globalThis)
    return { page, close }
  } catch (error) {
    await close()
    throw error
  }
}

/** Runs the bench; null where there is no Chromium. */
export async function benchDrawing(): Promise<GestureResult[] | null> {
  const opened = await openBenchPage()
  if (!opened) return null
  const { page, close } = opened
  try {
    const results: { drawing: Frames; nodes: Frames; gesture: Gesture }[] = []
    for (const gesture of GESTURES) {
      await page.evaluate((wish) => bench.startDrawing(wish), BENCH_MOTIFS)
      await page.waitForTimeout(1200)
      const drawing = await page.evaluate(([name, count]) => bench.gestures[name](count), [
        gesture,
        FRAMES.drawing,
      ] as const)
      await page.evaluate((wish) => bench.startNaive(wish), BENCH_MOTIFS)
      await page.waitForTimeout(1200)
      const nodes = await page.evaluate(([name, count]) => bench.naiveGestures[name](count), [
        gesture,
        FRAMES.nodes,
      ] as const)
      await page.evaluate(() => bench.stopNaive())
      results.push({ gesture, drawing, nodes })
    }
    await page.evaluate((count) => bench.startPanel(count), BENCH_ITEMS)
    await page.waitForTimeout(1200)
    const dragged = await page.evaluate((count) => bench.drag(count), FRAMES.drawing)
    await page.evaluate((count) => bench.startNaivePanel(count), BENCH_ITEMS)
    await page.waitForTimeout(1200)
    const nodes = await page.evaluate((count) => bench.naiveDrag(count), FRAMES.nodes)
    await page.evaluate(() => bench.stopNaive())
    results.push({ gesture: 'drag', drawing: dragged, nodes })
    return results.map(({ gesture, drawing, nodes }) => {
      const own = { script: spread(drawing.script), frame: spread(drawing.frame) }
      const other = { script: spread(nodes.script), frame: spread(nodes.frame) }
      return { gesture, drawing: own, nodes: other, ratio: other.frame.median / own.frame.median }
    })
  } finally {
    await close()
  }
}

/** The result as lines of text. */
function describeDrawing(results: readonly GestureResult[]): string[] {
  const ms = ({ median, p95 }: Spread) => `${median.toFixed(1)} / ${p95.toFixed(1)} ms`
  return results.flatMap(({ gesture, drawing, nodes, ratio }) => [
    `${gesture.padEnd(6)} script ${ms(drawing.script)}, frame ${ms(drawing.frame)} (median / 95th percentile)`,
    `${''.padEnd(6)} node per petal: script ${ms(nodes.script)}, frame ${ms(nodes.frame)}; frames ${ratio.toFixed(1)} times better`,
  ])
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const results = await benchDrawing()
  console.log(results ? describeDrawing(results).join('\n') : 'drawing: no Chromium here, not measured')
}
