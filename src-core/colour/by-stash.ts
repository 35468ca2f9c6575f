/**
 * M47: each colourway as often as there is yarn for it. What motifs of it could be made alone says its share; whole
 * motifs come nearest to the shares, and each colourway lies evenly over the map.
 */
import type { YarnForMotifs } from '../../shared-types/plan'
import { countsWithin } from './counts'
import { byRank } from './few-changes'
import type { Standing } from './few-changes'
import type { Filled } from './in-turn'
import { countTask } from './limits'
import type { Limits } from './limits'

/** Motifs that could be made of each of some colourways, by what is on hand for motifs; null where nobody knows. */
export function motifsOf(
  ids: readonly string[],
  stash: readonly YarnForMotifs[],
  kind: number,
): readonly number[] | null {
  const takes = ({ each, others }: YarnForMotifs, id: string): number =>
    (kind === 0 ? each : others?.[kind - 1])?.[id] ?? 0
  // A yarn of several colourways is parted evenly among them.
  const users = stash.map((yarn) => ids.filter((id) => takes(yarn, id) > 0).length)
  const many = ids.map((id) =>
    Math.min(
      ...stash.flatMap((yarn, at) => {
        const one = takes(yarn, id)
        return one > 0 ? [Math.max(0, yarn.left) / (one * users[at]!)] : []
      }),
    ),
  )
  return many.every((motifs) => Number.isFinite(motifs)) && many.some((motifs) => motifs > 0) ? many : null
}

/**
 * The colour of each group of `sizes` free cells: in all, with what is painted of each, as near to the `shares` as whole
 * motifs come (largest remainder) within the limits.
 */
export function sharedOut(
  sizes: readonly number[],
  places: readonly Standing[],
  shares: readonly number[],
  painted: readonly number[],
  limits: Limits | null,
): Filled {
  const sum = (numbers: readonly number[]): number => numbers.reduce((all, each) => all + each, 0)
  const motifs = sum(sizes) + sum(painted)
  const total = sum(shares)
  const wish = shares.map((share, colour) => (motifs * share) / total - (painted[colour] ?? 0))
  const task = countTask(limits ?? { most: shares.map(() => Infinity), yarns: [] }, sizes, wish)
  const { groups, isLeast } = countsWithin(task)
  const left = new Map(task.groups.map(({ size }, at) => [size, [...groups[at]!]]))
  const colours = new Int16Array(sizes.length)
  // Neighbours in rank lie far apart, and so does every stretch of them over the map.
  for (const group of [...sizes.keys()].sort(byRank(places))) {
    const row = left.get(sizes[group]!)
    const colour = row?.findIndex((many) => many > 0) ?? -1
    if (!row || colour < 0) continue
    row[colour]! -= 1
    colours[group] = colour
  }
  return { colours, isLeast }
}
