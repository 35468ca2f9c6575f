/** Fonts that a person chose for other scripts: whether they can and may be used, what they cover, words set in them. */
import { create } from 'fontkit'
import type { Font } from 'fontkit'
import { FONT_LIMITS } from '../../../../shared-types/fonts'
import type { CodePointRanges } from '../../../../shared-types/fonts'
import { rangesBeyondFace } from '../../../../src-core/letters/printable'
import { scriptsCovered } from '../../../../src-core/letters/scripts'
import { demandCountable } from './characters'
import { Shaper } from './harfbuzz'
import type { Placed } from './harfbuzz'

/** Why a font is not used, as the end of a sentence: "it is damaged". */
export class FontRefused extends Error {}

export interface SetGlyph {
  readonly id: number
  /** What it stands for; '' where another glyph says it already. */
  readonly text: string
  /** Where it stands from the begin of the run, and above the baseline, in thousandths of the type size. */
  readonly x: number
  readonly y: number
}

/** A run in one font, script and direction; its glyphs from left to right. */
export interface SetRun {
  readonly glyphs: readonly SetGlyph[]
  /** Thousandths of the type size. */
  readonly width: number
  /** Its glyphs as one path, y up. */
  readonly outline: () => string
}

/** From this weight on a font is bold (OpenType, OS/2 usWeightClass: 600 is semi-bold). */
const BOLD = 600
/** Far more than the words of a large map. */
const MOST_RUNS = 20_000
/** Glyphs that are drawn before a font is taken. */
const PROBED = 200

/** First bytes of files. */
const KINDS: Readonly<Record<string, 'one' | 'collection' | 'web'>> = {
  '\0\x01\0\0': 'one',
  true: 'one',
  OTTO: 'one',
  ttcf: 'collection',
  wOFF: 'web',
  wOF2: 'web',
}

const UNNAMED = 'Font without a name'
const kindOf = (bytes: Uint8Array): string => String.fromCharCode(...bytes.subarray(0, 4))

export class ChosenFont {
  readonly perMille: number
  readonly isBold: boolean
  private readonly runs = new Map<string, SetRun>()

  private constructor(
    readonly font: Font,
    private readonly shaper: Shaper,
    readonly name: string,
    /** What it has beyond the face of paper. */
    readonly covers: CodePointRanges,
  ) {
    this.perMille = 1000 / font.unitsPerEm
    this.isBold = font['OS/2'].usWeightClass >= BOLD
  }

  /** The scripts that it covers, by name. */
  get scripts(): string[] {
    return scriptsCovered(this.covers)
  }

  /**
   * Reads a TrueType or OpenType file; of a collection the face of that number, from 1. Throws FontRefused where it
   * cannot or may not be used.
   */
  static read(bytes: Uint8Array, face: number | null = null): ChosenFont {
    if (bytes.length > FONT_LIMITS.bytes)
      throw new FontRefused(`it is larger than ${FONT_LIMITS.bytes / 1e6} MB`)
    const kind = KINDS[kindOf(bytes)]
    if (kind === 'web')
      throw new FontRefused('it is a WOFF font, packed for the web; choose a .ttf or .otf file')
    if (!kind) throw new FontRefused('it is not a font')
    undamaged(() => demandCountable(bytes, (face ?? 1) - 1))
    const whole = undamaged(() => create(bytes as Buffer))
    const faces = 'fonts' in whole ? undamaged(() => whole.fonts) : [whole]
    const names = (): string => faces.map((each, i) => `${i + 1} ${nameOf(each) ?? UNNAMED}`).join(', ')
    if (face === null && faces.length > 1)
      throw new FontRefused(`it holds ${faces.length} fonts, one has to be chosen: ${names()}`)
    const index = (face ?? 1) - 1
    const font = faces[index]
    if (!font)
      throw new FontRefused(
        faces.length > 1 ? `it has no font ${face}, only ${names()}` : `it has no font ${face}, only one`,
      )
    mayBeEmbedded(font)
    return undamaged(() => {
      const chosen = new ChosenFont(
        font,
        new Shaper(bytes, index),
        nameOf(font) ?? UNNAMED,
        rangesBeyondFace(font.characterSet),
      )
      chosen.probe()
      return chosen
    })
  }

  /** The names of the fonts in a file; none where it is no font. */
  static namesIn(bytes: Uint8Array): string[] {
    if (KINDS[kindOf(bytes)] !== 'collection') return []
    const whole = undamaged(() => create(bytes as Buffer))
    return undamaged(() => ('fonts' in whole ? whole.fonts : [whole]).map((each) => nameOf(each) ?? UNNAMED))
  }

  /** Draws glyphs from all over the font and embeds them for a try: what is damaged shows it here. */
  private probe(): void {
    const { font, covers } = this
    if (covers.length === 0) throw new FontRefused('it has no letters that paper lacks without it')
    if (!(font.unitsPerEm > 0)) throw new Error('no size')
    const subset = font.createSubset()
    const step = Math.max(1, Math.floor(font.numGlyphs / PROBED))
    for (let id = 0; id < font.numGlyphs; id += step) {
      const glyph = font.getGlyph(id)
      glyph.path.toSVG()
      subset.includeGlyph(glyph)
    }
    subset.encode()
    this.run(String.fromCodePoint(covers[0]![0]), 'ltr')
  }

  /** Sets a text of one script and direction. Runs are kept. */
  run(text: string, direction: 'ltr' | 'rtl'): SetRun {
    const key = `${direction} ${text}`
    const known = this.runs.get(key)
    if (known) return known
    const run = this.set(text, direction)
    if (this.runs.size >= MOST_RUNS) this.runs.clear()
    this.runs.set(key, run)
    return run
  }

  private set(text: string, direction: 'ltr' | 'rtl'): SetRun {
    const { perMille } = this
    const placed = this.shaper.shape(text, direction)
    const begins = [...new Set(placed.map(({ cluster }) => cluster))].sort((a, b) => a - b)
    const textFrom = new Map(begins.map((begin, i) => [begin, text.slice(begin, begins[i + 1])]))
    // A letter may be drawn in parts, as a stem and its dots: the widest stands for it.
    const widest = new Map<number, Placed>()
    for (const each of placed) {
      const other = widest.get(each.cluster)
      if (!other || each.advance > other.advance) widest.set(each.cluster, each)
    }
    let pen = 0
    const glyphs = placed.map((each): SetGlyph => {
      const { id, cluster, advance, dx, dy } = each
      const x = (pen + dx) * perMille
      pen += advance
      const stands = widest.get(cluster) === each ? textFrom.get(cluster)! : ''
      return { id, text: stands, x, y: dy * perMille }
    })
    let outline: string | null = null
    return { glyphs, width: pen * perMille, outline: () => (outline ??= this.outline(glyphs)) }
  }

  private outline(glyphs: readonly SetGlyph[]): string {
    const { font, perMille } = this
    return glyphs
      .map(({ id, x, y }) => font.getGlyph(id).path.scale(perMille, perMille).translate(x, y).toSVG())
      .join('')
  }
}

function undamaged<Value>(read: () => Value): Value {
  try {
    return read()
  } catch (error) {
    throw error instanceof FontRefused ? error : new FontRefused('it is damaged')
  }
}

const nameOf = (font: Font): string | null =>
  [font.fullName, font.familyName, font.postscriptName].find(
    (name) => typeof name === 'string' && name.trim() !== '',
  ) ?? null

/** What the maker of a font allows (OpenType, OS/2 fsType), and whether it has outlines at all. */
function mayBeEmbedded(font: Font): void {
  const { tables } = undamaged(() => (font as unknown as { directory: { tables: object } }).directory)
  if (!('glyf' in tables) && !('CFF ' in tables))
    throw new FontRefused(
      'CFF2' in tables
        ? 'it is a variable font of a kind (CFF2) that no PDF can hold; choose one for a single weight'
        : 'its letters are pictures without outlines',
    )
  const about = 'OS/2' in tables ? undamaged(() => font['OS/2']) : null
  if (!about) throw new FontRefused('it does not say whether it may be embedded')
  const { noEmbedding, viewOnly, editable, noSubsetting, bitmapOnly } = about.fsType
  // Up to version 2 a font could grant more than one right: the widest holds.
  const isWider = about.version < 3 && (viewOnly || editable)
  if (noEmbedding && !isWider) throw new FontRefused('its makers do not allow it in a PDF')
  if (noSubsetting) throw new FontRefused('its makers do not allow single letters of it in a PDF')
  if (bitmapOnly) throw new FontRefused('its makers allow its bitmaps only in a PDF, not its outlines')
}
