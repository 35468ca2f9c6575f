/** The first pattern of an empty project says in which terms and units it is; one with words of its own keeps its terms. */
import { describe, expect, it } from 'vitest'
import type { Project, RoundsMotif } from '../../../shared-types/project'
import { takeApart } from '../../../src-core/notation/take-apart'
import { proposalsFor, takeProposals } from '../../../src-core/page/proposals'
import { projectOfPage } from '../../../src-core/page/project-of-page'
import { settled } from '../../../src-core/settled'
import { replaceRounds } from '../../../src-renderer/places/motif/rounds/edits'
import { termsWords } from '../../../src-renderer/places/motif/rounds/first-page'
import { ownRoundsProject } from '../../../src-renderer/places/motif/rounds/own-rounds'
import { SETTINGS } from '../memory-bridge'

const UK = `Bramble Square
This pattern uses UK crochet terms.
Tension: 17 tr and 9 rows to 10 cm.

Using A, make a magic ring.
Round 1: 3 ch (counts as 1 tr), 2 tr into ring, *2 ch, 3 tr into ring; rep from * twice more, 2 ch, ss into top of 3 ch. [12 tr]
Round 2: Join B to any corner sp, 1 ch, 3 dc into same sp, ss into first dc.`
const begun = (): Project =>
  ownRoundsProject(
    { ...SETTINGS, units: 'imperial', terms: 'US' },
    { kind: 'blanket', width: 1100, height: 1500 },
  )
const pasted = (project: Project, text = UK) => {
  const taken = takeApart(text, settled(project).terms)
  return { after: replaceRounds(project, 'm1', taken), taken }
}
const works = (project: Project | null) =>
  (project?.motifs?.[0] as RoundsMotif).rounds!.map(({ work }) => work)

describe('the first pattern of a project', () => {
  it('brings its terms and units, as it does on the command line', () => {
    const { after, taken } = pasted(begun())
    expect(after).toMatchObject({ terms: 'UK', units: 'metric', sheet: { terms: 'UK' } })
    expect(works(after)).toEqual(works(projectOfPage(UK, 'UK', undefined)))
    expect(works(after)[0]).toContain('2 tr into ring')
    expect(termsWords(begun(), after, taken)).toBe(
      ' The project is in UK terms and metric now, as the pattern is.',
    )
    const ids = proposalsFor(after, 'm1', null).map(({ id }) => id)
    const all = takeProposals(after, 'm1', ids, 'straight')
    expect(all.motifs![0]!.gauge).toMatchObject({ stitch: 'tr', stitches: 17 })
  })

  it('leaves the units where it tells no measure, and everything where it is in the same terms', () => {
    expect(pasted(begun(), UK.replace(/Tension.*\n/, '')).after).toMatchObject({
      terms: 'UK',
      units: 'imperial',
    })
    const us = 'Rnd 1: Magic ring, ch 1, 8 sc in ring; join with sl st in first sc. (8 sc)'
    const { after, taken } = pasted(begun(), us)
    expect(after).toMatchObject({ terms: 'US', units: 'imperial' })
    expect(termsWords(begun(), after, taken)).toBe('')
  })

  it('is put into the terms of a project that has words of its own, and that is said', () => {
    const motif: RoundsMotif = {
      ...(begun().motifs![0] as RoundsMotif),
      rounds: [{ slot: 'main', work: 'ch 1, 6 sc in ring, join with sl st in first sc' }],
    }
    const own = { ...begun(), motifs: [motif] }
    const { after, taken } = pasted(own)
    expect(after).toMatchObject({ terms: 'US', units: 'imperial' })
    expect(works(after)[0]).toContain('2 dc into ring')
    expect(termsWords(own, after, taken)).toBe(
      ' Written in UK terms; they stand here in US terms, which this project uses.',
    )
    const another = { ...begun(), motifs: [...begun().motifs!, { ...motif, id: 'm2' }] }
    expect(pasted(another).after.terms).toBe('US')
  })
})
