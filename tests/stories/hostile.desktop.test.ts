/** What nobody means to type, or to open, on the desktop. */
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { desktopAnew } from './anew'
import { answerSave, startDesktop } from './desktop'
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

const story = desktopAnew()

it('whatever is typed leaves the project open; it opens again, and odd numbers in a file do too', async () => {
  const own = join(story.folder.path, 'own')
  story.desktop = await startDesktop(own, [await writtenFile(story.folder.path)])
  await typeNonsense(story.desktop.window)
  await story.desktop.kill()
  story.desktop = await startDesktop(own)
  await isThereAgain(story.desktop.window)
  await story.desktop.kill()
  story.desktop = await startDesktop(join(story.folder.path, 'other'), [await oddFile(story.folder.path)])
  await showsOddFile(story.desktop.window)
}, 120_000)

it('a kept project that cannot be read is offered with its text, beside every other way on', async () => {
  story.desktop = await startDesktop(story.folder.path)
  const title = story.desktop.window.getByRole('textbox', { name: 'Title' })
  await title.fill('Kept')
  await title.press('Enter')
  const header = story.desktop.window.locator('header .kept')
  await eventually(async () => expect(await header.innerText()).toMatch(/kept in the app/))
  await story.desktop.kill()
  const text = await harmKept(story.folder.path)
  story.desktop = await startDesktop(story.folder.path)
  await offersWaysOn(story.desktop.window, text)
  const path = join(story.folder.path, 'copy.petalyard')
  await answerSave(story.desktop, path)
  await story.desktop.window.getByRole('button', { name: 'Save a copy', exact: true }).click()
  await eventually(async () => expect(await readFile(path, 'utf8')).toBe(text))
}, 120_000)
