/** Counts of stitches that the text explains by a name of its own: "8 X-sts", "6 lp, 6 p". */
import { shellSize } from './group-counts'
import { picotSize } from './picots'
import type { StitchName } from './stitch-name'
import type { CountItem, Definition } from './tree'
import { STANDING_KEY } from './use'
import { definedKey } from './vocabulary'
import type { Work } from './work'
import type { WorkedElement } from './worked'

/** What the text explains under exactly that name. */
export function ownDefinition(work: Work, { name }: StitchName): Definition | null {
  const key = definedKey(name)
  const names = [key, key.replace(/s$/, ''), key.replace(/(sts?|stitch|stitches)$/, '')]
  return work.tree.definitions.find(({ keys }) => keys.some((given) => names.includes(given))) ?? null
}

export interface Makings {
  /** How often the round works it. */
  readonly times: number
  /** All that was made by it. */
  readonly made: readonly WorkedElement[]
}

/** How often a round works a stitch that the text explains in steps; null where its steps do not tell. */
export function makingsOf(work: Work, name: StitchName): Makings | null {
  const definition = ownDefinition(work, name)
  const { start, end } = definition?.description ?? { start: 0, end: -1 }
  const made = work.elements.filter(({ span }) => start <= span.start && span.end <= end)
  const [first] = made
  if (!definition || !first) return null
  const steps = definition.items.flatMap((item) =>
    (item.type === 'group' && item.times === null) || item.type === 'placed' ? item.items : [item],
  )
  const step = steps.find(
    (item) => item.type === 'work' && item.start <= first.span.start && first.span.end <= item.end,
  )
  if (step?.type !== 'work') return null
  const alike = made.filter(({ span }) => span.start === first.span.start).length
  return { times: alike / (step.count ?? 1), made }
}

/** Picots of one name, where the text explains several by the length of their chains; null where it does not. */
export function picotsNamed(work: Work, name: StitchName): number | null {
  const sizes = new Set(
    work.tree.definitions.filter(({ form }) => form === 'picot').map((each) => picotSize(name, each)),
  )
  const definition = ownDefinition(work, name)
  if (sizes.size < 2 || definition === null) return null
  const size = picotSize(name, definition)
  return work.elements.filter(({ role, count }) => role === 'picot' && count === size).length
}

export const MANNER = /^(\d+|an?|one)?\s*(long|spike|extended|linked)\b/i

/** How many a list counts of stitches that the text explains and that are made of this one. */
export const specialOf = (work: Work, { entries }: CountItem, { stitch }: StitchName): number =>
  entries.reduce((sum, { noun, count, words }) => {
    const name = noun.kind === 'stitch' && !MANNER.test(words) ? noun.name : null
    // "4 Shells, 8 dc" of shells that the text explains, the one that its chains begin among them.
    const size = name?.form === 'shell' ? shellSize(work, stitch) : 0
    if (size > 0) return sum + count * size
    const made = name ? (makingsOf(work, name)?.made ?? []) : []
    const like = made.filter((element) => element.standing && STANDING_KEY(element) === stitch)
    if (like.length > 0) return sum + like.length
    // "6 V-sts, 2 dc" where nobody explains a V-stitch.
    if (name?.form === 'v-stitch') return sum + (stitch === (name.stitch ?? 'dc') ? 2 * count : 0)
    // One that is explained without another stitch stands as one of those.
    return name?.form === 'special' && (name.stitch ?? stitch) === stitch ? sum + count : sum
  }, 0)
