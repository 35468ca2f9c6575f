/** The edging, followed from nothing but the words of the pages: its counts come out as the plan has them. */
import { describe, expect, it } from 'vitest'
import { renderMap } from '../../../src-main/paper/index'
import { example, planOf } from './examples'
import { DATE, VERSION } from './projects'
import { readPdf } from './read-pdf'

async function printed(name: string) {
  const plan = planOf(example(name))
  const { pages } = await readPdf(await renderMap(plan, { date: DATE, version: VERSION }))
  return { rounds: plan.edging!.rounds, pages: pages.map(({ words }) => words) }
}

describe('an edging that bridges the dips', () => {
  it('is a stitch in every free tip, and the chains between them make what is said together', async () => {
    const { rounds, pages } = await printed('lantern-table-mat')
    const words = pages.find((page) => page.includes('in every free tip'))!
    const told = /in every free tip, ch (\d+) between: (\d+) dc and (\d+) chains/.exec(words)!
    const [chains, stitches, all] = told.slice(1).map(Number) as [number, number, number]
    expect(stitches * chains).toBe(all)
    expect([rounds[0]!.stitches, rounds[0]!.chains]).toEqual([stitches, all])
  })
})

describe('an edging in written rounds', () => {
  it('has as many stitches to pick up as its sides have, and repeats that use them all', async () => {
    const { rounds, pages } = await printed('orchard-floor-blanket')
    const words = pages.find((page) => page.startsWith('Edging'))!
    const second = /Round 2 .*?work (\d+) htr along the edge(.*?)Round 3/.exec(words)!
    const picked = Number(second[1])
    const sides = [...second[2]!.matchAll(/(\d+) (?:along|up|down) the (?:top|right side|bottom|left side)/g)]
    expect(sides).toHaveLength(4)
    expect(sides.reduce((sum, [, count]) => sum + Number(count), 0)).toBe(picked)
    expect(rounds[1]!.stitches).toBe(picked)
    // "*5 tr in next st, miss 2 sts, dc in next st, miss 2 sts; rep from * around": stitch for stitch.
    const third = /Round 3 \*(.*?); rep from \* around.*?\((\d+) sts, (\d+) repeats\)/.exec(words)!
    let [used, made] = [0, 0]
    for (const step of third[1]!.split(', ')) {
      const missed = /^miss (\d+) sts?$/.exec(step)
      const into = /^(?:(\d+) )?\w+ in next st$/.exec(step)
      expect(missed ?? into, step).not.toBeNull()
      used += missed ? Number(missed[1]) : 1
      made += into ? Number(into[1] ?? 1) : 0
    }
    const repeats = picked / used
    expect(Number(third[3])).toBe(repeats)
    expect(Number(third[2])).toBe(repeats * made)
    expect(rounds[2]!.stitches).toBe(repeats * made)
  })
})
