/** Stitches that the text explains: what stands under their names. */
import type { Explained } from './explained'
import { isKnown } from './known-names'
import type { Reader } from './reader'
import { MAKES, readBody, spanTokens } from './round-body'
import type { Heading } from './round-headings'
import type { Definition, Item, WorkItem } from './tree'
import { isSlip } from './stitch-name'
import type { StitchForm } from './stitch-name'
import { definedKey, readStitch } from './vocabulary'
import { wordOf } from './words'

/** "5 tr into st indicated, leaving last loop of each on hook, yrh and draw through all": one stitch of several. */
const drawsIn = ({ count, stitch }: WorkItem, items: readonly Item[]): boolean =>
  (count ?? 1) > 1 &&
  stitch.form === 'plain' &&
  items.some((item) => item.type === 'described' && item.closes)

const FORM_BY_ITEMS = (items: readonly Item[], manner: boolean): StitchForm => {
  const made = items.filter(({ type }) => type === 'work' || type === 'group' || type === 'placed')
  // "Spike sc: work a sc in the st 2 rnds below" is one stitch in a manner of its own.
  const [only] = made
  const one = manner && made.length === 1 && only?.type === 'work' && (only.count ?? 1) === 1
  if (made.length === 1 && only?.type === 'work' && drawsIn(only, items)) return 'cluster'
  return made.length > 0 && !one ? 'shell' : 'special'
}

/** "MB (make bobble)": what a stitch is called tells its form, whatever its abbreviation. */
const formNamed = (names: readonly string[]): StitchForm | null =>
  (['bobble', 'popcorn', 'puff', 'cluster'] as const).find((form) =>
    names.some((name) => name.split(/\s+/).some((word) => wordOf(word).is === form)),
  ) ?? null

/** "Large picot: ch 5, sl st in 5th ch from hook": chains that a slip stitch closes. */
function isPicot(items: readonly Item[]): boolean {
  const [chain, slip, ...more] = items.filter(({ type }) => type !== 'note')
  return chain?.type === 'chain' && slip?.type === 'work' && isSlip(slip.stitch) && more.length === 0
}

/** "Inc = (dc, ch 1, dc) in ch-1 sp": more than two stitches in one. */
const CHANGES: ReadonlySet<StitchForm> = new Set(['increase', 'decrease'])
const hasChains = (items: readonly Item[]): boolean =>
  items.some((item) => item.type === 'chain' || ('items' in item && hasChains(item.items)))

/** "Decrease (sc3tog)": says itself over how many it goes. */
const SIZED = /\d\s?-?tog$/i

/** "Corner = 2 dc, tr, ch 3, tr, 2 dc in the corner sp": all of it goes there, with or without a bracket. */
const placeLast = (items: readonly Item[]): readonly Item[] => {
  const last = items.at(-1)
  const before = items.slice(0, -1)
  if (last?.type !== 'work' || !last.place || before.length < 2) return items
  const kind = last.place.parts[0]?.noun.kind
  const bare = before.every((item) => item.type === 'chain' || (item.type === 'work' && !item.place))
  if (!bare || !before.some(({ type }) => type === 'chain') || (kind !== 'corner' && kind !== 'space'))
    return items
  const span = { start: items[0]!.start, end: last.end, line: items[0]!.line, column: items[0]!.column }
  const group = { bracket: '(', times: null, around: false, toCorner: false, lastCount: 0 } as const
  return [
    { type: 'group', ...group, items: [...before, { ...last, place: null }], place: last.place, ...span },
  ]
}

/** "Corner = (dc, ch 2, dc) in next sp. Join all rnds with a sl st.": the next sentence is none of the stitch. */
const withoutJoin = (items: readonly Item[], text: string): readonly Item[] => {
  const at = items.findIndex(
    (item) => item.type === 'join' && !item.place && /\.\s*$/.test(text.slice(item.start - 3, item.start)),
  )
  return at > 0 ? items.slice(0, at) : items
}

/** "Corner: in the ch-2 sp work 2 dc, ch 2, 2 dc" goes there once, as "(2 dc, ch 2, 2 dc) in the ch-2 sp" does. */
const placeBehind = (item: Item): Item =>
  item.type === 'placed' && !item.items.some((each) => 'place' in each && each.place)
    ? {
        ...item,
        ...{ type: 'group', bracket: '(', times: null, around: false, toCorner: false, lastCount: 0 },
      }
    : item

/** "Ftr: 1 tr worked into the free front loop of the dc": one stitch in the next one. */
const isOneNext = ({ count, place }: WorkItem): boolean => {
  const [part, ...more] = place?.parts ?? []
  const kind = part?.noun.kind
  const next = part?.which === 'next' && part.count === 1 && (kind === 'stitch' || kind === 'row-end')
  return next && part.round === null && more.length === 0 && (count ?? 1) === 1
}

/** That nothing else goes into the stitch behind it. */
const COVERS =
  /\b(?:do not work|don[’']t work|skip|sk|miss|leave(?: out)?|leaving(?: out)?|skipping|missing) (?:into |in )?(?:the |that |next )*(?:\w+ )?(?:behind|beneath|underneath|covered|that lies|it covers|lying)\b/i

/** A stitch under its name, with the words up to a token that explain it. */
export function readDefinition(reader: Reader, heading: Heading | Explained, to: number): Definition {
  // "Sp/s: space/s".
  const label = (heading.label ?? '').replace(/\/e?s\b/gi, '')
  const [, long = label, short = ''] = /^(.*?)\s*[([](?!e?s[)\]])([^)\]]*)[)\]]$/.exec(label) ?? []
  const names = [long.replace(/^(?:the )?(.*?) of (?:a|the|each) (?:row|round|rnd)$/i, '$1'), short]
    .flatMap((name) => name.split(/\/|\bor\b/i))
    .map((name) =>
      name
        .trim()
        .toLowerCase()
        .replace(/^(an?|the) /, ''),
    )
    .filter((name) => name !== '')
  reader.at = 'called' in heading ? (heading.called ?? heading.from) : heading.from
  reader.skip('the')
  const manner = reader.isA('manner')
  const named = readStitch(reader)
  // "Tr3tog", "FPdc" and "sc" are known as they stand, "long dc" is not.
  const known = named !== null && !manner && (named.form === 'together' || named.form === 'plain')
  const before = reader.findings.length
  const body = readBody(reader, heading.to, to).items
  const items = placeLast(withoutJoin(body, reader.text).map(placeBehind))
  // Special stitches are explained in prose; what is not understood there is no slip of the pattern.
  reader.findings.length = before
  // "Edge st: sc in first and last st": one stitch, wherever it is told.
  // "ftr = front treble: 1 tr worked into the free loop …": the whole name stands before what is told.
  const told = items.findIndex(({ type }) => type !== 'note')
  const [only, ...others] = items.slice(Math.max(0, told))
  const edge =
    only?.type === 'work' &&
    others.every(({ type }) => type === 'note') &&
    named === null &&
    (only.place?.parts ?? []).every(({ which }) => which === 'first' || which === 'last')
  // "Spike: sc worked over the edge of Rnd 3, down into the gap …": one stitch, and how it is worked.
  const single =
    (named === null || manner) &&
    only?.type === 'work' &&
    only.stitch.form === 'plain' &&
    (only.place === null || isOneNext(only)) &&
    others.every(({ type }) => ['note', 'scope', 'described', 'skip'].includes(type)) &&
    // "Winkle: 5 tr into st indicated, leaving last loop of each on hook, yrh and draw through all".
    !drawsIn(only, others)
  // "Drop dc: dc in the loop two rnds below; do not work the st behind it": takes the place of the stitch it covers.
  const { end } = reader.tokens[to - 1] ?? heading.span
  const covers =
    only?.type === 'work' &&
    only.stitch.form === 'plain' &&
    (only.place?.parts ?? []).every(({ round }) => round !== null) &&
    COVERS.test(reader.text.slice(heading.span.end, end))
  if (single || covers || (edge && only.place))
    return {
      ...{ names, keys: names.map(definedKey), form: 'special', stitch: only.stitch.stitch },
      items: single ? [{ ...only, place: null }] : [],
      description: spanTokens(reader.tokens, heading.to, to),
      ...heading.span,
    }
  const form =
    named && named.form !== 'plain' && !(CHANGES.has(named.form) && hasChains(items))
      ? named.form
      : (formNamed(names) ?? (isPicot(items) ? 'picot' : FORM_BY_ITEMS(items, manner)))
  return {
    names,
    keys: known ? [] : names.filter((name) => !SIZED.test(name)).map(definedKey),
    form,
    stitch: named?.stitch ?? null,
    items,
    description: spanTokens(reader.tokens, heading.to, to),
    ...heading.span,
  }
}

/** "BP: back post", of "BP sc": the first half of a stitch's name. */
export const namesPost = ({ names }: Definition): boolean => names.every((name) => /^[fb]p$/i.test(name))

/** "Corner = (2 dc, ch 2, 2 dc)": a word of the trade that the text makes one thing of, not an abbreviation. */
export const makesGroup = ({ items }: Definition): boolean =>
  items.some(
    (item) =>
      (item.type === 'group' || item.type === 'placed') && item.items.some((each) => MAKES.has(each.type)),
  ) ||
  items.filter(({ type }) => type === 'work' || type === 'chain').length > 1 ||
  items.some((item) => item.type === 'work' && item.stitch.form === 'together')

/** "Petal: [yo, insert hook, …] 3 times, yo and draw through all", "Spike: …": a word of the trade for a stitch in steps. */
export const makesSteps = ({ names, items }: Definition): boolean =>
  items.some(({ type }) => type === 'described') &&
  names.some((name) => wordOf(name).kinds.has('group') || wordOf(name).kinds.has('manner'))

/** "mc = magic circle". */
export const makesRing = ({ items }: Definition): boolean =>
  items.length > 0 && items.every((item) => item.type === 'foundation' && item.ring === 'adjustable')

/** Another pair of a list behind the first one: "ch = chain, sl st = slip stitch". */
const LISTS_MORE = /[,;]\s*[\p{L}\d .-]{1,12}?\s*=/u
const YARN = /^(yarn|colou?r|shade|thread) \w{1,2}$/i

/** "ch = chain, sc = single crochet", "yarn A = blue, yarn B = white": lists that explain no stitch. */
export const listsOnly = ({ names, description }: Definition, text: string): boolean =>
  names.every((name) => YARN.test(name)) ||
  (names.every(isKnown) && LISTS_MORE.test(text.slice(description.start, description.end)))
