/** By what motifs are fastened to the cord of a garland, and with how many chains between, as its items hang. */
import type { GarlandAccount } from '../../shared-types/plan'
import { counted } from './words'

type Fastened = Pick<GarlandAccount['items'][number], 'fastened'>

/** "petal", "corner"; "place" where motifs are fastened by different ones. Leaves hang by their tips in any case. */
export function fastenedBy(items: readonly Fastened[]): string {
  const all = items.flatMap(({ fastened }) => (fastened ? [fastened.by] : []))
  const names = new Set(all.some((by) => by !== 'tip') ? all.filter((by) => by !== 'tip') : all)
  const [only] = names
  return names.size === 1 && only ? only : 'place'
}

/** Chains between the two places of motifs that have two: "3", "3–10" where motifs differ; null where none have. */
export function chainsBetween(
  items: readonly Fastened[],
): { readonly range: string; readonly words: string } | null {
  const counts = items.flatMap(({ fastened }) => fastened?.between ?? [])
  if (counts.length === 0) return null
  const [least, most] = [Math.min(...counts), Math.max(...counts)]
  if (least === most) return { range: String(least), words: counted(least, 'chain') }
  return { range: `${least}–${most}`, words: `${least}–${counted(most, 'chain')}` }
}
