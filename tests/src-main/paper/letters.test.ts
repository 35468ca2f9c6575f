/** Texts in scripts that the paper's face lacks: what stands on the page, and that all of it was reported. */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { create } from 'fontkit'
import type { Font } from 'fontkit'
import { afterAll, describe, expect, it, vi } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { GLYPH_RANGES } from '../../../src-core/letters/face-glyphs'
import { createPlanner } from '../../../src-core/plan'
import { listExamples } from '../../../src-main/documents'
import { mapPages, renderMap } from '../../../src-main/paper/index'
import { figureToSvg } from '../../../src-main/paper/svg'
import { legible } from '../../../src-main/paper/pdf/legible'
import { DATE, flowers, planned, VERSION } from './projects'
import { settled } from '../../../src-core/settled'

// Files share modules: this one gets its own, and leaves none behind.
vi.hoisted(() => vi.resetModules())
const spelled = vi.hoisted(() => new Set<string>())
vi.mock('any-ascii', async (original) => {
  const { default: anyAscii } = await original<{ default: (text: string) => string }>()
  return { default: (text: string) => (spelled.add(text), anyAscii(text)) }
})
afterAll(() => {
  vi.doUnmock('any-ascii')
  vi.resetModules()
})

const FACES = ['400Regular/SourceSans3_400Regular.ttf', '600SemiBold/SourceSans3_600SemiBold.ttf']

describe('the table of glyphs', () => {
  it.each(FACES)('holds just what %s has', (file) => {
    const path = createRequire(import.meta.url).resolve(`@expo-google-fonts/source-sans-3/${file}`)
    const font = create(readFileSync(path)) as Font
    const table = GLYPH_RANGES.flatMap(([first, last]) =>
      Array.from({ length: last - first + 1 }, (_, i) => first + i),
    )
    expect(table).toEqual([...font.characterSet].sort((a, b) => a - b))
  })
})

describe('what stands for characters that the face lacks', () => {
  it('is their spelling in Latin letters, and a question mark where nothing spells them', () => {
    expect(legible('צמר Wool 毛糸 🧶')).toBe('tsmr Wool MaoMi :yarn:')
    expect(legible('\u{f0000}')).toBe('?')
  })

  it('keeps two yarns apart on paper, and a preview shows what the paper does', () => {
    const project = flowers({ columns: 3, rows: 2 })
    const names = ['צמר אדום', 'צמר כחול']
    const yarns = project.yarns!.map((yarn, i) => ({ ...yarn, name: names[i] ?? yarn.name }))
    const { plan } = planned({ ...project, yarns })
    const pages = mapPages({ ...plan, settled: settled({ ...project, yarns }) }, { date: DATE })
    const text = pages.map(({ figure }) => figureToSvg(figure)).join('')
    for (const name of names) expect(text).toContain(legible(name))
    expect(text).not.toMatch(/\p{Script=Hebrew}|□/u)
  })
})

describe('words that were shaped before', () => {
  it('leave no trace in other files: the same bytes, whatever was printed in between', async () => {
    const print = (title: string) => {
      const { plan } = planned({ ...flowers({ columns: 3, rows: 2 }), title })
      return renderMap(plan, { date: DATE, version: VERSION })
    }
    const first = await print('Été à la plage')
    // Accents are written of letters and marks, glyphs that other words have as well.
    await print('Élégie \u00a0 E\u0301te\u0301, 1⁄2, ﬁne')
    expect(Buffer.from(await print('Été à la plage')).equals(Buffer.from(first))).toBe(true)
  })
})

/** Values that are no words of the maker's: kinds and choices, ids and what refers to them, data. */
const NO_WORDS = new Set(
  'format kind outline arrangement alternateRows pattern direction rule seam shape worked way between style paper terms units hand order id motif colourway colourways yarn colour path ring slot currency'.split(' '), // prettier-ignore
)

/** The project with a character of its own at the end of every text, none of which the face has. */
function marked(value: unknown, next: () => string, key = ''): unknown {
  if (typeof value === 'string') return NO_WORDS.has(key) ? value : value + next()
  if (Array.isArray(value)) return value.map((each) => marked(each, next, key))
  if (typeof value !== 'object' || value === null || ['cells', 'yarns '].includes(key)) return value
  return Object.fromEntries(
    Object.entries(value).map(([name, each]) => [
      name,
      // What a colourway is worked in refers to yarns by id.
      name === 'yarns' && !Array.isArray(each) ? each : marked(each, next, name),
    ]),
  )
}

// Each example has characters of its own: a word that was spelled once is remembered.
let code = 0x4e00

describe.each(['hedgerow-baby-throw', 'orchard-wall-throw', 'orchard-gate-garland', 'quince-wreath-cushion'])(
  '%s in another script',
  (name) => {
    it('reports every character that reaches paper in another spelling', () => {
      const text = listExamples().find((each) => each.name === name)!.text
      const project = marked(JSON.parse(text), () => String.fromCodePoint(code++)) as Project
      const plan = createPlanner().plan(project)
      const said = plan.findings
        .filter(({ code: found }) => found.startsWith('letters/'))
        .map(({ message }) => message)
        .join(' ')
      spelled.clear()
      mapPages(plan, {
        date: DATE,
        ...(plan.kit ? { sheets: ['map', 'card', 'packing', 'labels'] } : {}),
      })
      expect(spelled.size).toBeGreaterThan(5)
      for (const character of spelled) expect(said).toContain(character)
    })
  },
)
