/** How many petals, groups, points or clusters a round has, in all ways in which a count may mean them. */
import type { Tally } from './account'
import type { StitchName } from './stitch-name'
import { spaceKey } from './state'
import type { CountEntry, CountItem, Item, Noun } from './tree'
import type { Work } from './work'
import type { WorkedElement } from './worked'

/** Several stitches drawn together at the top. */
export const BUNCHES = new Set(['together', 'cluster', 'puff', 'popcorn', 'bobble'])

/** Whether stitches stand before the first repeat. */
function beginsBefore(items: readonly Item[]): boolean {
  const at = items.findIndex(
    (item) => item.type === 'star' || (item.type === 'group' && (item.around || item.times !== null)),
  )
  return items
    .slice(0, Math.max(0, at))
    .some(({ type }) => type === 'work' || type === 'group' || type === 'placed')
}

/** How many stitches each place takes, by group. */
function sizesOf(standing: readonly WorkedElement[]): readonly number[] {
  const sizes = new Map<number, number>()
  for (const { group } of standing) sizes.set(group, (sizes.get(group) ?? 0) + 1)
  return [...sizes.values()]
}

/** Places that take two stitches or more, along a chain too; with a number, those that take so many. */
export const groupsOf = (standing: readonly WorkedElement[], of = 0): number =>
  sizesOf(standing).filter((size) => (of > 0 ? size === of : size > 1)).length

/** How many stitches the largest group of a round has. */
export const largestGroup = (standing: readonly WorkedElement[]): number => Math.max(0, ...sizesOf(standing))

/** Places that take slip stitches on both sides of what stands there. */
function betweenSlips(elements: readonly WorkedElement[]): number {
  const standing = new Set(elements.filter((element) => element.standing).map(({ group }) => group))
  const slips = sizesOf(elements.filter(({ role, group }) => role === 'slip' && standing.has(group)))
  return slips.filter((size) => size > 1).length
}

/** "A group is 3 trebles in one place": how many stitches the text gives to what it calls so; 0 where it says nothing. */
function toldSize({ tree }: Work): number {
  const told = tree.definitions.find(({ names }) =>
    names.some((name) => /^(group|cluster|cl)s?$/i.test(name)),
  )
  const made = (told?.items ?? []).flatMap((item) => (item.type === 'work' ? [item.count ?? 1] : []))
  return made.length === 1 ? made[0]! : 0
}

/** How many petals, groups or points there are, in all ways in which they may be meant; the likeliest first. */
export function groupCounts(
  work: Work,
  words: string,
  sums: Tally,
  standing: readonly WorkedElement[],
): readonly number[] {
  const { items } = work.node
  const timed = items.flatMap((item) => (item.type === 'group' && item.times !== null ? [item.times] : []))
  const times = [...work.repeats.values(), ...timed]
  const spaces = Object.values(sums.spaces)
  const all = spaces.reduce((sum, count) => sum + count, 0)
  // "3 chain, 2 trebles" is one of them as well, though it is not called so.
  const size = /^(group|cluster)/.test(words) ? toldSize(work) : 0
  return [
    ...(size > 1 && sums.made % size === 0 ? [sums.made / size] : []),
    ...(words.startsWith('corner') ? [sums.corners] : []),
    // Where other languages are at home stitches are called points.
    ...(words.startsWith('point') ? [sums.made] : []),
    sums.groups,
    // "8 scallops" between four corners.
    ...(sums.corners > 0 ? [sums.groups - sums.corners] : []),
    standing.filter(({ form }) => form === 'together' || BUNCHES.has(form)).length,
    ...times,
    all,
    ...spaces,
    // Between groups, the last slip stitch may be the joining.
    ...(words.startsWith('petal') && times.includes(sums.groups) ? [] : [sums.slips]),
    // "(Ss, 2 ch, 1 tr, 2 ch, ss) into each st": a petal that has one stitch alone.
    ...(words.startsWith('petal') ? [betweenSlips(work.elements)] : []),
    // Something that is worked before the repeat may be one more like it.
    ...(beginsBefore(items) ? times.map((each) => each + 1) : []),
  ]
}

/** "Four 3-dc clusters", "4 clusters of 3 dc": where none is drawn together, groups of plain stitches are meant. */
export function clusterCounts(
  work: Work,
  entry: CountEntry,
  sums: Tally,
  standing: readonly WorkedElement[],
): number | readonly number[] {
  const bunches = standing.filter((element) => BUNCHES.has(element.form)).length
  if (bunches > 0) return bunches
  const size = /(\d+)[- ]?\p{L}+\.? cl|\bof (\d+)/iu.exec(entry.words)
  const legs = Number(size?.[1] ?? size?.[2] ?? 0)
  if (legs > 1) return sums.made % legs === 0 ? sums.made / legs : 0
  return sums.groups > 0 ? groupCounts(work, 'cluster', sums, standing) : 0
}

/** Shells and V-stitches among the counts of a round. */
const formed = ({ entries }: CountItem): number =>
  entries.reduce(
    (sum, { noun, count }) =>
      sum + (noun.kind === 'stitch' && /^(shell|v-stitch)$/.test(noun.name?.form ?? '') ? count : 0),
    0,
  )

/** Whether V-stitches are among them, each of which has a space of its own. */
const hasVs = ({ entries }: CountItem): boolean =>
  entries.some(({ noun }) => noun.kind === 'stitch' && noun.name?.form === 'v-stitch')

/** How many stitches of a kind a shell has that the text explains; 0 where it explains none. */
export function shellSize(work: Work, stitch: StitchName['stitch']): number {
  const shell = work.tree.definitions.find(({ names }) => names.includes('shell'))
  const [group] = (shell?.items ?? []).filter(({ type }) => type === 'group' || type === 'placed')
  const items = group && 'items' in group ? group.items : (shell?.items ?? [])
  return items.reduce(
    (sum, item) => sum + (item.type === 'work' && item.stitch.stitch === stitch ? (item.count ?? 1) : 0),
    0,
  )
}

/** Whether so many are what a count tells: in all, or of each of several ends or sides. */
export const comesTo = ({ ofEach }: CountEntry, made: number, wanted: number): boolean =>
  made === wanted || (ofEach === true && wanted > 0 && made > wanted && made % wanted === 0)

/** Stitches of one side, where all are alike: with what stands in corners, without, or with a part of it. */
export function sidesOf({ made, corners, inCorners }: Tally): readonly number[] | null {
  if (corners < 3 || made % corners !== 0 || inCorners % corners !== 0) return null
  const [most, least] = [made / corners, (made - inCorners) / corners]
  return Array.from({ length: most - least + 1 }, (_, less) => most - less)
}

/** Spaces of three chains and more: those of fewer are no loops to everybody. */
const loopsOf = ({ spaces }: Tally): number =>
  Object.entries(spaces).reduce((sum, [key, count]) => sum + (Number(/\d+/.exec(key)) > 2 ? count : 0), 0)

/** How many spaces an end count may mean: of the size it names, or all of them; corners where it names those. */
export function spaceCounts(
  entry: CountEntry,
  noun: Extract<Noun, { readonly kind: 'space' }>,
  all: CountItem,
  sums: Tally,
): number | readonly number[] {
  // Worked into a ring, all spaces of a size may be its corners.
  if (noun.corner) return [sums.corners, ...Object.values(sums.spaces)]
  const made = noun.chains === null ? null : (sums.spaces[spaceKey(noun.chains)] ?? 0)
  // "12 V-sts, 12 ch-1 sps (between V-sts)": those within them may not be meant.
  if (made !== null) return /\bbetween\b/i.test(entry.words) || hasVs(all) ? [made, made - formed(all)] : made
  const total = Object.values(sums.spaces).reduce((sum, count) => sum + count, 0)
  // "(8 loops)" beside spaces of two chains between shells.
  if (/^\S+ l(?:oo)?ps?\b/i.test(entry.words)) return [total, loopsOf(sums)]
  // "4 corner loops, 4 side arches".
  return /\bside\b/i.test(entry.words) ? [total, ...Object.values(sums.spaces)] : total
}
