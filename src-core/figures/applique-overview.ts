/** The whole panel in small with every item numbered, and the sheets that the template is printed on. */
import { simplify } from '../geometry/simplify'
import type { Outline } from '../geometry/points'
import { itemWords } from './applique-ground'
import type { TemplateGround } from './applique-ground'
import { filledItems } from './applique-look'
import type { TemplateTiling } from './applique-windows'
import { cutBox, tileName } from './applique-tiles'
import { TOLERANCE } from './detail'
import type { Bounds, Figure, FigureItem } from './figure'
import { drawPath, drawText, INK, MM_PER_POINT, PAPER, QUIET_INK } from './figure'
import { capitalDrop, FIGURE_WIDTH, SMALLEST_TYPE } from './lettering'
import { panelItems } from './panel'
import type { PanelLook } from './panel'
import { overlap, polygonPath, rectanglePath } from './path'
import { paperUnder } from './text-box'

const NUMBER = 9
/** The panel in small. */
const PANEL: PanelLook = {
  edge: { stroke: INK, width: 0.3 },
  seam: { stroke: QUIET_INK, width: 0.15, dash: [1.2, 0.8] },
}
const RIM = 3
/** Printed mm across an item from which it has room for its letter too. */
const LETTERED = 9

/** Fits a box of printed mm; never larger than life. */
export function templateOverview(
  ground: TemplateGround,
  tiling: TemplateTiling,
  width: number,
  height: number,
): Figure & { readonly scale: number } {
  const scale = Math.min(1, width / (ground.width + 2 * RIM), height / (ground.height + 2 * RIM))
  const at = (value: number): number => (value + RIM) * scale
  const place = (outline: Outline): Outline =>
    simplify(outline, TOLERANCE.print / scale).map(({ x, y }) => ({ x: at(x), y: at(y) }))
  const line = (outline: Outline) => polygonPath(place(outline))
  const items = panelItems(ground, PANEL, place)
  for (const item of ground.items)
    items.push(
      drawPath(line(item.outline), { fill: PAPER }),
      ...filledItems(item, place, scale),
      drawPath(line(item.outline), { stroke: INK, width: 0.22 }),
    )
  const numbers = ground.items.map((item) => {
    const { centre, bounds } = item
    const room = Math.min(bounds.width, bounds.height) * scale
    // Where a letter has no room the texture tells the colourway, and the list names it.
    const label = room > LETTERED ? itemWords(item) : item.label
    const size = room > 8 ? NUMBER : SMALLEST_TYPE
    const [x, y] = [at(centre.x), at(centre.y)]
    const high = 2 * capitalDrop(size)
    const wide = label.length * size * FIGURE_WIDTH * MM_PER_POINT
    const text = drawText(label, x, y + high / 2, size, { anchor: 'middle', weight: 'bold' })
    return { text, box: { x: x - wide / 2, y: y - high / 2, width: wide, height: high } }
  })
  const boxes = numbers.map(({ box }) => box)
  if (tiling.places.length > 1) items.push(...frames(tiling, scale, boxes))
  // A little paper keeps frames and outlines off the number.
  for (const { text, box } of numbers) items.push(paperUnder(box), text)
  return {
    width: (ground.width + 2 * RIM) * scale,
    height: (ground.height + 2 * RIM) * scale,
    items,
    scale,
  }
}

/** The sheets as they are cut, each with its name in a corner where no number stands. */
function frames(tiling: TemplateTiling, scale: number, taken: readonly Bounds[]): FigureItem[] {
  const printed = new Set(tiling.tiles)
  return tiling.places.flatMap((place): FigureItem[] => {
    const box = cutBox(tiling, place)
    const [x, y] = [(box.x + RIM) * scale, (box.y + RIM) * scale]
    const frame = drawPath(rectanglePath(x, y, box.width * scale, box.height * scale), {
      stroke: QUIET_INK,
      width: 0.2,
      dash: [2, 1],
    })
    if (!printed.has(place)) return [frame]
    const name = tileName(place)
    const [wide, high] = [2.8 + name.length * 1.3, 4.2]
    const [right, bottom] = [x + box.width * scale - wide, y + box.height * scale - high]
    const corners = [
      [x, y],
      [right, y],
      [x, bottom],
      [right, bottom],
    ] as const
    const free = corners.find(
      ([left, top]) => !taken.some((each) => overlap(each, { x: left, y: top, width: wide, height: high })),
    )
    const [left, top] = free ?? corners[0]
    return [
      frame,
      drawPath(rectanglePath(left, top, wide, high), { fill: PAPER, stroke: QUIET_INK, width: 0.15 }),
      drawText(name, left + wide / 2, top + 3.05, 7.5, { anchor: 'middle', colour: QUIET_INK }),
    ]
  })
}

/** A square to measure after printing, its size written in it. */
export function testSquare(side: number, words: string): Figure {
  return {
    width: side,
    height: side,
    items: [
      drawPath(rectanglePath(0, 0, side, side), { stroke: INK, width: 0.25 }),
      drawText(words, side / 2, side / 2 + 1.2, 9, { anchor: 'middle' }),
    ],
  }
}
