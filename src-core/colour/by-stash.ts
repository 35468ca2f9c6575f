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
  const used = stash.map((yarn) => {
    const ones = ids.map((id) => takes(yarn, id))
    return { left: Math.max(0, yarn.left), ones, users: ones.filter((one) => one > 0).length }
  })
  const least = (of: (yarn: (typeof used)[number]) => number): number => Math.min(...used.map(of))
  // What its own yarns allow; a colourway that shares all of its own has an even part of each.
  const alone = ids.map((_, at) => {
    const by = (isOwn: boolean) =>
      least(({ left, ones, users }) =>
        ones[at]! > 0 && (users === 1) === isOwn ? left / (ones[at]! * (isOwn ? 1 : users)) : Infinity,
      )
    const own = by(true)
    return Number.isFinite(own) ? own : by(false)
  })
  // A yarn that several share is parted as their own yarns allow: it makes all of them fewer, and none more often.
  const many = alone.map(
    (motifs, at) =>
      motifs *
      least(({ left, ones, users }) => {
        if (users < 2 || !(ones[at]! > 0)) return 1
        const needed = alone.reduce((sum, each, id) => sum + (ones[id]! > 0 ? each * ones[id]! : 0), 0)
        return needed > 0 ? Math.min(1, left / needed) : 1
      }),
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
