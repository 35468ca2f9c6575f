/** The key of a chart: the symbols that it uses, and no others, each with its words in the chosen terms. */
import { counted } from '../words'
import type { Point } from '../../../shared-types/plan'
import type { Hand, Terms } from '../../../shared-types/project'
import type { Beginning } from '../../motif/rounds/account'
import type { LocatedElement, LocatedRound } from '../../motif/rounds/ground'
import type { WorkedElement } from '../../notation/worked'
import { inSpelling } from '../../stitches/spelling'
import { STITCH_KEYS } from '../../stitches/table'
import type { StitchKey } from '../../stitches/table'
import { stitchAbbreviation, stitchName, chainsMade } from '../../stitches/terms'
import type { FigureItem } from '../figure'
import { drawPath, INK } from '../figure'
import { workingArrow } from '../join-detail'
import { beginningInk } from './beginning'
import { elementsInOrder, elementInk } from './marks'
import type { ChartView } from './marks'
import type { Ink } from './symbols'

export interface ChartKeyEntry {
  readonly id: string
  readonly words: string
  /** Drawn about (0, 0), not higher and wider than `KEY_SYMBOL`. */
  readonly items: readonly FigureItem[]
}

/** Width and height in mm that a symbol of the key takes. */
export const KEY_SYMBOL = { width: 12, height: 9 } as const
const UNIT = 3.6
/** How a stitch around the post is abbreviated, as in BPsc. */
const POST_SIGNS = { front: 'FP', back: 'BP' } as const
const HEIGHTS: Readonly<Record<StitchKey, number>> = {
  ch: 1,
  'sl st': 0.3,
  sc: 1.1,
  hdc: 1.5,
  dc: 1.9,
  tr: 2.15,
  dtr: 2.35,
  trtr: 2.5,
}

interface Kind {
  readonly id: string
  readonly rank: number
  readonly words: string
}

/** What an element is called in the key; elements with the same id share a line. */
function kindOf(entry: LocatedElement, terms: Terms): Kind {
  const { element } = entry
  const post = element.into[0]?.post
  const short = `${post ? POST_SIGNS[post] : ''}${stitchAbbreviation(element.stitch, terms)}`
  const plain = `${short}: ${post ? `${post} post ` : ''}${stitchName(element.stitch, terms)}`
  const rank = 10 * STITCH_KEYS.indexOf(element.stitch)
  switch (element.role) {
    case 'stem':
      if (element.standing) return beginningKind(element, terms)
      return { id: 'ch', rank: 0, words: `ch: ${stitchName('ch', terms)}` }
    case 'space':
      return { id: 'ch', rank: 0, words: `ch: ${stitchName('ch', terms)}` }
    case 'beginning':
      return beginningKind(element, terms)
    case 'slip':
    case 'join':
    case 'travel':
      return {
        id: 'sl st',
        rank: 5,
        words: `${stitchAbbreviation('sl st', terms)}: ${stitchName('sl st', terms)}`,
      }
    case 'picot':
      return { id: `picot ${element.count}`, rank: 90, words: `picot of ${counted(element.count, 'chain')}` }
    default:
  }
  const place = element.into[0]
  const signs = [
    ...(place && place.loop !== 'both' && !place.post ? [`in the ${place.loop} loop only`] : []),
    ...(element.reverse ? ['worked backwards (crab stitch)'] : []),
  ]
  const id = [
    element.stitch,
    element.form,
    element.legs,
    entry.feet ? 'over' : 'in',
    post ?? '',
    ...signs,
  ].join(' ')
  const legs = element.legs
  const words = entry.feet
    ? `${short}${legs}tog: ${legs} ${short} worked together over ${counted(entry.feet.length, 'place')}`
    : element.form === 'puff' || element.form === 'popcorn' || element.form === 'bobble'
      ? `${element.form}${legs > 1 ? ` of ${legs} ${short}` : ''}`
      : legs > 1
        ? `cluster of ${legs} ${short} in one place`
        : plain
  return { id, rank: rank + signs.length + (post ? 1 : 0) + legs, words: [words, ...signs].join(', ') }
}

function beginningKind(element: WorkedElement, terms: Terms): Kind {
  const chains = `${chainsMade(element.count, terms)} at the beginning of a round`
  const counts = element.countsAs
    ? `, counts as ${stitchAbbreviation(element.countsAs, terms)}`
    : element.standing
      ? ', counts as a stitch'
      : ', does not count as a stitch'
  return { id: `beg ${element.count} ${counts}`, rank: 1 + element.count, words: chains + counts }
}

/** The view in which the key's samples are drawn. */
const sampleView = (hand: Hand): ChartView => ({
  scale: 1,
  mirrored: hand === 'right',
  centre: { x: 0, y: 0 },
  unit: UNIT,
  ring: 0,
  ringFoot: 0,
  turn: 0,
})

const drawn = (ink: Ink): FigureItem[] => [
  ...(ink.strokes.length > 0 ? [drawPath(ink.strokes, { stroke: INK, width: 0.3, cap: 'round' })] : []),
  ...(ink.fills.length > 0 ? [drawPath(ink.fills, { fill: INK })] : []),
]

function sample(entry: LocatedElement, view: ChartView): FigureItem[] {
  const { element } = entry
  const loose: LocatedElement = { element, base: { x: 0, y: 0 }, top: { x: 0, y: 0 }, chain: [] }
  const upright = (height: number): LocatedElement => {
    const half = (height * UNIT) / 2
    const feet = entry.feet?.map((_, i, all): Point => ({
      x: (i - (all.length - 1) / 2) * 0.7 * UNIT,
      y: half,
    }))
    return { ...loose, base: { x: 0, y: half }, top: { x: 0, y: -half }, ...(feet && { feet }) }
  }
  switch (element.role) {
    case 'space':
    case 'stem': {
      const ends = { base: { x: -1, y: 0 }, top: { x: 0, y: 0 }, end: { x: 1, y: 0 } }
      return drawn(elementInk({ ...loose, ...ends, chain: [{ x: 0, y: 0 }] }, view))
    }
    case 'slip':
    case 'join':
    case 'travel':
      return drawn(elementInk(loose, view))
    case 'picot': {
      const size = Math.min(1.9, 0.35 * element.count) * UNIT
      const chain = Array.from({ length: element.count }, (_, k): Point => {
        const angle = Math.PI + ((k + 1) / (element.count + 1)) * 2 * Math.PI
        return { x: (size / 2) * Math.sin(angle), y: (-size / 2) * Math.cos(angle) }
      })
      const ends = { base: { x: 0, y: size / 2 }, top: { x: 0, y: -size / 2 } }
      return drawn(elementInk({ ...loose, ...ends, chain }, view))
    }
    case 'beginning':
      return drawn(elementInk(upright(Math.min(2.4, 0.75 * element.count)), view))
    default:
      return drawn(elementInk(upright(HEIGHTS[element.stitch]), view))
  }
}

/** The lines of the key, chains and short stitches first. */
export function chartKey(
  located: readonly LocatedRound[],
  beginning: Beginning,
  { terms, hand }: { readonly terms: Terms; readonly hand: Hand },
): ChartKeyEntry[] {
  const view = sampleView(hand)
  const found = new Map<string, ChartKeyEntry & { rank: number }>()
  for (const round of located)
    for (const entry of elementsInOrder(round)) {
      const { id, rank, words } = kindOf(entry, terms)
      if (!found.has(id)) found.set(id, { id, rank, words, items: sample(entry, view) })
    }
  const entries = [...found.values()].sort((a, b) => a.rank - b.rank)
  if (beginning.stem.length > 0 && !found.has('ch')) {
    const chain = {
      strokes: beginningInk({ ...beginning, stem: [{ x: 0, y: 0 }] }, view).strokes,
      fills: [],
    }
    entries.unshift({ id: 'ch', rank: 0, words: `ch: ${stitchName('ch', terms)}`, items: drawn(chain) })
  }
  const way = hand === 'left' ? 'clockwise' : inSpelling('anticlockwise', terms)
  return [
    ...entries.map(({ id, words, items }) => ({ id, words, items })),
    ...ringEntry(beginning, view),
    { id: 'way', words: `direction of work, ${way}`, items: workingArrow(0, 0, 2.6, hand) },
  ]
}

function ringEntry(beginning: Beginning, sample: ChartView): ChartKeyEntry[] {
  if (beginning.stem.length > 0) return []
  const { ringChains } = beginning
  const view = { ...sample, unit: 2.4, ring: ringChains > 1 ? 3.4 : 1.6 }
  const small = { ...beginning, ringChains: Math.min(ringChains, 8) }
  const words =
    ringChains > 1
      ? `ring of ${counted(ringChains, 'chain')}`
      : ringChains === 1
        ? 'the one chain that the first round is worked into'
        : beginning.isBought
          ? 'bought ring, worked over'
          : 'adjustable ring (magic ring)'
  return [{ id: 'ring', words, items: drawn(beginningInk(small, view)) }]
}
