/** Colourways as they are printed, as pixels: no two of one motif look alike, with their numbers on them. */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import type { SheetStyle } from '../../../shared-types/project'
import { colourDifference } from '../../../src-core/colour/legibility'
import type { Figure, FigureItem, FigureSymbol } from '../../../src-core/figures/figure'
import { figureSymbols, useAt } from '../../../src-core/figures/figure'
import { rectanglePath } from '../../../src-core/figures/path'
import { textureItems, textureKind, TEXTURE_COUNT } from '../../../src-core/figures/textures'
import { mapPages } from '../../../src-main/paper/index'
import { readFaces } from '../../../src-main/paper/pdf/faces'
import { writePdf } from '../../../src-main/paper/pdf/file'
import { EXAMPLES, planOf } from './examples'
import { DATE } from './projects'

const folder = mkdtempSync(join(tmpdir(), 'petalyard-alike-'))
afterAll(() => rmSync(folder, { recursive: true }))

interface Picture {
  readonly width: number
  readonly height: number
  /** Red, green and blue of each pixel. */
  readonly colours: Uint8Array
  readonly perMm: number
}

const information = { title: 't', author: '', subject: '', language: 'en', date: DATE, producer: 'p' }

/** A figure as poppler prints it (netpbm, "P6"). */
async function print(figure: Figure, resolution: number): Promise<Picture> {
  const file = join(folder, 'page.pdf')
  const page = { label: '1', bookmarks: [], figure }
  writeFileSync(file, await writePdf([page], information, { faces: readFaces() }))
  execFileSync('pdftoppm', ['-r', String(resolution), '-singlefile', file, join(folder, 'page')])
  const bytes = readFileSync(join(folder, 'page.ppm'))
  const header = /^P6\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString('latin1'))!
  const [width, height] = [Number(header[1]), Number(header[2])]
  return { width, height, colours: bytes.subarray(header[0].length), perMm: resolution / 25.4 }
}

/** mm of a cell: the largest motif on a map is 40 mm across, on a card it may be as large as life. */
const CELL = 60
/** A printed difference that a reader sees at a glance. ΔE00, and mm². */
const CLEAR = 10
const LEAST_AREA = 2.5

/** mm² in which the pictures in two cells of a row differ clearly. */
function differingArea({ width, height, colours, perMm }: Picture, one: number, other: number): number {
  const side = Math.floor(CELL * perMm)
  const [left, right] = [one, other].map((cell) => Math.floor(cell * CELL * perMm)) as [number, number]
  const colourAt = (pixel: number) =>
    colours[3 * pixel]! * 65_536 + colours[3 * pixel + 1]! * 256 + colours[3 * pixel + 2]!
  const known = new Map<number, boolean>()
  let count = 0
  for (let y = 0; y < height; y++)
    for (let x = 0; x < side; x++) {
      const a = colourAt(y * width + left + x)
      const b = colourAt(y * width + right + x)
      if (a === b) continue
      const key = a * 2 ** 24 + b
      let isClear = known.get(key)
      if (isClear === undefined) known.set(key, (isClear = colourDifference(rgb(a), rgb(b)) >= CLEAR))
      if (isClear) count++
    }
  return count / perMm ** 2
}

const rgb = (colour: number) => ({
  ...{
    mode: 'rgb' as const,
    r: (colour >> 16) / 255,
    g: ((colour >> 8) & 255) / 255,
    b: (colour & 255) / 255,
  },
})

/** The symbols of motifs on the pages, those of one motif, turn, size and kind together. */
function groupsOf(symbols: readonly FigureSymbol[], style: SheetStyle): FigureSymbol[][] {
  const groups = new Map<string, FigureSymbol[]>()
  for (const symbol of symbols) {
    const [motif, , turn, look, rest] = symbol.id.split('/')
    if (look !== style || symbol.bounds.width > CELL) continue
    const key = [motif, turn, rest].join('/')
    const group = groups.get(key) ?? []
    if (!group.some(({ id }) => id === symbol.id)) groups.set(key, [...group, symbol])
  }
  return [...groups.values()].filter((group) => group.length > 1)
}

describe.each(EXAMPLES)('$name', ({ project }) => {
  const plan = planOf(project)

  it.each(['colour', 'ink'] as const)(
    'tells its colourways apart in %s, on the map and in the key',
    async (style) => {
      const pages = mapPages(plan, { style, date: DATE })
      const symbols = pages.flatMap(({ figure }) => figureSymbols(figure))
      for (const group of groupsOf(symbols, style)) {
        const items = group.map((symbol, i): FigureItem => useAt(symbol, (i + 0.5) * CELL, CELL / 2))
        const picture = await print({ width: group.length * CELL, height: CELL, items }, 130)
        for (let i = 0; i < group.length; i++)
          for (let k = i + 1; k < group.length; k++)
            expect(differingArea(picture, i, k), `${group[i]!.id} and ${group[k]!.id}`).toBeGreaterThan(
              LEAST_AREA,
            )
      }
    },
  )
})

describe('ink textures on paper', () => {
  it.each([14, 8])('have the more ink the higher their number, in a motif of %s mm', async (across) => {
    const side = 12
    const box = { x: 0, y: 0, width: side, height: side }
    const clip = rectanglePath(0, 0, side, side)
    const items = Array.from({ length: TEXTURE_COUNT }, (_, i): FigureItem => ({
      kind: 'group',
      matrix: [1, 0, 0, 1, i * side, 0],
      items: [{ kind: 'group', clip, items: textureItems(i, box, across) }],
    }))
    const { height, colours, perMm, width } = await print(
      { width: TEXTURE_COUNT * side, height: side, items },
      600,
    )
    const inked = Array.from({ length: TEXTURE_COUNT }, (_, i) => {
      let sum = 0
      let count = 0
      for (let y = Math.ceil(perMm); y < height - perMm; y++)
        for (let x = Math.ceil((i * side + 1) * perMm); x < ((i + 1) * side - 1) * perMm; x++) {
          sum += 255 - colours[3 * (y * width + x)]!
          count++
        }
      return sum / count / 255
    })
    // The raster of the print itself moves the edge of a line by half a dot.
    inked.forEach((share, i) => expect(Math.abs(share - textureKind(i).ink)).toBeLessThan(0.035))
    inked.slice(1).forEach((share, i) => expect(share).toBeGreaterThan(inked[i]! - 0.015))
  })
})
