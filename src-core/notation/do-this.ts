/** "Do this six times", "work this sequence 5 more times", "keep doing that all the way around": said of what stands before it. */
import { readAmount } from './clauses'
import type { Reader } from './reader'
import { passThis } from './this-part'
import type { RepeatClause } from './tree'

/** Words before it that add nothing. */
const LEADS = [
  'and',
  'then',
  'now',
  'next',
  'you',
  'we',
  'will',
  'must',
  'should',
  'need',
  'to',
  'please',
  'just',
]
/** How often in all, or more; null where the words tell anything else. */
export const readDoThis = (reader: Reader): Pick<RepeatClause, 'amount' | 'said'> | null =>
  reader.attempt(() => {
    while (reader.skip(...LEADS)) continue
    const on = reader.skip('keep', 'continue', 'carry', 'go')
    while (reader.skip('on', 'to')) continue
    if (
      !reader.skip('do', 'doing', 'follow', 'perform', 'performing') &&
      !reader.skipAll('carry', 'out') &&
      !(on || reader.sees('work') ? reader.skip('work', 'rep') : false)
    )
      return null
    if (!passThis(reader)) return null
    const again = reader.skip('again')
    reader.skip(',')
    const total =
      reader.skipAll('a', 'total', 'of') || reader.skipAll('in', 'total') || reader.skipAll('in', 'all')
    const amount = readAmount(reader)
    if (!amount || amount.toCorner || amount.lastCount > 0) return null
    const { amount: times, said } = amount
    if (times === null) return { amount: null, said: 'plain' }
    return {
      amount: times,
      said: again || reader.skip('again') ? 'more' : total || said === 'plain' ? 'in-all' : said,
    }
  })

/** "1 sc in next st, 2 sc in next st, six times.": behind a comma, and nothing more in its sentence. */
export const readBareTimes = (reader: Reader): Pick<RepeatClause, 'amount' | 'said'> | null =>
  reader.attempt(() => {
    if (reader.key(-1) !== ',' || !bareTimesAhead(reader)) return null
    const amount = readAmount(reader)
    if (!amount || !/^[.;([]?$/.test(reader.key())) return null
    return { amount: amount.amount, said: amount.said === 'plain' ? 'in-all' : amount.said }
  })
export const bareTimesAhead = (reader: Reader): boolean =>
  (reader.peek()?.kind === 'number' || reader.isA('number')) && ['times', 'more'].includes(reader.key(1))
