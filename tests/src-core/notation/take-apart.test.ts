import { describe, expect, it } from 'vitest'
import type { RoundsMotif } from '../../../shared-types/project'
import { readMotif } from '../../../src-core/motif/rounds/read-motif'
import { printRounds } from '../../../src-core/notation/print'
import { takeApart } from '../../../src-core/notation/take-apart'

const BLOCK = `Special stitches:
Picot: ch 3, sl st in first ch.

Ch 6, join with sl st to form ring.
Rnd 1: With A, ch 1, 18 sc in ring; join with sl st in first sc. (18 sc)
Rnd 2: With B, ch 1, sc in first sc, *ch 6, sk 2,
  sc in next sc; rep from * 5 more times; join.
Rnds 3 and 4: Sc in each st around.`

describe('a pasted block', () => {
  it('keeps two chains that all begins on, so that “in 2nd ch from hook” has its chain in a project', () => {
    const text = 'Ch 2.\nRow 1: 3 sc in 2nd ch from hook, turn.\nRow 2: Ch 1, 2 sc in each sc across.'
    const { foundation, rounds } = takeApart(text, 'US')
    expect(foundation).toEqual({ chain: 2 })
    const motif: RoundsMotif = {
      id: 'm',
      kind: 'rounds',
      foundation,
      rounds: rounds.map(({ work }) => ({ work })),
    }
    const read = readMotif(motif, 'US')
    expect(read.findings.map(({ code }) => code)).toEqual([])
    // Rows go up from their one chain; what closes has it in its middle.
    expect(read.stemChains).toBe(1)
    const round = { work: '6 sc in 2nd ch from hook, join with sl st in first sc' }
    const disc = readMotif({ ...motif, rounds: [round] }, 'US')
    expect([disc.ringChains, disc.stemChains]).toEqual([1, 0])
  })

  it('is taken apart into its beginning, its special stitches and its rounds', () => {
    const taken = takeApart(BLOCK, 'US')
    expect(taken.foundation).toEqual({ ring: 'chain', chains: 6 })
    expect(taken.special).toBe('Picot: ch 3, sl st in first ch.')
    expect(taken.rounds).toEqual([
      { work: 'With A, ch 1, 18 sc in ring; join with sl st in first sc. (18 sc)', colour: 'A' },
      {
        work: 'With B, ch 1, sc in first sc, *ch 6, sk 2, sc in next sc; rep from * 5 more times; join.',
        colour: 'B',
      },
      { work: 'Sc in each st around.', colour: null },
      { work: 'Sc in each st around.', colour: null },
    ])
  })

  it('is put into the terms of the project', () => {
    const taken = takeApart(
      'Rnd 1: Magic ring, 6 htr in ring.\nRnd 2: 2 htr in each st around, miss none.',
      'US',
    )
    expect(taken.terms).toBe('UK')
    expect(taken.rounds.map(({ work }) => work)).toEqual([
      'Magic ring, 6 hdc in ring.',
      '2 hdc in each st around, sk none.',
    ])
  })

  it('leaves open what no word tells, and follows an answer', () => {
    const block = 'Rnd 1: 12 dc in ring.\nRnd 2: 2 dc in each st.'
    expect(takeApart(block, 'US').termsUnclear).toBe(true)
    const answered = takeApart(block, 'US', 'UK')
    expect(answered.termsUnclear).toBe(false)
    expect(answered.rounds[0]?.work).toBe('12 sc in ring.')
  })

  it('of no rounds has none', () => {
    expect(takeApart('A lovely day.', 'US').rounds).toEqual([])
    expect(takeApart('', 'US').rounds).toEqual([])
  })
})

describe('colours that a page names', () => {
  const DC = 'ch 3 (counts as dc), 15 dc in ring; join with sl st in top of ch-3.'
  it.each([
    ['With A, ch 5, join with sl st to form a ring.', 'Fasten off A. Join B.', ['A', null, 'B']],
    ['Using yarn A, make a magic ring.', 'Change to B. (16 sc)', ['A', null, 'B']],
    ['Make a magic ring in colour A.', 'Fasten off A, join B.', ['A', null, 'B']],
    [
      'With green, ch 5, sl st in first ch to form a ring.',
      'Fasten off; join petal color.',
      ['green', null, 'petal'],
    ],
    ['Magic ring with MC.', 'Fasten off MC. Join B with sl st in any sc.', ['MC', null, 'B']],
  ])('are those of the rounds from there on: "%s" … "%s"', (begins, ends, colours) => {
    const text = `${begins}\nRnd 1: ${DC}\nRnd 2: Ch 1, sc in each dc around; join. ${ends}\nRnd 3: Ch 1, sc in each sc around; join.`
    expect(takeApart(text, 'US').rounds.map(({ colour }) => colour)).toEqual(colours)
  })

  it('leave a first round that names another one alone', () => {
    const text = `With A, ch 5, join with sl st to form a ring.\nRnd 1: With B, ${DC}`
    expect(takeApart(text, 'US').rounds.map(({ colour }) => colour)).toEqual(['B'])
  })
})

describe('special stitches', () => {
  const ROUNDS = 'Rnd 1: Magic ring, 6 sc in ring.\nRnd 2: *Twin in next st; rep from * around.'
  it.each([
    ['Special stitches:\nTwin: (Sc, hdc) in same st', 'on lines of their own'],
    ['Special stitches: Twin: (Sc, hdc) in same st', 'behind the heading'],
    ['Special Stitches\nTwin: (Sc, hdc) in same st', 'under a heading without a colon'],
    ['SPECIAL STITCH\n\nTwin = (Sc, hdc) in same st', 'after a blank line'],
    ['Stitch guide:\nTwin (tw): (Sc, hdc) in same st', 'by another name'],
    ['Special stitches: Picot: Ch 3, sl st in first ch. Twin: (Sc, hdc) in same st', 'several in a line'],
  ])('%j, %s, become the field', (head) => {
    const taken = takeApart(`${head}\n\n${ROUNDS}`, 'US')
    expect(taken.rounds.map(({ work }) => work)).toEqual([
      'Magic ring, 6 sc in ring.',
      '*Twin in next st; rep from * around.',
    ])
    expect(taken.special).toMatch(/Twin( \(tw\))?\s*[:=] \(Sc, hdc\) in same st$/)
    const { worked, findings } = readMotif(
      { id: 'm', kind: 'rounds', special: taken.special, rounds: taken.rounds.map(({ work }) => ({ work })) },
      'US',
    )
    expect(findings).toEqual([])
    expect(worked.map((round) => round.stitches)).toEqual([6, 12])
  })

  it('are printed back before the rounds, and read the same again', () => {
    const taken = takeApart(`Special stitches:\nTwin: (Sc, hdc) in same st\n\n${ROUNDS}`, 'US')
    const motif: RoundsMotif = {
      id: 'm',
      kind: 'rounds',
      special: taken.special,
      rounds: taken.rounds.map(({ work }) => ({ work })),
    }
    for (const style of ['as-written', 'consistent', 'expanded'] as const)
      for (const terms of ['US', 'UK'] as const) {
        const printed = printRounds(readMotif(motif, 'US').reading.tree, { style, terms })
        expect(printed).toMatch(/^Special stitches:\nTwin: /)
        const again = takeApart(printed, 'US', terms)
        expect(again.special).toMatch(/^Twin: \(sc, hdc\) in same st$/i)
        expect(again.rounds).toHaveLength(2)
      }
  })

  it('that an older file has as its first round read as those of the field do', () => {
    const rounds = [
      { slot: 'a', work: 'ch 1, 6 sc in ring; join' },
      { slot: 'b', work: '*twin in next st; rep from * around; join' },
      { slot: 'b', work: 'sc in next 13 sts' },
    ]
    const motif = { id: 'm', kind: 'rounds', foundation: { ring: 'chain', chains: 5 } } as const
    const field = readMotif({ ...motif, special: 'Twin: (sc, hdc) in same st', rounds }, 'US')
    for (const work of [
      'Special stitches: Twin: (sc, hdc) in same st',
      'Special stitches\nTwin: (sc, hdc) in same st\n',
      'special stitch: twin = (sc, hdc) in same st',
    ]) {
      const older = readMotif({ ...motif, rounds: [{ work }, ...rounds] }, 'US')
      expect(older.worked.map((round) => [round.number, round.stitches])).toEqual(
        field.worked.map((round) => [round.number, round.stitches]),
      )
      expect(older.entries).toEqual(field.entries.map((entry) => entry + 1))
      expect(older.findings.map(({ code, target }) => [code, target!.entry! - 1, target!.column])).toEqual(
        field.findings.map(({ code, target }) => [code, target!.entry, target!.column]),
      )
      expect(older.findings).toHaveLength(1)
    }
  })
})

describe('findings of a motif', () => {
  const motif = (...rounds: string[]): RoundsMotif => ({
    id: 'm1',
    kind: 'rounds',
    foundation: { ring: 'chain', chains: 6 },
    special: 'Picot: ch 3, sl st in first ch.',
    rounds: rounds.map((work) => ({ work })),
  })
  const FIRST = 'ch 1, 18 sc in ring; join'
  const WRONG = 'ch 1, sc in next 20 sts; join'

  it('stand at the place in the round’s own words, whatever stands before it', () => {
    for (const words of [WRONG, `Rnd 2: ${WRONG}`, `  ${WRONG}`]) {
      const { findings } = readMotif(motif(FIRST, words), 'US')
      expect(findings).toHaveLength(1)
      const { entry, column, length } = findings[0]!.target!
      expect(entry).toBe(1)
      expect(words.slice(column! - 1, column! - 1 + length!)).toContain('20 sts')
      expect(findings[0]!.where).toContain(`column ${column}:`)
    }
  })

  it('pass over a round that is not written yet', () => {
    const { findings, worked, entries } = readMotif(motif(FIRST, '', 'sc in each st around; join', ''), 'US')
    expect(findings).toEqual([])
    expect(worked.map((round) => round.number)).toEqual([1, 2])
    expect(entries).toEqual([0, 2])
  })

  it('count on after a heading for several rounds, and keep repeated rounds in their own entry', () => {
    const read = readMotif(
      motif('ch 1, 6 sc in ring; join', 'Rnds 2-4: sc in each st around; join', 'Rep Rnd 2'),
      'US',
    )
    expect(read.worked.map((round) => round.number)).toEqual([1, 2, 3, 4, 5])
    expect(read.entries).toEqual([0, 1, 1, 1, 2])
  })
})
