/** Other scripts on paper, set in fonts that a person chose. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { constants, inflateSync } from 'node:zlib'
import fc from 'fast-check'
import { PDFDict, PDFDocument, PDFName, PDFRawStream } from 'pdf-lib'
import { describe, expect, it } from 'vitest'
import { FONT_LIMITS } from '../../../shared-types/fonts'
import { MM_PER_POINT } from '../../../src-core/figures/figure'
import { breakLines } from '../../../src-core/figures/lines'
import { isolated } from '../../../src-core/letters/breaking'
import { withIsolatedNames } from '../../../src-core/letters/isolated'
import { renderMap } from '../../../src-main/paper/index'
import { ChosenFont } from '../../../src-main/paper/pdf/fonts/chosen'
import { setLine } from '../../../src-main/paper/pdf/fonts/typeset'
import { measureWith, readFaces } from '../../../src-main/paper/pdf/faces'
import { figureToSvg } from '../../../src-main/paper/svg'
import { createPlanner } from '../../../src-core/plan'
import { collection, FONT_NAMES, fontBytes, fontsOf, licensed, pageOf, pdfOf, without } from './fonts'
import { DATE, flowers, VERSION } from './projects'
import { readPdf } from './read-pdf'
import { runs } from '../../runs'

/** Arches drawn for this test, as eleven Hebrew letters: OpenType with cubic outlines (CFF). */
const COMPACT = readFileSync(join(import.meta.dirname, '../../fixtures/fonts/compact.otf'))

/** What the pages of a PDF tell readers in place of their glyphs (ISO 32000-1, 14.9.4), from the bytes of its streams. */
function actualTexts(bytes: Uint8Array): string[] {
  const raw = Buffer.from(bytes)
  const found: string[] = []
  for (let at = raw.indexOf('stream\n'); at >= 0; at = raw.indexOf('stream\n', at + 1)) {
    if (raw.toString('latin1', at - 3, at) === 'end') continue
    const packed = raw.subarray(at + 7, raw.indexOf('endstream', at))
    // Fonts and pictures hold no operators; what does not open is none of the pages.
    let page: string
    try {
      page = inflateSync(packed, { finishFlush: constants.Z_SYNC_FLUSH }).toString('latin1')
    } catch {
      continue
    }
    for (const [, hex] of page.matchAll(/\/ActualText <FEFF([0-9A-F]+)>>> BDC/gi))
      found.push(Buffer.from(hex!, 'hex').swap16().toString('utf16le'))
  }
  return found
}

const MARK = { '0': '\u200e', '1': '\u200f' } as const

/** The characters of a line from left to right, whatever font they are set in. */
function seen(text: string): string {
  const { pieces, order } = setLine(text, fontsOf('hebrew', 'arabic'), false)
  return order
    .map((i) => pieces[i]!)
    .map(({ text: read, isRightToLeft }) => (isRightToLeft ? [...read].reverse().join('') : read))
    .join('')
}

describe('the order of a line', () => {
  // Unicode, BidiCharacterTest.txt (§uax9): code points; direction (0 from left to right, 1 from right to left);
  // its level; levels of the characters; their order from left to right.
  it.each([
    '05D0 05D1 0028 05D2 05D3 005B 0026 0065 0066 005D 002E 0029 0067 0068;0;0;1 1 0 1 1 0 0 0 0 0 0 0 0 0;1 0 2 4 3 5 6 7 8 9 10 11 12 13',
    '05D0 05D1 0028 05D2 05D3 005B 0026 0065 0066 005D 002E 0029 0067 0068;1;1;1 1 1 1 1 1 1 2 2 1 1 1 2 2;12 13 11 10 9 7 8 6 5 4 3 2 1 0',
    '0061 0062 0063 0020 0028 0064 0065 0066 0020 0627 0628 062C 0029 0020 05D0 05D1 05D2;0;0;0 0 0 0 0 0 0 0 0 1 1 1 0 0 1 1 1;0 1 2 3 4 5 6 7 8 11 10 9 12 13 16 15 14',
    '05D0 05D1 05D2 0020 0028 0064 0065 0066 0020 0627 0628 062C 0029 0020 0061 0062 0063;1;1;1 1 1 1 1 2 2 2 1 1 1 1 1 1 2 2 2;14 15 16 13 12 11 10 9 8 5 6 7 4 3 2 1 0',
    '0627 0628 062C 0020 0062 006F 006F 006B 0028 0073 0029;0;0;1 1 1 0 0 0 0 0 0 0 0;2 1 0 3 4 5 6 7 8 9 10',
    '0627 0628 062C 0020 0062 006F 006F 006B 0028 0073 0029;1;1;1 1 1 1 2 2 2 2 2 2 2;4 5 6 7 8 9 10 3 2 1 0',
    '062A 0031 002F 0032;0;0;1 2 2 2;1 2 3 0',
    '062A 0031 002F 0032;1;1;1 2 2 2;1 2 3 0',
    '05D0 0020 0031 002D 0032;0;0;1 1 2 2 2;2 3 4 1 0',
    '0028 05D0 0029 0061 05D1 005B 005D 05D2;0;0;0 1 0 0 1 1 1 1;0 1 2 3 7 6 5 4',
    '05D0 0028 0061 0029 05D1 005B 005D;1;1;1 1 2 1 1 1 1;6 5 4 3 2 1 0',
  ])('is that of the Unicode Standard: %s', (line) => {
    const [points, direction, , , order] = line.split(';') as [string, '0' | '1', string, string, string]
    const characters = points.split(' ').map((point) => String.fromCodePoint(parseInt(point, 16)))
    const expected = order.split(' ').map((index) => characters[Number(index)]!)
    expect([...seen(MARK[direction] + characters.join(''))]).toEqual(expected)
  })

  it('keeps a number behind an isolated name, and the number within it in its place', () => {
    expect(seen('לבן, 12')).toBe('12 ,ןבל')
    expect(seen(`Yarn ${isolated('לבן 5')}, 12 motifs`)).toBe('Yarn 5 ןבל, 12 motifs')
  })

  it('follows no override that could disguise a name', () => {
    expect(seen('abc \u202edef\u202c א')).toBe('abc def א')
  })
})

describe('fonts that are refused', () => {
  const font = fontBytes('hebrew')
  it.each([
    ['no font', Buffer.from('%PDF-1.7 and so on'), /^it is not a font$/],
    ['an empty file', Buffer.alloc(0), /^it is not a font$/],
    ['a font of the web', Buffer.concat([Buffer.from('wOF2'), font]), /^it is a WOFF font/],
    ['a damaged one', font.subarray(0, 9000), /^it is damaged$/],
    ['a header alone', font.subarray(0, 12), /^it is/],
    ['one too large', Buffer.alloc(FONT_LIMITS.bytes + 1), /^it is larger than 36 MB$/],
    ['one that may not be embedded', licensed(font, 0x0002), /makers do not allow it in a PDF/],
    ['one that may not be subset', licensed(font, 0x0100), /makers do not allow single letters/],
    ['one whose bitmaps may be embedded', licensed(font, 0x0200), /bitmaps only/],
    ['one that says nothing', without(font, 'OS/2'), /does not say whether it may be embedded/],
    ['one without outlines', without(font, 'glyf'), /pictures without outlines/],
    [
      'a collection of two',
      collection([font, fontBytes('thai')]),
      /holds 2 fonts.*1 Noto Sans Hebrew.*2 Noto Sans Thai/,
    ],
  ])('%s', (_, bytes, why) => {
    expect(() => ChosenFont.read(bytes)).toThrow(why)
  })

  it('but not for rights that let it be embedded: to view and print, and to edit', () => {
    for (const bits of [0, 0x0004, 0x0008])
      expect(ChosenFont.read(licensed(font, bits)).scripts).toEqual(['Hebrew'])
  })

  it('are in no collection: of one, the face that is asked for is read', () => {
    const both = collection([font, fontBytes('thai')])
    expect(ChosenFont.read(both, 2)).toMatchObject({ name: 'Noto Sans Thai Regular', scripts: ['Thai'] })
    expect(ChosenFont.read(both, 2).run('น้ำ', 'ltr')).toEqual({
      ...fontsOf('thai')[0]!.run('น้ำ', 'ltr'),
      outline: expect.any(Function) as () => string,
    })
    expect(() => ChosenFont.read(both, 3)).toThrow(/no font 3/)
  })
})

describe('a page in many scripts', () => {
  const LINES = [
    'שמיכת תינוק (גדולה) 12 × 15',
    'by محمد علي [a-b] 3',
    'السَّلَامُ عَلَيْكُمْ ١٩٨٧',
    'בְּרֵאשִׁית',
    '毛糸「ジャック」赤 No. 5',
    'ผ้าห่ม น้ำหนัก',
    'हिन्दी क्षत्रिय कि',
  ]
  const fonts = fontsOf('hebrew', 'arabic', 'thai', 'devanagari', 'japanese')

  it('is as wide as what is printed', async () => {
    const faces = readFaces(fonts)
    const { pages } = await readPdf(await pdfOf(LINES, fonts))
    for (const [i, line] of LINES.entries()) {
      const texts = pages[0]!.texts.filter(({ y }) => Math.abs(y - 20 - 12 * i) < 3)
      const left = Math.min(...texts.map(({ x }) => x))
      const right = Math.max(...texts.map(({ x, width }) => x + width))
      expect(left).toBeCloseTo(20, 0)
      expect(Math.abs(right - left - measureWith(faces)(line, 20, 'regular'))).toBeLessThan(0.3)
    }
  })

  it('is read back in the order in which it is read, by letters and not by their forms', async () => {
    const { pages } = await readPdf(await pdfOf(LINES, fonts))
    const words = pages[0]!.words.replace(/\u200b/g, '')
    for (const word of ['שמיכת', 'תינוק', 'גדולה', 'محمد', 'علي', '毛糸「ジャック」赤 No. 5', 'ผ้าห่ม', 'क्ष'])
      expect(words).toContain(word)
  })

  it('tells readers each shaped word as it is written, letter for letter, in the file itself', async () => {
    const told = (lines: readonly string[]) => pdfOf(lines, fonts).then(actualTexts)
    expect((await told(['הי'])).join('')).toContain('הי')
    // Marks, ligatures and vowels that stand before their letter are glyphs in another order than the letters.
    for (const line of ['السَّلَامُ', 'בְּרֵאשִׁית', 'หน้ำ', 'हिन्दी', 'क्षत्रिय']) {
      const written = (await told([line])).join('')
      for (const word of line.split(' ')) expect(written).toContain(word)
    }
    // What stands as it is read needs no telling.
    expect(await told(['Orchard throw'])).toEqual([])
  })

  it('embeds a font with compact outlines (CFF), as wide and in the order as it is read', async () => {
    const compact = ChosenFont.read(COMPACT)
    const bytes = await pdfOf(['by שלום 3'], [compact])
    const { pages } = await readPdf(bytes)
    expect(pages[0]!.words).toContain('שלום')
    // Of the letter with number n of the file the width is 360 + 20 n thousandths (tests/fixtures/fonts).
    const word = pages[0]!.texts.filter(({ text }) => /[א-ת]/.test(text))
    const width = word.reduce((sum, each) => sum + each.width, 0)
    const advances = [...'שלום'].map((letter) => 360 + 20 * 'אבגדהושלםרק'.indexOf(letter))
    const size = 20 * MM_PER_POINT
    expect(width).toBeCloseTo((advances.reduce((sum, each) => sum + each, 0) / 1000) * size, 1)
    const file = await PDFDocument.load(bytes)
    const kinds = file.context
      .enumerateIndirectObjects()
      .flatMap(([, object]) => (object instanceof PDFDict ? [String(object.get(PDFName.of('Subtype')))] : []))
    expect(kinds).toContain('/CIDFontType0')
    const programs = file.context
      .enumerateIndirectObjects()
      .filter(([, object]) => object instanceof PDFRawStream)
      .map(([, object]) => String((object as PDFRawStream).dict.get(PDFName.of('Subtype'))))
    expect(programs).toContain('/CIDFontType0C')
  })

  it('is the same bytes again, and embeds just the fonts that it uses', async () => {
    const one = await pdfOf(LINES.slice(0, 1), fonts)
    expect(Buffer.from(await pdfOf(LINES.slice(0, 1), fonts)).equals(Buffer.from(one))).toBe(true)
    const { pages } = await readPdf(one)
    expect(pages).toHaveLength(1)
    expect(one.length).toBeLessThan(30_000)
  })

  it('leaves what the shipped face has as it is without fonts, and spells what no font has', async () => {
    const plain = ['Été 12 × 15 · Цветочный плед']
    expect(Buffer.from(await pdfOf(plain, fonts)).equals(Buffer.from(await pdfOf(plain, [])))).toBe(true)
    const { pages } = await readPdf(await pdfOf(['Wool 🧶 שלום 양'], fontsOf('hebrew')))
    expect(pages[0]!.words).toContain(':yarn:')
    expect(pages[0]!.words).toContain('Yang')
  })

  it('takes bold from a bold font, where one was chosen', () => {
    const [regular, bold] = fontsOf('hebrew', 'hebrewBold')
    const font = (isBold: boolean) => setLine('שלום', [regular!, bold!], isBold).pieces[0]!.font
    expect([font(false), font(true)]).toEqual([regular, bold])
    expect(setLine('שלום', [regular!], true).pieces[0]!.font).toBe(regular)
  })
})

describe('words that are shaped', () => {
  // Measured in Chromium: the same words in the same fonts at 100 px, in thousandths of the type size.
  it.each([
    ['שמיכת תינוק (גדולה) 12 × 15', 11608.3],
    ['by محمد علي (1987) [a-b] 3', 10527.5],
    ['בְּרֵאשִׁית', 3372],
    ['السَّلَامُ عَلَيْكُمْ', 4509.1],
    ['毛糸「ジャック」赤 No. 5', 11325],
    ['น้ำ ผ้าห่ม ปู่ย่า ที่นี่ ป้ำ', 7912],
    ['हिन्दी क्षत्रिय कि श्रृंखला', 8087],
  ])('are as wide as a browser sets them: %s', (line, width) => {
    const { regular } = readFaces(fontsOf('hebrew', 'arabic', 'thai', 'devanagari', 'japanese'))
    expect(Math.abs(regular.measure(line) - width)).toBeLessThan(1.5)
  })
})

describe('any text', () => {
  it('is set without a fault, as wide as its outlines are placed, in a file that opens', async () => {
    const fonts = fontsOf(...FONT_NAMES)
    const faces = readFaces(fonts)
    const measure = measureWith(faces)
    const script = fc.constantFrom(
      ...'אבְּגדמَحُّمَ١٩毛糸がー、「」ผ้นำที่हिन्दीक्ष🧶aB 12()[]-/\u200d\u200c\u200f\u2068\u2069\u202e\ud800\u0301',
    )
    const text = fc.oneof(
      fc.string({ unit: script, maxLength: 24 }),
      fc.string({ unit: 'binary', maxLength: 12 }),
    )
    await fc.assert(
      fc.asyncProperty(fc.array(text, { minLength: 1, maxLength: 4 }), async (lines) => {
        for (const line of lines) {
          expect(Number.isFinite(measure(line, 10, 'regular'))).toBe(true)
          expect(measure(line, 10, 'bold')).toBeGreaterThanOrEqual(0)
        }
        expect(figureToSvg(pageOf(lines), '', faces)).not.toContain('NaN')
        const { pages } = await readPdf(await pdfOf(lines, fonts))
        expect(pages).toHaveLength(1)
      }),
      { numRuns: runs(40) },
    )
  })
})

describe('lines in other scripts', () => {
  const measure = measureWith(readFaces(fontsOf('hebrew', 'thai', 'japanese')))
  const fits = (lines: readonly string[], width: number) =>
    expect(Math.max(...lines.map((line) => measure(line, 10, 'regular')))).toBeLessThanOrEqual(width)

  it('break between Japanese characters, but before no stop and behind no opening bracket', () => {
    const text = 'この毛糸は「ジャックと豆の木」、とても柔らかいです。洗濯機で洗えます。'
    for (let width = 20; width < 60; width++) {
      const lines = breakLines(text, width, measure, 10)
      fits(lines, width)
      expect(lines.join('')).toBe(text)
      for (const line of lines) {
        expect(line).not.toMatch(/^[、。」ッー]/)
        expect(line).not.toMatch(/「$/)
      }
    }
  })

  it('break between Thai words, which stand without spaces', () => {
    const text = 'ผ้าห่มสำหรับเด็กน้ำหนักเบาซักในน้ำเย็นและตากในที่ร่ม'
    const lines = breakLines(text, 30, measure, 10)
    fits(lines, 30)
    expect(lines.join('')).toBe(text)
    const words = new Set(
      [...new Intl.Segmenter('th', { granularity: 'word' }).segment(text)].map(({ index }) => index),
    )
    let at = 0
    for (const line of lines) {
      expect(words.has(at)).toBe(true)
      at += line.length
    }
  })

  it('go the way of their text, each of them', () => {
    const text = 'שמיכה זו סרוגה מצמר רך מאוד Wash at 30 °C (gentle) only, dry in the shade ולייבש בצל'
    const lines = breakLines(text, 45, measure, 10)
    expect(lines.length).toBeGreaterThan(2)
    const latin = lines.find((line) => /^\u200f?[A-Za-z]/.test(line))!
    expect(latin.startsWith('\u200f')).toBe(true)
    expect(breakLines(`From ${isolated('צמר כחול בהיר מאוד')}, 12 balls`, 22, measure, 10)).toSatisfy(
      (each: string[]) => each.every((line) => line.split('\u2068').length === line.split('\u2069').length),
    )
  })

  it('stay as they are where no font was chosen', () => {
    const plain = measureWith(readFaces())
    expect(breakLines('毛糸 '.repeat(3).trim(), 500, plain, 10)).toEqual(['毛糸 毛糸 毛糸'])
    expect(breakLines('Ab שלום Cd', 500, plain, 10)).toEqual(['Ab שלום Cd'])
  })
})

describe('a map', () => {
  it('has title, names and notes in their own scripts, and no mark of direction beside the pages', async () => {
    const fonts = fontsOf('hebrew', 'arabic', 'thai', 'japanese')
    const covers = fonts.map((font) => font.covers)
    const project = flowers(
      { columns: 3, rows: 2 },
      { title: 'שמיכה (גדולה) 12', designer: 'محمد', notes: 'ผ้าห่มสำหรับเด็ก' },
    )
    const yarns = project.yarns!.map((yarn, i) => ({ ...yarn, name: i === 0 ? '毛糸' : `צמר ${i}` }))
    const plan = createPlanner().plan(withIsolatedNames({ ...project, yarns }), covers)
    expect(plan.findings.filter(({ code }) => code.startsWith('letters/'))).toEqual([])
    const pdf = await renderMap(plan, { date: DATE, version: VERSION, fonts })
    const { pages, information, labels } = await readPdf(pdf)
    expect(information.Title).toBe('שמיכה (גדולה) 12')
    expect(information.Author).toBe('محمد')
    expect(`${labels?.join()}${Buffer.from(pdf).toString('utf8')}`).not.toMatch(/[\u2066-\u2069]/)
    const words = pages.map((page) => page.words).join(' ')
    for (const word of ['שמיכה', 'גדולה', 'محمد', '毛糸', 'צמר']) expect(words).toContain(word)
    expect(words).not.toContain('smykh')
  })
})
