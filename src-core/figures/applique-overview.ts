/** The whole panel in small with every item numbered, and the sheets that the template is printed on. */
import type { TemplateGround } from './applique-ground'
import type { TemplateTiling } from './applique-tiles'
import { cutBox, tileName } from './applique-tiles'
import type { Figure, FigureItem } from './figure'
import { drawPath, drawText, INK, MM_PER_POINT, PAPER, QUIET_INK } from './figure'
import { CAPITAL_HEIGHT, SMALLEST_TYPE } from './lettering'
import { polygonPath, rectanglePath, simplify } from './path'

const NUMBER = 9
const RIM = 3

/** Fits a box of printed mm; never larger than life. */
export function templateOverview(
  ground: TemplateGround,
  tiling: TemplateTiling,
  width: number,
  height: number,
): Figure & { readonly scale: number } {
  const scale = Math.min(1, width / (ground.width + 2 * RIM), height / (ground.height + 2 * RIM))
  const at = (value: number): number => (value + RIM) * scale
  const line = (outline: readonly { x: number; y: number }[]) =>
    polygonPath(simplify(outline, 0.015 / scale).map(({ x, y }) => ({ x: at(x), y: at(y) })))
  const items: FigureItem[] = ground.inner.map((inner) =>
    drawPath(line(inner), { stroke: QUIET_INK, width: 0.15, dash: [1.2, 0.8] }),
  )
  items.push(drawPath(line(ground.edge), { stroke: INK, width: 0.3 }))
  for (const item of ground.items)
    items.push(drawPath(line(item.outline), { fill: PAPER, stroke: INK, width: 0.22 }))
  if (tiling.places.length > 1) items.push(...frames(tiling, scale))
  for (const { label, centre, bounds } of ground.items) {
    const room = Math.min(bounds.width, bounds.height) * scale
    const size = room > 8 ? NUMBER : SMALLEST_TYPE
    const y = at(centre.y) + (size * CAPITAL_HEIGHT * MM_PER_POINT) / 2
    items.push(drawText(label, at(centre.x), y, size, { anchor: 'middle', weight: 'bold' }))
  }
  return {
    width: (ground.width + 2 * RIM) * scale,
    height: (ground.height + 2 * RIM) * scale,
    items,
    scale,
  }
}

/** The sheets as they are cut, each with its name in a corner. */
function frames(tiling: TemplateTiling, scale: number): FigureItem[] {
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
    const wide = 1.6 + name.length * 1.3
    return [
      frame,
      drawPath(rectanglePath(x, y, wide + 1.2, 4.2), { fill: PAPER, stroke: QUIET_INK, width: 0.15 }),
      drawText(name, x + (wide + 1.2) / 2, y + 3.05, 7.5, { anchor: 'middle', colour: QUIET_INK }),
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
