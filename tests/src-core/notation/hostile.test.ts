/** Whatever is pasted: the reader never throws, never hangs, and its time grows with the length alone. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { printRounds } from '../../../src-core/notation/print'
import { readRounds, readRoundTexts } from '../../../src-core/notation/read'
import type { After } from '../../../src-core/notation/read'
import { processorTime } from '../../processor-time'
import { runs } from '../../runs'

const WORDS = (
  'sc dc hdc tr ch sl st ss htr 2 3 12 1000000000 in next each same first last st sts sp ring ch-3 ch-5 5-ch lp rep from * ** ' +
  'around to end ( ) [ ] { } , ; . : 6 times twice more x 3rd 2nd ch from hook sk skip miss and sc2tog dc3tog ' +
  'over join with turn Rnd 1 : Rnd 2: Rnds 4-6: Rep of Rnd 2 BLO front lps working behind petals corner picot ' +
  'shell puff inc dec evenly every other yo insert hook draw through all lps ending last instead of counts as ' +
  'does not count between post of tip valley petal center opposite side chs any A MC color (12 sc) — ½ “ é 🌼'
).split(' ')

const text = fc
  .array(fc.oneof({ weight: 8, arbitrary: fc.constantFrom(...WORDS) }, fc.string({ maxLength: 6 })), {
    maxLength: 60,
  })
  .map((words) => words.join(' '))

const after: fc.Arbitrary<After | undefined> = fc.oneof(
  fc.constant(undefined),
  fc.record({
    stitches: fc.nat(60),
    spaces: fc.dictionary(fc.constantFrom('ch-1', 'ch-3', 'ch-5', 'odd'), fc.nat(12)),
  }),
  fc.record({ ring: fc.nat(12) }),
  fc.record({ chain: fc.nat(20) }),
  fc.constant({ start: true }),
)
const terms = fc.constantFrom('US' as const, 'UK' as const, undefined)

describe('hostile text', () => {
  it('never throws, whatever words stand there', () => {
    fc.assert(
      fc.property(text, after, terms, (words, before, marked) => {
        const { rounds, worked, findings, tree } = readRounds(words, { after: before, terms: marked })
        expect(worked).toHaveLength(rounds.length)
        expect(tree.text).toBe(words)
        for (const found of findings) expect(found.message).not.toMatch(/undefined|NaN|\{\w+\}/)
      }),
      { numRuns: runs(3000), seed: 20261124 },
    )
  })

  it('never throws, whatever signs stand there', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (signs) => {
        readRounds(signs)
      }),
      { numRuns: runs(1500), seed: 7 },
    )
  })

  it('refuses numbers that nobody can work', () => {
    const texts = [
      'Rnd 2: *Sc in next st; rep from * 1000000000 times.',
      'Rnd 2: [[[[sc in next st] 4999 times] 4999 times] 4999 times] 4999 times',
      'Rnd 2: Ch 1000000000, join.',
      'Rnd 2: 1000000000 sc in next st.',
      'Rnds 2-1000000000: Sc in each st around.',
      'Rnd 2: [[] 4999 times] 4999 times, [(sk 1) 4999 times] 4999 times.',
      'Rnd 2: 1000000000 sc evenly around.',
    ]
    for (const each of texts) {
      const { findings } = readRounds(each, { terms: 'US', after: { stitches: 12 } })
      expect(findings.map((found) => found.code)).toContain('rounds/too-long')
    }
  })

  it('does not give in to deep brackets', () => {
    const deep = `Rnd 2: ${'('.repeat(5000)}sc in next st${')'.repeat(5000)}`
    const { findings } = readRounds(deep, { terms: 'US', after: { stitches: 12 } })
    expect(findings.map((found) => found.code)).toContain('rounds/nested-too-deep')
  })

  it('takes time that grows with the length of the text alone', () => {
    const pieces = [
      'Rnd 2: *Sc in next st, ch 3, sk next st; rep from * around; join. (8 ch-3 sps)\n',
      'fold petals forward and pull the tail ',
      'sc in next st, ',
      '(sc in next st, ch 2) twice, ',
      '* ',
      'in ',
      '2 ',
      '(12 sc) ',
      'rep from * around, ',
      'ch-3 ',
      'in each st and in each ',
      'a: ',
      'ending with ',
    ]
    // Behind the beginning of a round.
    const within = [',', '[sc in next st] ', '(36, 38, 40) ', '* sc, ', 'and sc ']
    const timeOf = (piece: string, length: number) => {
      const begun = within.includes(piece) ? 'Rnd 2: 6 sc in ring' : ''
      const long = begun + piece.repeat(Math.ceil(length / piece.length))
      const started = processorTime()
      // Of several texts nothing is remembered.
      readRoundTexts([long, ''], { terms: 'US', after: { stitches: 16 } })
      return processorTime() - started
    }
    const [few, many] = [20_000, 160_000]
    for (const piece of [...pieces, ...within]) {
      timeOf(piece, few)
      // What the engine sweeps up meanwhile counts too, so one slow reading proves nothing: a quadratic reader, which
      // takes sixty-four times as long for eight times the text, does so each time.
      let [long, most] = [Infinity, 0]
      for (let times = 0; times < 6 && long >= most; times++) {
        most = 20 * Math.min(timeOf(piece, few), timeOf(piece, few)) + 20
        long = timeOf(piece, many)
      }
      expect(long, JSON.stringify(piece)).toBeLessThan(most)
    }
  })

  it('never throws, however long the text is', () => {
    for (const piece of ['a: ', '; ', '(12 sc) ']) {
      const { tree } = readRounds(piece.repeat(Math.floor(390_000 / piece.length)), { terms: 'US' })
      expect(printRounds(tree, { style: 'consistent', terms: 'UK' }).length).toBeGreaterThan(0)
    }
  })
})
