/**
 * What there is of yarns that were weighed or counted while the work was made, as a limit for the whole of it: what was
 * used until then cannot be taken again, and what is left is held against what is still to come. So a filling finds as
 * much missing as the forecast says.
 */
import type { YarnNeed } from '../../shared-types/plan'
import type { Settled } from '../../shared-types/settled'
import type { Taken } from '../materials/stash'
import { countedAt } from '../materials/on-hand'
import { forecastYarns } from './forecast'
import { readMarks } from './marks'
import { supplyOf } from './supply'
import type { Work } from './work'

/** Of each yarn that a forecast tells of, by its id; `needs` is the yarn of the whole work. */
export function atHand(project: Settled, workOf: () => Work, needs: readonly YarnNeed[]): Taken {
  if (!project.yarns.some((yarn) => yarn.left !== undefined || countedAt(yarn) > 0)) return new Map()
  const work = workOf()
  const marking = readMarks(project, work)
  return new Map(
    forecastYarns(work, marking, needs).forecast.map(({ yarn, left, at, rate, plan }) => {
      const { after, rangeAfter } = supplyOf(work, marking, yarn)
      const isHigh = project.yarns.find(({ id }) => id === yarn)?.noMore === true
      const high = rangeAfter(0).high - rangeAfter(at).high
      // By the plan alone it is the high end that counts, as what is bought.
      const used = plan ? high : rate * (isHigh ? high : after(0) - after(at))
      return [
        yarn,
        { whole: used + left, ...(!plan && { rate, ...(isHigh && { isHigh: true as const }) }) },
      ] as const
    }),
  )
}
