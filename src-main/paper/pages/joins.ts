/** How the motifs meet: a few motifs large, what the marks mean, one step in words, the kinds of join points. */
import { legendsOf, SIDES_IN_SHORT, SIDES_LEGEND } from '../../../src-core/joins/words'
import { keyMarks } from '../../../src-core/figures/map-ground'
import {
  chooseJoinDetail,
  isDetailLegible,
  joinDetailFigure,
  joinLegend,
  nodeKinds,
} from '../../../src-core/figures/join-detail'
import { joinMarksOf } from '../../../src-core/figures/join-marks'
import { turnAndScale } from '../../../src-core/figures/path'
import { capital } from '../../../src-core/figures/words'
import { ownPoints, placeInRow } from '../../../src-core/layout/placed'
import { formatLength } from '../../../src-core/units/format'
import type { Draft, Job } from '../page'
import type { Plan } from '../../../shared-types/plan'
import { newSheet } from '../page'
import type { Sheet } from '../setting'
import { TYPE } from '../setting'
import { HEADINGS, PAGE_NAMES } from '../words'
import {
  alongSidesWords,
  gapWords,
  joinedAsYouGo,
  joinLegendWords,
  joiningAdvice,
  joinsByStitch,
  moreJoinsWords,
  nodeKindWords,
  sewnPointsWords,
  sharedPointAdvice,
  sidesAdvice,
  spacesAdvice,
  stepSentence,
} from '../words-joining'
import { betweenWords, isGapTold } from '../../../src-core/figures/holding-words'
import { pointsAlone, seamsTold } from '../../../src-core/figures/seam-words'
import { FIGURE_WORDS } from '../words-figures'
import { stepTitle } from '../words-order'

const GAP = 10
const WIDTH = 165
/** Below the drawing: to the rule, and from there to what stands under it. */
const AIR = { above: 6, below: 4 } as const
/** A drawing with less height than this many mm beside what stands there already goes on a page of its own. */
const LEAST_DRAWING = 60

type Choice = NonNullable<ReturnType<typeof chooseJoinDetail>>

/** The page, below the key where that ends the pages before it and leaves room enough; nothing when nothing is joined. */
export function withJoins(job: Job, before: readonly Draft[]): Draft[] {
  const choice = chooseJoinDetail(job.plan)
  if (!choice) return [...before]
  const last = before.at(-1)
  if (last?.section === 'key' && last.end !== undefined) {
    const { sheet, end } = last
    const top = end + AIR.below
    const scratch = newSheet(job)
    const height = sheet.bottom - setHead(job, scratch, top) - footHeight(job, choice)
    if (height >= LEAST_DRAWING && isDetailLegible(job.plan, choice, { width: sheet.inner, height })) {
      sheet.rule(end)
      setJoins(job, sheet, top, choice)
      const name = `${last.name}, ${PAGE_NAMES.joins}`
      const bookmarks = [...last.bookmarks, HEADINGS.joins]
      return [...before.slice(0, -1), { section: last.section, name, bookmarks, sheet }]
    }
  }
  const sheet = newSheet(job)
  setJoins(job, sheet, sheet.top, choice)
  return [...before, { section: 'joins', name: PAGE_NAMES.joins, bookmarks: [HEADINGS.joins], sheet }]
}

/** Title and advice, which stands with the key already; returns the y below. */
function setHead({ plan, terms }: Job, sheet: Sheet, top: number): number {
  if (top > sheet.top) return sheet.lowerTitle(HEADINGS.joins, top) + 4
  const y = sheet.title(HEADINGS.joins)
  return sheet.paragraph(joiningAdvice(plan, terms), sheet.left, y, WIDTH) + 5
}

/** The whole page from `top` on: the drawing as large as there is room for. */
function setJoins(job: Job, sheet: Sheet, top: number, choice: Choice): void {
  const { plan, ground, settled } = job
  const y = setHead(job, sheet, top)
  const look = {
    marks: keyMarks(ground),
    hand: settled.hand,
    hosts: joinedAsYouGo(settled.joining),
    told: stepWords(job, choice) !== '',
  }
  const box = { width: sheet.inner, height: sheet.bottom - y - footHeight(job, choice) }
  const figure = joinDetailFigure(plan, choice, look, box)
  const below = sheet.figure(figure, sheet.left, y, FIGURE_WORDS.joins(choice.focus.label)) + AIR.above
  sheet.rule(below)
  setFoot(job, sheet, below + AIR.below, choice)
}

/** Height of all that stands below the drawing. */
function footHeight(job: Job, choice: Choice): number {
  const scratch = newSheet(job)
  return AIR.above + AIR.below + setFoot(job, scratch, 0, choice)
}

/** How the motif in the middle is worked; nothing where motifs are not joined as they are worked. */
function stepWords({ plan, settled }: Job, { focus }: Choice): string {
  const step = plan.order.find(({ motif }) => motif === focus.id)
  return stepSentence(settled.joining, step?.words ?? '')
}

/** How many motifs meet how often, and what comes to that. */
function pointsTold(plan: Plan): string[] {
  const more = ([what, pieces]: readonly [string, Parameters<typeof ownPoints>[0]]): string[] => {
    const points = ownPoints(pieces)
    return points > 0 ? [moreJoinsWords(what, points)] : []
  }
  const kinds = nodeKinds(plan)
  // The places along a side stand for the stitches that are joined there: to count them would say another number.
  if (plan.joins.some(({ members }) => members.some(({ anchor }) => anchor.startsWith('side'))))
    return [
      alongSidesWords,
      ...kinds
        .filter(({ members }) => members > 2)
        .map(({ members, count }) => `${nodeKindWords(members, count)}.`),
    ]
  return [
    ...kinds.map(({ members, count }) => `${nodeKindWords(members, count)}.`),
    ...more(['Fillers', plan.fillers]),
    ...more(['Half motifs', plan.halves]),
  ]
}

/** The seams, and what is sewn at single points besides. */
function seamsBeside({ counts }: Plan, seams: string): string[] {
  const points = pointsAlone(counts)
  return [seams, ...(points > 0 ? [sewnPointsWords(points)] : [])]
}

/** What the marks mean, the kinds of join points and one step in words; returns the y below. */
function setFoot(job: Job, sheet: Sheet, top: number, choice: Choice): number {
  const { plan, ground, settled } = job
  const hosts = joinedAsYouGo(settled.joining)
  const told = stepWords(job, choice)
  const width = (sheet.inner - GAP) / 2
  const second = sheet.left + width + GAP
  let left = sheet.heading(HEADINGS.marks, sheet.left, top)
  const means = joinLegendWords(plan.motif, joinMarksOf(choice.nodes), hosts, told !== '')
  const outline = turnAndScale(plan.motif?.outline ?? [], choice.focus.turn, 1)
  const legend = joinLegend(means, { hand: settled.hand, outline }, sheet.measure, TYPE.table, width)
  const { marks, ...others } = means
  const alt = FIGURE_WORDS.joinLegend([...Object.values(marks), ...Object.values(others)])
  left = sheet.figure(legend, sheet.left, left, alt) + 4
  let right = top
  if (told !== '') {
    const { focus } = choice
    const code = ground.marks.find((mark) => mark.id === focus.colourway)?.code ?? ''
    const step = sheet.heading(HEADINGS.example(focus.label), second, top)
    const below = sheet.text(
      stepTitle(focus.label, `row ${focus.row}, motif ${placeInRow(plan, focus)}`, code, ''),
      second,
      step,
      {
        weight: 'bold',
      },
    )
    // Beside the map, left and right would be read as those of the map.
    const sides = legendsOf([told], null).includes(SIDES_LEGEND) ? ` ${SIDES_IN_SHORT}` : ''
    right = sheet.paragraph(`${told}${sides}`, second, below, width) + 4
  }
  // Below the shorter column.
  const [x, from] = left <= right ? [sheet.left, left] : [second, right]
  // Along a seam its marks are no joins of their own: nobody counts them.
  const seams = seamsTold(plan)
  let y = sheet.heading(seams === '' ? HEADINGS.joinPoints : HEADINGS.seams, x, from)
  const kinds = nodeKinds(plan)
  const counted = seams === '' ? pointsTold(plan) : seamsBeside(plan, seams)
  for (const words of counted) y = sheet.paragraph(words, x, y, width)
  const between = betweenWords(plan.counts.between)
  if (between) y = sheet.paragraph(`${capital(between)}. ${spacesAdvice}`, x, y, width)
  const gap = Math.max(...kinds.map((kind) => kind.spread))
  const notes: string[] = []
  if (hosts && kinds.some((kind) => kind.members > 2)) notes.push(sharedPointAdvice)
  if (plan.motif?.shape === 'straight') notes.push(sidesAdvice(hosts, joinsByStitch(plan, job.terms)))
  if (isGapTold(gap)) notes.push(gapWords(formatLength(gap, job.units)))
  if (notes.length > 0) y = sheet.paragraph(notes.join(' '), x, y, width)
  return Math.max(left, right, y)
}
