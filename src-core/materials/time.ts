/** Hours at the hook (M43). */
import type { Finding } from '../../shared-types/finding'
import type { Range, TimeParts } from '../../shared-types/plan'
import { finding } from '../findings/finding'
import { formatMinutes, formatNumber } from '../units/format'
import { isUsableOrZero } from '../units/usable'
import { MATERIAL_CONSTANTS } from './constants'
import type { EdgingWork } from './edging'
import type { MaterialsInput, Piece, Stitched } from './input'
import { positiveOrNull } from './ledger'
import { spread } from './range'

interface TimeNeeded {
  readonly minutes: Range | null
  readonly parts?: TimeParts
  readonly findings: readonly Finding[]
}

/**
 * Minutes per motif × count + minutes per join + edging + 1 min per end, ±15 %; what is joined along whole sides takes
 * its stitches. Null where a motif's minutes are not known, since the rest alone would mislead.
 */
export function timeNeeded(
  input: MaterialsInput,
  pieces: readonly Piece[],
  edging: EdgingWork | null,
  ends: number,
  /** Of seams that close the ends of a round. */
  closing = 0,
): TimeNeeded {
  const findings: Finding[] = []
  const weaving = ends * MATERIAL_CONSTANTS.endMinutes
  if (ends >= MATERIAL_CONSTANTS.endsWorthANote) {
    const values = { ends: formatNumber(ends), time: formatMinutes(weaving) }
    findings.push(finding('time/ends', 'project', values))
  }
  const made = pieces.filter((piece) => piece.counts.motifs > 0)
  const untimed = made.filter((piece) => positiveOrNull(piece.motif.minutes) === null)
  for (const { motif } of untimed) {
    const values = { motif: motif.name ?? motif.id }
    findings.push(finding('time/no-minutes', `motif ${motif.id}`, values, { motif: motif.id }))
  }
  // Of a work whose motifs are all made, joins, edging and ends may be left.
  const isNothing = made.length === 0 && input.whole === undefined
  if (isNothing || untimed.length > 0) return { minutes: null, findings }

  const { joining } = input
  const each = isUsableOrZero(joining?.minutes) ? joining.minutes : null
  const { points, stitches } = joinsByTime(input, each !== null)
  const loops = (input.works ?? []).reduce((sum, work) => sum + work.loops, 0)
  const eachJoin = { minutes: each ?? MATERIAL_CONSTANTS.joinMinutes, assumed: each === null }
  const parts: TimeParts = {
    motifs: made.reduce(
      (sum, piece) => sum + piece.counts.motifs * (piece.share ?? 1) * (piece.motif.minutes ?? 0),
      0,
    ),
    joins: points * eachJoin.minutes + stitches * MATERIAL_CONSTANTS.seamStitchMinutes + closing,
    eachJoin: points > 0 ? eachJoin : null,
    edging: (edging?.loops ?? 0) * MATERIAL_CONSTANTS.loopMinutes,
    cord: loops * MATERIAL_CONSTANTS.loopMinutes,
    ends: weaving,
  }
  const total = parts.motifs + parts.joins + parts.edging + parts.cord + parts.ends
  return { minutes: spread(total, MATERIAL_CONSTANTS.timeSpread), parts, findings }
}

const NONE: Stitched = { count: 0, joins: 0, stitches: 0 }

/**
 * Joins at points, and the stitches of those along whole sides. Minutes that the maker says for a join are, of a seam,
 * minutes for the seam from corner to corner: points where it meets others are no joins of their own.
 */
function joinsByTime(
  { joinOperations, joinsAgain = 0, fillerJoins = 0, sides }: MaterialsInput,
  isSaid: boolean,
): { readonly points: number; readonly stitches: number } {
  const { seams: sewn, along } = sides ?? { seams: NONE, along: NONE }
  return {
    points: joinOperations - joinsAgain - sewn.joins + (isSaid ? sewn.count : 0) + fillerJoins - along.joins,
    stitches: (isSaid ? 0 : sewn.stitches) + along.stitches,
  }
}
