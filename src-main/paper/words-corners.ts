/** How a written round of an edging goes round its corners, and what each side and corner takes of it. */
import type { EdgingLoop } from '../../shared-types/plan'
import type { EdgeSide } from '../../src-core/figures/edging-corners'
import { listed, plural } from '../../src-core/figures/words'
import { formatNumber } from '../../src-core/units/format'

/** "*3 sc in corner": what the round itself works into a corner, first thing in its repeat. */
const IN_CORNER = /^(?:ch 1|1 ch), *\*(\d+) ([a-z]+) in corner,/i
/** A repeat that begins with the round: "ch 1, *sc in next st". */
const FROM_THE_FIRST = /^(?:ch 1|1 ch), *\*([a-z]+) in (?:each of )?next\b/i

/** So many of something from each corner to the next: told once where all sides are alike. */
function bySides(
  counts: readonly number[],
  first: number,
  sides: readonly EdgeSide[] | null,
  words: (count: number) => string,
): string {
  const [one] = counts
  if (one !== undefined && counts.every((count) => count === one))
    return `${words(one)} from each corner to the next`
  const place = (i: number): string =>
    sides ? `along the ${sides[i]!}` : `from corner ${first + i} to ${first + ((i + 1) % counts.length)}`
  return listed(counts.map((count, i) => `${words(count)} ${place(i)}`))
}

/**
 * " At each corner …": of the first written round of a line with corners, where its counts bear it out; else nothing.
 * `written` is the round as the project has it, with corners by name. In the terms of the project.
 */
export function cornerRound(
  { marks, stretches, made, repeats, texts, stitches }: EdgingLoop,
  written: string,
  first: number,
  /** On which sides of the map it lies from corner to corner; null where it has none. */
  sides: readonly EdgeSide[] | null,
): string {
  const corners = marks.length
  if (corners < 2 || marks.some(({ kind }) => kind !== 'corner')) return ''
  const all = made[0] ?? 0
  const sts = (count: number): string => `${formatNumber(count)} ${plural(count, 'st')}`
  const named = IN_CORNER.exec(written)
  if (named) {
    const each = Number(named[1])
    const between = stretches.map((count) => count - 1)
    if (between.reduce((sum, count) => sum + count, each * corners) !== all) return ''
    return ` At each corner the ${each} ${named[2]!} go into the corner stitch; between corners that is ${bySides(between, first, sides, sts)}.`
  }
  const begun = FROM_THE_FIRST.exec(texts[0] ?? '')
  const many = repeats[0] ?? 0
  const [takes, makes] = [stitches / many, all / many]
  const isWhole = [takes, makes, ...stretches.map((count) => count / takes)].every(Number.isInteger)
  if (!begun || many <= corners || !isWhole) return ''
  const told = (count: number): string =>
    `${formatNumber(count / takes)} ${plural(count / takes, 'repeat')} (${sts((count / takes) * makes)})`
  return ` At each corner the first ${begun[1]!} of a repeat goes into the corner stitch: ${bySides(stretches, first, sides, told)}.`
}
