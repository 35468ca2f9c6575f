/** M14: a heart worked from a ring: two humps with a cleft between them, and a point opposite. */
import type { RoundsMotif } from '../../../shared-types/project'
import type { Outline } from '../../geometry/points'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { Millimetres, Radians } from '../../units/quantity'
import { workingSign } from '../anchors'
import type { RoundsContext } from './account'
import { figureAccount } from './figure-account'
import { angleOf, at, radiusOf } from './ground'
import type { LocatedRound } from './ground'
import { farthest } from './profile'
import type { ReadMotif } from './read-motif'
import type { Shape } from './shape'

/** A heart upright, about the middle of its width and height; `turn` is what it is turned by for that, clockwise. */
export interface Heart {
  readonly outline: Outline
  readonly width: Millimetres
  readonly height: Millimetres
  readonly turn: Radians
}

/** The heart that petals of unlike kinds make, its cleft above; null where they make none. */
export function heartOf({ outline, cleft }: Pick<Shape, 'outline' | 'cleft'>): Heart | null {
  if (cleft === undefined) return null
  const turn = -cleft
  const upright = outline.map((point) => at(radiusOf(point), angleOf(point) + turn))
  const [xs, ys] = [upright.map(({ x }) => x), upright.map(({ y }) => y)]
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  const centred = upright.map(({ x, y }) => ({ x: x - (left + right) / 2, y: y - (top + bottom) / 2 }))
  return { outline: centred, width: right - left, height: bottom - top, turn }
}

/** The account of a heart, and what its located rounds are turned by to stand upright. */
export function heartAccount(
  { outline, width, height, turn }: Heart,
  shape: Shape,
  motif: RoundsMotif,
  context: RoundsContext,
  read: ReadMotif,
  gauge: ResolvedGauge,
  located: readonly LocatedRound[],
  findings: Parameters<typeof figureAccount>[4]['findings'],
) {
  const reach = farthest(located)
  return {
    ...figureAccount(motif, context, read, gauge, {
      form: 'heart',
      size: { length: height, width },
      outlineAt: (own) =>
        outline.map(({ x, y }) => ({ x: (x * own.width) / width, y: (y * own.length) / height })),
      lengths: located.map((round) => (height * farthest([round])) / reach),
      findings,
    }),
    turn: shape.turn + workingSign(context.hand) * turn,
  }
}
