/** A computer that has no luck, in a browser: nothing can be written. */
import { readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { eventually, titleOf } from '../src-main/documents/session/world'
import { browserAnew } from './anew'
import { startLoopback } from './browser'

const story = browserAnew()

it('without any folder it opens, says so, hands out copies, and keeps what it has when it can', async () => {
  for (const name of ['projects', 'saved']) await writeFile(join(story.folder.path, name), '')
  story.loopback = await startLoopback(story.folder.path)
  const page = await story.context.newPage()
  await page.goto(await story.loopback.nextAddress())
  const header = page.locator('header .kept')
  await eventually(async () => expect(await header.innerText()).toBe('changes cannot be kept'))
  expect(story.loopback.said()).toContain('cannot be written: a file has the name of its folder.')

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

  await rm(join(story.folder.path, 'projects'))
  await eventually(async () => expect(await header.innerText()).toBe('kept in the app a moment ago'))
  const kept = join(story.folder.path, 'projects', 'kept')
  const [name] = await readdir(kept)
  expect(JSON.parse(await readFile(join(kept, name ?? ''), 'utf8'))).toMatchObject({ title: 'In memory' })
}, 60_000)

it('where nobody answers, every tab says so, hands out a copy, and hands over what it has when somebody does', async () => {
  story.loopback = await startLoopback(story.folder.path)
  const first = await newTab(await story.loopback.nextAddress())
  const second = await newTab(new URL('/', first.url()).href)
  await entitle(first, 'Before')
  await eventually(async () => expect(await keptWords(first)).toBe('kept in the app a moment ago'))

  await story.context.setOffline(true)
  await entitle(first, 'Meanwhile')
  await entitle(second, 'Beside it')
  for (const page of [first, second])
    await eventually(async () => expect(await keptWords(page)).toBe('not kept: Petalyard does not answer'))
  const downloaded = first.waitForEvent('download')
  await first.getByRole('button', { name: 'Save a copy' }).click()
  expect(titleOf(await readFile(await (await downloaded).path(), 'utf8'))).toBe('Meanwhile')

  await story.context.setOffline(false)
  for (const page of [first, second])
    await eventually(async () => expect(await keptWords(page)).toBe('kept in the app a moment ago'))
  expect((await keptTitles()).sort()).toEqual(['Beside it', 'Meanwhile'])
}, 60_000)

async function keptTitles(): Promise<unknown[]> {
  const kept = join(story.folder.path, 'projects', 'kept')
  const texts = (await readdir(kept)).map((name) => readFile(join(kept, name), 'utf8'))
  return (await Promise.all(texts)).map(titleOf)
}

/** Opens a project of its own in a further tab, and waits until it can be worked on. */
async function newTab(address: string): Promise<Page> {
  const page = await story.context.newPage()
  await page.goto(address)
  await page.getByRole('textbox', { name: 'Title' }).waitFor()
  return page
}

async function entitle(page: Page, words: string): Promise<void> {
  const title = page.getByRole('textbox', { name: 'Title' })
  await title.fill(words)
  await title.press('Enter')
}

const keptWords = (page: Page) => page.locator('header .kept').innerText()

it('with eight tabs open, an edit in each is kept, the eighth too, and each hears of its own', async () => {
  story.loopback = await startLoopback(story.folder.path)
  const pages = [await newTab(await story.loopback.nextAddress())]
  const start = new URL('/', pages[0]?.url()).href
  while (pages.length < 8) pages.push(await newTab(start))
  expect(new Set(pages.map((page) => page.url())).size).toBe(8)
  for (const [index, page] of pages.entries()) await entitle(page, `Tab ${index + 1}`)
  for (const page of pages)
    await eventually(async () => expect(await keptWords(page)).toBe('kept in the app a moment ago'))
  expect((await keptTitles()).sort()).toEqual(pages.map((_, index) => `Tab ${index + 1}`))
  // A tab that was closed no longer holds its project; the others do.
  await pages[0]?.close()
  const [eighth] = pages.slice(-1)
  if (!eighth) throw new Error('no eighth tab')
  await story.loopback.kill()
  for (const page of pages.slice(1))
    await eventually(async () => expect(await keptWords(page)).toBe('not kept: Petalyard does not answer'))

  await entitle(eighth, 'Too late')
  const downloaded = eighth.waitForEvent('download')
  await eighth.getByRole('button', { name: 'Save a copy' }).click()
  expect(titleOf(await readFile(await (await downloaded).path(), 'utf8'))).toBe('Too late')
  const asked = eighth.waitForEvent('dialog')
  await eighth.close({ runBeforeUnload: true })
  expect((await asked).type()).toBe('beforeunload')
  await (await asked).accept()
}, 120_000)
