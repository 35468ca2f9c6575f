/** Words that only lead from one instruction to the next: "after which you", "and then you", "from there you will". */
import type { Reader } from './reader'
import { readStitch } from './vocabulary'

const LEADS = [
  ['after', 'which'],
  ['after', 'that'],
  ['after', 'this'],
  ['and', 'then'],
  ['followed', 'by'],
  ['from', 'there'],
  ['from', 'here'],
  ['next', 'you'],
  ['then', 'you'],
  ['and', 'you'],
  ['now', 'you'],
  ['you', 'then'],
  ['you', 'now'],
  ['you', 'will'],
]
const LEADING = [
  'after',
  'which',
  'that',
  'this',
  'and',
  'then',
  'from',
  'there',
  'here',
  'next',
  'followed',
  'by',
]
const WHO = ['you', 'we', 'i', 'he', 'she', 'they']
const HOW = [
  'will',
  'then',
  'now',
  'just',
  'simply',
  'can',
  'should',
  'also',
  'again',
  'go',
  'going',
  'on',
  'to',
]

/** Passes them where an instruction follows; they stand in the middle of a sentence. */
export const passConnector = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!LEADS.some(([first, second]) => reader.sees(first!, second!))) return null
    const before = reader.tokens[reader.at - 1]
    if (!before || !/^([,;)]|and|\p{L}+|\d+)$/u.test(before.key)) return null
    const lead = reader.at
    reader.at += reader.sees('after', 'which') || reader.key() !== 'next' ? 1 : 0
    while (reader.skip(...LEADING, ',')) continue
    const told = reader.skip(...WHO)
    while (reader.skip(...HOW)) continue
    if (reader.at === lead || (!told && reader.key(-1) === 'then')) return null
    const at = reader.at
    reader.number()
    const works =
      readStitch(reader) !== null || reader.isA('chain') || reader.isA('skip') || reader.isA('verb')
    reader.at = at
    return works || reader.peek()?.kind === 'chains' || null
  }) === true
