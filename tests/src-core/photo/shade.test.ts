/** Shadows with soft edges are divided out of the paper, under a motif as well, and a motif is none. */
import { describe, expect, it } from 'vitest'
import { findFirst } from '../../../src-core/photo/first'
import { SHEET_SIZES } from '../../../src-core/photo/sheet-sizes'
import { findShade, withoutShade } from '../../../src-core/photo/shade'
import type { Plane } from '../../../src-core/photo/rectify'

const [WIDE, TALL, SCALE] = [200, 280, 2]
const plane: Plane = {
  ...{ width: WIDE, height: TALL, scale: SCALE, left: 1.5, top: 1.5, density: 2 },
  ...{ light: new Float32Array(), ground: new Uint8Array(WIDE * TALL).fill(1) },
}
/** Light on the paper as a share of what was fitted, by places in mm, with a round motif of another colour. */
function evened(shadow: (x: number) => number, motif: readonly [number, number, number], over = false) {
  const ratio = new Float32Array(3 * WIDE * TALL)
  for (let at = 0; at < WIDE * TALL; at++) {
    const [x, y] = [(at % WIDE) / SCALE, Math.floor(at / WIDE) / SCALE]
    const isMotif = Math.hypot(x - (over ? 5 : 50), y - 70) < 25
    for (let c = 0; c < 3; c++) ratio[3 * at + c] = shadow(x) * (isMotif ? motif[c]! : 1)
  }
  return { ratio, paper: [0.8, 0.8, 0.8] as const }
}
const soft = (x: number) => 1 - 0.4 / (1 + Math.exp((45 - x) / 5))
const valueAt = (ratio: Float32Array, x: number, y: number) => ratio[3 * (y * SCALE * WIDE + x * SCALE)]!

describe('a shadow with a soft edge', () => {
  it('is divided out of the paper, and of the motif on it', () => {
    const taken = evened(soft, [0.1, 0.15, 0.4])
    const { ratio } = withoutShade(plane, taken, findShade(plane, taken)!)
    for (const x of [4, 30, 60, 95]) expect(valueAt(ratio, x, 20)).toBeCloseTo(1, 1)
    for (const x of [30, 50, 70]) expect(Math.abs(valueAt(ratio, x, 70) / 0.1 - 1)).toBeLessThan(0.15)
  })

  it('is none where a motif reaches over the edge', () => {
    const taken = evened(() => 1, [0.1, 0.15, 0.4], true)
    const { ratio } = withoutShade(plane, taken, findShade(plane, taken)!)
    expect(valueAt(ratio, 10, 70)).toBeLessThan(0.3)
    expect(valueAt(ratio, 60, 70)).toBeCloseTo(1, 2)
  })

  it('is not looked for where little paper hangs together', () => {
    const { ratio, paper } = evened(() => 1, [1, 1, 1])
    const spotted = ratio.map((value, at) => value * (Math.floor(at / 3 / 3) % 2 ? 1 : 0.2))
    for (let at = 0; at < spotted.length; at += 3) if (Math.floor(at / 3 / (3 * WIDE)) % 2) spotted[at] = 3
    expect(findShade(plane, { ratio: spotted, paper })).toBeNull()
  })
})

describe('shadows with hard edges', () => {
  it('do not hide the motif that lies in and out of them', () => {
    const bars = (x: number, y: number) => (((x + 0.5 * y) % 44) + 44) % 44 < 22
    const light = new Float32Array(3 * WIDE * TALL)
    let lies = 0
    for (let at = 0; at < WIDE * TALL; at++) {
      const [x, y] = [(at % WIDE) / SCALE, Math.floor(at / WIDE) / SCALE]
      const isMotif = Math.hypot(x - 50, y - 70) < 25
      if (isMotif) lies++
      for (let c = 0; c < 3; c++)
        light[3 * at + c] = (isMotif ? [0.05, 0.01, 0.01][c]! : 0.8) * (bars(x, y) ? 0.62 : 1)
    }
    const picture = { width: 2, height: 2, step: 1, data: new Uint8Array(16) }
    const { first } = findFirst(picture, { ...plane, light }, SHEET_SIZES.A5, {})
    const found = first!.mask.on.reduce((sum, each) => sum + each, 0)
    expect(first!.overEdge).toBe(false)
    expect(Math.abs(found / lies - 1)).toBeLessThan(0.05)
  })
})
