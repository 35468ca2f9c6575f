/** The edging, followed from nothing but the words of the pages: its counts come out as the plan has them. */
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { fromGallery } from '../../../src-core/edging/gallery'
import { planProject } from '../../../src-core/plan'
import { listExamples } from '../../../src-main/documents'
import { mapPages, renderMap } from '../../../src-main/paper/index'
import { record } from '../../src-core/figures/recorder'
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
    const told = /in every free tip, (\d+) ch between: (\d+) dc and (\d+) chains/.exec(words)!
    const [chains, stitches, all] = told.slice(1).map(Number) as [number, number, number]
    expect(stitches * chains).toBe(all)
    expect([rounds[0]!.stitches, rounds[0]!.chains]).toEqual([stitches, all])
  })
})

/**
 * "between two tips of one motif ch 8; from one motif to the next ch 15 in 8 gaps and ch 18 in 4", in UK terms "8 ch": its
 * gaps, by count.
 */
function gapsIn(words: string): { chains: number; gaps: number | null }[] {
  return [...words.matchAll(/(?:\bch (\d+)|(\d+) ch\b)(?: in (\d+)(?: gaps?)?)?/g)].map(
    ([, before, behind, gaps]) => ({
      chains: Number(before ?? behind),
      gaps: gaps === undefined ? null : Number(gaps),
    }),
  )
}

/** "along the straight side of each of 3 half motifs 15 more sc": how many sides, and the stitches on them all. */
function straightIn(words: string): { sides: number; stitches: number } {
  const told = /straight side .*? evenly/.exec(words)?.[0] ?? ''
  const groups = [...told.matchAll(/of (?:each of (\d+)|one)(?: half motifs?)? (\d+) more/g)]
  return groups.reduce(
    (sum, [, many = '1', each]) => ({
      sides: sum.sides + Number(many),
      stitches: sum.stitches + Number(many) * Number(each),
    }),
    { sides: 0, stitches: 0 },
  )
}

describe('an edging whose written rounds are worked into one that bridges the dips', () => {
  const bridging = listExamples().flatMap(({ name, text }) => {
    const project = JSON.parse(text) as Project
    const { layout } = project
    // Squares and triangles that lie side on side have no tips to bridge.
    if (layout?.kind !== 'blanket' || !layout.edging || layout.inTheRound) return []
    const { yarn, rounds } = layout.edging
    const edging = {
      ...fromGallery({ rounds: rounds?.slice(0, 1) ?? [] }, 'shell', project.terms ?? 'US'),
      yarn,
    }
    return [{ name, project: { ...project, layout: { ...layout, edging: { ...edging, style: 'bridge' } } } }]
  })

  it.each(bridging)('says on its page every stitch and chain of $name, side by side', ({ project }) => {
    const plan = planProject(project as Project)
    const pages = mapPages(plan, { date: DATE, leaveOut: ['order'] })
    const page = pages.find(({ section }) => section === 'edging')!
    const words = record(page.figure)
      .texts.map(({ text }) => text)
      .join(' ')
    const [loop] = plan.edging!.loops!
    const { gaps, marks, straight = [] } = loop!.bridged!
    const stitchesIn = [...gaps, ...straight].reduce((sum, each) => sum + each, 0)
    expect(gaps.length + stitchesIn).toBe(loop!.stitches)
    expect(words).not.toMatch(/in one place|into one place|shared out/)
    const [, told = '', atCorner = ''] =
      /One \w+ goes into every free \w+(?: and both ends of the straight side of each half motif)? with chains between\. (.*?\.) At each corner (.*?)\. Round 2|$/.exec(
        words,
      )!
    // "the 4th of 7 chains between the two outermost tips", or the stitch in the outermost tip.
    const [, at, of] = /the (\d+)\w\w of (\d+) chains/.exec(atCorner) ?? []
    const corner = at === undefined ? null : { at: Number(at), of: Number(of) }
    const sides = told.split(/(?<=\.) /).flatMap((side) => {
      const [, where = '', stitches = '', between = ''] = /^(.*?): (\d+) \w+, (.*)\.$/.exec(side)!
      const many = /each corner/.test(where) ? marks.length : where.split(/,| and /).length
      return Array.from({ length: many }, () => ({ tips: Number(stitches), between }))
    })
    expect(sides).toHaveLength(marks.length)
    const all = sides.reduce((sum, { tips, between }) => {
      const halves = straightIn(between)
      const inGaps = tips - (corner ? 1 : 0) - halves.stitches - halves.sides
      const spans = gapsIn(between)
      const open = spans.filter(({ gaps: many }) => many === null)
      // Of a span without a count there are as many gaps as the others leave; of two such, one is between the tips of one.
      const known = spans.reduce((total, { chains, gaps: many }) => total + chains * (many ?? 0), 0)
      const left = inGaps - spans.reduce((total, { gaps: many }) => total + (many ?? 0), 0)
      const least = Math.min(...open.map(({ chains }) => chains), Infinity)
      const most = Math.max(...open.map(({ chains }) => chains), 0)
      const [low, high] = open.length === 0 ? [0, 0] : [least * left, most * left]
      return {
        low: sum.low + tips + known + low + (corner?.of ?? 0),
        high: sum.high + tips + known + high + (corner?.of ?? 0),
      }
    }, { low: 0, high: 0 }) // prettier-ignore
    expect(all.low).toBeLessThanOrEqual(loop!.stitches)
    expect(all.high).toBeGreaterThanOrEqual(loop!.stitches)
    for (const { tip, chain } of marks)
      expect(corner).toEqual(chain === 0 ? null : { at: chain, of: gaps[tip] })
  })
})

describe('an edging in written rounds', () => {
  it('has as many stitches to pick up as its sides have, and repeats that use them all', async () => {
    const { rounds, pages } = await printed('orchard-floor-blanket')
    const words = pages.find((page) => page.startsWith('Edging'))!
    const second =
      /Round 2 htr in each stitch and evenly over the chains, .*?: (\d+) htr, counted(.*?)Round 3/.exec(
        words,
      )!
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
