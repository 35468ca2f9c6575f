/** How many legs a cluster, puff, popcorn or bobble has: as named, as explained, else as is usual. */
import { USUAL_BUNCH } from '../stitches/table'
import type { StitchKey } from '../stitches/table'
import { stitchAbbreviation } from '../stitches/terms'
import type { LegsOf } from './beginning'
import type { Definition, Item, Place, RoundsTree } from './tree'
import { definedKey } from './vocabulary'
import type { StitchName } from './stitch-name'
import type { Span } from './tokens'
import { report } from './work'
import type { Work } from './work'

interface Bunch {
  readonly stitch: StitchKey
  readonly legs: number
  /** Neither name nor text says it. */
  readonly assumed: boolean
}

type BunchForm = keyof typeof USUAL_BUNCH

export const isBunchForm = (form: string): form is BunchForm => Object.hasOwn(USUAL_BUNCH, form)

/** A bunch of at most so many legs is believed; an explanation that seems to have more was not understood. */
const MOST_LEGS = 12

/** "Over next 4 dc": under how many stitches one goes that is worked there; 0 where it is worked in each. */
export const oneOver = (place: Place): number =>
  place.over && !place.parts[0]!.each ? stitchesUnder(place) : 0

/** "Next 4 dc", "each of next 4 dc": how many stitches in a row the place is; 0 where it is none such. */
export function stitchesUnder({ parts: [part, ...more] }: Place): number {
  const isRow = more.length === 0 && /^(next|first|last)$/.test(part?.which ?? '')
  return isRow && part!.noun.kind === 'stitch' && part!.count > 1 ? part!.count : 0
}

/**
 * "Cluster: 1 tr into each of next 3 d.c. leaving the last loop of each": over how many stitches it goes; 0 for one
 * place. "Beg cluster: Ch 2, dc in each of next 4 dc, …": where the round `begins` so, the chains stand in the first of five.
 */
export function heldOver(items: readonly Item[], begins: boolean): number {
  const place = items.flatMap((item) => (item.type === 'work' && item.place ? [item.place] : []))[0]
  const over = place ? stitchesUnder(place) : 0
  const [first] = items
  return over > 1 && begins && first?.type === 'chain' && first.count > 1 ? over + 1 : over
}

/** Words by which stitches are drawn together at the top. */
const DRAWS = /tog|leav|hook|\byo|loop|\blps?\b|hold|draw|pull|finish|complet|\blast\b/i

/** "Cluster = 3 dc in one space, nothing fancy": stitches that stand side by side, whatever they are called. */
export function isPlainGroup(
  { form }: StitchName,
  { items, description }: Definition,
  text: string,
): boolean {
  const [only, ...others] = items.filter(
    ({ type }) => type === 'work' || type === 'group' || type === 'chain',
  )
  if (form !== 'cluster' || only?.type !== 'work' || others.length > 0 || only.place === null) return false
  const { form: made, stitch } = only.stitch
  const several = made === 'plain' && stitch !== 'sl st' && (only.count ?? 1) > 1
  return several && !DRAWS.test(text.slice(description.start, description.end))
}

/** Legs that an explanation tells: "5 dc in same st, drop loop …", "(yo, insert hook, …) 4 times", "dc3tog". */
function explained(items: readonly Item[]): { stitch: StitchKey | null; legs: number } | null {
  let single: StitchKey | null = null
  let singles = 0
  for (const item of items) {
    if (item.type === 'work') {
      const { form, stitch, size } = item.stitch
      if (form !== 'plain' && size > 1) return { stitch, legs: size }
      if (form !== 'plain' || stitch === null || stitch === 'sl st') continue
      if ((item.count ?? 1) > 1) return { stitch, legs: item.count ?? 1 }
      // "Holding back the last loop of each, tr in next 4 dc".
      const under = item.place ? stitchesUnder(item.place) : 0
      if (under > 1) return { stitch, legs: under }
      single = stitch
      singles++
    }
    if (item.type === 'group' || item.type === 'star') {
      const times = item.type === 'group' ? item.times : (item.repeat?.amount ?? null)
      const inner = explained(item.items)
      const more = item.type === 'star' && !item.closed && item.repeat?.said !== 'in-all' ? 1 : 0
      if (times !== null && times + more > 1)
        return { stitch: inner?.stitch ?? null, legs: (times + more) * Math.max(1, inner?.legs ?? 1) }
      if (inner) return inner
    }
    if (item.type === 'placed') {
      const inner = explained(item.items)
      if (inner) return inner
    }
  }
  return singles > 1 ? { stitch: single, legs: singles } : null
}

/** "yo, insert hook, draw up a loop) 4 times", "rep from * 3 more times": steps that are told in prose. */
function timesIn(words: string): { stitch: null; legs: number } | null {
  const [twice, figure = '', more] =
    /\btwice\b|\b(\d{1,2}|two|three|four|five|six)\s+(more\s+)?times\b/i.exec(words) ?? []
  const told = Number(figure) || FIGURES.indexOf(figure.toLowerCase()) + 2
  const times = twice === undefined ? 0 : figure === '' ? 2 : told
  // "Ch 2, (yo, insert hook …) twice": the chain stands for the first leg.
  const legs = times + (more || (times > 0 && BEGINS_WITH_CHAIN.test(words)) ? 1 : 0)
  return legs > 1 ? { stitch: null, legs } : null
}
const FIGURES = ['two', 'three', 'four', 'five', 'six']
const BEGINS_WITH_CHAIN = /^\W*(?:ch(?:ain)?[ -]?\d|\d ?ch)\b/i

/** The legs of a bunch; `form` must be one (`isBunchForm`). `text` is the one that explains it. */
export function bunchOf(
  name: StitchName,
  form: BunchForm,
  definition: Definition | null,
  text: string,
): Bunch {
  const usual = USUAL_BUNCH[form]
  if (name.size > 0) return { stitch: name.stitch ?? usual.stitch, legs: name.size, assumed: false }
  const told =
    definition &&
    (explained(definition.items) ??
      timesIn(text.slice(definition.description.start, definition.description.end)))
  if (told && told.legs <= MOST_LEGS)
    return { stitch: name.stitch ?? told.stitch ?? usual.stitch, legs: told.legs, assumed: false }
  return { stitch: name.stitch ?? usual.stitch, legs: usual.legs, assumed: true }
}

/** Legs of a cluster as its name or the text has them: "cl: tr3tog into sp indicated" has three. */
export const definedLegs =
  ({ definitions, text }: Pick<RoundsTree, 'definitions' | 'text'>): LegsOf =>
  (name) => {
    const definition = definitions.find(({ keys }) => keys.includes(definedKey(name.name)))
    if (name.size > 0 || !definition || !isBunchForm(name.form))
      return { legs: name.size, stitch: name.stitch }
    const { legs, stitch, assumed } = bunchOf(name, name.form, definition, text)
    return assumed ? { legs: 0, stitch: name.stitch } : { legs, stitch }
  }

/**
 * "Pc in next ch-1 sp": neither its name nor the text tells of how many stitches it is; noted once in a round. Some later
 * rounds alone may be explained where they come from.
 */
export function noteAssumed(
  work: Work,
  { name, form }: StitchName,
  span: Span,
  { stitch, legs }: Pick<Bunch, 'stitch' | 'legs'>,
): void {
  const begun = work.tree.rounds.find(({ numbers }) => numbers !== null)?.numbers?.[0] ?? 1
  if (begun > 1) return
  const taken = `${legs} ${stitchAbbreviation(stitch, work.tree.terms)}`
  report(work, 'rounds/special-not-explained', span, { word: name, taken }, form)
}
