/** docs/holding.md follows from the engine: a part of it is made anew, and its counts are checked independently. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { caseProject, cases, row, SIZES } from '../../../scripts/holding-table'
import { proposeProject } from '../../../src-core/plan'
import { countTogether } from '../joins/together'

const page = readFileSync(new URL('../../../docs/holding.md', import.meta.url), 'utf8')
const lines = page.split('\n').filter((line) => /^\| (\d|round|square|hexagon|octagon|leaf)/.test(line))

describe('docs/holding.md', () => {
  it('has every outline, petal count, profile and size, and says of each whether it holds', () => {
    expect(lines).toHaveLength(cases().length * SIZES.length)
    for (const line of lines) {
      const cells = line.split('|').map((cell) => cell.trim())
      const [pieces, single, verdict] = cells.slice(10, 13)
      expect(verdict === 'none holds', line).toBe(pieces !== '1' || single !== '0')
    }
  })

  // A sample that is run again each time: the counts that fell apart at rotation 0, and one of each other outline.
  const sample = cases().filter(
    ({ name, profile }) =>
      /^[34578] petals$|^10 petals$|^(round|square|hexagon|octagon|leaf)$/.test(name) &&
      profile !== 0.5 &&
      profile !== 0.8,
  )
  it.each(sample.map((each) => [each.name, each] as const))('%s: as the engine answers today', (_, each) => {
    const size = SIZES[1]
    expect(lines).toContain(row(each, size))
    const [width, height] = size
    const [first] = proposeProject(caseProject(each.motif), { width, height }, undefined, 1).proposals
    const { pieces, single } = first!.fit
    expect(countTogether(first!.plan)).toEqual({ pieces, single })
    expect({ pieces, single }).toEqual({ pieces: 1, single: 0 })
  })

  it('seven petals of 82/60 mm for 130 × 160 cm are one piece', () => {
    const motif = {
      id: 'm',
      kind: 'measured',
      outline: 'petals',
      petals: 7,
      overTips: 82,
      overValleys: 60,
    } as const
    const [first] = proposeProject(caseProject(motif), { width: 1300, height: 1600 }, undefined, 1).proposals
    expect(countTogether(first!.plan)).toEqual({ pieces: 1, single: 0 })
    expect(first).toMatchObject({ points: 764, rule: 'tips', fit: { columns: 16, rows: 20 } })
  })
})
