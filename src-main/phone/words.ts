/** The words of the page for a phone: the same in the page as it is written and in what its script changes. */
import type { Terms } from '../../shared-types/project'
import type { PhoneData, PhonePiece } from './data'
import { capital, counted, listed } from '../../src-core/figures/words'
import { saying } from '../../src-core/stitches/spelling'
import { formatNumber } from '../../src-core/units/format'

/** Where a thing hangs on its cord, and how it is fastened. */
export const thingWords = (along: string, chains: number | null, how: string): string =>
  [
    `${along} from the tie.`,
    ...(chains === null || chains === 0 ? [] : [`Ch ${chains} since the one before.`]),
    how === '' ? '' : `${capital(how)}.`,
  ]
    .filter(Boolean)
    .join(' ')

interface ItemPlace {
  readonly across: string
  readonly down: string
  readonly turn: number
  readonly flipped: boolean
  /** Labels of the items that it overlaps. */
  readonly below: readonly string[]
}

/** Where an item lies on its panel. */
export const itemWords = ({ across, down, turn, flipped, below }: ItemPlace): string =>
  [
    `Its middle is ${across} from the left edge and ${down} from the top.`,
    ...(turn === 0 ? [] : [`Rotated ${formatNumber(turn, 1)}° clockwise.`]),
    ...(flipped ? ['Wrong side up.'] : []),
    ...(below.length > 0 ? [`It lies over ${listed(below)}.`] : []),
  ].join(' ')

/** "12 of 60 motifs made"; fillers and half motifs are pieces, too. */
export const progressWords = (pieces: readonly Pick<PhonePiece, 'id' | 'name'>[], made: number): string => {
  const all = pieces.filter(({ id }) => id !== '')
  const name = all.every((piece) => piece.name === 'motif') ? 'motif' : 'piece'
  return `${formatNumber(made)} of ${counted(all.length, name)} made`
}

/** "Row 3: 4 of 12 made". */
export const rowWords = (kind: PhoneData['kind'], row: number, made: number, all: number): string => {
  const where = { blanket: `Row ${row}`, garland: 'Along the cord', applique: 'On the panel' }[kind]
  return `${where}: ${formatNumber(made)} of ${formatNumber(all)} made`
}

export const PHONE_WORDS = {
  map: 'Map. Arrow keys go from motif to motif, Space marks one as made, plus and minus zoom.',
  zoomIn: 'Zoom in',
  zoomOut: 'Zoom out',
  whole: 'Whole map',
  made: 'Made',
  previous: 'Previous',
  next: 'Next',
  nextToMake: 'Next to make',
  all: 'All motifs',
  show: (label: string): string => `Show ${label}`,
  key: (terms: Terms): string => saying(terms)`Colourways`,
  keyRemark: (terms: Terms): string =>
    saying(terms)`A colourway is a combination of yarns for one motif, known by its letter.`,
  motifs: (count: number): string => (count === 1 ? 'The motif' : 'The motifs'),
  rounds: (name: string, hasChart: boolean): string =>
    `${name}: ${hasChart ? 'rounds and chart' : 'how it is worked'}`,
  elsewhere: (name: string): string =>
    `The rounds of ${name} are not on this page: work it from the pattern of the motif that was measured.`,
  home: 'Bring your marks home',
  homeRemark:
    'What you mark stays on this phone. To bring it into the project, copy this text and paste it at Progress in Petalyard.',
  homeText: 'Your marks as text',
  copy: 'Copy the marks',
  copied: 'Copied.',
  notCopied: 'This phone does not allow copying here: select the text and copy it.',
  clear: 'Clear your marks',
  cleared: 'Your marks are cleared; those of the project stay.',
  notKept: 'This browser keeps nothing for this page: copy your marks before you close it.',
  cautions: 'Take care',
  first: 'Select a motif on the map to see how it is joined.',
  noScript: 'This page needs scripts, which are part of it; it loads nothing from anywhere.',
  piece: ({ name, label }: Pick<PhonePiece, 'name' | 'label'>): string => capital(`${name} ${label}`),
  noWords: 'Nothing is joined to it.',
  picture: (piece: string): string => `${piece} and what is round it; places where it is joined are ringed`,
} as const
