/** Ctrl and +, − and 0 as everywhere: text and buttons grow, stay so at the next start, and a small window holds. */
import { afterAll, beforeAll, expect, it } from 'vitest'
import { eventually } from '../src-main/documents/session/world'
import type { Desktop } from './desktop'
import { makeFolder, startDesktop } from './desktop'

let folder: Awaited<ReturnType<typeof makeFolder>>
let desktop: Desktop

beforeAll(async () => {
  folder = await makeFolder()
  desktop = await startDesktop(folder.path)
  // The window hears the menu once it shows something.
  await desktop.window.getByRole('application').waitFor()
})
afterAll(async () => {
  await desktop?.close()
  await folder?.forget()
})

const choose = (id: string) =>
  desktop.app.evaluate(({ Menu }, item) => Menu.getApplicationMenu()?.getMenuItemById(item)?.click(), id)
const factor = () =>
  desktop.app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]!.webContents.getZoomFactor())
const isAt = (share: number) => eventually(async () => expect(await factor()).toBeCloseTo(share, 3))

it('grows and shrinks in steps, back to the usual size, and from the settings', async () => {
  await isAt(1)
  await choose('larger')
  await isAt(1.1)
  await choose('larger')
  await isAt(1.25)
  await choose('smaller')
  await isAt(1.1)
  await choose('usual-size')
  await isAt(1)
  await choose('settings')
  await desktop.window.getByRole('combobox', { name: 'Text size' }).selectOption('200')
  await isAt(2)
  await desktop.window.getByRole('button', { name: 'Close', exact: true }).click()
})

it('holds at 200 % in the smallest window: nothing is cut at the side, the drawing can be worked on, and is sharp', async () => {
  await desktop.app.evaluate(({ BrowserWindow }) => {
    const window = BrowserWindow.getAllWindows()[0]!
    window.unmaximize()
    window.setSize(...(window.getMinimumSize() as [number, number]))
  })
  const page = desktop.window
  await eventually(async () => expect(await page.evaluate(() => innerWidth)).toBeLessThanOrEqual(440))
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0)
  const map = page.getByRole('application')
  const { width, height } = (await map.boundingBox())!
  expect(width).toBeGreaterThanOrEqual(400)
  expect(height).toBeGreaterThanOrEqual((await page.evaluate(() => innerHeight)) / 2)
  const canvas = page.locator('.stage canvas').first()
  await eventually(async () => {
    const [drawn, shown] = await canvas.evaluate((node) => [
      (node as HTMLCanvasElement).width,
      node.getBoundingClientRect().width,
    ])
    expect(drawn! / shown!).toBeCloseTo(await page.evaluate(() => devicePixelRatio), 1)
  })
  for (const name of ['Motif', 'Yarn', 'Paper'] as const) {
    await page.getByRole('navigation', { name: 'Places of the job' }).getByRole('button', { name }).click()
    await page.getByRole('heading', { name, level: 2 }).waitFor()
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
      0,
    )
  }
})

it('is there again at the next start', async () => {
  await desktop.close()
  desktop = await startDesktop(folder.path)
  await desktop.window.getByRole('heading', { level: 1 }).waitFor({ state: 'attached' })
  await isAt(2)
})
