/** Names of stitches: abbreviations and full names in either terms, with posts, loops, "n tog" and specials. */
import { canonicalStitch } from '../stitches/terms'
import type { StitchKey } from '../stitches/table'
import type { Reader } from './reader'
import { plain } from './tokens'
import type { Token } from './tokens'
import { NO_NAME } from './stitch-name'
import type { Loop, StitchForm, StitchName } from './stitch-name'
import { wordOf } from './words'
import type { Word } from './words'

/** Forms of stitches that are words of their own. */
const FORMS: readonly StitchForm[] = [
  ...([
    'picot',
    'puff',
    'popcorn',
    'bobble',
    'cluster',
    'shell',
    'v-stitch',
    'increase',
    'decrease',
  ] as const),
]
/** Words that are names in one sense only when more follows ("double crochet", "sl st"). */
const NEVER_ALONE = new Set(['single', 'singles', 'double', 'doubles', 'sl', 'half-double'])
const LOOP_WORDS: ReadonlyMap<string, Loop> = new Map([
  ['blo', 'back'],
  ['flo', 'front'],
])
const COMPOUND =
  /^(fp|bp|blo?|flo?|rev|r|e|f(?=[sh]?d?c|htr))?(sc|hdc|dc|trc|tr|dtr|trtr|qtr|quadtr|htr|ttr|ch|ss|cl|puff|pf)(\d+tog|dec|inc|cl)?s?$/

/** Whether a word names a form of stitch. */
export const isForm = ({ kinds }: Pick<Word, 'kinds'>): boolean => FORMS.some((form) => kinds.has(form))

/** "Fasten off, and pop the kettle on": a verb of every day, and no popcorn. */
const POPPED = /^(the|your|it|them|that|this|a|an|some|on|off|out|round|over|along)$/
const isVerb = (reader: Reader, ahead: number): boolean =>
  reader.spelled(ahead) === 'pop' && POPPED.test(reader.spelled(ahead + 1))

/** "puff", "cl": the form that the word at the cursor names. */
const formAt = (reader: Reader, ahead = 0): StitchForm | null =>
  isVerb(reader, ahead) ? null : (FORMS.find((form) => reader.isA(form, ahead)) ?? null)

/** "beg-CL", "first-pc", "start-shell" in one word: its form; null where it is another one. */
function begunForm(reader: Reader): StitchForm | null {
  const [, rest] = /^(?:beg|first|start)-(.+)$/.exec(reader.key()) ?? []
  if (rest === undefined) return null
  const { kinds } = wordOf(rest)
  return FORMS.find((form) => kinds.has(form)) ?? null
}

interface Base {
  readonly stitch: StitchKey
  readonly foreign: boolean
}

/** A name in the text's terms, or else in the other ones (marked as such). */
function baseStitch(reader: Reader, name: string): Base | null {
  const own = canonicalStitch(name, reader.terms)
  if (own) return { stitch: own, foreign: false }
  const other = canonicalStitch(name, reader.terms === 'US' ? 'UK' : 'US')
  return other ? { stitch: other, foreign: true } : null
}

/** The keys at the cursor as long as `isPart` holds, at most so many. */
function keysAhead(reader: Reader, most: number, isPart: (token: Token) => boolean): string[] {
  const keys: string[] = []
  while (keys.length < most) {
    const token = reader.peek(keys.length)
    if (!token || !isPart(token)) break
    keys.push(token.key)
  }
  return keys
}

/** "15 doubles", "a double", "in the next double": older print leaves "crochet" out. */
const isCounted = (reader: Reader): boolean =>
  reader.spelled() !== 'sl' &&
  (reader.peek(-1)?.kind === 'number' || reader.isA('number', -1) || COUNTS_ONE.has(reader.key(-1)))
const COUNTS_ONE = new Set(['a', 'the', 'first', 'next', 'last', 'each', 'of', 'same', 'center'])

/** "the single tr": a stitch follows, so the word before it is none. */
const isNamed = (reader: Reader, token: Token | undefined): boolean =>
  token !== undefined &&
  !token.first &&
  (token.is === 'sl' || token.is === 'slip' || baseStitch(reader, token.key) !== null)

/** The longest plain name (up to four words: "half double crochet") at the cursor; passes it. */
function plainName(reader: Reader): Base | null {
  const keys = keysAhead(reader, 4, ({ kind }) => kind === 'word')
  for (let length = keys.length; length >= 1; length--) {
    const name = keys.slice(0, length).join(' ')
    if (NEVER_ALONE.has(name) && (!isCounted(reader) || isNamed(reader, reader.peek(length)))) continue
    const base = baseStitch(reader, name)
    if (!base) continue
    reader.at += length
    return base
  }
  return null
}

/** A name while it is read. */
type Draft = { -readonly [Part in keyof typeof NO_NAME]: (typeof NO_NAME)[Part] }

const draft = (): Draft => ({ ...NO_NAME })

/** "First Cl in ring", "first shell in same sp": the one that the round begins with, where it is worked and not a place. */
const opensGroup = (reader: Reader): boolean =>
  formAt(reader, 1) !== null &&
  (reader.peek(-1) === undefined || /^[.,:;(*[]$/.test(reader.tokens[reader.at - 1]?.key ?? '.'))

/** "Foundation sc": a stitch that is worked with its own chain. */
const opensFoundation = (reader: Reader): boolean =>
  reader.spelled() === 'foundation' &&
  !reader.isA('chain', 1) &&
  baseStitch(reader, reader.spelled(1)) !== null

/** "beg", "standing", "FP", "back post", "BLO", "reverse", "extended" before the name. */
function readPrefixes(reader: Reader, name: Draft): void {
  for (;;) {
    if (reader.skip('beg')) name.beginning = true
    // "An opening cluster": what opens is no space there.
    else if (reader.sees('opening') && formAt(reader, 1) !== null && reader.skip('opening'))
      name.beginning = true
    else if (reader.skip('starting') && reader.peek()) name.beginning = true
    else if (reader.sees('first') && opensGroup(reader)) {
      name.beginning = true
      reader.at++
    } else if (reader.skip('standing')) name.standing = true
    else if (reader.skip('chainless')) {
      name.standing = true
      reader.skip('beg', 'starting', 'begin')
    } else if (reader.skip('reverse')) name.reverse = true
    else if (opensFoundation(reader)) reader.at++
    else if (reader.skipA('manner')) continue
    else if (reader.skip('fp') || reader.skipAll('front', 'post')) name.post = 'front'
    else if (reader.skip('bp') || reader.skipAll('back', 'post')) name.post = 'back'
    else {
      const loop = LOOP_WORDS.get(reader.key())
      if (!loop) return
      name.loop = loop
      reader.at++
    }
  }
}

/** "rtrf", "rdcb": UK raised treble front, raised double crochet back. */
const RAISED = /^r(sc|hdc|dc|htr|tr|dtr)(f|b)s?$/
/** "tr/rf", "tr/RB": the same behind the name. */
const RAISED_BEHIND: ReadonlyMap<string, 'front' | 'back'> = new Map([
  ['rf', 'front'],
  ['rb', 'back'],
])

/** "dc-cl", "tr-puff", "dc-popcorn" in one word: a form and what it is made of. */
function readHyphened(reader: Reader, name: Draft): boolean {
  const [, base = '', behind = ''] = /^(\p{L}+)-(\p{L}+)$/u.exec(reader.spelled()) ?? []
  const { kinds } = wordOf(behind)
  const form = FORMS.find((each) => kinds.has(each))
  const stitch = form && form !== 'picot' ? baseStitch(reader, base) : null
  if (!form || !stitch || stitch.stitch === 'ch') return false
  Object.assign(name, { form, ...stitch })
  return ++reader.at > 0
}

/** One-word compounds: "FPdc", "BPsc", "dc3tog", "scdec", "dc-cl". */
function readCompound(reader: Reader, name: Draft): boolean {
  if (readHyphened(reader, name)) return true
  // "St-dc" and "stdg-dc" are short for a standing one.
  const started = /^st(?:dg?|and)?-(\p{L}+)$/u.exec(reader.spelled())
  const standing = started && baseStitch(reader, started[1]!)
  if (standing) {
    Object.assign(name, standing, { standing: true })
    return ++reader.at > 0
  }
  const raised = RAISED.exec(reader.spelled())
  const lifted = raised && baseStitch(reader, raised[1]!)
  if (lifted) {
    name.stitch = lifted.stitch
    name.foreign = lifted.foreign
    name.post = raised[2] === 'f' ? 'front' : 'back'
    return ++reader.at > 0
  }
  const found = COMPOUND.exec(reader.spelled())
  if (!found) return false
  const [, before = '', base = '', after = ''] = found
  const special = base === 'cl' || base === 'puff' || base === 'pf' ? base : null
  const stitch = special ? null : baseStitch(reader, base)
  if (!special && !stitch) return false
  if (special && !after) return false
  name.stitch = stitch?.stitch ?? null
  name.foreign = stitch?.foreign ?? false
  if (before === 'fp') name.post = 'front'
  if (before === 'bp') name.post = 'back'
  if (before.startsWith('bl')) name.loop = 'back'
  if (before.startsWith('fl')) name.loop = 'front'
  if (before === 'rev' || before === 'r') name.reverse = true
  if (after.endsWith('tog')) {
    name.form = 'together'
    name.size = Number.parseInt(after, 10)
  } else if (after === 'cl') name.form = 'cluster'
  else if (after === 'dec') {
    name.form = 'together'
    name.size = 2
  } else if (after === 'inc') {
    name.form = 'increase'
    name.size = 2
  }
  reader.at++
  return true
}

/** "together", "worked off together", "finished together"; passes it. */
const passTogether = (reader: Reader): boolean =>
  reader.attempt(() => {
    const worked = reader.skip('worked', 'finish', 'finished', 'crocheted', 'drawn', 'closed', 'made')
    if (worked) reader.skip('off')
    return reader.skip('tog') || null
  }) === true

/** "dc 2 tog", "2tog", "sc inc", "dc cluster", "hdc puff st" after a plain name. */
function readSuffixes(reader: Reader, name: Draft): void {
  const number = reader.peek()
  if (number?.kind === 'number' && reader.key(1) === 'tog') {
    name.form = 'together'
    name.size = number.value
    reader.at += 2
    return
  }
  const special = formAt(reader)
  if (name.form === 'plain' && special && reader.spelled() !== 'p' && name.stitch !== 'ch') {
    name.form = special
    reader.at++
    if (reader.isA('stitch')) reader.at++
  } else if (name.form === 'plain' && passTogether(reader)) {
    name.form = 'together'
    name.size = 2
  }
  const loop = LOOP_WORDS.get(reader.key())
  if (loop) {
    name.loop = loop
    reader.at++
  }
  const side = reader.sees('/') ? RAISED_BEHIND.get(reader.spelled(1)) : undefined
  if (side && name.form === 'plain') {
    name.post = side
    reader.at += 2
  }
}

function readSpecial(reader: Reader, name: Draft): boolean {
  if (reader.skipAll('crab', 'st')) {
    name.stitch = 'sc'
    name.reverse = true
    return true
  }
  // "Spike st", "long stitch": a long sc, wherever its hook goes.
  const long = ['spike', 'long'].includes(reader.key(-1))
  if (long && reader.skipA('stitch')) {
    name.stitch = 'sc'
    return true
  }
  const begun = begunForm(reader)
  if (begun) name.beginning = true
  const form = begun ?? formAt(reader)
  if (!form) return false
  reader.at++
  name.form = form
  // "picot-3" comes as a word, a hyphen and a number; "picot 3" is left to the count.
  const size = reader.peek(1)
  if (form === 'picot' && reader.key() === '-' && !reader.peek()!.spaced && size?.kind === 'number') {
    name.size = size.value
    reader.at += 2
  }
  if (reader.isA('stitch') && form !== 'increase' && form !== 'decrease') reader.at++
  // "shell of 5 dc".
  const made =
    form !== 'shell' && form !== 'cluster'
      ? null
      : reader.attempt(() => {
          if (!reader.skip('of')) return null
          const count = reader.number()
          const base = count === null ? null : plainName(reader)
          return base && count !== null && !reader.isA('group') ? { count, base } : null
        })
  if (made) Object.assign(name, { size: made.count, ...made.base })
  return true
}

/** Under what a stitch is looked up that the text defines: "2-tr cl", "2trcl" and "2 Tr Cl" are one name. */
export const definedKey = (name: string): string => plain(name).replace(/[\s.-]/g, '')

/** Names that the text defines itself, up to three words, longest first. */
function readDefined(reader: Reader, name: Draft): boolean {
  if (reader.definitions.size === 0) return false
  const keys = keysAhead(reader, 3, ({ kind }) => kind !== 'mark')
  for (let length = keys.length; length >= 1; length--) {
    const key = definedKey(keys.slice(0, length).join(''))
    const found = reader.definitions.get(key) ?? reader.definitions.get(key.replace(/s$/, ''))
    if (!found) continue
    reader.at += length
    name.form = found.form
    name.stitch = found.stitch
    name.beginning ||= /^(beg|first|start)/.test(key)
    if (reader.isA('stitch') && reader.key(-1) !== reader.key()) reader.at++
    return true
  }
  return false
}

/** Whether the figure at the cursor belongs to the name behind it ("3-dc cl", "3dccl") and tells no amount. */
export function sizesStitch(reader: Reader): boolean {
  const number = reader.peek()
  if (number?.kind !== 'number') return false
  const at = reader.at
  const named = number.hyphen || readDefined(reader, draft()) || readSized(reader, draft())
  reader.at = at
  return named
}

const BUNCHED: readonly StitchForm[] = ['cluster', 'puff', 'popcorn', 'bobble', 'shell']
/** "3-dc cl", "5-dc shell", "ch-3 picot": a size before the name. */
function readSized(reader: Reader, name: Draft): boolean {
  const token = reader.peek()
  if (token?.kind === 'chains' && reader.isA('picot', 1)) {
    reader.at += 2
    name.form = 'picot'
    name.size = token.value
    return true
  }
  // "3-dc cl", "3dc-cl" and "3dccl".
  const glued = token?.hyphen || reader.peek(1)?.start === token?.end
  // "A 3 dtr cluster", "3 dtr cluster": one of so many; "3 dtr clusters" are three.
  if (token?.kind !== 'number' || (!glued && token.value < 2)) return false
  const one = /^an?(other)?$/.test(reader.key(-1))
  const start = reader.at
  reader.at++
  if (glued && readCompound(reader, name) && BUNCHED.includes(name.form)) {
    name.size = token.value
    return true
  }
  reader.at = start + 1
  const base = plainName(reader)
  const form = formAt(reader)
  const sized = glued || (base && form && BUNCHED.includes(form) && (one || reader.spelled() === form))
  // "6A" of letters for stitches is so many, as "6 inc" is.
  const counts = form === 'increase' || reader.peek()?.text === 'A'
  if (form && sized && (base || !counts)) {
    reader.at++
    if (reader.isA('stitch')) reader.at++
    name.form = form
    name.size = token.value
    name.stitch = base?.stitch ?? null
    name.foreign = base?.foreign ?? false
    return true
  }
  reader.at = start
  return false
}

/** The stitch named at the cursor, or null (and nothing passed). Many ask at the same place, one after the other. */
export function readStitch(reader: Reader): StitchName | null {
  const { at, end } = reader
  const known = reader.stitches.get(at)
  if (known?.end === end) {
    reader.at = known.to
    return known.name
  }
  const name = stitchAt(reader)
  reader.stitches.set(at, { end, name, to: reader.at })
  return name
}

function stitchAt(reader: Reader): StitchName | null {
  const start = reader.at
  return reader.attempt(() => {
    const name = draft()
    const defined = readDefined(reader, name)
    if (!defined) {
      readPrefixes(reader, name)
      if (!readSized(reader, name)) {
        const plain = reader.attempt(() => {
          const base = plainName(reader)
          if (!base) return null
          name.stitch = base.stitch
          name.foreign = base.foreign
          return base
        })
        if (plain) readSuffixes(reader, name)
        else if (readCompound(reader, name)) readSuffixes(reader, name)
        else if (!readSpecial(reader, name) && !(name.beginning && readDefined(reader, name))) return null
      }
    }
    const span = reader.span(start)
    return { ...name, ...span, name: reader.words(span) }
  })
}
