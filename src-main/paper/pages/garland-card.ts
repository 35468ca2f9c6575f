/** The kit card: one page that goes in with the yarn, with the garland as it hangs. */
import type { GarlandAccount, YarnNeed } from '../../../shared-types/plan'
import { drawPath, INK } from '../../../src-core/figures/figure'
import { firstPart, garlandFigure } from '../../../src-core/figures/garland'
import { creditLine, fibreWords, kitCautions } from '../../../src-core/figures/kit-words'
import { keySwatch } from '../../../src-core/figures/key-swatch'
import { paperColour } from '../../../src-core/figures/marks'
import { rectanglePath } from '../../../src-core/figures/path'
import { projectSentence, sentenceText } from '../../../src-core/figures/sentence'
import { capital } from '../../../src-core/figures/words'
import { termWord } from '../../../src-core/stitches/terms'
import { formatNumber } from '../../../src-core/units/format'
import type { Draft, Job } from '../page'
import { newSheet } from '../page'
import { Sheet, shorten, TYPE } from '../setting'
import type { Row } from '../table'
import { drawTable } from '../table'
import { HEADINGS, NO_COLOURWAY, PAGE_NAMES } from '../words'
import { bothMasses, bothYarnLengths, CARD_WORDS, cordWords, hangWords } from '../words-garland'
import { gaugeWords } from './materials'

const GAP = 8
const LABEL = 18
const AIR = 5
const SWATCH = 11
const KEY_ROW = 12.6
/** Rows of yarn, and motifs with their pictures, that a card tells at most; fewer where the paper is short. */
const MOST_ROWS = 8
const LEAST_ROWS = 3
/** The drawings get what is left, but no less than this. */
const LEAST_DRAWING = 34
/** The first drawing's share of that room, and its largest height. */
const WHOLE_SHARE = 0.4
const WHOLE_HEIGHT = 52
const PART_HEIGHT = 58
/** A part drawn lower than this shows no more than the whole does. */
const LEAST_PART = 24

/** One page, whatever is in the kit. */
export function cardPage(job: Job, garland: GarlandAccount): Draft {
  const { project, plan, terms } = job
  const sheet = newSheet(job)
  let y = sheet.title(job.title)
  const sentence = sentenceText(projectSentence(project, plan, terms))
  y = sheet.paragraph(sentence, sheet.left, y, 170, { size: TYPE.lead }) + AIR
  const foot = footHeight(job, sheet)
  // What the words need is tried on a sheet that is thrown away; the drawings get the rest.
  let rows = MOST_ROWS
  const needed = (): number => listsAndWords(job, garland, newSheet(job), sheet.top, rows) - sheet.top
  const room = (): number => sheet.bottom - foot - AIR - needed() - y
  while (rows > LEAST_ROWS && room() < LEAST_DRAWING) rows--
  y = drawings(job, garland, sheet, y, room())
  y = listsAndWords(job, garland, sheet, y, rows)
  // Care and cautions always stand at the foot, however full the card is.
  foots(job, sheet, sheet.bottom - foot)
  return { section: 'card', name: PAGE_NAMES.card, bookmarks: [PAGE_NAMES.card], sheet }
}

/** Yarn, extras, motifs, and how it is hung and begun; returns the y below. */
function listsAndWords(job: Job, garland: GarlandAccount, sheet: Sheet, top: number, most: number): number {
  const { project, terms, units } = job
  sheet.rule(top)
  const y = yarnList(job, sheet, top + 3, most) + 3
  const width = (sheet.inner - GAP) / 2
  const second = sheet.left + width + GAP
  const left = keyList(job, sheet, sheet.left, y, width, most)
  let right = sheet.heading(CARD_WORDS.hangs, second, y)
  right = sheet.paragraph(hangWords(garland, units), second, right, width) + 2
  right = sheet.heading(CARD_WORDS.cord, second, right)
  right = sheet.paragraph(cordWords(garland, units), second, right, width) + 2
  const gauge = gaugeWords(job, project.gauge)
  const hook = project.gauge?.hook ? `Hook ${formatNumber(project.gauge.hook, 2)} mm. ` : ''
  if (gauge) {
    const words = `${hook}${capital(termWord('gauge', terms))}: ${gauge}.`
    right = sheet.paragraph(words, second, right, width)
  }
  return Math.max(left, right)
}

/** The whole garland, and a part of it large enough to be worked from where there is room. */
function drawings(job: Job, garland: GarlandAccount, sheet: Sheet, top: number, room: number): number {
  const { project, plan } = job
  const look = job.style
  const label = 3 + Sheet.line(TYPE.body) + 1
  const part = firstPart(plan, garland)
  const share = part ? Math.max(room * WHOLE_SHARE, room - PART_HEIGHT - label - AIR) : room - AIR
  const height = Math.min(WHOLE_HEIGHT, share)
  let y = sheet.figure(
    garlandFigure(project, plan, garland, { width: sheet.inner, height, look }),
    sheet.left,
    top,
  )
  const left = Math.min(PART_HEIGHT, top + room - y - label - AIR)
  if (!part || left < LEAST_PART) return y + AIR
  y = sheet.text(CARD_WORDS.part(garland.swags !== null), sheet.left, y + 3, { size: TYPE.body })
  const [from, to] = part
  const options = { width: sheet.inner, height: left, look, from, to, numbered: true }
  return sheet.figure(garlandFigure(project, plan, garland, options), sheet.left, y + 1) + AIR
}

/** Yarn in one kit, wound or as needed, in both systems; and what else is in it. */
function yarnList(job: Job, sheet: Sheet, top: number, most: number): number {
  const { project, plan, units } = job
  const yarns = new Map((project.yarns ?? []).map((yarn) => [yarn.id, yarn]))
  const wound = plan.kit?.perKit ?? plan.yarns.map((need) => neededYarn(need))
  const rows: Row[] = wound.map(({ yarn, grams, metres }) => ({
    cells: [
      yarns.get(yarn)?.name || yarn,
      yarns.get(yarn)?.fibre ?? '',
      bothMasses(grams, units),
      bothYarnLengths(metres, units),
    ],
    mark: (into, x, y, height) => {
      const path = rectanglePath(x, y + height / 2 - 1.5, 3.6, 3)
      const fill = paperColour(yarns.get(yarn)?.colour)
      into.items.push(drawPath(path, { fill, stroke: INK, width: 0.18 }))
    },
  }))
  for (const { name, perKit } of plan.kit?.extras ?? [])
    rows.push({ cells: [name, '', `× ${formatNumber(perKit)}`, ''] })
  const shown = rows.length > most ? rows.slice(0, most - 1) : rows
  if (shown.length < rows.length)
    shown.push({ cells: [CARD_WORDS.more(rows.length - shown.length), '', '', ''] })
  const columns = [
    { heading: plan.kit ? CARD_WORDS.contents : CARD_WORDS.yarn, align: 'left' as const },
    { heading: '', align: 'left' as const },
    { heading: '', align: 'right' as const },
    { heading: '', align: 'right' as const },
  ]
  return drawTable(sheet, top, columns, shown, { inset: 6 }).y + 2
}

const neededYarn = (need: YarnNeed) => ({
  yarn: need.id,
  grams: need.grams.expected,
  metres: need.metres?.expected ?? null,
})

/** What is made, each colourway of each motif with its picture and count. */
function keyList(job: Job, sheet: Sheet, x: number, top: number, width: number, most: number): number {
  const { plan, ground } = job
  let y = sheet.heading(CARD_WORDS.make, x, top)
  const marks = ground.marks.slice(0, most)
  const hung = (plan.items ?? []).filter(({ bead }) => bead === '')
  for (const mark of marks) {
    const place = plan.motifs.findIndex((motif) => motif.colourway === mark.id)
    const placed = plan.motifs[place]
    // As it hangs on a level cord.
    const turn = (placed?.turn ?? 0) - (hung[place]?.turn ?? 0)
    const account = plan.accounts?.find(({ id }) => id === placed?.motif)
    if (account) sheet.figure(keySwatch(account, mark, job.style, turn, SWATCH), x, y)
    const count = `${mark.count.toLocaleString('en')} × ${account?.name ?? ''}`
    const line = Sheet.line(TYPE.body)
    const room = width - SWATCH - 3
    const first = shorten(count, room, sheet.measure, TYPE.body, 'bold')
    const way = [mark.code, mark.name || (mark.code === '' ? NO_COLOURWAY : '')].filter(Boolean).join(' · ')
    sheet.text(first, x + SWATCH + 3, y + SWATCH / 2 - line, { weight: 'bold' })
    sheet.text(shorten(way, room, sheet.measure, TYPE.body, 'regular'), x + SWATCH + 3, y + SWATCH / 2)
    y += KEY_ROW
  }
  const rest = ground.marks.length - marks.length
  return rest > 0 ? sheet.text(CARD_WORDS.more(rest), x, y) : y
}

/** What stands at the foot of the card, label and words. */
function footFacts(job: Job): [string, string][] {
  const { project, plan, terms } = job
  const care = project.layout?.kit?.care?.trim()
  const ids = (plan.kit?.perKit ?? []).map(({ yarn }) => yarn)
  const fibre = fibreWords(project, ids.length > 0 ? ids : plan.yarns.map(({ id }) => id))
  return [
    [CARD_WORDS.fibre, fibre],
    [CARD_WORDS.care, care || CARD_WORDS.fill],
    [HEADINGS.cautions, kitCautions(project, terms)],
  ]
}

function footHeight(job: Job, sheet: Sheet): number {
  const facts = footFacts(job).map(([, text]) => sheet.heightOf(text, sheet.inner - LABEL) + 1)
  return 3 + facts.reduce((sum, height) => sum + height, 0) + Sheet.line(TYPE.foot) + 2
}

function foots(job: Job, sheet: Sheet, top: number): void {
  sheet.rule(top)
  let y = top + 2.5
  for (const [label, text] of footFacts(job)) {
    sheet.text(label, sheet.left, y, { weight: 'bold' })
    y = sheet.paragraph(text, sheet.left + LABEL, y, sheet.inner - LABEL) + 1
  }
  sheet.text(creditLine(job.project), sheet.left, y, { size: TYPE.foot })
}
