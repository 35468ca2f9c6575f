/** Stitches explained in the midst of a round: "(a picot is 4 ch, 1 s.s. into 4th ch from hook)", "The picot is ch 3, …". */
import type { Reader } from './reader'
import type { Span } from './tokens'
import type { Item, NoteItem } from './tree'
import { readStitch } from './vocabulary'
import { explainsWorked } from './worked-later'

/** "Corner": what a text makes one thing of without its being a stitch. */
const readNamed = (reader: Reader): { readonly label: string } | null => {
  const at = reader.at
  return reader.skip('corner', 'group') ? { label: reader.words(reader.span(at)) } : null
}

/** `"Tip" means (2 dc, ch 2, 2 dc) in the place given`: a name of the text's own, in quotation marks. */
const readQuoted = (reader: Reader): { readonly label: string } | null =>
  reader.attempt(() => {
    const at = reader.at
    while (reader.at - at < 3 && /^[a-z-]+$/.test(reader.key())) reader.at++
    return reader.at > at && /^["”']$/.test(reader.key()) ? { label: reader.words(reader.span(at)) } : null
  })

/** A stitch and where its explanation stands, by tokens. */
export interface Explained {
  readonly label: string
  readonly from: number
  /** First token of what is worked, first one behind it. */
  readonly to: number
  readonly end: number
  readonly span: Span
  /** Worked where it is explained: "… (shell made)". */
  readonly made?: boolean
  /** Right behind the chains that a round begins with: one of them is a part of it. */
  readonly first?: boolean
}

const OPENERS: ReadonlyMap<string, string> = new Map([
  ['(', ')'],
  ['[', ']'],
])
/** Behind these a sentence of its own may begin. */
const ENDS = new Set(['.', ';', '!', ')', ']'])
/** Words that an explanation has at most. */
const LONGEST = 60
/** Forms of stitches that differ from designer to designer. */
const DIFFERING = new Set(['picot', 'shell', 'v-stitch', 'cluster', 'puff', 'popcorn', 'bobble', 'special'])

/** "(Ch 3 = 1 dc.) Cnr: (dc, ch 2, dc) in next sp.": a name of the text's own that its rounds work, and the colon; passes it. */
const readOwnName = (reader: Reader): string | null =>
  reader.attempt(() => {
    if (!explainsWorked(reader)) return null
    const start = reader.at
    while (!/^[=:–—-]$/.test(reader.key())) reader.at++
    const label = reader.words(reader.span(start))
    const told = reader.key() === ':' || reader.key() === '='
    reader.at++
    return told ? label : null
  })

/** "A picot is", "each picot =", "to make a picot:": the name alone and what says that it is explained; passes it. */
function readExplains(reader: Reader): { readonly label: string; readonly from: number } | null {
  return reader.attempt(() => {
    reader.skip('note', 'where')
    reader.skip(':')
    const told = reader.skip('to', 'for') && (reader.skip('work', 'make'), true)
    const article = reader.skip('a', 'an', 'the', 'each', 'every', 'one', '1', 'my', 'our')
    const quoted = reader.skip('"', '“', "'")
    const from = reader.at
    const known = reader.attempt(() => readStitch(reader))
    reader.at = from
    const group = readNamed(reader) ?? (quoted && !known ? readQuoted(reader) : null)
    if (quoted && !reader.skip('"', '”', "'")) return null
    if (group) reader.skipAll('in', 'this', 'pattern')
    const own = group || known ? null : readOwnName(reader)
    if (own !== null) return { label: own, from }
    const named = group ? null : readStitch(reader)
    if (!group && (!named || !DIFFERING.has(named.form))) return null
    const label = group ? group.label : reader.words(named!)
    // "A V-stitch (V-st) is (dc, ch 2, dc) all in one stitch".
    reader.attempt(() => {
      if (!reader.skip('(')) return null
      const again = readStitch(reader)
      return (again?.form === named?.form && reader.skip(')')) || null
    })
    // "The corner is (2 dc, ch 2, 2 dc)"; "a corner is a corner".
    if (group) {
      // "Cnr: (dc, ch 2, dc) in next sp." behind another sentence.
      const told = reader.sees(':') && reader.key(1) === '(' && reader.skip(':')
      if (!told && !reader.skip('is', 'means') && !reader.skip('=')) return null
      return reader.sees('(') || reader.peek()?.kind === 'number' ? { label, from } : null
    }
    if (reader.sees('.') && /^[=:,]$/.test(reader.key(1))) reader.at++
    // "Cl., cluster, that is 1 tr. into each of next 3 d.c."
    const twice = reader.attempt(() => {
      const again = reader.skip(',') && readStitch(reader)
      return again && again.form === named?.form && /^[,=:]$/.test(reader.key()) ? true : null
    })
    if (reader.skip('=') || (twice && reader.skip(':'))) return { label, from }
    const thatIs = reader.attempt(() => {
      reader.skip(',')
      return reader.skipAll('that', 'is') || reader.skip("that's") || null
    })
    if (thatIs) return { label, from }
    if (reader.skip(':', ',')) return told || (article && reader.key(-1) === ':') ? { label, from } : null
    if (!reader.skip('is', 'are', 'means', 'consists')) return told ? { label, from } : null
    // "The picot is worked as follows: …", "is made by working …".
    while (reader.skip('work', 'worked', 'made', 'as', 'by', 'follows', 'thus', 'like', 'this', 'of', ':'))
      continue
    return { label, from }
  })
}

/** "…, and a V-stitch (V-st) means dc, ch 2, dc": whether another explanation stands at a token. */
function explainsAnother(reader: Reader, at: number): boolean {
  if (reader.tokens[at]?.key !== 'and' || !/^[,;]$/.test(reader.tokens[at - 1]?.key ?? '')) return false
  const outer = reader.at
  reader.at = at + 1
  const another = readExplains(reader) !== null
  reader.at = outer
  return another
}

/** The explanation at the cursor, in a bracket or as a sentence; the cursor stays. */
function explainedAt(reader: Reader): Explained | null {
  const start = reader.at
  const closer = OPENERS.get(reader.key())
  const before = reader.tokens[start - 1]
  const opens =
    !before || ENDS.has(before.key) || reader.tokens[start]?.first || explainsAnother(reader, start - 1)
  if (!closer && !opens) return null
  if (closer) reader.at++
  const named = readExplains(reader)
  const to = reader.at
  reader.at = start
  if (!named) return null
  let end = to
  let open = 0
  const limit = Math.min(reader.end, to + LONGEST)
  while (end < limit) {
    const { key, paragraph } = reader.tokens[end]!
    if (OPENERS.has(key)) open++
    if (closer ? key === closer && open === 0 : (key === '.' || paragraph) && open === 0 && end > to) break
    if (key === ',' && explainsAnother(reader, end + 1)) break
    if (key === ')' || key === ']') open--
    end++
  }
  if (end === to || (end >= limit && (closer || limit < reader.end))) return null
  reader.at = to
  const span = reader.span(start)
  reader.at = start
  return { ...named, to, end, span }
}

/** "(dc, ch 2, dc) in next dc [corner], …": the name alone in a bracket behind the place. */
const namesOnly = (reader: Reader, open: number): boolean =>
  /^[)\]]$/.test(reader.key()) &&
  /^[.,;:*)\]]?$/.test(reader.key(1)) &&
  reader.tokens[open - 1]?.kind !== 'mark'

/** "in each loop make 3 dc, ch 2 and 3 dc (shell made)": what stands before the bracket is that stitch. */
function madeAt(reader: Reader): Explained | null {
  const start = reader.at
  // "… make dc, ch 5 and dc for corner".
  const purpose = reader.sees('for')
  if (!purpose && !OPENERS.has(reader.key())) return null
  reader.at++
  reader.skip('a', 'the', 'first')
  const from = reader.at
  const group = readNamed(reader)
  const named = group ? null : readStitch(reader)
  const told = group !== null || (named !== null && !named.beginning && MADE.has(named.form))
  const alone = told && !purpose && namesOnly(reader, start)
  const made = told && (alone || reader.sees('made') || (purpose && group !== null))
  reader.at = start
  if (!made) return null
  const least = Math.max(0, start - LONGEST)
  let to = start
  let open = 0
  for (let at = start - 1; at >= least; at--) {
    const { key, is, first } = reader.tokens[at]!
    if (key === ')' || key === ']') open++
    else if (OPENERS.has(key) && --open === 0) {
      // "(3 dc, ch 2, 3 dc) in next sp (shell made)".
      to = at
      break
    }
    if (open > 0) continue
    if (is === 'make' || is === 'work') {
      to = at + 1
      break
    }
    if (/^[.;:*]$/.test(key) || first) break
    if (key === ',' && to === start) to = at + 1
  }
  if (named?.form === 'shell' || named?.form === 'v-stitch') to = beforeChains(reader, to, start)
  if (to >= start || (alone && !OPENERS.has(reader.tokens[to]!.key))) return null
  reader.at = from
  const span = reader.span(from)
  reader.at = start
  const label = group?.label ?? reader.words(named!)
  return { label, from, to, end: start, span, made: true, first: isBehindBeginning(reader, to, start) }
}

/** "…, 2 dc, ch 2 and 2 dc in ring (shell made)", "2 dc in next dc, ch 2, 2 dc in next dc": from the stitches before its chains on. */
function beforeChains({ tokens }: Reader, to: number, end: number): number {
  const opens = (at: number): number => {
    let from = at
    while (from > 0 && !/^[,.:;*()[\]]$/.test(tokens[from - 1]!.key)) from--
    return from
  }
  const isChain = (at: number): boolean => tokens[at]?.is === 'ch' || tokens[at]?.kind === 'chains'
  const isComma = (at: number): boolean => tokens[at]?.key === ','
  let from = to
  if (!isChain(from)) {
    if (tokens.slice(to, end).some((_, ahead) => isChain(to + ahead)) || !isComma(to - 1)) return to
    from = opens(to - 1)
    if (!isChain(from)) return to
  }
  return isComma(from - 1) && !isChain(opens(from - 1)) ? opens(from - 1) : to
}

/** "Ch 3 (counts as dc), (dc, ch 2, 2 dc) in same st": what stands there goes on from the chains of its round. */
function isBehindBeginning({ tokens }: Reader, to: number, end: number): boolean {
  if (!tokens.slice(to, end).some(({ is }) => is === 'same' || is === 'ring')) return false
  const words = tokens.slice(Math.max(0, to - 12), to)
  const from = words.findLastIndex(({ is }) => /^([:;*.]|in|into|next)$/.test(is)) + 1
  return words.slice(from).some((token) => token.is === 'ch' || token.kind === 'chains')
}
const MADE = new Set(['shell', 'v-stitch', 'popcorn', 'special'])

/** Passes an explanation: it works nothing where it stands. */
export function passExplanation(reader: Reader): NoteItem | null {
  const start = reader.at
  const found = explainedAt(reader)
  if (!found) return null
  reader.at = Math.min(reader.end, found.end + (OPENERS.has(reader.key()) ? 1 : 0))
  return { type: 'note', effect: null, ...reader.span(start) }
}

/** Stitches that are explained where they are worked. */
export function* explainedWithin(reader: Reader): Generator<Explained> {
  for (let at = 0; at < reader.tokens.length; at++) {
    reader.at = at
    const found = explainedAt(reader) ?? madeAt(reader)
    if (found) yield found
  }
}

/** The first shell, of which the chains of its round are a stitch: "ch 3, dc, ch 2 and 2 dc in ring (shell made)" as (2 dc, ch 2, 2 dc); null where its sides differ. */
export function withChains<T extends { readonly items: readonly Item[] }>(definition: T): T | null {
  const [group] = definition.items
  const items = group?.type === 'group' && definition.items.length === 1 ? group.items : definition.items
  const [first, chain, last, ...more] = items
  if (first?.type !== 'work' || chain?.type !== 'chain' || last?.type !== 'work' || more.length > 0)
    return null
  const count = (first.count ?? 1) + 1
  if (first.stitch.stitch !== last.stitch.stitch || count !== (last.count ?? 1)) return null
  return { ...definition, items: [{ ...first, count }, chain, last] }
}
