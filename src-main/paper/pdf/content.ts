/** Turns draw lists into the operators of a page or a form (ISO 32000-1, annex A). */
import { PDFHexString } from 'pdf-lib'
import type {
  Colour,
  FigureItem,
  FigureSymbol,
  ImageItem,
  Matrix,
  Paint,
  Path,
  TextItem,
} from '../../../src-core/figures/figure'
import { LINE_WIDTH, MM_PER_POINT, SHARE_BEFORE } from '../../../src-core/figures/figure'
import type { PrintedRun } from './face'
import type { Faces } from './faces'
import type { Structure } from './structure'

/** A hundredth of a millimetre is finer than any printer (2,400 dots per inch). */
const number = (value: number): string => String(Math.round(value * 100) / 100 || 0)
/** Shares of a colour channel, to more than its 256 steps. */
const shade = (value: number): string => String(Math.round(value * 1000) / 1000)
const fine = (value: number): string => String(Math.round(value * 1e6) / 1e6 || 0)

interface State {
  fill: Colour
  stroke: Colour
  width: number
  dash: string
  cap: string
}

const START: State = { fill: '#000000', stroke: '#000000', width: -1, dash: '', cap: 'butt' }

/** Grey stays grey, so that a printer uses black ink alone. */
function colour(value: Colour, gray: string, rgb: string): string {
  const channels = [1, 3, 5].map((at) => parseInt(value.slice(at, at + 2), 16) / 255)
  const [r, g, b] = channels
  return r === g && g === b ? `${shade(r!)} ${gray}` : `${channels.map(shade).join(' ')} ${rgb}`
}

interface ContentOptions {
  readonly faces: Faces
  /** Name of a symbol among the resources; null draws every use anew, which only a measurement wants. */
  readonly nameOf: ((symbol: FigureSymbol) => string) | null
  /** Name of a picture among the resources. */
  readonly imageName: (item: ImageItem) => string
}

const TEXT_SCALE = fine(MM_PER_POINT)

/** Collects operators, saying a colour or a line width only when it changes. */
export class Content {
  private readonly parts: string[] = []
  private state: State = { ...START }
  private readonly saved: State[] = []
  private inText = false
  private typeIn = ''

  constructor(private readonly options: ContentOptions) {}

  get operators(): string {
    this.endText()
    return this.parts.join('\n')
  }

  /** Writes an operator as it is. */
  raw(operator: string): void {
    this.endText()
    this.parts.push(operator)
  }

  /** The items of a page, those of a part that follow each other as one piece of marked content. */
  told(items: readonly FigureItem[], structure: Structure): void {
    for (let from = 0, to = 0; from < items.length; from = to) {
      const part = items[from]!.part ?? null
      while (to < items.length && (items[to]!.part ?? null) === part) to++
      const run = items.slice(from, to)
      if (run.every((item) => item.kind === 'text' && item.text === '')) {
        if (part && part.role !== 'Artifact') structure.element(part)
        continue
      }
      if (part === null && hasText(run)) structure.leaveUntold()
      this.raw(structure.begin(part))
      this.items(run.map((item, i) => (goesOn(item, run[i + 1]) ? { ...item, text: `${item.text} ` } : item)))
      this.raw('EMC')
    }
  }

  items(items: readonly FigureItem[]): void {
    for (let i = 0; i < items.length; i++) {
      const item = items[i]!
      if (item.kind === 'text') this.text(item)
      else if (item.kind === 'path') this.path(item.path, item.paint)
      else if (item.kind === 'use') {
        if (this.options.nameOf && isMove(item.matrix)) i = this.useRun(items, i, this.options.nameOf)
        else this.use(item.symbol, item.matrix)
      } else if (item.kind === 'image') this.image(item)
      else {
        this.save()
        if (item.matrix) this.transform(item.matrix)
        if (item.clip) this.raw(`${outline(item.clip)} W n`)
        this.items(item.items)
        this.restore()
      }
    }
  }

  /**
   * Symbols that are only moved, each placed from the one before: on a lattice the same few moves come again and
   * again and cost next to nothing once compressed. Moves are differences of rounded places, so that nothing adds
   * up. Returns the index of the last one.
   */
  private useRun(
    items: readonly FigureItem[],
    from: number,
    nameOf: (symbol: FigureSymbol) => string,
  ): number {
    this.save()
    let last = from
    let x = 0
    let y = 0
    for (let i = from; i < items.length; i++) {
      const item = items[i]!
      if (item.kind !== 'use' || !isMove(item.matrix)) break
      const nextX = Math.round(item.matrix[4] * 100)
      const nextY = Math.round(item.matrix[5] * 100)
      this.raw(`1 0 0 1 ${(nextX - x) / 100} ${(nextY - y) / 100} cm /${nameOf(item.symbol)} Do`)
      x = nextX
      y = nextY
      last = i
    }
    this.restore()
    return last
  }

  private use(symbol: FigureSymbol, matrix: Matrix): void {
    this.save()
    this.transform(matrix)
    if (this.options.nameOf) this.raw(`/${this.options.nameOf(symbol)} Do`)
    else this.items(symbol.items)
    this.restore()
  }

  /** A picture fills a square of 1 × 1 that stands on its foot (ISO 32000-1, 8.9.5). */
  private image(item: ImageItem): void {
    this.save()
    this.transform([item.width, 0, 0, -item.height, item.x, item.y + item.height])
    this.raw(`/${this.options.imageName(item)} Do`)
    this.restore()
  }

  private transform(matrix: Matrix): void {
    this.raw(`${matrix.map((value, i) => (i < 4 ? fine(value) : number(value))).join(' ')} cm`)
  }

  private save(): void {
    this.raw('q')
    this.saved.push({ ...this.state })
  }

  private restore(): void {
    this.raw('Q')
    this.state = this.saved.pop() ?? { ...START }
  }

  private fillWith(value: Colour): void {
    if (this.state.fill === value) return
    this.state.fill = value
    this.parts.push(colour(value, 'g', 'rg'))
  }

  private strokeWith(paint: Paint, stroke: Colour): void {
    const { state } = this
    const width = paint.width ?? LINE_WIDTH
    const dash = (paint.dash ?? []).map(number).join(' ')
    const cap = paint.cap ?? 'butt'
    if (state.stroke !== stroke) this.parts.push(colour(stroke, 'G', 'RG'))
    if (state.width !== width) this.parts.push(`${number(width)} w`)
    if (state.dash !== dash) this.parts.push(`[${dash}] 0 d`)
    if (state.cap !== cap) this.parts.push(cap === 'round' ? '1 J' : '0 J')
    this.state = { ...state, stroke, width, dash, cap }
  }

  private path(path: Path, paint: Paint): void {
    if (path.length === 0 || (!paint.fill && !paint.stroke)) return
    this.endText()
    if (paint.fill) this.fillWith(paint.fill)
    if (paint.stroke) this.strokeWith(paint, paint.stroke)
    this.parts.push(`${outline(path)} ${paint.fill ? (paint.stroke ? 'B' : 'f') : 'S'}`)
  }

  private text(item: TextItem): void {
    const face = this.options.faces[item.weight]
    if (item.text === '') return
    if (!this.inText) {
      this.parts.push('BT')
      this.inText = true
      this.typeIn = ''
    }
    this.fillWith(item.colour)
    const share = SHARE_BEFORE[item.anchor]
    const back = share === 0 ? 0 : (face.measure(item.text) * item.size * MM_PER_POINT * share) / 1000
    for (const { text, runs } of face.print(item.text)) {
      // What a reader is told where glyphs stand in another order (ISO 32000-1, 14.9.4).
      if (text !== null)
        this.parts.push(`/Span <</ActualText ${PDFHexString.fromText(text).toString()}>> BDC`)
      for (const run of runs) this.run(run, item, item.x - back)
      if (text !== null) this.parts.push('EMC')
    }
  }

  private run({ resource, x, shown }: PrintedRun, { size, y }: TextItem, begin: number): void {
    const type = `/${resource} ${number(size)} Tf`
    if (type !== this.typeIn) this.parts.push(type)
    this.typeIn = type
    const left = begin + (x * size * MM_PER_POINT) / 1000
    const place = `${TEXT_SCALE} 0 0 -${TEXT_SCALE} ${number(left)} ${number(y)} Tm`
    let height = 0
    const glyphs = shown.map(({ rise, code }) => {
      const lift = rise === height ? '' : `${fine((rise * size) / 1000)} Ts `
      height = rise
      return `${lift}[${code}] TJ`
    })
    this.parts.push(`${place} ${glyphs.join(' ')}${height === 0 ? '' : ' 0 Ts'}`)
  }

  private endText(): void {
    if (this.inText) this.parts.push('ET')
    this.inText = false
  }
}

/** Whether the words of a line go on in the next one: the space between them is told, though it is not seen. */
const goesOn = (item: FigureItem, next: FigureItem | undefined): item is TextItem =>
  item.kind === 'text' && item.anchor === 'start' && next?.kind === 'text'

const hasText = (items: readonly FigureItem[]): boolean =>
  items.some((item) =>
    item.kind === 'text' ? item.text !== '' : item.kind === 'group' && hasText(item.items),
  )

const isMove = (matrix: Matrix): boolean =>
  matrix[0] === 1 && matrix[1] === 0 && matrix[2] === 0 && matrix[3] === 1

function outline(path: Path): string {
  let code = ''
  for (const segment of path) {
    if (code !== '') code += ' '
    switch (segment[0]) {
      case 'M':
        code += `${number(segment[1])} ${number(segment[2])} m`
        break
      case 'L':
        code += `${number(segment[1])} ${number(segment[2])} l`
        break
      case 'C':
        code += `${number(segment[1])} ${number(segment[2])} ${number(segment[3])} ${number(segment[4])} ${number(segment[5])} ${number(segment[6])} c`
        break
      case 'Z':
        code += 'h'
    }
  }
  return code
}
