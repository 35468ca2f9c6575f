/** What the pages of a project and its page for a phone say, as text: for somebody who has nothing else to work from. */
import type { Project } from '../../../../shared-types/project'
import type { Plan } from '../../../../shared-types/plan'
import { planProject } from '../../../../src-core/plan'
import { mapPages } from '../../../../src-main/paper/index'
import { phonePage } from '../../../../src-main/phone/page'
import type { FigureItem } from '../../../../src-core/figures/figure'
import { DATE, VERSION } from '../projects'

const textsOf = (items: readonly FigureItem[]): string[] =>
  items.flatMap((item) =>
    item.kind === 'text' ? [item.text] : item.kind === 'group' ? textsOf(item.items) : [],
  )

export interface Told {
  readonly plan: Plan
  /** All pages of a section, or all of them, as one text. */
  readonly of: (section?: string) => string
  readonly phone: string
}

export function toldOf(project: Project): Told {
  const plan = planProject(project)
  const pages = mapPages(plan, { date: DATE })
  return {
    plan,
    of: (section) =>
      pages
        .filter((page) => section === undefined || page.section === section)
        .flatMap(({ figure }) => textsOf(figure.items))
        .join(' '),
    phone: phonePage(plan, { version: VERSION }),
  }
}

const base = { format: 'petalyard-project', version: 1 } as const

/** Circles of a table mat, of which nothing but their measures is known. */
export const circles = (changes: Partial<Project> = {}): Project =>
  ({
    ...base,
    gauge: { stitch: 'sc', stitches: 22, rows: 26, over: 100, hook: 3 },
    yarns: [{ id: 'w', name: 'Linen', ballGrams: 50, ballMetres: 170 }],
    motifs: [
      { id: 'm', name: 'Disc', kind: 'measured', outline: 'round', across: 80, slots: [{ slot: 'all' }] },
    ],
    colourways: [{ id: 'a', code: 'A', name: 'White', motif: 'm', yarns: { all: 'w' } }],
    joining: { rule: 'tips' },
    layout: {
      ...{ kind: 'blanket', motif: 'm', arrangement: 'offset-rows', columns: 5, rows: 5 },
      alternateRows: 'oneFewer',
      cells: { fill: { pattern: 'single', colourways: ['a'] } },
      edging: {
        ...{ style: 'bridge', rounds: ['sc'], yarn: 'w' },
        written: [{ work: '*sc in each of next 3 sts, ch 3, sl st in last sc made; rep from * around.' }],
      },
    },
    ...changes,
  }) as Project

const HEXAGON = [
  'Ch 3 (counts as dc), dc in ring, ch 2, *2 dc in ring, ch 2; rep from * 4 more times; join with sl st in top of beg ch-3. (12 dc, 6 ch-2 sps)',
  'Ch 3 (counts as dc), dc in next dc, (dc, ch 2, dc) in next ch-2 sp, *dc in each of next 2 dc, (dc, ch 2, dc) in next ch-2 sp; rep from * 4 more times; join with sl st in top of beg ch-3. (24 dc, 6 ch-2 sps)',
  'Ch 3 (counts as dc), dc in each of next 2 dc, (dc, ch 2, dc) in next ch-2 sp, *dc in each of next 4 dc, (dc, ch 2, dc) in next ch-2 sp; rep from * 4 more times, dc in next dc; join with sl st in top of beg ch-3. (36 dc, 6 ch-2 sps)',
]

/** A throw of hexagons in written rounds with half motifs, of three colors each. */
export const hexagons = (changes: Partial<Project> = {}): Project =>
  ({
    ...base,
    gauge: { stitch: 'dc', stitches: 15, rows: 8, over: 100, hook: 4 },
    yarns: ['Cream', 'Rust', 'Teal'].map((name) => ({
      ...{ id: name.toLowerCase(), name, ballGrams: 50, ballMetres: 115 },
    })),
    motifs: [
      {
        ...{ id: 'm', name: 'Hexagon', kind: 'rounds', foundation: { ring: 'chain', chains: 4 } },
        rounds: HEXAGON.map((work, i) => ({ work, slot: ['center', 'middle', 'rim'][i] })),
      },
    ],
    colourways: [
      {
        id: 'a',
        code: 'A',
        name: 'Rust heart',
        motif: 'm',
        yarns: { center: 'rust', middle: 'teal', rim: 'cream' },
      },
      {
        id: 'b',
        code: 'B',
        name: 'Teal heart',
        motif: 'm',
        yarns: { center: 'teal', middle: 'rust', rim: 'cream' },
      },
    ],
    joining: { rule: 'seam', seam: 'whip', yarn: 'cream' },
    layout: {
      ...{ kind: 'blanket', motif: 'm', arrangement: 'offset-rows', columns: 6, rows: 8 },
      ...{ alternateRows: 'oneFewer', turn: 0, halves: true },
      cells: { fill: { pattern: 'rows', colourways: ['a', 'b'] } },
    },
    ...changes,
  }) as Project
