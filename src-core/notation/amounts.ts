/**
 * Amounts that nobody can work ("ch 12345678901", "next 0 sts") are told at their word and not used. One walk over
 * the whole tree, by the names of its fields, so that no number of the grammar comes past it.
 */
import type { Said } from '../findings/finding'
import type { Parsed } from './grammar'
import { LIMITS } from './limits'
import type { Span, Token } from './tokens'
import type { Definition, RoundNode } from './tree'

type Limit = keyof typeof LIMITS

/** Where a thing stands, which is no amount. */
const PLACES = new Set(['start', 'end', 'line', 'column'])
/** Parts of the tree that only point into the text. */
const POINTERS = new Set(['heading', 'words', 'nounSpan', 'amountSpan', 'description'])

/** What each field is held against; a number by any other name is one of stitches. */
const LIMIT_OF: ReadonlyMap<string, Limit> = new Map(
  Object.entries({
    size: 'size',
    chains: 'chains',
    chain: 'chains',
    of: 'chains',
    times: 'repeats',
    amount: 'repeats',
    number: 'roundNumber',
    below: 'roundNumber',
    from: 'roundNumber',
    to: 'roundNumber',
    numbers: 'roundNumber',
  }),
)

/** What is counted, for the finding. */
const WORDS: Readonly<Partial<Record<Limit, string>>> = {
  stitches: 'stitches',
  repeats: 'repeats',
  chains: 'chains',
  size: 'stitches or chains in one stitch',
  roundNumber: 'rounds',
}

/** Fields of which there must be one at least; in a count at the end 0 is only a wrong count. */
const NEVER_NONE = new Set(['count', 'nth'])

type Slip = Said & { readonly span: Span }

class Walk {
  readonly slips: Slip[] = []

  constructor(
    readonly text: string,
    readonly tokens: readonly Token[],
  ) {}

  /** The value without what cannot be worked; the same object where everything can. */
  read(value: object, around: Span): object {
    if (Array.isArray(value)) {
      const items = value as readonly unknown[]
      const read = items.map((item) => (isObject(item) ? this.read(item, around) : item))
      return read.some((item, at) => item !== items[at]) ? read : value
    }
    const fields = value as Readonly<Record<string, unknown>>
    const span = isSpan(value) ? value : around
    let changed: Record<string, unknown> | null = null
    for (const [name, field] of Object.entries(fields)) {
      if (PLACES.has(name) || POINTERS.has(name)) continue
      const read =
        typeof field === 'number'
          ? this.#amount(name, field, fields, span)
          : isObject(field)
            ? this.read(field, span)
            : field
      if (read === field) continue
      changed ??= { ...fields }
      changed[name] = read
    }
    return changed ?? value
  }

  /** Round numbers of a heading; null where they are no numbers of rounds. */
  numbers(node: RoundNode): RoundNode['numbers'] {
    const wrong = node.numbers?.find((number) => number > LIMITS.roundNumber)
    if (wrong === undefined) return node.numbers
    this.#tooMany(wrong, 'roundNumber', node.heading ?? node)
    return null
  }

  #amount(name: string, value: number, fields: Readonly<Record<string, unknown>>, span: Span): number {
    const limit = name === 'count' && fields.type === 'chain' ? 'chains' : (LIMIT_OF.get(name) ?? 'stitches')
    if (value > LIMITS[limit]) {
      this.#tooMany(value, limit, span, toldAt(fields, span))
      return name === 'lastCount' ? 0 : 1
    }
    const none = value === 0 && NEVER_NONE.has(name) && !('words' in fields) && fields.to !== 'last'
    if (!none) return value
    this.slips.push({ code: 'rounds/none-of-it', span, values: { words: this.#wordsOf(span) } })
    return 1
  }

  #tooMany(value: number, limit: Limit, span: Span, told: Span | null = null): void {
    const word = this.#tokenOf(value, told ?? span)
    const words = this.#wordsOf(word)
    const received = limit === 'repeats' && /^\d+$/.test(words) ? `${words} times` : words
    const most = `${LIMITS[limit]} ${WORDS[limit] ?? ''}`
    this.slips.push({ code: 'rounds/too-long', span: told ?? word, values: { received, most } })
  }

  /** The figure itself, where it stands within a stretch; the last one, since "how often" stands at the end. */
  #tokenOf(value: number, span: Span): Span {
    let low = 0
    let high = this.tokens.length
    while (low < high) {
      const middle = (low + high) >> 1
      if (this.tokens[middle]!.start < span.end) low = middle + 1
      else high = middle
    }
    for (let at = low - 1; at >= 0 && this.tokens[at]!.start >= span.start; at--)
      if (this.tokens[at]!.value === value) return this.tokens[at]!
    return span
  }

  #wordsOf(span: Span): string {
    const words = this.text.slice(span.start, span.end).replace(/\s+/g, ' ')
    return words.length > 40 ? `${words.slice(0, 37)}…` : words
  }
}

/** Where "how often" is told: with what it repeats, or at the clause that says it. */
function toldAt(fields: Readonly<Record<string, unknown>>, span: Span): Span | null {
  if (isSpan(fields.amountSpan)) return fields.amountSpan
  return fields.type === 'group' ? span : null
}

const isObject = (value: unknown): value is object => typeof value === 'object' && value !== null
const isSpan = (value: unknown): value is Span => isObject(value) && 'start' in value && 'line' in value

/** Rounds in which every amount can be worked, so that they are not walked through again. */
const SOUND = new WeakSet<RoundNode['items']>()

/** A tree without amounts that nobody can work; rounds that name one are told, and their account stays open. */
export function withoutWildAmounts({ tree, findings, bodies }: Parsed): Parsed {
  const told = [...findings]
  const rounds = tree.rounds.map((node, round) => {
    if (SOUND.has(node.items) && (node.numbers?.[1] ?? 0) <= LIMITS.roundNumber) return node
    const walk = new Walk(tree.text, tree.tokens)
    const items = walk.read(node.items, node) as RoundNode['items']
    const numbers = walk.numbers(node)
    if (walk.slips.length === 0) {
      SOUND.add(node.items)
      return node
    }
    for (const slip of walk.slips) told.push({ ...slip, round })
    return { ...node, items, numbers, broken: true }
  })
  // What explains a stitch is prose: what cannot be worked is left out of it without a word, as all that is not understood.
  const definitions = tree.definitions.map(
    (definition) => new Walk(tree.text, tree.tokens).read(definition, definition) as Definition,
  )
  return { tree: { ...tree, rounds, definitions }, findings: told, bodies }
}
