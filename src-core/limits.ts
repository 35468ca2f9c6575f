/**
 * How large a project may be: one table, each limit with its reason. Whatever a file asks for beyond them ends with a
 * finding before any work is begun, so that no typed or pasted number decides how long a plan takes. What is read in
 * words has its own table (notation/limits.ts), as have drawings (geometry/svg-path.ts, svg-file.ts) and files
 * (src-main/documents/limits.ts). All are our own choice: several times what is made, and within what a small machine
 * plans in seconds.
 */
import type { BlanketLayout, Project } from '../shared-types/project'
import { TRACE_POINTS } from './motif/constants'
import { laidBlanketOf } from './plans/layouts'

export interface Limit {
  /** What is counted, in words for people, for more than one. */
  readonly what: string
  readonly most: number
  readonly count: (project: Project) => number
  /** Why so many and no more. */
  readonly reason: string
}

const blanket = (project: Project): Partial<BlanketLayout> => laidBlanketOf(project) ?? {}
const keys = (record: object | undefined): number => (record ? Object.keys(record).length : 0)
const largest = (counts: readonly number[]): number =>
  counts.reduce((most, count) => Math.max(most, count), 0)

export const PROJECT_LIMITS: readonly Limit[] = [
  {
    what: 'yarns',
    most: 500,
    count: ({ yarns }) => yarns?.length ?? 0,
    reason:
      'every two that are in use are held against each other; a shade card of a mill has some two hundred',
  },
  {
    what: 'motifs to choose from',
    most: 300,
    count: ({ motifs }) => motifs?.length ?? 0,
    reason: 'each is read and measured; a collection of blocks for one blanket has up to two hundred',
  },
  {
    what: 'colourways',
    most: 500,
    count: ({ colourways }) => colourways?.length ?? 0,
    reason: 'a map marks them by letters; a scrap blanket has one for each motif',
  },
  {
    what: 'motifs that alternate',
    most: 30,
    count: (project) => new Set(blanket(project).alternate?.motifs).size,
    reason: 'the openings between every few of them that can meet are worked out',
  },
  {
    what: 'places in the list of motifs that alternate',
    most: 60,
    count: (project) => blanket(project).alternate?.motifs?.length ?? 0,
    reason: 'each place of the list meets each other one, whichever motif stands there',
  },
  {
    what: 'different motifs put in by hand',
    most: 200,
    count: (project) => new Set(Object.values(blanket(project).cells?.motifs ?? {})).size,
    reason: 'as for motifs that alternate, but each of them meets its own neighbours alone',
  },
  {
    what: 'colours in one motif',
    most: 60,
    count: ({ motifs }) =>
      largest(
        (motifs ?? []).map((motif) =>
          motif.kind === 'rounds'
            ? new Set(motif.rounds?.map(({ slot }) => slot)).size
            : (motif.slots?.length ?? 0),
        ),
      ),
    reason: 'a motif worked in a new colour each round has some twenty',
  },
  {
    what: 'rounds in one motif',
    most: 500,
    count: ({ motifs }) =>
      largest((motifs ?? []).map((motif) => (motif.kind === 'rounds' ? (motif.rounds?.length ?? 0) : 0))),
    reason: 'the largest blankets worked in the round have some two hundred',
  },
  {
    what: 'points in one traced outline',
    most: TRACE_POINTS,
    count: ({ motifs }) =>
      largest(
        (motifs ?? []).map((motif) => (motif.kind === 'measured' ? (motif.traced?.points?.length ?? 0) : 0)),
      ),
    reason: 'eight to the centimetre round a flower of 40 cm; every two edges are held against each other',
  },
  {
    what: 'rounds of edging',
    most: 100,
    count: (project) => {
      const { edging } = blanket(project)
      return (edging?.rounds?.length ?? 0) + (edging?.written?.length ?? 0)
    },
    reason: 'a wide border has some thirty',
  },
  {
    what: 'joins for pairs of motifs',
    most: 1000,
    count: ({ joining }) => joining?.pairs?.length ?? 0,
    reason: 'forty motifs have as many pairs',
  },
  {
    what: 'pack sizes of one yarn',
    most: 20,
    count: ({ yarns }) => largest((yarns ?? []).map(({ packs }) => packs?.length ?? 0)),
    reason: 'every way to buy an amount in them is weighed; a shop has three or four',
  },
  {
    what: 'other things in a kit',
    most: 500,
    count: ({ layout }) => (layout && 'kit' in layout ? (layout.kit?.extras?.length ?? 0) : 0),
    reason: 'a kit card has room for some dozens, and labels say how many more there are',
  },
  {
    what: 'painted motifs',
    most: 300_000,
    count: (project) => {
      const { painted, held, motifs, kept } = blanket(project).cells ?? {}
      return Math.max(keys(painted), keys(held), keys(motifs), keys(kept?.under))
    },
    reason: 'three for each motif of the largest blanket: itself, a half and a filler',
  },
  {
    what: 'motifs that are made',
    most: 300_000,
    count: ({ made, joined }) => Math.max(keys(made), keys(joined)),
    reason: 'as for painted motifs',
  },
  {
    what: 'motifs in an order of your own',
    most: 300_000,
    count: ({ order }) => (Array.isArray(order) ? order.length : 0),
    reason: 'as for painted motifs',
  },
]
