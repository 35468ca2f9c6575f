/** A border of plain rounds alone, step by step in words: as one with written rounds, but its corners have no numbers. */
import type { EdgingAccount, EdgingRound, Plan } from '../../shared-types/plan'
import type { Terms } from '../../shared-types/project'
import { OPEN_ENDS } from '../../src-core/edging/open-ends'
import { pickUps } from '../../src-core/edging/pick-up'
import { edgeTitle, hasHalfCorners, laterWords, plainByLine, wayWords } from '../../src-core/edging/words'
import { cornerNames } from '../../src-core/figures/edging-corners'
import { listed } from '../../src-core/figures/words'
import { signedArea } from '../../src-core/geometry/points'
import { MATERIAL_CONSTANTS } from '../../src-core/materials/constants'
import { STITCHES } from '../../src-core/stitches/table'
import {
  canonicalStitch,
  chainsMade,
  stitchAbbreviation,
  translateStitch,
} from '../../src-core/stitches/terms'
import type { EdgingJob, EdgingSteps } from './edging-steps'
import { EDGING_PAGE, laterRoundWords, setUpWords } from './words-edging'
import { tipOf } from './words-bridge'
import { firstRoundWords } from './words-materials'

/** From so many chains on those that a round begins with count as its first stitch (M6). */
const COUNTS = 3

/**
 * "Begin each round of sc with ch 1, which is no stitch, and close it with a sl st in its first sc.", for every stitch;
 * `byNumber`: "Begin round 1 …", where written rounds that tell it themselves come after them.
 */
export function beginWords(
  rounds: readonly EdgingRound[],
  { settled, terms }: Pick<EdgingJob, 'settled' | 'terms'>,
  byNumber = false,
): string {
  const slip = stitchAbbreviation('sl st', terms)
  const written = [...new Set(rounds.map(({ stitch }) => stitch))]
  return written
    .map((own) => {
      const name = translateStitch(own, settled.terms, terms) ?? own
      const key = canonicalStitch(own, settled.terms)
      const chains = key ? STITCHES[key].beginningChains : 0
      const numbers = rounds.filter(({ stitch }) => stitch === own).map(({ number }) => String(number))
      const numbered = numbers.length > 1 ? `each of rounds ${listed(numbers)}` : `round ${numbers.join('')}`
      const which = byNumber ? numbered : written.length > 1 ? `each round of ${name}` : 'each round'
      if (chains === 0) return `Close ${which} with a ${slip} in its first stitch.`
      const begins = `Begin ${which} with ${chainsMade(chains, terms)}`
      return chains < COUNTS
        ? `${begins}, not counted as a stitch, and close it with a ${slip} in its first ${name}.`
        : `${begins}, counted as its first ${name}, and close it with a ${slip} in the top of these.`
    })
    .join(' ')
}

/** ", around holes clockwise": where all lines are told together, those that go the other way. */
function inHoles(plan: Plan, terms: Terms): string {
  const { edgingLines, round } = plan
  const first = edgingLines.findIndex(({ length }) => length > 1)
  const hole = edgingLines.findIndex(
    (line, i) => i > first && (!round || i >= OPEN_ENDS) && line.length > 1 && signedArea(line) < 0,
  )
  return hole < 0 ? '' : `, around holes ${wayWords(plan, hole, terms)}`
}

/** "Right side facing, join the yarn in a free tip. Going …, work": how the first round of all lines together begins. */
export function openingWords(plan: Plan, terms: Terms): string {
  const first = plan.edgingLines.findIndex(({ length }) => length > 1)
  const way = `${wayWords(plan, first, terms)}${inHoles(plan, terms)}`
  return `Right side facing, join the yarn in a free ${tipOf(plan)}. Going ${way}, work`
}

/** The steps of an edging without written rounds. */
export function plainSteps(job: EdgingJob, edging: EdgingAccount): EdgingSteps {
  const { plan, settled, terms } = job
  const { rounds, plain } = edging
  const stitchOf = ({ stitch }: EdgingRound): string =>
    translateStitch(stitch, settled.terms, terms) ?? stitch
  const lines = plain?.length ?? plan.edgingLines.filter(({ length }) => length > 1).length
  const ends = lines * MATERIAL_CONSTANTS.tailsPerSection
  const end = `${beginWords(rounds, job)} ${EDGING_PAGE.end(ends)}`
  if (!plain) {
    // Chains between tips are told of all lines together.
    const steps = rounds.map((round, i) => {
      const stitch = stitchOf(round)
      const how =
        i === 0
          ? `${openingWords(plan, terms)} ${firstRoundWords(edging, job, stitch)}`
          : laterWords(
              round,
              stitch,
              rounds[i - 1],
              undefined,
              job.signs?.(round.number),
              hasHalfCorners(plan),
            )
      const words = EDGING_PAGE.plain(round, how, stitch, plainByLine(round, plan))
      return [EDGING_PAGE.round(round.number), words] as const
    })
    return { steps, lines: [], end }
  }
  return {
    steps: [],
    lines: plain.map((loop, i) => {
      const line = { loop, first: 1, lines, corners: cornerNames(plan, loop.line) }
      return {
        heading: lines > 1 || plan.round ? edgeTitle(plan, loop) : '',
        steps: rounds.map((round, k) => {
          const words =
            k === 0
              ? setUpWords(round, line, pickUps(plan, loop), job)
              : laterRoundWords(round, rounds[k - 1], line, job, false, i)
          return [EDGING_PAGE.round(round.number), words] as const
        }),
      }
    }),
    end,
  }
}
