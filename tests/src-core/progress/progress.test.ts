import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { madeYarnAdvice, madeYarnWords } from '../../../src-core/progress/words'
import { planProject } from '../../../src-core/plan'
import { listExamples } from '../../../src-main/documents/examples'
import { readProjectText } from '../../../src-main/documents/read'
import { markLoose } from '../../../src-core/progress/mark'
import { remeasuredWords, waitingWords } from '../../../src-core/progress/words'
import { isDay } from '../../../src-core/progress/days'
import { disc, codesOf, findingsOf, first, gramsOf, progressOf, project } from './project'
import { runs } from '../../runs'

/** Nothing stands between or beside the motifs. */
const NO_OTHERS = { counts: { motifs: 12, byColourway: {} } }

describe('what is made and what is left', () => {
  it.each(listExamples())(
    'counts join points of $name as its plan does, until all that meet there are joined',
    ({ text }) => {
      const read = readProjectText(text)
      if (read.kind !== 'opened' || read.project.layout?.kind !== 'blanket') return
      const { made: _, joined: __, ...bare } = read.project
      const plan = planProject(bare)
      const steps = plan.order.map(({ motif }) => motif)
      const left = (count: number) =>
        planProject({
          ...{ ...bare, made: {} },
          joined: Object.fromEntries(steps.slice(0, count).map((id) => [id, ''])),
        }).progress.left.joins
      expect(plan.progress.left.joins).toBe(plan.counts.joins)
      expect(left(1)).toBe(plan.counts.joins)
      const ids = [...plan.motifs, ...plan.halves, ...plan.fillers].map(({ id }) => id)
      const all = Object.fromEntries(ids.map((id) => [id, '']))
      expect(planProject({ ...bare, made: all, joined: all }).progress.left.joins).toBe(0)
    },
  )

  it('is all of it where nothing is marked: the same yarn, time and ends as the plan', () => {
    const plan = planProject(project())
    expect(plan.progress).toMatchObject({ made: 0, joined: 0, forecast: [], days: [] })
    expect(plan.progress.left).toMatchObject({ motifs: 12, minutes: plan.minutes, ends: plan.ends })
    expect(gramsOf(project())).toEqual(
      Object.fromEntries(plan.yarns.map(({ id, grams }) => [id, grams.expected])),
    )
    // An empty record is as good as none.
    expect(planProject(project({ made: {} })).progress).toEqual(plan.progress)
  })

  it('is counted by the accounts of the motifs that are left', () => {
    // Row 1 and half of row 2: 4 of A and 2 of B are made; 4 of A and 2 of B are left.
    const some = project({ made: first(6) })
    expect(progressOf(some)).toMatchObject({ made: 6, joined: 6, left: { motifs: 6 } })
    const grams = gramsOf(some)
    // 6 middles, 4 rims of moss, 2 rims of clay, each and 10 %.
    expect(grams.sand).toBeCloseTo(6 * 1.1, 9)
    expect(grams.moss).toBeCloseTo(4 * 3 * 1.1, 9)
    expect(grams.clay).toBeCloseTo(2 * 3 * 1.1, 9)
  })

  it('counts time for the motifs, joins and ends that are left', () => {
    // Motifs 7 to 12: 7 and 8 join left and up, 9 up alone, 10 to 12 left and up: 2 + 2 + 1 + 3 · 2 joins.
    const { left } = progressOf(project({ made: first(6) }))
    expect(left.joins).toBe(11)
    // Two colours, each with two ends: 24.
    expect(left.ends).toBe(24)
    expect(left.hours).toBeCloseTo((6 * 20 + 11 * 1 + 24 * 1) / 60, 9)
    expect(left.minutes!.expected).toBeCloseTo(155, 9)
  })

  it('knows no hours where nobody said how long a motif takes', () => {
    const untimed = project({ motifs: [{ ...project().motifs![0]!, minutes: undefined }], made: first(6) })
    expect(progressOf(untimed).left).toMatchObject({ hours: null, minutes: null, motifs: 6 })
  })

  it('leaves the edging when all motifs are made, and nothing when that is marked too', () => {
    const edged = project({ made: first(12) }, { edging: { rounds: ['sc'], yarn: 'sand' } })
    const plan = planProject(edged)
    const sand = plan.yarns.find(({ id }) => id === 'sand')!
    // Edging and its two tails of 150 mm, and 10 %: all of the plan but twelve middles.
    expect(gramsOf(edged)).toEqual({ sand: expect.closeTo(sand.grams.expected - 12 * 1.1, 9) as number })
    expect(plan.progress.left).toMatchObject({ motifs: 0, joins: 0, ends: 2 })
    expect(plan.progress.left.hours).toBeGreaterThan(0)
    const done = progressOf({ ...edged, made: { ...edged.made, edging: '2026-12-20' } })
    expect(done).toMatchObject({ made: 12, edging: true, left: { motifs: 0, yarns: [], hours: 0, ends: 0 } })
  })

  it('takes motifs that are joined as they are made for joined, unless joined ones are marked', () => {
    const made = first(6)
    expect(progressOf(project({ made }))).toMatchObject({ made: 6, joined: 6 })
    // Only the first two are joined: one join is made of 17.
    const loose = progressOf(project({ made, joined: first(2) }))
    expect(loose).toMatchObject({ made: 6, joined: 2, left: { motifs: 6, joins: 16 } })
    const seamed = project({ made, joining: { rule: 'seam' } })
    expect(progressOf(seamed)).toMatchObject({ made: 6, joined: 0 })
  })

  it('waits for those before a motif that is joined as it is made, and counts what is joined already (by hand)', () => {
    // Row 2 alone: 5 waits for 1 above it, 6 for 2, 7 for 3, 8 for 4; its three joins are made, 14 of 17 are left.
    const row2 = { '2,1': '', '2,2': '', '2,3': '', '2,4': '' }
    expect(progressOf(project({ made: row2 }))).toMatchObject({ made: 4, joined: 0, left: { joins: 14 } })
    const minutes = progressOf(project({ made: row2 })).left.minutes!.expected
    // 8 motifs of 20 min, 14 joins and 2 × 2 ends each of a minute.
    expect(minutes).toBeCloseTo(8 * 20 + 14 + 8 * 4, 9)
    // With motif 1, 1 and 5 are joined; 6 still waits for 2.
    expect(progressOf(project({ made: { ...row2, '1,1': '' } }))).toMatchObject({ made: 5, joined: 2 })
    expect(progressOf(project({ made: first(8) }))).toMatchObject({ made: 8, joined: 8, left: { joins: 7 } })
    // Sewn ones are made long before: they wait for nobody, and are joined when somebody says so.
    const sewn = { made: row2, joining: { rule: 'seam' } } as const
    expect(progressOf(project(sewn))).toMatchObject({ made: 4, joined: 0, left: { joins: 17 } })
    expect(progressOf(project({ ...sewn, joined: row2 }))).toMatchObject({ joined: 4, left: { joins: 14 } })
    // All twelve made and none sewn: 17 joins of a minute are left, and the ends of seams.
    const all = project({ made: first(12), joining: { rule: 'seam' } })
    const { joins, ends, minutes: left } = progressOf(all).left
    expect(joins).toBe(17)
    expect(left!.expected).toBeCloseTo(17 + ends, 9)
  })

  it('leaves the join of a motif for later that is marked as made, not joined yet', () => {
    const made = project({ made: first(6) })
    const loose = markLoose(
      made,
      [
        { id: '2,2', colourway: 'b' },
        { id: '2,3', colourway: 'b' },
      ],
      '2026-12-01',
    )
    // 6 is taken off both its neighbours, 7 is new: only 1 to 5 are joined, at four points.
    expect(progressOf(loose)).toMatchObject({ made: 7, joined: 5, left: { joins: 13 } })
    const words = planProject({
      ...loose,
      joined: { ...loose.joined, '2,4': '' },
      made: { ...loose.made, '2,4': '' },
    })
    expect(waitingWords(words, '2,4')).toBe('')
    expect(waitingWords(planProject(project({ made: { '2,2': '' } })), '2,2')).toBe(
      'Joined once motifs 2 and 5 are made.',
    )
  })

  it('counts joining chains and seams that are left', () => {
    const bridged = project({ joining: { rule: 'bridge', bridgeChains: 3, yarn: 'clay' } })
    const all = planProject(bridged).yarns.find(({ id }) => id === 'clay')!.parts
    const { left } = progressOf({ ...bridged, made: first(6) })
    const clay = left.yarns.find(({ id }) => id === 'clay')!.parts
    expect(clay.joins).toBeCloseTo((all.joins * 11) / 17, 9)
    // Six of eleven motifs that join still do, with two tails each.
    expect(clay.tails).toBeCloseTo((all.tails * 6) / 11, 9)
    const seamed = project({ joining: { rule: 'seam', yarn: 'clay' } })
    const seams = planProject(seamed).yarns.find(({ id }) => id === 'clay')!.parts.joins
    const sewn = progressOf({ ...seamed, made: first(12), joined: first(6) })
    expect(sewn.left.yarns.find(({ id }) => id === 'clay')!.parts.joins).toBeCloseTo((seams * 11) / 17, 9)
  })

  it('keeps the yarn of joins and edging when the colourway that most motifs have is made', () => {
    // Without a named yarn the edging is in that of the main colourway, A: moss, although only B is left.
    const most = project({}, { rows: 3, edging: { rounds: ['sc'] } })
    const onlyB = { ...most, made: { ...first(4), '3,1': '', '3,2': '', '3,3': '', '3,4': '' } }
    expect(gramsOf(onlyB).moss).toBeGreaterThan(0)
    expect(progressOf(onlyB).left.yarns.find(({ id }) => id === 'clay')!.parts.edging).toBe(0)
  })

  it('tells each day what was made on it', () => {
    const made = { ...first(6, '2026-12-03'), '1,1': '2026-12-01', '1,2': '', '2,1': '2026-12-01' }
    expect(progressOf(project({ made })).days).toEqual([
      { day: '', pieces: 1 },
      { day: '2026-12-01', pieces: 2 },
      { day: '2026-12-03', pieces: 3 },
    ])
  })

  it('goes down with everything that is made, and adds up (property)', () => {
    const whole = gramsOf(project())
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 0, max: 11 })), (pieces) => {
        const keys = Object.keys(first(12))
        const made = Object.fromEntries(pieces.map((piece) => [keys[piece]!, '']))
        const rest = Object.fromEntries(keys.filter((key) => !(key in made)).map((key) => [key, '']))
        const left = gramsOf(project({ made }))
        const right = gramsOf(project({ made: rest }))
        for (const id of Object.keys(whole))
          expect((left[id] ?? 0) + (right[id] ?? 0)).toBeCloseTo(whole[id]!, 9)
      }),
      { numRuns: runs(30) },
    )
  })

  it('counts fillers and half motifs beside the motifs, by their addresses', () => {
    const filled = project({}, { fillers: { motif: 'f' } })
    const dot = { ...filled.motifs![0]!, id: 'f', across: 24, slots: [{ slot: 'rim', grams: 1 }] }
    const dotted = {
      ...filled,
      motifs: [...filled.motifs!, dot as never],
      colourways: [...filled.colourways!, { id: 'd', code: 'D', motif: 'f', yarns: { rim: 'clay' } }],
    }
    const plan = planProject(dotted)
    expect(plan.fillers).toHaveLength(6)
    const some = { ...dotted, made: { ...first(12), [plan.fillers[0]!.id]: '2026-12-01' } }
    expect(progressOf(some)).toMatchObject({ made: 12, others: 1, left: { motifs: 0, others: 5, joins: 20 } })
    expect(gramsOf(some)).toEqual({ clay: expect.closeTo(5 * 1.1, 9) as number })
  })
})

describe('a motif measured again', () => {
  it('is told with what it changed: size, motifs and yarn', () => {
    const at = (across: number) =>
      planProject(
        project(
          { motifs: [{ ...disc, across } as never], made: first(2) },
          { outlineShape: { kind: 'rectangle', size: 240, height: 180 } },
        ),
      )
    // Twelve of 60 mm lie within 240 × 180 mm; of 100 mm two in row 2, in B: 1 g and 3 g of each, and 10 % waste.
    expect(remeasuredWords(at(60), at(100), project().yarns!, 'metric')).toBe(
      'size 24 × 18 cm → 20 × 10 cm; 12 → 2 motifs; Sand 13.2 g → 2.2 g; Moss 26 g → 0 g; Clay 13.2 g → 6.6 g',
    )
    expect(remeasuredWords(at(60), at(60), project().yarns!, 'metric')).toBe('')
  })
})

describe('marks that cannot be right', () => {
  it('are told and not counted where the layout has no place, once for all of them', () => {
    // What is marked as joined there too is told but once.
    const wrong = project({
      made: { ...first(2), '0,1': '', '9,99': '2026-12-01', nonsense: '' },
      joined: { ...first(2), '9,99': '' },
    })
    expect(progressOf(wrong).made).toBe(2)
    const [found, ...others] = findingsOf(wrong)
    expect(others).toEqual([])
    expect(found).toMatchObject({ code: 'progress/unknown-place', severity: 'warning', where: 'made' })
    expect(found!.message).toContain('3 motifs are marked as made or joined where this layout has none')
    expect(found!.message).toContain('row 0, motif 1; row 9, motif 99; nonsense')
  })

  it('are counted without a day where the day is none', () => {
    const wrong = project({ made: { '1,1': '2026-02-30', '1,2': 'yesterday', '1,3': '2028-02-29' } })
    expect(progressOf(wrong).days).toEqual([
      { day: '', pieces: 2 },
      { day: '2028-02-29', pieces: 1 },
    ])
    expect(findingsOf(wrong).map(({ code, where }) => [code, where])).toEqual([
      ['progress/day', 'made["1,1"]'],
      ['progress/day', 'made["1,2"]'],
    ])
  })

  it('are told where something is joined that is not made', () => {
    const wrong = project({ made: first(2), joined: first(3) })
    expect(progressOf(wrong)).toMatchObject({ made: 2, joined: 2 })
    expect(codesOf(wrong)).toEqual(['progress/joined-not-made'])
  })

  it('are told where the colourway is one of another motif', () => {
    const other = project({ made: first(2) })
    const moved = {
      ...other,
      layout: { ...other.layout, motif: 'n' },
      motifs: [{ ...other.motifs![0]!, id: 'n' }],
    }
    expect(codesOf(moved as never)).toEqual(['progress/other-motif'])
  })

  it('may have blanks in them, and the edging is no mark of a blanket without one', () => {
    expect(progressOf(project({ made: { '1, 2': '' } })).made).toBe(1)
    expect(codesOf(project({ made: { '1, 2': '' } }))).toEqual([])
    expect(codesOf(project({ made: { edging: '' } }))).toEqual(['progress/unknown-place'])
  })
})

describe('a day', () => {
  it('is one of the calendar', () => {
    for (const day of ['2026-12-01', '2024-02-29', '2000-02-29', '2026-01-31'])
      expect(isDay(day), day).toBe(true)
    for (const day of [
      '2026-02-29',
      '1900-02-29',
      '2026-13-01',
      '2026-00-10',
      '2026-04-31',
      '2026-1-1',
      '26-01-01',
      '',
    ])
      expect(isDay(day), day).toBe(false)
  })
})

describe('motifs that were made before they were laid out', () => {
  it('need nothing bought for them; of what is still to make the yarn is bought (by hand)', () => {
    const clay = (made: Record<string, string>) =>
      planProject(project({ made })).yarns.find(({ id }) => id === 'clay')!
    // Row 2 is in clay: 4 × 3 g and 10 % for waste.
    expect(clay({})).toMatchObject({ toBuy: 1 })
    expect(clay(first(8))).toMatchObject({ toBuy: 0, cost: 0 })
    expect(clay(first(8)).grams.expected).toBeCloseTo(13.2, 9)
    expect(clay(first(7))).toMatchObject({ toBuy: 1 })
    // Nothing is short of which nothing is to be bought.
    const short = { ...project(), yarns: project().yarns!.map((yarn) => ({ ...yarn, onHandGrams: 10 })) }
    const codes = (of: Parameters<typeof planProject>[0]) => planProject(of).findings.map(({ code }) => code)
    expect(codes(short)).toContain('yarn/stash-short')
    expect(codes({ ...short, made: first(12) })).not.toContain('yarn/stash-short')
  })
})

describe('what is to be bought once some of it is made (by hand)', () => {
  const DAY = '2026-12-01'
  /** Row 2 is in clay, 3.3 g each with waste; as large balls of clay and as much of it on hand as a case says. */
  const clay = (made: Record<string, string>, onHandGrams?: number, ballGrams = 5) =>
    planProject({
      ...project({ made }),
      yarns: project().yarns!.map((yarn) =>
        yarn.id === 'clay' ? { ...yarn, ballGrams, ...(onHandGrams !== undefined && { onHandGrams }) } : yarn,
      ),
    }).yarns.find(({ id }) => id === 'clay')!

  it('is what the rest takes where nothing is on hand: nothing once all of it is made', () => {
    // 13.2 g are 3 balls of 5 g, 9.9 g two, 6.6 g two, 3.3 g one; ranges of what was weighed by pieces are ±5 %.
    const buys = [4, 5, 6, 7, 8, 12].map((made) => clay(first(made, DAY)).toBuy)
    expect(buys).toEqual([3, 3, 2, 1, 0, 0])
    expect(clay(first(7, DAY))).toMatchObject({ toBuy: 1, cost: 4 })
    expect(clay(first(7, DAY)).leftover).toBeCloseTo(5 - 3.3, 9)
    expect(clay(first(8, DAY))).toMatchObject({ toBuy: 0, cost: 0, leftover: 0 })
    // The yarn of the whole stays what it is.
    expect(clay(first(8, DAY)).grams).toEqual(clay({}).grams)
  })

  it('stays what it was while what is on hand from the beginning is worked up', () => {
    // 8 g on hand: 13.2 − 8 = 5.2 g and its range are 2 balls. One and two take 3.3 and 6.6 g of the 8.
    for (const made of [0, 4, 5, 6]) expect(clay(first(made, DAY), 8).toBuy, `${made}`).toBe(2)
    expect(clay(first(6, DAY), 8).leftover).toBeCloseTo(8 + 10 - 13.2, 9)
    // Three took 9.9 g, more than there was: something was bought, and 3.3 g are one ball.
    expect(clay(first(7, DAY), 8)).toMatchObject({ toBuy: 1 })
    expect(clay(first(8, DAY), 8)).toMatchObject({ toBuy: 0 })
  })

  it('is nothing all along for somebody who had everything at the beginning', () => {
    for (const made of [0, 1, 5, 8, 12]) {
      expect(clay(first(made, DAY), 20)).toMatchObject({ toBuy: 0, cost: 0 })
      expect(clay(first(made, DAY), 20).leftover).toBeCloseTo(20 - 13.2, 9)
    }
  })

  it('what was made before takes nothing of what is on hand, what was made since does', () => {
    const mixed = { ...first(8, DAY), ...first(6) }
    // Two in clay before, two since: these took 6.6 g, of the 3 on hand and of what was bought. Nothing is left to do.
    expect(clay(mixed, 3)).toMatchObject({ toBuy: 0 })
    // One since, one to come: 6.6 g less 3, and no more than the 3.3 of the last one.
    const { '2,4': _, ...open } = mixed
    expect(clay(open, 3)).toMatchObject({ toBuy: 1 })
    expect(clay(open, 7)).toMatchObject({ toBuy: 0 })
    expect(clay(open, 7).leftover).toBeCloseTo(7 - 6.6, 9)
  })

  it('is never more than was to be bought before, and never more than the rest takes (every yarn, every count)', () => {
    for (const onHand of [0, 2, 6, 11, 30])
      for (const day of ['', DAY]) {
        let before = Infinity
        for (let made = 0; made <= 12; made++) {
          const { toBuy } = clay(first(made, day), onHand, 3)
          expect(toBuy!).toBeLessThanOrEqual(before)
          before = toBuy!
        }
        expect(before).toBe(0)
      }
  })

  it('is said in words', () => {
    const words = (made: Record<string, string>) =>
      madeYarnWords(progressOf(project({ made })), 'US', NO_OTHERS)
    expect(words({})).toBe('')
    expect(words(first(8))).toBe('8 made before you planned: nothing to buy for them.')
    expect(words({ ...first(8, DAY), ...first(2) })).toBe(
      '2 made before you planned: nothing to buy for them. Made from your yarn: 6 motifs; only the rest is on the list to buy.',
    )
    const { days } = progressOf(project({ made: first(2) }))
    expect(madeYarnWords({ days, edging: true }, 'US', NO_OTHERS)).toContain(
      'Made from your yarn: the border;',
    )
    expect(madeYarnWords({ days, edging: true }, 'UK', NO_OTHERS)).toContain(
      'Made from your yarn: the edging;',
    )
    // What to enter is said where there are fields for it, and once there is something to keep up.
    expect(madeYarnAdvice({ days, edging: true }, 'US', NO_OTHERS)).toMatch(
      /list to buy\. Under “on hand”, enter/,
    )
    expect(madeYarnAdvice({ days, edging: false }, 'US', NO_OTHERS)).not.toContain('on hand')
  })
})
