/** An edging, step by step in words: for its page on paper and for the page for a phone. */
import type { EdgingLoop } from '../../shared-types/plan'
import { firstRoundOf, pickUps } from '../../src-core/edging/pick-up'
import {
  edgeTitle,
  hasHalfCorners,
  laterWords,
  plainByLine,
  writtenOf,
  wrongIn,
} from '../../src-core/edging/words'
import { edgeSides } from '../../src-core/figures/edging-corners'
import { counted } from '../../src-core/figures/words'
import { MATERIAL_CONSTANTS } from '../../src-core/materials/constants'
import { blanketOf } from '../../src-core/plans/layouts'
import { editionText } from '../../src-core/notation/translate'
import { translateStitch } from '../../src-core/stitches/terms'
import type { Job } from './page'
import { beginWords, openingWords, plainSteps } from './plain-steps'
import { cornerRound } from './words-corners'
import { countWords, EDGING_PAGE, laterRoundWords, roundText, setUpWords } from './words-edging'
import type { Signed } from './words-edging'
import { firstRoundWords } from './words-materials'

/** What the words of an edging are made from. */
export type EdgingJob = Pick<Job, 'plan' | 'settled' | 'terms' | 'units'> & Signed

export interface EdgingSteps {
  /** "Round 1" and what is done in it, up to the round that picks up the stitches. */
  readonly steps: readonly (readonly [label: string, words: string])[]
  /** Of each line of the edge: its name where there are several, and its rounds. */
  readonly lines: readonly {
    readonly heading: string
    readonly steps: readonly (readonly [label: string, words: string])[]
  }[]
  readonly end: string
}

/** The steps of an edging; null where there is none. */
export function edgingSteps(job: EdgingJob): EdgingSteps | null {
  const { plan, settled, terms } = job
  const { edging } = plan
  const loops = edging?.loops ?? []
  if (!edging || edging.rounds.length === 0) return null
  if (loops.length === 0) return plainSteps(job, edging)
  const special = blanketOf(settled)?.edging?.special?.trim() ?? ''
  const written = writtenOf(edging)
  const plain = edging.rounds.slice(0, edging.rounds.length - written.length)
  const yarnOf = (id: string): string => settled.yarns.find((yarn) => yarn.id === id)?.name || id
  const several = new Set(edging.rounds.map(({ yarn }) => yarn)).size > 1
  const sections = edging.rounds.filter(({ yarn }, i, all) => yarn !== all[i - 1]?.yarn).length
  const setUp = plain.at(-1)!
  // Picked up along each line by itself, unless chains bridge its dips first.
  const isByLine = plain.length === 1 || loops.some(({ first }) => first)
  const writtenRounds = (blanketOf(settled)?.edging?.written ?? []).map(({ work }) => work)
  return {
    steps: [
      ...special
        .split('\n')
        .filter((each) => each.trim() !== '')
        .map((line) => [EDGING_PAGE.special, roundText(line, job)] as const),
      ...(isByLine ? [] : plain.slice(0, -1)).map((round) => {
        const stitch = translateStitch(round.stitch, settled.terms, terms) ?? round.stitch
        const how =
          round.number === 1
            ? `${openingWords(plan, terms)} ${firstRoundWords(edging, job, stitch)}`
            : laterWords(
                round,
                stitch,
                edging.rounds[round.number - 2],
                undefined,
                job.signs?.(round.number),
                hasHalfCorners(plan),
              )
        return [
          EDGING_PAGE.round(round.number),
          EDGING_PAGE.plain(
            round,
            how,
            stitch,
            plainByLine(round, plan),
            round.number === 1 && edging.dips ? counted(round.stitches, 'stitch', 'stitches') : undefined,
          ),
        ] as const
      }),
    ],
    lines: loops.map((loop, i) => ({
      heading: loops.length > 1 || plan.round ? edgeTitle(plan, loop) : '',
      steps: [
        ...(isByLine ? plain : [setUp]).map((round) => {
          const line = { loop, first: firstCorner(loops, i), lines: loops.length }
          const begun = firstRoundOf(loop)
          const words =
            round.number > 1
              ? laterRoundWords(round, plain[round.number - 2], line, job, round === setUp)
              : setUpWords(round, { ...line, loop: begun }, pickUps(plan, begun), job)
          return [EDGING_PAGE.round(round.number), words] as const
        }),
        ...written.map((round, k) => {
          const colour = several ? `${EDGING_PAGE.inYarn(yarnOf(round.yarn))}: ` : ''
          const wrong = wrongIn(plan, round)
          if (wrong) {
            const words = `${colour}${roundText(round.stitch, job)} ${EDGING_PAGE.wrong(wrong)}`
            return [EDGING_PAGE.round(round.number), words] as const
          }
          const text = loop.texts[k] ?? round.stitch
          const atCorners =
            k === 0
              ? cornerRound(loop, writtenRounds[0] ?? '', firstCorner(loops, i), edgeSides(plan, loop.line))
              : ''
          const told = editionText(atCorners, settled.terms, terms)
          const words = `${colour}${roundText(text, job)} (${countWords(loop, k)})${told}`
          return [EDGING_PAGE.round(round.number), words] as const
        }),
      ],
    })),
    end: `${beginWords(plain, job, true)} ${EDGING_PAGE.end(sections * loops.length * MATERIAL_CONSTANTS.tailsPerSection)}`,
  }
}

/** Corners are numbered on through all lines. */
const firstCorner = (loops: readonly EdgingLoop[], index: number): number =>
  1 + loops.slice(0, index).reduce((sum, { marks }) => sum + (isCornered(marks) ? marks.length : 0), 0)

const isCornered = (marks: EdgingLoop['marks']): boolean => marks.every(({ kind }) => kind === 'corner')
