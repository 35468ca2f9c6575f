/** The small clauses: how often, "rep from * …", what counts as what, how many there are at the end. */
import type { StitchKey } from '../stitches/table'
import { readNoun } from './nouns'
import { TIMES_WORDS } from './reader'
import type { Reader } from './reader'
import type { Span } from './tokens'
import type { CountEntry, CountItem, Item, RepeatClause, RepeatEnding, StatementItem } from './tree'
import { readStitch } from './vocabulary'

/** Where a sequence ends: at its bracket, at the end of the clause, or behind one part with an asterisk. */
export type Stop = 'close' | 'clause' | 'star'

/** Reads items up to a stop; handed in, since clauses and sequences hold each other. */
export type SequenceReader = (reader: Reader, stop: Stop) => Item[]

/** What marks the beginning of a part that is repeated. */
export const STARS = new Set(['*', '**', '***', '†'])

interface Amount {
  readonly amount: number | null
  readonly said: RepeatClause['said']
  readonly lastCount: number
  readonly around: boolean
  /** "across to next corner". */
  readonly toCorner: boolean
}

const MARKS_TIMES = new Set(['x', '×', '✕', '✖'])
const ALL_WORDS = new Set(['all', 'total', 'altogether'])

function skipInAll(reader: Reader): boolean {
  return (
    reader.attempt(() => {
      reader.skip('for')
      reader.skip('in', 'a')
      reader.skip('a')
      if (!reader.seesAny(ALL_WORDS)) return null
      // "in all sts" goes on: that is a place.
      if (['st', 'sts', 'sps', 'the'].includes(reader.key(1))) return null
      reader.at++
      return true
    }) !== null
  )
}

/** "6 times", "4 more times", "twice", "x 6", "around", "to last 3 sts". Null where nothing says how often. */
export function readAmount(reader: Reader, plainNumber = false): Amount | null {
  return reader.attempt((): Amount | null => {
    const done = (amount: number | null, said: RepeatClause['said'], lastCount = 0): Amount => ({
      amount,
      said: said === 'plain' && skipInAll(reader) ? 'in-all' : said,
      lastCount,
      around: amount === null,
      toCorner: false,
    })
    reader.skip('another', 'a')
    if (reader.seesAny(MARKS_TIMES)) {
      reader.at++
      const count = reader.number()
      if (count === null) return null
      reader.skip('times')
      return done(count, 'plain')
    }
    const worded = TIMES_WORDS.get(reader.key())
    if (worded !== undefined) {
      reader.at++
      const more = reader.skip('more', 'again')
      return done(worded, more ? 'more' : 'plain')
    }
    const count = reader.number()
    if (count !== null) {
      let more = reader.skip('more', 'further', 'additional')
      if (reader.seesAny(MARKS_TIMES)) {
        reader.at++
        return done(count, more ? 'more' : 'plain')
      }
      if (!reader.skip('times', 'time')) return plainNumber && more ? done(count, 'more') : null
      more = reader.skip('more', 'again') || more
      if (!reader.attempt(() => (reader.skip('around') ? true : null))) reader.skip('across')
      return done(count, more ? 'more' : 'plain')
    }
    if (reader.skip('all')) reader.skip('the', 'way')
    reader.skip('way')
    if (reader.skip('around', 'across', 'round')) {
      reader.skip('the')
      reader.skip('rnd', 'round', 'row', 'ring')
      if (!reader.sees('to')) return done(null, 'plain')
    }
    if (reader.skip('to', 'until')) {
      reader.skip('within')
      reader.skip('the')
      if (reader.skip('end')) {
        if (reader.skip('of')) {
          reader.skip('the')
          reader.skip('rnd', 'round', 'row')
        }
        return done(null, 'plain')
      }
      const corner = reader.attempt(() => {
        while (reader.skip('next', 'first', 'last', 'following', 'foll', 'same')) continue
        const noun = readNoun(reader)
        return noun?.kind === 'corner' || (noun?.kind === 'space' && noun.corner) ? noun : null
      })
      if (corner) return { ...done(null, 'plain'), toCorner: true }
      const last = reader.skip('last', 'final')
      const left = reader.number() ?? (last ? 1 : null)
      if (left === null) return null
      if (!readNoun(reader)) return null
      reader.skip('remain', 'rem', 'remaining', 'left')
      return done(null, 'plain', left)
    }
    return null
  })
}

/** Token where "on last rep" begins, if it comes soon; what is left out stands before it. */
function lastRepAhead(reader: Reader): number {
  for (let ahead = 1; ahead < 10; ahead++) {
    if (!['on', 'at', 'in'].includes(reader.key(ahead))) continue
    const named = reader.key(ahead + 1) === 'the' ? ahead + 2 : ahead + 1
    if (
      ['last', 'final'].includes(reader.key(named)) &&
      ['rep', 'repeat', 'time'].includes(reader.key(named + 1))
    )
      return reader.at + ahead
  }
  return reader.end
}

/** Sets the cursor behind the last token that ends there. */
function passBehind(reader: Reader, end: number): void {
  while (reader.at > 0 && reader.tokens[reader.at - 1]!.end > end) reader.at--
}

/** "ending last rep at **", "ending with ch 3, dc in first sc", "omitting last ch 2 on final rep". */
export function readEnding(
  reader: Reader,
  sequence: SequenceReader,
): { atDouble: boolean; ending: RepeatEnding | null } | null {
  const start = reader.at
  return reader.attempt(() => {
    while (reader.skip(',', ';', '.', '(', 'and', '-', '–', '—')) continue
    const bracketed = reader.tokens[reader.at - 1]?.key === '('
    const omit = reader.skip('omit', 'omitting', 'leaving')
    // "ending ch 1, sc in last sp": the "with" may be left out behind "ending", which stands for nothing else.
    const terse = ['ending', 'finishing'].includes(reader.key())
    if (!omit && !reader.skip('ending', 'end', 'finishing', 'finish', 'ends')) return null
    const lastRep = reader.attempt(() => {
      reader.skip('on')
      reader.skip('the')
      if (!reader.skip('last', 'final', 'each')) return null
      return reader.skip('rep', 'repeat', 'time', 'one') ? true : null
    })
    if (reader.skip('at')) {
      reader.skip('the')
      if (!reader.skip('**')) return null
      if (bracketed) reader.skip(')')
      return { atDouble: true, ending: null }
    }
    if (omit) {
      reader.skip('out', 'off')
      reader.skip('the')
      reader.skip('last', 'final')
      const outer = reader.end
      reader.end = lastRepAhead(reader)
      const items = sequence(reader, 'clause').slice(0, 1)
      if (items.length > 0) passBehind(reader, items[0]!.end)
      reader.end = outer
      if (items.length === 0) return null
      if (reader.skip('on', 'at', 'in')) {
        reader.skip('the')
        reader.skip('last', 'final')
        reader.skip('rep', 'repeat', 'time')
      }
      if (bracketed) reader.skip(')')
      return { atDouble: false, ending: { mode: 'omit', items, ...reader.span(start) } as RepeatEnding }
    }
    if (!reader.skip('with', 'by', 'in') && !lastRep && !terse) return null
    const items = sequence(reader, 'clause')
    if (items.every((item) => item.type === 'note')) return null
    const instead = reader.attempt(() => {
      reader.skip(',')
      return reader.skipAll('instead', 'of') || reader.skipAll('in', 'place', 'of') ? true : null
    })
    if (instead) {
      reader.skip('the')
      reader.skip('last', 'final')
      const replaced = sequence(reader, 'clause')
      if (replaced.length === 0) readNoun(reader)
    }
    if (bracketed) reader.skip(')')
    const mode = instead || lastRep ? 'replace' : 'append'
    return { atDouble: false, ending: { mode, items, ...reader.span(start) } as RepeatEnding }
  })
}

interface RepeatWords {
  readonly clause: RepeatClause
  readonly mark: string
  readonly toDouble: boolean
}

/** "rep from * 4 more times, ending last rep at **"; null where "rep" means something else. */
export function readRepeatClause(reader: Reader, sequence: SequenceReader): RepeatWords | null {
  const start = reader.at
  return reader.attempt(() => {
    if (!reader.skip('rep', 'repeat', 'reps', 'repeating', 'work', 'from')) return null
    reader.skip('.')
    reader.skip('instructions', 'pattern', 'pat')
    const between = reader.skip('between', 'bet')
    reader.skip('from')
    reader.skip('first')
    const mark = reader.key()
    if (!reader.skip('*', '**', '†', '***')) return null
    reader.skip("'s", 's')
    let toDouble = false
    if (reader.skip('to', 'through') || (between && reader.skip('and'))) {
      toDouble = reader.key() === '**'
      if (!reader.skip('*', '**', '†')) {
        // "rep from * to end", "rep from * to last 2 sts": the amount says it.
        reader.at--
      }
    }
    const amountStart = reader.at
    reader.skip(',')
    const amount = readAmount(reader, true) ?? {
      amount: null,
      said: 'plain' as const,
      lastCount: 0,
      around: true,
      toCorner: false,
    }
    if (reader.tokens[reader.at - 1]?.key === ',') reader.at--
    const amountSpan = reader.at > amountStart ? reader.span(amountStart) : reader.span(start)
    const end = readEnding(reader, sequence)
    const clause: RepeatClause = {
      amount: amount.amount,
      said: amount.said,
      lastCount: amount.lastCount,
      toCorner: amount.toCorner,
      endAtDouble: end?.atDouble ?? false,
      ending: end?.ending ?? null,
      amountSpan,
      ...reader.span(start),
    }
    return { clause, mark, toDouble }
  })
}

/** "counts as dc and ch 1", "does not count as a st", "V-st made"; at the first word, inside or without brackets. */
export function readStatement(reader: Reader, end: number): StatementItem | null {
  const start = reader.at
  return reader.attempt((): StatementItem | null => {
    const statement = (rest: Omit<StatementItem, keyof Span | 'type'>): StatementItem => {
      reader.at = end
      return { type: 'statement', ...rest, ...reader.span(start) }
    }
    const keys: string[] = []
    for (let index = reader.at; index < end; index++) keys.push(reader.tokens[index]!.key)
    // "(= 1 dc)" in the bracket behind the chains.
    if (keys[0] === '=' && (keys.length === 2 || ['1', 'one', 'a', 'first'].includes(keys[1] ?? '')))
      keys[0] = 'counts'
    const count = keys.findIndex(
      (key) => key === 'counts' || key === 'count' || key === 'counted' || key === 'counting',
    )
    const stands = keys.findIndex((key, index) => key === 'stands' && keys[index + 1] === 'for')
    const at = count >= 0 ? count : stands
    if (
      at >= 0 &&
      at <= 8 &&
      !keys.slice(0, at).some((key) => ['(', '[', '{', ',', ';', '*'].includes(key))
    ) {
      const negative = keys
        .slice(0, at + 2)
        .some((key) => ['not', "doesn't", "don't", 'never', 'no'].includes(key))
      if (negative) return statement({ says: 'does-not-count', stitch: null, cluster: false, chains: 0 })
      reader.at += at + 1
      reader.skip('as', 'for')
      reader.skip('the', 'a', 'an')
      reader.skip('first', 'beg')
      reader.number()
      const named = readStitch(reader)
      let chains = 0
      while (reader.at < end) {
        const token = reader.peek()!
        if (token.kind === 'chains') chains = token.value
        if (token.key === 'ch' || token.key === 'chain') {
          const after = reader.peek(1)
          const before = reader.tokens[reader.at - 1]
          if (after?.kind === 'number') chains = after.value
          else if (before?.kind === 'number') chains = before.value
          else chains = 1
        }
        reader.at++
      }
      const stitch: StitchKey | null = named?.stitch ?? null
      const cluster = named !== null && !['plain', 'special'].includes(named.form)
      return statement({ says: 'counts', stitch, cluster, chains })
    }
    const last = keys[keys.length - 1]
    if (keys.length <= 7 && ['made', 'formed', 'completed', 'complete'].includes(last ?? '')) {
      const cluster = keys.some((key) =>
        /^(cl|cls|cluster|puff|popcorn|pc|bobble|dc\dtog|tr\dtog)$/.test(key),
      )
      return statement({ says: 'made', stitch: null, cluster, chains: 0 })
    }
    return null
  })
}

const ENTRY_SEPARATORS = new Set([',', 'and', '&', '+', ';', 'with', 'plus'])
const COUNT_NOUNS = new Set([
  'petals',
  'petal',
  'groups',
  'groups',
  'points',
  'spokes',
  'corners',
  'leaves',
  'repeats',
  'scallops',
  'arches',
])
const TRAILING = new Set([
  'each',
  'rnd',
  'round',
  'in',
  'all',
  'total',
  'made',
  'around',
  'now',
  'at',
  'end',
  'of',
  'per',
  'the',
])

/** "per side", "on each side", "between corners": passes it. */
function passPerSide(reader: Reader, end: number): boolean {
  const per = reader.attempt(() => {
    if (!reader.skip('per', 'on', 'along', 'between', 'a')) return null
    while (reader.skip('each', 'every', 'the', 'all', 'four', 'six')) continue
    const sides = [
      'side',
      'sides',
      'corner',
      'corners',
      'edge',
      'edges',
      'petal',
      'petals',
      'section',
      'repeat',
    ]
    return reader.at < end && reader.skip(...sides) ? true : null
  })
  return per === true
}

/** "12 sc", "8 cl, 8 ch-3 sps", "24 sc each rnd", "18" between the cursor and `end`; null if it is anything else. */
export function readCounts(reader: Reader, end: number, bare: boolean): CountItem | null {
  const start = reader.at
  return reader.attempt((): CountItem | null => {
    const entries: CountEntry[] = []
    if (reader.skip('you')) {
      if (!reader.skip('have')) return null
    }
    reader.skip('total', '=', ':', 'of')
    while (reader.at < end) {
      // "12 dc, counting the beg ch-3 as a dc".
      const told = reader.key() === ',' ? 1 : 0
      if (entries.length > 0 && ['counting', 'including', 'incl', 'includes'].includes(reader.key(told))) {
        reader.at = end
        break
      }
      if (entries.length > 0 && !ENTRY_SEPARATORS.has(reader.key()) && !TRAILING.has(reader.key()))
        return null
      while (reader.at < end && ENTRY_SEPARATORS.has(reader.key())) reader.at++
      if (reader.seesAny(TRAILING) && entries.length > 0) {
        while (reader.at < end && reader.seesAny(TRAILING)) reader.at++
        if (reader.at < end) return null
        break
      }
      const from = reader.at
      const words = () => ({ words: reader.words(reader.span(from)), ...reader.span(from) })
      const token = reader.peek()
      if (token?.hyphen) return null
      const count = reader.number()
      if (count === null) return null
      // "(36, 48 dc)" of two rounds.
      const inTurn = [count]
      while (reader.at < end && reader.key() === ',') {
        const more = reader.attempt(() => (reader.skip(',') ? reader.number() : null))
        if (more === null) break
        inTurn.push(more)
      }
      if (reader.at >= end) {
        if (!bare || entries.length > 0) return null
        entries.push({ count, noun: { kind: 'stitch', name: null }, ...words() })
        break
      }
      // "4 x 4-ch sps".
      if (reader.seesAny(MARKS_TIMES)) reader.at++
      const named = reader.key()
      if (COUNT_NOUNS.has(named)) {
        reader.at++
        entries.push({ count, noun: { kind: 'own', chain: 0, of: 0, words: named }, ...words() })
        continue
      }
      reader.skip('picot')
      const picot =
        reader.tokens[reader.at - 1]!.key === 'picot' && reader.seesAny(new Set(['lps', 'loops', 'lp']))
      if (!picot && reader.tokens[reader.at - 1]!.key === 'picot') reader.at--
      const noun = readNoun(reader)
      if (!noun || reader.at > end) return null
      if (noun.kind === 'stitch' && noun.name?.stitch === 'ch' && noun.name.form === 'plain') return null
      if (noun.kind === 'chain') return null
      if (passPerSide(reader, end)) {
        // "7 dc per side" is no count of the round.
        entries.push({ count, noun: { kind: 'own', chain: 0, of: 0, words: 'side' }, ...words() })
        continue
      }
      const several = inTurn.length > 1 ? { inTurn } : {}
      entries.push({ count: inTurn[inTurn.length - 1]!, noun, ...several, ...words() })
    }
    if (entries.length === 0 || reader.at !== end) return null
    return { type: 'count', entries, ...reader.span(start) }
  })
}

/** "repeat [ ] 4 more times", "rep instructions in brackets 3 times more": what stood in brackets before. */
export function readRepeatBrackets(reader: Reader): { readonly times: number | null } | null {
  return reader.attempt(() => {
    if (!reader.skip('rep', 'repeat')) return null
    reader.skip('.')
    reader.skip('from', 'between')
    reader.skip('the')
    const empty =
      (reader.skip('[') && (reader.skip('to') || true) && reader.skip(']')) ||
      (reader.skip('(') && (reader.skip('to') || true) && reader.skip(')'))
    if (!empty) {
      reader.skip('instructions', 'directions', 'what', 'stitches', 'sts')
      reader.skip('is')
      reader.skip('in', 'within', 'between')
      while (reader.skip('square', 'round', 'the')) continue
      if (!reader.skip('brackets', 'bracket', 'parentheses', 'parenthesis', 'parens')) return null
    }
    const amount = readAmount(reader)
    return {
      times: amount?.amount == null ? null : amount.said === 'in-all' ? amount.amount : amount.amount + 1,
    }
  })
}
