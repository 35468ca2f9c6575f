/** What the lines of an edging are called where there are several: by where they lie on the map. */
import type { Plan, Point } from '../../shared-types/plan'
import { listed } from '../figures/words'
import { boxOf, contains, distance, distanceToEdge, signedArea } from '../geometry/points'
import { remembered } from '../memo'
import { OPEN_ENDS } from './open-ends'

/** Of what is joined in the round: where its open ends lie. */
export const ENDS = ['mouth', 'bottom'] as const

type Named = Pick<Plan, 'round' | 'edgingLines' | 'motifs'>

/** "row 5", "rows 3 and 4", "rows 3–6". */
function rowWords(rows: readonly number[]): string {
  const [first, last] = [Math.min(...rows), Math.max(...rows)]
  if (first === last) return `row ${first}`
  return last === first + 1 ? `rows ${listed([String(first), String(last)])}` : `rows ${first}–${last}`
}

/** The rows whose middles lie beside a line. */
function rowsBeside(line: readonly Point[], motifs: Plan['motifs']): number[] {
  const { top, bottom } = boxOf(line)
  return [...new Set(motifs.flatMap(({ row, y }) => (y > top && y < bottom ? [row] : [])))]
}

/** An edge that has neighbours of its own kind, or is a hole: what it is and which of them. */
interface TellsApart {
  readonly noun: 'hole' | 'part'
  /** " in rows 3 and 4"; '' where no row lies beside it. */
  readonly rows: string
  /** Counted in their order, which is from the top left; 0 where it is the only one of its kind. */
  readonly number: number
}

const isHole = (line: readonly Point[]): boolean => signedArea(line) < 0

/** Which hole or part of the work each edging line goes round; null of the outside and of open ends. */
const toldApart = remembered(({ round, edgingLines, motifs }: Named): readonly (TellsApart | null)[] => {
  const ends = round ? OPEN_ENDS : 0
  const pieces = edgingLines.slice(ends).filter((line) => line.length > 1 && !isHole(line)).length
  const told = edgingLines.map((line, i) => {
    if (i < ends || line.length < 2) return null
    if (!isHole(line) && pieces === 1 && !round) return null
    const rows = rowsBeside(line, motifs)
    const noun: TellsApart['noun'] = isHole(line) ? 'hole' : 'part'
    return { noun, rows: rows.length > 0 ? ` in ${rowWords(rows)}` : '' }
  })
  return told.map((own) => {
    if (!own) return null
    const alike = told.filter((each) => each?.noun === own.noun)
    return { ...own, number: alike.length > 1 ? alike.indexOf(own) + 1 : 0 }
  })
})

/**
 * "around the outside", "around the hole in rows 3 and 4", "around hole 2 in row 5", "at the mouth": each of a plan’s
 * edging lines. Several holes have the numbers that the drawing of the border has in them.
 */
export const edgeNames = remembered((plan: Named): readonly string[] => {
  const ends = plan.round ? OPEN_ENDS : 0
  return toldApart(plan).map((own, i) => {
    if (!own) return i < ends ? `at the ${ENDS[i]!}` : 'around the outside'
    return `around ${own.number > 0 ? `${own.noun} ${own.number}` : `the ${own.noun}`}${own.rows}`
  })
})

/** The sign of an edge on the drawing of the border, where it stands, and how much room it has there, in mm. */
export interface EdgeSign extends Point {
  readonly line: number
  /** "hole 2". */
  readonly text: string
  /** Its number alone, for where the text has no room; '' of the only hole. */
  readonly short: string
  readonly room: number
}

/** Steps of the places that are tried for a sign, across and down what it stands in (ours). */
const STEPS = 24

/** A sign in every hole, and in every part of several, which its rounds are headed by. */
export const edgeSigns = remembered((plan: Named): readonly EdgeSign[] => {
  const holes = plan.edgingLines.filter((line) => line.length > 1 && isHole(line))
  return toldApart(plan).flatMap((own, line): EdgeSign[] => {
    const outline = plan.edgingLines[line]!
    const spot = own && middleOf(outline, own.noun === 'part' ? holes : [])
    if (!own || !spot) return []
    const { noun, number } = own
    const text = number > 0 ? `${noun} ${number}` : noun
    return [{ ...spot, line, text, short: number > 0 ? String(number) : '' }]
  })
})

/** The place inside of a line, outside of others, that lies farthest from them; null where it has none. */
function middleOf(
  line: readonly Point[],
  others: readonly (readonly Point[])[],
): (Point & { readonly room: number }) | null {
  const { left, top, right, bottom } = boxOf(line)
  const middle = { x: (left + right) / 2, y: (top + bottom) / 2 }
  let best: (Point & { readonly room: number }) | null = null
  for (let i = 1; i < STEPS; i++)
    for (let k = 1; k < STEPS; k++) {
      const at = { x: left + ((right - left) * i) / STEPS, y: top + ((bottom - top) * k) / STEPS }
      if (!contains(line, at) || others.some((other) => contains(other, at))) continue
      const room = 2 * Math.min(...[line, ...others].map((each) => farFrom(each, at)))
      const isNearer = best !== null && distance(at, middle) < distance(best, middle)
      if (!best || room > best.room + TIE || (room > best.room - TIE && isNearer)) best = { ...at, room }
    }
  return best
}

/** mm. Places that differ by no more are as far from everything: the one in the middle is taken. */
const TIE = 1e-6

const farFrom = (line: readonly Point[], at: Point): number =>
  line.reduce(
    (least, point, i) => Math.min(least, distanceToEdge(at, point, line[(i + 1) % line.length]!)),
    Infinity,
  )

/** The same of those that have an edging, in their order. */
export const workedNames = (plan: Named): readonly string[] =>
  edgeNames(plan).filter((_, i) => plan.edgingLines[i]!.length > 1)

/** Whether what has an edging are both open ends of what is joined in the round, and nothing else. */
export const areBothEnds = ({ round, edgingLines }: Named): boolean =>
  round !== undefined && edgingLines.length === ENDS.length && edgingLines.every(({ length }) => length > 1)
