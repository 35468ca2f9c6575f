/** The order of work, motif by motif, with boxes to tick; steps that are alike along a row stand together. */
import type { OrderStep, Plan } from '../../../shared-types/plan'
import { breakLines } from '../../../src-core/figures/lines'
import { keyMarks } from '../../../src-core/figures/map'
import { pieceWords } from '../../../src-core/figures/piece-words'
import { pieceAt } from '../../../src-core/layout/placed'

import type { Block } from '../columns'
import { intoPages } from '../columns'
import type { Draft, Job } from '../page'
import { newSheet } from '../page'
import { Sheet, TYPE } from '../setting'
import {
  againWords,
  HEADINGS,
  orderIntroduction,
  PAGE_NAMES,
  ROW_DIRECTIONS,
  stepSentence,
  stepTitle,
  THE_SAME,
} from '../words'

/** Type sizes, largest first: a smaller one is taken where it saves a page. Lists stay at 8 pt or more. */
const SIZES = [TYPE.list, 8.25, 8] as const
const LEADING = 1.3
const COLUMN_GAP = 9
/** Pages from which on a list is set in the largest type at once. */
const LONG_LIST = 8
/** Where the words of a step begin, under its number. */
const INDENT = 4
const AIR = 1.3

interface StepGroup {
  readonly row: number
  readonly first: OrderStep
  readonly steps: readonly OrderStep[]
}

/** What a step does, told by where its neighbours are from it: alike for motifs that are worked alike. */
function manner(plan: Plan, step: OrderStep): string {
  const here = pieceAt(plan, step.motif)
  const joins = step.joins.map((join) => {
    const others = join.with.map((member) => {
      const there = pieceAt(plan, member.motif)
      const rows = (there?.row ?? 0) - (here?.row ?? 0)
      return `${rows},${(there?.column ?? 0) - (here?.column ?? 0)},${member.anchor}`
    })
    return `${join.anchor}>${others.join('+')}`
  })
  const phrasing = step.words.replace(/\d+/g, '#')
  return [step.kind, here?.row, here?.turn, here?.side, step.free.join(' '), joins.join(' '), phrasing].join(
    '|',
  )
}

/** The row in which each step is worked: fillers and half motifs come at the end of a row of motifs. */
function rowsOf(plan: Plan): number[] {
  let row = 0
  return plan.order.map((step) => {
    if (step.kind === 'motif') row = pieceAt(plan, step.motif)?.row ?? 0
    return row
  })
}

/** The steps in order, those in a row that are worked alike taken together. */
function groupSteps(plan: Plan): StepGroup[] {
  const rows = rowsOf(plan)
  const groups: { row: number; first: OrderStep; steps: OrderStep[]; manner: string }[] = []
  plan.order.forEach((step, i) => {
    const how = manner(plan, step)
    const last = groups.at(-1)
    if (last && last.manner === how) last.steps.push(step)
    else groups.push({ row: rows[i]!, first: step, steps: [step], manner: how })
  })
  return groups
}

/** A part of the list, with the row that it is about. */
interface OrderBlock extends Block {
  readonly row: number
}

/** A box to tick. */
interface Entry {
  readonly title: string
  /** What others call it. */
  readonly label: string
  readonly row: number
}

class OrderSetter {
  readonly blocks: OrderBlock[] = []
  private readonly codes: ReadonlyMap<string, string>
  private readonly line: number

  constructor(
    private readonly job: Job,
    private readonly width: number,
    private readonly size: number,
  ) {
    this.line = Sheet.line(size, LEADING)
    this.codes = new Map(keyMarks(job.ground).map((mark) => [mark.id, mark.code]))
  }

  private title(step: OrderStep): string {
    const { plan } = this.job
    const piece = pieceAt(plan, step.motif)
    if (!piece) return step.motif
    return stepTitle(piece.label, pieceWords(plan, piece), this.codes.get(piece.colourway) ?? '')
  }

  build(): readonly OrderBlock[] {
    const { ground, plan } = this.job
    const rows = new Map(ground.rows.map((row) => [row.row, row]))
    let row: number | null = null
    const asYouGo = stepSentence(this.job.settled.joining, 'told') !== ''
    for (const group of asYouGo ? groupSteps(plan) : this.runs()) {
      if (ground.byRows && group.row !== row) {
        row = group.row
        this.rowHeading(row, rows.get(row)?.direction ?? null)
      }
      this.steps(group)
    }
    return this.blocks
  }

  /** The steps as they follow each other, row by row where they are worked so. */
  private runs(): StepGroup[] {
    const groups: { row: number; first: OrderStep; steps: OrderStep[] }[] = []
    const { plan } = this.job
    const rows = rowsOf(plan)
    for (const [i, step] of plan.order.entries()) {
      const row = this.job.ground.byRows ? rows[i]! : 0
      const last = groups.at(-1)
      if (last?.row === row) last.steps.push(step)
      else groups.push({ row, first: step, steps: [step] })
    }
    return groups
  }

  private rowHeading(row: number, direction: 'left' | 'right' | null): void {
    this.heading(row, `Row ${row}`, direction ? ROW_DIRECTIONS[direction] : '')
  }

  /** A rule, a name and what stands at the right of it, and a line of words below. */
  private heading(row: number, name: string, right: string, below = ''): void {
    const named = Sheet.line(TYPE.table) + 2.4
    this.blocks.push({
      height: named + (below === '' ? 0 : this.line),
      keep: true,
      row,
      draw: (sheet, x, y) => {
        sheet.rule(y + 1.5, x, x + this.width, 0.15)
        sheet.text(name, x, y + 2, { size: TYPE.table, weight: 'bold' })
        sheet.text(right, x + this.width, y + 2, { size: this.size, anchor: 'end' })
        if (below !== '') sheet.text(below, x, y + named, { size: this.size, leading: LEADING })
      },
    })
  }

  private steps({ first, steps, row }: StepGroup): void {
    const told = stepSentence(this.job.settled.joining, first.words)
    this.list(
      steps.map((step) => ({
        title: this.title(step),
        label: pieceAt(this.job.plan, step.motif)?.label ?? step.motif,
        row,
      })),
      told,
    )
  }

  /** Boxes to tick for steps that are worked alike, as told once under the first. */
  private list(entries: readonly Entry[], told: string): void {
    const { size, line } = this
    const style = { size, leading: LEADING } as const
    const [first] = entries
    if (!first) return
    const words = told === '' ? [] : breakLines(told, this.width - INDENT, this.job.measure, size)
    // Where nothing is told about them, all boxes are alike.
    const same = words.length === 0 ? entries : entries.slice(1)
    if (words.length > 0) {
      this.blocks.push({
        height: (1 + words.length) * line + (same.length > 0 ? 0 : AIR),
        row: first.row,
        // “The same” is nothing without what it is the same as.
        keep: same.length > 0,
        draw: (sheet, x, y) => {
          let below = sheet.text(first.title, x, y, { ...style, weight: 'bold' })
          for (const text of words) below = sheet.text(text, x + INDENT, below, style)
        },
      })
    }
    // Two boxes stand side by side where they have room; the first of them keep the words that introduce them.
    const room = this.width / 2 - AIR
    const { byRows } = this.job.ground
    const beside = same.every(({ title }) => this.job.measure(title, size, 'regular') <= room) ? 2 : 1
    for (let i = 0; i < same.length; i += beside) {
      const pair = same.slice(i, i + beside)
      const lead = i === 0 && words.length > 0
      const last = i + beside >= same.length
      this.blocks.push({
        height: (lead ? 2 : 1) * line + (last ? AIR : 0),
        row: pair[0]!.row,
        ...(lead
          ? {}
          : { again: againWords(byRows ? first.row : null, words.length > 0 ? first.label : null) }),
        draw: (sheet, x, y) => {
          const top = lead ? sheet.text(`${THE_SAME}:`, x + INDENT, y, style) : y
          pair.forEach((entry, k) => sheet.text(entry.title, x + (k * this.width) / 2, top, style))
        },
      })
    }
  }
}

/** The pages of the order list, in the largest type that takes no more pages than the smallest would. */
export function orderPages(job: Job): Draft[] {
  if (job.plan.order.length === 0) return []
  const largest = setOrder(job, SIZES[0])
  // In a long list a page more or less is nothing, and setting it thrice takes time.
  if (largest.length > LONG_LIST) return largest
  const attempts = [largest, ...SIZES.slice(1).map((size) => setOrder(job, size))]
  const fewest = Math.min(...attempts.map((pages) => pages.length))
  return attempts.find((pages) => pages.length === fewest)!
}

function setOrder(job: Job, size: number): Draft[] {
  const width = (newSheet(job).inner - COLUMN_GAP) / 2
  const lead = Sheet.line(size, LEADING)
  const blocks = new OrderSetter(job, width, size).build()
  const introduced = newSheet(job)
  const told = stepSentence(job.settled.joining, 'told') !== ''
  const introduction = orderIntroduction(job.plan, told)
  const title = introduced.title(HEADINGS.order)
  const top =
    introduced.paragraph(introduction, introduced.left, title, introduced.inner, { size: TYPE.table }) + 3
  const room = (page: number): number => introduced.bottom - (page === 0 ? top : introduced.top)
  return intoPages(blocks, room, lead).map((columns, page) => {
    const sheet = page === 0 ? introduced : newSheet(job)
    columns.forEach((column, i) => {
      const x = sheet.left + i * (width + COLUMN_GAP)
      let y = sheet.bottom - room(page)
      const again = column[0]?.again
      if (again) y = sheet.text(again, x, y, { size, leading: LEADING })
      for (const block of column) {
        block.draw(sheet, x, y)
        y += block.height
      }
    })
    const rows = columns.flat().map(({ row }) => row)
    const name = job.ground.byRows && rows.length > 0 ? orderName(rows) : PAGE_NAMES.order
    const bookmarks = page === 0 ? [HEADINGS.order] : []
    return { section: 'order', name, bookmarks, sheet } satisfies Draft
  })
}

/** The rows that are on a page. */
function orderName(rows: readonly number[]): string {
  const [from, to] = [Math.min(...rows), Math.max(...rows)]
  return `${PAGE_NAMES.order}, ${from === to ? `row ${from}` : `rows ${from}–${to}`}`
}
