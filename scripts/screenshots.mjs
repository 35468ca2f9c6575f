/**
 * Makes the pictures of the window for README and docs (`npm run screenshots`): every place, light and dark,
 * at 1280 × 800 and 1920 × 1080, from the built window on its loopback server in a real Chromium.
 * With names it makes those alone: `npm run screenshots -- yarn paper`; `--out FOLDER` puts them elsewhere.
 */
import { spawn, spawnSync } from 'node:child_process'
import { copyFile, mkdir, mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { chromium } from 'playwright-core'
import { findChromium } from './capabilities.mjs'
import { root } from './fresh-build.mjs'
import { buildDesktop, buildWindow } from './window-build.mjs'

const SIZES = [
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
]
const THEMES = ['light', 'dark']
const ADDRESS = /http:\/\/127\.0\.0\.1:\d+\/enter\?token=[\w-]+/g

const place = (name) => async (page) => {
  await page.getByRole('navigation', { name: 'Places of the job' }).getByRole('button', { name }).click()
}

/** What each picture shows, from the window as it opens; `file` is the example that is in it. */
const SCENES = {
  whole: { file: 'market-stall-throw', prepare: (page) => hold(page) },
  motif: { file: 'hedgerow-baby-throw', prepare: place('Motif') },
  arrangement: {
    file: 'hedgerow-baby-throw',
    prepare: async (page) => {
      await place('Arrangement')(page)
      await page.getByRole('list', { name: 'What fits best' }).waitFor()
    },
  },
  joins: { file: 'market-stall-throw', prepare: place('Joins') },
  colours: { file: 'market-stall-throw', prepare: place('Colors') },
  yarn: { file: 'hedgerow-baby-throw', prepare: place('Yarn') },
  paper: {
    file: 'market-stall-throw',
    prepare: async (page) => {
      await place('Paper')(page)
      await page.getByRole('img', { name: /^Page 1 of/ }).waitFor()
    },
  },
  garland: {
    file: 'orchard-gate-garland',
    prepare: async (page) => {
      await place('Arrangement')(page)
      await page.getByRole('list', { name: 'Sequence' }).waitFor()
    },
  },
  kit: { file: 'orchard-gate-garland', prepare: place('Kit') },
  labels: {
    file: 'orchard-gate-garland',
    prepare: async (page) => {
      await place('Paper')(page)
      await page.getByRole('combobox', { name: 'Sheets' }).selectOption('labels')
      await page.getByRole('img', { name: /^Page 1 of 1: Labels/ }).waitFor()
    },
  },
  panel: {
    file: 'quince-wreath-cushion',
    prepare: async (page) => {
      await place('Arrangement')(page)
      await page.getByRole('list', { name: 'Items on the panel' }).getByRole('button').nth(1).click()
    },
  },
  wreath: {
    file: 'pond-edge-bag',
    prepare: async (page) => {
      await place('Arrangement')(page)
      await page.getByText('Place a wreath').click()
      await page.getByText('Replace it').click()
      await page.getByRole('button', { name: 'Alternate with another' }).click()
      await page.getByText('Place a row along a line').scrollIntoViewIfNeeded()
    },
  },
  template: {
    file: 'quince-wreath-cushion',
    prepare: async (page) => {
      await place('Paper')(page)
      await page.getByRole('img', { name: /^Page 1 of/ }).waitFor()
      await page.getByRole('button', { name: 'Page after' }).click()
      await page.getByRole('img', { name: /^Page 2 of/ }).waitFor()
    },
  },
  rounds: {
    file: 'orchard-wall-throw',
    prepare: async (page) => {
      await place('Motif')(page)
      await page.getByRole('textbox', { name: 'Round 3', exact: true }).click()
    },
  },
  'rounds-empty': {
    file: null,
    prepare: async (page) => {
      await page.getByRole('button', { name: 'Start from your own motif' }).click()
      await page.getByRole('button', { name: 'Start from its written rounds' }).click()
      await page.getByRole('textbox', { name: /^Paste the rounds/ }).waitFor()
    },
  },
  start: {
    file: null,
    prepare: async (page) => {
      await page.getByRole('button', { name: 'Start from your own motif' }).click()
      await page.getByText(/motifs make/).waitFor()
    },
  },
}

/** Takes a motif near the middle of the map in the hand. */
async function hold(page) {
  await page.getByRole('application').focus()
  for (const key of ['ArrowRight', 'ArrowDown', 'ArrowDown', 'ArrowDown', 'ArrowRight', 'ArrowRight'])
    await page.keyboard.press(key)
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
  for (const colorScheme of THEMES)
    for (const viewport of SIZES) {
      const folder = await mkdtemp(join(tmpdir(), 'petalyard-pictures-'))
      // A copy: an opened project saves itself, and some pictures change what they show.
      const files = file ? [join(folder, `${file}.petalyard`)] : []
      if (file) await copyFile(join(root, 'examples', `${file}.petalyard`), files[0])
      const server = await serve(folder, files)
      const context = await browser.newContext({ colorScheme, viewport, reducedMotion: 'reduce' })
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
        await page.waitForTimeout(1200)
        const path = join(out, `window-${name}-${colorScheme}-${viewport.width}.png`)
        await page.screenshot({ path })
        slim(path)
        console.log(path)
      } finally {
        await context.close()
        await server.stop()
        await rm(folder, { recursive: true, force: true })
      }
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
