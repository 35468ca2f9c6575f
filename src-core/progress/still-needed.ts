/** What a list of materials asks for once a work has begun: of yarns that were weighed or counted, what is still to come. */
import type { Forecast, Plan, YarnNeed } from '../../shared-types/plan'
import type { Yarn } from '../../shared-types/project'
import { isUsable } from '../units/usable'
import { wholeBalls } from '../materials/ledger'

/** The needs of a plan; of yarns with a forecast the grams that go into the rest, and what was left of them. */
export const stillNeeded = (
  { yarns, progress }: Pick<Plan, 'yarns' | 'progress'>,
  known: readonly Yarn[],
): readonly YarnNeed[] =>
  yarns.map((need) => {
    const forecast = progress.forecast.find(({ yarn }) => yarn === need.id)
    const yarn = known.find(({ id }) => id === need.id)
    return forecast && need.grams.expected > 0 ? ofRest(need, forecast, yarn) : need
  })

function ofRest(need: YarnNeed, { left, missing, over, plan }: Forecast, yarn: Yarn | undefined): YarnNeed {
  const toCome = Math.max(0, left + missing - over)
  // At a known rate there is no range.
  const grams = plan ?? { low: toCome, expected: toCome, high: toCome }
  const share = grams.expected / need.grams.expected
  const metres = need.metres && {
    low: (need.metres.expected * share * grams.low) / Math.max(grams.expected, 1e-9),
    expected: need.metres.expected * share,
    high: (need.metres.expected * share * grams.high) / Math.max(grams.expected, 1e-9),
  }
  const balls =
    need.balls === null || !isUsable(yarn?.ballGrams) ? null : wholeBalls(grams.high, yarn.ballGrams)
  return { ...need, grams, metres, balls, onHand: left }
}
