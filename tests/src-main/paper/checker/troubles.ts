/** What is wrong with a printed page, as sentences: an empty list is a page that can be followed. */
import type { Box, Painted, PaintedPath, PaintedSheet, PaintedText, Point } from './read-sheets'

/** mm. Ink that comes nearer than its own blur is one blot; what merely touches is let be. */
const TOUCH = 0.12
/** mm. A shape no larger than this under a text is the disc or the box that the text stands in. */
const LARGEST_DISC = 14

const shrunk = ({ left, top, right, bottom }: Box, by: number): Box => ({
  left: left + by,
  top: top + by,
  right: right - by,
  bottom: bottom - by,
})

const apart = (a: Box, b: Box): boolean =>
  a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top

const within = (inner: Box, outer: Box, slack = 0.05): boolean =>
  inner.left >= outer.left - slack &&
  inner.right <= outer.right + slack &&
  inner.top >= outer.top - slack &&
  inner.bottom <= outer.bottom + slack

/** Shares of the way of a line within a box, its middle first. */
const ALONG = [1 / 2, 1 / 4, 3 / 4, 1 / 8, 3 / 8, 5 / 8, 7 / 8] as const

/** Where a line runs within a box, as points of it; none where it does not (Liang and Barsky's clipping, 1984). */
function crossing(a: Point, b: Point, box: Box): Point[] {
  const [dx, dy] = [b.x - a.x, b.y - a.y]
  let [from, to] = [0, 1]
  for (const [p, q] of [
    [-dx, a.x - box.left],
    [dx, box.right - a.x],
    [-dy, a.y - box.top],
    [dy, box.bottom - a.y],
  ] as const) {
    if (p === 0) {
      if (q <= 0) return []
    } else if (p < 0) from = Math.max(from, q / p)
    else to = Math.min(to, q / p)
  }
  if (from >= to) return []
  return ALONG.map((share) => from + share * (to - from)).map((t) => ({ x: a.x + t * dx, y: a.y + t * dy }))
}

const holds = (box: Box, { x, y }: Point): boolean =>
  x >= box.left && x <= box.right && y >= box.top && y <= box.bottom

/** Whether a point lies within lines (even and odd crossings; holes are rare on these pages). */
function encloses(lines: PaintedPath['lines'], point: Point): boolean {
  let inside = false
  for (const line of lines)
    for (let i = 0, j = line.length - 1; i < line.length; j = i++) {
      const [a, b] = [line[i]!, line[j]!]
      if (a.y > point.y !== b.y > point.y && point.x < ((b.x - a.x) * (point.y - a.y)) / (b.y - a.y) + a.x)
        inside = !inside
    }
  return inside
}

/** Whether what a path is clipped to shows a point of it. */
const shows = ({ clip, clips }: PaintedPath, point: Point): boolean =>
  (!clip || holds(clip, point)) && clips.every((lines) => encloses(lines, point))

/** Whether a filled path covers a point. */
const covers = (path: PaintedPath, point: Point): boolean =>
  holds(path.box, point) && encloses(path.lines, point) && shows(path, point)

const grey = (colour: string): boolean => {
  const channels = [colour.slice(1, 3), colour.slice(3, 5), colour.slice(5, 7)]
  return new Set(channels).size === 1
}

const lightness = (colour: string): number => parseInt(colour.slice(1, 3), 16) / 255

const quoted = ({ text }: PaintedText): string => `“${text.trim()}”`

/** Texts that are cut off, that stand on each other, or that a line runs through. */
export function troublesOf(sheet: PaintedSheet, { ink }: { readonly ink: boolean }): string[] {
  const { painted } = sheet
  const troubles: string[] = []
  const texts = painted.flatMap((item, order) => (item.kind === 'text' ? [{ item, order }] : []))
  for (const { item } of texts) {
    if (item.text.includes('…')) troubles.push(`cut off: ${quoted(item)}`)
    if (item.clip && !within(item.box, item.clip) && !apart(item.box, item.clip))
      troubles.push(`clipped: ${quoted(item)}`)
  }
  if (ink) troubles.push(...coloured(painted))
  const seen = texts.filter(({ item }) => !item.clip || !apart(item.box, item.clip))
  troubles.push(...textOnText(seen.map(({ item }) => item)))
  for (const { item, order } of seen) {
    const disc = discOf(item, order, painted)
    if (disc?.clip && !within(disc.box, disc.clip)) troubles.push(`clipped disc: ${quoted(item)}`)
  }
  troubles.push(...textOnLine(seen, painted), ...lonelyHeadings(sheet))
  return [...new Set(troubles)]
}

/** mm that no ink comes nearer to the edge than, and what rounding takes of it. */
const MARGIN = 12
const ROUNDED = 0.02
/** mm. Half of so thin a line may lie in it: that round a swatch, or the outline of a drawing. */
const THIN = 0.2

/** What is painted nearer than 12 mm to an edge, where printers may leave it out. */
export function beyondMargin({ painted, width, height }: PaintedSheet): string[] {
  const inside = { left: MARGIN, top: MARGIN, right: width - MARGIN, bottom: height - MARGIN }
  return painted.flatMap((item) => {
    const pen = item.kind === 'path' && item.stroked ? item.width / 2 : 0
    const inked = shrunk(item.box, -pen)
    const box = item.clip
      ? {
          left: Math.max(inked.left, item.clip.left),
          top: Math.max(inked.top, item.clip.top),
          right: Math.min(inked.right, item.clip.right),
          bottom: Math.min(inked.bottom, item.clip.bottom),
        }
      : inked
    if (box.left > box.right || box.top > box.bottom || within(box, inside, ROUNDED + Math.min(pen, THIN)))
      return []
    const edges = Object.values(box).map((value) => value.toFixed(1))
    return [`beyond the margin: ${item.kind === 'text' ? quoted(item) : 'a path'} at ${edges.join(', ')} mm`]
  })
}

function coloured(painted: readonly Painted[]): string[] {
  const colours = painted.flatMap((item) =>
    item.kind === 'text'
      ? []
      : [...(item.filled ? [item.fill] : []), ...(item.stroked ? [item.stroke] : [])].filter(
          (colour) => !grey(colour),
        ),
  )
  return colours.length > 0 ? [`coloured in ink: ${[...new Set(colours)].join(' ')}`] : []
}

/** Points from which on a text is a heading; mm that belong to the footer. */
const HEADING = 12.4
const FOOTER = 21

/** Headings below which nothing of their column follows, neither words nor drawings. */
function lonelyHeadings({ painted, height }: PaintedSheet): string[] {
  const end = height - FOOTER
  const body = painted.filter(({ box }) => box.bottom < end + 1)
  return body.flatMap((item) => {
    if (item.kind !== 'text' || item.size < HEADING) return []
    const { box } = item
    const follows = body.some(
      (other) =>
        other !== item &&
        other.box.bottom > box.bottom + 1 &&
        other.box.left < box.right + 60 &&
        other.box.right > box.left - 1,
    )
    return follows ? [] : [`a heading at the foot: ${quoted(item)}`]
  })
}

/** Boxes that overlap, found along the page from top to bottom. */
function textOnText(texts: readonly PaintedText[]): string[] {
  const sorted = texts
    .map((item) => ({ item, box: shrunk(item.box, TOUCH) }))
    .sort((a, b) => a.box.top - b.box.top)
  const troubles: string[] = []
  sorted.forEach((one, i) => {
    for (let k = i + 1; k < sorted.length && sorted[k]!.box.top < one.box.bottom; k++)
      if (!apart(one.box, sorted[k]!.box))
        troubles.push(`on each other: ${quoted(one.item)} and ${quoted(sorted[k]!.item)}`)
  })
  return troubles
}

/** The shape that a text stands in: the last small one that was filled under all of it. */
function discOf(text: PaintedText, order: number, painted: readonly Painted[]): PaintedPath | null {
  for (let i = order - 1; i >= 0 && i > order - 40; i--) {
    const item = painted[i]!
    if (item.kind === 'text' || !item.filled || lightness(item.fill) < 0.99) continue
    const { box } = item
    if (box.right - box.left > LARGEST_DISC || box.bottom - box.top > LARGEST_DISC) continue
    if (within(text.box, box)) return item
  }
  return null
}

/** Cells of a grid over the page in which texts are looked for. mm. */
const CELL = 12

function textOnLine(
  texts: readonly { readonly item: PaintedText; readonly order: number }[],
  painted: readonly Painted[],
): string[] {
  const grid = new Map<string, number[]>()
  const boxes = texts.map(({ item }) => shrunk(item.box, TOUCH))
  const cells = (box: Box): string[] => {
    const list: string[] = []
    for (let x = Math.floor(box.left / CELL); x <= Math.floor(box.right / CELL); x++)
      for (let y = Math.floor(box.top / CELL); y <= Math.floor(box.bottom / CELL); y++) list.push(`${x},${y}`)
    return list
  }
  boxes.forEach((box, i) => {
    for (const cell of cells(box)) grid.set(cell, [...(grid.get(cell) ?? []), i])
  })
  const hits: { text: number; order: number; place: Point }[] = []
  painted.forEach((item, order) => {
    if (item.kind === 'text' || !item.stroked || lightness(item.stroke) > 0.9) return
    if (item.clip && apart(item.box, item.clip)) return
    const near = new Set(cells(item.box).flatMap((cell) => grid.get(cell) ?? []))
    for (const index of near) {
      const box = boxes[index]!
      if (!crossesBox(item.box, box)) continue
      for (const line of item.lines)
        for (let k = 1; k < line.length; k++) {
          const place = crossing(line[k - 1]!, line[k]!, box).find((each) => shows(item, each))
          if (place) hits.push({ text: index, order, place })
        }
    }
  })
  if (hits.length === 0) return []
  const fills = painted.flatMap((item, order) =>
    item.kind === 'path' && item.filled ? [{ item, order }] : [],
  )
  const troubles = new Set<string>()
  for (const { text, order, place } of hits) {
    // Paint that came after the line, and under the text, hides it.
    const hidden = fills.some(
      (fill) => fill.order > order && fill.order < texts[text]!.order && covers(fill.item, place),
    )
    if (!hidden)
      troubles.add(
        `a line through ${quoted(texts[text]!.item)} at ${place.x.toFixed(1)}, ${place.y.toFixed(1)} mm`,
      )
  }
  return [...troubles]
}

/** Boxes of lines may have no height or no width. */
const crossesBox = (a: Box, b: Box): boolean =>
  a.right >= b.left && b.right >= a.left && a.bottom >= b.top && b.bottom >= a.top

/** What the middle of a page's foot calls it, without what tells it from others of its part. */
function partOf({ painted, height }: PaintedSheet): string {
  const foot = painted.flatMap((item) =>
    item.kind === 'text' && item.box.bottom > height - FOOTER ? [item] : [],
  )
  const [, middle] = [...foot].sort((a, b) => a.box.left - b.box.left)
  return (middle?.text ?? '').trim().replace(/,.*| \d.*/, '')
}

/** mm from the top at which a page ends above its foot. */
function endOf({ painted, height }: PaintedSheet): number {
  const end = height - FOOTER
  return Math.max(
    0,
    ...painted.flatMap(({ box, clip }) =>
      box.bottom < end + 1
        ? [Math.min(box.bottom, clip?.bottom ?? Infinity)]
        : clip
          ? [Math.min(clip.bottom, end)]
          : [],
    ),
  )
}

/** Pages that are less than half full though another of their part follows, as sentences. */
export function emptyPages(pages: readonly PaintedSheet[]): string[] {
  return pages.flatMap((page, i) => {
    const next = pages[i + 1]
    const part = partOf(page)
    if (!next || part === '' || partOf(next) !== part) return []
    const lowest = endOf(page)
    return lowest < page.height / 2 ? [`page ${i + 1}, ${part}, ends at ${lowest.toFixed(0)} mm`] : []
  })
}

/** Pages, but the last of all, that hold next to nothing: less than a third of their height, as sentences. */
export function sparsePages(pages: readonly PaintedSheet[]): string[] {
  return pages.slice(0, -1).flatMap((page, i) => {
    const lowest = endOf(page)
    return lowest < page.height / 3
      ? [`page ${i + 1}, ${partOf(page)}, holds no more than ${lowest.toFixed(0)} mm`]
      : []
  })
}
