/** What nobody means to type, or to open, in a browser. */
import { readFile } from 'node:fs/promises'
import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { eventually } from '../src-main/documents/session/world'
import { browserAnew } from './anew'
import { startLoopback } from './browser'
import {
  endlessFile,
  harmKept,
  isThereAgain,
  oddFile,
  offersWaysOn,
  showsOddFile,
  typeNonsense,
  writtenFile,
} from './hostile'

const story = browserAnew()

async function start(files: readonly string[] = []): Promise<Page> {
  await story.loopback?.kill()
  story.loopback = await startLoopback(story.own.path, files)
  const page = await story.context.newPage()
  await page.goto(await story.loopback.nextAddress())
  return page
}

it('whatever is typed into the written rounds leaves the project open, and it opens again', async () => {
  const page = await start([await writtenFile(story.folder.path)])
  await typeNonsense(page)
  await page.close()
  await isThereAgain(await start())
}, 90_000)

it('a file with odd numbers opens without them, and one with a number that is none is refused', async () => {
  await showsOddFile(await start([await oddFile(story.folder.path)]))
  const endless = await endlessFile(story.folder.path)
  const before = await readFile(endless, 'utf8')
  await start([endless])
  await eventually(async () => expect(story.loopback?.said()).toMatch(/Chains between/))
  expect(await readFile(endless, 'utf8')).toBe(before)
}, 90_000)

it('a kept project that cannot be read is offered with its text, beside every other way on', async () => {
  const first = await start()
  const title = first.getByRole('textbox', { name: 'Title' })
  await title.fill('Kept')
  await title.press('Enter')
  await eventually(async () =>
    expect(await first.locator('header .kept').innerText()).toMatch(/kept in the app/),
  )
  await story.loopback?.kill()
  const text = await harmKept(story.own.path)
  const page = await start()
  await offersWaysOn(page, text)
  const downloaded = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save a copy', exact: true }).click()
  expect(await readFile(await (await downloaded).path(), 'utf8')).toBe(text)
}, 90_000)
