/** What ways to a size are called. */
import type { Terms, UnitSystem } from '../../shared-types/project'
import type { SizeWay, WayKind, WishedSize } from '../../shared-types/ways'
import { capital, counted, listed } from '../figures/words'
import type { BlanketCounts } from '../layout/blanket'
import { saying } from '../stitches/spelling'
import { termWord } from '../stitches/terms'
import {
  formatFineLength,
  formatLength,
  formatMass,
  formatNumber,
  formatOff,
  formatSize,
} from '../units/format'
import { MM_PER_INCH } from '../units/quantity'
import type { Millimetres } from '../units/quantity'
import { listOf } from '../joins/words'
import { WAYS } from './constants'
import { SIDES } from './size'
import type { Size } from './size'

export interface Speech {
  readonly units: UnitSystem
  readonly terms: Terms
}

/** What a change does to the fabric, besides making every stitch larger by a factor. */
export interface FabricChange {
  /** Of every stitch. */
  readonly factor?: number
  /** `other-rounds`: a motif that was measured gets others. */
  readonly fabric?: 'open' | 'closer' | 'blocked' | 'other-rounds'
}

const percent = (share: number): string => `${formatNumber(Math.abs(share) * 100, 1)} %`

export const countWay = ({ arrangement, rings, columns, rows }: BlanketCounts): string =>
  arrangement === 'rings'
    ? counted(rings, 'ring')
    : `${counted(columns, 'motif')} in a row, ${counted(rows, 'row')}`

/** `isFirst`: there is none yet, so that there is nothing to add to; `atMouth`: it is worked round the open end alone. */
export function edgingWay(
  rounds: number,
  stitch: string,
  { terms }: Speech,
  { isFirst = false, atMouth = false } = {},
): string {
  const name = terms === 'US' ? 'border' : 'edging'
  const more = isFirst ? counted(rounds, 'round') : counted(rounds, 'more round', 'more rounds')
  return rounds > 0
    ? `${more} of ${name} (${stitch})${atMouth ? ' at the mouth' : ''}`
    : `${counted(-rounds, 'fewer round', 'fewer rounds')} of ${name}`
}

export const chainsWay = (chains: number): string =>
  chains === 0 ? 'no joining chains' : `joining chains of ${chains} ch`

export const gapWay = (gap: Millimetres, { units }: Speech): string =>
  `motifs ${formatFineLength(gap, units)} apart`

export function blockingWay(wider: number, longer: number): string {
  // What vanishes where it is told is no stretching.
  const side = (factor: number, more: string) =>
    factor > 1 && percent(factor - 1) !== percent(0) ? `${percent(factor - 1)} ${more}` : ''
  const sides = [side(wider, 'wider'), side(longer, 'longer')]
  const told = sides.filter(Boolean).join(' and ')
  return told ? `block ${told}` : 'block without stretching'
}

/** `after`: what is changed with it. Of another hook the gauge is looser or tighter than that hook gives. */
export const gaugeWay = (
  factor: number,
  motif: Millimetres,
  { units, terms }: Speech,
  after?: WayKind,
): string =>
  `${terms === 'US' ? 'gauge' : 'tension'} ${percent(factor - 1)} ${factor > 1 ? 'looser' : 'tighter'}` +
  `${after === 'hook' ? ' with it' : ''}, motifs of ${formatFineLength(motif, units)}`

export const outlineWay = ({ width, height }: Size, isBoth: boolean, units: UnitSystem): string =>
  `outline ${isBoth ? formatSize(width, height, units) : `${formatLength(width, units)} wide`}`

export const hookWay = (hook: Millimetres, before: Millimetres): string =>
  `${formatNumber(hook, 2)} mm hook instead of ${formatNumber(before, 2)} mm`

export const roundWay = (more: boolean): string => `one ${more ? 'more' : 'fewer'} round in the motif`

/** Share by which a hook and a gauge that make up for each other leave the fabric what it is (ours). */
const SAME_GAUGE = 0.005

/**
 * What all that is changed does to the fabric, said once: another hook and another gauge are one factor on every
 * stitch, however they add up, and nothing else says more of it. Empty where it stays.
 */
export function fabricWords(changes: readonly FabricChange[], speech: Speech): string {
  const factors = changes.flatMap(({ factor }) => factor ?? [])
  const factor = factors.reduce((all, each) => all * each, 1)
  const is = (fabric: FabricChange['fabric']) => changes.some((change) => change.fabric === fabric)
  const gauge =
    Math.abs(factor - 1) < SAME_GAUGE
      ? 'Fabric and drape about as now.'
      : factor > 1
        ? 'Looser, more open fabric with a softer drape.'
        : 'Denser, firmer fabric with less drape.'
  const drape = (more: string) => (factors.length > 0 ? '' : `, ${more}`)
  return [
    ...(factors.length > 0 ? [`${gauge} Only a swatch shows the real size.`] : []),
    ...(is('open') ? [`More open between the motifs${drape('with a softer drape')}.`] : []),
    ...(is('closer') ? [`Less open between the motifs${drape('and firmer')}.`] : []),
    ...(is('blocked')
      ? [`Stretched a little. Some ${speech.terms === 'US' ? 'fibers' : 'fibres'} relax again in the wash.`]
      : []),
    ...(is('other-rounds')
      ? ['Its size is worked out from the one you measured: make one and measure it.']
      : []),
  ].join(' ')
}

/** Said where something is made: what is no way for that. */
export const MADE_STAYS =
  'Motifs that are made keep their place, hook and joins, so fewer things can be changed.'

/** Said where stitches and joins stay what they are. */
export const SAME_FABRIC = 'Fabric and drape as now.'

/** "120 cm wide", "90 × 120 cm". */
export function wishWords({ width, height }: WishedSize, units: UnitSystem): string {
  if (width !== undefined && height !== undefined) return formatSize(width, height, units)
  return width !== undefined
    ? `${formatLength(width, units)} wide`
    : `${formatLength(height ?? 0, units)} long`
}

/** "to the millimetre", or how far off on each side, in the unit of the size beside it: "0.3 cm too wide, 1.2 cm too short". */
export function errorWords({ width, height }: WishedSize, units: UnitSystem): string {
  const side = (error: number | undefined, less: string, more: string) =>
    error === undefined || Math.abs(error) < exactTo(units)
      ? ''
      : `${formatOff(Math.abs(error), units)} too ${error > 0 ? more : less}`
  const off = [side(width, 'narrow', 'wide'), side(height, 'short', 'long')].filter(Boolean)
  return off.length > 0 ? off.join(', ') : 'exactly that'
}

/**
 * What there is to say of a size that is not the one asked for: what blocking could do about it, or that it comes no
 * nearer; empty where it is that.
 */
export function restWords(error: WishedSize, size: Size, units: UnitSystem): string {
  const off = SIDES.flatMap((side) =>
    Math.abs(error[side] ?? 0) < exactTo(units) ? [] : [{ side, share: -(error[side] ?? 0) / size[side] }],
  )
  if (off.length === 0) return ''
  if (off.some(({ share }) => share < 0 || share > WAYS.blocking)) return 'The nearest that this comes to it.'
  const sides = off.map(
    ({ side, share }) => `${formatNumber(100 * share, 1)} % ${side === 'width' ? 'wider' : 'longer'}`,
  )
  return `Blocked ${listOf(sides)} it would be there.`
}

/** mm: nearer is there. */
export const EXACT: Millimetres = 0.5

/** Off by less is not worth saying: what no tape shows, a millimetre or a sixteenth of an inch. */
export const exactTo = (units: UnitSystem): Millimetres => (units === 'imperial' ? MM_PER_INCH / 16 : 1)

/** Said where no way comes nearer, though other arrangements may. */
export const NOTHING_NEARER = 'Nothing that keeps this arrangement comes nearer than the present size.'

/** Said where grams are those of border and joins alone. */
export const MOTIFS_ON_TOP = 'The motifs are not weighed yet: what they take comes on top.'

/** "To buy: Rust 3 balls, Moss 1 ball", "To buy, without the motifs: …"; empty where nothing is to be bought. */
export const buyWords = (
  { buy, unweighed }: Pick<SizeWay, 'buy' | 'unweighed'>,
  nameOf: (yarn: string) => string,
  terms: Terms,
): string =>
  buy
    ? `To buy${unweighed ? ', without the motifs' : ''}: ${buy.map(({ id, balls }) => `${nameOf(id)} ${counted(balls, termWord('ball', terms))}`).join(', ')}`
    : ''

/** "Missing, and no more to be had: Rust 48 g"; empty where nothing is. */
export const missingWords = (
  { missing }: Pick<SizeWay, 'missing'>,
  nameOf: (yarn: string) => string,
  units: UnitSystem,
): string =>
  missing
    ? `Missing, and no more to be had: ${missing.map(({ id, grams }) => `${nameOf(id)} ${formatMass(grams, units)}`).join(', ')}`
    : ''

/** "Beyond your limits: Rust by 62 g, colourway B by 4 motifs"; empty where none is passed. */
export function beyondWords(
  beyond: SizeWay['beyond'],
  names: { readonly yarn: (id: string) => string; readonly colourway: (id: string) => string },
  { units, terms }: Speech,
): string {
  if (!beyond) return ''
  const each = beyond.map((limit) =>
    'yarn' in limit
      ? `${names.yarn(limit.yarn)} by ${formatMass(limit.grams, units)}`
      : saying(terms)`colourway ${names.colourway(limit.colourway)} by ${counted(limit.motifs, 'motif')}`,
  )
  return `Beyond your ${each.length > 1 ? 'limits' : 'limit'}: ${each.join(', ')}`
}

/** The yarns of a way of which anything is known: of a motif that nobody weighed 0 g would be told as a weight. */
export const knownYarns = (yarns: SizeWay['yarns']): SizeWay['yarns'] =>
  yarns.filter(({ grams, difference }) => grams !== 0 || difference !== 0)

/** "Border in Moss": of a way with another edging, or in another yarn; empty where neither changes. */
export const edgingInWords = (
  { edgingIn = [] }: Pick<SizeWay, 'edgingIn'>,
  nameOf: (id: string) => string,
  terms: Terms,
): string =>
  edgingIn.length === 0 ? '' : `${capital(termWord('edging', terms))} in ${listed(edgingIn.map(nameOf))}`

/** "12 g more", "3 g less", "as now". */
export function yarnChange(grams: number, units: UnitSystem): string {
  const told = formatMass(Math.abs(grams), units)
  if (told === formatMass(0, units)) return 'as now'
  return `${told} ${grams > 0 ? 'more' : 'less'}`
}
