/** M36, written rounds of an edging: counts, corners, multiples, heights and yarn against closed forms and the text. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { EdgingAccount } from '../../../shared-types/plan'
import type { Project } from '../../../shared-types/project'
import { EDGING_KINDS, galleryRounds } from '../../../src-core/edging/gallery'
import { edgingShapes } from '../../../src-core/figures/edging-shapes'
import { readRounds } from '../../../src-core/notation/read'
import { planProject } from '../../../src-core/plan'
import { resolveGauge, stitchYarn } from '../../../src-core/stitches/gauge'
import type { StitchKey } from '../../../src-core/stitches/table'
import { hexagons, ofKind, SIDE, squares, WIDTH } from './helpers'
import { runs } from '../../runs'

const gauge = resolveGauge({ stitch: 'sc', stitches: 20, rows: 22, over: 100 }, 'US')

function edgingOf(project: Project): EdgingAccount {
  const { edging } = planProject(project)
  if (!edging) throw new Error('no edging')
  return edging
}

/** What the reader of rounds makes of the words for each loop. */
const accountsOf = ({ loops = [] }: EdgingAccount, terms: 'US' | 'UK' = 'US') =>
  loops.map(({ texts, stitches }) => {
    const text = texts.map((words, i) => `Rnd ${i + 2}: ${words}`).join('\n')
    return readRounds(text, { terms, after: { stitches } })
  })

describe('M36 stitches of the border’s own', () => {
  const work = '*fan in next st, sk 2 sts, sc in next st, sk 2 sts; rep from * around.'
  const plain = '*5 dc in next st, sk 2 sts, sc in next st, sk 2 sts; rep from * around.'
  const bordered = (edging: object) => squares(8, 5, { rounds: ['sc'], ...edging })

  it('are read before its rounds: the same counts, height and yarn as in plain words', () => {
    const own = edgingOf(bordered({ special: 'Fan: 5 dc in same st.', written: [{ work }] }))
    const told = edgingOf(bordered({ written: [{ work: plain }] }))
    expect(own.multiple).toEqual(told.multiple)
    expect(own.rounds.map(({ stitches, repeats, height }) => [stitches, repeats, height])).toEqual(
      told.rounds.map(({ stitches, repeats, height }) => [stitches, repeats, height]),
    )
    expect(own.rounds[1]!.metres).toBeCloseTo(told.rounds[1]!.metres, 9)
    expect(
      planProject(bordered({ special: 'Fan: 5 dc in same st.', written: [{ work }] })).findings.filter(
        ({ code }) => code.startsWith('rounds/'),
      ),
    ).toEqual([])
  })

  it('without them the words cannot be read', () => {
    const { findings } = planProject(bordered({ written: [{ work }] }))
    expect(findings.some(({ code }) => code.startsWith('rounds/'))).toBe(true)
  })
})

describe('M36 the set-up round', () => {
  it('M36 picks stitches up at the gauge and brings every side to the multiple of its repeat', () => {
    const { loops, multiple, rounds } = edgingOf(squares(8, 5, ofKind('shell')))
    expect(multiple).toEqual({ of: 6, plus: 0, by: 'round' })
    // 480 × 300 mm at 5 mm a stitch, a corner of π/2 at the height of a sc: 96 + π/2·h/w and 60 + π/2·h/w stitches.
    const corner = ((Math.PI / 2) * gauge.height('sc')) / WIDTH
    const near = (side: number) => 6 * Math.round((side * SIDE) / WIDTH / 6 + corner / 6)
    expect(loops![0]!.stretches).toEqual([near(8), near(5), near(8), near(5)])
    expect(rounds[0]?.stitches).toBe(2 * (near(8) + near(5)))
  })

  // Repeats of 2 + 1 + 2 + 1 stitches, whichever of them stands first: 6 by hand.
  it.each([
    ['*skip 2 sts, 5 dc in next st, skip 2 sts, sc in next st; rep from * around, join.', 0],
    [
      'ch 1, *skip 2 sts, 5 dc in next st, skip 2 sts, sc in next st; rep from * around, join in first dc.',
      0,
    ],
    [
      'ch 1, *sc in next st, skip 2 sts, 5 dc in next st, skip 2 sts; rep from * around, join in first sc.',
      0,
    ],
    [
      'ch 1, sc in same st, *skip 2 sts, 5 dc in next st, skip 2 sts, sc in next st; rep from * to last 5 sts, skip 2 sts, 5 dc in next st, skip 2 sts, join.',
      0,
    ],
  ])('M36 finds the multiple wherever the repeat begins: %s', (work, plus) => {
    const project = squares(8, 5, { rounds: ['sc'], written: [{ work }] })
    const { multiple, rounds } = edgingOf(project)
    expect(multiple).toMatchObject({ of: 6, plus })
    expect(rounds[0]!.stitches % 6).toBe(plus)
    expect(planProject(project).findings.filter(({ code }) => code.startsWith('rounds/'))).toEqual([])
  })

  it('M36 brings all sides together to a repeat that runs on past the corners of a round before it', () => {
    // Corners of 3 sc make each corner 2 sts more: T + 2 · corners is a multiple of 6, whatever the single sides are.
    const written = [...galleryRounds('plain', 'US'), ...galleryRounds('shell', 'US')].map((work) => ({
      work,
    }))
    const four = planProject(squares(8, 5, { rounds: ['sc'], written }))
    expect(four.edging!.multiple).toEqual({ of: 6, plus: 4, by: 'round' })
    expect((four.edging!.rounds[0]!.stitches + 8) % 6).toBe(0)
    const six = planProject(hexagons(3, { rounds: ['sc'], written }))
    expect(six.edging!.multiple).toEqual({ of: 6, plus: 0, by: 'round' })
    expect((six.edging!.rounds[0]!.stitches + 12) % 6).toBe(0)
    for (const { edging, findings } of [four, six]) {
      expect(edging!.rounds[2]!.repeats! * 6).toBe(edging!.rounds[1]!.stitches)
      expect(findings.filter(({ code }) => code.startsWith('rounds/'))).toEqual([])
    }
    const said = ({ findings }: typeof four) => findings.filter(({ code }) => code.startsWith('edging/'))
    expect(said(four)).toEqual([])
    // 306 stitches are 51 repeats: of six sides of a length none has as many. 288 and 324 are 8 and 9 for each.
    expect(said(six).map(({ code }) => code)).toEqual(['edging/corners-differ'])
    expect(said(six)[0]!.message).toContain('48 or 54 repeats do, over 276 or 312 stitches instead of 294')
    // 52 on each side are eight repeats with the two more at a corner: three more along 49.
    expect(said(six)[0]!.mend).toMatch(
      /^The nearest number that comes out even on each side is 312: in round 1, work 2 in one stitch 3 times along each of the 6 sides of 49 sts, about every 12 sts\. Or work/,
    )
    // A repeat from corner to corner is told by the side still.
    const sides =
      'ch 1, *3 sc in corner, *ch 1, skip 1 st, sc in next st; rep from * to corner; rep from * around.'
    const own = planProject(squares(8, 5, { rounds: ['sc'], written: [{ work: sides }] })).edging!
    expect(own.multiple?.by).toBe('stretch')
  })

  it('M36 turns a sixth of a circle at each corner of a hexagon', () => {
    const { loops, rounds } = edgingOf(hexagons(3, ofKind('scallop')))
    expect(rounds[1]?.corners).toBe(6)
    expect(new Set(loops![0]!.stretches).size).toBe(1)
    // Six zigzags of hexagons: a ring of n has 12n + 6 free sides, each the side to side measure over √3 long.
    const length = (12 * 3 + 6) * (SIDE / Math.sqrt(3))
    const wanted = (length + 2 * Math.PI * gauge.height('sc')) / WIDTH
    expect(Math.abs(rounds[0]!.stitches - wanted)).toBeLessThanOrEqual(6 * 3)
  })

  it('M36 leaves files without written rounds as they were', () => {
    const plain = edgingOf(squares(8, 5, { rounds: ['sc', 'dc'] }))
    expect(plain.loops).toBeUndefined()
    expect(plain.rounds.map(({ stitches }) => stitches)).toEqual([
      Math.round((1560 + 2 * Math.PI * gauge.height('sc')) / WIDTH),
      // Five dc in each of four corners.
      Math.round((1560 + 2 * Math.PI * gauge.height('sc')) / WIDTH) + 4 * 4,
    ])
  })

  it('M36 works written rounds into one of sc where none is named', () => {
    const edging = edgingOf(squares(8, 5, { written: [{ work: galleryRounds('picot', 'US')[0]! }] }))
    expect(edging.rounds.map(({ stitch }) => stitch)).toEqual(['sc', galleryRounds('picot', 'US')[0]])
  })

  it('M36 bridges with as many chains as the rounds above come out even on', () => {
    const edging = edgingOf(squares(8, 5, { ...ofKind('picot'), style: 'bridge' }))
    const [first] = edging.rounds
    expect((first!.stitches + first!.chains) % 3).toBe(0)
    expect(first!.stitches + first!.chains).toBe(edging.loops![0]!.stitches)
  })
})

describe('M36 written rounds', () => {
  it.each(EDGING_KINDS)(
    'M36 counts of %s agree with the account of its words, in US and UK terms',
    (kind) => {
      for (const terms of ['US', 'UK'] as const) {
        const setUp = [terms === 'US' ? 'sc' : 'dc']
        for (const project of [
          squares(6, 4, ofKind(kind, terms, setUp), terms),
          hexagons(2, ofKind(kind, terms, setUp), terms),
        ]) {
          const plan = planProject(project)
          const edging = plan.edging!
          const said = plan.findings.filter(({ where }) => where.includes('written'))
          expect(said.filter(({ severity }) => severity === 'error')).toEqual([])
          for (const [i, { rounds, findings }] of accountsOf(edging, terms).entries()) {
            expect(findings.filter(({ severity }) => severity === 'error')).toEqual([])
            expect(rounds.map(({ made }) => made)).toEqual(edging.loops![i]!.made)
            expect(rounds[0]?.consumed?.stitches).toBe(edging.loops![i]!.stitches)
          }
          expect(edging.rounds[1]!.stitches).toBe(edging.loops!.reduce((sum, { made }) => sum + made[0]!, 0))
        }
      }
    },
  )

  it('M36 works three in every corner, and one side more by what they add', () => {
    const work = galleryRounds('plain', 'US')[0]!
    const edging = edgingOf(squares(6, 4, { rounds: ['sc'], written: [{ work }, { work }, { work }] }))
    const [setUp, ...written] = edging.rounds.map(({ stitches }) => stitches)
    // Eight more in a round: four corners of three in one.
    expect(written).toEqual([setUp! + 8, setUp! + 16, setUp! + 24])
    expect(edging.rounds[1]?.corners).toBe(4)
  })

  it('M36 increases a ripple at tips and decreases it at dips', () => {
    const edging = edgingOf(hexagons(2, ofKind('ripple')))
    const marks = edging.loops![0]!.marks
    const [tips, dips] = (['tip', 'dip'] as const).map(
      (kind) => marks.filter((mark) => mark.kind === kind).length,
    )
    // 30 free sides of 19 hexagons: 18 corners that stand out, 12 where two hexagons meet.
    expect([tips, dips]).toEqual([18, 12])
    expect(edging.rounds[1]!.stitches - edging.rounds[0]!.stitches).toBe(2 * (tips! - dips!))
  })

  it('M36 yarn is the sum over the stitches, in each round’s own yarn', () => {
    const shell = ofKind('shell')
    const project = squares(8, 5, { ...shell, written: [{ ...shell.written![0], yarn: 'y2' }] })
    const plan = planProject(project)
    const [setUp, round] = plan.edging!.rounds
    const sum = Object.entries(round!.worked!).reduce(
      (total, [stitch, count]) => total + count! * stitchYarn(stitch as StitchKey, gauge),
      0,
    )
    expect(round!.metres).toBeCloseTo(sum / 1000, 9)
    expect(round!.yarn).toBe('y2')
    const repeats = round!.repeats!
    expect(round!.worked).toEqual({ ch: 1, dc: 5 * repeats, sc: repeats, 'sl st': 1 })
    const grams = (id: string) => plan.yarns.find((yarn) => yarn.id === id)!.parts.edging
    expect(grams('y2')).toBeCloseTo((round!.metres * 50) / 125, 6)
    expect(grams('y1')).toBeCloseTo((setUp!.metres * 100) / 200, 6)
    // Each yarn has a beginning and an end.
    expect(plan.ends).toBe(planProject(squares(8, 5, ofKind('shell'))).ends + 2)
  })

  it('M36 is as high as the tallest stitch of each round, picots on the last one alone', () => {
    const [sc, dc] = [gauge.height('sc'), gauge.height('dc')]
    expect(edgingOf(squares(8, 5, ofKind('shell'))).height).toBeCloseTo(sc + dc, 9)
    const picot = galleryRounds('picot', 'US')[0]!
    const one = edgingOf(squares(8, 5, { rounds: ['sc'], written: [{ work: picot }] }))
    expect(one.height).toBeCloseTo(2 * sc + 0.35 * 3 * WIDTH, 9)
    const under = edgingOf(
      squares(8, 5, { rounds: ['sc'], written: [{ work: picot }, { work: 'sc in each st around.' }] }),
    )
    expect(under.height).toBeCloseTo(3 * sc, 9)
    const { size } = planProject(squares(8, 5, ofKind('shell')))
    expect(size.width).toBeCloseTo(8 * SIDE + 2 * (sc + dc), 6)
  })

  it('M36 says what does not come out even, and what pulls in', () => {
    const told = (work: string) =>
      planProject(squares(6, 4, { rounds: ['sc'], written: [{ work }] }))
        .findings.filter(({ where }) => where.includes('written'))
        .map(({ code }) => code)
    expect(told('*sk 1 st, sc in next st; rep from * around.')).toContain('edging/cups')
    expect(told('*2 sc in next st; rep from * around.')).toContain('edging/ruffles')
    expect(told('*sc in next 40 sts, 3 sc in corner; rep from * around.')).toEqual(['edging/marks-missed'])
    expect(told(galleryRounds('shell', 'US')[0]!)).toEqual([])
    // It stands at the round that it is about, whatever is written above.
    const missed = planProject(
      squares(6, 4, {
        rounds: ['sc'],
        written: [
          { work: '*sc in each st to corner, 3 sc in corner; rep from * around.' },
          { work: '*sc in next 40 sts, 3 sc in corner; rep from * around.' },
        ],
      }),
    ).findings.find(({ code }) => code === 'edging/marks-missed')
    expect(missed).toMatchObject({ target: { edging: 1 } })
    expect(missed!.where).toContain('layout.edging.written[1]')
    expect(missed!.mend).toContain('“*3 sc in corner, sc in each st to next corner; rep from * around”')
  })

  it('shows how to say it in the terms of whoever reads', () => {
    const written = [{ work: '*dc in next 40 sts, 3 dc in corner; rep from * around.' }]
    const { findings } = planProject(squares(6, 4, { rounds: ['dc'], written }, 'UK'))
    const missed = findings.find(({ code }) => code === 'edging/marks-missed')
    expect(missed!.mend).toContain('“*3 dc in corner, dc in each st to next corner; rep from * around”')
    expect(missed!.mend).not.toContain('US terms')
  })

  it('says each thing at its own round and at its word there, as it was written', () => {
    const works = [
      'Rnd 2:\n  *sc in each st to next corner, 3 flurb in corner; rep from * around',
      '',
      'sc in next st, flurb in next st',
      'dc in next 5 sts, wibble in next st',
    ]
    const found = planProject(
      squares(6, 4, { rounds: ['sc'], written: works.map((work) => ({ work })) }),
    ).findings.filter(({ code }) => code === 'rounds/unknown-abbreviation')
    const wordOf = ({ target }: (typeof found)[number]) => {
      const start = (target?.column ?? 0) - 1
      return works[target?.edging ?? -1]?.slice(start, start + (target?.length ?? 0))
    }
    expect(found.map((each) => [each.target?.edging, each.target?.round, wordOf(each)])).toEqual([
      [0, 2, 'flurb'],
      [2, 3, 'flurb'],
      [3, 4, 'wibble'],
    ])
    const { column } = found[0]!.target!
    expect(found[0]!.where).toBe(`layout.edging.written[0], round 2, column ${column}: "flurb"`)
  })

  it('M36 property: the set-up fits the repeat, and a long loop counts as it does when read whole', () => {
    const repeats = ['shell', 'picot', 'scallop'] as const
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 30 }),
        fc.integer({ min: 2, max: 30 }),
        fc.constantFrom(...repeats),
        (columns, rows, kind) => {
          const edging = edgingOf(squares(columns, rows, ofKind(kind)))
          expect(edging.loops![0]!.stitches % edging.multiple!.of).toBe(0)
          const [read] = accountsOf(edging)
          const [account] = read!.rounds
          const [, round] = edging.rounds
          expect(account!.made).toBe(round!.stitches)
          expect(account!.picots).toBe(round!.picots)
          expect(account!.stitches).toEqual(round!.worked)
        },
      ),
      { numRuns: runs(25) },
    )
  })

  it('M36 answers whatever is typed, in any order, and draws what it can', () => {
    const typed = [
      '*',
      '(((((',
      '3 sc in corner',
      'ch 99999',
      'sc in next 999999 sts',
      '*sc in each st to next dip; rep from * around.',
      '*(sc in next st) to next corner; rep from * around.',
      '*3 sc in corner, sc in each st to next corner; rep from * around.',
      'sc in each st to next corner, '.repeat(200),
      'Rnd 7: sc in each st around. Rnd 8: ch 1.',
    ]
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...typed), { minLength: 1, maxLength: 3 }), (works) => {
        const plan = planProject(squares(4, 3, { rounds: ['sc'], written: works.map((work) => ({ work })) }))
        expect(Number.isFinite(plan.size.width)).toBe(true)
        expect(plan.edging!.rounds).toHaveLength(1 + works.length)
        expect(edgingShapes(plan)?.rounds).toHaveLength(1 + works.length)
      }),
      { numRuns: runs(25) },
    )
  })
})
