/** The join detail: a few motifs large, what the marks mean, one step in words, the kinds of join points. */
import { keyMarks } from '../../../src-core/figures/map-ground'
import {
  chooseJoinDetail,
  joinDetailFigure,
  joinLegend,
  nodeKinds,
} from '../../../src-core/figures/join-detail'
import { joinMarksOf } from '../../../src-core/figures/join-marks'
import { ownPoints } from '../../../src-core/layout/placed'
import { formatLength } from '../../../src-core/units/format'
import type { Draft, Job } from '../page'
import { newSheet } from '../page'
import { TYPE } from '../setting'
import {
  gapWords,
  HEADINGS,
  joinedAsYouGo,
  joinLegendWords,
  joiningAdvice,
  motifWord,
  moreJoinsWords,
  nodeKindWords,
  PAGE_NAMES,
  sharedPointAdvice,
  sidesAdvice,
  stepSentence,
} from '../words'
import { FIGURE_WORDS } from '../words-figures'
import { stepTitle } from '../words-order'

const GAP = 10

/** A gap under this many mm is none that a hand could tell. */
const NO_GAP = 0.5

/** The page, or nothing when nothing is joined. */
export function joinPages(job: Job): Draft[] {
  const { plan, ground, settled } = job
  const choice = chooseJoinDetail(plan)
  if (!choice) return []
  const sheet = newSheet(job)
  let y = sheet.title(HEADINGS.joins)
  y = sheet.paragraph(joiningAdvice(settled, plan.motif, job.terms), sheet.left, y, 165) + 5
  const foot = 88
  const box = { width: sheet.inner, height: sheet.bottom - y - foot }
  const hand = settled.hand
  const hosts = joinedAsYouGo(settled.joining)
  const step = plan.order.find(({ motif }) => motif === choice.focus.id)
  const told = stepSentence(settled.joining, step?.words ?? '')
  const figure = joinDetailFigure(
    plan,
    choice,
    { marks: keyMarks(ground), hand, hosts, told: told !== '' },
    box,
  )
  y = sheet.figure(figure, sheet.left, y, FIGURE_WORDS.joins(choice.focus.label)) + 6
  sheet.rule(y)
  y += 4
  const width = (sheet.inner - GAP) / 2
  const second = sheet.left + width + GAP
  let left = sheet.heading(HEADINGS.marks, sheet.left, y)
  const means = joinLegendWords(motifWord(plan.motif), joinMarksOf(choice.nodes), hosts, told !== '')
  const legend = joinLegend(means, hand, sheet.measure, TYPE.table, width)
  const { marks, ...others } = means
  const alt = FIGURE_WORDS.joinLegend([...Object.values(marks), ...Object.values(others)])
  left = sheet.figure(legend, sheet.left, left, alt) + 4
  left = sheet.heading(HEADINGS.joinPoints, sheet.left, left)
  const kinds = nodeKinds(plan)
  for (const kind of kinds) {
    left = sheet.paragraph(`${nodeKindWords(kind.members, kind.count)}.`, sheet.left, left, width)
  }
  for (const [what, pieces] of [
    ['Fillers', plan.fillers],
    ['Half motifs', plan.halves],
  ] as const) {
    const more = ownPoints(pieces)
    if (more > 0) left = sheet.paragraph(moreJoinsWords(what, more), sheet.left, left, width)
  }
  const gap = Math.max(...kinds.map((kind) => kind.spread))
  const notes: string[] = []
  if (hosts && kinds.some((kind) => kind.members > 2)) notes.push(sharedPointAdvice)
  if (plan.motif?.shape === 'straight') notes.push(sidesAdvice)
  if (gap >= NO_GAP) notes.push(gapWords(formatLength(gap, job.units)))
  if (notes.length > 0) sheet.paragraph(notes.join(' '), sheet.left, left, width)
  if (told !== '') {
    const { focus } = choice
    const code = ground.marks.find((mark) => mark.id === focus.colourway)?.code ?? ''
    const top = sheet.heading(HEADINGS.example(focus.label), second, y)
    const below = sheet.text(
      stepTitle(focus.label, `row ${focus.row}, motif ${focus.column}`, code, ''),
      second,
      top,
      {
        weight: 'bold',
      },
    )
    sheet.paragraph(told, second, below, width)
  }
  return [{ section: 'joins', name: PAGE_NAMES.joins, bookmarks: [HEADINGS.joins], sheet }]
}
