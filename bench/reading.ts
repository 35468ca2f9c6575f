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

export function benchReading(): Row {
  const text = mandala()
  const whole = bestOf(8, () => readRounds(text, { terms: 'US' }), forgetCourses)
  readRounds(text, { terms: 'US' })
  const keys = Array.from(TYPED, (_, at) => {
    const start = performance.now()
    readRounds(text + TYPED.slice(0, at + 1), { terms: 'US' })
    return performance.now() - start
  })
  const { median, p95 } = spread(keys)
  const ratio = whole / median
  return {
    what: `key in a mandala of ${ROUNDS} rounds (95th ${milliseconds(p95)})`,
    ours: milliseconds(median),
    baseline: milliseconds(whole),
    ratio: `${ratio.toFixed(1)} ×`,
    wanted: '≥ 10 ×',
    met: ratio >= 10,
  }
}
