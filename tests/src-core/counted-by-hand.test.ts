/** Counts that somebody checked by hand and found wrong: squares of 60 mm, 20 sc in 10 cm; every number is made up. */
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../shared-types/project'
import { fromGallery } from '../../src-core/edging/gallery'
import { byLineWords, edgeTitle } from '../../src-core/edging/words'
import { pickUps } from '../../src-core/edging/pick-up'
import { knownSize } from '../../src-core/motif/ruler'
import { planProject, proposeProject, waysForProject } from '../../src-core/plan'
import { hexagons, ofKind, squares } from './edging/helpers'

const layoutOf = (project: Project) => project.layout as BlanketLayout
const withLayout = (project: Project, fields: Partial<BlanketLayout>): Project => ({
  ...project,
  layout: { ...layoutOf(project), ...fields },
})

describe('M26 straight-sided motifs are told by the measure that they are known by', () => {
  it('2 mm more from side to side are 2 mm more for each of a row', () => {
    const { sensitivity } = planProject(squares(8, 6, {})).size
    expect(sensitivity).toMatchObject({ step: 2 })
    expect(sensitivity.width).toBeCloseTo(16, 6)
    expect(sensitivity.height).toBeCloseTo(12, 6)
  })

  it('M29 a border that is written out is left out where that comes nearer', () => {
    const round = { work: 'ch 1, *sc in each st to next corner, 3 sc in corner; rep from * around, join' }
    const project = squares(6, 6, { written: [round, round] })
    const bare = planProject(squares(6, 6, {})).size
    const { ways } = waysForProject(project, { width: bare.width, height: bare.height })
    expect(ways.map(({ change }) => change)).toContain('3 fewer rounds of border')
  })

  it('M29 ways that take another gauge name the motif from side to side', () => {
    const project = hexagons(2, {})
    const { size, accounts, motif } = planProject(project)
    const known = knownSize(motif ?? accounts[0]!)
    const { ways } = waysForProject(project, { width: size.width * 1.02, height: size.height * 1.02 })
    const told = ways.flatMap(({ change }) => /motifs of ([\d.]+) mm/.exec(change)?.[1] ?? [])
    expect(told.length).toBeGreaterThan(0)
    for (const mm of told) expect(Math.abs(Number(mm) / known - 1)).toBeLessThan(0.07)
  })
})

describe('M19 a shawl out of shifted rows', () => {
  it('is alike left and right, its point in the middle', () => {
    const wish = { width: 1600, height: 800 }
    const flower = { id: 'm', name: 'Flower', kind: 'measured', outline: 'petals', petals: 6 } as const
    const project: Project = {
      ...squares(8, 8, {}),
      motifs: [{ ...flower, overTips: 80, overValleys: 60 }],
      joining: { rule: 'tips' },
    }
    const outlineShape = { kind: 'triangle', size: 1600, height: 800, points: 'down' } as const
    const { proposals } = proposeProject(withLayout(project, { outlineShape, edging: undefined }), wish)
    const shifted = proposals.filter(({ fit }) => fit.arrangement === 'offset-rows')
    expect(shifted.length).toBeGreaterThan(0)
    for (const { plan } of shifted) {
      const middles = [...new Set(plan.motifs.map(({ row }) => row))].map((row) => {
        const xs = plan.motifs.filter((motif) => motif.row === row).map(({ x }) => x)
        return (Math.min(...xs) + Math.max(...xs)) / 2
      })
      for (const middle of middles) expect(middle).toBeCloseTo(plan.size.width / 2, 6)
    }
  })
})

describe('colours of what came later, or is not there', () => {
  const two: Project = {
    ...squares(6, 4, {}),
    motifs: [...squares(6, 4, {}).motifs!, { ...squares(6, 4, {}).motifs![0]!, id: 'n' } as never],
    colourways: [
      { id: 'a', code: 'A', motif: 'm', yarns: {} },
      { id: 'b', code: 'B', motif: 'n', yarns: {} },
    ],
  }
  const mixed = withLayout(two, {
    alternate: { motifs: ['m', 'n'], by: 'cell' },
    cells: { fill: { pattern: 'one', colourways: ['a'], seed: 1 } },
  })

  it('a second motif takes its own colourway where the fill names none of it', () => {
    const plan = planProject(mixed)
    for (const { motif, colourway } of plan.motifs) expect(colourway).toBe(motif === 'n' ? 'b' : 'a')
    expect(plan.findings.map(({ code }) => code)).not.toContain('colours/no-colourway')
  })

  it('what is painted where an outline leaves it out waits there; what lies beyond the rows is told', () => {
    const found = (key: string) =>
      planProject(
        withLayout(squares(6, 6, {}), {
          outlineShape: { kind: 'circle', size: 300 },
          cells: { fill: { pattern: 'one', colourways: ['a'], seed: 1 }, painted: { [key]: 'a' } },
        }),
      ).findings.filter(({ code }) => code === 'file/unknown-cell')
    expect(found('1,1')).toEqual([])
    expect(found('9,1')).toHaveLength(1)
  })
})

describe('M36 a border', () => {
  it('that says a wrong count is told so by the count of all of it, and keeps its stitches', () => {
    const work = 'ch 1, *sc in next 4 sts, ch 5, sk 3 sts; rep from * around, join with sl st in first sc'
    const border = (words: string) =>
      planProject(
        squares(20, 14, {
          rounds: ['sc'],
          written: [{ work: words }, { work: 'sc in each ch-5 sp around' }],
        }),
      )
    const right = border(work)
    const wrong = border(`${work} (641 sc)`)
    const made = right.edging!.loops![0]!.made[0]!
    expect(wrong.edging!.loops).toEqual(
      right.edging!.loops!.map((loop) => ({ ...loop, texts: [`${work} (641 sc)`, loop.texts[1]] })),
    )
    const told = wrong.findings.filter(({ target }) => target?.edging !== undefined)
    expect(told.map(({ code }) => code)).toContain('rounds/wrong-end-count')
    const [count] = told.filter(({ code }) => code === 'rounds/wrong-end-count')
    expect(count!.message).toContain('641')
    expect(count!.message).toContain(`${made} sc`)
    expect(told.map(({ code }) => code)).not.toContain('rounds/no-such-space')
  })

  it('at both ends of a round has ends at each, and each motif of the row gives its stitches once', () => {
    const round = (edging: NonNullable<BlanketLayout['edging']>) =>
      planProject(withLayout(squares(8, 4, edging), { inTheRound: true }))
    const plan = round(ofKind('shell'))
    expect(plan.edging!.loops).toHaveLength(2)
    expect(plan.ends - round({}).ends).toBe(2 * 2)
    for (const loop of plan.edging!.loops!) {
      const picked = pickUps(plan, loop)
      expect(picked).toHaveLength(8)
      expect(picked.reduce((sum, { stitches }) => sum + stitches, 0)).toBe(loop.stitches)
    }
  })

  it('at the mouth of a bag alone, or its bottom, is half of both: stitches, ends, height, and where it lies', () => {
    const bag = (ends: 'both' | 'mouth' | 'bottom', edging = ofKind('shell'), columns = 8) =>
      planProject(withLayout(squares(columns, 4, { ...edging, ends }), { inTheRound: true }))
    for (const edging of [ofKind('shell'), { rounds: ['sc', 'dc'], written: [] }]) {
      const [both, mouth, bottom] = (['both', 'mouth', 'bottom'] as const).map((ends) => bag(ends, edging))
      const none = planProject(withLayout(squares(8, 4, {}), { inTheRound: true }))
      const of = (plan: typeof both) => plan!.edging!
      for (const one of [mouth, bottom]) {
        expect(of(one).length).toBeCloseTo(of(both).length / 2, 6)
        expect(one!.ends - none.ends).toBe((both!.ends - none.ends) / 2)
        expect(one!.size.width).toBeCloseTo(both!.size.width, 9)
        expect(one!.size.height).toBeCloseTo(none.size.height + of(one).height, 9)
        expect(of(one).rounds.map(({ stitches }) => 2 * stitches)).toEqual(
          of(both).rounds.map(({ stitches }) => stitches),
        )
      }
      // Row 1 lies as much lower as the edging at the mouth is high; sideways it takes no room, the round closes there.
      expect(mouth!.motifs[0]!.y - none.motifs[0]!.y).toBeCloseTo(of(mouth).height, 9)
      expect(bottom!.motifs[0]!.y).toBeCloseTo(none.motifs[0]!.y, 9)
      expect(both!.motifs[0]!.x).toBeCloseTo(none.motifs[0]!.x, 9)
      expect(both!.round).toEqual(none.round)
      expect(mouth!.edgingLines.map(({ length }) => length > 1)).toEqual([true, false])
      expect(bottom!.edgingLines.map(({ length }) => length > 1)).toEqual([false, true])
    }
    const { edging } = bag('both')
    const [{ made, repeats }] = edging!.loops as [
      NonNullable<typeof edging>['loops'] extends readonly (infer Loop)[] | undefined ? Loop : never,
    ]
    expect(byLineWords(bag('both'), 0)).toBe(`at each end ${made[0]} stitches, ${repeats[0]} repeats`)
    const [loop] = bag('bottom').edging!.loops!
    expect(edgeTitle(bag('bottom'), loop!)).toMatch(/^The bottom: the last row/)
    // Left out, it is worked at both, as in files before.
    expect(planProject(withLayout(squares(8, 4, ofKind('shell')), { inTheRound: true })).edging).toEqual(
      bag('both').edging,
    )
  })

  it('that ripples adds two sts at every tip and takes two at every dip, also where two tips come in a row', () => {
    const rings = hexagons(2, ofKind('ripple'))
    const rows = withLayout(rings, { arrangement: 'offset-rows', columns: 10, rows: 6 })
    for (const project of [rings, rows]) {
      const { loops, rounds } = planProject(project).edging!
      const [{ marks, stitches, made }] = loops as [NonNullable<typeof loops>[number]]
      const many = (kind: string) => marks.filter((mark) => mark.kind === kind).length
      expect(many('tip')).not.toBe(many('dip'))
      expect(made[0]).toBe(stitches + 2 * many('tip') - 2 * many('dip'))
      // No number of repeats holds that.
      expect(rounds.at(-1)!.repeats).toBe(1)
    }
  })

  it('begun anew leaves the way of meeting the edge that came with a ripple, and keeps one that was chosen', () => {
    const ripple = fromGallery({ rounds: ['sc'] }, 'ripple', 'US')
    expect(ripple.style).toBe('follow')
    expect(fromGallery(ripple, 'shell', 'US').style).toBeUndefined()
    expect(fromGallery({ rounds: ['sc'], style: 'level' }, 'shell', 'US').style).toBe('level')
    expect(fromGallery(ripple, 'ripple', 'US')).toEqual(ripple)
  })
})
