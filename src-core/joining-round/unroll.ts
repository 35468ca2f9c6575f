/**
 * A round without its repeats: its text followed along what hands make of it, so that each place stands by itself.
 * Rounds told in sum ("36 sc evenly around", "in every 3rd") have no such steps.
 */
import { lastItems, starTimes } from '../notation/repeat-endings'
import { itemWords, lower, nounOf, placeWords, wordsOf } from '../notation/restyle'
import type { Style } from '../notation/restyle'
import type { Span } from '../notation/tokens'
import type {
  ChainItem,
  CountItem,
  GroupItem,
  Item,
  Place,
  PlacedItem,
  PlacePart,
  RoundNode,
  RoundsTree,
  StarItem,
  WorkItem,
} from '../notation/tree'
import type { WorkedElement, WorkedRound } from '../notation/worked'
import { LONGEST_ROUND } from './constants'
import type { PlaceWords, Step } from './steps'

export interface Unrolled {
  readonly node: RoundNode
  readonly style: Style
  readonly steps: readonly Step[]
  /** What the text says that the round has. */
  readonly counts: readonly CountItem[]
}

/** Thrown where a text cannot be told step by step. */
class Unfit extends Error {}

/** The steps of a worked round; null where its text does not tell them one by one. */
export function unroll(tree: RoundsTree, round: WorkedRound): Unrolled | null {
  const [first] = round.elements
  const holds = (node: RoundNode): boolean =>
    first !== undefined && first.span.start >= node.start && first.span.end <= node.end
  const node = tree.rounds.find(holds)
  if (!node || node.broken) return null
  const style: Style = { tree, full: false }
  try {
    const unroller = new Unroller(style, round.elements, joinsInSpace(node.items))
    const steps = unroller.items(
      node.items.filter(({ type }) => type !== 'count'),
      false,
    )
    unroller.finish()
    return { node, style, steps, counts: node.items.filter((item) => item.type === 'count') }
  } catch (error) {
    if (error instanceof Unfit) return null
    throw error
  }
}

const isWithin = (span: Span, element: WorkedElement | undefined): element is WorkedElement =>
  element !== undefined && element.span.start >= span.start && element.span.end <= span.end

type Swept = (WorkItem | GroupItem) & { readonly place: Place }

/** "… in each ch-6 sp around": nobody says how often. */
function isSwept(item: Item | undefined): item is Swept {
  if (item?.type !== 'work' && item?.type !== 'group') return false
  if (item.type === 'group' && (item.times !== null || item.around)) return false
  return item.place?.parts.at(-1)?.which === 'each'
}

const isSpace = ({ noun }: PlacePart): boolean => noun.kind === 'space' || noun.kind === 'corner'

/** "Join D in any ch-2 sp": whether the round begins like that. */
const joinsInSpace = ([first]: readonly Item[]): boolean =>
  first?.type === 'colour' && first.place !== null && isSpace(first.place.parts[0]!)

const BY_NAME: ReadonlySet<string> = new Set(['together', 'decrease', 'increase', 'picot'])
const SEVERAL: ReadonlySet<string> = new Set(['together', 'decrease'])
const SPELLED: ReadonlySet<string> = new Set(['shell', 'v-stitch', 'special'])

class Unroller {
  #at = 0
  #made = 0

  constructor(
    private readonly style: Style,
    private readonly elements: readonly WorkedElement[],
    /** Whether the yarn is joined in a space, in which the round is worked first. */
    private readonly beginsInSpace: boolean,
  ) {}

  /** All that was made has been told. */
  finish(): void {
    if (this.#at !== this.elements.length) throw new Unfit()
  }

  items(items: readonly Item[], placed: boolean): Step[] {
    const steps: Step[] = []
    for (let index = 0; index < items.length;) {
      let end = index
      while (isSwept(items[end])) end++
      if (end > index) steps.push(...this.#sweep(items.slice(index, end) as Swept[], placed))
      else steps.push(...this.#item(items, end++, placed))
      index = end
      this.#made += steps.length
      if (steps.length > LONGEST_ROUND || this.#made > 100 * LONGEST_ROUND) throw new Unfit()
    }
    return steps
  }

  #next = (): WorkedElement | undefined => this.elements[this.#at]

  /** Elements of a stretch of the text, at most so many, as long as they are taken. */
  #take(span: Span, most = Infinity, isTaken: (element: WorkedElement) => boolean = () => true) {
    const taken: WorkedElement[] = []
    for (let next = this.#next(); taken.length < most; next = this.#next()) {
      if (!isWithin(span, next) || !isTaken(next)) break
      taken.push(next)
      this.#at++
    }
    return taken
  }

  #item(items: readonly Item[], index: number, placed: boolean): Step[] {
    const item = items[index]!
    switch (item.type) {
      case 'work':
        return this.#work(item, placed)
      case 'chain':
        return [this.#chain(item)]
      case 'star':
        return this.#star(item, placed)
      case 'group':
        return this.#group(item, placed)
      case 'placed':
        return this.#placed(item)
      case 'again': {
        const star = items.slice(0, index).findLast((found) => found.type === 'star')
        if (star?.type !== 'star') throw new Unfit()
        const cut = star.items.findIndex(({ type }) => type === 'double')
        const part = item.toDouble && cut >= 0 ? star.items.slice(0, cut) : star.items
        return this.#laps(item.times, () => this.items(part, placed))
      }
      case 'double':
      case 'count':
        return []
      case 'described':
      case 'every':
      case 'evenly':
      case 'repeat-round':
        throw new Unfit()
      default: {
        const words = itemWords(this.style, item, placed)
        const attached = item.type === 'statement' || (item.type === 'note' && words.startsWith('('))
        const elements = this.#take(item)
        return words === '' ? [] : [{ type: 'words', words, attached, elements }]
      }
    }
  }

  #laps(times: number, lap: (last: boolean) => Step[]): Step[] {
    if (times > LONGEST_ROUND) throw new Unfit()
    return Array.from({ length: times }, (_, at) => lap(at === times - 1)).flat()
  }

  #star(star: StarItem, placed: boolean): Step[] {
    const last = lastItems(star)
    const times = star.repeat ? (starTimes(star) ?? this.style.tree.repeats.get(star)) : 1
    if (times === undefined || !last) throw new Unfit()
    return this.#laps(times, (isLast) => this.items(isLast ? last : star.items, placed))
  }

  #group(item: GroupItem, placed: boolean): Step[] {
    const { place } = item
    const times = item.around ? this.style.tree.repeats.get(item) : (item.times ?? 1)
    if (times === undefined) throw new Unfit()
    if (!place) return this.#laps(times, () => this.items(item.items, placed))
    const isWithinPlace = !item.around && (item.times === null || place.end === item.end)
    return this.#laps(isWithinPlace ? 1 : times, () =>
      this.#targets(place).map((words) => ({
        type: 'group',
        place: words,
        steps: this.#laps(isWithinPlace ? times : 1, () => this.items(item.items, true)),
      })),
    )
  }

  #placed(item: PlacedItem): Step[] {
    // What closes the round stands behind the group, not in it.
    const end = item.items.findLastIndex(({ type }) => type !== 'join' && type !== 'note') + 1
    const groups = this.#targets(item.place).map((place): Step => ({
      type: 'group',
      place,
      steps: this.items(item.items.slice(0, end), true),
    }))
    return [...groups, ...this.items(item.items.slice(end), false)]
  }

  /** What goes into each of many places, in the order of the places. */
  #sweep(swept: readonly Swept[], placed: boolean): Step[] {
    const steps: Step[] = []
    const passes = new Map<Swept, number>()
    for (;;) {
      const next = this.#next()
      const item = swept.find((each) => isWithin(each, next))
      if (!item) break
      const pass = passes.get(item) ?? 0
      passes.set(item, pass + 1)
      const place = this.#placeOf(item.place, partOf(item.place, pass, next))
      if (item.type === 'work' && SEVERAL.has(item.stitch.form)) steps.push(this.#decrease(item))
      else if (item.type === 'work') steps.push(this.#pass(item, place))
      else steps.push({ type: 'group', place, steps: this.items(item.items, true) })
      if (steps.length > LONGEST_ROUND || placed) throw new Unfit()
    }
    return steps
  }

  #chain(item: ChainItem): Step {
    const elements = this.#take(item, 1)
    if (elements[0]?.role === 'beginning')
      elements.push(...this.#take(item, 1, ({ role }) => role === 'space'))
    return { type: 'chain', count: item.count, elements }
  }

  #work(item: WorkItem, placed: boolean): Step[] {
    const { stitch, place } = item
    const count = item.count ?? 1
    const isWhole = BY_NAME.has(stitch.form) || place?.over === true || (place && stitch.end > place.start)
    if (isWhole) return [this.#byName(item, placed)]
    if (place) return this.#targets(place).map((words) => this.#pass(item, words))
    if (stitch.name === '') throw new Unfit()
    if (placed) return [this.#pass(item, null)]
    const next = { words: 'in next st', next: 'st' }
    return this.#laps(count, () => [this.#pass({ ...item, count: 1 }, next)])
  }

  /** Decreases, increases, picots and what is told in steps: in the words of the text. */
  #byName(item: WorkItem, placed: boolean): Step {
    const wanted = item.place?.parts.reduce((sum, { count }) => sum + count, 0) ?? Infinity
    const most = item.stitch.form === 'increase' ? 2 : 1
    let used = 0
    const elements = this.#take(item, item.place ? Infinity : most * (item.count ?? 1), ({ into }) => {
      used += Math.max(1, into.length)
      return used <= Math.max(most, wanted)
    })
    if (item.stitch.form === 'picot' && !item.place) {
      const count = item.count ?? 1
      const name = lower(wordsOf(this.style, item.stitch))
      return { type: 'stitch', count, name, place: null, whole: true, elements }
    }
    return { type: 'words', words: itemWords(this.style, item, placed), attached: false, elements }
  }

  /** "sc2tog around": one over the next stitches. */
  #decrease(item: WorkItem): Step {
    const elements = this.#take(item, 1)
    const name = lower(wordsOf(this.style, item.stitch))
    const over = elements[0]?.into.length ?? 0
    return { type: 'words', words: `${name} over next ${over} sts`, attached: false, elements }
  }

  /** What goes into one place. */
  #pass(item: WorkItem, place: PlaceWords | null): Step {
    const { stitch } = item
    const count = item.count ?? 1
    const name = stitch.name === '' ? '' : lower(wordsOf(this.style, stitch))
    const spelled = SPELLED.has(stitch.form)
    const first = this.#next()
    // Stitches that the text explains stand where they are explained.
    const span = spelled && first && !isWithin(item, first) ? this.#explained(first) : item
    const most = spelled ? Infinity : count
    const elements = this.#take(span, most, (each) => each.group === first?.group || !each.standing)
    return { type: 'stitch', count, name, place, whole: spelled, elements }
  }

  #explained(element: WorkedElement): Span {
    const span = this.style.tree.definitions.find((each) => isWithin(each, element))
    if (!span) throw new Unfit()
    return span
  }

  /** The places that a text names, one by one. */
  #targets(place: Place): PlaceWords[] {
    return place.parts.flatMap((part, at) => {
      const many = part.which === 'next' ? part.count : 1
      if (part.which === 'each') throw new Unfit()
      return Array.from({ length: many }, () => this.#placeOf(place, at))
    })
  }

  #placeOf(place: Place, at: number): PlaceWords {
    const part = place.parts[at]!
    if (part.which !== 'next' && part.which !== 'each')
      return { words: this.#asTold(place, part), next: null }
    if (isPlain(part)) {
      const noun = nounOf(this.style, { ...part, count: 1 })
      // "In corner sp" where the text says no more: "next" would lead on from the one where the yarn is joined.
      const before = this.style.tree.text.slice(part.start, part.nounSpan.start)
      const isBare =
        this.beginsInSpace && isSpace(part) && /^\s*(?:(?:in|into)\s+)?(?:the\s*)?$/i.test(before)
      return { words: isBare ? `in ${noun}` : `in next ${noun}`, next: noun }
    }
    const end = part.extent ? part.nounSpan.end : part.end
    const words = lower(wordsOf(this.style, { ...part, end }))
      .replace(/\beach (of )?(the )?(next )?(\d+ )?/, 'next ')
      .replace(/\bnext \d+ /, 'next ')
      .replace(/\b(sp|lp|st|ch)s\b/, '$1')
    const into = part.around ? 'around' : 'in'
    return { words: /^(in|around|between) /.test(words) ? words : `${into} ${words}`, next: null }
  }

  /** "in same st as joining", "in first ch-4 sp". */
  #asTold(place: Place, part: PlacePart): string {
    return placeWords(this.style, { ...place, parts: [part], ...spanOf(place, part) })
  }
}

/** The part of a place that the element at hand goes into: "same st" first, then "each dc and ch-1 sp" as they come. */
function partOf({ parts }: Place, pass: number, element: WorkedElement | undefined): number {
  if (pass < parts.length - 1 && parts[pass]!.which !== 'each') return pass
  const into = element?.into[0]?.kind === 'space' ? 'space' : 'stitch'
  const found = parts.findLastIndex(({ which, noun }) => which === 'each' && noun.kind === into)
  return found < 0 ? parts.length - 1 : found
}

/** A part with the "in" before it, where it is the whole place. */
const spanOf = (place: Place, part: PlacePart): Span =>
  place.parts.length === 1 ? place : { ...part, start: part.start }

/** Just the next stitch, space or corner. */
const isPlain = (part: PlacePart): boolean =>
  !part.loop &&
  !part.around &&
  !part.round &&
  !part.unworked &&
  (part.noun.kind === 'stitch' || part.noun.kind === 'space' || part.noun.kind === 'corner')
