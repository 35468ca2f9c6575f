/** Labels, ticks and pins within their motifs: of half motifs at the sides too, and letters off every line. */
import { beforeAll, describe, expect, it, vi } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { keptHalf, laidOutline } from '../../../src-core/figures/motif-parts'
import { contains, distanceToEdge } from '../../../src-core/geometry/points'
import type { Outline } from '../../../src-core/geometry/points'
import { accountAt } from '../../../src-core/layout/placed'
import type { PlacedPiece } from '../../../src-core/layout/placed'
import { toPlan } from '../../../src-renderer/drawing/camera'
import { paintMap } from '../../../src-renderer/drawing/map-painter'
import { paintMarks } from '../../../src-renderer/drawing/marks-painter'
import type { Picture } from '../../../src-renderer/drawing/picture'
import { FakePath, recorder } from './recorder'
import { picture, project } from './scenes'

beforeAll(() => void vi.stubGlobal('Path2D', FakePath))

const MOTIFS = {
  hexagons: { kind: 'measured', outline: 'hexagon', sideToSide: 80, blocked: true },
  flowers: { kind: 'measured', outline: 'petals', petals: 6, overTips: 80, overValleys: 50 },
  'flowers of large eyes': { kind: 'measured', outline: 'petals', petals: 6, overTips: 80, overValleys: 60 },
  squares: { kind: 'measured', outline: 'square', sideToSide: 80, blocked: true },
} as const

function blanket(name: keyof typeof MOTIFS, halves = true): Project {
  const own = project({ arrangement: 'offset-rows', alternateRows: 'oneFewer', halves })
  const slots = [{ slot: 'centre' }, { slot: 'petals' }]
  return { ...own, motifs: [{ id: 'm', slots, ...MOTIFS[name] } as never], joining: { rule: 'tips' } }
}

const everything = { left: -1e4, top: -1e4, right: 1e4, bottom: 1e4 }
const moved = (outline: Outline, { x, y }: { x: number; y: number }): Outline =>
  outline.map((p) => ({ x: p.x + x, y: p.y + y }))

/** What is written on a map at a scale, in mm of the plan. */
function written(own: Picture, scale: number) {
  const record = recorder()
  paintMap(record.pen, own, { scale, x: 0, y: 0, ratio: 1 }, everything)
  return record.calls
    .filter(({ name }) => name === 'fillText')
    .map(({ arguments: [text, x, y] }) => ({
      text: String(text),
      x: Number(x) / scale,
      y: Number(y) / scale,
    }))
}

const outlineOf = (own: Picture, { x, y, turn, side = 'left', ...half }: PlacedPiece): Outline =>
  moved(laidOutline(accountAt(own.plan, half)!.outline, { turn, scale: 1, half: keptHalf({ side }) }), {
    x,
    y,
  })

const halvesOf = (own: Picture) => own.additions!.pieces.filter(({ kind }) => kind === 'half')

describe.each(['hexagons', 'flowers'] as const)('half motifs of %s', (name) => {
  const own = picture(blanket(name), { showLabels: true, showJoins: false })
  const halves = halvesOf(own)

  it.each([0.75, 1.5])('carry number and letter within what is there of them, at %d', (scale) => {
    expect(halves.length).toBeGreaterThan(5)
    const texts = written(own, scale)
    for (const half of halves) {
      const outline = outlineOf(own, half)
      const inside = texts.filter((text) => contains(outline, text)).map(({ text }) => text)
      expect(inside).toEqual([half.label, expect.stringMatching(/^[AB]$/)])
    }
  })

  it('carry the tick of what is made, and the pin of a fixed colour, inside their outline', () => {
    const camera = { scale: 0.9, x: 40, y: 40 }
    const record = recorder()
    const marked = new Set(halves.map(({ id }) => id))
    const none = new Set<string>()
    paintMarks(
      record.pen,
      own,
      camera,
      { width: 4000, height: 4000 },
      {
        ...{ selection: none, focus: null, own: [], flagged: none, changed: none, joined: none },
        ...{ hover: null, warned: none, faults: [], made: marked, fixed: marked },
      },
      1,
    )
    const starts = record.calls.filter(({ name }) => name === 'moveTo').map(({ arguments: [x, y] }) => toPlan(camera, { x: Number(x), y: Number(y) })) // prettier-ignore
    for (const half of halves) {
      const outline = outlineOf(own, half)
      const inside = starts.filter((at) => contains(outline, at))
      // The discs of the pin, of which the hem may reach the edge, below; the ground of the tick and the tick above.
      expect(inside.filter(({ y }) => y > half.y).length).toBeGreaterThanOrEqual(2)
      expect(inside.filter(({ y }) => y < half.y).length).toBeGreaterThanOrEqual(1)
    }
  })
})

describe('letters of colorways', () => {
  it.each(Object.keys(MOTIFS) as (keyof typeof MOTIFS)[])('stand off every line of %s', (name) => {
    const own = picture(blanket(name, false), { showLabels: true, showJoins: false })
    const texts = written(own, 1.2)
    const account = own.main!.account
    const across = account.overTips
    const letters = texts.filter(({ text }) => /^[AB]$/.test(text))
    expect(letters).toHaveLength(own.motifs.length)
    for (const motif of own.motifs) {
      const lines = account.layers.map(({ outline }) => moved(laidOutline(outline, { turn: motif.turn, scale: 1 }), motif)) // prettier-ignore
      const letter = letters.find((text) => contains(lines[0]!, text))!
      const far = lines.map((line) => Math.min(...line.map((b, i) => distanceToEdge(letter, line.at(i - 1)!, b)))) // prettier-ignore
      // Half of a capital is a twentieth of a motif high.
      expect(far[0]! / across).toBeGreaterThan(0.08)
      expect(Math.min(...far) / across).toBeGreaterThan(0.05)
      const number = texts.find(({ text }) => text === motif.label)!
      expect(letter.y - number.y).toBeGreaterThan(0.13 * across)
    }
  })
})
