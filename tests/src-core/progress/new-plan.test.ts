import { describe, expect, it } from 'vitest'
import { planProject } from '../../../src-core/plan'
import { asNewPlan } from '../../../src-core/progress/new-plan'
import { hasBegun } from '../../../src-core/progress/words'
import { first, progressOf, project, weighed } from './project'

const begun = weighed(
  project({ made: { ...first(4, '2026-12-01'), edging: '' }, joined: first(2, '2026-12-02') }, {}),
  'moss',
  { grams: 18, at: 4 },
)
const counted = { ...begun, yarns: begun.yarns!.map((yarn) => ({ ...yarn, onHandGrams: 40, onHandAt: 3 })) }

describe('a project as a new plan', () => {
  it('has no marks: nothing is made, nothing joined, and all of it is left', () => {
    const anew = asNewPlan(begun)
    expect(anew).not.toHaveProperty('made')
    expect(anew).not.toHaveProperty('joined')
    expect(progressOf(begun)).toMatchObject({ made: 4, joined: 2 })
    expect(progressOf(anew)).toEqual(progressOf(project()))
    expect(hasBegun(progressOf(anew))).toBe(false)
    expect(planProject(anew).marks).toEqual({ made: [], joined: [] })
  })

  it('has the yarn on hand as it was counted, for all of it; what was weighed meanwhile is gone', () => {
    const { yarns } = asNewPlan(counted)
    expect(yarns).toEqual(project().yarns!.map((yarn) => ({ ...yarn, onHandGrams: 40 })))
  })

  it('is the same in all else, and leaves the project that it came from as it is', () => {
    const before = structuredClone(begun)
    expect(asNewPlan(begun)).toEqual(project())
    expect(begun).toEqual(before)
  })
})
