import { afterAll, beforeAll, describe, it } from 'vitest'
import { makeFolder, startDesktop } from './desktop'
import type { Desktop } from './desktop'
import { copyExample, takeFromPage, writeRounds } from './written-rounds'

let desktop: Desktop
let folder: Awaited<ReturnType<typeof makeFolder>>

beforeAll(async () => {
  folder = await makeFolder()
  desktop = await startDesktop(folder.path, [await copyExample(folder.path)])
})
afterAll(async () => {
  await desktop?.close()
  await folder?.forget()
})

describe('written rounds on the desktop', () => {
  it('are pasted, marked, mended, and planned', () => writeRounds(desktop.window))

  it('come with a page whose other words are proposed, taken, left and undone by the keyboard', async () => {
    await takeFromPage(desktop.window)
    if (process.env.PICTURES) await desktop.window.screenshot({ path: `${process.env.PICTURES}/page.png` })
  })
})
