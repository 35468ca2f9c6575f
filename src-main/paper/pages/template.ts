/** An appliqué's template: a page to begin with, the panel at full size on sheets, the list of what lies where. */
import type { TemplateGround } from '../../../src-core/figures/applique-ground'
import { templateOverview, testSquare } from '../../../src-core/figures/applique-overview'
import { templateKey, templateTileFigure, tileName } from '../../../src-core/figures/applique-tiles'
import { tileTemplate } from '../../../src-core/figures/applique-windows'
import type { PlacedTile, TemplateTiling } from '../../../src-core/figures/applique-windows'
import { MM_PER_INCH } from '../../../src-core/units/quantity'
import type { Draft, Job } from '../page'
import { newSheet } from '../page'
import type { Sheet } from '../setting'
import { TYPE } from '../setting'
import { FIGURE_WORDS } from '../words-figures'
import { TEMPLATE_WORDS as WORDS } from '../words-template'
import { withCautions } from './cautions'
import { withMaterials } from './materials'
import { withMotifs } from './motif'
import { notePages, setNotes } from './notes'
import { sentenceOf } from './overview'
import { keyPages, setKey, templateKeyRows } from './template-key'
import { templateList } from './template-list'

const HEAD = 17
const KEY = { width: 34, height: 15.5 } as const
/** Where a window is named that shares its sheet with others, from the corner of its figure. */
const NAME = { x: 13, y: 0.7, style: { size: 8, weight: 'bold', leading: 1.2 } } as const
const SQUARE = 50
const GAP = 8
/** Height that the picture of the panel keeps beside the key, in mm. */
const LEAST_PICTURE = 60

/** All pages of a template. */
export function templatePages(job: Job, ground: TemplateGround): Draft[] {
  const { tiling, landscape } = planTiles(job, ground)
  const panel = [
    ...firstPages(job, ground, tiling),
    ...notePages(job),
    ...tiling.sheets.map((placed) => tilePage(job, ground, tiling, placed, landscape)),
    ...templateList(job, ground),
  ]
  return withCautions(job, withMotifs(job, withMaterials(job, panel), motifsOf(job)))
}

/** The way round of the paper that takes fewer sheets; upright where both take the same. */
function planTiles(job: Job, ground: TemplateGround): { tiling: TemplateTiling; landscape: boolean } {
  const [upright, lying] = [false, true].map((landscape) => {
    const sheet = newSheet(job, landscape)
    const tiling = tileTemplate(ground, sheet.inner, sheet.bottom - sheet.top - HEAD)
    return { tiling, landscape }
  }) as [{ tiling: TemplateTiling; landscape: boolean }, { tiling: TemplateTiling; landscape: boolean }]
  return lying.tiling.sheets.length < upright.tiling.sheets.length ? lying : upright
}

function firstPages(job: Job, ground: TemplateGround, tiling: TemplateTiling): Draft[] {
  const sheet = newSheet(job)
  let y = sheet.title(job.title)
  y = sheet.paragraph(sentenceOf(job), sheet.left, y, sheet.inner, { size: TYPE.lead })
  y = setNotes(job, sheet, y) + 4
  if (ground.reverse) y = sheet.paragraph(WORDS.reversed, sheet.left, y, sheet.inner, { weight: 'bold' }) + 3
  sheet.rule(y)
  y += 4
  const bottom = squares(sheet, y)
  const x = sheet.left + SQUARE + MM_PER_INCH + 2 * GAP
  const width = sheet.right - x
  let right = sheet.heading(WORDS.print, x, y)
  right = sheet.paragraph(WORDS.printHow, x, right, width)
  y = Math.max(bottom, right) + 6
  const column = (sheet.inner - GAP) / 2
  const leftOut = tiling.places.length - tiling.tiles.length
  const assembled =
    tiling.places.length === 1
      ? WORDS.oneSheet
      : WORDS.sheets(tiling.sheets.length, tiling.tiles.length, tiling.overlap, job.terms) +
        (leftOut > 0 ? WORDS.leftOut(leftOut) : '')
  const marks = WORDS.marksTold(
    ground.inner.length > 0,
    ground.items.some((item) => item.covered),
    job.terms,
  )
  const one = sheet.paragraph(assembled, sheet.left, sheet.heading(WORDS.assemble, sheet.left, y), column)
  const second = sheet.left + column + GAP
  const two = sheet.paragraph(marks, second, sheet.heading(WORDS.marks, second, y), column)
  y = Math.max(one, two) + 6
  const key = templateKeyRows(job, sheet)
  const high = key.reduce((sum, { height }) => sum + height, 0)
  const hasKey = y + high <= sheet.bottom - LEAST_PICTURE
  if (hasKey) y = setKey(sheet, key, y) + 2
  const figure = templateOverview(ground, tiling, sheet.inner, sheet.bottom - y - 2)
  sheet.figure(
    figure,
    sheet.left + (sheet.inner - figure.width) / 2,
    y,
    FIGURE_WORDS.template(job.plan, tiling.sheets.length),
  )
  const name = ground.reverse ? WORDS.overviewReversed : WORDS.overview
  const first: Draft = { section: 'overview', name, bookmarks: [name], sheet }
  return hasKey ? [first] : [first, ...keyPages(job)]
}

/** Both test squares; returns the y below. */
function squares(sheet: Sheet, y: number): number {
  const { metric, imperial } = WORDS.squares
  sheet.figure(testSquare(SQUARE, metric), sheet.left, y, FIGURE_WORDS.square(metric))
  const inch = testSquare(MM_PER_INCH, imperial)
  const top = y + SQUARE - inch.height
  sheet.figure(inch, sheet.left + SQUARE + GAP, top, FIGURE_WORDS.square(imperial))
  return y + SQUARE
}

function tilePage(
  job: Job,
  ground: TemplateGround,
  tiling: TemplateTiling,
  placed: readonly PlacedTile[],
  landscape: boolean,
): Draft {
  const sheet = newSheet(job, landscape)
  const tiles = placed.map(({ tile }) => tile)
  const title = WORDS.tile(tiles)
  const y = sheet.text(title + (ground.reverse ? WORDS.tileReversed : ''), sheet.left, sheet.top, {
    size: TYPE.heading + 3,
    weight: 'bold',
    as: 'H1',
  })
  sheet.text(WORDS.print, sheet.left, y, { size: TYPE.table })
  if (tiling.places.length > 1) {
    const key = templateKey(ground, tiling, tiles, KEY.width, KEY.height)
    const alt = FIGURE_WORDS.templateKey(tiles.map(tileName).join(', '))
    sheet.figure(key, sheet.right - key.width, sheet.top, alt)
  }
  for (const { tile, x, y } of placed) {
    const [left, top] = [sheet.left + x, sheet.top + HEAD + y]
    const figure = templateTileFigure(ground, tiling, tile, job.measure)
    sheet.figure(figure, left, top, FIGURE_WORDS.window(tileName(tile)))
    // Beyond the first tick, in the room that the ticks have.
    if (tiles.length > 1) sheet.text(tileName(tile), left + NAME.x, top + NAME.y, NAME.style)
  }
  const name = `Sheet ${tiles.map(tileName).join(', ')}`
  return { section: 'template', name, bookmarks: [title], sheet }
}

/** Each motif with the colourways that it is placed in. */
function motifsOf(job: Job) {
  const ways = new Map(job.settled.colourways.map((way) => [way.id, way.motif]))
  return job.plan.accounts.map((account) => ({
    account,
    marks: job.ground.marks.filter((mark) => ways.get(mark.id) === account.id),
  }))
}
