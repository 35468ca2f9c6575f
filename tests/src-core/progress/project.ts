/** A blanket that can be reckoned by hand; every number is made up. */
import type { BlanketLayout, Motif, Project, Yarn } from '../../../shared-types/project'
import type { Finding } from '../../../shared-types/finding'
import { planProject } from '../../../src-core/plan'

/** 1 g of sand in the middle and 3 g of moss round it, weighed one by one: 20 minutes each. */
export const disc: Motif = {
  ...{ id: 'm', name: 'Disc', kind: 'measured', outline: 'round', across: 60, minutes: 20 },
  slots: [
    { slot: 'middle', grams: 1 },
    { slot: 'rim', grams: 3 },
  ],
}

/** Three rows of four, row by row from the left: 1 to 4, 5 to 8, 9 to 12. Joined at 17 points. */
export const layout: BlanketLayout = {
  ...{ kind: 'blanket', arrangement: 'straight-rows', motif: 'm', columns: 4, rows: 3 },
  cells: { fill: { pattern: 'rows', colourways: ['a', 'b'] } },
}

/** Rows 1 and 3 in A (rim of moss), row 2 in B (rim of clay); middles of sand. 10 % for waste. */
export const project = (more: Partial<Project> = {}, blanket: Partial<BlanketLayout> = {}): Project => ({
  ...{ format: 'petalyard-project', version: 1, title: 'Twelve', order: 'one-way' },
  gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100 },
  yarns: [
    { id: 'sand', name: 'Sand', ballGrams: 50, ballMetres: 125, price: 4 },
    { id: 'moss', name: 'Moss', ballGrams: 50, ballMetres: 125, price: 4, onHandGrams: 30 },
    { id: 'clay', name: 'Clay', ballGrams: 50, ballMetres: 125, price: 4 },
  ],
  motifs: [disc],
  colourways: [
    { id: 'a', code: 'A', motif: 'm', yarns: { middle: 'sand', rim: 'moss' } },
    { id: 'b', code: 'B', motif: 'm', yarns: { middle: 'sand', rim: 'clay' } },
  ],
  layout: { ...layout, ...blanket },
  allowance: { wastePercent: 10, tail: 150 },
  ...more,
})

/** Marks for the first so many motifs in working order. */
export const first = (count: number, day = ''): Record<string, string> =>
  Object.fromEntries(
    Array.from({ length: count }, (_, i) => [`${Math.floor(i / 4) + 1},${(i % 4) + 1}`, day]),
  )

type Weighing = NonNullable<Yarn['left']>

/** The same project with a yarn weighed again. */
export function weighed(base: Project, id: string, left: Weighing): Project {
  return { ...base, yarns: base.yarns!.map((yarn) => (yarn.id === id ? { ...yarn, left } : yarn)) }
}

export const progressOf = (of: Project) => planProject(of).progress
export const findingsOf = (of: Project): Finding[] =>
  planProject(of).findings.filter(({ code }) => code.startsWith('progress/'))
export const codesOf = (of: Project): string[] => findingsOf(of).map(({ code }) => code)
/** Grams left of each yarn. */
export const gramsOf = (of: Project): Record<string, number> =>
  Object.fromEntries(progressOf(of).left.yarns.map(({ id, grams }) => [id, grams.expected]))
