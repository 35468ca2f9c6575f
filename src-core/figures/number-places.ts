/** Where the numbers of a map stand: in its motifs, its half motifs and its fillers. */
import type { MotifAccount, PlacedHalf, Plan } from '../../shared-types/plan'
import type { SheetStyle } from '../../shared-types/project'
import { accountAt } from '../layout/placed'
import type { ColourwayMark } from './marks'
import { keptHalf, laidOutline } from './motif-parts'
import type { Half, Stretch } from './motif-parts'
import type { NumberPlace } from './number-disc'
import { innerRadius, outerRadius } from './path'
import { halfSeats } from './seats'

/** Deep petals run on beyond a disc of this share of the tip radius, and are told apart by what they show there. */
const DEEP_PETALS = 0.45

/** The radius about the centre in which a label may stand: inside the valleys, or across the roots of deep petals. */
function labelRadius(motif: MotifAccount): number {
  const inner = innerRadius(motif.outline)
  return motif.shape === 'petals' ? Math.max(inner, DEEP_PETALS * outerRadius(motif.outline)) : inner
}

export interface NumberPlaces {
  readonly motif: NumberPlace | null
  /** Of each of several motifs, by id; none where there is but one. */
  readonly byMotif: ReadonlyMap<string, NumberPlace>
  /** Of half motifs, by `halfKey`: in the middle of what is there of them. */
  readonly halves: ReadonlyMap<string, NumberPlace>
  /** Of the motif of each filler, by its id. */
  readonly fillers: ReadonlyMap<string, NumberPlace>
}

/** A half reaches well beyond the largest circle in it: the disc may fill that, and a little of its dips and its cut. */
export const HALF = { inner: 1.15, tip: 2 } as const

interface PlacesGround {
  readonly plan: Plan
  readonly style: SheetStyle
  readonly marks: readonly ColourwayMark[]
  readonly fillerMarks: readonly ColourwayMark[]
  readonly stretch: Stretch
}

/** Halves of one motif that lie alike have their numbers in one place. */
export const halfKey = ({ motif = '', side = 'left', turn }: HalfLie): string => `${motif} ${side} ${turn}`

type HalfLie = Pick<PlacedHalf, 'turn'> & Partial<Pick<PlacedHalf, 'motif' | 'side'>>

const lettersOf = (marks: readonly ColourwayMark[]): number =>
  marks.reduce((most, mark) => Math.max(most, [...mark.code].length), 0)

/** The places of a plan's numbers; what is printed in ink is told apart by its texture, wherever a disc lies. */
export function numberPlaces({ plan, style, marks, fillerMarks, stretch }: PlacesGround): NumberPlaces {
  const digits = String(plan.motifs.length).length
  const most = String(plan.motifs.length + plan.halves.length + plan.fillers.length).length
  const [least, largest] = [Math.min(stretch.x, stretch.y), Math.max(stretch.x, stretch.y)]
  const letters = lettersOf(marks)
  const coloured = (list: readonly ColourwayMark[]): readonly ColourwayMark[] =>
    style === 'colour' ? list : []
  const laid = ({ layers }: MotifAccount, turn: number, half?: Half): MotifAccount['layers'] =>
    layers.map(({ slot, outline }) => ({
      slot,
      outline: laidOutline(outline, { turn, scale: 1, stretch, half }),
    }))
  const { motif } = plan
  const centre = { x: 0, y: 0 }
  const wholePlace = (account: MotifAccount, turn: number): NumberPlace => ({
    layers: laid(account, turn),
    ...{ centre, inner: labelRadius(account) * least, tip: outerRadius(account.outline) * largest },
    ...{ digits, letters, marks: coloured(marks) },
  })
  const halves = new Map<string, NumberPlace>()
  for (const half of plan.halves) {
    const account = accountAt(plan, half)
    if (!account || halves.has(halfKey(half))) continue
    const { middle } = halfSeats(account, half, stretch)
    halves.set(halfKey(half), {
      layers: laid(account, half.turn, keptHalf(half)),
      ...{ centre: middle, inner: HALF.inner * middle.room, tip: HALF.tip * middle.room },
      ...{ digits: most, letters, marks: coloured(marks) },
    })
  }
  const turnOf = ({ id }: MotifAccount): number =>
    plan.motifs.find((placed) => placed.motif === id)?.turn ?? 0
  return {
    motif: motif && wholePlace(motif, plan.motifs[0]?.turn ?? 0),
    byMotif: new Map(plan.accounts.map((account) => [account.id, wholePlace(account, turnOf(account))])),
    halves,
    fillers: new Map(
      plan.fillerMotifs.map((account) => [
        account.id,
        {
          layers: laid(account, plan.fillers.find((filler) => filler.motif === account.id)?.turn ?? 0),
          ...{ centre, inner: labelRadius(account) * least, tip: outerRadius(account.outline) * largest },
          ...{
            digits: most,
            letters: Math.max(letters, lettersOf(fillerMarks)),
            marks: coloured(fillerMarks),
          },
        },
      ]),
    ),
  }
}
