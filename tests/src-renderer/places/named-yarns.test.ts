/** Colours that the text of a pattern names: each gets a yarn, called and coloured after it. */
import { describe, expect, it } from 'vitest'
import type { Project, RoundsMotif } from '../../../shared-types/project'
import { takeApart } from '../../../src-core/notation/take-apart'
import { projectOfPage } from '../../../src-core/page/project-of-page'
import { ownRoundsProject } from '../../../src-renderer/places/motif/rounds/own-rounds'
import { replaceRounds } from '../../../src-renderer/places/motif/rounds/edits'
import { proposalsFor, takeProposals } from '../../../src-core/page/proposals'
import { SETTINGS } from '../memory-bridge'

const PATTERN = `Round 1: With white, make a magic ring, ch 1 (does not count as a st), 12 sc in the ring, join with a sl st to the first sc. Fasten off white. (12 sc)
Round 2: Join lilac with a sl st in any st. *Ch 3, 2 tr in same st, 2 tr in next st, ch 3, sl st in same st, sl st in next st*; repeat from * to * 5 more times. (6 petals)
Round 3: With dark green, join with a sl st to the top of the first ch 3, [sc in next 2 tr, 2 sc in next tr, sc in next tr, ch 1] around. Fasten off.`

const begun = () => ownRoundsProject(SETTINGS, { kind: 'blanket', width: 1100, height: 1500 })
const pasted = (project: Project, text = PATTERN) => replaceRounds(project, 'm1', takeApart(text, 'US'))
const yarnOf = (project: Project, slot: string) => {
  const id = project.colourways![0]!.yarns![slot]
  return project.yarns!.find((yarn) => yarn.id === id)
}
const slots = (project: Project) => (project.motifs![0] as RoundsMotif).rounds!.map(({ slot }) => slot ?? '')

describe('colours that a pattern names', () => {
  it('have a yarn each, called and colored after them, and are called by their words alone', () => {
    const project = pasted(begun())
    expect(slots(project)).toEqual(['white', 'lilac', 'dark green'])
    expect(project.yarns!.map(({ name }) => name)).toEqual(['White', 'Lilac', 'Dark green'])
    // By the table of the program: green (#4f8f54), a third of the way to black.
    expect(project.yarns!.map(({ colour }) => colour)).toEqual(['#f7f5ef', '#bfa3d1', '#356038'])
    expect(slots(project).map((slot) => yarnOf(project, slot)?.name)).toEqual([
      'White',
      'Lilac',
      'Dark green',
    ])
  })

  it('take yarns that are there by their names, and rename none that somebody entered', () => {
    const before = begun()
    const yarns = [
      { ...before.yarns![0]!, id: 'y1', name: 'Cotton DK, lilac', colour: '#aa99cc' },
      { ...before.yarns![1]!, id: 'y2', name: 'Main yarn', onHandBalls: 3 },
    ]
    const project = pasted({ ...before, yarns })
    expect(yarnOf(project, 'lilac')).toEqual(yarns[0])
    expect(project.yarns!.map(({ name }) => name)).toEqual([
      'Cotton DK, lilac',
      'Main yarn',
      'White',
      'Dark green',
    ])
    expect(new Set(slots(project).map((slot) => yarnOf(project, slot)?.id)).size).toBe(3)
  })

  it('are never two in one yarn, letters neither', () => {
    const letters = PATTERN.replaceAll('white', 'A').replace('lilac', 'B').replace('dark green', 'C')
    const project = pasted(begun(), letters)
    expect(slots(project)).toEqual(['color A', 'color B', 'color C'])
    expect(slots(project).map((slot) => yarnOf(project, slot)?.name)).toEqual([
      'Main yarn',
      'Second yarn',
      'Yarn',
    ])
  })

  it('keep the colors of a file of today, read again, whatever order they come in', () => {
    const before = pasted(begun())
    const named = JSON.stringify(before).replaceAll('"lilac"', '"color lilac"')
    const project = pasted(JSON.parse(named) as Project)
    expect(slots(project)).toEqual(['white', 'color lilac', 'dark green'])
    expect(project.yarns).toEqual(before.yarns)
    const turned = PATTERN.replaceAll('white', '#').replaceAll('lilac', 'white').replaceAll('#', 'lilac')
    const again = pasted(before, turned)
    expect(slots(again)).toEqual(['lilac', 'white', 'dark green'])
    expect(yarnOf(again, 'lilac')?.name).toBe('Lilac')
  })

  it('are one yarn with the one that the page lists for them', () => {
    const project = pasted(
      begun(),
      `Yarn: Meadow DK (50 g/110 m) in white, lilac and dark green\n\n${PATTERN}`,
    )
    const ids = proposalsFor(project, 'm1', 'round').map(({ id }) => id)
    const taken = takeProposals(project, 'm1', ids, 'round')
    expect(taken.yarns).toHaveLength(3)
    expect(yarnOf(taken, 'lilac')).toMatchObject({ name: 'Meadow DK, lilac', ballMetres: 110 })
  })

  it('make yarns of a page that is read from the command line, too', () => {
    const project = projectOfPage(PATTERN, 'US', 'Wheel')!
    expect(project.yarns!.map(({ name }) => name)).toEqual(['White', 'Lilac', 'Dark green'])
    expect(project.colourways![0]!.yarns).toEqual({ white: 'y1', lilac: 'y2', 'dark green': 'y3' })
  })
})
