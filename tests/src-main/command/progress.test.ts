import { describe, expect, it } from 'vitest'
import { planProject } from '../../../src-core/plan'
import { planReport } from '../../../src-main/command/reports/plan'
import { first, project, weighed } from '../../src-core/progress/project'

const report = (of: ReturnType<typeof project>, whole = false): string =>
  planReport(of, planProject(of), 80, whole).join('\n')

describe('petalyard plan of a work that is begun', () => {
  it('tells what is made, what is left, how far the yarn goes and each day', () => {
    const made = { ...first(4, '2026-12-01'), '2,1': '2026-12-02', '2,2': '2026-12-02' }
    const text = report(weighed(project({ made }), 'moss', { grams: 14, at: 4 }))
    expect(text).toMatch(/^Progress$/m)
    expect(text).toMatch(/Made +6 of 12 motifs made, 6 joined/)
    expect(text).toMatch(/Left +6 motifs, 11 joins, 24 ends, about 2 h 35 min/)
    expect(text).toMatch(/Yarn +Sand 6.6 g, Moss 13.2 g, Clay 6.6 g/)
    expect(text).toMatch(/By day +December 1, 2026: 4; December 2, 2026: 2/)
    // A long line goes on in the next.
    expect(text.replace(/\s+/g, ' ')).toContain(
      'At this rate Moss lasts to motif 11 of 12: 16 g go into what is left, so 2 g more are needed.',
    )
  })

  it('tells the last week of a long log, and all of it when all is asked for', () => {
    const keys = Object.keys(first(12))
    const made = Object.fromEntries(keys.slice(0, 9).map((key, i) => [key, `2026-12-0${i + 1}`]))
    expect(report(project({ made }))).toMatch(/By day +2 days before; December 3, 2026: 1/)
    expect(report(project({ made }), true)).toMatch(/By day +December 1, 2026: 1/)
  })

  it('says nothing before anything is made', () => {
    expect(report(project())).not.toContain('Progress')
    expect(report(project({ made: {} }))).not.toContain('Progress')
  })
})
