/** A computer that has no luck, in a browser: nothing can be written. */
import { readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Browser, BrowserContext } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest'
import { eventually, titleOf } from '../src-main/documents/session/world'
import type { Loopback } from './browser'
import { startChromium, startLoopback } from './browser'
import { makeFolder } from './desktop'

let browser: Browser
let context: BrowserContext
let folder: Awaited<ReturnType<typeof makeFolder>>
let loopback: Loopback | null = null

beforeAll(async () => {
  browser = await startChromium()
})
afterAll(() => browser?.close())
beforeEach(async () => {
  folder = await makeFolder()
  context = await browser.newContext()
})
afterEach(async () => {
  await context.close()
  await loopback?.kill()
  loopback = null
  await folder.forget()
})

it('without any folder it opens, says so, hands out copies, and keeps what it has when it can', async () => {
  for (const name of ['projects', 'saved']) await writeFile(join(folder.path, name), '')
  loopback = await startLoopback(folder.path)
  const page = await context.newPage()
  await page.goto(await loopback.nextAddress())
  const header = page.locator('header .kept')
  await eventually(async () => expect(await header.innerText()).toBe('changes cannot be kept'))
  expect(loopback.said()).toContain('cannot be written: a file has the name of its folder.')

  const title = page.getByRole('textbox', { name: 'Title' })
  await title.fill('In memory')
  await title.press('Enter')
  await eventually(async () => expect(await header.innerText()).toBe('not saved, only in memory'))

  await page.keyboard.press('Control+s')
  const refusal = page.getByRole('alert').filter({ hasText: 'In memory could not be written' })
  await eventually(async () =>
    expect(await refusal.innerText()).toContain('a file has the name of its folder'),
  )
  const downloaded = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save it elsewhere' }).click()
  expect(titleOf(await readFile(await (await downloaded).path(), 'utf8'))).toBe('In memory')

  // Closing the tab asks first: nothing of it is on a disk.
  const asked = page.waitForEvent('dialog')
  await page.close({ runBeforeUnload: true })
  const dialog = await asked
  expect(dialog.type()).toBe('beforeunload')
  await dialog.dismiss()

  await rm(join(folder.path, 'projects'))
  await eventually(async () => expect(await header.innerText()).toBe('kept in the app a moment ago'))
  const kept = join(folder.path, 'projects', 'kept')
  const [name] = await readdir(kept)
  expect(JSON.parse(await readFile(join(kept, name ?? ''), 'utf8'))).toMatchObject({ title: 'In memory' })
}, 60_000)
