import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Point } from '../../../shared-types/plan'
import { createHitMap } from '../../../src-core/geometry/hit'
import type { HitMotif } from '../../../src-core/geometry/hit'
import { contains, turnPoint } from '../../../src-core/geometry/points'
import { petalOutline } from '../../../src-core/motif/outlines'

const outline = petalOutline(6, 40, 24)
const stretch = { width: 1.08, height: 0.95 }

/** A blanket of 12 × 9, every other row rotated. */
const motifs: HitMotif[] = Array.from({ length: 108 }, (_, i) => {
  const row = Math.floor(i / 12)
  return { id: `${row + 1},${(i % 12) + 1}`, x: 43 + (i % 12) * 86, y: 40 + row * 76, turn: row % 2 ? 30 : 0 }
})
const map = createHitMap({ motifs, outline, stretch })
const placed = motifs.map((motif) =>
  outline.map((point) => {
    const at = turnPoint(point, (motif.turn * Math.PI) / 180)
    return { x: at.x * stretch.width + motif.x, y: at.y * stretch.height + motif.y }
  }),
)
const point = fc.record({
  x: fc.double({ min: -30, max: 1080, noNaN: true }),
  y: fc.double({ min: -30, max: 720, noNaN: true }),
})

/** Every motif whose placed outline holds the point. */
const bruteAt = (at: Point) =>
  motifs
    .filter((m, i) => Math.hypot(m.x - at.x, m.y - at.y) < 50 && contains(placed[i]!, at))
    .map(({ id }) => id)

describe('which motif is meant', () => {
  it('finds at any point what a look at every outline finds', () => {
    fc.assert(
      fc.property(point, (at) => {
        const all = bruteAt(at)
        const found = map.at(at)
        if (all.length === 0) expect(found).toBeNull()
        else expect(all).toContain(found)
      }),
      { numRuns: 2000 },
    )
  })

  it('takes the nearest motif within the slack of a finger, and none beyond', () => {
    const gap = { x: 43 + 43, y: 40 + 38 }
    expect(bruteAt(gap)).toEqual([])
    expect(map.at(gap)).toBeNull()
    expect(map.at(gap, 30)).not.toBeNull()
    expect(map.at({ x: -60, y: -60 }, 30)).toBeNull()
  })

  it('finds in a rectangle the motifs whose centres lie in it, in the order of the plan', () => {
    fc.assert(
      fc.property(point, point, (a, b) => {
        const box = {
          left: Math.min(a.x, b.x),
          right: Math.max(a.x, b.x),
          top: Math.min(a.y, b.y),
          bottom: Math.max(a.y, b.y),
        }
        const all = motifs.filter(
          (m) => m.x >= box.left && m.x <= box.right && m.y >= box.top && m.y <= box.bottom,
        )
        expect(map.within(box)).toEqual(all.map(({ id }) => id))
      }),
    )
  })

  it('finds every motif whose box meets a rectangle', () => {
    const box = { left: 200, top: 150, right: 420, bottom: 330 }
    const all = motifs.flatMap((_, i) => {
      const b = map.boxOf(i)
      return b.left <= box.right && b.right >= box.left && b.top <= box.bottom && b.bottom >= box.top
        ? [i]
        : []
    })
    expect(map.meeting(box)).toEqual(all)
  })

  it('misses none under a stroke, however fast, and names them in the order of the stroke', () => {
    fc.assert(
      fc.property(point, point, (from, to) => {
        const found = map.along(from, to)
        const first = new Map<string, number>()
        for (let i = 0; i <= 2000; i++) {
          const share = i / 2000
          const at = { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share }
          for (const id of bruteAt(at)) if (!first.has(id)) first.set(id, share)
        }
        for (const id of first.keys()) expect(found).toContain(id)
        const known = found.filter((id) => first.has(id)).map((id) => first.get(id)!)
        expect(known).toEqual([...known].sort((a, b) => a - b))
        // What the looks along the stroke did not see is grazed for less than the distance between two looks.
        expect(found.length - first.size).toBeLessThanOrEqual(2)
      }),
      { numRuns: 15 },
    )
  })

  it('finds one motif under a press that does not move', () => {
    expect(map.along({ x: 43, y: 40 }, { x: 43, y: 40 })).toEqual(['1,1'])
    expect(map.along({ x: -200, y: -200 }, { x: -200, y: -200 })).toEqual([])
  })

  it('answers for a plan without motifs', () => {
    const empty = createHitMap({ motifs: [], outline: [], stretch: { width: 1, height: 1 } })
    expect(empty.at({ x: 0, y: 0 }, 5)).toBeNull()
    expect(empty.within({ left: -9, top: -9, right: 9, bottom: 9 })).toEqual([])
    expect(empty.along({ x: 0, y: 0 }, { x: 9, y: 9 })).toEqual([])
  })
})

describe('which of several kinds is meant', () => {
  const leaf = [
    { x: 0, y: -30 },
    { x: 8, y: 10 },
    { x: -4, y: 30 },
  ]
  const one = { width: 1, height: 1 }

  it('asks each motif by its own outline', () => {
    const two = [
      { id: 'flower', x: 0, y: 0, turn: 0 },
      { id: 'leaf', x: 100, y: 0, turn: 90 },
    ]
    const kinds = createHitMap({ motifs: two, outline: [outline, leaf], stretch: one })
    expect(kinds.at({ x: 0, y: -30 })).toBe('flower')
    // Turned by a quarter, the leaf's tip points right.
    expect(kinds.at({ x: 120, y: 0 })).toBe('leaf')
    expect(kinds.at({ x: 100, y: -20 })).toBeNull()
    expect(kinds.boxOf(1).right).toBeCloseTo(130)
    expect(kinds.along({ x: -90, y: 0 }, { x: 150, y: 0 })).toEqual(['flower', 'leaf'])
  })

  it('mirrors what lies wrong side up before it is turned', () => {
    const lie = (flipped: boolean) =>
      createHitMap({
        motifs: [{ id: 'leaf', x: 0, y: 0, turn: 0, flipped }],
        outline: [leaf],
        stretch: one,
      })
    const right = { x: 6, y: 8 }
    expect(lie(false).at(right)).toBe('leaf')
    expect(lie(true).at(right)).toBeNull()
    expect(lie(true).at({ x: -6, y: 8 })).toBe('leaf')
    expect(lie(true).boxOf(0)).toEqual({ left: -8, right: 4, top: -30, bottom: 30 })
  })

  it('takes the topmost of what lies on each other', () => {
    const pile = [0, 5, 10].map((x, i) => ({ id: String(i), x, y: 0, turn: 0 }))
    const at = (ranks: number[]) =>
      createHitMap({ motifs: pile, outline, stretch: one, ranks }).at({ x: 5, y: 0 })
    expect(at([0, 1, 2])).toBe('2')
    expect(at([2, 1, 0])).toBe('0')
    expect(at([0, 2, 1])).toBe('1')
  })
})
