/**
 * Numbers that would let a round work out. §patterns-corpus: the slips that were planted in patterns of our own; what
 * a tech editor would put there, counted by hand.
 */
import { describe, expect, it } from 'vitest'
import { slipsOfMotif } from '../../../src-core/motif/rounds/read-motif'
import { readRounds } from '../../../src-core/notation/read'
import { likelySlips } from '../../../src-core/notation/slips'
import { loadPatterns } from '../../outside/whole-patterns'

const PATTERNS = ['patterns', 'patterns-own', 'patterns-fresh'].flatMap(loadPatterns)

/** By pattern: what is written, what it should be, and the words around it then. */
const PLANTED: Readonly<Record<string, readonly [was: string, now: string, words: string]>> = {
  m04: ['ch-4', 'ch-3', 'sc) in each ch-3 sp around'],
  e02: ['3rd', '4th', 'join with sl st in 4th ch of beg ch-4'],
  e09: ['4', '3', 'rep from * 3 more times'],
  s51: ['5', '4', 'rep from * 4 more times'],
  c235: ['24', '22', 'Make 22ch'],
  c239: ['5th', '3rd', 'join with sl st in 3rd ch of beginning ch-5'],
  c246: ['3', '4', 'rep from * 4 times more'],
  e16: ['8', '10', 'sc in next 10 sc'],
  g250: ['3', '2', 'miss 2 tr'],
  h344: ['3', '2', 'skip 2 dc'],
  h547: ['27', '26', 'Ch 26'],
  h628: ['54', '48', '48 tr'],
  m21: ['hcd', 'hdc', '2 hdc in each st around'],
}

const withSlip = (text: string, { start, end, now }: { start: number; end: number; now: string }) =>
  text.slice(0, start) + now + text.slice(end)
const wrong = (text: string, terms: 'US' | 'UK') =>
  readRounds(text, { terms }).findings.filter(({ severity }) => severity !== 'note')

describe('likelySlips', () => {
  it.each(Object.keys(PLANTED))('finds the slip that was planted in %s, and what mends it', (id) => {
    const { text, terms, error } = PATTERNS.find((pattern) => pattern.id === id)!
    const slips = likelySlips(text, { terms })
    expect(slips.map(({ was, now, words }) => [was, now, words])).toEqual([PLANTED[id]])
    const [slip] = slips
    expect(slip!.round).toBe(error!.round)
    expect(text.slice(slip!.start, slip!.end)).toBe(slip!.was)
    expect(text.split('\n')[slip!.line - 1]!.slice(slip!.column - 1)).toMatch(new RegExp(`^${slip!.was}`))
    expect(wrong(withSlip(text, slip!), terms)).toEqual([])
  })

  it('offers nothing where nothing is wrong, or where neither a number nor a misspelled stitch is', () => {
    const sound = PATTERNS.filter(({ kind }) => kind === 'correct').slice(0, 20)
    for (const { text, terms } of sound) expect(likelySlips(text, { terms })).toEqual([])
    for (const id of ['e10', 'e06']) {
      const { text, terms } = PATTERNS.find((pattern) => pattern.id === id)!
      expect(wrong(text, terms)).not.toEqual([])
      expect(likelySlips(text, { terms })).toEqual([])
    }
  })

  it('works nothing into the first chain from the hook, and tells numbers in the words they have', () => {
    const chain = 'Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (19 sc)'
    const offers = likelySlips(chain, { terms: 'US' }).map(({ was, now }) => `${was} ${now}`)
    expect(offers).toContain('21 20')
    expect(offers).not.toContain('2nd 1st')
    const words = `Ch 4, join with sl st to form ring.
Rnd 1: Ch 1, 12 sc in ring; join with sl st in first sc. (12 sc)
Rnd 2: Ch 1, sc in same st, ch 3, sk next two sc, *sc in next sc, ch 3, sk next two sc; rep from * once; join with sl st in first sc. (4 sc, 4 ch-3 sps)`
    expect(likelySlips(words, { terms: 'US' }).map(({ was, now }) => [was, now])).toEqual([['once', 'twice']])
  })

  it('says nothing of rounds that only go wrong because of an earlier one', () => {
    const flower = `Rnd 1: Ch 4, join with sl st to form ring, ch 1, 12 sc in ring; join. (12 sc)
Rnd 2: Ch 1, sc in same st, *ch 4, sk next st, sc in next st; rep from * 5 more times, ch 4, sk last st; join. (6 ch-4 sps)
Rnd 3: (Sc, hdc, 3 dc, hdc, sc) in each ch-4 sp around; join. (6 petals)`
    expect(wrong(flower, 'US').map(({ target }) => target?.round)).toContain(3)
    expect(likelySlips(flower, { terms: 'US' })).toMatchObject([{ round: 2, was: '5', now: '4' }])
  })

  it('leaves a round that is wrong in more ways than one number to its editor', () => {
    const twice = `Ch 4, join with sl st to form ring.
Rnd 1: Ch 1, 12 sc in ring; join with sl st in first sc. (12 sc)
Rnd 2: Ch 1, sc in each of next 5 sc, hcd in next sc, sc in each of next 9 sc; join with sl st in first sc. (12 sts)`
    expect(likelySlips(twice, { terms: 'US' })).toEqual([])
  })

  it('reads the same afterwards as before', () => {
    const { text, terms } = PATTERNS.find(({ id }) => id === 's51')!
    const before = JSON.stringify(readRounds(text, { terms }).rounds)
    likelySlips(text, { terms })
    expect(JSON.stringify(readRounds(text, { terms }).rounds)).toBe(before)
  })
})

describe('slipsOfMotif', () => {
  it('tells a slip in the words of its own entry', () => {
    const motif = {
      ...({ id: 'm1', kind: 'rounds', foundation: { ring: 'adjustable' } } as const),
      rounds: [
        { slot: 'main', work: 'ch 1, 6 sc in ring; join. (6 sc)' },
        { slot: 'main', work: 'Rnd 2: ch 1, 2 sc in each sc around; join. (12 sc)' },
        {
          slot: 'main',
          work: 'ch 1, *sc in next sc, 2 sc in next sc; rep from * 6 more times; join. (18 sc)',
        },
      ],
    }
    const [slip, ...others] = slipsOfMotif(motif, 'US')
    expect(others).toEqual([])
    expect(slip).toMatchObject({ entry: 2, was: '6', now: '5', words: 'rep from * 5 more times' })
    expect(motif.rounds[2]!.work.slice(slip!.start, slip!.end + 11)).toBe('6 more times')
  })
})

describe('a slip of the keys in the name of a stitch', () => {
  const RING = 'Rnd 1: 10 sc in magic ring. (10 sc)\n'
  it.each([
    [`${RING}Rnd 2: (Sc, hcd, 2 dc, hdc, sc) in each of next 10 sc. (60 sts)`, 'hcd', 'hdc'],
    [`${RING}Rnd 2: cd in each sc around. (10 sts)`, 'cd', 'dc'],
    ['Rnd 1: 10 cs in magic ring. (10 sc)\nRnd 2: 2 sc in each sc around. (20 sc)', 'cs', 'sc'],
    [`${RING}Rnd 2: 2 dcc in each sc around. (20 dc)`, 'dcc', 'dc'],
  ])('is offered as what works out: %s', (text, was, now) => {
    expect(likelySlips(text, { terms: 'US' }).map((slip) => [slip.was, slip.now])).toEqual([[was, now]])
  })

  it('is not offered where another stitch does not make the round come out', () => {
    expect(likelySlips(`${RING}Rnd 2: cd in each sc around. (12 sts)`, { terms: 'US' })).toEqual([])
    expect(likelySlips(`${RING}Rnd 2: blorp in each sc around.`, { terms: 'US' })).toEqual([])
  })
})
