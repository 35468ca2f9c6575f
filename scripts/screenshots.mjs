/**
 * Makes the pictures of the window that README and guides show (`npm run screenshots`), and no others: light,
 * 1280 × 800, from the built window on its loopback server in a real Chromium. With names it makes those alone:
 * `npm run screenshots -- guide-start`; `--out FOLDER` puts them elsewhere. A test holds that each is shown on a page.
 */
import { spawn, spawnSync } from 'node:child_process'
import { copyFile, mkdir, mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { basename, join, resolve } from 'node:path'
import { chromium } from 'playwright-core'
import { findChromium } from './capabilities.mjs'
import { root } from './fresh-build.mjs'
import { buildDesktop, buildWindow } from './window-build.mjs'

const VIEWPORT = { width: 1280, height: 800 }
const ADDRESS = /http:\/\/127\.0\.0\.1:\d+\/enter#token=[\w-]+/g

async function go(page, place) {
  await page
    .getByRole('navigation', { name: 'Places of the job' })
    .getByRole('button', { name: place })
    .click()
}

async function enter(page, name, value) {
  const field = page.getByRole('textbox', { name, exact: true })
  await field.fill(value)
  await field.press('Tab')
}

/** What each picture shows, from the window as it opens; `file` is the project that is in it. */
const SCENES = {
  'guide-start': {
    file: null,
    prepare: async (page) => {
      await page.getByRole('button', { name: 'Start from your own motif' }).click()
      await page.getByRole('dialog').getByText('cm', { exact: true }).click()
      await enter(page, 'Tip to tip, across', '8 cm')
      await enter(page, 'Dip to dip, across', '5.5 cm')
      await enter(page, 'Finished width', '110 cm')
      await enter(page, 'Finished length', '140 cm')
      await page.getByText('330 motifs make').waitFor()
    },
  },
  'guide-joins': {
    file: 'docs/projects/harbour-lap-blanket.petalyard',
    prepare: async (page) => {
      await page.getByRole('application').focus()
      for (const key of ['ArrowRight', 'ArrowDown', 'ArrowDown', 'ArrowRight']) await page.keyboard.press(key)
    },
  },
  'guide-garland': {
    file: 'docs/projects/lemon-grove-garland.petalyard',
    prepare: (page) => go(page, 'Kit'),
  },
  'guide-rounds': {
    file: 'docs/projects/quay-side-runner.petalyard',
    prepare: async (page) => {
      await go(page, 'Motif')
      const round = page.getByRole('textbox', { name: 'Round 2', exact: true })
      await round.fill((await round.inputValue()).replace('4 more times', '3 more times'))
    },
  },
}

async function serve(folder, files) {
  const child = spawn(process.execPath, [join(root, 'out', 'main', 'browser.cjs'), ...files], {
    env: { ...process.env, PETALYARD_DATA: folder, PETALYARD_OPEN: 'no' },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  let said = ''
  const address = await new Promise((found, failed) => {
    const listen = (data) => {
      said += data
      const match = said.match(ADDRESS)
      if (match) found(match[0])
    }
    child.stdout.on('data', listen)
    child.stderr.on('data', listen)
    child.once('exit', () => failed(new Error(`the server ended: ${said}`)))
  })
  const ended = new Promise((done) => child.once('exit', done))
  return {
    address,
    stop: async () => {
      child.kill('SIGINT')
      await ended
    },
  }
}

/** A palette of 256 colours is enough for these pictures and a third of the size; without ImageMagick they stay as they are. */
function slim(path) {
  spawnSync('convert', [path, '+dither', '-colors', '256', `PNG8:${path}`], { stdio: 'ignore' })
}

async function shoot(browser, name, { file, prepare }, out) {
  const folder = await mkdtemp(join(tmpdir(), 'petalyard-pictures-'))
  // A copy: an opened project saves itself, and some pictures change what they show.
  const files = file ? [join(folder, basename(file))] : []
  if (file) await copyFile(join(root, file), files[0])
  const server = await serve(folder, files)
  const context = await browser.newContext({
    colorScheme: 'light',
    viewport: VIEWPORT,
    reducedMotion: 'reduce',
    locale: 'en-GB',
  })
  try {
    const page = await context.newPage()
    page.on('pageerror', (error) => console.error(`${name}: ${error.message}`))
    page.on('console', (message) => {
      if (message.type() === 'error') console.error(`${name}: ${message.text()}`)
    })
    await page.goto(server.address)
    await page.getByRole('navigation', { name: 'Places of the job' }).waitFor()
    await page.evaluate(() => document.fonts.ready)
    await prepare(page)
    await page.waitForTimeout(1500)
    const path = join(out, `${name}.png`)
    await page.screenshot({ path })
    slim(path)
    console.log(path)
  } finally {
    await context.close()
    await server.stop()
    await rm(folder, { recursive: true, force: true })
  }
}

const args = process.argv.slice(2)
const at = args.indexOf('--out')
const out = resolve(root, at >= 0 ? args.splice(at, 2)[1] : 'docs/pictures')
const unknown = args.filter((name) => !(name in SCENES))
if (unknown.length > 0) {
  console.error(`screenshots: no ${unknown.join(', ')}; there are ${Object.keys(SCENES).join(', ')}`)
  process.exit(2)
}
const executablePath = findChromium()
if (!executablePath) {
  console.error('screenshots: there is no Chromium')
  process.exit(1)
}
await buildWindow()
await buildDesktop()
await mkdir(out, { recursive: true })
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] })
try {
  for (const name of args.length > 0 ? args : Object.keys(SCENES))
    await shoot(browser, name, SCENES[name], out)
} finally {
  await browser.close()
}
