/** Garlands and panels: what is made is told by its number in the list. */
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { codesOf, gramsOf, progressOf, project } from './project'

const garland = (more: Partial<Project> = {}): Project =>
  project({
    layout: {
      kind: 'garland',
      cord: { length: 1000, ties: 100, worked: 'chain', yarn: 'clay', gauge: { chains: 20, over: 100 } },
      items: [
        { motif: 'm', colourway: 'a' },
        { bead: 'wood', size: 12 },
        { motif: 'm', colourway: 'b' },
      ],
      spacing: { count: 6 },
    },
    ...more,
  })
const panel = (more: Partial<Project> = {}): Project =>
  project({
    layout: {
      kind: 'applique',
      panel: { shape: 'rectangle', width: 400, height: 400 },
      items: [100, 200, 300].map((x) => ({ motif: 'm', colourway: 'a', x, y: 200 })),
    },
    ...more,
  })

describe('the progress of a garland', () => {
  it('counts motifs as they hang, and the cord as far as they are fastened', () => {
    const plan = planProject(garland())
    expect(plan.motifs).toHaveLength(4)
    const some = garland({ made: { '1,1': '', '1,2': '', '1,3': '' }, joined: { '1,1': '', '1,2': '' } })
    // Fastened: motif, bead and motif, of six things.
    expect(progressOf(some)).toMatchObject({ made: 3, joined: 2, left: { motifs: 1, joins: 3 } })
    const cord = plan.yarns.find(({ id }) => id === 'clay')!.parts.cord!
    expect(progressOf(some).left.yarns.find(({ id }) => id === 'clay')!.parts.cord).toBeCloseTo(cord / 2, 9)
    expect(gramsOf(some).moss).toBeUndefined()
  })

  it('is not joined until it is said', () => {
    expect(progressOf(garland({ made: { '1,1': '' } }))).toMatchObject({ made: 1, joined: 0 })
    expect(codesOf(garland({ made: { '1,5': '', '2,1': '' } }))).toEqual(['progress/unknown-place'])
  })
})

describe('the progress of an appliqué', () => {
  it('counts items by their number, and the time to sew them down', () => {
    const plan = planProject(panel())
    const some = panel({ made: { '1,1': '', '1,2': '' }, joined: { '1,2': '' } })
    expect(progressOf(some)).toMatchObject({ made: 2, joined: 1, left: { motifs: 1, joins: 2 } })
    expect(gramsOf(some).moss).toBeCloseTo(3.3, 9)
    // One motif of three and its ends, and two of three to sew down.
    const ends = plan.ends
    const sewing = plan.minutes!.expected - 3 * 20 - ends
    expect(progressOf(some).left.minutes!.expected).toBeCloseTo(20 + ends / 3 + (sewing * 2) / 3, 6)
  })
})
