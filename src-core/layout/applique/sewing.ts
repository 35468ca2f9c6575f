/** What it takes to sew the items of an appliqué down, and to make them. */
import type { MotifAccount, Stitching } from '../../../shared-types/plan'
import type { Settled } from '../../../shared-types/settled'
import { byName } from '../../by-name'
import { perimeter } from '../../geometry/points'
import { goingWith } from '../../materials/beside'
import type { MaterialsInput, Piece } from '../../materials/input'
import { materials } from '../../materials/materials'
import { add, spread } from '../../materials/range'
import { panelWork } from '../../progress/item-work'
import { isBegun, notBegun, tellProgress } from '../../progress/progress'
import { resolveGauge } from '../../stitches/gauge'
import type { Minutes } from '../../units/quantity'
import { APPLIQUE } from './constants'
import type { LaidItem } from './items'

/** Thread to sew everything down: 2.5 × outline and two tails for each item. */
export function stitchingOf(project: Settled, laid: readonly LaidItem[]): Stitching {
  const lengths = new Map<MotifAccount, number>()
  const lengthOf = (account: MotifAccount): number => {
    const length = lengths.get(account) ?? perimeter(account.outline)
    lengths.set(account, length)
    return length
  }
  const outline = laid.reduce((sum, { account }) => sum + lengthOf(account), 0)
  const tails = laid.length * APPLIQUE.threadTails
  return {
    outline,
    thread: (outline * APPLIQUE.threadPerOutline + tails * project.allowance.tail) / 1000,
    tails,
  }
}

/** How long one item takes to sew down. */
const sewingOf = ({ account }: LaidItem): Minutes => perimeter(account.outline) * APPLIQUE.stitchMinutes

/** Yarn, ends and time of the motifs, and the time to sew them down; and how far that has come. */
export function neededFor(project: Settled, laid: readonly LaidItem[], stitching: Stitching) {
  const pieces = new Map<
    string,
    Piece & { counts: { motifs: number; byColourway: Record<string, number> } }
  >()
  for (const { motif, account, colourway } of laid) {
    const piece = pieces.get(motif.id) ?? {
      motif,
      account,
      counts: { motifs: 0, byColourway: byName<number>() },
    }
    piece.counts.motifs++
    piece.counts.byColourway[colourway] = (piece.counts.byColourway[colourway] ?? 0) + 1
    pieces.set(motif.id, piece)
  }
  const input: MaterialsInput = {
    basis: project,
    // Nothing is joined to anything: what joining rules say does not apply to a panel.
    joining: undefined,
    motif: null,
    account: null,
    gauge: resolveGauge(project.gauge, project.terms),
    counts: { motifs: 0, byColourway: {} },
    others: [...pieces.values()],
    beside: goingWith(project),
    joinOperations: 0,
    seams: { length: 0, count: 0 },
    edgingBase: null,
  }
  const needed = materials(input)
  const sewing = spread(stitching.outline * APPLIQUE.stitchMinutes, APPLIQUE.timeSpread)
  const whole = {
    ...needed,
    minutes: needed.minutes && add(needed.minutes, sewing),
    ...(needed.time && { time: { ...needed.time, sewing: sewing.expected } }),
  }
  const { findings, ...told } = isBegun(project)
    ? tellProgress(project, panelWork(laid, sewingOf, APPLIQUE.timeSpread, input), needed.yarns)
    : notBegun(whole, { motifs: laid.length, joins: laid.length }, 'sewn down')
  return { ...whole, ...told, findings: [...needed.findings, ...findings] }
}
