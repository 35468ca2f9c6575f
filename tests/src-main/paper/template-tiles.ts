/** A printed template as somebody puts it together: its windows, and how they lie beside each other. */
import { expect } from 'vitest'
import type { ReadPdf } from './read-pdf'
import { boxOfPoints } from './read-paths'
import type { Box, ReadPath } from './read-paths'

export interface Tile {
  readonly row: number
  readonly column: number
  /** The page it stands on, and its window there. */
  readonly page: number
  readonly window: Box
  readonly paths: readonly ReadPath[]
}

export const size = ({ left, top, right, bottom }: Box) => [right - left, bottom - top] as const

export const sameBox = (a: Box, b: Box): boolean =>
  Math.abs(a.left - b.left) + Math.abs(a.top - b.top) < 0.05 &&
  Math.abs(a.right - b.right) + Math.abs(a.bottom - b.bottom) < 0.05

export const isWithin = (inner: Box, outer: Box): boolean =>
  inner.left >= outer.left - 0.05 &&
  inner.right <= outer.right + 0.05 &&
  inner.top >= outer.top - 0.05 &&
  inner.bottom <= outer.bottom + 0.05

/** The windows of a template: of every page that names its row and column, or that names its parts, each of them. */
export function tilesOf(read: ReadPdf, paths: readonly (readonly ReadPath[])[]): Tile[] {
  return read.pages.flatMap((page, i) => {
    const alone = /^Row (\d+), column (\d+)/.exec(page.words.trim())
    if (!alone && !/^Parts \d/.test(page.words.trim())) return []
    const clipped = paths[i]!.filter((path) => path.clip)
    // The folds of the panel are drawn in every window.
    const windows: Box[] = []
    for (const { clip, points, dashed, width } of clipped)
      if (points.length === 2 && dashed && width < 0.16 && !windows.some((window) => sameBox(window, clip!)))
        windows.push(clip!)
    return windows.map((window): Tile => {
      const name = page.texts.find(
        ({ text, x, y }) =>
          /^\d+·\d+$/.test(text) &&
          Math.abs(x - window.left - 8) < 1 &&
          window.top - y > 0 &&
          window.top - y < 5,
      )
      const [row, column] = (alone?.slice(1) ?? name!.text.split('·')).map(Number) as [number, number]
      return { row, column, page: i, window, paths: clipped.filter(({ clip }) => isWithin(clip!, window)) }
    })
  })
}

/** The middles of the diamonds that stand in a window, which two neighbours share. */
export function diamondsIn(tile: Tile, paths: readonly (readonly ReadPath[])[]): { x: number; y: number }[] {
  return paths[tile.page]!.flatMap(({ points, clip, stroked }) => {
    const box = boxOfPoints(points)
    const isDiamond =
      !clip &&
      stroked &&
      points.length === 4 &&
      Math.abs(box.right - box.left - 6) < 0.05 &&
      Math.abs(box.bottom - box.top - 6) < 0.05
    return isDiamond && isWithin(box, tile.window)
      ? [{ x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 }]
      : []
  })
}

/** Lays windows that overlap by so many mm together by their diamonds: where the panel's top left lies on the page of each. */
export function laidTogether(tiles: readonly Tile[], paths: readonly (readonly ReadPath[])[], overlap = 10) {
  const half = overlap / 2
  const first = tiles.find(({ row, column }) => row === 1 && column === 1)!
  const origins = new Map([[first, { x: first.window.left + 3, y: first.window.top + 3 }]])
  const queue = [first]
  for (const tile of queue) {
    const own = diamondsIn(tile, paths)
    for (const [down, across] of [
      [0, 1],
      [0, -1],
      [1, 0],
      [-1, 0],
    ] as const) {
      const next = tiles.find(({ row, column }) => row === tile.row + down && column === tile.column + across)
      if (!next || origins.has(next)) continue
      const edge = (window: Box, side: number): number =>
        across !== 0
          ? side > 0
            ? window.right - half
            : window.left + half
          : side > 0
            ? window.bottom - half
            : window.top + half
      const on = (list: typeof own, window: Box, side: number) =>
        list.filter((at) => Math.abs((across !== 0 ? at.x : at.y) - edge(window, side)) < 0.05)
      const here = on(own, tile.window, across + down)
      const there = on(diamondsIn(next, paths), next.window, -across - down)
      expect(here.length, `${tile.row}·${tile.column} and ${next.row}·${next.column}`).toBeGreaterThan(0)
      expect(there).toHaveLength(here.length)
      const at = origins.get(tile)!
      origins.set(next, { x: at.x + there[0]!.x - here[0]!.x, y: at.y + there[0]!.y - here[0]!.y })
      queue.push(next)
    }
  }
  return origins
}
