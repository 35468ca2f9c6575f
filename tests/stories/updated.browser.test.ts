/** Another build takes the place of the program's files while it runs, in a browser. */
import { cp, readFile, rename, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { eventually } from '../src-main/documents/session/world'
import { browserAnew } from './anew'
import { startLoopback } from './browser'
import { build, projectRoot } from './desktop'

const story = browserAnew()

const heading = (page: Page) => page.getByRole('heading', { name: 'Petalyard was updated while it ran.' })

async function entitle(page: Page, words: string): Promise<void> {
  const title = page.getByRole('textbox', { name: 'Title' })
  await title.fill(words)
  await title.press('Enter')
}

it('every window says so and goes on keeping, no page of the other build opens, and the next start has it all', async () => {
  await build()
  const program = join(story.folder.path, 'program')
  for (const part of ['main', 'renderer'])
    await cp(join(projectRoot, 'out', part), join(program, part), { recursive: true })
  story.loopback = await startLoopback(story.folder.path, [], program)
  const page = await story.context.newPage()
  await page.goto(await story.loopback.nextAddress())
  await entitle(page, 'Before the update')

  // A build is laid beside the former one and takes its place; this one asks for what no host of the former gives.
  const [renderer, next] = [join(program, 'renderer'), join(program, 'next')]
  await cp(renderer, next, { recursive: true })
  await writeFile(join(next, '.built-from'), 'other sources')
  const index = await readFile(join(next, 'index.html'), 'utf8')
  await writeFile(join(next, 'index.html'), index.replace('<body>', '<body><p>The other build</p>'))
  await rename(renderer, join(program, 'former'))
  await rename(next, renderer)

  await page.getByRole('alert').filter({ hasText: 'Petalyard was updated while it ran.' }).waitFor()
  await entitle(page, 'After the update')
  const header = page.locator('header .kept')
  await eventually(async () => expect(await header.innerText()).toBe('kept in the app a moment ago'))
  const asked = await page.evaluate(async () => {
    const opened = await window.petalyard.currentProject()
    const text = opened.outcome === 'done' ? opened.value.text : ''
    return window.petalyard.previewPage({ text, page: 1 })
  })
  expect(asked).toMatchObject({ outcome: 'refused', problem: { code: 'app/updated' } })

  await page.reload()
  await heading(page).waitFor()
  expect(await page.getByText('The other build').count()).toBe(0)

  await story.loopback.stop()
  story.loopback = await startLoopback(story.folder.path, [], program)
  const again = await story.context.newPage()
  await again.goto(await story.loopback.nextAddress())
  await eventually(async () =>
    expect(await again.getByRole('textbox', { name: 'Title' }).inputValue()).toBe('After the update'),
  )
}, 60_000)
