/** Where in the window a finding is mended. */
import type { Finding } from '../../shared-types/finding'
import type { PlaceId } from './view.svelte'

const BY_ROOM: Readonly<Record<string, PlaceId>> = {
  motif: 'motif',
  rounds: 'motif',
  photo: 'motif',
  gauge: 'motif',
  time: 'motif',
  layout: 'arrangement',
  edging: 'arrangement',
  fillers: 'arrangement',
  joins: 'joins',
  order: 'joins',
  colours: 'colours',
  yarn: 'yarn',
  garland: 'arrangement',
  applique: 'arrangement',
  kit: 'kit',
  progress: 'progress',
  paper: 'paper',
}

const BY_CODE: Readonly<Record<string, PlaceId>> = {
  'file/unknown-yarn': 'colours',
  'file/unknown-motif': 'arrangement',
  'file/unknown-colourway': 'colours',
  'file/unknown-cell': 'colours',
  'file/unknown-slot': 'colours',
  'file/missing-slot': 'colours',
  'yarn/no-weight': 'motif',
  'yarn/split-by-area': 'motif',
  'yarn/split-by-stitches': 'motif',
  'yarn/split-evenly': 'motif',
  'yarn/shares': 'motif',
  'yarn/no-colourway': 'colours',
  'yarn/edging-stitch': 'arrangement',
  'yarn/no-edging-yarn': 'arrangement',
  'yarn/edging-yarn-assumed': 'arrangement',
  'yarn/edging-yarn-of-several': 'arrangement',
  'yarn/no-joining-yarn': 'joins',
  'yarn/joining-yarn-assumed': 'joins',
  'yarn/joining-yarn-of-several': 'joins',
  'time/ends': 'joins',
  'garland/one-petal': 'joins',
  'garland/chains-between': 'joins',
  'kit/pack': 'yarn',
  'kit/not-counted': 'yarn',
}

/** Where what the file says is edited, by the beginning of its path; longer ones first. */
const BY_PATH: readonly (readonly [string, PlaceId])[] = [
  ['layout.kit', 'kit'],
  ['layout.cells', 'colours'],
  ['layout', 'arrangement'],
  ['motifs', 'motif'],
  ['gauge', 'motif'],
  ['colourways', 'colours'],
  ['yarns', 'yarn'],
  ['allowance', 'yarn'],
  ['joining', 'joins'],
  ['order', 'joins'],
  ['sheet', 'paper'],
]

/** The place where a finding is mended; null where it is about the file as a whole. */
export function placeOfFinding({ code, where }: Pick<Finding, 'code' | 'where'>): PlaceId | null {
  // What is wrong with the words of an edging is fixed where they stand, as with those of a motif.
  if (where.startsWith('layout.edging.written')) return 'arrangement'
  const room = code.slice(0, code.indexOf('/'))
  const known = BY_CODE[code] ?? BY_ROOM[room]
  if (known) return known
  if (room !== 'file' && room !== 'letters') return null
  // Title, designer and notes are printed on every kind of sheet.
  const elsewhere = room === 'letters' ? 'paper' : null
  return BY_PATH.find(([path]) => where.startsWith(path))?.[1] ?? elsewhere
}

/** Whether it says that a text cannot be printed as it is written. */
export const isOfLetters = ({ code }: Pick<Finding, 'code'>): boolean => code.startsWith('letters/')

/** Whether a place shows a finding: where it is fixed, and beside the page where it can be seen. */
export const isShownAt = (finding: Finding, place: PlaceId): boolean =>
  placeOfFinding(finding) === place || (place === 'paper' && isOfLetters(finding))
