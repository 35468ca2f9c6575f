/** Sheets of large maps: each holds its own part of a long border, and half motifs cost no sheets. */
import { describe, expect, it } from 'vitest'
import { mapPages, renderMap } from '../../../src-main/paper/index'
import { record } from '../../src-core/figures/recorder'
import { DATE, flowers, planned, VERSION } from './projects'

const follow = { style: 'follow' as const, rounds: ['sc'], yarn: 'y1' }
const options = { date: DATE, version: VERSION, style: 'ink' } as const

describe('a large map with a border that follows its edge', () => {
  it('stays within 2 MB with half motifs at ten thousand', { timeout: 240_000 }, async () => {
    const { plan } = planned(
      flowers({ columns: 100, rows: 100, turn: 0, alternateRows: 'oneFewer', halves: true, edging: follow }),
    )
    expect(plan.motifs.length + plan.halves.length).toBeGreaterThan(10_000)
    expect((await renderMap(plan, options)).length).toBeLessThan(2_000_000)
  })

  it('has as many sheets with half motifs as without, and the number of each half on one of them', () => {
    const sheets = (halves: boolean) => {
      const { plan } = planned(
        flowers({ columns: 30, rows: 40, turn: 0, alternateRows: 'oneFewer', halves, edging: follow }),
      )
      const pages = mapPages(plan, { date: DATE, style: 'ink', leaveOut: ['order'] })
      return { plan, tiles: pages.filter(({ section }) => section === 'sheet') }
    }
    const [none, some] = [sheets(false), sheets(true)]
    expect(none.tiles.length).toBeGreaterThan(1)
    expect(some.tiles.length).toBeLessThanOrEqual(none.tiles.length + 1)
    const told = new Set(some.tiles.flatMap(({ figure }) => record(figure).texts.map(({ text }) => text)))
    const missing = some.plan.halves.filter(({ label }) => !told.has(label))
    expect(some.plan.halves.length).toBeGreaterThan(20)
    expect(missing).toEqual([])
  })
})
