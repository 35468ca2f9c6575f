/** Print on the desktop: the system's dialog gets the pages of the PDF, and says what became of them. */
import { copyFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readPdf } from '../src-main/paper/read-pdf'
import type { Desktop } from './desktop'
import { makeFolder, projectRoot, startDesktop } from './desktop'
import { Hands } from './hands'

let folder: Awaited<ReturnType<typeof makeFolder>>
let desktop: Desktop

beforeAll(async () => {
  folder = await makeFolder()
  // A copy: what is changed is saved.
  const file = join(folder.path, 'quince-wreath-cushion.petalyard')
  await copyFile(join(projectRoot, 'examples', 'quince-wreath-cushion.petalyard'), file)
  desktop = await startDesktop(folder.path, [file])
  await desktop.window.getByRole('application').waitFor()
})
afterAll(async () => {
  await desktop?.close()
  await folder?.forget()
})

/** The dialog answers as a person would, after the sheets were printed to a file. */
const answer = (isDone: boolean, reason: string): Promise<void> =>
  desktop.app.evaluate(
    ({ BrowserWindow }, how) => {
      const { webContents } = BrowserWindow.getAllWindows()[0]!
      const seen = globalThis as unknown as { sheets: string; options: unknown }
      webContents.print = (options, closed) => {
        seen.options = options
        void webContents
          .printToPDF({ preferCSSPageSize: true })
          .then((bytes) => (seen.sheets = bytes.toString('base64')))
          .then(() => closed?.(how.isDone, how.reason))
      }
    },
    { isDone, reason },
  )

describe('print on the desktop', () => {
  it('opens the dialog of the system by menu and by button, and tells how it was closed', async () => {
    const { app, window } = desktop
    await answer(true, '')
    await app.evaluate(({ Menu }) => Menu.getApplicationMenu()!.getMenuItemById('print')!.click())
    const told = window.getByText(/^Sent to print: \d+ pages\.$/)
    await told.waitFor({ timeout: 20_000 })
    const { sheets, options } = await app.evaluate(
      () => globalThis as unknown as { sheets: string; options: unknown },
    )
    expect(options).toMatchObject({ silent: false, scaleFactor: 100, margins: { marginType: 'none' } })
    const bytes = Buffer.from(sheets, 'base64')
    const printed = await readPdf(new Uint8Array(bytes))
    expect(await told.textContent()).toBe(`Sent to print: ${printed.pages.length} pages.`)
    for (const sheet of printed.pages) {
      expect(Math.min(sheet.width, sheet.height)).toBeCloseTo(210, 0)
      expect(Math.max(sheet.width, sheet.height)).toBeCloseTo(297, 0)
    }

    const hands = new Hands(window)
    await answer(false, 'Print job canceled')
    await hands.press('Print the template…')
    await window.getByText('Nothing was printed.').waitFor({ timeout: 20_000 })
    await answer(false, 'No printers available on the network')
    await hands.press('Print the template…')
    await window.getByText(/^Nothing was printed: no printer was found\..*export the pages as PDF/).waitFor({
      timeout: 20_000,
    })
  })
})
