/** An edging of the gallery as a picture: a short stretch of it, along a straight edge or a zigzag. */
import type { Point } from '../../shared-types/plan'
import type { Terms } from '../../shared-types/project'
import { findMultiple, kindsNamed, nearest } from '../edging/fit'
import type { EdgingKind } from '../edging/gallery'
import { galleryRounds } from '../edging/gallery'
import { roundHeight } from '../edging/heights'
import { readLoop } from '../edging/reading'
import { resolveGauge } from '../stitches/gauge'
import { STITCH_KEYS } from '../stitches/table'
import { shapesAlong } from './edging-shapes'
import type { EdgingShapes } from './edging-shapes'

/** About so many stitches are shown; a zigzag goes up and down so often, by so many stitch widths (by eye). */
const SHOWN = { stitches: 18, teeth: 2, rise: 3.5 } as const

/** The picture, drawn downward from (0, 0). */
export interface EdgingSample extends EdgingShapes {
  readonly across: number
  readonly down: number
  /** The edge that it is worked along. */
  readonly edge: readonly Point[]
}

/** A stretch of an edging of the gallery, in mm at 10 sc to 10 cm. */
export function edgingSample(kind: EdgingKind, terms: Terms): EdgingSample {
  const gauge = resolveGauge({ stitch: terms === 'US' ? 'sc' : 'dc', stitches: 10, over: 100 }, terms)
  const works = galleryRounds(kind, terms)
  const multiple = findMultiple(works, 2, terms)
  const isZigzag = kindsNamed(works).has('tip')
  const stitches = multiple && !isZigzag ? nearest(SHOWN.stitches, multiple) : SHOWN.stitches + 2
  const each = stitches / (2 * SHOWN.teeth)
  const marks = isZigzag
    ? Array.from({ length: 2 * SHOWN.teeth }, (_, i) => ({
        ...{ kind: i % 2 === 0 ? ('tip' as const) : ('dip' as const), chains: 0 },
        ...{ at: Math.round(i * each), along: i / (2 * SHOWN.teeth) },
      }))
    : []
  const across = stitches * gauge.width
  const rise = SHOWN.rise * gauge.width
  const edge = isZigzag
    ? Array.from({ length: 2 * SHOWN.teeth + 1 }, (_, i) => ({
        x: (across * i) / (2 * SHOWN.teeth),
        y: i % 2 === 0 ? rise : 0,
      }))
    : [
        { x: 0, y: 0 },
        { x: across, y: 0 },
      ]
  const { rounds: read } = readLoop(works, stitches, marks, 2, terms)
  const heights = read.map((round, i) => roundHeight(round, gauge, i === read.length - 1))
  const plain = { number: 1, stitch: 'sc', stitches, chains: 0, length: across, metres: 0, yarn: '' }
  const rounds = [gauge.height('sc'), ...heights].map((height, i) => ({ ...plain, number: i + 1, height }))
  const shapes = shapesAlong(
    // The second open end is worked downward, from the left by right-handers.
    { edgingLines: [[], edge], isRound: true, terms, hand: 'right' },
    works,
    {
      ...{ rounds, yarn: '' },
      gauge: {
        width: gauge.width,
        heights: Object.fromEntries(STITCH_KEYS.map((key) => [key, gauge.height(key)])),
      },
    },
    [{ line: 1, stitches, stretches: [stitches], marks, texts: [], made: [], repeats: [], picots: [] }],
  )
  const down = rounds.reduce((sum, { height }) => sum + height, isZigzag ? rise : 0)
  return { ...shapes, across, down, edge }
}
