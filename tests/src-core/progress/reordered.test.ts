/** Motifs that a change of the layout gives another number, and finished joins that a new motif would come before. */
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { holdWork } from '../../../src-core/progress/hold'
import { lostMade, settleLost } from '../../../src-core/progress/lost'
import { markMade } from '../../../src-core/progress/mark'
import { lostWords } from '../../../src-core/progress/words'
import { withBlanket } from './large'
import { project } from './project'

/** Rows of five, there and back: so many are made in working order. */
function begun(many: number, more: Partial<Project> = {}): Project {
  const bare = project({ order: 'there-and-back', ...more }, { columns: 5, rows: 6 })
  const pieces = planProject(bare).motifs.filter(({ label }) => Number(label) <= many)
  return markMade(bare, pieces, '2026-12-01')
}
const wider = (of: Project) => holdWork(of, withBlanket(of, { columns: 6 }))
const labelOf = (of: Project, id: string) => planProject(of).motifs.find((motif) => motif.id === id)!.label

describe('made motifs in another working order', () => {
  it('are asked about where a column more gives them other numbers and comes before finished joins', () => {
    const before = begun(20)
    const after = wider(before)
    const lost = lostMade(before, after)!
    // Row 1 stays 1 to 5; the new 6 comes before 7, which stood at the end of row 2 and was number 6.
    expect(lost).toMatchObject({ gone: 0, recoloured: 0 })
    expect(lost.renumbered).toHaveLength(15)
    expect(lost.renumbered.slice(0, 2)).toEqual([
      [6, 8],
      [7, 9],
    ])
    for (const [was, is] of lost.renumbered) {
      const { id } = planProject(before).motifs.find(({ label }) => label === String(was))!
      expect(labelOf(after, id)).toBe(String(is))
    }
    // Back rows begin with the new one: the first of them is worked into it.
    expect(lost.rejoined).toEqual(['2,5', '4,5'])
    expect(lost.rejoinedNumbers).toEqual([6, 16])
    const { question, yes } = lostWords(lost, 'US')
    expect(question).toContain('2 joined motifs (numbers 6 and 16) would be joined')
    expect(question).toContain('15 made motifs would get other numbers (6 becomes 8, 7 becomes 9')
    expect(question).toContain('and 12 more): what you printed or labeled before')
    expect(yes).toBe('Mark 2 as not joined')
    // Answered for, they are made and joined no more: also once the new ones are made.
    const settled = settleLost(after, lost)
    const all = markMade(settled, planProject(settled).motifs, '2026-12-02')
    const { marks } = planProject(all)
    expect(marks.made).toHaveLength(36)
    expect(marks.joined.filter((id) => lost.rejoined.includes(id))).toEqual([])
  })

  it('are not asked about where new ones come after them, or nothing moves', () => {
    const before = begun(20)
    for (const patch of [{ rows: 8 }, { target: { width: 900 } }, { edging: { rounds: ['sc'] } }])
      expect(lostMade(before, holdWork(before, withBlanket(before, patch))), JSON.stringify(patch)).toBeNull()
    const row = begun(5)
    expect(lostMade(row, wider(row))).toBeNull()
  })

  it('get other numbers alone where they are sewn, or the order is another one', () => {
    const sewn = begun(20, { joining: { rule: 'seam' } })
    const lost = lostMade(sewn, wider(sewn))!
    expect(lost).toMatchObject({ rejoined: [], renumbered: { length: 15 } })
    expect(lostWords(lost, 'US').yes).toBe('Renumber 15 made motifs')
    const other = lostMade(begun(10), { ...begun(10), order: 'upward' })!
    expect(other.renumbered).toHaveLength(10)
  })
})
