/** Ends of thread beside a motif, drawn as grids of places: what is cut off, and what is shape and stays. */
import { describe, expect, it } from 'vitest'
import type { FoundMotif } from '../../../src-core/photo/motif-mask'
import type { Plane } from '../../../src-core/photo/rectify'
import { countOf } from '../../../src-core/photo/regions'
import { withoutTails } from '../../../src-core/photo/thread-tails'

/** Places to a millimetre, and the side of the grid in mm. */
const SCALE = 6
const SIDE = 100

/** Everything that is `on`, in mm about the middle of the grid. */
function drawn(on: (x: number, y: number) => boolean): FoundMotif {
  const width = SIDE * SCALE
  const mask = { width, height: width, on: new Uint8Array(width * width) }
  for (let at = 0; at < mask.on.length; at++)
    if (on((at % width) / SCALE - SIDE / 2, Math.floor(at / width) / SCALE - SIDE / 2)) mask.on[at] = 1
  const distance = Float32Array.from(mask.on)
  return { mask, distance, level: 0.5, contrast: 50, overEdge: false, shadow: 1, glare: false }
}
const plane = { scale: SCALE } as Plane

const flower = (x: number, y: number): boolean => Math.hypot(x, y) < 25 + 7 * Math.cos(6 * Math.atan2(y, x))
/** A thread from one place to another, so many mm wide. */
const thread =
  (from: readonly [number, number], to: readonly [number, number], wide: number) =>
  (x: number, y: number): boolean => {
    const [across, down] = [to[0] - from[0], to[1] - from[1]]
    const along = ((x - from[0]) * across + (y - from[1]) * down) / (across ** 2 + down ** 2)
    const by = Math.max(0, Math.min(1, along))
    return Math.hypot(x - from[0] - by * across, y - from[1] - by * down) < wide / 2
  }
/** So many spikes round a disc, which is what a snowflake has. */
const spikes = (count: number) =>
  Array.from({ length: count }, (_, at) => {
    const angle = (2 * Math.PI * at) / count
    const end = (far: number) => [far * Math.cos(angle), far * Math.sin(angle)] as const
    return thread(end(18), end(32), 1.4)
  })

describe('ends of thread', () => {
  it.each([0.6, 1, 1.4])('of %s mm that stick out are no part of the motif', (wide) => {
    const tail = thread([20, 6], [44, 20], wide)
    const cut = withoutTails(
      plane,
      drawn((x, y) => flower(x, y) || tail(x, y)),
    )!
    expect(cut.count).toBe(1)
    // A little of it stays where it leaves the motif.
    const off = countOf(cut.found.mask) - countOf(drawn(flower).mask)
    expect(Math.abs(off)).toBeLessThan(4 * SCALE ** 2)
    expect(
      cut.found.distance[Math.round((20 + 50) * SCALE) * SIDE * SCALE + Math.round((44 + 50) * SCALE) - 1],
    ).toBe(0)
  })

  it('are two of one thread', () => {
    const [one, other] = [thread([30, 0], [46, -10], 1), thread([-14, 14], [-40, 30], 1)]
    const cut = withoutTails(
      plane,
      drawn((x, y) => flower(x, y) || one(x, y) || other(x, y)),
    )!
    expect(cut.count).toBe(2)
  })

  it('are none where petals, picots, loops and spikes are the shape', () => {
    const disc = (x: number, y: number) => Math.hypot(x, y) < 20
    const loop = (x: number, y: number) => Math.abs(Math.hypot(x - 26, y) - 8) < 0.6
    const picot = (x: number, y: number) => Math.hypot(x - 33, y) < 2
    const shapes: ((x: number, y: number) => boolean)[] = [
      flower,
      (x, y) => disc(x, y) || loop(x, y),
      (x, y) => flower(x, y) || picot(x, y),
      (x, y) => disc(x, y) || spikes(6).some((spike) => spike(x, y)),
    ]
    for (const shape of shapes) expect(withoutTails(plane, drawn(shape))).toBeNull()
  })
})
