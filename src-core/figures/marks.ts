/** How each colourway is marked on paper: its letter, its ink texture, its yarns. */
import type { MotifAccount, Plan } from '../../shared-types/plan'
import type { Colourway } from '../../shared-types/project'
import { codesOf } from '../colour/letters'
import { unprintable } from '../letters/printable'
import { INK } from './figure'
import { texturesFor } from './ink-textures'
import { areasShown } from './parts-shown'

export interface SlotMark {
  readonly slot: string
  readonly yarnName: string
  /** "#rrggbb", whatever the file holds. */
  readonly colour: string
}

export interface ColourwayMark {
  /** Id of the colourway, '' for motifs that have none. */
  readonly id: string
  readonly code: string
  readonly name: string
  /** Number of the ink texture, from 0: the darker its yarns, the denser. */
  readonly texture: number
  readonly slots: readonly SlotMark[]
  /** Whole motifs, half motifs at the ends of rows, fillers between motifs. */
  readonly count: number
  readonly halves: number
  readonly fillers: number
}

/** Letters are printed in the motifs: more than so many characters have no room there. */
const LONGEST_CODE = 3

/** What stands for a yarn without a readable colour. */
export const UNKNOWN_COLOUR = '#d9d5cc'

/** "#rgb" and "#rrggbb" as "#rrggbb" in lower case; anything else becomes the unknown colour. */
export function paperColour(colour: string | undefined): string {
  const text = (colour ?? '').trim().toLowerCase()
  if (/^#[0-9a-f]{6}$/.test(text)) return text
  if (/^#[0-9a-f]{3}$/.test(text)) return '#' + [...text.slice(1)].map((c) => c + c).join('')
  return UNKNOWN_COLOUR
}

/** Relative luminance of "#rrggbb", 0 to 1 (WCAG 2.2, "relative luminance"). */
export function luminance(colour: string): number {
  const channel = (from: number): number => {
    const value = parseInt(colour.slice(from, from + 2), 16) / 255
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4
  }
  return 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5)
}

/** Under this relative luminance a yarn is too dark for lines of ink (judged on prints). */
const DARK_YARN = 0.06

/** The colour of a line that lies on, or between, yarns: ink, or a grey where all of them are nearly black. */
export const lineOn = (...yarns: readonly string[]): string =>
  Math.max(...yarns.map(luminance)) < DARK_YARN ? '#9a9a9a' : INK

/** The grey that is as light as a colour (the transfer function of sRGB, IEC 61966-2-1). */
export function greyOf(colour: string): string {
  const light = luminance(colour)
  const value = light <= 0.0031308 ? light * 12.92 : 1.055 * light ** (1 / 2.4) - 0.055
  const channel = Math.round(value * 255)
    .toString(16)
    .padStart(2, '0')
  return `#${channel.repeat(3)}`
}

/** CIE L* of a relative luminance (CIE 015:2018). */
const lightnessOf = (light: number): number =>
  light > 216 / 24389 ? 116 * Math.cbrt(light) - 16 : (light * 24389) / 27

/** How light a motif in a colourway looks from afar: every part weighs by its area. CIE L*. */
function lightnessOfWay(colours: ReadonlyMap<string, string>, motif: MotifAccount | undefined): number {
  const areas = motif ? areasShown(motif.layers) : new Map([...colours.keys()].map((slot) => [slot, 1]))
  let [light, whole] = [0, 0]
  for (const [slot, area] of areas) {
    light += area * luminance(colours.get(slot) ?? UNKNOWN_COLOUR)
    whole += area
  }
  return lightnessOf(whole > 0 ? light / whole : luminance(UNKNOWN_COLOUR))
}

/** The texture of each colourway that is placed, by its id; '' where something has none. */
function textureNumbers(plan: Plan): Map<string, number> {
  const { settled } = plan
  const placed = new Set([...plan.motifs, ...plan.halves, ...plan.fillers].map(({ colourway }) => colourway))
  const accounts = [plan.motif, ...plan.fillerMotifs, ...plan.accounts]
  const yarns = new Map(settled.yarns.map(({ id, colour }) => [id, paperColour(colour)]))
  const ways = settled.colourways.filter(({ id }) => placed.has(id))
  const lightnesses = ways.map((way) => {
    const own = Object.entries(way.yarns ?? {})
    const colours = new Map(own.map(([slot, id]) => [slot, yarns.get(id) ?? UNKNOWN_COLOUR]))
    return lightnessOfWay(
      colours,
      accounts.find((account) => account?.id === way.motif) ?? plan.motif ?? undefined,
    )
  })
  if (placed.size > ways.length) lightnesses.push(lightnessOf(luminance(UNKNOWN_COLOUR)))
  const textures = texturesFor(lightnesses)
  return new Map(textures.map((texture, i) => [ways[i]?.id ?? '', texture]))
}

type Counted = 'count' | 'halves' | 'fillers'
type Pieces = readonly { readonly colourway: string }[]
const NO_PIECES: Pieces = []

/**
 * A mark for each colourway that some pieces are worked in, in the file's order; those of pieces without one come
 * last, as one.
 */
function marksOf(
  plan: Plan,
  { count = NO_PIECES, halves = NO_PIECES, fillers = NO_PIECES }: Partial<Readonly<Record<Counted, Pieces>>>,
): ColourwayMark[] {
  const { colourways, yarns } = plan.settled
  const byId = new Map(yarns.map((yarn) => [yarn.id, yarn]))
  const textures = textureNumbers(plan)
  const codes = codesOf(colourways, (way) => writtenCode(way, plan.covered))
  const left = new Set([...count, ...halves, ...fillers].map(({ colourway }) => colourway))
  const tally = (isOwn: (id: string) => boolean): Pick<ColourwayMark, Counted> => {
    const of = (pieces: Pieces): number => pieces.filter(({ colourway }) => isOwn(colourway)).length
    return { count: of(count), halves: of(halves), fillers: of(fillers) }
  }
  const texture = (id: string): number => textures.get(id) ?? 0
  const marks = colourways.flatMap((way, i) =>
    left.delete(way.id)
      ? [{ ...markOf(way, codes[i]!, byId), texture: texture(way.id), ...tally((id) => id === way.id) }]
      : [],
  )
  if (left.size === 0) return marks
  const none = { id: '', code: '', name: '', texture: texture(''), slots: [] }
  return [...marks, { ...none, ...tally((id) => left.has(id)) }]
}

/** The colourways that the plan places, in the file's order; motifs without one come last. */
export const colourwayMarks = (plan: Plan): ColourwayMark[] =>
  marksOf(plan, { count: plan.motifs, halves: plan.halves })

/**
 * The marks of the fillers, one for each colourway that they are worked in, in the order of the file: textures of
 * their own, unless motifs are worked in the same colourway.
 */
export const fillerMarks = (plan: Plan): readonly ColourwayMark[] => marksOf(plan, { fillers: plan.fillers })

/** The mark of the colourway that a motif without a place is worked in; none where it has no colourway. */
export function markBeside({ settled, covered }: Plan, colourway: string): ColourwayMark[] {
  const { colourways, yarns } = settled
  const at = colourways.findIndex(({ id }) => id === colourway)
  if (at < 0) return []
  const code = codesOf(colourways, (way) => writtenCode(way, covered))[at]!
  const byId = new Map(yarns.map((yarn) => [yarn.id, yarn]))
  return [{ ...markOf(colourways[at]!, code, byId), texture: 0, count: 0, halves: 0, fillers: 0 }]
}

type Yarns = ReadonlyMap<string, { readonly name?: string | undefined; readonly colour?: string | undefined }>

/** The code that a colourway was given; none where paper cannot print it. */
const writtenCode = ({ code = '' }: Colourway, covered: Plan['covered']): string =>
  unprintable(code, covered).length > 0 ? '' : [...code.trim()].slice(0, LONGEST_CODE).join('')

/** Letter, name and yarns of a colourway. */
function markOf(
  colourway: Colourway,
  code: string,
  yarns: Yarns,
): Pick<ColourwayMark, 'id' | 'code' | 'name' | 'slots'> {
  const slots = Object.entries(colourway.yarns ?? {}).map(([slot, id]) => ({
    slot,
    yarnName: yarns.get(id)?.name || id,
    colour: paperColour(yarns.get(id)?.colour),
  }))
  return { id: colourway.id, code, name: colourway.name?.trim() ?? '', slots }
}
