/** The joining round in words, by hand: where a chain is parted, and what to do at a stitch (§joining-last-round). */
import { describe, expect, it } from 'vitest'
import { joiningRounds } from '../../../src-core/joining-round/joining-round'
import { translateText } from '../../../src-core/notation/translate'
import { planProject } from '../../../src-core/plan'
import { blanketOf, flower, granny, GRANNY, readBack, readExample, solidSquare } from './flowers'

const told = (project: Parameters<typeof planProject>[0]) => {
  const plan = planProject(project)
  return joiningRounds(plan, plan.settled.terms)
}

describe('petals that end in chains', () => {
  it.each([
    ['ch 2', 'ch 1, sl st in corresponding ch-2 sp of neighbor, ch 1'],
    ['ch 3', 'ch 1, sl st in corresponding ch-3 sp of neighbor, ch 1'],
    ['ch 5', 'ch 2, sl st in corresponding ch-5 sp of neighbor, ch 2'],
    ['ch 1', 'sl st in corresponding ch-1 sp of neighbor'],
  ])('%s is parted as “%s”', (tip, join) => {
    const rounds = flower(8, tip)
    const [first, one] = told(blanketOf({ rounds, layout: { columns: 2, rows: 1, turn: 22.5 } }))
    expect(first).toMatchObject({ title: 'Not joined to a neighbor yet', joins: 0, labels: ['1'] })
    expect(first!.words).toBe('Work Rnd 3 as written.')
    expect(one).toMatchObject({ title: 'Joined at petals 7 and 8', joins: 2, labels: ['2'], inFull: true })
    expect(one!.words).toBe(
      `Rnd 3: Sl st in first ch-5 sp, ch 1, (sc, hdc, 2 dc, ${tip}, 2 dc, hdc, sc) in same sp, ` +
        `(sc, hdc, 2 dc, ${tip}, 2 dc, hdc, sc) in each of next 5 ch-5 sps, ` +
        `(sc, hdc, 2 dc, ${join}, 2 dc, hdc, sc) in each of next 2 ch-5 sps; join with sl st in first sc. (8 petals)`,
    )
    expect(readBack(rounds, one!, 'US')).toMatchObject({ made: 64, joins: 2, places: [7, 8], errors: [] })
  })

  it('is parted in the designer’s own terms, whichever hand works', () => {
    const words = (['right', 'left'] as const).map((hand) =>
      told(blanketOf({ rounds: flower(6, 'ch 2'), hand, layout: { arrangement: 'offset-rows' } })).map(
        (round) => [round.title, round.words],
      ),
    )
    expect(words[0]).toEqual(words[1])
    const plan = planProject(blanketOf({ rounds: flower(6, 'ch 2'), layout: { columns: 2, rows: 1 } }))
    expect(joiningRounds(plan, 'UK')[1]!.words).toContain(
      '(dc, htr, 2 tr, 1 ch, ss in corresponding 2-ch sp of neighbour, 1 ch, 2 tr, htr, dc)',
    )
  })
})

describe('spaces of chains', () => {
  const uk = (space: (chains: number) => string) =>
    flower(6, 'ch 2').map((work) =>
      translateText(work, 'US', 'UK').replace(/\b(\d+)-ch\b/g, (_, chains: string) => space(Number(chains))),
    )
  const words = (rounds: readonly string[]) =>
    told(blanketOf({ rounds, terms: 'UK', layout: { columns: 2, rows: 1 } }))[1]!.words
  it('are named as the designer names them, wherever the chains that are made have their number', () => {
    expect(words(uk((chains) => `${chains}-ch`))).toContain('ch 1, ss in corresponding 2-ch sp of neighbour')
    expect(words(uk((chains) => `${chains}-ch`))).not.toContain('ch-')
    expect(words(uk((chains) => `ch-${chains}`))).toContain('ch 1, ss in corresponding ch-2 sp of neighbour')
  })
})

describe('petals that end otherwise', () => {
  it('a picot is joined in its middle', () => {
    const rounds = flower(4, 'ch 5, sl st in 5th ch from hook')
    const [, one] = told(blanketOf({ rounds, layout: { columns: 2, rows: 1 } }))
    expect(one!.words).toContain(
      '(sc, hdc, 2 dc, ch 2, sl st in corresponding picot of neighbor, ch 2, sl st in first ch of picot, 2 dc, hdc, sc) in next ch-5 sp',
    )
    expect(readBack(rounds, one!, 'US')).toMatchObject({ made: 32, joins: 1, errors: [] })
  })

  it('a picot by name is joined in its middle too', () => {
    const [, , all] = told(readExample('dovecote-runner'))
    expect(all!.words).toBe(
      'Round 4: *(2 dc, picot-3, 2 dc) in next ch-3 sp, ch 6; rep from * 3 more times; ' +
        '[(2 dc, ch 1, ss in corresponding picot of neighbour, ch 1, ss in first ch of picot, 2 dc) in next ch-3 sp, ch 6] 4 times; ' +
        'join with ss in first dc. (8 picots)',
    )
  })

  it('at a stitch the loop is drawn through the neighbor’s stitch', () => {
    const rounds = flower(4, 'tr')
    const [, one] = told(blanketOf({ rounds, layout: { columns: 2, rows: 1 } }))
    expect(one!.words).toContain(
      '(sc, hdc, 2 dc, tr, drop lp, insert hook in corresponding tr of neighbor, draw lp through, 2 dc, hdc, sc) in next ch-5 sp',
    )
    expect(readBack(rounds, one!, 'US')).toMatchObject({ made: 36, joins: 1, places: [4], errors: [] })
  })

  it('a joining chain goes out to the neighbor and back (common practice, no source)', () => {
    const joining = { rule: 'bridge', bridgeChains: 3 } as const
    const [, one] = told(blanketOf({ rounds: flower(4, 'ch 2'), joining, layout: { columns: 2, rows: 1 } }))
    expect(one!.words).toContain('2 dc, ch 4, sl st in corresponding ch-2 sp of neighbor, ch 4, 2 dc')
  })

  it('M34 a joining chain takes yarn for the chains that its words tell, out and back', () => {
    const gauge = { stitch: 'sc', over: 100, stitches: 20, rows: 22, hook: 4 } as const
    const yarns = [{ id: 'y1', name: 'Flax', ballMetres: 200, ballGrams: 100 }] as const
    const colourways = [{ id: 'c1', name: 'All', yarns: { petals: 'y1' } }] as const
    const chainsIn = (words: string): number =>
      [...words.matchAll(/ch (\d+)(?! sp)/g)].reduce((sum, [, chains]) => sum + Number(chains), 0)
    const found = [1, 3, 5].map((bridgeChains) => {
      const joining = { rule: 'bridge', bridgeChains, yarn: 'y1' } as const
      const bare = blanketOf({ rounds: flower(4, 'ch 3'), joining, layout: { columns: 2, rows: 1 } })
      const plan = planProject({ ...bare, gauge, yarns: [...yarns], colourways: [...colourways] })
      const [, one] = joiningRounds(plan, 'US')
      const join = /ch \d+, sl st in corresponding ch-3 sp of neighbor, ch \d+/.exec(one!.words)![0]
      // Its slip stitch stands for one more.
      const more = chainsIn(join) + 1 - 3
      return { more: more * one!.joins, grams: plan.yarns[0]!.parts.joins }
    })
    // 0.5 g to a metre, 5 mm to a stitch.
    for (const { more, grams } of found) expect(grams * 2000).toBeCloseTo(more * 5.2 * 5, 6)
  })
})

describe('flowers measured with a ruler', () => {
  it('are told which shoulders are joined, one or both', () => {
    const five = { id: 'five', kind: 'measured', outline: 'petals', petals: 5 } as const
    const rounds = told({
      ...{ format: 'petalyard-project', version: 1, joining: { rule: 'edges' } },
      motifs: [{ ...five, overTips: 66, overValleys: 44 }],
      layout: { kind: 'blanket', arrangement: 'straight-rows', motif: 'five', columns: 4, rows: 3 },
    }).filter(({ joins }) => joins > 0)
    expect(rounds.length).toBeGreaterThan(2)
    const numbers = (words: string | undefined) => words?.match(/\d+/g)?.length ?? 0
    for (const { title, joins } of rounds) {
      const shoulders = [...title.matchAll(/(both|the (?:first|second)) shoulders? of petals? ([\d, and]+)/g)]
      const petals = title.replace(/(both|the \w+) shoulders? of petals? [\d, and]+/g, '')
      const told = shoulders.reduce((sum, [, which, of]) => sum + numbers(of) * (which === 'both' ? 2 : 1), 0)
      expect([title, told + numbers(petals.split(';')[0])]).toEqual([title, joins])
    }
    expect(rounds.map(({ title }) => title).join(' ')).toMatch(/the second shoulder of petal \d/)
  })
})

describe('squares', () => {
  const rounds = GRANNY
  const all = told(blanketOf({ rounds, joining: { rule: 'edges' }, layout: { columns: 2, rows: 2 } }))

  it('are joined at corners and sides, and into the join where others meet', () => {
    const last = all.at(-1)!
    expect(last).toMatchObject({ inFull: true, labels: ['4'] })
    expect(last.title).toBe(
      'Joined at corners 2, 3 and 4 and sides 2 and 3; others are joined at corner 3 already',
    )
    expect(last.words.match(/sl st in corresponding ch-2 sp of neighbor/g)).toHaveLength(2)
    expect(last.words.match(/sl st in joined ch-2 sp of neighbor/g)).toHaveLength(1)
    expect(readBack(rounds, last, 'US')).toMatchObject({ made: 36, joins: last.joins, errors: [] })
  })
})

describe('the places along a side', () => {
  /** Which of its loops are joined along the side that meets a neighbor, counted from the corner before it. */
  const joinedLoops = (loops: number): number[] => {
    const rounds = granny(loops + 1)
    const [, one] = told(blanketOf({ rounds, joining: { rule: 'edges' }, layout: { columns: 2, rows: 1 } }))
    expect(one, one!.words).toMatchObject({ inFull: true, title: 'Joined at corners 3 and 4 and side 3' })
    // Between the two joined corners, with every repeat told out.
    const between = /neighbor, ch 1, 3 dc\) in next ch-2 sp, (.*), \(3 dc, ch 1, sl st in corr/.exec(
      one!.words,
    )![1]!
    const lapsOf = (many: string): number => (many === 'twice' ? 2 : parseInt(many))
    let toldOut = between
    while (toldOut.includes('['))
      toldOut = toldOut.replace(/\[([^[\]]*)\] (twice|\d+ times)/g, (_, lap: string, many: string) =>
        Array<string>(lapsOf(many)).fill(lap).join(', '),
      )
    const made = toldOut.split(', ').filter((each) => !each.startsWith('3 dc'))
    expect([loops, made]).toEqual([loops, expect.objectContaining({ length: loops })])
    return made.flatMap((each, at) => (each === 'ch 1' ? [] : [at + 1]))
  }

  it('are the same counted from either end, so that they meet those of the neighbor', () => {
    for (const loops of [3, 4, 5, 6, 7, 8, 9, 10, 11, 12]) {
      const joined = joinedLoops(loops)
      expect([loops, joined.map((at) => loops + 1 - at).reverse()]).toEqual([loops, joined])
      // As far apart as three or four of them can be, to one loop.
      const gaps = [...joined, loops + 1].map((at, i) => at - (joined[i - 1] ?? 0))
      const even = (loops + 1) / gaps.length
      expect(
        gaps.every((gap) => Math.abs(gap - even) < 2),
        `${loops}: ${joined.join(' ')}`,
      ).toBe(true)
    }
  })

  it('are both loops in the middle where a side has an even count', () => {
    expect(joinedLoops(5)).toEqual([2, 3, 4])
    expect(joinedLoops(6)).toEqual([1, 3, 4, 6])
    expect(joinedLoops(7)).toEqual([2, 4, 6])
  })
})

describe('solid squares', () => {
  const DRAWN = 'drop lp, insert hook in corresponding dc of neighbor, draw lp through'
  const CORNER = 'ch 1, sl st in corresponding ch-2 sp of neighbor, ch 1'

  it('are joined at the ch-2 sp of a corner and at three dc of a side', () => {
    const rounds = solidSquare(3)
    const [, one] = told(blanketOf({ rounds, joining: { rule: 'edges' }, layout: { columns: 2, rows: 1 } }))
    // 11 dc a side, two of each corner among them: joined behind dc 3, 6 and 9.
    expect(one).toMatchObject({ inFull: true, joins: 5 })
    expect(one!.words).toContain(
      `(2 dc, ${CORNER}, 2 dc) in next corner sp, dc in next st, [${DRAWN}, dc in next 3 sts] twice, ` +
        `${DRAWN}, (2 dc, ${CORNER}, 2 dc) in next corner sp, dc in next 2 sts; join with sl st in top of beg ch-3.`,
    )
    expect(readBack(rounds, one!, 'US')).toMatchObject({ made: 44, joins: 5, errors: [] })
  })

  it('are told in full also where the round begins at a corner and nothing is left for “to end”', () => {
    const rounds = [
      ...solidSquare(1),
      'sl st in next 2 dc, ch 3 (counts as dc), *(2 dc, ch 2, 2 dc) in corner sp, dc in each st to corner; rep from * twice more, (2 dc, ch 2, 2 dc) in corner sp, dc in next 2 dc, dc in each st to end, join with sl st in top of beg ch-3',
    ]
    for (const rule of ['tips', 'edges'] as const)
      for (const round of told(blanketOf({ rounds, joining: { rule }, layout: { columns: 4, rows: 4 } })))
        expect(round, round.words).toMatchObject({ inFull: true })
  })

  it('are told in full where the round is the last of several told at once', () => {
    const rounds = [solidSquare(1)[0]!, `Rnds 2-4: ${solidSquare(2)[1]!}`]
    const all = told(blanketOf({ rounds, joining: { rule: 'edges' }, layout: { columns: 3, rows: 3 } }))
    for (const round of all) expect(round, round.words).toMatchObject({ inFull: true })
    expect(all.at(-1)!.words).toMatch(/^Rnd 4: Ch 3 \(counts as dc\), dc in next \d+ sts, /)
    expect(all.at(-1)!.words).toContain(`sl st in joined ch-2 sp of neighbor`)
  })

  describe('whose last round is told in sum', () => {
    // Every other of 11 dc are five, with two of each corner nine a side: joined at a quarter, the half, three quarters.
    const rounds = solidSquare(
      3,
      'ch 4 (counts as dc and ch 1), *skip 1 st, dc in every other st to corner, (2 dc, ch 2, 2 dc) in corner sp; rep from * around, join with sl st in 3rd ch',
    )
    const wordsOf = (rule: 'tips' | 'edges') =>
      told(blanketOf({ rounds, joining: { rule }, layout: { columns: 3, rows: 3 } })).map(
        ({ words }) => words,
      )
    const own = 'instead of the ch 2 work: ch 1, sl st in corresponding ch-2 sp of neighbor, ch 1'
    const shared =
      'where others are joined already, instead of the ch 2 work: ch 1, sl st in the same place as their join, ch 1'
    const side = `after the 3rd, 5th and 7th dc of the side, ${DRAWN}`

    it('says what is other at each corner, and where others are joined there', () => {
      const all = wordsOf('tips')
      expect(all).toHaveLength(7)
      expect(all).toContain(`Work Rnd 4 as written; at corners 3 and 4, ${own}.`)
      expect(all).toContain(`Work Rnd 4 as written; at corners 2 and 4, ${own}; at corner 3, ${shared}.`)
    })

    it('says along each side behind which stitches it is joined', () => {
      const all = wordsOf('edges')
      expect(all).toHaveLength(7)
      expect(all).toContain(`Work Rnd 4 as written; at corners 3 and 4, ${own}; along side 3, ${side}.`)
      expect(all).toContain(
        `Work Rnd 4 as written; at corners 2 and 4, ${own}; along sides 2 and 3, ${side}; at corner 3, ${shared}.`,
      )
    })
  })
})

describe('where there is nothing to part', () => {
  it('sewn motifs have no joining round, nor have those that lie apart', () => {
    for (const rule of ['seam', 'apart'] as const)
      expect(told(blanketOf({ rounds: GRANNY, joining: { rule } }))).toEqual([])
  })

  it('a measured motif is told by its places alone, and by its designer’s instructions', () => {
    const project = readExample('hedgerow-baby-throw')
    const withWords = (instructions: string) =>
      told({ ...project, motifs: project.motifs!.map((motif) => ({ ...motif, instructions })) })
    expect(withWords('').map(({ words }) => words)).toEqual([
      'Work it without joining.',
      ...Array<string>(3).fill(
        'Where it meets a neighbor, sl st in the matching place of the neighbor; work the rest without joining.',
      ),
    ])
    expect(withWords('Work a flower.').map(({ words, inFull }) => [words, inFull])).toContainEqual([
      'Work it as the instructions say; where it meets a neighbor, sl st in the matching place of the neighbor.',
      false,
    ])
  })
})

describe('a round that joins its yarn in a corner', () => {
  it('goes on in that corner, not in the next one', () => {
    const rounds = [
      ...solidSquare(2),
      'Join B in any corner sp. Ch 1, *(sc, ch 5, sc) in corner sp, ch 3, [sk next 3 dc, sc in next dc, ch 3] once, sk next 3 dc; rep from * 3 more times, join with sl st in first sc.',
    ]
    const [, one] = told(blanketOf({ rounds, joining: { rule: 'edges' }, layout: { columns: 2, rows: 1 } }))
    expect(one!.words).toMatch(/Join B in any corner sp, ch 1, .{0,3}\(sc, ch 5, sc\) in corner sp/)
    expect(one!.words).not.toContain('in next corner sp')
    expect(readBack(rounds, one!, 'US')).toMatchObject({ errors: [] })
  })
})
