import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Plan } from '../../../shared-types/plan'
import type { Paper, Project } from '../../../shared-types/project'
import { templateGround } from '../../../src-core/figures/applique-ground'
import type { TemplateGround } from '../../../src-core/figures/applique-ground'
import { tileTemplate } from '../../../src-core/figures/applique-windows'
import { placeOutline } from '../../../src-core/geometry/place'
import { contains, distanceToEdge } from '../../../src-core/geometry/points'
import { planProject } from '../../../src-core/plan'
import { mapPages, renderMap } from '../../../src-main/paper/index'
import { record } from '../../src-core/figures/recorder'
import { inSpelling } from '../../../src-core/stitches/spelling'
import { DATE, VERSION } from './projects'
import { readPdf } from './read-pdf'
import type { ReadPdf } from './read-pdf'
import { boxOfPoints, readPaths } from './read-paths'
import { size, isWithin, tilesOf, diamondsIn, laidTogether } from './template-tiles'
import type { Tile } from './template-tiles'
import type { Box, ReadPath } from './read-paths'

const example = (name: string): Project =>
  JSON.parse(readFileSync(new URL(`../../../examples/${name}.petalyard`, import.meta.url), 'utf8')) as Project

/** Distance of a point from the line of a path as printed, closed. */
function toLine(point: { x: number; y: number }, { points }: ReadPath): number {
  let best = Infinity
  points.forEach((a, k) => {
    best = Math.min(best, distanceToEdge(point, a, points[(k + 1) % points.length]!))
  })
  return best
}

describe.each([
  ['quince-wreath-cushion', 'A4', false, 10, 6],
  ['quince-wreath-cushion', 'Letter', true, 10, 7],
  ['pond-edge-bag', 'Letter', false, 10, 4],
  // With an overlap of 10 mm strips of its edge would take a fifth sheet.
  ['pond-edge-bag', 'A4', true, 6, 4],
] as const)('the template of %s on %s, reversed: %s', (name, paper: Paper, reverse, overlap, count) => {
  const project = example(name)
  const plan: Plan = planProject(project)
  const ground: TemplateGround = templateGround(plan, reverse)!
  let read: ReadPdf
  let paths: ReadPath[][]
  let tiles: Tile[]
  let origins: ReturnType<typeof laidTogether>
  /** Where the panel's top left lies on the page of a window. */
  const origin = (tile: Tile) => origins.get(tile)!
  beforeAll(async () => {
    const bytes = await renderMap(plan, { paper, reverse, date: DATE, version: VERSION })
    read = await readPdf(bytes)
    paths = await readPaths(bytes)
    tiles = tilesOf(read, paths)
    origins = laidTogether(tiles, paths, overlap)
  })

  it('prints every outline point within 0.1 mm of the plan, on every sheet that shows it', () => {
    const accounts = new Map(plan.accounts!.map((account) => [account.id, account]))
    let looked = 0
    const seen = new Map<string, Set<number>>()
    for (const tile of tiles) {
      const { x, y } = origin(tile)
      const lines = tile.paths.filter((path) => path.stroked && path.points.length > 3)
      const outlines = [
        { id: 'edge', outline: plan.panel!.outline },
        ...plan.motifs.map((motif) => ({
          id: motif.id,
          outline: placeOutline(accounts.get(motif.motif!)!.outline, motif),
        })),
      ]
      for (const { id, outline } of outlines) {
        const onPage = outline.map((p) => ({ x: x + (reverse ? plan.size.width - p.x : p.x), y: y + p.y }))
        const shown = onPage.flatMap((p, i) => {
          const { left, right, top, bottom } = tile.window
          return p.x >= left && p.x <= right && p.y >= top && p.y <= bottom ? [i] : []
        })
        if (shown.length === 0) continue
        // One and the same printed line holds all of them, and holds nothing else.
        let printed = lines[0]!
        let least = Infinity
        for (const line of lines) {
          // A line that is off by more than the best one is looked at no further.
          let far = 0
          for (const i of shown) if ((far = Math.max(far, toLine(onPage[i]!, line))) >= least) break
          if (far < least) [printed, least] = [line, far]
        }
        expect(least, `${id} on ${tile.row}·${tile.column}`).toBeLessThan(0.1)
        const drawn: ReadPath = { ...printed, points: onPage }
        for (const p of printed.points) expect(toLine(p, drawn)).toBeLessThan(0.1)
        looked += shown.length
        const points = seen.get(id) ?? new Set()
        shown.forEach((i) => points.add(i))
        seen.set(id, points)
      }
    }
    expect(looked).toBeGreaterThan(1000)
    // Nothing falls between the sheets.
    for (const motif of plan.motifs)
      expect(seen.get(motif.id)?.size).toBe(accounts.get(motif.motif!)!.outline.length)
    expect(seen.get('edge')?.size).toBe(plan.panel!.outline.length)
  })

  it('overlaps by the mm that it says, on as few sheets as that takes, and leaves nothing of the panel between its windows', () => {
    expect(tiles.length).toBeGreaterThan(1)
    expect(origins.size).toBe(tiles.length)
    const onPanel = (tile: Tile): Box => {
      const { x, y } = origin(tile)
      const { left, right, top, bottom } = tile.window
      return { left: left - x, right: right - x, top: top - y, bottom: bottom - y }
    }
    for (const tile of tiles) {
      const own = onPanel(tile)
      const right = tiles.find(({ row, column }) => row === tile.row && column === tile.column + 1)
      const below = tiles.find(({ row, column }) => row === tile.row + 1 && column === tile.column)
      // Places are printed to a hundredth of a millimetre.
      if (right) expect(own.right - onPanel(right).left).toBeCloseTo(overlap, 1)
      if (below) expect(own.bottom - onPanel(below).top).toBeCloseTo(overlap, 1)
    }
    const sheets = new Set(tiles.map(({ page }) => page)).size
    expect(sheets).toBe(count)
    expect(read.pages[0]!.words).toContain(
      inSpelling(`Neighbours overlap by ${overlap} mm.`, plan.settled.terms),
    )
    expect(read.pages[0]!.words).toContain(`printed on ${sheets} sheets`)
  })

  it('has ticks at the middle of every overlap, and diamonds that neighbours share', () => {
    for (const tile of tiles) {
      const free = paths[tile.page]!.filter((path) => !path.clip && path.stroked)
      const { top, bottom } = tile.window
      const upright = free.filter(
        ({ points }) =>
          points.length === 2 &&
          points[0]!.x === points[1]!.x &&
          Math.abs(points[0]!.y - points[1]!.y) < 5 &&
          points.every(({ y }) => (y > top - 5 && y < top) || (y > bottom && y < bottom + 5)),
      )
      const has = (column: number): boolean =>
        tiles.some((other) => other.row === tile.row && other.column === column)
      const wished = [
        ...(has(tile.column - 1) ? [tile.window.left + overlap / 2] : []),
        ...(has(tile.column + 1) ? [tile.window.right - overlap / 2] : []),
      ]
      for (const x of wished)
        expect(upright.filter(({ points }) => Math.abs(points[0]!.x - x) < 0.05)).toHaveLength(2)
      expect(diamondsIn(tile, paths).length).toBeGreaterThanOrEqual(2)
    }
  })

  it('begins with squares of 50 mm and 25.4 mm, and says so', () => {
    const squares = paths[0]!
      .filter(({ points, stroked }) => points.length === 4 && stroked)
      .map(({ points }) => size(boxOfPoints(points)))
    for (const side of [50, 25.4])
      expect(squares.some(([w, h]) => Math.abs(w - side) < 0.02 && Math.abs(h - side) < 0.02)).toBe(true)
    const { words } = read.pages[0]!
    for (const text of ['Print at 100 %, no scaling', '50 mm', '1 in']) expect(words).toContain(text)
    for (const tile of tiles) {
      const page = read.pages[tile.page]!
      expect(page.words).toContain('Print at 100 %, no scaling')
      expect(page.words).toMatch(
        new RegExp(`^ *(?:Row ${tile.row}, column ${tile.column}|Parts .*${tile.row}·${tile.column})`),
      )
    }
    expect(read.viewerPreferences).toMatchObject({ PrintScaling: 'None' })
  })

  it('keeps everything 12 mm from the edge of the paper, and text at 7 pt or more', () => {
    const [width, height] = paper === 'A4' ? [210, 297] : [215.9, 279.4]
    read.pages.forEach((page, i) => {
      expect([page.width, page.height].sort((a, b) => a - b)).toEqual([
        expect.closeTo(width, 1) as number,
        expect.closeTo(height, 1) as number,
      ])
      for (const { x, y, width: wide, text, size: type } of page.texts) {
        expect(x, text).toBeGreaterThanOrEqual(11.99)
        expect(x + wide, text).toBeLessThanOrEqual(page.width - 11.99)
        expect(y, text).toBeGreaterThan(12)
        expect(y, text).toBeLessThan(page.height - 12)
        expect(type, text).toBeGreaterThanOrEqual(7)
      }
      for (const path of paths[i]!) {
        const { left, right, top, bottom } = path.clip ?? boxOfPoints(path.points)
        expect(Math.min(left, top)).toBeGreaterThanOrEqual(11.99)
        expect(right).toBeLessThanOrEqual(page.width - 11.99)
        expect(bottom).toBeLessThanOrEqual(page.height - 11.99)
      }
    })
  })

  it('writes each number in its outline, and marks the centre with a cross', () => {
    for (const item of ground.items) {
      const found = tiles.some((tile) => {
        const at = origin(tile)
        const page = read.pages[tile.page]!
        const x = at.x + item.centre.x
        const y = at.y + item.centre.y
        const cross = tile.paths.some(({ points }) => {
          const box = boxOfPoints(points)
          return (
            points.length === 4 &&
            Math.abs((box.left + box.right) / 2 - x) < 0.05 &&
            Math.abs((box.top + box.bottom) / 2 - y) < 0.05 &&
            Math.abs(box.right - box.left - 6) < 0.05
          )
        })
        const numbered = page.texts.some(
          (t) =>
            t.text === item.label &&
            contains(item.outline, { x: t.x + t.width / 2 - at.x, y: t.y - 1 - at.y }),
        )
        return cross && numbered
      })
      expect(found, item.label).toBe(true)
    }
  })

  it('lists every item from the lowest to the topmost, then yarn, thread and cautions', () => {
    const words = read.pages.map((page) => page.words).join(' ')
    let from = 0
    for (const id of plan.stacking!) {
      const motif = plan.motifs.find((entry) => entry.id === id)!
      const account = plan.accounts!.find((entry) => entry.id === motif.motif)!
      const at = words.indexOf(`☐ ${motif.label} ${account.name}`, from)
      expect(at, id).toBeGreaterThanOrEqual(from)
      from = at
    }
    expect(words).toContain('Sewing thread')
    expect(words).toContain('fire safety of furnishings')
    if (reverse) expect(read.pages[0]!.words).toContain('Mirrored: for marking on the back')
    expect(words.includes('mirrored, for the back')).toBe(reverse)
  })
})

describe('templates', () => {
  it('of a kit keep to themselves what its seller has, buys and pays', () => {
    const project = example('quince-wreath-cushion')
    const layout = project.layout as Extract<Project['layout'], { kind: 'applique' }>
    const words = (kit: object) => {
      const own = { ...project, layout: { ...layout, ...kit } }
      const pages = mapPages(planProject(own), { date: new Date(0) })
      const materials = pages.filter(({ sections }) => sections.includes('materials'))
      return materials.flatMap(({ figure }) => record(figure).texts.map(({ text }) => text)).join(' ')
    }
    expect(words({ kit: undefined })).toMatch(/on hand.*to buy.*cost/)
    const sold = words({ kit: { run: 20 } })
    expect(sold).toContain('Yarn in the kit')
    expect(sold).not.toMatch(/on hand|to buy|cost|€/)
  })

  const project = example('pond-edge-bag')
  const plan = planProject(project)

  it('say what lies wrong side up and what lies on what', () => {
    const words = mapPages(plan, { date: DATE })
      .map(({ figure }) => JSON.stringify(figure))
      .join(' ')
    for (const told of ['"wrong side up, on 4"', '"wrong side up"', 'What is dashed lies under'])
      expect(words.includes(told), told).toBe(true)
  })

  it('are the same bytes twice, and others when reversed', async () => {
    const render = (reverse: boolean) => renderMap(plan, { date: DATE, version: VERSION, reverse })
    const first = Buffer.from(await render(false))
    expect(Buffer.from(await render(false)).equals(first)).toBe(true)
    expect(Buffer.from(await render(true)).equals(first)).toBe(false)
  })

  it('of something small are one sheet without ticks; of something large leave out empty sheets', async () => {
    const layout = (side: number) => ({
      kind: 'applique' as const,
      panel: { shape: 'rectangle' as const, width: side, height: side, allowance: 10 },
      items: [{ motif: 'star', colourway: 'pale', x: side / 2 - 40, y: 60 }],
    })
    const pages = async (side: number) => {
      const one = { ...project, layout: layout(side) }
      return readPdf(await renderMap(planProject(one), { date: DATE, version: VERSION }))
    }
    const small = await pages(150)
    expect(small.pages.filter(({ words }) => words.trim().startsWith('Row'))).toHaveLength(1)
    expect(small.pages[0]!.words).toContain('The template is on one sheet.')
    const large = await pages(1400)
    const sheets = large.pages.filter(({ words }) => /^(?:Row|Parts) /.test(words.trim())).length
    // Strips of the edge share sheets: in windows of their own they would be 28.
    expect(sheets).toBeLessThanOrEqual(12)
    expect(large.pages[0]!.words).toMatch(
      new RegExp(`printed on ${sheets} sheets, in 28 parts.*with nothing on them are left out`),
    )
  })
})

describe('a template on no more sheets than it needs', () => {
  const [width, height] = [186, 247]

  it.each([
    // A panel as high as a sheet and a third: what is left of it shares sheets.
    [{ shape: 'rectangle', width: 1200, height: 300, allowance: 10 }, 12],
    [{ shape: 'rectangle', width: 320, height: 200, allowance: 10 }, 2],
    [{ shape: 'rectangle', width: 150, height: 150, allowance: 10 }, 1],
  ] as const)('%j: at most %i', (panel, most) => {
    const layout = { kind: 'applique' as const, panel, items: [] }
    const plan = planProject({ ...example('pond-edge-bag'), layout })
    const ground = templateGround(plan, false)!
    const tiling = tileTemplate(ground, width, height)
    expect(tiling.sheets.length).toBeLessThanOrEqual(most)
    for (const sheet of tiling.sheets) {
      expect(sheet.length).toBeGreaterThan(0)
      const boxes = sheet.map(({ tile, x, y }) => ({
        left: x,
        top: y,
        right: x + tile.view.width + 10,
        bottom: y + tile.view.height + 10,
      }))
      boxes.forEach((box, i) => {
        expect(isWithin(box, { left: 0, top: 0, right: width, bottom: height })).toBe(true)
        for (const other of boxes.slice(i + 1))
          expect(
            box.right <= other.left + 1e-6 ||
              other.right <= box.left + 1e-6 ||
              box.bottom <= other.top + 1e-6 ||
              other.bottom <= box.top + 1e-6,
          ).toBe(true)
      })
    }
    // Every window is on a sheet, once.
    const placed = tiling.sheets.flat().map(({ tile }) => tile)
    expect(new Set(placed)).toEqual(new Set(tiling.tiles))
    expect(placed).toHaveLength(tiling.tiles.length)
  })
})
