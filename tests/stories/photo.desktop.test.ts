/** A photo is enough: from a picture to a held blanket that is saved, in the real desktop app. */
import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { encode as encodePng } from 'fast-png'
import { encode as encodeJpeg } from 'jpeg-js'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Project } from '../../shared-types/project'
import { planProject } from '../../src-core/plan'
import { eventually } from '../src-main/documents/session/world'
import { webpOf } from '../src-main/photo/encode-webp'
import { spoiltPicture } from '../fuzz/pictures'
import { photograph } from '../src-core/photo/camera'
import { chance, flower } from '../src-core/photo/flowers'
import { trial } from '../src-core/photo/scenes'
import { GOOD_PRACTICE, violationsInThemes } from './access'
import { answerSave, makeFolder, startDesktop } from './desktop'
import type { Desktop } from './desktop'
import { Hands, sentenceSays } from './hands'

let desktop: Desktop
let folder: Awaited<ReturnType<typeof makeFolder>>
let photo: string

const SHAPE = { petals: 8, overTips: 104, share: 0.66 } as const

/** A flower of eight petals on A4, taken at a slant, as a phone would keep it. */
function takenPicture(): Buffer {
  const jpeg = drawnPicture()
  // What a phone writes into it besides (APP1, Exif 2.32, 4.5.4): here words that would be found in the project.
  const words = Buffer.from('Exif\0\0II*\0 GPSLatitude 52.5163 Kitchen phone')
  const head = Buffer.from([0xff, 0xe1, 0, words.length + 2])
  return Buffer.concat([jpeg.subarray(0, 2), head, words, jpeg.subarray(2)])
}

function drawnPicture(): Buffer {
  const { width, height, data } = photograph({
    ...trial(7).scene,
    shape: flower('rounded', SHAPE.petals, SHAPE.overTips, SHAPE.share, 0.4, 0.02, chance(11)),
    ...{ sheet: { width: 210, height: 297 }, at: { x: 4, y: -6 }, turn: 5, tilt: 16, filling: 0.72 },
    ...{ picture: { width: 900, height: 1200 }, paper: [0.78, 0.78, 0.76], table: [0.25, 0.13, 0.06] },
    ...{ yarns: [[0.35, 0.05, 0.07]], blur: 0.7, noise: 0.005, relief: 0.12 },
  })
  return encodeJpeg({ width, height, data: Buffer.from(data) }, 92).data
}

beforeAll(async () => {
  folder = await makeFolder()
  photo = join(folder.path, 'rose.jpg')
  await writeFile(photo, takenPicture())
  desktop = await startDesktop(join(folder.path, 'data'))
}, 120_000)
afterAll(async () => {
  await desktop?.close()
  await folder?.forget()
})

const number = (label: string) => desktop.window.getByRole('textbox', { name: label })
const millimetres = async (label: string): Promise<number> => {
  const [, value = '', unit = ''] = /([\d.]+) (mm|cm|in)/.exec(await number(label).inputValue()) ?? []
  return Number(value) * { mm: 1, cm: 10, in: 25.4 }[unit as 'mm']
}

describe('a maker with a photo of a flower', () => {
  it('measures it at the start, sees what was found, and what no photo is is named', async () => {
    const page = desktop.window
    const hands = new Hands(page)
    await page.evaluate(() => window.petalyard.changeSettings({ units: 'metric' }))
    await hands.press('Start from your own motif')
    await hands.press('Measure it in a photo')
    const dialog = page.getByRole('dialog', { name: 'Measure a photo' })
    const input = dialog.locator('input[type=file]')
    // A picture that is held over the window shows where it goes, and no more once it leaves.
    const drag = (name: string) =>
      page.evaluate((kind) => {
        const dataTransfer = new DataTransfer()
        dataTransfer.items.add(new File(['rose'], 'rose.jpg', { type: 'image/jpeg' }))
        document.body.dispatchEvent(new DragEvent(kind, { dataTransfer, bubbles: true, cancelable: true }))
      }, name)
    await drag('dragover')
    await dialog.locator('[data-over]').waitFor()
    await drag('dragleave')
    await dialog.locator('[data-over]').waitFor({ state: 'detached' })
    const svg = { name: 'rose.svg', mimeType: 'image/svg+xml', buffer: Buffer.from('<svg/>') }
    await input.setInputFiles(svg)
    await dialog.getByText('rose.svg is a drawing (SVG), not a photo.').waitFor()
    await input.setInputFiles({
      name: 'cut.jpg',
      mimeType: 'image/jpeg',
      buffer: (await readFile(photo)).subarray(0, 9000),
    })
    await dialog.getByText('cut.jpg is damaged or cut off.').waitFor()

    await dialog.getByRole('combobox', { name: 'Lies on a' }).selectOption('A4')
    await input.setInputFiles(photo)
    await dialog.getByText(/^Measured: 8 petals, /).waitFor({ state: 'attached', timeout: 60_000 })
    expect(await dialog.getByRole('textbox', { name: 'Petals' }).inputValue()).toBe('8')
    expect(await violationsInThemes(page, GOOD_PRACTICE)).toEqual([])
  }, 120_000)

  it('corrects a corner with the keys, and lets it be found again', async () => {
    const page = desktop.window
    const dialog = page.getByRole('dialog', { name: 'Measure a photo' })
    const handle = dialog.getByRole('button', { name: /^Corner of the sheet, top left/ })
    const name = await handle.getAttribute('aria-label')
    await handle.focus()
    for (let step = 0; step < 4; step++) await page.keyboard.press('Shift+ArrowRight')
    await eventually(async () => expect(await handle.getAttribute('aria-label')).not.toBe(name))
    await dialog.getByRole('button', { name: 'Find the corners' }).click()
    await eventually(async () => expect(await handle.getAttribute('aria-label')).toBe(name))
    await dialog.getByText(/^Measured: 8 petals, /).waitFor({ state: 'attached', timeout: 60_000 })
  }, 120_000)

  it('becomes a blanket that holds, with the outline of the photo, and is saved without the picture', async () => {
    const page = desktop.window
    const hands = new Hands(page)
    await hands.press('Use as measured')
    await page.getByText('Its outline was traced from the photo.').waitFor()
    const tips = await millimetres('Tip to tip, across')
    expect(Math.abs(tips / SHAPE.overTips - 1)).toBeLessThan(0.015)
    await hands.press('Start with this motif')
    await sentenceSays(page, /^\d+ eight-petal flowers of /)
    const path = join(folder.path, 'rose.petalyard')
    await answerSave(desktop, path)
    await desktop.app.evaluate(({ Menu }) => Menu.getApplicationMenu()!.getMenuItemById('save')!.click())
    const text = await eventually(() => readFile(path, 'utf8'))
    const project = JSON.parse(text) as Project
    expect(project.motifs![0]).toMatchObject({ kind: 'measured', outline: 'traced', petals: 8 })
    expect(text.length).toBeLessThan(40_000)
    const plan = planProject(project)
    expect(plan).toMatchObject({ pieces: 1, single: 0 })
    expect(plan.findings.filter(({ severity }) => severity === 'error')).toEqual([])
  }, 60_000)

  it('measures the motif of the project anew from a photo that is dropped, and takes it back', async () => {
    const page = desktop.window
    const hands = new Hands(page)
    await hands.go('Motif')
    const bytes = (await readFile(photo)).toString('base64')
    const dropped = await page.evaluateHandle((coded) => {
      const data = new DataTransfer()
      const file = Uint8Array.from(atob(coded), (letter) => letter.charCodeAt(0))
      data.items.add(new File([file], 'rose.jpg', { type: 'image/jpeg' }))
      return data
    }, bytes)
    const offer = page.getByRole('button', { name: 'Measure it in a photo' })
    await offer.dispatchEvent('drop', { dataTransfer: dropped })
    const dialog = page.getByRole('dialog', { name: 'Measure a photo' })
    await dialog.getByText(/^Measured: 8 petals, /).waitFor({ state: 'attached', timeout: 60_000 })
    await dialog.getByRole('textbox', { name: 'Petals' }).fill('7')
    await page.keyboard.press('Enter')
    await dialog.getByText(/^Measured: 7 petals, /).waitFor({ state: 'attached' })
    await hands.press('Use as measured')
    await sentenceSays(page, /^\d+ seven-petal flowers of /)
    await page.getByRole('button', { name: 'Undo: measure the motif in a photo' }).click()
    await sentenceSays(page, /^\d+ eight-petal flowers of /)
  }, 120_000)

  it('keeps the picture where that is wished, without place or camera, and measures it again', async () => {
    const page = desktop.window
    const hands = new Hands(page)
    await hands.press('Measure it in a photo')
    const dialog = page.getByRole('dialog', { name: 'Measure a photo' })
    await dialog.locator('input[type=file]').setInputFiles(photo)
    await dialog.getByText(/^Measured: 8 petals, /).waitFor({ state: 'attached', timeout: 60_000 })
    await dialog.getByRole('checkbox', { name: 'Keep the picture with the motif' }).check()
    await hands.press('Use as measured')
    const shown = page.getByRole('button', { name: /^Photo that .* was measured from: show it large$/ })
    await shown.waitFor()
    await shown.focus()
    await page.keyboard.press('Enter')
    const large = page.getByRole('img', { name: /^Photo that .* was measured from$/ })
    await eventually(async () =>
      expect(await large.evaluate((image: HTMLImageElement) => image.naturalWidth)).toBe(900),
    )
    expect(await violationsInThemes(page, GOOD_PRACTICE)).toEqual([])
    await page.keyboard.press('Escape')

    const path = join(folder.path, 'rose.petalyard')
    const picture = await eventually(async () => {
      const project = JSON.parse(await readFile(path, 'utf8')) as Project
      return project.motifs![0]!.photo!.picture!
    })
    const bytes = Buffer.from(picture.split(',')[1]!, 'base64')
    expect(bytes.length).toBeLessThan(300_000)
    for (const word of ['Exif', 'GPS', 'Kitchen']) expect(bytes.includes(word)).toBe(false)

    await hands.press('Measure it again')
    await dialog.getByText(/^Measured: 8 petals, /).waitFor({ state: 'attached', timeout: 60_000 })
    expect(await dialog.getByRole('checkbox', { name: /^Keep the picture/ }).isChecked()).toBe(true)
    await page.keyboard.press('Escape')
    await hands.press('Remove the photo')
    await eventually(async () => expect(await readFile(path, 'utf8')).not.toContain('image/jpeg'))
    await page.getByRole('button', { name: 'Undo: remove the photo of the motif' }).click()
    await shown.waitFor()
  }, 180_000)

  it('offers spoilt pictures of every kind: each is read or refused in one line, and the window goes on', async () => {
    const page = desktop.window
    await new Hands(page).press('Measure it in a photo')
    const dialog = page.getByRole('dialog', { name: 'Measure a photo' })
    const input = dialog.locator('input[type=file]')
    const { width, height, data } = photograph(trial(5, 120).scene)
    const whole = [
      encodePng({ width, height, data, channels: 4, depth: 8 }),
      new Uint8Array(encodeJpeg({ width, height, data: Buffer.from(data) }, 80).data),
      await webpOf(width, height, data),
    ] as const
    let refused = 0
    for (let seed = 0; seed < 36; seed++) {
      const [bytes, foreign] = [whole[seed % 3]!, whole[(seed + 1) % 3]!]
      const name = `spoilt ${seed}`
      const buffer = Buffer.from(spoiltPicture(bytes, foreign, seed))
      await input.setInputFiles({ name, mimeType: 'image/jpeg', buffer })
      await dialog.locator('progress').waitFor({ state: 'detached', timeout: 20_000 })
      const told = await dialog.getByRole('alert').allTextContents()
      if (told.length === 0) continue
      refused++
      expect(told).toEqual([expect.stringMatching(new RegExp(`^${name} [^\\n]{4,120}\\.$`))])
    }
    expect(refused).toBeGreaterThan(8)
    await input.setInputFiles(photo)
    await dialog.getByText(/^Measured: 8 petals, /).waitFor({ state: 'attached', timeout: 60_000 })
    await page.keyboard.press('Escape')
  }, 180_000)
})
