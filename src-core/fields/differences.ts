/** What two versions of a project differ in, in numbers: for somebody who has to choose between them. */
import type { Project } from '../../shared-types/project'
import { ordinal } from '../figures/words'
import { blanketOf } from '../plans/layouts'
import { DEFAULTS } from '../settled'
import { formatNumber } from '../units/format'
import { writeQuantity } from '../units/written'
import { FIELDS } from './all'
import { placesOf, shownAs } from './field'
import type { At, Field } from './field'
import { fieldText } from './words'

/** A number of both versions, in words; null where a version does not have it. */
export interface Differing {
  readonly what: string
  readonly here: string | null
  readonly there: string | null
}

const sizeOf = (record: unknown): number =>
  typeof record === 'object' && record !== null ? Object.keys(record).length : 0

/** What of a project is counted where no field holds its number. */
const COUNTED: readonly (readonly [string, (project: Project) => number])[] = [
  ['Motifs made', ({ made }) => sizeOf(made)],
  ['Motifs painted', (project) => sizeOf(blanketOf(project)?.cells?.painted)],
  ['Yarns', ({ yarns }) => sizeOf(yarns)],
  ['Colourways', ({ colourways }) => sizeOf(colourways)],
  ['Written rounds', ({ motifs }) => (motifs ?? []).reduce((sum, { rounds }) => sum + sizeOf(rounds), 0)],
]

/** A field by its label, with the motif or yarn that it is of, where the file has a list of them. */
function nameOf(project: Project, field: Field, at: At): string {
  const label = fieldText(field.label, project)
  const list = /^(motifs|yarns)\[\]/.exec(field.path)?.[1] as 'motifs' | 'yarns' | undefined
  const [first] = at
  if (list === undefined || typeof first !== 'number') return label
  return `${project[list]?.[first]?.name || `${ordinal(first + 1)} ${list.slice(0, -1)}`}: ${label}`
}

/** Every number in which two versions differ: fields as the window names them, then what is counted. */
export function differencesOf(here: Project, there: Project): Differing[] {
  const units = here.units ?? DEFAULTS.units
  const fields = FIELDS.flatMap((field) => {
    const [mine, theirs] = [placesOf(here, field), placesOf(there, field)]
    const paths = new Set([...mine, ...theirs].map(({ where }) => where))
    return [...paths].flatMap((path): Differing[] => {
      const [one, other] = [mine, theirs].map((places) => places.find(({ where }) => where === path))
      if (one?.value === other?.value) return []
      const words = (value: number | undefined) =>
        value === undefined ? null : writeQuantity(shownAs(field, value), field.kind, units)
      const what = nameOf(one ? here : there, field, (one ?? other)!.at)
      return [{ what, here: words(one?.value), there: words(other?.value) }]
    })
  })
  const counts = COUNTED.map(([label, count]) => ({
    what: fieldText(label, here),
    here: formatNumber(count(here)),
    there: formatNumber(count(there)),
  }))
  return [...fields, ...counts.filter(({ here: mine, there: theirs }) => mine !== theirs)]
}
