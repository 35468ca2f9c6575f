/** A template in its colourways: what is drawn and written of each, and their key. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { bandItems, filledItems } from '../../../src-core/figures/applique-look'
import { templateGround } from '../../../src-core/figures/applique-ground'
import { colourwayMarks } from '../../../src-core/figures/marks'
import { textureItems } from '../../../src-core/figures/textures'
import { planProject } from '../../../src-core/plan'
import { mapPages, renderMap } from '../../../src-main/paper/index'
import { DATE, VERSION } from './projects'
import { readPdf } from './read-pdf'

const example = (name: string): Project =>
  JSON.parse(readFileSync(new URL(`../../../examples/${name}.petalyard`, import.meta.url), 'utf8')) as Project

describe.each(['ink', 'colour'] as const)('the template in %s', (style) => {
  const project = example('pond-edge-bag')
  const plan = planProject(project)
  const marks = colourwayMarks(plan)
  const ground = templateGround(plan, false, { marks, style })!

  it('writes the letter of every item beside its number, and has the key on its first page', async () => {
    const bytes = await renderMap(plan, { style, date: DATE, version: VERSION })
    const { pages } = await readPdf(bytes)
    const sheets = pages.filter(({ words }) => /^Row \d+, column/.test(words.trim()))
    for (const { label, mark } of ground.items) {
      const isLettered = sheets.some(({ texts }) =>
        texts
          .filter(({ text }) => text.trim() === label)
          .some((number) =>
            texts.some(
              ({ text, x, y }) =>
                text === mark!.code && Math.abs(y - number.y) < 0.1 && Math.abs(x - number.x) < 8,
            ),
          ),
      )
      expect(isLettered, label).toBe(true)
    }
    for (const { name } of marks) expect(pages[0]!.words).toContain(name)
  })

  it('draws every item in its colourway: alike where it is the same, and unlike where it is not', () => {
    const looks = new Map<string, string>()
    for (const item of ground.items) {
      const { mark } = item
      const bands = bandItems(item)
      expect(bands.length).toBeGreaterThan(0)
      const drawn = JSON.stringify(
        style === 'ink'
          ? textureItems(mark!.texture, { x: 0, y: 0, width: 20, height: 20 }, Infinity)
          : bands.map((band) => band.kind === 'path' && band.paint.fill),
      )
      expect(looks.get(mark!.id) ?? drawn).toBe(drawn)
      looks.set(mark!.id, drawn)
      expect(filledItems(item, (outline) => outline, 1).length).toBeGreaterThan(0)
    }
    expect(new Set(looks.values()).size).toBe(marks.length)
    // A template without a look is outlines alone.
    expect(templateGround(plan, false)!.items.flatMap(bandItems)).toEqual([])
  })
})

describe('a template with many colourways', () => {
  it('has its key on pages of its own, whole', async () => {
    const project = example('pond-edge-bag')
    const ways = Array.from({ length: 24 }, (_, i) => ({
      ...project.colourways![0]!,
      id: `w${i}`,
      code: undefined,
      name: `Way ${i + 1}`,
    }))
    const { layout } = project
    if (layout?.kind !== 'applique') throw new Error('no appliqué')
    const stars = layout.items!.filter(({ motif }) => motif === ways[0]!.motif)
    const items = ways.map(({ id }, i) => ({
      ...stars[0]!,
      colourway: id,
      x: 60 + 40 * (i % 5),
      y: 60 + 40 * Math.floor(i / 5),
    }))
    const many: Project = { ...project, colourways: ways, layout: { ...layout, overlaps: 'allowed', items } }
    const pages = mapPages(planProject(many), { style: 'ink', date: DATE })
    expect(pages[1]).toMatchObject({ section: 'key', name: 'Key' })
    const words = JSON.stringify(pages.filter(({ section }) => section === 'key').map(({ figure }) => figure))
    for (const { name } of ways) expect(words).toContain(`${name}"`)
  })
})
