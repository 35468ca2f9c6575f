/** The map in sheets, when one page cannot hold numbers that can be read. */
import { MapPainter } from '../../../src-core/figures/map'
import { smallestNumberedScale } from '../../../src-core/figures/map-ground'
import type { Tiling } from '../../../src-core/figures/tiles'
import { keyMap, tileFigure, tileMap } from '../../../src-core/figures/tiles'
import { formatNumber } from '../../../src-core/units/format'
import type { Draft, Job } from '../page'
import { newSheet } from '../page'
import { TYPE } from '../setting'
import { FIGURE_WORDS } from '../words-figures'
import { sheetAdvice, sheetRange, sheetTitle } from '../words'

const HEAD = 25
const KEY_MAP = { width: 44, height: 21 } as const

/** How far the scale may grow above the smallest readable one to fill the sheets. */
const LARGEST_GROWTH = 1.6

interface SheetPlan {
  readonly tiling: Tiling
  readonly landscape: boolean
}

function room(job: Job, landscape: boolean): { width: number; height: number } {
  const sheet = newSheet(job, landscape)
  return { width: sheet.inner, height: sheet.bottom - sheet.top - HEAD }
}

/** The fewest sheets on which every number can be read, drawn as large as those sheets allow. */
export function planSheets(job: Job): SheetPlan {
  const smallest = smallestNumberedScale(job.ground) * 1.02
  const count = ({ columns, rows }: Tiling): number => columns * rows
  const candidates = [false, true].map((landscape) => {
    const { width, height } = room(job, landscape)
    return { landscape, width, height, tiling: tileMap(job.ground, smallest, width, height) }
  })
  const best = candidates.reduce((a, b) => (count(b.tiling) < count(a.tiling) ? b : a))
  let low = 1
  let high = LARGEST_GROWTH
  let { tiling } = best
  for (let i = 0; i < 12; i++) {
    const middle = (low + high) / 2
    const grown = tileMap(job.ground, smallest * middle, best.width, best.height)
    if (grown.columns <= best.tiling.columns && grown.rows <= best.tiling.rows) {
      low = middle
      tiling = grown
    } else high = middle
  }
  return { tiling, landscape: best.landscape }
}

/** A page for each sheet: its name, what is on it, where it lies, and its part of the map. */
export function sheetPages(job: Job, { tiling, landscape }: SheetPlan): Draft[] {
  const painter = new MapPainter(job.ground, tiling.scale)
  const overlap = `${formatNumber(tiling.overlap)} mm`
  const several = tiling.tiles.length > 1
  return tiling.tiles.map((tile) => {
    const sheet = newSheet(job, landscape)
    const title = sheetTitle(tile.number, tiling.tiles.length)
    const range = sheetRange(tile.rows, tile.places)
    let y = sheet.text(title, sheet.left, sheet.top, {
      size: TYPE.heading + 3,
      weight: 'bold',
      as: 'H1',
    })
    y = sheet.text(range.replace(/^r/, 'R'), sheet.left, y, { size: TYPE.lead })
    if (several) {
      sheet.paragraph(sheetAdvice(overlap, job.terms), sheet.left, y + 0.6, sheet.inner - KEY_MAP.width - 8, {
        size: TYPE.list,
      })
      const map = keyMap(tiling, job.ground, tile.number, KEY_MAP.width, KEY_MAP.height)
      sheet.figure(map, sheet.right - map.width, sheet.top + 1, FIGURE_WORDS.keyMap)
    }
    const figure = tileFigure(painter, tiling, tile)
    const left = sheet.left + Math.max(0, (sheet.inner - figure.width) / 2)
    sheet.figure(figure, left, sheet.top + HEAD, FIGURE_WORDS.sheet(title, range))
    return { section: 'sheet', name: title, bookmarks: [`${title}: ${range}`], sheet } satisfies Draft
  })
}
