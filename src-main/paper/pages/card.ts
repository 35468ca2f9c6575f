/** The card: one page that goes in with the yarn of a kit; of a garland also without one. */
import type { GarlandAccount, MotifAccount, PanelAccount, YarnNeed } from '../../../shared-types/plan'
import type { StitchGauge } from '../../../shared-types/project'
import { appliquePicture } from '../../../src-core/figures/applique-picture'
import { firstPart, garlandFigure } from '../../../src-core/figures/garland'
import { creditLine, fibreWords, kitCautions } from '../../../src-core/figures/kit-words'
import { keySwatch } from '../../../src-core/figures/key-swatch'
import { overviewMap } from '../../../src-core/figures/overview-map'
import type { ColourwayMark } from '../../../src-core/figures/marks'
import { projectSentence, sentenceText } from '../../../src-core/figures/sentence'
import { capital, counted } from '../../../src-core/figures/words'
import { isAssumed, marked, NOT_KNOWN } from '../../../src-core/figures/yarn-words'
import { termWord } from '../../../src-core/stitches/terms'
import { cordGauge } from '../../../src-core/layout/garland/cord'
import { byKind, garlandOf } from '../../../src-core/plans/layouts'
import { formatNumber } from '../../../src-core/units/format'
import type { Entry } from '../entry'
import { drawEntry, entryHeight } from '../entry'
import { drawLogo, logoSize } from '../draw-logo'
import type { Draft, Job } from '../page'
import { newSheet } from '../page'
import { Sheet, TYPE } from '../setting'
import type { Column, Row } from '../table'
import { Table } from '../table'
import { HEADINGS, noColourway, PAGE_NAMES, slotWords } from '../words'
import {
  bothMasses,
  bothYarnLengths,
  CARD_WORDS,
  cordWords,
  hangWords,
  laidWords,
  togetherWords,
} from '../words-garland'
import { FIGURE_WORDS } from '../words-figures'
import { makerOf } from './labels'
import { gaugeWords } from './materials'
import { blanketMotifs } from './motif'
import { setNotes } from './notes'
import { SWATCH_INSET, yarnSwatch } from './swatch'

const GAP = 8
const LABEL = 18
const AIR = 5
const SWATCH = 11
/** mm. Room of the logo beside the title. */
const LOGO = { width: 40, height: 11 } as const
/** Rows of yarn, and motifs with their pictures, that a card tells at most; fewer where the paper is short. */
const MOST_ROWS = 16
const LEAST_ROWS = 3
/** The drawings get what is left, but no less than this. */
const LEAST_DRAWING = 34
/** The first drawing's share of that room, and its largest height. */
const WHOLE_SHARE = 0.4
const WHOLE_HEIGHT = 52
const PART_HEIGHT = 58
const PICTURE_HEIGHT = 110
/** A part drawn lower than this shows no more than the whole does. */
const LEAST_PART = 24

/** One page, whatever is in the kit. */
export function cardPage(job: Job): Draft {
  const { plan, terms } = job
  const sheet = newSheet(job)
  const logo = logoSize(job, LOGO)
  const beside = logo ? sheet.inner - logo.width - GAP : sheet.inner
  let y = sheet.title(job.title, beside)
  // What comes next keeps its distance from a logo that reaches lower than the title.
  y = Math.max(y, drawLogo(job, sheet, { right: sheet.right, y: sheet.top }, LOGO) + 1)
  const sentence = sentenceText(projectSentence(plan, terms))
  y = setNotes(job, sheet, sheet.paragraph(sentence, sheet.left, y, 170, { size: TYPE.lead })) + AIR
  const foot = footHeight(job, sheet)
  // What the words need is tried on a sheet that is thrown away; the drawings get the rest.
  let rows = MOST_ROWS
  const needed = (): number => listsAndWords(job, newSheet(job), sheet.top, rows) - sheet.top
  const room = (): number => sheet.bottom - foot - AIR - needed() - y
  while (rows > LEAST_ROWS && room() < LEAST_DRAWING) rows--
  y = cardOf(job).draw(sheet, y, room())
  y = listsAndWords(job, sheet, y, rows)
  // Care and cautions always stand at the foot, however full the card is.
  foots(job, sheet, sheet.bottom - foot)
  const name = plan.kit ? PAGE_NAMES.card : PAGE_NAMES.garland
  return { section: 'card', name, bookmarks: [name], sheet }
}

/** Yarn, extras, motifs, and how it is hung and begun; returns the y below. */
function listsAndWords(job: Job, sheet: Sheet, top: number, most: number): number {
  const { terms } = job
  sheet.rule(top)
  const y = yarnList(job, sheet, top + 3, most) + 3
  const width = (sheet.inner - GAP) / 2
  const second = sheet.left + width + GAP
  const left = keyList(job, sheet, sheet.left, y, width, most)
  let right = y
  const { howTo, gauge: given } = cardOf(job)
  for (const [heading, text] of howTo) {
    right = sheet.heading(heading, second, right)
    right = sheet.paragraph(text, second, right, width) + 2
  }
  const gauge = gaugeWords(job, given)
  const hook = given?.hook ? `Hook ${formatNumber(given.hook, 2)} mm. ` : ''
  if (gauge) {
    const words = `${hook}${capital(termWord('gauge', terms))}: ${gauge}.`
    right = sheet.paragraph(words, second, right, width)
  }
  return Math.max(left, right)
}

/** What a card tells of a kind of layout. */
interface CardOfKind {
  /** Draws what is made, as large as the room allows; returns the y below. */
  draw(sheet: Sheet, top: number, room: number): number
  /** How it is made up: heading and words. */
  readonly howTo: readonly (readonly [heading: string, words: string])[]
  /** The gauge that it was planned by. */
  readonly gauge: StitchGauge | undefined
}

const cardOf = (job: Job): CardOfKind =>
  byKind(job.plan, {
    blanket: () => mapCard(job),
    garland: ({ garland }) => ({
      ...mapCard(job),
      gauge: cordGauge(job.settled, garlandOf(job.settled)),
      ...(garland && cordCard(job, garland)),
    }),
    applique: ({ panel }) => ({ ...mapCard(job), ...(panel && panelCard(job, panel)) }),
  })

const mapCard = ({ ground, settled, plan, terms }: Job): CardOfKind => ({
  draw: (sheet, top, room) => {
    const { figure } = overviewMap(ground, sheet.inner, pictureHeight(room))
    return sheet.figure(figure, sheet.left, top, FIGURE_WORDS.map(plan, false, terms)) + AIR
  },
  howTo: [[CARD_WORDS.together, togetherWords(plan)]],
  gauge: (settled.motifs.find(({ id }) => id === plan.motif?.id) ?? settled).gauge,
})

const cordCard = (job: Job, garland: GarlandAccount): Omit<CardOfKind, 'gauge'> => ({
  draw: (sheet, top, room) => garlandDrawings(job, garland, sheet, top, room),
  howTo: [
    [CARD_WORDS.hangs, hangWords(garland, job.units)],
    [CARD_WORDS.cord, cordWords(job, garland)],
  ],
})

const panelCard = ({ plan, units, style: look }: Job, panel: PanelAccount): Omit<CardOfKind, 'gauge'> => ({
  draw: (sheet, top, room) => {
    const box = { width: sheet.inner, height: pictureHeight(room), look }
    const alt = FIGURE_WORDS.panel(plan)
    return sheet.figure(appliquePicture(plan, panel, box), sheet.left, top, alt) + AIR
  },
  howTo: [[CARD_WORDS.laid, laidWords(plan, units)]],
})

const pictureHeight = (room: number): number => Math.min(PICTURE_HEIGHT, room - AIR)

/** mm that the hooks at the ends of the cord stand over its length. */
const HOOK_RIM = 1.5

/** The whole garland, and a part of it large enough to be worked from where there is room. */
function garlandDrawings(job: Job, garland: GarlandAccount, sheet: Sheet, top: number, room: number): number {
  const { plan } = job
  const look = job.style
  const label = 3 + Sheet.line(TYPE.body) + 1
  const part = firstPart(plan, garland)
  const share = part ? Math.max(room * WHOLE_SHARE, room - PART_HEIGHT - label - AIR) : room - AIR
  const height = Math.min(WHOLE_HEIGHT, share)
  const whole = garlandFigure(plan, garland, { width: sheet.inner - 2 * HOOK_RIM, height, look })
  let y = sheet.figure(whole, sheet.left + HOOK_RIM, top, FIGURE_WORDS.garland(garland))
  const left = Math.min(PART_HEIGHT, top + room - y - label - AIR)
  if (!part || left < LEAST_PART) return y + AIR
  y = sheet.text(CARD_WORDS.part(garland.swags !== null), sheet.left, y + 3, { size: TYPE.body })
  const [from, to] = part
  const options = { width: sheet.inner, height: left, look, from, to, numbered: true }
  const shown = garlandFigure(plan, garland, options)
  return sheet.figure(shown, sheet.left, y + 1, FIGURE_WORDS.garlandPart) + AIR
}

/** Yarn in one kit, wound or as needed, in both systems; and what else is in it. */
function yarnList(job: Job, sheet: Sheet, top: number, most: number): number {
  const { settled, plan, units } = job
  const yarns = new Map(settled.yarns.map((yarn) => [yarn.id, yarn]))
  const wound = plan.kit?.perKit ?? plan.yarns.map((need) => neededYarn(need))
  const rows: Row[] = wound.map(({ yarn, grams, metres, assumed = [] }) => ({
    cells: [
      yarns.get(yarn)?.name || yarn,
      yarns.get(yarn)?.fibre ?? '',
      grams > 0 ? marked(bothMasses(grams, units), assumed.includes('grams')) : NOT_KNOWN,
      grams > 0 ? marked(bothYarnLengths(metres, units), assumed.includes('metres')) : '',
    ],
    mark: yarnSwatch(yarns.get(yarn)?.colour, job.style),
  }))
  for (const { name, perKit } of plan.kit?.extras ?? [])
    rows.push({ cells: [`${formatNumber(perKit)} × ${name}`, '', '', ''] })
  const shown = rows.length > most ? rows.slice(0, most - 1) : rows
  if (shown.length < rows.length)
    shown.push({ cells: [CARD_WORDS.more(rows.length - shown.length), '', '', ''] })
  const columns: Column[] = [
    { heading: plan.kit ? CARD_WORDS.contents : CARD_WORDS.yarn, align: 'left' },
    { heading: CARD_WORDS.fibre(job.terms), align: 'left' },
    { heading: CARD_WORDS.weight, align: 'right' },
    { heading: CARD_WORDS.length, align: 'right' },
  ]
  const said = columns.map((_, i) => shown.some(({ cells }) => cells[i] !== ''))
  const table = new Table(
    sheet,
    columns.filter((_, i) => said[i]),
    shown.map((row) => ({ ...row, cells: row.cells.filter((_, i) => said[i]) })),
    { inset: SWATCH_INSET },
  )
  return table.draw(sheet, top) + 2
}

const neededYarn = (need: YarnNeed) => ({
  yarn: need.id,
  grams: need.grams.expected,
  metres: need.metres?.expected ?? null,
  assumed: (['grams', 'metres'] as const).filter((number) => isAssumed(need, number)),
})

/** What is made, each colourway of each motif with its picture, its count and the yarn of every part. */
function keyList(job: Job, sheet: Sheet, x: number, top: number, width: number, most: number): number {
  let y = sheet.heading(CARD_WORDS.make, x, top)
  const entries = cardEntries(job)
  const list = sheet.own('L')
  for (const entry of entries.slice(0, most)) {
    drawEntry(sheet, list, entry, x, y, width)
    y += entryHeight(sheet, entry, width)
  }
  const rest = entries.length - most
  return rest > 0 ? sheet.text(CARD_WORDS.more(rest), x, y) : y
}

/** All that is made: of a blanket each motif in each of its colourways, and what fills its openings. */
const cardEntries = (job: Job): Entry[] =>
  byKind(job.plan, {
    blanket: () =>
      blanketMotifs(job).flatMap(({ account, marks }) => marks.map((mark) => keyEntry(job, mark, account))),
    garland: () => placedEntries(job),
    applique: () => placedEntries(job),
  })

const placedEntries = (job: Job): Entry[] => job.ground.marks.map((mark) => keyEntry(job, mark))

/** A colourway with its picture, how often it is made, and the yarn of every part. */
export function keyEntry({ plan, style, terms }: Job, mark: ColourwayMark, of?: MotifAccount): Entry {
  const place = plan.motifs.findIndex((motif) => motif.colourway === mark.id)
  const placed = plan.motifs[place]
  const filler = mark.fillers > 0 ? plan.fillers.find(({ motif }) => motif === of?.id) : undefined
  const turn = (filler ?? placed)?.turn ?? 0
  const shown = byKind(plan, {
    blanket: () => turn,
    // As it hangs on a level cord.
    garland: ({ garland }) => turn - (garland?.items.filter(({ bead }) => bead === '')[place]?.turn ?? 0),
    // On a panel everything is turned at will.
    applique: () => 0,
  })
  const account = of ?? plan.accounts.find(({ id }) => id === placed?.motif) ?? plan.motif
  const way = [mark.code, mark.name || (mark.code === '' ? noColourway(terms) : '')]
    .filter(Boolean)
    .join(' · ')
  return {
    picture: account ? keySwatch(account, mark, style, shown, SWATCH) : null,
    alt: FIGURE_WORDS.swatch(way, terms),
    across: SWATCH,
    name: `${formatNumber(mark.fillers || mark.count)} × ${account?.name ?? ''}`,
    count: mark.halves > 0 ? `and ${counted(mark.halves, 'half', 'halves')}` : '',
    lines: [way, slotWords(mark.slots)],
  }
}

/** What stands at the foot of the card, label and words. */
function footFacts(job: Job): [string, string][] {
  const { settled, plan, terms } = job
  const care = settled.layout?.kit?.care?.trim()
  const ids = (plan.kit?.perKit ?? []).map(({ yarn }) => yarn)
  const fibre = fibreWords(settled, ids.length > 0 ? ids : plan.yarns.map(({ id }) => id))
  return [
    [CARD_WORDS.fibre(job.terms), fibre],
    [CARD_WORDS.care, care || CARD_WORDS.fill],
    [HEADINGS.cautions, kitCautions(settled, terms)],
    ...(plan.kit && makerOf(job) ? [[CARD_WORDS.maker, makerOf(job)] as [string, string]] : []),
  ]
}

function footHeight(job: Job, sheet: Sheet): number {
  const facts = footFacts(job).map(([, text]) => sheet.heightOf(text, sheet.inner - LABEL) + 1)
  return 3 + facts.reduce((sum, height) => sum + height, 0) + Sheet.line(TYPE.foot) + 2
}

function foots(job: Job, sheet: Sheet, top: number): void {
  sheet.rule(top)
  let y = top + 2.5
  const list = sheet.own('L')
  for (const [label, text] of footFacts(job)) {
    const top = y
    y = sheet.labelled(
      list,
      () => sheet.text(label, sheet.left, top, { weight: 'bold' }),
      () => sheet.paragraph(text, sheet.left + LABEL, top, sheet.inner - LABEL) + 1,
    )
  }
  sheet.text(creditLine(job.settled), sheet.left, y, { size: TYPE.foot })
}
