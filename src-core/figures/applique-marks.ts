/** The items of a template: outline, centre, petal 1, number and name, each where it can be read. */
import polylabel from 'polylabel'
import { clockwise, intersection } from '../geometry/polygons'
import { contains } from '../geometry/points'
import type { Outline } from '../geometry/points'
import type { TemplateGround, TemplateItem } from './applique-ground'
import { bandItems } from './applique-look'
import type { Bounds, FigureItem, MeasureText, TextItem } from './figure'
import { drawPath, drawText, INK, MM_PER_POINT, PAPER, QUIET_INK } from './figure'
import { capitalDrop } from './lettering'
import { crossPath, overlap, polygonPath } from './path'
import { inkBox, paperUnder } from './text-box'

const NUMBER = 11
const SMALL_NUMBER = 8.5
const NAME = 8
const FIRST = 8
/** Half of the cross in a centre, in mm. */
const CROSS = 3
const WRONG_SIDE = 'wrong side up'

const inView = (view: Bounds, x: number, y: number, room: number): boolean =>
  x >= view.x + room &&
  x <= view.x + view.width - room &&
  y >= view.y + room &&
  y <= view.y + view.height - room

/** Whether something so wide stands between the sides of a view. */
const inSpan = (view: Bounds, x: number, half: number): boolean =>
  x - half >= view.x && x + half <= view.x + view.width

const meets = (view: Bounds, box: Bounds): boolean =>
  box.x < view.x + view.width &&
  box.x + box.width > view.x &&
  box.y < view.y + view.height &&
  box.y + box.height > view.y

/**
 * What a window shows of the items, the lowest first. Numbers and names keep off `taken` (marks that sheets are laid
 * together by) and off each other, and stand on paper, so that no line runs through them.
 */
export function templateItems(
  ground: TemplateGround,
  view: Bounds,
  measure: MeasureText,
  taken: readonly Bounds[] = [],
): FigureItem[] {
  const shown = ground.items.filter((item) => meets(view, item.bounds))
  const outlines = shown.flatMap((item) => [
    drawPath(polygonPath(item.outline), { fill: PAPER }),
    ...bandItems(item),
    drawPath(polygonPath(item.outline), { stroke: INK, width: 0.35 }),
  ])
  // What lies under something else is dashed where that covers it.
  const hidden = shown
    .filter((item) => item.covered)
    .map((item) => drawPath(polygonPath(item.outline), { stroke: QUIET_INK, width: 0.2, dash: [1.5, 1.2] }))
  const marks = shown.flatMap((item) => [centreMark(item), ...firstMark(item)])
  const boxes = [...taken]
  const texts: TextItem[] = []
  const put = (list: readonly TextItem[]): void => {
    texts.push(...list)
    boxes.push(...list.map((text) => inkBox(text, measure)))
  }
  const isFree = (list: readonly TextItem[]): boolean =>
    list.every((text) => {
      const box = inkBox(text, measure)
      return !boxes.some((each) => overlap(each, box))
    })
  for (const item of shown) {
    const number = firstNumber(item, view)
    if (number && isFree([number])) put([number])
  }
  for (const item of shown) {
    const ways = labels(item, view, measure)
    const way = ways.find(isFree) ?? ways[0]
    if (way) put(way)
  }
  return [
    ...outlines,
    ...hidden,
    ...marks,
    ...texts.flatMap((text) => [paperUnder(inkBox(text, measure)), text]),
  ]
}

const centreMark = ({ centre }: TemplateItem): FigureItem =>
  drawPath(crossPath(centre.x, centre.y, CROSS), { stroke: INK, width: 0.25 })

/** Where petal 1 is, as seen from the centre. */
function toFirst({ centre, first }: TemplateItem) {
  const [dx, dy] = [first.x - centre.x, first.y - centre.y]
  const reach = Math.hypot(dx, dy)
  const [ux, uy] = reach > 0 ? [dx / reach, dy / reach] : [0, 0]
  const at = (along: number, aside: number) => ({
    x: centre.x + ux * along - uy * aside,
    y: centre.y + uy * along + ux * aside,
  })
  const tip = reach - Math.min(1, reach * 0.1)
  return { reach, at, tip, size: Math.min(2.6, reach * 0.2) }
}

/** An arrowhead that ends in petal 1. */
function firstMark(item: TemplateItem): FigureItem[] {
  const { reach, at, tip, size } = toFirst(item)
  if (reach < 4) return []
  const arrow = polygonPath([at(tip, 0), at(tip - size, size * 0.55), at(tip - size, -size * 0.55)])
  return [drawPath(arrow, { fill: INK })]
}

/** The 1 behind the arrowhead. On small motifs the centre's own number stands where this one would. */
function firstNumber(item: TemplateItem, view: Bounds): TextItem | null {
  const { reach, at, tip, size } = toFirst(item)
  const number = at(tip - size - 2, 0)
  if (reach <= 13 || !inView(view, number.x, number.y, 1.6)) return null
  return drawText('1', number.x, number.y + capitalDrop(FIRST), FIRST, { anchor: 'middle' })
}

/** Ways to write number and name beside the centre, the best first; on a sheet that shows but a part, the number alone. */
function labels(item: TemplateItem, view: Bounds, measure: MeasureText): TextItem[][] {
  const { centre } = item
  const side = 1.2
  const line = NAME * 1.3 * MM_PER_POINT
  const lines = item.flipped ? [item.name, WRONG_SIDE] : [item.name]
  const widest = Math.max(...lines.map((text) => measure(text, NAME, 'regular')))
  const number = measure(item.label, NUMBER, 'bold')
  const fits = inView(view, centre.x, centre.y, Math.max(CROSS, number + side + 1, lines.length * line + 5))
  if (fits) {
    const room = 2 * clearance(item, lines.length * line + 3)
    const whole = inView(view, centre.x, centre.y, widest / 2 + 1)
    // A name that has no room is told in the list; that the wrong side is up is told wherever it can be read.
    const told = lines.map((text) => (whole && (widest <= room || text === WRONG_SIDE) ? text : ''))
    const below = centre.y + CROSS + line * 0.8
    const above = centre.y - CROSS - line * (lines.length - 1) - 1.2
    const names = (top: number): TextItem[] =>
      told.flatMap((text, i) =>
        text === '' ? [] : [drawText(text, centre.x, top + i * line, NAME, { anchor: 'middle' })],
      )
    const capital = 2 * capitalDrop(NUMBER)
    return QUARTERS.map(([right, up]) => {
      const y = up ? centre.y - 1.1 : centre.y + 1.1 + capital
      return [...numberAndLetter(item, right, side, y, measure), ...names(up ? below : above)]
    })
  }
  const part = widestPlace(item.outline, view)
  if (!part) return []
  // Not on the cross, where the centre is on this sheet but near its end.
  const crossed = Math.hypot(part.x - centre.x, part.y - centre.y) < 2 * CROSS
  const at = crossed ? { x: centre.x, y: centre.y - CROSS - 2 - (item.flipped ? line : 0) } : part
  const half = measure(WRONG_SIDE, NAME, 'regular') / 2 + 1
  return NEARBY.flatMap(([dx, dy]) => {
    const [x, y] = [at.x + dx, at.y + dy]
    if ((dx !== 0 || dy !== 0) && !(contains(item.outline, { x, y }) && inView(view, x, y, LEAST_ROOM)))
      return []
    const told = item.flipped && inView(view, x, y + line, 2) && inSpan(view, x, half)
    return [
      [
        ...partLabel(item, x, y, view, measure),
        ...(told ? [drawText(WRONG_SIDE, x, y + capitalDrop(NAME) + line, NAME, { anchor: 'middle' })] : []),
      ],
    ]
  })
}

/** Whether the ink of a text lies within the outline of an item. */
function isInside({ outline }: TemplateItem, text: TextItem, measure: MeasureText): boolean {
  const { x, y, width, height } = inkBox(text, measure)
  return [x, x + width].every((left) =>
    [y, y + height].every((top) => contains(outline, { x: left, y: top })),
  )
}

/** mm between a number and its letter. */
const LETTER_GAP = 0.9

/** Number and letter on one side of the cross; the letter on its other side, or left out, where it would run out. */
function numberAndLetter(
  item: TemplateItem,
  right: boolean,
  side: number,
  y: number,
  measure: MeasureText,
): TextItem[] {
  const code = item.mark?.code ?? ''
  const way = right ? 1 : -1
  const start = item.centre.x + way * side
  const [from, to] = right ? (['start', 'end'] as const) : (['end', 'start'] as const)
  const number = (x: number): TextItem => drawText(item.label, x, y, NUMBER, { weight: 'bold', anchor: from })
  if (code === '') return [number(start)]
  // "3 B" from left to right, whichever side of the cross it stands on.
  const first = right ? measure(item.label, NUMBER, 'bold') : measure(code, NUMBER, 'regular')
  const second = start + way * (first + LETTER_GAP)
  const together = right
    ? [number(start), drawText(code, second, y, NUMBER, { anchor: from })]
    : [number(second), drawText(code, start, y, NUMBER, { anchor: from })]
  if (together.every((text) => isInside(item, text, measure))) return together
  const across = drawText(code, item.centre.x - way * side, y, NUMBER, { anchor: to })
  return isInside(item, across, measure) ? [number(start), across] : [number(start)]
}

/** The number in what a sheet shows of an item, its letter behind it where that is on the item and the sheet. */
function partLabel(item: TemplateItem, x: number, y: number, view: Bounds, measure: MeasureText): TextItem[] {
  const baseline = y + capitalDrop(SMALL_NUMBER)
  const number = drawText(item.label, x, baseline, SMALL_NUMBER, { anchor: 'middle', weight: 'bold' })
  const from = x + measure(item.label, SMALL_NUMBER, 'bold') / 2 + LETTER_GAP
  const letter = drawText(item.mark?.code ?? '', from, baseline, SMALL_NUMBER)
  const end = from + measure(letter.text, SMALL_NUMBER, 'regular') + 0.5
  const hasRoom = letter.text !== '' && end <= view.x + view.width && isInside(item, letter, measure)
  return hasRoom ? [number, letter] : [number]
}

/** Beside the cross: to its right or left, above or below its arm. */
const QUARTERS = [
  [true, true],
  [false, true],
  [true, false],
  [false, false],
] as const

/** mm from where a number would stand best. */
const NEARBY = [0, 4, 7].flatMap((step): (readonly [number, number])[] =>
  step === 0
    ? [[0, 0]]
    : [
        [0, -step],
        [0, step],
        [-step, 0],
        [step, 0],
      ],
)

/** Half of the width that the outline has so far below its centre. */
function clearance({ outline, centre }: TemplateItem, below: number): number {
  const y = centre.y + below
  let half = Infinity
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length]!
    if (a.y > y === b.y > y) return
    half = Math.min(half, Math.abs(a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x) - centre.x))
  })
  return Number.isFinite(half) ? half : 0
}

/** The middle of the largest circle in what a view shows of an outline, if a number fits there. */
function widestPlace(outline: Outline, view: Bounds): { x: number; y: number } | null {
  const window = [
    { x: view.x, y: view.y },
    { x: view.x + view.width, y: view.y },
    { x: view.x + view.width, y: view.y + view.height },
    { x: view.x, y: view.y + view.height },
  ]
  let best: { x: number; y: number; room: number } | null = null
  for (const piece of intersection([clockwise(outline)], [window])) {
    const pole = polylabel([piece.map((p): [number, number] => [p.x, p.y])], 0.5)
    if (pole.distance > (best?.room ?? LEAST_ROOM)) best = { x: pole[0]!, y: pole[1]!, room: pole.distance }
  }
  return best
}

/** mm. A number of two figures stands in a circle of this radius. */
const LEAST_ROOM = 2.6
