/** A key in a mandala of forty rounds, read on from the round it stands in, against reading the whole text. */
import { forgetCourses } from '../src-core/notation/continued'
import { readRounds } from '../src-core/notation/read'
import { bestOf, milliseconds, spread } from './measure'
import type { Row } from './measure'

const ROUNDS = 40
/** Stitches that each round has more than the one before: 7,380 in all. */
const MORE = 9

const mandala = (): string =>
  Array.from({ length: ROUNDS }, (_, at) => {
    const join = 'join with sl st in first sc'
    if (at === 0) return `Rnd 1: Magic ring, ch 1, ${MORE} sc in ring; ${join}. (${MORE} sc)`
    const lap = at === 1 ? '2 sc in next st' : `sc in next ${at - 1} sts, 2 sc in next st`
    return `Rnd ${at + 1}: Ch 1, *${lap}; rep from * around; ${join}. (${MORE * (at + 1)} sc)`
  }).join('\n')

/** Typed behind the last round, key by key. */
const TYPED = ' Turn and fasten off.'

/** Typed behind the count of the third round, key by key: what that leaves for the others stays as it was. */
const TYPED_EARLY = ' Mark the first st.'

/** What the keys of a hand take, one after the other, put in at a place of the text. */
function keysAt(text: string, at: number, typed: string): { median: number; p95: number } {
  forgetCourses()
  readRounds(text, { terms: 'US' })
  return spread(
    Array.from(typed, (_, key) => {
      const edited = text.slice(0, at) + typed.slice(0, key + 1) + text.slice(at)
      const start = performance.now()
      readRounds(edited, { terms: 'US' })
      return performance.now() - start
    }),
  )
}

export function benchReading(): Row[] {
  const text = mandala()
  const whole = bestOf(8, () => readRounds(text, { terms: 'US' }), forgetCourses)
  const row = (where: string, { median, p95 }: { median: number; p95: number }, least: number): Row => ({
    what: `key ${where} of a mandala of ${ROUNDS} rounds (95th ${milliseconds(p95)})`,
    ours: milliseconds(median),
    baseline: milliseconds(whole),
    ratio: `${(whole / median).toFixed(1)} ×`,
    wanted: `≥ ${least} ×`,
    met: whole / median >= least,
  })
  return [
    row('in the last round', keysAt(text, text.length, TYPED), 10),
    row('in the third round', keysAt(text, text.indexOf('\nRnd 4'), TYPED_EARLY), 4),
  ]
}
