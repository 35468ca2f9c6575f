/** The card: it goes in with the yarn of a kit and lists all of it, on one page if it can; of a garland also without one. */
import type { GarlandAccount, MotifAccount, PanelAccount, YarnNeed } from '../../../shared-types/plan'
import { appliquePicture } from '../../../src-core/figures/applique-picture'
import { firstPart, garlandFigure } from '../../../src-core/figures/garland'
import { creditLine, fibreWords, kitCautions } from '../../../src-core/figures/kit-words'
import { keySwatch } from '../../../src-core/figures/key-swatch'
import type { ColourwayMark } from '../../../src-core/figures/marks'
import { partOf } from '../../../src-core/figures/part'
import { projectSentence, sentenceText } from '../../../src-core/figures/sentence'
import { capital, counted } from '../../../src-core/figures/words'
import { isAssumed, marked, NOT_KNOWN } from '../../../src-core/figures/yarn-words'
import { termWord } from '../../../src-core/stitches/terms'
import { byKind } from '../../../src-core/plans/layouts'
import { formatNumber } from '../../../src-core/units/format'
import type { Block } from '../columns'
import { intoPages } from '../columns'
import type { Entry } from '../entry'
import { drawEntry, entryHeight } from '../entry'
import { drawLogo, logoSize } from '../draw-logo'
import type { Draft, Job } from '../page'
import { newSheet } from '../page'
import { Sheet, TYPE } from '../setting'
import type { Column, Row } from '../table'
import { Table } from '../table'
import { HEADINGS, noColourway, PAGE_NAMES, slotLines } from '../words'
import {
  bothMasses,
  bothYarnLengths,
  CARD_WORDS,
  cordWords,
  hangWords,
  laidWords,
  togetherWords,
  yarnCalled,
} from '../words-garland'
import { FIGURE_WORDS } from '../words-figures'
import { MOTIF_WORDS } from '../words-motif'
import { makerOf } from './labels'
import { hookWords } from '../../../src-core/stitches/hooks'
import { chainGaugeWords, gaugeWords, plannedGauge } from '../gauge-words'
import { blanketMotifs } from './motif'
import { setNotes } from './notes'
import { SWATCH_INSET, yarnSwatch } from './swatch'
import { setWhole } from './whole'

const GAP = 8
const LABEL = 18
const AIR = 5
const SWATCH = 11
/** mm. A heading with its room below, as `Sheet.heading` sets it. */
const HEADING = Sheet.line(TYPE.heading) + 1.6
/** mm. Room of the logo beside the title. */
const LOGO = { width: 40, height: 11 } as const
/** mm. The drawings get what is left of one page, but no less than this; else there is a second page. */
const LEAST_DRAWING = { cord: 34, whole: 60 } as const
/** mm. Least room that rows and columns are begun in. */
const LEAST_ROWS = 24
const LEAST_COLUMNS = 60
/** The first drawing's share of that room, and its largest height. */
const WHOLE_SHARE = 0.4
const WHOLE_HEIGHT = 52
const PART_HEIGHT = 58
const PICTURE_HEIGHT = 110
/** A part drawn lower than this shows no more than the whole does. */
const LEAST_PART = 24

/** All that is in the kit and all that is made of it: on one page, or on as many as it takes. */
export function cardPages(job: Job): Draft[] {
  const { plan, terms } = job
  const first = newSheet(job)
  const logo = logoSize(job, LOGO)
  const beside = logo ? first.inner - logo.width - GAP : first.inner
  let y = first.title(job.title, beside)
  // What comes next keeps its distance from a logo that reaches lower than the title.
  y = Math.max(y, drawLogo(job, first, { right: first.right, y: first.top }, LOGO) + 1)
  const sentence = sentenceText(projectSentence(plan, terms))
  y = setNotes(job, first, first.paragraph(sentence, first.left, y, 170, { size: TYPE.lead })) + AIR
  // Care and cautions always stand at the foot of the first page, however full the card is.
  const foot = first.bottom - footHeight(job, first)
  const card = cardOf(job)
  const sheets = [first]
  const table = yarnTable(job, first)
  const blocks = cardBlocks(job, first, card)
  const columns = Math.max(...columnsOf(blocks, () => Infinity)[0]!.map(heightOf))
  const rows = tableHeight(job)
  const room = (words: number): number => foot - AIR - words - y
  const isOne = room(rows + columns) >= card.least
  // Rows go over to the next page before the drawing gives way.
  const drawn = isOne ? room(rows + columns) : Math.max(room(rows), Math.min(card.least, room(0)))
  if (drawn > LEAST_PART) y = card.draw(first, y, drawn)
  let sheet = first
  let bottom = foot - AIR
  const turn = (): void => {
    if (sheet === first) foots(job, first, foot)
    sheet = newSheet(job)
    sheets.push(sheet)
    y = sheet.title(MOTIF_WORDS.goesOn(job.title)) + AIR
    bottom = sheet.bottom
  }
  if (y + LEAST_ROWS > bottom) turn()
  sheet.rule(y)
  y = table.draw(sheet, y + 3, bottom) + AIR
  while (table.goesOn) {
    turn()
    y = table.draw(sheet, y) + AIR
  }
  if (!isOne && (sheet === first || y + LEAST_COLUMNS > bottom)) turn()
  const tops = [y, newSheet(job).title(job.title) + AIR]
  columnsOf(blocks, (page) => sheet.bottom - tops[Math.min(page, 1)]!).forEach((page, i) => {
    if (i > 0) turn()
    page.forEach((column, at) => {
      let below = y
      for (const { draw, height } of column) {
        draw(sheet, sheet.left + at * (columnWidth(sheet) + GAP), below)
        below += height
      }
    })
  })
  if (sheet === first) foots(job, first, foot)
  const name = plan.kit ? PAGE_NAMES.card : PAGE_NAMES.garland
  return sheets.map((each, i) => ({ section: 'card', name, bookmarks: i === 0 ? [name] : [], sheet: each }))
}

const columnWidth = (sheet: Sheet): number => (sheet.inner - GAP) / 2

const heightOf = (column: readonly Block[]): number => column.reduce((sum, { height }) => sum + height, 0)

const columnsOf = (blocks: readonly Block[], room: (page: number) => number): Block[][][] =>
  intoPages(blocks, room, 0)

/** What the rows of yarn take with the rule above them, tried on sheets that are thrown away. */
function tableHeight(job: Job): number {
  const sheet = newSheet(job)
  const table = yarnTable(job, sheet)
  let height = 3 + table.draw(sheet, sheet.top) - sheet.top + AIR
  while (table.goesOn) height += table.draw(newSheet(job), sheet.top) - sheet.top
  return height
}

/** What is made, how it is hung and begun, and the gauge: in columns. */
function cardBlocks(job: Job, sheet: Sheet, { howTo }: CardOfKind): Block[] {
  const width = columnWidth(sheet)
  const list = partOf('L')
  const entries = cardEntries(job).map((entry): Block => ({
    height: entryHeight(sheet, entry, width),
    draw: (on, x, y) => drawEntry(on, list, entry, x, y, width),
  }))
  const told = howTo.map(([heading, text]): Block => ({
    height: HEADING + sheet.heightOf(text, width) + 2,
    draw: (on, x, y) => on.paragraph(text, x, on.heading(heading, x, y), width),
  }))
  const words = hookAndGauge(job)
  return [
    {
      height: HEADING,
      draw: (on, x, y) => on.heading(CARD_WORDS.make, x, y),
      keep: true,
    },
    ...entries,
    ...told,
    ...(words === ''
      ? []
      : [
          {
            height: sheet.heightOf(words, width),
            draw: (on: Sheet, x: number, y: number) => on.paragraph(words, x, y, width),
          },
        ]),
  ]
}

/** "Hook 3.5 mm. Gauge: …": as far as it is known. */
function hookAndGauge(job: Job): string {
  const given = plannedGauge(job)
  const gauge = gaugeWords(job, given)
  const hook = given?.hook ? `Hook ${hookWords(given.hook, job.terms)}.` : ''
  const told = gauge ? `${capital(termWord('gauge', job.terms))}: ${gauge}.` : ''
  const chains = chainGaugeWords(job)
  return [hook, told, chains && `Cord: ${chains}.`].filter(Boolean).join(' ')
}

/** What a card tells of a kind of layout. */
interface CardOfKind {
  /** Draws what is made, as large as the room allows; returns the y below. */
  draw(sheet: Sheet, top: number, room: number): number
  /** mm. The least height of the drawing on a card of one page. */
  readonly least: number
  /** How it is made up: heading and words. */
  readonly howTo: readonly (readonly [heading: string, words: string])[]
}

const cardOf = (job: Job): CardOfKind =>
  byKind(job.plan, {
    blanket: () => mapCard(job),
    garland: ({ garland }) => ({
      ...mapCard(job),
      ...(garland && cordCard(job, garland)),
    }),
    applique: ({ panel }) => ({ ...mapCard(job), ...(panel && panelCard(job, panel)) }),
  })

const mapCard = (job: Job): CardOfKind => ({
  // What it looks like: what a map writes over it would hide it.
  draw: (sheet, top, room) => setWhole(job, sheet, top, pictureHeight(room)) + AIR,
  least: LEAST_DRAWING.whole,
  howTo: [[CARD_WORDS.together, togetherWords(job.plan)]],
})

const cordCard = (job: Job, garland: GarlandAccount): CardOfKind => ({
  least: LEAST_DRAWING.cord,
  draw: (sheet, top, room) => garlandDrawings(job, garland, sheet, top, room),
  howTo: [
    [CARD_WORDS.hangs, hangWords(garland, job.units)],
    [CARD_WORDS.cord, cordWords(job, garland)],
  ],
})

const panelCard = ({ plan, units, style: look }: Job, panel: PanelAccount): Omit<CardOfKind, 'least'> => ({
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
function yarnTable(job: Job, sheet: Sheet): Table {
  const { settled, plan, units } = job
  const yarns = new Map(settled.yarns.map((yarn) => [yarn.id, yarn]))
  const wound = plan.kit?.perKit ?? plan.yarns.map((need) => neededYarn(need))
  const rows: Row[] = wound.map(({ yarn, grams, metres, assumed = [] }) => ({
    cells: [
      plan.kit ? yarnCalled(yarns.get(yarn)?.name || yarn) : yarns.get(yarn)?.name || yarn,
      yarns.get(yarn)?.fibre ?? '',
      grams > 0 ? marked(bothMasses(grams, units), assumed.includes('grams')) : NOT_KNOWN,
      grams > 0 ? marked(bothYarnLengths(metres, units), assumed.includes('metres')) : '',
    ],
    mark: yarnSwatch(yarns.get(yarn)?.colour, job.style),
  }))
  for (const { name, perKit } of plan.kit?.extras ?? [])
    rows.push({ cells: [`${formatNumber(perKit)} × ${name}`, '', '', ''] })
  const columns: Column[] = [
    { heading: plan.kit ? CARD_WORDS.contents : CARD_WORDS.yarn, align: 'left' },
    { heading: CARD_WORDS.fibre(job.terms), align: 'left' },
    { heading: CARD_WORDS.weight, align: 'right' },
    { heading: CARD_WORDS.length, align: 'right' },
  ]
  const said = columns.map((_, i) => rows.some(({ cells }) => cells[i] !== ''))
  return new Table(
    sheet,
    columns.filter((_, i) => said[i]),
    rows.map((row) => ({ ...row, cells: row.cells.filter((_, i) => said[i]) })),
    { inset: SWATCH_INSET },
  )
}

const neededYarn = (need: YarnNeed) => ({
  yarn: need.id,
  grams: need.grams.expected,
  metres: need.metres?.expected ?? null,
  assumed: (['grams', 'metres'] as const).filter((number) => isAssumed(need, number)),
})

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
    lines: [way, ...slotLines(mark, terms)],
  }
}

/** What stands at the foot of the card, label and words. */
function footFacts(job: Job): [string, string][] {
  const { settled, plan, terms } = job
  const care = settled.layout?.kit?.care?.trim()
  const ids = (plan.kit?.perKit ?? []).map(({ yarn }) => yarn)
  const fibre = fibreWords(settled, ids.length > 0 ? ids : plan.yarns.map(({ id }) => id), job.terms)
  return [
    [CARD_WORDS.fibre(job.terms), fibre],
    [CARD_WORDS.care, care || CARD_WORDS.fill(job.terms)],
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
