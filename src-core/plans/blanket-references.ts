/** What the layout of a blanket names of its project: motifs and colourways, with where they stand in the file. */
import type { SettledBlanket } from '../../shared-types/settled'
import type { Reference } from '../checks/references'

/** The motifs that a file puts into openings: into all, then by kind. */
export const fillerIds = ({ fillers }: SettledBlanket): (string | undefined)[] => [
  fillers?.motif,
  ...(fillers?.openings ?? []).map(({ motif }) => motif ?? undefined),
]

/** What fillers name, and which motifs the kinds of openings are between. */
const namedByFillers = (fillers: SettledBlanket['fillers']): Reference[] => [
  ['motif', fillers?.motif, 'layout.fillers.motif'],
  ['colourway', fillers?.colourway, 'layout.fillers.colourway'],
  ...(fillers?.openings ?? []).flatMap(({ between = [], motif, colourway }, i): Reference[] => {
    const where = `layout.fillers.openings[${i}]`
    return [
      ...between.map((id, k): Reference => ['motif', id, `${where}.between[${k}]`]),
      ['motif', motif ?? undefined, `${where}.motif`],
      ['colourway', colourway, `${where}.colourway`],
    ]
  }),
]

/** A colourway that the cells name. */
const inCells = (id: string, where: string): Reference => ['colourway', id, `layout.cells.${where}`]

/** All that the layout names. */
export const namedByBlanket = ({ motif, alternate, fillers, edging, cells }: SettledBlanket): Reference[] => [
  ['motif', motif, 'layout.motif'],
  ...(alternate?.motifs ?? []).map((id, i): Reference => ['motif', id, `layout.alternate.motifs[${i}]`]),
  ...Object.entries(cells.motifs ?? {}).map(([cell, id]): Reference => [
    'motif',
    id ?? undefined,
    `layout.cells.motifs["${cell}"]`,
  ]),
  ...namedByFillers(fillers),
  ['yarn', edging?.yarn, 'layout.edging.yarn'],
  ...(edging?.written ?? []).map(({ yarn }, i): Reference => [
    'yarn',
    yarn || undefined,
    `layout.edging.written[${i}].yarn`,
  ]),
  ...(cells.fill?.colourways ?? []).map((id, i) => inCells(id, `fill.colourways[${i}]`)),
  ...Object.entries(cells.painted ?? {}).map(([cell, id]) => inCells(id, `painted["${cell}"]`)),
  ...Object.entries(cells.held ?? {}).map(([cell, id]) => inCells(id, `held["${cell}"]`)),
]
