import { describe, expect, it } from 'vitest'
import { openingsLeft } from '../../../src-renderer/state/edits/gaps'

describe('openings that a filler leaves', () => {
  const fillers = (count: number, sides: number) =>
    Array.from({ length: count }, () => ({ motifs: Array.from({ length: sides }, () => 'x') })) as never
  it('are those of another kind: every other row of a seven-petal throw', () => {
    const holes = [
      { sides: 4, count: 54, radius: 21.45 },
      { sides: 4, count: 63, radius: 18 },
      { sides: 2, count: 9, radius: 30 },
    ]
    expect(openingsLeft({ holes, fillers: fillers(63, 4) })).toBe(holes[0])
    expect(openingsLeft({ holes, fillers: fillers(54, 4) })).toBe(holes[1])
    expect(openingsLeft({ holes: [holes[0]!], fillers: fillers(54, 4) })).toBeNull()
  })
})
