/** A computer that has no luck: the program's own folder cannot be written. */
import { readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { eventually, titleOf } from '../src-main/documents/session/world'
import { desktopAnew } from './anew'
import { answerSave, startDesktop } from './desktop'

const story = desktopAnew()

it('without a folder of its own it opens, says so, saves elsewhere, and keeps again when it can', async () => {
  // A file in the folder's place: not even the lock can be written there, as root or not.
  const own = join(story.folder.path, 'own')
  await writeFile(own, '')
  story.desktop = await startDesktop(own)
  const page = story.desktop.window
  const header = page.locator('header .kept')
  const banner = page.getByRole('alert').filter({ hasText: "The program's own folder" })
  await eventually(async () => expect(await header.innerText()).toBe('changes cannot be kept'))
  expect(await banner.innerText()).toContain(`${own}/projects, cannot be written:`)

  const title = page.getByRole('textbox', { name: 'Title' })
  await title.fill('In memory')
  await title.press('Enter')
  await eventually(async () => expect(await header.innerText()).toBe('not saved, only in memory'))
  // One line says it, not one for each change.
  expect(await page.getByRole('alert').count()).toBe(1)

  const path = join(story.folder.path, 'elsewhere.petalyard')
  await answerSave(story.desktop, path)
  await page.getByRole('button', { name: 'Save it elsewhere' }).click()
  await eventually(async () => expect(await header.innerText()).toBe('saved a moment ago'))
  expect(titleOf(await readFile(path, 'utf8'))).toBe('In memory')

  // Its file goes on being saved, whatever the own folder does.
  await title.fill('In the file')
  await title.press('Enter')
  await eventually(async () => expect(titleOf(await readFile(path, 'utf8'))).toBe('In the file'))

  await rm(own)
  await eventually(async () => expect(await page.getByRole('alert').count()).toBe(0))
  expect(await readdir(join(own, 'projects'))).toContain('settings.json')
  await story.desktop.close()
  story.desktop = null
}, 60_000)
