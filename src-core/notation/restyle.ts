/** One consistent style: "Rnd 3: Ch 1, *2 sc in next st, sc in next st; rep from * 5 more times; join with sl st in first sc. (18 sc)". */
import { stitchAbbreviation } from '../stitches/terms'
import { landmarksIn } from './laps'
import { lastItems, starTimes } from './repeat-endings'
import { abbreviateText } from './translate'
import type { Span } from './tokens'
import type { GroupItem, Item, Place, PlacePart, RoundNode, RoundsTree, StarItem, WorkItem } from './tree'

export interface Style {
  readonly tree: RoundsTree
  /** Repeats written out. */
  readonly full: boolean
  /** A repeat that opens its round with chains: written out, they would pass for beginning chains. */
  readonly opening?: Item | null
}

const DISPENSABLE = /^[\s,;.:]+|[\s,;.:]+$/g

/** The designer's words for a stretch, abbreviated. */
export const wordsOf = (style: Style, span: Span): string =>
  abbreviateText(style.tree.text.slice(span.start, span.end), style.tree.terms).replace(DISPENSABLE, '')

export const lower = (text: string): string =>
  /^[A-Z][a-z]/.test(text) ? text[0]!.toLowerCase() + text.slice(1) : text

/** Whether a part says no more than which ones and how many. */
export function isSimple(part: PlacePart): boolean {
  const simple =
    part.noun.kind === 'stitch' ||
    (part.noun.kind === 'space' && !part.noun.corner) ||
    part.noun.kind === 'chain'
  return (
    part.which === 'next' &&
    simple &&
    !part.loop &&
    !part.around &&
    !part.round &&
    !part.unworked &&
    !part.each
  )
}

export function nounOf(style: Style, part: PlacePart): string {
  const words = lower(wordsOf(style, part.nounSpan))
  if (part.noun.kind !== 'stitch' || part.noun.name !== null) {
    const single = /^(.*)(sp|lp|ch)s$/.exec(words)
    return part.count === 1 && single ? single[1]! + single[2]! : words
  }
  return part.count > 1 ? 'sts' : 'st'
}

function simpleWords(style: Style, part: PlacePart): string {
  // "Join in any ch-2 sp, ch 1, *sc in ch-2 sp": the first one is where the yarn was joined, so no "next" is added.
  const before = style.tree.text.slice(part.start, part.nounSpan.start)
  if (part.noun.kind === 'space' && part.count === 1 && !/next/i.test(before)) return nounOf(style, part)
  return `next ${part.count > 1 ? `${part.count} ` : ''}${nounOf(style, part)}`
}

/** "in next 3 sts", "in each st around", "in next st and in corner sp". */
export function placeWords(style: Style, place: Place): string {
  const [first] = place.parts
  if (place.parts.length === 1 && first && isSimple(first))
    return `${place.over ? 'over' : 'in'} ${simpleWords(style, first)}`
  const words = lower(wordsOf(style, place))
  if (
    /^(around|round|to|all|across|until)\b/.test(words) &&
    first?.which === 'each' &&
    first.nounSpan.start === first.start
  )
    return `in each st ${words.replace(/^all (the )?/, '')}`
  if (/^(next|each|same)\b/.test(words)) return `in ${words}`
  return words.replace(/^(into|to|on|onto) /, 'in ')
}

function workWords(style: Style, item: WorkItem, placed: boolean): string {
  // Told in steps, with its place among them.
  if (item.place && item.stitch.end > item.place.start) return lower(wordsOf(style, item))
  const name = item.stitch.name === '' ? '' : lower(wordsOf(style, item.stitch))
  const count = item.count ?? 1
  const several = ['together', 'decrease', 'increase', 'picot'].includes(item.stitch.form)
  if (item.place) {
    // "sc 5 in ring" and "5 sc in ring" are the same.
    return `${count > 1 || name === '' ? `${count} ` : ''}${name} ${placeWords(style, item.place)}`.trim()
  }
  if (placed || several) return count > 1 ? `${count} ${name}` : name
  return `${name} in next ${count > 1 ? `${count} sts` : 'st'}`
}

export const times = (count: number): string =>
  count === 1 ? 'once' : count === 2 ? 'twice' : `${count} times`

function groupWords(style: Style, item: GroupItem, placed: boolean): string {
  const known = style.tree.repeats.get(item)
  const inner = (within: boolean) => sequence(style, item.items, within).join(', ')
  const place = item.place ? ` ${placeWords(style, item.place)}` : ''
  if (!item.place && style.full && item !== style.opening) {
    const count = item.around ? known : item.times
    if (count !== undefined && count !== null && count <= MOST_WRITTEN)
      return Array.from({ length: count }, () => inner(placed)).join(', ')
  }
  if (item.place) {
    const outer = item.times !== null && item.place.end !== item.end
    const bracket = `(${inner(true)})`
    if (item.around) return `[${bracket}${place}] ${aroundWords(item.lastCount)}`
    if (item.times === null) return `${bracket}${place}`
    return outer
      ? `[${bracket}${place}] ${times(item.times)}`
      : `[${inner(true)}] ${times(item.times)}${place}`
  }
  if (item.around) return `[${inner(placed)}] ${aroundWords(item.lastCount)}`
  return item.times === null ? `(${inner(placed)})` : `[${inner(placed)}] ${times(item.times)}`
}

const aroundWords = (last: number): string =>
  last > 0 ? `to last ${last === 1 ? 'st' : `${last} sts`}` : 'around'

/** Longer than this a written-out repeat helps nobody. */
const MOST_WRITTEN = 500

function starWords(style: Style, star: StarItem, placed: boolean): string {
  const body = sequence(style, star.items, placed)
  const clause = star.repeat
  if (!clause) return `*${body.join(', ')}`
  const known = starTimes(star) ?? style.tree.repeats.get(star)
  const last = lastItems(star)
  // The way "to tip of petal" is shared out within a repeat; it is not written out.
  const shared = landmarksIn(star.items) > 0
  if (
    style.full &&
    known !== undefined &&
    known <= MOST_WRITTEN &&
    last &&
    !shared &&
    star !== style.opening
  ) {
    const plain = sequence(
      style,
      star.items.filter((item) => item.type !== 'double'),
      placed,
    )
    const laps = Array.from({ length: Math.max(0, known - 1) }, () => plain).flat()
    return [...laps, ...sequence(style, last, placed)].join(', ')
  }
  const total = starTimes(star)
  const amount =
    total === null ? aroundWords(clause.lastCount) : total === 2 ? 'once more' : `${total - 1} more times`
  if (total === 1) return body.join(', ')
  let ending = ''
  if (clause.endAtDouble) ending = ', ending last rep at **'
  else if (clause.ending) {
    const items = sequence(style, clause.ending.items, placed).join(', ')
    const mode = clause.ending.mode
    ending =
      mode === 'after' || mode === 'before'
        ? `, ending last rep ${mode} ${lower(wordsOf(style, clause.ending.items[0]!))}`
        : mode === 'append'
          ? `, ending with ${items}`
          : mode === 'omit'
            ? `, omitting last ${items} on last rep`
            : `, ending last rep with ${items}`
  }
  return `*${body.join(', ').replace(/, \*\*/g, '**')}; rep from * ${amount}${ending}`
}

/** The words for one item; empty where it needs none. */
export function itemWords(style: Style, item: Item, placed: boolean): string {
  switch (item.type) {
    case 'work':
      return item.square ? lower(wordsOf(style, item)) : workWords(style, item, placed)
    case 'chain':
      return style.tree.terms === 'UK' ? `${item.count} ch` : `ch ${item.count}`
    case 'skip': {
      const [part] = item.place.parts
      if (item.unworked) return lower(wordsOf(style, item))
      const word = style.tree.terms === 'UK' ? 'miss' : 'sk'
      const simple = item.place.parts.length === 1 && part && isSimple(part)
      return `${word} ${simple ? simpleWords(style, part) : lower(wordsOf(style, item.place)).replace(/^in /, '')}`
    }
    case 'group':
      return groupWords(style, item, placed)
    case 'star':
      return starWords(style, item, placed)
    case 'again':
      return style.full
        ? ''
        : `rep from *${item.toDouble ? ' to **' : ''} ${item.times === 1 ? 'once' : times(item.times)} more`
    case 'double':
      return style.full ? '' : '**'
    case 'join': {
      const slip = stitchAbbreviation('sl st', style.tree.terms)
      return item.place ? `join with ${slip} ${placeWords(style, item.place)}` : 'join'
    }
    case 'placed':
      return `(${sequence(style, item.items, true).join(', ')}) ${placeWords(style, item.place)}`
    case 'statement':
    case 'count':
      return `(${wordsOf(style, item).replace(/^[([{]\s*|\s*[)\]}]$/g, '')})`
    default:
      return lower(wordsOf(style, item))
  }
}

/** Items as phrases; statements stand behind what they explain. */
function sequence(style: Style, items: readonly Item[], placed: boolean): string[] {
  const phrases: string[] = []
  items.forEach((item, index) => {
    if (item.type === 'again' && style.full) {
      const star = items.slice(0, index).findLast((found) => found.type === 'star')
      if (star?.type !== 'star') return
      const cut = star.items.findIndex((found) => found.type === 'double')
      const part = item.toDouble && cut >= 0 ? star.items.slice(0, cut) : star.items
      for (let lap = 0; lap < Math.min(item.times, MOST_WRITTEN); lap++)
        for (const phrase of sequence(style, part, placed)) phrases.push(phrase)
      return
    }
    if (item.type === 'placed') {
      // What closes the round stands behind the bracket, not in it.
      const end = item.items.findLastIndex((found) => found.type !== 'join' && found.type !== 'note') + 1
      phrases.push(itemWords(style, { ...item, items: item.items.slice(0, end) }, placed))
      for (const phrase of sequence(style, item.items.slice(end), placed)) phrases.push(phrase)
      return
    }
    const words = itemWords(style, item, placed)
    if (words === '') return
    const attach = item.type === 'statement' || (item.type === 'note' && /^\(/.test(words))
    if (attach && phrases.length > 0) phrases.push(`${phrases.pop()} ${words}`)
    else phrases.push(words)
  })
  return phrases
}

export const capital = (text: string): string =>
  text.replace(/^([*([{]*)(\p{Ll})/u, (_, signs: string, letter: string) => signs + letter.toUpperCase())

export function headingWords(style: Style, node: RoundNode): string {
  if (!node.heading) return ''
  const label = node.label ? ` (${node.label})` : ''
  if (!node.numbers)
    return node.label && !/\b(rnd|round|row)\b/i.test(node.label)
      ? `${node.label}: `
      : `${wordsOf(style, node.heading)}: `
  const [from, to] = node.numbers
  const word = style.tree.terms === 'UK' ? 'Round' : 'Rnd'
  return from === to ? `${word} ${from}${label}: ` : `${word}s ${from}-${to}${label}: `
}

const isPrelude = (item: Item): boolean =>
  ['note', 'colour', 'scope', 'statement', 'count'].includes(item.type)

/** The first thing worked, if it is a repeat that begins with chains. */
function openingRepeat(node: RoundNode): Item | null {
  const first = node.items.find((item) => !isPrelude(item)) ?? null
  let inner: Item | undefined = first ?? undefined
  while (inner && (inner.type === 'star' || inner.type === 'group'))
    inner = inner.items.find((item) => !isPrelude(item))
  return inner?.type === 'chain' && inner !== first ? first : null
}

function roundWords(whole: Style, node: RoundNode): string {
  const style: Style = { ...whole, opening: openingRepeat(node) }
  if (node.broken) return style.tree.text.slice(node.start, node.end)
  const counts = node.items.filter((item) => item.type === 'count')
  const phrases = sequence(
    style,
    node.items.filter((item) => item.type !== 'count'),
    false,
  )
  let body = ''
  phrases.forEach((phrase, index) => {
    const before = phrases[index - 1] ?? ''
    const strong =
      index > 0 &&
      ((phrase.startsWith('join') && !phrase.includes('form')) ||
        before.includes('; rep from') ||
        before.startsWith('rep from'))
    body += index === 0 ? phrase : `${strong ? '; ' : ', '}${phrase}`
  })
  const end = counts.map((count) => itemWords(style, count, false)).join(' ')
  return `${headingWords(style, node)}${capital(body)}${body === '' ? '' : '.'}${end === '' ? '' : ` ${end}`}`
}

/** The whole text in one style; sections, titles and explanations stay as they are. */
export function restyle(tree: RoundsTree, full: boolean): string {
  const style: Style = { tree, full }
  let result = ''
  let copied = 0
  for (const node of tree.rounds) {
    result += tree.text.slice(copied, node.start) + roundWords(style, node)
    copied = node.end
  }
  return result + tree.text.slice(copied)
}
