/** What nobody means to type, or to open, on the desktop. */
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import type { Desktop } from './desktop'
import { makeFolder, startDesktop } from './desktop'
import {
  harmKept,
  isThereAgain,
  oddFile,
  offersWaysOn,
  showsOddFile,
  typeNonsense,
  writtenFile,
} from './hostile'
import { eventually } from '../src-main/documents/session/world'

let folder: Awaited<ReturnType<typeof makeFolder>>
let desktop: Desktop | null = null

beforeEach(async () => {
  folder = await makeFolder()
})
afterEach(async () => {
  await desktop?.kill()
  desktop = null
  await folder.forget()
})

it('whatever is typed leaves the project open; it opens again, and odd numbers in a file do too', async () => {
  const own = join(folder.path, 'own')
  desktop = await startDesktop(own, [await writtenFile(folder.path)])
  await typeNonsense(desktop.window)
  await desktop.kill()
  desktop = await startDesktop(own)
  await isThereAgain(desktop.window)
  await desktop.kill()
  desktop = await startDesktop(join(folder.path, 'other'), [await oddFile(folder.path)])
  await showsOddFile(desktop.window)
}, 120_000)

it('a kept project that cannot be read is offered with its text, beside every other way on', async () => {
  desktop = await startDesktop(folder.path)
  const title = desktop.window.getByRole('textbox', { name: 'Title' })
  await title.fill('Kept')
  await title.press('Enter')
  const header = desktop.window.locator('header .kept')
  await eventually(async () => expect(await header.innerText()).toMatch(/kept in the app/))
  await desktop.kill()
  const text = await harmKept(folder.path)
  desktop = await startDesktop(folder.path)
  await offersWaysOn(desktop.window, text)
  const path = join(folder.path, 'copy.petalyard')
  await desktop.app.evaluate(({ dialog }, filePath) => {
    dialog.showSaveDialog = (async () => ({ canceled: false, filePath })) as never
  }, path)
  await desktop.window.getByRole('button', { name: 'Save a copy', exact: true }).click()
  await eventually(async () => expect(await readFile(path, 'utf8')).toBe(text))
}, 120_000)
