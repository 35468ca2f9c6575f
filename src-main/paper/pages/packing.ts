/** The packing list: for the seller of a run of kits. What to wind, to buy, to charge, and to put on the label. */
import { partOf } from '../../../src-core/figures/part'
import { capital } from '../../../src-core/figures/words'
import { BOUGHT_NEW, hasStock, starred, starWords } from '../../../src-core/figures/yarn-words'
import { ballsOnHand } from '../../../src-core/materials/kit/on-hand'
import { termWord } from '../../../src-core/stitches/terms'
import type { KitAccount } from '../../../shared-types/plan'
import type { UnitSystem, Yarn } from '../../../shared-types/project'
import { gramsOnHand } from '../../../src-core/materials/on-hand'
import type { Settled } from '../../../shared-types/settled'
import { formatLength, formatMass, formatMoney, formatNumber } from '../../../src-core/units/format'
import type { Draft, Job } from '../page'
import { newSheet } from '../page'
import type { Sheet } from '../setting'
import { TYPE } from '../setting'
import type { Column, Row } from '../table'
import { Table } from '../table'
import { creditLine, fibreWords, kitCautions, lengthsWords } from '../../../src-core/figures/kit-words'
import { cordName } from '../../../src-core/layout/garland/put-in'
import { HEADINGS, PAGE_NAMES } from '../words'
import {
  accountFacts,
  bothMasses,
  bothYarnLengths,
  CARD_WORDS,
  contentsWords,
  PACKING_WORDS,
  runWords,
} from '../words-garland'
import { noteParagraphs, setNotes, shortNotes } from './notes'

const LABEL = 30
/** Least room that a table is begun in. */
const LEAST = 28
/**
 * Between its parts (mm), type of its tables (points) and whether the account stands beside what is bought, the airiest
 * first: a tighter one is taken where it saves a page.
 */
const SETTINGS = [false, true].flatMap((beside) => [
  { between: 5, size: TYPE.table, beside },
  { between: 3.5, size: 9, beside },
  { between: 2.5, size: TYPE.list, beside },
])
type Setting = (typeof SETTINGS)[number]
/** Between a table and what stands beside it, and what that needs besides its labels, in mm. */
const BESIDE = { gap: 10, words: 36 } as const

type Facts = readonly (readonly [string, string])[]

const left = (heading: string): Column => ({ heading, align: 'left' })
const right = (heading: string): Column => ({ heading, align: 'right' })

/** A stack of pages that is filled from the top. */
class Pages {
  readonly drafts: Draft[] = []
  sheet: Sheet
  y: number

  constructor(
    private readonly job: Job,
    private readonly setting: Setting,
  ) {
    this.sheet = this.#open()
    this.y = this.sheet.top
  }

  #open(): Sheet {
    const sheet = newSheet(this.job)
    const bookmarks = this.drafts.length === 0 ? [PACKING_WORDS.title] : []
    this.drafts.push({ section: 'packing', name: PAGE_NAMES.packing, bookmarks, sheet })
    return sheet
  }

  /** Turns to a new page where less than so much room is left. */
  want(room: number): void {
    if (this.y + room <= this.sheet.bottom) return
    this.sheet = this.#open()
    this.y = this.sheet.top
  }

  /** The table, and at its right what stands beside it, where there is room; returns whether there was. */
  table(heading: string, columns: readonly Column[], rows: readonly Row[], beside?: FactList): boolean {
    if (rows.length === 0) return false
    this.want(LEAST)
    const top = this.y
    this.y = this.sheet.heading(heading, this.sheet.left, this.y)
    const table = new Table(this.sheet, columns, rows, { size: this.setting.size })
    this.y = table.draw(this.sheet, this.y) + this.setting.between
    while (table.goesOn) {
      this.want(Infinity)
      this.y = table.draw(this.sheet, this.y) + this.setting.between
      beside = undefined
    }
    const x = this.sheet.left + table.width + BESIDE.gap
    if (!beside || x + LABEL + BESIDE.words > this.sheet.left + this.sheet.inner) return false
    const below = this.y
    this.y = top
    this.facts(beside.heading, beside.facts, x)
    this.y = Math.max(this.y, below)
    return true
  }

  facts(heading: string, facts: Facts, x = this.sheet.left): void {
    if (facts.length === 0) return
    this.want(LEAST)
    this.y = this.sheet.heading(heading, x, this.y)
    const width = this.sheet.left + this.sheet.inner - x - LABEL
    const list = partOf('L')
    for (const [label, text] of facts) {
      this.want(this.sheet.heightOf(text, width))
      const { sheet, y } = this
      this.y = sheet.labelled(
        list,
        () => sheet.text(label, x, y, { weight: 'bold' }),
        () => sheet.paragraph(text, x + LABEL, y, width) + 1.2,
      )
    }
    this.y += this.setting.between - 1.2
  }
}

interface FactList {
  readonly heading: string
  readonly facts: Facts
}

/** The pages of the packing list, in the airiest setting that takes no more of them than the tightest would. */
export function packingPages(job: Job, kit: KitAccount): Draft[] {
  const attempts = SETTINGS.map((setting) => setPacking(job, kit, setting))
  const fewest = Math.min(...attempts.map((pages) => pages.length))
  return attempts.find((pages) => pages.length === fewest)!
}

function setPacking(job: Job, kit: KitAccount, setting: Setting): Draft[] {
  const { settled, units } = job
  const money = (amount: number): string => formatMoney(amount, settled.currency)
  const pages = new Pages(job, setting)
  const isStocked = hasStock(settled.yarns, kit.run)
  pages.y = pages.sheet.title(PACKING_WORDS.title)
  pages.y = pages.sheet.paragraph(runWords(kit, settled), pages.sheet.left, pages.y, 165)
  if (shortNotes(job).length > 0) pages.y = setNotes(job, pages.sheet, pages.y)
  pages.y += setting.between
  pages.table(
    PACKING_WORDS.winding,
    [left('What'), right('in one kit'), right('its length'), right('pieces'), right('in all')],
    windingRows(job, kit),
  )
  const taxed = (settled.layout?.kit?.taxPercent ?? 0) > 0
  const account: FactList = {
    heading: PACKING_WORDS.account,
    facts: accountFacts(kit, money, units, taxed, job.terms),
  }
  const isBeside = pages.table(
    PACKING_WORDS.buying,
    [
      ...[left('What'), right('how many')],
      ...(isStocked ? [right('on hand'), right('to order')] : []),
      ...[right('left over'), right('cost')],
    ],
    buyingRows(job, kit, money, isStocked),
    setting.beside ? account : undefined,
  )
  if (kit.perKit.some(({ assumed }) => assumed) || kit.run.some(({ assumed }) => assumed))
    pages.y = pages.sheet.paragraph(starWords(termWord('ball', job.terms)), pages.sheet.left, pages.y, 165)
  const remarks = [
    ...lengthsWords(settled, kit, job.terms, true),
    ...(isStocked ? [BOUGHT_NEW] : []),
    ...job.plan.findings.filter(({ code }) => code === 'kit/no-instructions').map(({ message }) => message),
  ]
  for (const words of remarks)
    pages.y = pages.sheet.paragraph(capital(words), pages.sheet.left, pages.y + 1, 165)
  if (remarks.length > 0) pages.y += setting.between
  if (!isBeside) pages.facts(account.heading, account.facts)
  const care = settled.layout?.kit?.care?.trim()
  pages.facts(PACKING_WORDS.label, [
    ['Contents', contentsWords(settled, kit).join(', ')],
    [
      CARD_WORDS.fibre(job.terms),
      fibreWords(
        settled,
        kit.perKit.map(({ yarn }) => yarn),
        job.terms,
      ),
    ],
    [CARD_WORDS.care, care || CARD_WORDS.fill(job.terms)],
    ['Cautions', kitCautions(settled, job.terms)],
    ['Pattern', creditLine(settled, true)],
    ['Before selling', PACKING_WORDS.check(job.terms)],
  ])
  if (shortNotes(job).length === 0)
    pages.facts(
      HEADINGS.notes,
      noteParagraphs(job).map((text) => ['', text]),
    )
  return pages.drafts
}

const yarnName = (settled: Settled, id: string): string =>
  settled.yarns.find((yarn) => yarn.id === id)?.name || id

/**
 * What goes in as it is and what is wound, yarn by yarn; below them cords to cut and what else goes in, which are
 * counted and not weighed.
 */
function windingRows({ settled, plan, units, terms }: Job, kit: KitAccount): Row[] {
  const pieces = kit.count + kit.spares
  const rows = kit.perKit.flatMap(({ yarn, grams, metres, assumed = [] }): Row[] => {
    const { whole, wound = grams } = kit.run.find((run) => run.yarn === yarn) ?? {}
    const name = yarnName(settled, yarn)
    const row = (what: string, mass: string, length: string, count: number, all: number): Row => ({
      cells: [
        `☐ ${what}`,
        starred(mass, assumed.includes('grams')),
        length,
        formatNumber(count),
        starred(bothMasses(all, units), assumed.includes('grams')),
      ],
    })
    const each = bothMasses(grams, units)
    if (!whole && wound === 0)
      return [row(PACKING_WORDS.asTheyAre(name, termWord('balls', terms)), each, '', pieces, grams * pieces)]
    const packed = whole
      ? [
          row(
            PACKING_WORDS.asTheyAre(name, termWord('balls', terms)),
            `${formatNumber(whole.count)} × ${bothMasses(whole.grams, units)}`,
            '',
            whole.count * pieces,
            whole.count * whole.grams * pieces,
          ),
        ]
      : []
    if (wound === 0) return packed
    const long = metres === null ? null : (metres * wound) / grams
    const length = starred(bothYarnLengths(long, units), assumed.includes('metres'))
    const what = whole ? PACKING_WORDS.wound(name) : name
    return [...packed, row(what, bothMasses(wound, units), length, pieces, wound * pieces)]
  })
  const counted = (name: string, count: number): Row => ({
    cells: [`☐ ${name}`, '', '', formatNumber(count), ''],
  })
  const cord = plan.garland?.cord
  if (cord?.chains === null) {
    const { length } = cord.whole
    const name = PACKING_WORDS.cut(formatLength(length, units), formatLength(length * pieces, units))
    rows.push(counted(name, pieces))
  }
  // The cord that is cut stands above with its length.
  const cut = cordName(cord, units)
  for (const { name, perKit, run } of kit.extras.filter((extra) => extra.name !== cut))
    rows.push(counted(`${formatNumber(perKit)} × ${name}`, run))
  return rows
}

/** "2", "2 + 35 g": balls that the order is less by, and what lies there opened or in another size; the latter told once. */
function onHandWords(yarn: Yarn | undefined, isFirst: boolean, balls: number, units: UnitSystem): string {
  const whole = balls > 0 ? Math.floor(yarn?.onHandBalls ?? 0) * (yarn?.ballGrams ?? 0) : 0
  const rest = yarn && isFirst ? gramsOnHand(yarn) - whole : 0
  const told = [balls > 0 ? formatNumber(balls) : '', rest >= LEAST_TOLD ? formatMass(rest, units) : '']
  return told.filter(Boolean).join(' + ') || '–'
}
/** g. Less is no length for a kit. */
const LEAST_TOLD = 1

/** With columns of what is on hand, and of what is to be ordered then, where there is some of it. */
function buyingRows(job: Job, kit: KitAccount, money: (amount: number) => string, isStocked: boolean): Row[] {
  const rows: Row[] = []
  const stock = (...cells: string[]): string[] => (isStocked ? cells : [])
  const amount = (cost: number | null): string => (cost === null ? '–' : money(cost))
  for (const run of kit.run) {
    const name = yarnName(job.settled, run.yarn)
    const isGuessed = run.assumed ?? false
    if (run.packs.length === 0) rows.push({ cells: [`☐ ${name}`, '–', ...stock('', ''), '', '–'] })
    const yarn = job.settled.yarns.find(({ id }) => id === run.yarn)
    run.packs.forEach((pack, i) => {
      const { grams, price, count } = pack
      const there = ballsOnHand(yarn, pack)
      const last = i === run.packs.length - 1
      rows.push({
        cells: [
          `☐ ${name}, ${formatMass(grams, 'metric')} each`,
          starred(formatNumber(count), isGuessed),
          ...stock(
            onHandWords(yarn, i === 0, there, job.units),
            starred(formatNumber(count - there), isGuessed),
          ),
          last && run.leftover !== null ? starred(formatMass(run.leftover, job.units), isGuessed) : '',
          starred(amount(price === null ? null : price * count), isGuessed),
        ],
      })
    })
  }
  for (const { name, run, cost } of kit.extras)
    rows.push({ cells: [`☐ ${name}`, formatNumber(run), ...stock('', ''), '', amount(cost)] })
  if (kit.packaging > 0)
    rows.push({
      cells: ['☐ packaging', formatNumber(kit.count), ...stock('', ''), '', money(kit.packaging)],
    })
  rows.push({
    cells: [
      'Together',
      '',
      ...stock('', ''),
      '',
      starred(amount(kit.runCost), kit.assumed?.includes('cost') ?? false),
    ],
    bold: true,
  })
  return rows
}
