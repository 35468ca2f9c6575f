/**
 * Whether a drawing as SVG can be drawn without keeping anybody waiting. A few lines of one can ask for more than a
 * machine draws in a lifetime, each part used ten times by the next; what draws them does not stop. So its parts are
 * counted before, each as often as it is drawn. Only what was read to its end is drawn.
 */
import { SaxesParser } from 'saxes'
import { dashesAlong, dashesOf, longestLine, percentOf } from './dashes'

/** Most parts that are drawn, in elements of a plain drawing: some seconds on an old laptop (our own choice). */
export const MOST_DRAWN = 20_000
/** Parts within each other (our own choice). */
export const MOST_WITHIN = 200
/** An element of a drawing has a few dozen attributes; what draws it compares each with every other (our own choice). */
export const MOST_ATTRIBUTES = 500
/** What is drawn apart first, then put over the rest, takes as long as so many plain elements (measured, rounded up). */
const APART = 100
/** Characters of a path, a list or a text that take as long as an element (our own choice). */
const CHARACTERS = 200
/** Dashes that take as long as an element (measured, rounded down). */
const DASHES = 100
/** Characters of a path for each of its corners, at least: two numbers and what parts them. */
const CHARACTERS_OF_CORNER = 4

/** Why a drawing is not drawn: the first reason that was found. */
export type DrawingTrouble =
  'no-xml' | 'entities' | 'attributes' | 'web-page' | 'drawing-within' | 'too-deep' | 'effect' | 'too-much'

/** Shown where something names them, and not where they stand. */
const UNSHOWN = new Set(['defs', 'symbol', 'clippath', 'mask', 'marker', 'pattern', 'filter'])
/** Colours: naming them costs nothing. */
const PAINT = new Set(['lineargradient', 'radialgradient'])
/**
 * Effects that are worked out for each pixel from as many layers, or neighbours, as a few characters ask for: a second for
 * each of them, or minutes where the drawing is small and its effect is not (measured).
 */
const ENDLESS = new Set(['feturbulence', 'femorphology', 'feconvolvematrix'])
const WEB_PAGE = 'http://www.w3.org/1999/xhtml'
const PICTURE = /^\s*data:image\/(?:png|jpe?g|gif|webp);/i
const DATA = /data:\s*[\w+./-]*/gi
/** In CSS, or as the names of attributes. */
const ALWAYS_APART = /(?<![\w-])(?:filter|mask|mix-blend-mode)(?![\w-])/i
const APART_WITH_PARTS = /(?<![\w-])opacity(?![\w-])/i
const MARKERS = /(?<![\w-])marker/i
const NAMED = /url\(\s*["']?#([^"')\s]+)/gi
/** In what an attribute says, or becomes in time. */
const NAMED_ALONE = /(?:^|;)\s*#([^;\s]+)/g

class Refused extends Error {
  constructor(readonly trouble: DrawingTrouble) {
    super(trouble)
  }
}

interface Part {
  readonly name: string
  readonly parts: Part[]
  readonly classes: readonly string[]
  /** Ids of what it draws besides. */
  readonly names: readonly string[]
  /** What attributes and style say, in one text. */
  readonly looks: string
  readonly corners: number
  /** Of its line, at most, in its own units. */
  readonly length: number
  /** Of its words and of what it says, in elements. */
  own: number
}

/** Why an SVG file should not be drawn; null where it can be. */
export function drawingTrouble(svg: string): DrawingTrouble | null {
  const drawing = new Drawing()
  try {
    drawing.read(svg)
    return drawing.cost() > MOST_DRAWN ? 'too-much' : null
  } catch (error) {
    if (error instanceof Refused) return error.trouble
    throw error
  }
}

class Drawing {
  private readonly byId = new Map<string, Part>()
  private readonly all: Part[] = []
  private readonly open: Part[] = []
  private root: Part | null = null
  private count = 0
  private css = ''
  /** What a hundredth of its size is. */
  private percent = 1

  read(svg: string): void {
    const parser = new SaxesParser()
    let attributes = 0
    parser.on('error', () => {
      throw new Refused('no-xml')
    })
    parser.on('doctype', (declared) => this.refuseEntities(parser, declared))
    parser.on('opentagstart', () => void (attributes = 0))
    parser.on('attribute', () => {
      if (++attributes > MOST_ATTRIBUTES) throw new Refused('attributes')
    })
    parser.on('opentag', ({ name, attributes: told }) => this.begin(localName(name), told))
    parser.on('closetag', () => void this.open.pop())
    const words = (text: string): void => this.words(text)
    parser.on('text', words)
    parser.on('cdata', words)
    parser.write(svg).close()
  }

  /** Names for addresses, as some programs write them, are harmless; words that stand for others are not. */
  private refuseEntities(parser: SaxesParser, declared: string): void {
    if (!/\[|<!/.test(declared)) return
    const plain = /<!ENTITY\s+([\w.-]+)\s+(?:"([^"<&%]*)"|'([^'<&%]*)')\s*>/g
    if (declared.replace(plain, '').includes('<!')) throw new Refused('entities')
    for (const [, name, double, single] of declared.matchAll(plain))
      parser.ENTITIES[name!] = double ?? single ?? ''
  }

  private begin(name: string, told: Readonly<Record<string, string>>): void {
    if (++this.count > MOST_DRAWN) throw new Refused('too-much')
    if (this.open.length >= MOST_WITHIN) throw new Refused('too-deep')
    const names: string[] = []
    let length = 0
    let looks = ''
    for (const [key, value] of Object.entries(told)) {
      if (key.startsWith('xmlns') && value.trim() === WEB_PAGE) throw new Refused('web-page')
      const said = unescaped(value)
      refuseDrawings(said)
      if (PICTURE.test(said)) continue
      for (const pattern of [NAMED, NAMED_ALONE]) for (const [, id] of said.matchAll(pattern)) names.push(id!)
      length += value.length
      looks += `${key === 'style' ? `${said};` : key === 'stroke-dasharray' ? `${key}:${said};` : key} `
    }
    if (ENDLESS.has(name)) throw new Refused('effect')
    if (!this.root) this.percent = percentOf(told)
    const part: Part = {
      name,
      parts: [],
      classes: (told.class ?? '').split(/\s+/),
      names,
      looks,
      corners: Math.ceil(((told.d ?? told.points ?? '').length + 1) / CHARACTERS_OF_CORNER),
      length: longestLine(told, this.percent),
      own: 1 + length / CHARACTERS,
    }
    this.all.push(part)
    this.open.at(-1)?.parts.push(part)
    this.root ??= part
    if (told.id !== undefined && !this.byId.has(told.id)) this.byId.set(told.id, part)
    this.open.push(part)
  }

  private words(text: string): void {
    const part = this.open.at(-1)
    if (!part) return
    if (part.name === 'style') this.css += text
    else part.own += text.length / CHARACTERS
  }

  /** Elements that are drawn, each as often as it is. */
  cost(): number {
    const css = unescaped(this.css)
    refuseDrawings(css)
    const rules = rulesOf(css)
    const looksOf = (part: Part): { looks: string; names: readonly string[] } => {
      const styles = [rules.ofAll, ...part.classes.map((name) => rules.byClass.get(name))]
      return {
        looks: styles.reduce((all, rule) => (rule ? `${all}${rule.looks} ` : all), part.looks),
        names: [...part.names, ...styles.flatMap((rule) => rule?.names ?? [])],
      }
    }
    // One for all lines: which list of dashes reaches which of them is more than has to be known.
    const period = dashesOf(`${css};${this.all.map((part) => part.looks).join(';')}`)
    const known = { plain: new Map<Part, number>(), dashed: new Map<Part, number>() }
    const within = new Set<Part>()
    const costOf = (part: Part, isDashed: boolean): number => {
      // What names itself is not drawn again.
      if (within.has(part) || PAINT.has(part.name)) return 0
      if (within.size > 2 * MOST_WITHIN) throw new Refused('too-deep')
      const { looks, names } = looksOf(part)
      const own = dashesOf(looks)
      const dashes = typeof period === 'number' && (own === null ? isDashed : own !== 'none')
      const before = known[dashes ? 'dashed' : 'plain']
      const told = before.get(part)
      if (told !== undefined) return told
      within.add(part)
      const isApart =
        part.name.startsWith('fe') ||
        ALWAYS_APART.test(looks) ||
        (part.parts.length > 0 && APART_WITH_PARTS.test(looks))
      const times = MARKERS.test(looks) ? part.corners : 1
      let cost = part.own + rules.count / APART + (isApart ? APART : 0)
      if (dashes && part.length > 0) cost += dashesAlong(part.length, period) / DASHES
      for (const each of part.parts) if (!UNSHOWN.has(each.name)) cost += costOf(each, dashes)
      for (const id of names) {
        const named = this.byId.get(id)
        if (named) cost += times * costOf(named, dashes)
      }
      within.delete(part)
      before.set(part, cost)
      return cost
    }
    return this.root ? costOf(this.root, false) : 0
  }
}

interface Rule {
  readonly looks: string
  readonly names: readonly string[]
}

/** What a style sheet says of elements of a class, and of all others, as far as it costs something. */
function rulesOf(css: string): { byClass: ReadonlyMap<string, Rule>; ofAll: Rule; count: number } {
  const byClass = new Map<string, Rule>()
  let ofAll: Rule = { looks: '', names: [] }
  let count = 0
  const joined = (rule: Rule | undefined, looks: string): Rule => ({
    looks: `${rule?.looks ?? ''}${looks} `,
    names: [...(rule?.names ?? []), ...[...looks.matchAll(NAMED)].map(([, id]) => id!)],
  })
  for (const [, selector = '', inside = ''] of css.matchAll(/([^{}]*)\{([^{}]*)\}/g)) {
    // One rule within another: what is said before it is said of whatever the outer one means.
    const isWithin = selector.includes(';')
    const looks = isWithin ? `${selector}{${inside}` : inside
    const classes = isWithin ? [] : [...selector.matchAll(/\.([\w-]+)/g)].map(([, name]) => name!)
    if (++count > MOST_DRAWN) throw new Refused('too-much')
    if (!/url|filter|mask|mix-blend|opacity|marker|dasharray/i.test(looks)) continue
    if (classes.length === 0) ofAll = joined(ofAll, looks)
    for (const name of classes) byClass.set(name, joined(byClass.get(name), looks))
  }
  return { byClass, ofAll, count }
}

/** A picture in a drawing may be a drawing again, which nobody counts. */
function refuseDrawings(value: string): void {
  for (const [data] of value.matchAll(DATA))
    if (!PICTURE.test(`${data};`) && !/^data:\s*(?:font|application)\//i.test(data))
      throw new Refused('drawing-within')
}

/** Without the escapes of CSS, in which any word can be written. */
const unescaped = (text: string): string =>
  text.replace(/\\([0-9a-f]{1,6})\s?/gi, (_, code: string) =>
    String.fromCodePoint(Math.min(Number.parseInt(code, 16), 0x10ffff)),
  )

const localName = (name: string): string => name.slice(name.indexOf(':') + 1).toLowerCase()
