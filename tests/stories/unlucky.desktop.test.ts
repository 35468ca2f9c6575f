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

it('a window whose page crashes has the project again, over and over', async () => {
  story.desktop = await startDesktop(story.folder.path)
  const { app, window } = story.desktop
  const title = window.getByRole('textbox', { name: 'Title' })
  await title.fill('Through the crash')
  await title.press('Enter')
  await eventually(async () =>
    expect(await window.locator('header .kept').innerText()).toMatch(/kept in the app/),
  )
  // Not by the driver's page, which is lost with the first crash.
  const titleShown = () =>
    app.evaluate(({ BrowserWindow }) =>
      BrowserWindow.getAllWindows()[0]!.webContents.executeJavaScript(
        `document.querySelector('header input')?.value ?? null`,
      ),
    ) as Promise<string | null>
  await eventually(async () => expect(await titleShown()).toBe('Through the crash'))
  for (let crash = 1; crash <= 3; crash++) {
    // What crashes while it opens a project is not tried a third time; what a page noted reaches the disk a little later.
    await new Promise((resolve) => setTimeout(resolve, 2_000))
    const before = await app.evaluate(({ BrowserWindow }) => {
      const { webContents } = BrowserWindow.getAllWindows()[0]!
      const process = webContents.getOSProcessId()
      webContents.forcefullyCrashRenderer()
      return process
    })
    await eventually(async () => {
      const now = await app.evaluate(({ BrowserWindow }) =>
        BrowserWindow.getAllWindows()[0]!.webContents.getOSProcessId(),
      )
      expect([crash, now === before || now === 0]).toEqual([crash, false])
      expect([crash, await titleShown()]).toEqual([crash, 'Through the crash'])
    })
  }
}, 60_000)
