/** What was typed of the motif at the start is its measured size, also where it goes on from written rounds. */
import { describe, expect, it } from 'vitest'
import type { MeasuredSizes, Project, RoundsMotif } from '../../../shared-types/project'
import { takeApart } from '../../../src-core/notation/take-apart'
import { readPage } from '../../../src-core/page/read-page'
import { planProject } from '../../../src-core/plan'
import { laidAnew } from '../../../src-renderer/state/resize'
import { ownRoundsProject } from '../../../src-renderer/places/motif/rounds/own-rounds'
import { replaceRounds } from '../../../src-renderer/places/motif/rounds/edits'
import { ownProject, sizesOf } from '../../../src-renderer/start/own-motif'
import type { OwnMotif } from '../../../src-renderer/start/own-motif'
import { SETTINGS } from '../memory-bridge'

const PATTERN = `Round 1: With white, make a magic ring, ch 1 (does not count as a st), 12 sc in the ring, join with a sl st to the first sc. Fasten off white. (12 sc)
Round 2: Join lilac with a sl st in any st. *Ch 3, 2 tr in same st, 2 tr in next st, ch 3, sl st in same st, sl st in next st*; repeat from * to * 5 more times. (6 petals)
Round 3: With grey, join with a sl st to the top of the first ch 3, [sc in next 2 tr, 2 sc in next tr, sc in next tr, ch 1] around. Fasten off.`
const MADE = { kind: 'blanket', width: 1100, height: 1500 } as const
const pasted = (sizes: MeasuredSizes | undefined): Project => {
  const begun = ownRoundsProject(SETTINGS, MADE, sizes)
  return laidAnew(begun, replaceRounds(begun, 'm1', takeApart(PATTERN, 'US')))
}
const typed = (own: OwnMotif) => sizesOf(ownProject(SETTINGS, own, MADE))

describe('a size that was typed at the start', () => {
  it.each<[string, OwnMotif]>([
    ['tip to tip', { outline: 'petals', petals: 6, lead: 80 }],
    ['across', { outline: 'round', petals: 6, lead: 80 }],
    ['from side to side', { outline: 'square', petals: 6, lead: 80 }],
    ['of a leaf', { outline: 'leaf', petals: 6, lead: 80 }],
  ])('%s is the measure of the motif that the rounds make, a circle', (_, own) => {
    const project = pasted(typed(own))
    expect((project.motifs![0] as RoundsMotif).measured).toEqual({ across: 80 })
    const plan = planProject(project)
    expect(plan.motif).toMatchObject({ shape: 'round', provenance: 'measured' })
    expect(plan.motif!.overTips).toBeCloseTo(80, 6)
    // Laid out for it: as near to 110 × 150 cm as half a motif.
    expect(Math.abs(plan.size.width - 1100)).toBeLessThan(45)
    expect(Math.abs(plan.size.height - 1500)).toBeLessThan(45)
  })

  it('and none that was not typed: the rounds say how large it is', () => {
    expect(planProject(pasted(undefined)).motif!.provenance).not.toBe('measured')
  })
})

describe('a size in the words of a page', () => {
  it.each([
    ['My flower is about 8 cm / 3" across.', 80],
    ['The flowers are 3 in (7.5 cm) in diameter.', 76.2],
  ])('%s', (words, across) => {
    const text = `Meadow Flower\n\nHello all. ${words}\n\n${PATTERN}`
    const sizes = readPage(text, 'US').flatMap((fact) => (fact.kind === 'size' ? [fact.size] : []))
    expect(sizes).toEqual([{ of: 'motif', sizes: [['across', across]], blocked: null }])
  })
})
