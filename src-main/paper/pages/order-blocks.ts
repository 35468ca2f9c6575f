/**
 * The order of work: each way of joining told once with a small drawing, what the rows are made of, then a box to
 * tick for each motif. What is rare is told where it comes.
 */
import type { OrderStep } from '../../../shared-types/plan'
import { breakLines } from '../../../src-core/figures/lines'
import { closingsTold } from '../../../src-core/figures/closing-words'
import { keyMarks } from '../../../src-core/figures/map-ground'
import { neighbourhoodFigure } from '../../../src-core/figures/neighbourhood'
import { additionsFrom, byRows, orderList, withoutWays } from '../../../src-core/figures/order-list'
import type { JoinWay, OrderPart, OrderRun } from '../../../src-core/figures/order-list'
import type { Part } from '../../../src-core/figures/part'
import { partOf } from '../../../src-core/figures/part'
import { isSewnBySides } from '../../../src-core/figures/seam-words'
import { pieceWords } from '../../../src-core/figures/piece-words'
import { pieceAt } from '../../../src-core/layout/placed'
import type { Block } from '../columns'
import type { Job } from '../page'
import { Sheet, TYPE } from '../setting'
import { stepSentence } from '../words-joining'
import {
  additionTitle,
  additionWords,
  againWords,
  boxWords,
  isTold,
  kindsWords,
  neighboursWords,
  ORDER_HEADINGS,
  partName,
  ROW_DIRECTIONS,
  stepTitle,
  wayName,
  wayTitle,
} from '../words-order'
import type { Done } from '../words-order'
import { FIGURE_WORDS } from '../words-figures'

export const LEADING = 1.3
/** Where the words of a step begin, under its number. */
const INDENT = 4
const AIR = 1.3
/** Room for the drawing of a way, and beside it. */
const DRAWING = { width: 34, height: 31 } as const
const DRAWING_GAP = 3
/** Between boxes that stand side by side. */
const BOX_GAP = 2.4

/** A part of the list, with the row that it is about; null where it is about none. */
export interface OrderBlock extends Block {
  readonly row: number | null
}

/** A place in the grid of boxes: a box, or the name of the way in which those after it are joined. */
interface Cell {
  readonly text: string
  readonly bold: boolean
  readonly way: JoinWay | null
  /** The name of a way and its boxes are one item of a list. */
  readonly part: Part
}

/** Sets the list in columns so wide, in type of one size. */
export class OrderSetter {
  readonly blocks: OrderBlock[] = []
  private readonly codes: ReadonlyMap<string, string>
  private readonly names: ReadonlyMap<string, string>
  private readonly line: number
  private readonly list
  private readonly told: boolean
  /** A box is ticked when its motif is joined, not when it is made. */
  private readonly joins: boolean
  private readonly marks: Readonly<Record<'made' | 'joined', ReadonlySet<string>>>
  /** How many boxes stand side by side. */
  private readonly across: number

  constructor(
    private readonly job: Job,
    private readonly width: number,
    private readonly size: number,
    /** Joined by the dots of the map, where words for each would fill a book. */
    private readonly byDots: boolean,
  ) {
    this.line = Sheet.line(size, LEADING)
    const marks = keyMarks(job.ground)
    this.codes = new Map(marks.map(({ id, code }) => [id, code]))
    this.names = new Map(marks.map(({ id, code, name }) => [id, [code, name].filter(Boolean).join(' · ')]))
    this.told = isTold(job) && !byDots
    const list = orderList(job.plan)
    this.list = byDots ? byRows(list, job.plan) : this.told ? list : withoutWays(list)
    this.joins = isTold(job) || isSewnBySides(job.plan)
    const { made, joined } = job.plan.marks
    this.marks = { made: new Set(made), joined: new Set(joined) }
    const motifs = job.plan.order.filter(({ kind }) => kind === 'motif')
    const longest = this.list.ways.at(-1)
    const names = longest ? [wayName(longest)] : []
    this.across = this.besides([...names, ...motifs.map(({ motif }) => this.box(motif))])
  }

  /** How many of these boxes have room beside each other. */
  private besides(texts: readonly string[]): number {
    // Figures are all as wide as each other, and most boxes differ in nothing else.
    const unlike = new Set(texts.map((text) => text.replace(/\d/g, '0')))
    const widest = Math.max(...[...unlike].map((text) => this.job.measure(text, this.size, 'bold')))
    return Math.max(1, Math.floor((this.width + BOX_GAP) / (widest + BOX_GAP)))
  }

  build(): readonly OrderBlock[] {
    const { ways } = this.list
    if (ways.length > 0) {
      this.heading(ORDER_HEADINGS.ways, null)
      const list = partOf('L', null, { counted: true })
      ways.forEach((way, i) => this.card(way, list, i > 0))
      if (this.list.kinds.length > 0) this.kinds()
    }
    const directions = new Map(this.job.ground.rows.map(({ row, direction }) => [row, direction]))
    const parted = this.list.parts.some(({ of }) => of !== 'all')
    if (!parted && ways.length > 0) this.heading(ORDER_HEADINGS.list, null)
    for (const part of this.list.parts) {
      const row = part.of === 'row' ? part.number : null
      const name = partName(part, this.names.get(part.colourway) ?? '')
      const direction = row === null ? null : (directions.get(row) ?? null)
      if (name !== '') this.heading(name, row, direction ? ROW_DIRECTIONS[direction] : '')
      this.part(part, name, row)
    }
    this.closing()
    return this.blocks
  }

  /** What is done at last: the ends of a round are closed. */
  private closing(): void {
    for (const [name, told] of closingsTold(this.job.plan, this.job.terms)) {
      this.heading(`☐ ${name}`, null)
      this.paragraph(told, 0, partOf('P'))
    }
  }

  private code(id: string): string {
    return this.codes.get(pieceAt(this.job.plan, id)?.colourway ?? '') ?? ''
  }

  /** A box with what stands beside it; of several motifs that nothing is told about, which one it is. */
  private box(id: string): string {
    const { plan } = this.job
    const piece = pieceAt(plan, id)
    if (!piece) return id
    if (!this.told && plan.accounts.length > 0) return this.title(id)
    if (piece.kind !== 'motif') return additionTitle(plan, piece, this.code(id), this.done(id))
    return boxWords(piece.label, this.code(id), this.done(id))
  }

  /** What is ticked off for being joined may be made already. */
  private done(id: string): Done {
    const { made, joined } = this.marks
    if ((this.joins ? joined : made).has(id)) return 'ticked'
    return this.joins && made.has(id) ? 'made' : ''
  }

  private title(id: string): string {
    const { plan } = this.job
    const piece = pieceAt(plan, id)
    return piece ? stepTitle(piece.label, pieceWords(plan, piece), this.code(id), this.done(id)) : id
  }

  /** A rule, a name, and what stands at the right of it. */
  private heading(name: string, row: number | null, right = ''): void {
    const as = partOf('H2')
    this.blocks.push({
      height: Sheet.line(TYPE.table) + 2.4,
      keep: true,
      row,
      draw: (sheet, x, y) => {
        sheet.rule(y + 1.5, x, x + this.width, 0.15)
        sheet.text(name, x, y + 2, { size: TYPE.table, weight: 'bold', as })
        if (right !== '') sheet.text(right, x + this.width, y + 2, { size: this.size, anchor: 'end', as })
      },
    })
  }

  /** A way of joining: its drawing, and at the right of it its name, its neighbours and its words. */
  private card(way: JoinWay, list: Part, isLater: boolean): void {
    const { job, size, line } = this
    const figure = neighbourhoodFigure(job.plan, way, job.settled.hand, DRAWING)
    const inset = DRAWING.width + DRAWING_GAP
    const style = { size, leading: LEADING } as const
    const wrap = (text: string): string[] => breakLines(text, this.width - inset, job.measure, size)
    const neighbours = wrap(neighboursWords(way))
    const words = wrap(stepSentence(job.settled.joining, way.words))
    const lines = 1 + neighbours.length + words.length
    this.blocks.push({
      height: Math.max(figure.height + 1, lines * line) + 2 * AIR,
      row: null,
      again: isLater ? againWords(ORDER_HEADINGS.ways, null) : '',
      draw: (sheet, x, y) => {
        const at = x + inset
        sheet.labelled(
          list,
          () => sheet.text(wayTitle(job.plan, way), at, y, { ...style, weight: 'bold' }),
          () => {
            let below = y + line
            for (const lines of [neighbours, words]) {
              const as = sheet.own('P')
              for (const text of lines) below = sheet.text(text, at, below, { ...style, as })
            }
            return sheet.figure(figure, x, y + 0.8, FIGURE_WORDS.way(way))
          },
        )
      },
    })
  }

  private kinds(): void {
    this.heading(ORDER_HEADINGS.kinds, null)
    const list = partOf('L')
    const kinds = kindsWords(this.list)
    kinds.forEach((text, i) => {
      const as = partOf('LBody', partOf('LI', list))
      this.paragraph(text, INDENT, as, i === 0 ? '' : ORDER_HEADINGS.kinds)
      // The last of them does not begin a column alone.
      const block = this.blocks.at(-1)!
      if (i === kinds.length - 2) this.blocks[this.blocks.length - 1] = { ...block, keep: true }
    })
  }

  /** Words under a heading, their later lines by `indent` to the right. */
  private paragraph(text: string, indent: number, as: Part, heading = ''): void {
    const words = breakLines(text, this.width - indent, this.job.measure, this.size)
    this.blocks.push({
      height: words.length * this.line + AIR,
      row: null,
      again: heading === '' ? '' : againWords(heading, null),
      draw: (sheet, x, y) =>
        words.forEach((line, i) =>
          sheet.text(line, x + (i === 0 ? 0 : indent), y + i * this.line, {
            ...{ size: this.size, leading: LEADING, as },
          }),
        ),
    })
  }

  /** The steps of a row or another part: boxes, and what is told where it comes. */
  private part({ runs }: OrderPart, name: string, row: number | null): void {
    let cells: Cell[] = []
    const list = partOf('L')
    const first = this.blocks.length
    const again = (way: JoinWay | null = null): string =>
      this.blocks.length === first ? '' : againWords(name, way)
    const flush = (across = this.across): void => {
      this.grid(cells, again, row, across)
      cells = []
    }
    for (let i = 0; i < runs.length; i++) {
      const run = runs[i]!
      const [step] = run.steps as [OrderStep]
      if (this.told && run.way === null) {
        flush()
        this.step(step, row, again())
      } else if (step.kind === 'motif') {
        const item = partOf('LI', list)
        if (this.byDots && row === null) {
          const text = partName({ of: 'row', number: pieceAt(this.job.plan, step.motif)?.row ?? 0 }, '')
          cells.push({ text, bold: true, way: null, part: partOf('Lbl', item) })
        } else if (run.way)
          cells.push({ text: wayName(run.way), bold: true, way: run.way, part: partOf('Lbl', item) })
        cells.push(...this.boxes(run, partOf('LBody', item)))
      } else {
        flush()
        const group = additionsFrom(runs, i, this.told)
        i += group.length - 1
        const ways = new Set(group.map(({ way }) => way))
        this.lead(additionWords(group), row, again())
        cells = group.flatMap((each) =>
          this.boxes(each, partOf('LBody', partOf('LI', list)), ways.size > 1 ? each.way : null),
        )
        flush(this.besides(cells.map(({ text }) => text)))
      }
    }
    flush()
  }

  /** The boxes of a run; of several ways that are mixed, each names its own. */
  private boxes({ steps, way }: OrderRun, part: Part, named: JoinWay | null = null): Cell[] {
    const after = named ? ` · ${wayName(named).toLowerCase()}` : ''
    return steps.map(({ motif }) => ({
      ...{ text: this.box(motif) + after, bold: false, way: named ? null : way, part },
    }))
  }

  /** A line above boxes. */
  private lead(text: string, row: number | null, again: string): void {
    const { size, line } = this
    const lines = breakLines(text, this.width, this.job.measure, size, 'bold')
    const as = partOf('P')
    this.blocks.push({
      height: lines.length * line,
      row,
      keep: true,
      again,
      draw: (sheet, x, y) =>
        lines.forEach((each, i) =>
          sheet.text(each, x, y + i * line, { size, leading: LEADING, weight: 'bold', as }),
        ),
    })
  }

  /** A step that is told by itself. */
  private step(step: OrderStep, row: number | null, again: string): void {
    const { size, line } = this
    const style = { size, leading: LEADING } as const
    const told = stepSentence(this.job.settled.joining, step.words)
    const words = breakLines(told, this.width - INDENT, this.job.measure, size)
    const titles = breakLines(this.title(step.motif), this.width, this.job.measure, size, 'bold')
    this.blocks.push({
      height: (titles.length + words.length) * line + AIR,
      row,
      again,
      draw: (sheet, x, y) => {
        let below = y
        const [as, told] = [sheet.own('P'), sheet.own('P')]
        for (const text of titles) below = sheet.text(text, x, below, { ...style, weight: 'bold', as })
        for (const text of words) below = sheet.text(text, x + INDENT, below, { ...style, as: told })
      },
    })
  }

  /** Boxes side by side, line by line; no name of a way ends a line, no line stands alone in a column. */
  private grid(
    cells: readonly Cell[],
    again: (way: JoinWay | null) => string,
    row: number | null,
    across: number,
  ): void {
    const { size, line } = this
    const lines: Cell[][] = []
    for (const cell of cells) {
      const open = lines.at(-1)
      const room = across - (open?.length ?? across)
      if (!open || room === 0 || (cell.bold && room === 1 && across > 1)) lines.push([cell])
      else open.push(cell)
    }
    const step = (this.width + BOX_GAP) / across
    lines.forEach((boxes, i) => {
      const last = i === lines.length - 1
      const begun = boxes[0]!.bold ? null : boxes[0]!.way
      this.blocks.push({
        height: line + (last ? AIR : 0),
        row,
        keep: !last && (i === 0 || i === lines.length - 2),
        again: again(begun),
        draw: (sheet, x, y) =>
          boxes.forEach(({ text, bold, part }, k) => {
            const weight = bold ? 'bold' : 'regular'
            sheet.text(text, x + k * step, y, { size, leading: LEADING, weight, as: part })
          }),
      })
    })
  }
}
