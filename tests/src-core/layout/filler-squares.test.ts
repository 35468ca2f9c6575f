/** M27: straight-sided fillers turn so that they fit: sides or corners to the motifs, and nothing reaching into them. */
import { describe, expect, it } from 'vitest'
import { planProject } from '../../../src-core/plan'
import { blanket, ROUND } from './additions'

/** Radius of what four circles of 80 mm leave open between them. */
const OPEN = 40 * (Math.SQRT2 - 1)
const among = (sideToSide: number, motif: object = ROUND) =>
  planProject(
    blanket(
      motif as typeof ROUND,
      { outline: 'square', sideToSide },
      { columns: 3, rows: 3, fillers: { motif: 'f' } },
    ),
  )

describe('M27 a square among four circles (straight rows)', () => {
  it('of the side of the opening stands on its corner, sides to the circles, corners to where they join', () => {
    const { fillers, fillerSteps } = among(2 * OPEN)
    expect(fillers).toHaveLength(4)
    for (const filler of fillers) {
      expect(filler.turn).toBeCloseTo(45, 1)
      expect(Math.max(filler.bridge, filler.overlap)).toBeLessThan(0.05)
    }
    expect(fillerSteps[0]!.words).toMatch(/join side 1 to \d+, .*; side 2 to/)
  })

  it('of the diagonal of the opening lies upright, its corners at the circles', () => {
    const { fillers, fillerSteps, findings } = among(Math.SQRT2 * OPEN)
    for (const filler of fillers) {
      expect(filler.turn % 90).toBeCloseTo(0, 1)
      expect(Math.max(filler.bridge, filler.overlap)).toBeLessThan(0.05)
    }
    expect(fillerSteps[0]!.words).toMatch(/join corner 1 to \d+, .*; corner 2 to/)
    expect(findings.map(({ code }) => code).filter((code) => code.startsWith('layout/filler'))).toEqual([])
  })

  it('too large a one reaches into the circles by no more than it must', () => {
    // Upright, corners of a square of 45 mm would lie 15.2 mm deep; on its corner, sides lie 5.9 mm deep (by hand).
    const { fillers } = among(45)
    for (const filler of fillers) {
      expect(filler.turn).toBeCloseTo(45, 1)
      expect(filler.joins).toBe(4)
    }
  })

  it('too small a one bridges the least: corners come nearer than sides', () => {
    const { fillers, findings } = among(14)
    for (const filler of fillers) expect(filler.bridge).toBeCloseTo(OPEN - 7 * Math.SQRT2, 1)
    expect(findings.find(({ code }) => code === 'layout/filler-small')?.message).toContain('measures 19.8 mm')
  })
})
