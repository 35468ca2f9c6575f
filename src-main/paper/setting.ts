/** Setting type on a sheet: sizes, margins, lines and paragraphs. Lengths in mm, type in points, y down. */
import type { Figure, FigureItem, MeasureText, TextAnchor, TextWeight } from '../../src-core/figures/figure'
import { drawPath, drawText, INK, MM_PER_POINT, placeFigure } from '../../src-core/figures/figure'
import { breakLines, plain, withoutOrphan } from '../../src-core/figures/lines'
import type { Furniture, Part, Role } from '../../src-core/figures/part'
import { partOf, roleWithin } from '../../src-core/figures/part'
import { linePath } from '../../src-core/figures/path'
import type { Paper } from '../../shared-types/project'

/** Nothing is printed nearer to the edge: home printers leave up to 6.4 mm blank (trade practice, ¼ in). */
export const MARGIN = 12

/** Sizes in points; nothing under 7. */
export const TYPE = {
  title: 21,
  lead: 12.5,
  heading: 12.5,
  body: 10.5,
  table: 9.5,
  list: 8.5,
  foot: 9,
} as const

/** ISO 216 A4; ANSI A (US Letter, 8½ × 11 in). */
const PAPER_SIZES: Readonly<Record<Paper, readonly [number, number]>> = {
  A4: [210, 297],
  Letter: [215.9, 279.4],
}

/** Width and height of a sheet. */
export function paperSize(paper: Paper, landscape: boolean): { width: number; height: number } {
  const [short, long] = PAPER_SIZES[paper]
  return landscape ? { width: long, height: short } : { width: short, height: long }
}

/** Height of the footer with the rule above it. */
export const FOOTER = 9

interface TextStyle {
  readonly size?: number
  readonly weight?: TextWeight
  readonly anchor?: TextAnchor
  readonly colour?: string
  /** Line height as a multiple of the size. */
  readonly leading?: number
  /** What it is, where it is something else than words of its surroundings; or the part that it goes on with. */
  readonly as?: Role | Part | Furniture
}

/** The text, shortened with an ellipsis where it is wider than the room. */
export function shorten(
  text: string,
  width: number,
  measure: MeasureText,
  size: number,
  weight: TextWeight,
): string {
  if (measure(text, size, weight) <= width) return text
  const characters = [...text]
  let low = 0
  let high = characters.length
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    const candidate = `${characters.slice(0, middle).join('').trimEnd()}…`
    if (measure(candidate, size, weight) <= width) low = middle
    else high = middle - 1
  }
  return `${characters.slice(0, low).join('').trimEnd()}…`
}

/** A sheet that is being set. `y` of a line is its top; its baseline lies 0.78 of a line below. */
export class Sheet {
  readonly items: FigureItem[] = []
  readonly left = MARGIN
  readonly top = MARGIN
  /** What is set now belongs to this. */
  private part: Part | null = null

  constructor(
    readonly width: number,
    readonly height: number,
    readonly measure: MeasureText,
    /** Of the titles of pages. */
    readonly accent: string = INK,
  ) {}

  get right(): number {
    return this.width - MARGIN
  }

  /** Where the text area ends, above the footer. */
  get bottom(): number {
    return this.height - MARGIN - FOOTER
  }

  get inner(): number {
    return this.right - this.left
  }

  /** Height of a line of type. */
  static line(size: number, leading = 1.36): number {
    return size * leading * MM_PER_POINT
  }

  /** Sets what belongs to a part, or to a new one of this role. */
  within<T>(part: Part | Role, set: (part: Part) => T): T {
    const outer = this.part
    const inner = typeof part === 'string' ? partOf(part, outer) : part
    this.part = inner
    try {
      return set(inner)
    } finally {
      this.part = outer
    }
  }

  /** A part of its own within the one in hand. */
  own(role: Role, more: Omit<Part, 'role' | 'parent'> = {}): Part {
    return partOf(role, this.part, more)
  }

  private partFor(as: TextStyle['as']): Part | Furniture {
    if (typeof as === 'object') return as
    const role = as ?? roleWithin(this.part)
    return role ? this.own(role) : this.part!
  }

  /** One line; returns the y below it. Where nothing is written, a part that is asked for is there all the same. */
  text(text: string, x: number, y: number, style: TextStyle = {}): number {
    const { size = TYPE.body, weight, anchor, colour, leading, as } = style
    const line = Sheet.line(size, leading)
    if (text !== '' || as) {
      const item = drawText(plain(text), x, y + baseline(size, line), size, { weight, anchor, colour })
      this.items.push({ ...item, part: this.partFor(as) })
    }
    return y + line
  }

  /** A paragraph within a width; returns the y below it. */
  paragraph(text: string, x: number, y: number, width: number, style: TextStyle = {}): number {
    const { size = TYPE.body, weight = 'regular' } = style
    const told = { ...style, as: this.partFor(style.as) }
    for (const line of withoutOrphan(breakLines(text, width, this.measure, size, weight)))
      y = this.text(line, x, y, told)
    return y
  }

  /** A list of labels with their words: the label, and behind it what `set` sets. */
  labelled(list: Part, label: () => void, set: () => number): number {
    return this.within(partOf('LI', list), () => {
      this.within('Lbl', label)
      return this.within('LBody', set)
    })
  }

  /** A heading with its room below. */
  heading(text: string, x: number, y: number): number {
    return this.text(text, x, y, { size: TYPE.heading, weight: 'bold', as: 'H2' }) + 1.6
  }

  /** The title of a page. */
  title(text: string, width = this.inner): number {
    const fitting = shorten(text, width, this.measure, TYPE.title, 'bold')
    const style = { size: TYPE.title, weight: 'bold', leading: 1.2, colour: this.accent, as: 'H1' } as const
    return this.text(fitting, this.left, this.top, style) + 2
  }

  /** The title of what stands below something else on its page. */
  lowerTitle(text: string, y: number): number {
    const style = { size: TYPE.heading + 3, weight: 'bold', colour: this.accent, as: 'H1' } as const
    const fitting = shorten(text, this.inner, this.measure, style.size, style.weight)
    return this.text(fitting, this.left, y, style)
  }

  /** The title of what begins at a height: of the page at its top, else of what stands below something. */
  titleAt(text: string, y: number): number {
    return y > this.top ? this.lowerTitle(text, y) + 2 : this.title(text)
  }

  rule(y: number, x1 = this.left, x2 = this.right, width = 0.25): void {
    // Printers and viewers may widen a line by half its width at its ends too: none of it is to lie in the margin.
    const pen = width / 2
    this.items.push(drawPath(linePath(x1 + pen, y, x2 - pen, y), { stroke: INK, width }))
  }

  /**
   * Puts a figure with its top left at (x, y), `scale` times as large; returns the y below it. `alt` is read aloud in
   * its place: what it shows, as far as the words around it do not say so.
   */
  figure(figure: Figure, x: number, y: number, alt: string, scale = 1): number {
    const [width, height] = [figure.width * scale, figure.height * scale]
    const part = this.own('Figure', { alt, box: { x, y, width, height } })
    const { items } = figure
    this.items.push(
      scale === 1
        ? { ...placeFigure(figure, x, y), part }
        : { kind: 'group', matrix: [scale, 0, 0, scale, x, y], items, part },
    )
    return y + height
  }

  /** Height that a paragraph will take. */
  heightOf(text: string, width: number, style: TextStyle = {}): number {
    const { size = TYPE.body, weight = 'regular', leading } = style
    return breakLines(text, width, this.measure, size, weight).length * Sheet.line(size, leading)
  }
}

/** Centres capitals a little above the middle of the line, where the eye wants them. */
const baseline = (size: number, line: number): number => line / 2 + size * 0.33 * MM_PER_POINT
