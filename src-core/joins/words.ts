/**
 * The words of the working order, as patterns: working numbers stand in them in braces, “{12}”, so that steps which are
 * alike can be told once. Left and right on a motif are seen from its middle, looking outward.
 */
import { numeral } from '../figures/words'
import { isAlike } from '../motif/numbering'
import { plural } from '../units/language'
import type { Anchor, MotifAccount } from '../../shared-types/plan'

type Shape = MotifAccount['shape']

/** How left and right are meant wherever the working order is told. */
export const SIDES_LEGEND =
  'Left and right on a motif are seen from its middle, looking outward, right side up; “to the left of 7” is left of the place where 7 is joined.'

/** The same below a single step. */
export const SIDES_IN_SHORT = 'Left and right: seen from its middle.'

/** How spaces are counted wherever the working order is told by them. */
export const SPACES_LEGEND =
  'Spaces are counted in the direction of work; space 1 is the first that the last round of a motif makes. Where a place lies between two spaces, join at the stitch between them, with a chain on both sides of the join.'

/** How marks are counted wherever the working order is told by them; `count` of them, if all motifs have as many. */
export const marksLegend = (count: number | null): string =>
  `Divide the edge of each circle evenly${count === null ? '' : ` in ${numeral(count)}`} with stitch markers before its last round, counted in the direction of work, and move them up as you pass them; mark 1 is where its last round begins, and where it ends with a slip stitch into its first stitch. Join at the marks, and leave the markers in until the circles round it are joined.`

/** In how many parts all motifs are divided; null where they differ. */
export function marksIn(accounts: readonly (Pick<MotifAccount, 'spaces'> | null)[]): number | null {
  const counts = new Set(accounts.flatMap((each) => (each?.spaces?.marks ? each.spaces.count : [])))
  return counts.size === 1 ? [...counts][0]! : null
}

/**
 * What explains the words of a working order, of those that are told; empty where nothing needs it. `marks`: in how
 * many parts the edges of circles are divided, where all are alike.
 */
export const legendsOf = (words: readonly string[], marks: number | null): string[] => [
  ...(words.some((told) => / (left|right) of /.test(told)) ? [SIDES_LEGEND] : []),
  ...(words.some((told) => /\bspaces? \d/.test(told)) ? [SPACES_LEGEND] : []),
  ...(words.some((told) => /\bmarks? \d/.test(told)) ? [marksLegend(marks)] : []),
]

/** A place of the motif in hand with what is to be told of it. */
export interface ToldPlace {
  readonly anchor: Anchor
  /** Its petal, corner or side, counted from the motif's own start. */
  readonly number: number
  /** "petal 4", "place 2 of side 3", "at 9 o'clock". */
  readonly name: string
  /** How it is joined; null where it stays free. */
  readonly phrase: string | null
  /** Working number of the motif that was there first. */
  readonly partner: number
  /** All that meet there already. */
  readonly partners: readonly number[]
  /** The whole side is joined, not a place of it. */
  readonly along?: true
}

const ORDINALS = ['', 'next', '2nd', '3rd']
const ordinal = (n: number): string => ORDINALS[n] ?? `${n}th`

/** "3", "3 and 7", "3, 7 and 9". */
export function listOf(items: readonly (string | number)[]): string {
  if (items.length < 2) return String(items[0] ?? '')
  return `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`
}

const noun = (shape: Shape): string => (shape === 'straight' ? 'corner' : 'petal')

/** Whether a motif's places are counted; those of others are told by the clock or by their names. */
const isCounted = (shape: Shape): boolean => shape === 'petals' || shape === 'straight'

const isLeading = ({ kind }: Anchor): boolean => kind === 'tip' || kind === 'corner'

/** A working number as it stands in a pattern: another name can take its place. */
const numberMark = (label: number): string => `{${label}}`

/** The words of a pattern: its working numbers as they are, or by other names. */
export const wordsOf = (pattern: string, name: (label: string) => string = (label) => label): string =>
  pattern.replace(/\{(\d+)\}/g, (_, label: string) => name(label))

/** The working numbers that a pattern names. */
export const namedIn = (pattern: string): string[] =>
  [...pattern.matchAll(/\{(\d+)\}/g)].map(([, label]) => label!)

const marksOf = (labels: readonly number[]): string => listOf(labels.map(numberMark))

/** Whom a seam leads to: beside the number of a side, another number alone would not say that it is a motif. */
const motifsOf = (labels: readonly number[]): string => `${plural(labels.length, 'motif')} ${marksOf(labels)}`

/**
 * Joining where others meet already: which of them was there first makes no difference to the hand. `side` tells places
 * apart at which the same motifs meet, as the first of them looks outward.
 */
export function spacePhrase(
  host: number,
  others: readonly number[],
  side: 'left' | 'right' | 'middle' | null,
): string {
  const shared = `shared by ${marksOf([host, ...others])}`
  const which = side === null ? '' : side === 'middle' ? 'middle ' : `${side}-hand `
  return `join into the ${which}space ${shared}${side === null ? '' : `, seen from ${numberMark(host)}`}`
}

interface JoinPhrase {
  readonly shape: Shape
  readonly host: number
  readonly anchor: Anchor
  /** The place on the host by its name, where places are not counted. */
  readonly name: string
  /** Working number of the motif joined nearest by on the host, 0 for none. */
  readonly reference: number
  /** Places from there, counter-clockwise positive. */
  readonly leftward: number
  readonly own: number
}

/** Joining to a place that is told by its name or by the clock. */
export const clockPhrase = (host: number, name: string): string =>
  `join to ${numberMark(host)}, at its ${name}`

/** Whether a place is told as one between two spaces. */
export const isBetweenSpaces = (name: string): boolean => name.startsWith('between spaces')

/** "in its space 2", "between its spaces 5 and 6", "at its mark 2". */
const inIts = (name: string): string =>
  name.startsWith('between')
    ? name.replace('between', 'between its')
    : `${name.startsWith('mark') ? 'at' : 'in'} its ${name}`

/** Joining to a round motif whose spaces are counted: where one of the two lies between spaces, across a chain. */
export const spacePlacePhrase = (host: number, name: string, isAcross: boolean): string =>
  `join ${isAcross ? 'with a joining chain ' : ''}to ${numberMark(host)}, ${inIts(name)}`

/** Joining a whole side to that of a motif. */
export const alongPhrase = (host: number): string =>
  `join stitch for stitch along its whole length to ${numberMark(host)}`

/** Joining to a place of a motif where nothing is joined yet. */
export function joinPhrase({ shape, host, anchor, name, reference, leftward, own }: JoinPhrase): string {
  const there = numberMark(host)
  if (!isCounted(shape)) return clockPhrase(host, name)
  if (!isLeading(anchor)) return `join to the place of ${there} that lies opposite`
  if (reference === 0) return `join to any free ${noun(shape)} of ${there}`
  const side = leftward > 0 ? 'left' : 'right'
  const from = reference === own ? 'the one just joined' : numberMark(reference)
  return `join to ${there}, ${ordinal(Math.abs(leftward))} free ${noun(shape)} to the ${side} of ${from}`
}

/** "each of its four sides". */
export const sidesWords = (sides: number): string => `each of its ${numeral(sides)} sides`

/** Joining along a side: all of it, or at how many of its places. */
function sidePhrase(partner: number, places: readonly ToldPlace[], told: readonly ToldPlace[]): string {
  const { number } = places[0]!
  const whole = told.filter((place) => place.anchor.kind === 'side' && place.number === number)
  // Along a side that several meet its places are not the quarters that the legend tells of.
  const evenly = places.length === whole.length && !places.some(({ anchor }) => anchor.id.includes('/'))
  // How many stitches that is the round alone says: where a side has no middle one, two stand for it.
  return evenly
    ? `join to ${numberMark(partner)} evenly along the side`
    : `join to ${numberMark(partner)} at ${places.length} ${plural(places.length, 'place')}, each to the one that lies opposite`
}

/**
 * The whole step in working direction: places without a join as runs, joins one by one, neighbouring places along
 * one side taken together.
 */
export function stepWords(told: readonly ToldPlace[], shape: Shape, isWhole = true): string {
  const joins = told.filter((place) => place.phrase !== null)
  const counted = isCounted(shape)
  // What is joined on every side is told once: "along each of its four sides".
  if (joins.length > 1 && told.every(({ along }) => along))
    return `join stitch for stitch along ${sidesWords(told.length)}: ${told
      .map(({ name, partner }) => `${name} to ${numberMark(partner)}`)
      .join(', ')}`
  if (joins.length === 0) {
    if (!counted)
      return `work it without joining${told.some(({ name }) => name.startsWith('mark')) ? ', beginning anywhere' : ''}`
    const leading = told.filter(({ anchor }) => isLeading(anchor))
    const all = new Set(leading.map(({ number }) => number)).size
    // A half begins at its end, and what is not alike where its rounds do.
    const isFree = isWhole && isAlike({ anchors: leading.map(({ anchor }) => anchor) })
    return `work all ${all} ${noun(shape)}s without joining${isFree ? ', beginning at any of them' : ''}`
  }
  // A petal is free as a whole; of a corner and the side after it each is told by itself.
  const busy = new Set(shape === 'petals' ? joins.map(({ number }) => number) : [])
  const phrases: string[] = []
  let free: number[] = []
  const tellFree = (): void => {
    if (free.length > 0)
      phrases.push(`work ${plural(free.length, noun(shape))} ${runOf(free)} without joining`)
    free = []
  }
  let side = ''
  for (const { anchor, number, name, phrase, partner } of told) {
    if (phrase === null) {
      if (counted && isLeading(anchor) && !busy.has(number)) free.push(number)
      continue
    }
    tellFree()
    if (shape === 'straight' && anchor.kind === 'side') {
      const along = `${number} ${partner}`
      if (along === side) continue
      side = along
      const places = joins.filter(
        (join) => join.anchor.kind === 'side' && join.number === number && join.partner === partner,
      )
      if (places.length > 1) {
        phrases.push(`side ${number}: ${sidePhrase(partner, places, told)}`)
        continue
      }
    }
    phrases.push(`${name}: ${phrase}`)
  }
  tellFree()
  return phrases.join('; ')
}

/** What the hand does along a seam: sewn with a needle, or crocheted. */
export type SeamVerb = 'sew' | 'crochet'

/** One place of a finished motif, with whom it meets. */
export const seamPhrase = (verb: SeamVerb, name: string, partners: readonly number[]): string =>
  `${verb} ${name} to ${motifsOf(partners)}`

/**
 * The step of a finished motif that is put on with a seam: its sides (or else its corners or tips) with whom they meet.
 * Corners beside a seam are not told: they close where seams cross.
 */
export function seamWords(told: readonly ToldPlace[], shape: Shape, verb: SeamVerb): string {
  const joins = told.filter((place) => place.phrase !== null)
  if (joins.length === 0) return 'lay it in its place'
  const isAlong = ({ anchor }: ToldPlace): boolean => shape === 'straight' && anchor.kind === 'side'
  const sides = new Map<number, Set<number>>()
  for (const { number, partner } of joins.filter(isAlong))
    sides.set(number, (sides.get(number) ?? new Set()).add(partner))
  const phrases =
    sides.size > 0
      ? [...sides].map(([side, partners]) => `side ${side} to ${motifsOf([...partners])}`)
      : joins.map(({ name, partners }) => `${name} to ${motifsOf(partners)}`)
  return `${verb} ${phrases.join('; ')}`
}

/** Numbers that follow each other: "4", "1 and 2", "1–3". */
function runOf(numbers: readonly number[]): string {
  if (numbers.length < 3) return listOf(numbers)
  return `${numbers[0]}–${numbers[numbers.length - 1]}`
}
