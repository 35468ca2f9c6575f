/** What joins cost in yarn and ends (M34). */
import { stitchYarn } from '../stitches/gauge'
import { isUsableOrZero } from '../units/usable'
import { MATERIAL_CONSTANTS, SEAM_YARN } from './constants'
import type { Bridges, MaterialsInput } from './input'
import { DEFAULTS } from '../settled'

interface JoinWork {
  /** mm of yarn in the joins, tails left out. */
  readonly millimetres: number
  readonly tailMillimetres: number
  readonly ends: number
  /** Worked in a yarn of its own, apart from the motifs. */
  readonly ownYarn: boolean
  /** Whether the stitch width went into it. */
  readonly usesGauge: boolean
}

const NOTHING: JoinWork = { millimetres: 0, tailMillimetres: 0, ends: 0, ownYarn: false, usesGauge: false }

/**
 * Yarn of all joins in mm (M34). A join-as-you-go costs nothing: its slip stitch replaces the middle chain.
 * A joining chain of k costs 5.2·w·2k each time, out and back, as the joining round tells it; it is part of the
 * motif's last round, so it has tails only where it is worked in another yarn than that round: one section for
 * each motif that joins. A seam costs a multiple of its length and two tails for each piece of yarn.
 */
export function workJoins(
  input: MaterialsInput,
  yarn: string | undefined,
  named: boolean,
  outer: string | undefined,
  tail: number,
): JoinWork {
  const { joining } = input
  const rule = joining?.rule
  const bridges = input.bridges ?? usualBridges(input)
  const operations = bridges.reduce((sum, bridge) => sum + bridge.operations, 0)
  if (operations > 0) {
    const chain = stitchYarn('ch', input.gauge)
    const one = ({ chains }: Bridges): number => chain * chains * MATERIAL_CONSTANTS.bridgeWays
    const ownYarn = named && yarn !== outer
    // Half motifs of the layout's own join as it does; fillers are hung in by slip stitches alone.
    const halves = (input.others ?? []).filter((piece) => piece.share !== undefined)
    const motifs = halves.reduce((sum, piece) => sum + piece.counts.motifs, input.counts.motifs)
    const joined = Math.min(operations, input.joiners ?? Math.max(0, motifs - 1))
    const ends = ownYarn ? MATERIAL_CONSTANTS.tailsPerSection * joined : 0
    return {
      millimetres: bridges.reduce((sum, bridge) => sum + bridge.operations * one(bridge), 0),
      tailMillimetres: ends * tail,
      ends,
      ownYarn,
      usesGauge: true,
    }
  }
  if (rule === 'seam' && input.seams.length > 0) {
    const ends = MATERIAL_CONSTANTS.tailsPerSection * Math.max(0, input.seams.count)
    return {
      millimetres: input.seams.length * SEAM_YARN[joining?.seam ?? DEFAULTS.joining.seam],
      tailMillimetres: ends * tail,
      ends,
      ownYarn: true,
      usesGauge: false,
    }
  }
  return NOTHING
}

/** Every join alike, where the rule for all is a joining chain. */
function usualBridges({ joining, joinOperations }: MaterialsInput): Bridges[] {
  if (joining?.rule !== 'bridge') return []
  const chains = isUsableOrZero(joining.bridgeChains) ? joining.bridgeChains : 0
  return [{ chains, operations: joinOperations }]
}
