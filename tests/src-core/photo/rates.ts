/** How right the finder is over many pictures, and how well it knows. */
import type { PhotoAnswer } from '../../../src-core/photo/photo'

/** A picture that was drawn, with the truth of its motif. */
interface Drawn {
  readonly name: string
  readonly motif: { readonly petals: number; readonly overTips: number; readonly overValleys: number }
}

export interface Trial {
  readonly name: string
  readonly sure: boolean
  readonly petalsRight: boolean
  /** Off the truth, as shares; NaN where nothing was measured. */
  readonly tips: number
  readonly dips: number
}

/** What may be off where it says that it is sure. */
export const BOUNDS = { tips: { rms: 0.015, most: 0.04 }, dips: { rms: 0.025, most: 0.06 } } as const

/** An answer against the truth. */
export const trialOf = ({ name, motif }: Drawn, { measures, sure }: PhotoAnswer): Trial => ({
  ...{ name, sure },
  petalsRight: measures?.petals === motif.petals,
  tips: measures ? measures.overTips / motif.overTips - 1 : NaN,
  dips: measures ? measures.overValleys / motif.overValleys - 1 : NaN,
})

const isWrong = ({ petalsRight, tips, dips }: Trial): boolean =>
  !petalsRight || !(Math.abs(tips) <= BOUNDS.tips.most) || !(Math.abs(dips) <= BOUNDS.dips.most)

/** Rates over all, and sizes over those that are sure. */
export function ratesOf(trials: readonly Trial[]) {
  const sure = trials.filter((trial) => trial.sure && trial.petalsRight)
  const wrong = trials.filter(isWrong)
  const sizes = (values: readonly number[]) => ({
    rms: Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / Math.max(1, values.length)),
    most: Math.max(0, ...values.map(Math.abs)),
  })
  return {
    petals: trials.filter(({ petalsRight }) => petalsRight).length / trials.length,
    sure: trials.filter((trial) => trial.sure).length / trials.length,
    tips: sizes(sure.map(({ tips }) => tips)),
    dips: sizes(sure.map(({ dips }) => dips)),
    wrong: wrong.length,
    wrongAndUnsure: wrong.filter((trial) => !trial.sure).length,
    wrongAndSure: wrong.filter((trial) => trial.sure),
  }
}
