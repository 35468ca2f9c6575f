/** Painting in a real window: what changed along is said and ringed, fixed colours are kept, fields and buttons look as they act. */
import type { Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import type { Project } from '../../shared-types/project'
import type { OpenedWindow } from './opened'
import { example, openWindow } from './opened'

let opened: OpenedWindow
let page: Page

afterEach(() => opened.close())

async function open(name: string, change: (project: Project) => Project, width = 1280): Promise<void> {
  opened = await openWindow({ viewport: { width, height: 760 }, files: example(name, change) })
  page = opened.page
}

const place = (name: string) =>
  page.getByRole('navigation', { name: 'Places of the job' }).getByRole('button', { name }).click()

/** The stall's throw with no two alike touching. */
const apart = (project: Project): Project =>
  project.layout?.kind === 'blanket'
    ? { ...project, layout: { ...project.layout, cells: { fill: { pattern: 'no-two-alike', seed: 3 } } } }
    : project

describe('painting', () => {
  it('says what changed along, keeps and frees by keys, and folds stay as they were left', async () => {
    await open('market-stall-throw', apart)
    await page.getByRole('application').focus()
    for (const key of ['ArrowRight', 'ArrowDown', 'ArrowDown', 'ArrowDown', 'ArrowRight'])
      await page.keyboard.press(key)
    const told = page.locator('.painted')
    for (const letter of ['a', 'b', 'c']) {
      await page.keyboard.press(letter)
      await told.filter({ hasText: /^Painted 1 motif(; \d others? changed|; 1 other changed)?\.$/ }).waitFor()
    }
    await page.keyboard.press('Control+k')
    await page.getByText('Nothing to keep').waitFor({ state: 'attached' })
    await page.keyboard.press('Control+Shift+K')
    await told.filter({ hasText: /^Freed 1 motif/ }).waitFor()
    await page.keyboard.press('Control+k')
    await told.filter({ hasText: 'Kept 1 motif.' }).waitFor()
    await place('Colors')
    await page.getByText('1 fixed, marked with a pin on the map.').waitFor()

    await place('Arrangement')
    await page.getByText('Gaps and sides').click()
    await place('Colors')
    await place('Arrangement')
    const fold = page.locator('details', { hasText: 'Gaps and sides' })
    expect(await fold.evaluate((node) => (node as HTMLDetailsElement).open)).toBe(true)
  })
})

describe('the look of what can be pressed', () => {
  it('ticks in the accent, and nothing disabled looks as if it could be pressed', async () => {
    await open('market-stall-throw', apart)
    const looks = await page.evaluate(() => {
      const root = getComputedStyle(document.documentElement)
      const probe = document.createElement('div')
      probe.style.color = root.getPropertyValue('--accent')
      document.body.append(probe)
      const accent = getComputedStyle(probe).color
      const made = ['button', 'button main', 'button plain'].map((name) => {
        const button = document.createElement('button')
        button.className = name
        button.disabled = true
        document.body.append(button)
        const { backgroundColor, color, opacity } = getComputedStyle(button)
        return { backgroundColor, isAccent: color === accent, opacity: Number(opacity) }
      })
      const box = document.createElement('input')
      box.type = 'checkbox'
      document.body.append(box)
      return { made, box: getComputedStyle(box).accentColor, accent }
    })
    expect(looks.box).toBe(looks.accent)
    for (const { backgroundColor, isAccent, opacity } of looks.made) {
      expect(backgroundColor).toBe('rgba(0, 0, 0, 0)')
      expect(isAccent).toBe(false)
      expect(opacity).toBeLessThan(1)
    }
  })

  it.each([1024, 1280])('shows in full what stands in empty fields at %i', async (width) => {
    await open('orchard-gate-garland', (project) => ({ ...project, terms: 'UK' }), width)
    const cut: string[] = []
    let seen = 0
    for (const name of ['Arrangement', 'Kit', 'Motif', 'Joins', 'Yarn']) {
      await place(name)
      await page.evaluate(() => {
        for (const fold of document.querySelectorAll('details')) fold.open = true
      })
      const found = await page.evaluate(() =>
        [...document.querySelectorAll('input')].flatMap((input) => {
          if (!input.placeholder || input.offsetWidth === 0) return []
          const style = getComputedStyle(input)
          const pen = document.createElement('canvas').getContext('2d')!
          pen.font = style.font
          const room = input.clientWidth - parseFloat(style.paddingLeft) - parseFloat(style.paddingRight)
          const isCut = pen.measureText(input.placeholder).width > room + 0.5
          return [{ words: input.placeholder, isCut }]
        }),
      )
      seen += found.length
      cut.push(...found.filter(({ isCut }) => isCut).map(({ words }) => `${name}: ${words}`))
    }
    expect(cut).toEqual([])
    // The title alone has one in every place.
    expect(seen).toBeGreaterThan(15)
  })
})
