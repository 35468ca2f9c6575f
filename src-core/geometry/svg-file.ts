/**
 * Whole SVG files, safely: the lines in them as path data, and the size of their unit. Nothing is loaded, run or
 * expanded: a file that brings scripts or a document type with declarations is refused, and so is one that is too
 * long, too deep or too full; what is no line (text, pictures, styles) is left out. saxes reads the grammar.
 */
import { SaxesParser } from 'saxes'
import type { SaxesTagPlain } from 'saxes'
import svgpath from 'svgpath'
import { MM_PER_INCH } from '../units/quantity'
import type { Millimetres } from '../units/quantity'
import { boxOf, signedArea } from './points'
import { MOST_COORDINATE, readPath } from './svg-path'
import type { PathTrouble } from './svg-path'

/** Longest file that is parsed; drawings of panels are a few thousand characters. */
export const MOST_FILE_CHARACTERS = 2_000_000
/** Most elements, most of them within each other, and most lines that a person can choose from (ours). */
export const MOST_ELEMENTS = 20_000
export const MOST_DEPTH = 100
export const MOST_LINES = 200

export type FileTrouble =
  | { readonly kind: 'file-too-long'; readonly characters: number }
  | { readonly kind: 'script'; readonly what: string }
  | { readonly kind: 'entities' }
  | { readonly kind: 'too-full' }
  | { readonly kind: 'no-xml'; readonly line: number; readonly column: number }
  | { readonly kind: 'no-svg' }
  | { readonly kind: 'no-lines' }
  | { readonly kind: 'in-element'; readonly element: string; readonly trouble: PathTrouble }

export interface SvgLine {
  /** The element's id, or what it is. */
  readonly name: string
  /** Path data of one piece in units of the file, with what moved, turned and scaled it. */
  readonly path: string
  readonly closed: boolean
  /** Its box in units of the file. */
  readonly width: number
  readonly height: number
  /** Units². */
  readonly area: number
}

export interface SvgDrawing {
  /** mm of one unit where the file gives its size in mm, cm, inches or points; null where it does not. */
  readonly unit: Millimetres | null
  /** The largest first. */
  readonly lines: readonly SvgLine[]
}

/** mm of a pixel, as the web defines the inch (CSS Values 3, 5.2): what a size without a unit most often means. */
export const PIXEL: Millimetres = MM_PER_INCH / 96

/** mm of the absolute units of CSS Values 3, 5.2. Pixels are left out: they say nothing about a size in hand. */
const UNITS: Readonly<Record<string, Millimetres>> = {
  mm: 1,
  cm: 10,
  q: 0.25,
  in: MM_PER_INCH,
  pt: MM_PER_INCH / 72,
  pc: MM_PER_INCH / 6,
}

/** Elements whose content is shown somewhere else, or nowhere. */
const UNSHOWN = new Set([
  'defs',
  'symbol',
  'clippath',
  'mask',
  'marker',
  'pattern',
  'metadata',
  'foreignobject',
])

class Refused extends Error {
  constructor(readonly trouble: FileTrouble) {
    super(trouble.kind)
  }
}

/** The lines of an SVG file, or why it is not taken. */
export function readSvgFile(text: string): { drawing: SvgDrawing } | { trouble: FileTrouble } {
  if (text.length > MOST_FILE_CHARACTERS)
    return { trouble: { kind: 'file-too-long', characters: text.length } }
  const reader = new FileReader()
  try {
    return { drawing: reader.read(text) }
  } catch (error) {
    if (error instanceof Refused) return { trouble: error.trouble }
    throw error
  }
}

interface OpenElement {
  readonly transform: string
  /** It and all in it is not shown where it stands. */
  readonly isHidden: boolean
}

class FileReader {
  private readonly lines: SvgLine[] = []
  /** The elements that are open, outermost first. */
  private readonly path: OpenElement[] = []
  private elements = 0
  private unit: Millimetres | null = null

  read(text: string): SvgDrawing {
    const parser = new SaxesParser()
    parser.on('error', () => {
      throw new Refused({ kind: 'no-xml', line: parser.line, column: parser.column + 1 })
    })
    parser.on('doctype', (declared) => {
      if (/\[|<!/.test(declared)) throw new Refused({ kind: 'entities' })
    })
    parser.on('opentag', (tag) => this.open(tag))
    parser.on('closetag', () => void this.path.pop())
    parser.write(text).close()
    if (this.lines.length === 0) throw new Refused({ kind: 'no-lines' })
    this.lines.sort((a, b) => b.area - a.area)
    return { unit: this.unit, lines: this.lines }
  }

  private open(tag: SaxesTagPlain): void {
    const name = localName(tag.name)
    const { attributes } = tag
    this.elements++
    if (this.elements > MOST_ELEMENTS || this.path.length >= MOST_DEPTH)
      throw new Refused({ kind: 'too-full' })
    refuseScripts(name, tag)
    const outer = this.path.at(-1)
    if (!outer) {
      if (name !== 'svg') throw new Refused({ kind: 'no-svg' })
      this.unit = unitOf(attributes)
      this.path.push({ transform: '', isHidden: false })
      return
    }
    const isHidden = outer.isHidden || isUnshown(name, attributes)
    this.path.push({ transform: attributes.transform ?? '', isHidden })
    if (!isHidden) this.take(name, attributes)
  }

  private take(name: string, attributes: Readonly<Record<string, string>>): void {
    const path = pathOf(name, attributes)
    if (path === null) return
    const element = attributes.id ? `${name} '${attributes.id.slice(0, 40)}'` : name
    const refuse = (trouble: PathTrouble): never => {
      throw new Refused({ kind: 'in-element', element, trouble })
    }
    // Whatever it is, it is looked at before anything is made of it.
    if (path.trim() === '') return
    const first = readPath(path)
    if ('trouble' in first) return refuse(first.trouble)
    const own = svgpath(path)
    for (const { transform } of [...this.path].reverse()) {
      if (!/^[\w\s(),.+-]*$/.test(transform)) return refuse({ kind: 'number' })
      if (transform.trim() !== '') own.transform(transform)
    }
    for (const piece of piecesOf(own)) {
      if (/[a-z]{2}/i.test(piece)) return refuse({ kind: 'number' })
      const read = readPath(piece)
      if ('trouble' in read) return refuse(read.trouble)
      const [line] = read.subPaths
      if (!line || line.points.length < 2) continue
      if (this.lines.length === MOST_LINES) throw new Refused({ kind: 'too-full' })
      const box = boxOf(line.points)
      this.lines.push({
        name: attributes.id ?? NAMES[name] ?? name,
        path: piece,
        closed: line.closed,
        width: box.right - box.left,
        height: box.bottom - box.top,
        area: Math.abs(signedArea(line.points)),
      })
    }
  }
}

const localName = (name: string): string => name.slice(name.indexOf(':') + 1).toLowerCase()

/** Elements in words, for lines without an id. */
const NAMES: Readonly<Record<string, string>> = {
  rect: 'rectangle',
  polygon: 'polygon',
  polyline: 'line',
  line: 'line',
}

/** A drawing within the drawing has a unit of its own, and is left out like what is not shown. */
const isUnshown = (name: string, { display = '', style = '' }: Readonly<Record<string, string>>): boolean =>
  UNSHOWN.has(name) || name === 'svg' || display === 'none' || /display\s*:\s*none/.test(style)

function refuseScripts(name: string, { attributes }: SaxesTagPlain): void {
  if (name === 'script' || name === 'handler') throw new Refused({ kind: 'script', what: `<${name}>` })
  for (const [key, value] of Object.entries(attributes)) {
    if (/^on/i.test(key)) throw new Refused({ kind: 'script', what: key.slice(0, 40) })
    if (localName(key) === 'href' && /^\s*(javascript|vbscript|data:text)/i.test(value))
      throw new Refused({ kind: 'script', what: key })
  }
}

/** mm of a unit from the size of the whole: width and viewBox, or height and viewBox. */
function unitOf({ width, height, viewBox, preserveAspectRatio = '' }: Readonly<Record<string, string>>) {
  const [across, down] = [lengthOf(width), lengthOf(height)]
  const box = (viewBox ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number)
  const [, , wide = NaN, high = NaN] = box
  if (!viewBox) {
    // Without a viewBox a unit is a pixel, whatever the size of the sheet is.
    return across === null && down === null ? null : PIXEL
  }
  if (!(wide > 0 && high > 0)) return null
  const scales = [across === null ? null : across / wide, down === null ? null : down / high].filter(
    (scale): scale is number => scale !== null && scale > 0 && Number.isFinite(scale),
  )
  const [one, other = one] = scales
  if (one === undefined || other === undefined) return null
  // Stretched to its sheet it has two units, of which a panel could take neither.
  if (preserveAspectRatio.trim().startsWith('none') && Math.abs(one / other - 1) > 0.001) return null
  return Math.min(one, other)
}

function lengthOf(text: string | undefined): Millimetres | null {
  const read = /^\s*\+?(\d*\.?\d+(?:e[+-]?\d+)?)\s*(mm|cm|q|in|pt|pc)\s*$/i.exec(text ?? '')
  const unit = UNITS[read?.[2]?.toLowerCase() ?? '']
  const value = Number(read?.[1]) * (unit ?? NaN)
  return value > 0 && value <= MOST_COORDINATE ? value : null
}

/** Path data of an element that is a line; null for any other. */
function pathOf(name: string, attributes: Readonly<Record<string, string>>): string | null {
  const number = (key: string): number => {
    const text = attributes[key]
    return text === undefined
      ? 0
      : /^\s*[+-]?[\d.]+(e[+-]?\d+)?(px)?\s*$/i.test(text)
        ? parseFloat(text)
        : NaN
  }
  switch (name) {
    case 'path':
      return attributes.d ?? ''
    case 'polygon':
    case 'polyline': {
      const points = (attributes.points ?? '').trim()
      return points === '' ? '' : `M${points}${name === 'polygon' ? 'Z' : ''}`
    }
    case 'line':
      return `M${number('x1')} ${number('y1')}L${number('x2')} ${number('y2')}`
    case 'circle':
      return ellipsePath(number('cx'), number('cy'), number('r'), number('r'))
    case 'ellipse':
      return ellipsePath(number('cx'), number('cy'), number('rx'), number('ry'))
    case 'rect':
      return rectanglePath(attributes, number)
    default:
      return null
  }
}

/** An ellipse of no size is not drawn. A number that is none comes through, and is refused with the path. */
function ellipsePath(cx: number, cy: number, rx: number, ry: number): string {
  if (rx <= 0 || ry <= 0) return ''
  const arc = `A${rx} ${ry} 0 0 1`
  return `M${cx} ${cy - ry}${arc} ${cx} ${cy + ry}${arc} ${cx} ${cy - ry}Z`
}

/** A rectangle, rounded where it says so (SVG 1.1, 9.2: one radius stands for both). */
function rectanglePath(
  attributes: Readonly<Record<string, string>>,
  number: (key: string) => number,
): string {
  const [x, y, width, height] = ['x', 'y', 'width', 'height'].map(number) as [number, number, number, number]
  if (width <= 0 || height <= 0) return ''
  const has = (key: string): boolean => attributes[key] !== undefined
  const rx = Math.min(Math.max(0, number(has('rx') ? 'rx' : 'ry')), width / 2)
  const ry = Math.min(Math.max(0, number(has('ry') ? 'ry' : 'rx')), height / 2)
  if (rx === 0 || ry === 0) return `M${x} ${y}h${width}v${height}h${-width}Z`
  const arc = (dx: number, dy: number) => `a${rx} ${ry} 0 0 1 ${dx} ${dy}`
  return (
    `M${x + rx} ${y}h${width - 2 * rx}${arc(rx, ry)}v${height - 2 * ry}${arc(-rx, ry)}` +
    `h${2 * rx - width}${arc(-rx, -ry)}v${2 * ry - height}${arc(rx, -ry)}Z`
  )
}

/** Each piece of a path as path data of its own. */
function piecesOf(path: ReturnType<typeof svgpath>): string[] {
  const pieces: string[] = []
  let start = ''
  const absolute = path.abs().unshort().round(6)
  absolute.iterate((segment) => {
    const [command, ...numbers] = segment
    const words = `${command}${numbers.join(' ')}`
    if (command === 'M') {
      start = words
      pieces.push('')
    }
    // After a closed piece the next one may begin without a move, where that one began.
    else if (command !== 'Z' && pieces.at(-1)!.endsWith('Z')) pieces.push(start)
    pieces.push(pieces.pop()! + words)
  })
  return pieces
}

/** Path data in mm of a line from a file whose unit is so many mm. */
export const pathInMillimetres = (line: SvgLine, unit: Millimetres): string =>
  svgpath(line.path).scale(unit).round(4).toString()
