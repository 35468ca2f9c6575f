/**
 * What the chains at the beginning of a round stand for (M6). The text's own statement rules: "counts as …",
 * "does not count", the place where the round is joined. Only then the default by the stitch that follows.
 */
import { STITCHES } from '../stitches/table'
import type { StitchKey } from '../stitches/table'
import type { ChainItem, GroupItem, Item, JoinItem, StatementItem, WorkItem } from './tree'
import type { StitchName } from './stitch-name'

export interface Beginning {
  readonly item: ChainItem
  /**
   * counts: as a stitch (and perhaps a space); turning: only brings the hook up; loop: a space like any other;
   * leg: together with the stitch behind it one cluster or decrease.
   */
  readonly as: 'counts' | 'turning' | 'loop' | 'leg'
  readonly stitch: StitchKey | null
  /** Chains beyond the height of the stitch: a space. */
  readonly extra: number
  /** Legs of the cluster that it belongs to, with its own. */
  readonly legs: number
  /** Nothing in the text says it: the account is open if both readings fit. */
  readonly unsaid: boolean
  /** The round is joined in the top of these chains, as in that of a stitch. */
  readonly topped: boolean
  /** The text names the stitch that it counts as. */
  readonly said: boolean
  /** The text says what it is: it is read in no other way. */
  readonly told: boolean
  /** What follows is held on the hook and drawn together: one stitch with or without the chains. */
  readonly held: boolean
  /** The slip stitch before them is one of the first petal, and does not lead to it. */
  readonly slips?: boolean
  /** The stitch that follows, for the words of a finding. */
  readonly next: StitchKey | null
}

type Atom =
  | {
      readonly kind: 'chain'
      readonly item: ChainItem
      /** What is worked into one place together with it; null where no place is named around it. */
      readonly together: readonly Item[] | null
      readonly repeated: boolean
    }
  | {
      readonly kind: 'work'
      readonly item: WorkItem
      readonly group: GroupItem | null
      readonly repeated: boolean
    }
  | { readonly kind: 'statement'; readonly item: StatementItem }
  | { readonly kind: 'described' }
  | { readonly kind: 'held' }
  | { readonly kind: 'other' }
  | { readonly kind: 'ring' }

/** The items of a round in the order they are first met, as far as the beginning is concerned. */
function* atoms(
  items: readonly Item[],
  group: GroupItem | null,
  repeated: boolean,
  together: readonly Item[] | null = group?.items ?? null,
): Generator<Atom> {
  for (const [at, item] of items.entries()) {
    if (item.type === 'chain') yield { kind: 'chain', item, together, repeated }
    else if (item.type === 'work') yield { kind: 'work', item, group, repeated }
    else if (item.type === 'statement') yield { kind: 'statement', item }
    else if (item.type === 'described') yield { kind: 'described' }
    else if (item.type === 'note' && item.effect === 'held') yield { kind: 'held' }
    else if (item.type === 'foundation' || item.type === 'join') yield { kind: 'ring' }
    // "Join with sc in any ch-2 sp, (ch 2, sc) in same sp": the round has begun.
    else if (item.type === 'colour' && item.stitch && !isSlip(item.stitch)) yield { kind: 'other' }
    // "Skip the center sc, join yarn in next sc, ch 1": behind the joining the round begins.
    else if (item.type === 'skip' && joinsAnew(items[at + 1])) continue
    else if (item.type === 'skip' || item.type === 'evenly') yield { kind: 'other' }
    else if (item.type === 'group') {
      // "[Ch 1, 2 dc] 5 times in ring" begins with the first of five spaces.
      const several = (item.times ?? 1) > 1 || (item.place === null && (item.times !== null || item.around))
      const repeats = repeated || several
      yield* atoms(item.items, item, repeats)
    } else if (item.type === 'placed') {
      const each = item.place.parts[0]!.each
      yield* atoms(item.items, group, repeated || each, item.items)
    } else if (item.type === 'star') yield* atoms(item.items, null, true)
  }
}

/** Whether the yarn is joined in a place, by a slip stitch or by nothing that is told. */
const joinsAnew = (item: Item | undefined): boolean =>
  item?.type === 'colour' && item.place !== null && (item.stitch === null || isSlip(item.stitch))

/** How many chains stand as high as a stitch: what is left of "ch 4" as dc is one chain. */
const heightOf = (stitch: StitchKey): number => Math.max(1, STITCHES[stitch].beginningChains)
const STITCH_BY_HEIGHT: Readonly<Record<number, StitchKey>> = {
  2: 'hdc',
  3: 'dc',
  4: 'tr',
  5: 'dtr',
  6: 'trtr',
}

const isSlip = (name: StitchName): boolean => name.form === 'plain' && name.stitch === 'sl st'
const isBunch = (name: StitchName): boolean =>
  ['together', 'cluster', 'puff', 'popcorn', 'bobble'].includes(name.form)

/** Of these, all legs stand in one place. */
const IN_ONE_PLACE = new Set<StitchName['form']>(['cluster', 'puff', 'popcorn', 'bobble'])

/** Where the round is joined, if it says so: the join itself, or a slip stitch into the first of its own. */
function lastJoin(items: readonly Item[]): JoinItem | WorkItem | null {
  for (let index = items.length - 1; index >= 0; index--) {
    const item = items[index]!
    if (item.type === 'join') return item
    if (item.type === 'work' && isSlip(item.stitch) && item.place?.parts[0]?.which === 'first' && index > 0)
      return item
    if (item.type === 'star' && item.repeat?.ending) {
      const inner = lastJoin([...item.items.slice(0, 1), ...item.repeat.ending.items])
      if (inner) return inner
    }
    if (item.type !== 'note' && item.type !== 'count' && item.type !== 'colour') return null
  }
  return null
}

interface Found {
  readonly chain: Extract<Atom, { kind: 'chain' }>
  readonly rest: Atom[]
}

function findChain(items: readonly Item[], startsFresh: boolean): Found | null {
  const list = [...atoms(items, null, false)]
  for (let index = 0; index < list.length; index++) {
    const atom = list[index]!
    if (atom.kind === 'chain') {
      const rest = list.slice(index + 1)
      if (atom.repeated) return null
      // The chain that a ring or leaf is made of is no beginning chain.
      const next = rest.find((found) => found.kind !== 'statement')
      if (next?.kind === 'ring') {
        index = list.indexOf(next)
        continue
      }
      const into = next?.kind === 'work' ? (next.item.place ?? next.group?.place) : null
      const [first] = into?.parts ?? []
      const slips = next?.kind === 'work' && isSlip(next.item.stitch)
      const closes = startsFresh && slips && first?.count === atom.item.count
      if (first?.which === 'from-hook' && !closes) return null
      if (startsFresh && slips) continue
      return { chain: atom, rest }
    }
    if (atom.kind === 'work' && !isSlip(atom.item.stitch)) return null
    // Chains behind a skip are a loop over what is skipped.
    if (atom.kind === 'described' || atom.kind === 'other') return null
  }
  return null
}

/** "(ch 3, 2 dc, ch 3, sl st) in same sp": chains alike on both sides of a petal are its edges. */
function isPetalEdge(together: readonly Item[] | null, item: ChainItem): boolean {
  if (!together) return false
  return together.some((other, index) => {
    const next = together[index + 1]
    return (
      other !== item &&
      other.type === 'chain' &&
      other.count === item.count &&
      next?.type === 'work' &&
      isSlip(next.stitch)
    )
  })
}

/**
 * "Sl st in next sc, ch 3, 2 dc in same st, ch 3, sl st in same st": the same petal told step by step, out of one stitch
 * and back into it.
 */
function isFirstPetal(items: readonly Item[], item: ChainItem): boolean {
  const steps = flat(items)
  const from = steps.indexOf(item) + 1
  const to = steps.findIndex(({ type }, i) => i >= from && type !== 'work')
  const [edge, closing] = [steps[to], steps[to + 1]]
  const isSame = (step: Item | undefined): boolean =>
    step?.type === 'work' && step.place?.parts[0]?.which === 'same'
  const isBack = closing?.type === 'work' && isSlip(closing.stitch) && isSame(closing)
  const isPetal = isBack && to > from && edge?.type === 'chain' && edge.count === item.count
  return isPetal && steps.slice(from + 1, to).every(isSame)
}

/** Whether one slip stitch is all that stands before the chains: then it is the petal's own, none that leads there. */
function isPetalsSlip(items: readonly Item[], item: ChainItem): boolean {
  const before = flat(items.slice(0, items.indexOf(item))).filter(({ type }) => type !== 'note')
  const [only] = before
  return before.length === 1 && only?.type === 'work' && isSlip(only.stitch) && (only.count ?? 1) === 1
}

/** "Ch 2, in ring work 3 tr, …, ch 2": what goes into one place stands in line with what is before it. */
const flat = (items: readonly Item[]): readonly Item[] =>
  items.flatMap((item) => (item.type === 'placed' ? item.items : [item]))

/** "…, ch 2, sl st in ring": a round that is not closed in its own first stitch. */
const endsInRing = (items: readonly Item[]): boolean => {
  const last = flat(items).findLast(({ type }) => type === 'work')
  return last?.type === 'work' && isSlip(last.stitch) && last.place?.parts[0]?.noun.kind === 'ring'
}

/** Legs of a cluster and the stitch that they are, as its name or the text tells them; 0 and null where neither does. */
export type LegsOf = (name: StitchName) => { readonly legs: number; readonly stitch: StitchKey | null }
const byName: LegsOf = ({ size, stitch }) => ({ legs: size, stitch })

/** Legs of the clusters in the rest of a round, if there are any. */
function laterBunch(
  rest: readonly Atom[],
  after: number,
  legsOf: LegsOf,
): { legs: number; stitch: StitchKey | null; only: boolean } | null {
  let legs: number | null = null
  let stitch: StitchKey | null = null
  let only = true
  for (const atom of rest.slice(after)) {
    if (atom.kind !== 'work' || isSlip(atom.item.stitch) || atom.item.stitch.form === 'picot') continue
    if (isBunch(atom.item.stitch)) {
      const told = legsOf(atom.item.stitch)
      legs ??= told.legs
      stitch ??= told.stitch
    } else only = false
  }
  return legs === null ? null : { legs, stitch, only }
}

/** "2 ch, leaving the last loop of each on hook 1 tr in each of next 3 tr": whether what comes first is drawn together. */
function isHeld(rest: readonly Atom[]): boolean {
  const [first, second] = rest.filter(({ kind }) => kind !== 'statement')
  return first?.kind === 'held' || (first?.kind === 'work' && second?.kind === 'held')
}

/** The beginning chains of a round and what they stand for; null where it has none. */
export function findBeginning(
  items: readonly Item[],
  startsFresh: boolean,
  usual: ReadonlyMap<number, StatementItem> = new Map(),
  legsOf = byName,
): Beginning | null {
  const found = findChain(items, startsFresh)
  if (!found) return null
  const { chain } = found
  const rest = found.rest.filter(({ kind }) => kind !== 'held')
  const { item } = chain
  const statements: StatementItem[] = []
  let at = 0
  while (rest[at]?.kind === 'statement') {
    statements.push((rest[at] as Extract<Atom, { kind: 'statement' }>).item)
    at++
  }
  const nextAt = rest.findIndex(
    (atom, index) => index >= at && (atom.kind === 'work' || atom.kind === 'described'),
  )
  const next = rest[nextAt]
  const name = next?.kind === 'work' ? next.item.stitch : null
  const stitch: StitchKey | null = name?.stitch ?? null
  const make = (as: Beginning['as'], more: Partial<Beginning> = {}): Beginning => ({
    item,
    as,
    stitch,
    extra: 0,
    legs: 1,
    unsaid: false,
    said: false,
    told: false,
    topped: false,
    held: isHeld(found.rest),
    next: stitch,
    ...more,
  })
  const counts = (as: StitchKey | null, extra: number): Beginning =>
    make('counts', { stitch: as, extra: Math.max(0, extra) })
  // A statement may stand behind the next stitch too: "ch 2, dc in same st (counts as first cl)".
  const behind = rest.slice(nextAt + 1).find(({ kind }) => kind !== 'described')
  const own = statements.find((found) => found.says !== 'made')
  // "The beginning chain counts as the first stitch": a single one only brings the hook up all the same.
  const any = usual.get(0)
  const said = own ?? usual.get(item.count) ?? (any?.says === 'counts' && item.count === 1 ? undefined : any)
  const bunch = laterBunch(rest, nextAt + 1, legsOf)
  const together = nextAt === at && name !== null
  const into = next?.kind === 'work' ? next.item.place?.parts[0] : undefined
  const inGroup = next?.kind === 'work' && next.group !== null && next.group.place !== null
  const onePlace = into ? into.which === 'same' || into.noun.kind === 'ring' : inGroup
  const single = next?.kind === 'work' ? (next.item.count ?? 1) : 1
  const bunched = name !== null && isBunch(name)
  const fits = bunch?.legs === (bunched ? name.size : single) + 1 && (bunch.stitch ?? stitch) === stitch
  // Chains that count as no stitch in other rounds are the first leg where what follows is one short of its like.
  const shortOne = !own && together && bunched && name.size > 0 && fits && item.count > 1
  // "Ch 4 (does not count as a stitch), 4 tr, …, ch 4, sl st in ring": no stitch, but a space like its like.
  if (said?.says === 'does-not-count' && !shortOne)
    return make(item.count > 1 && isPetalEdge(chain.together ?? flat(items), item) ? 'loop' : 'turning', {
      told: true,
    })
  const toldOf = behind?.kind === 'statement' ? behind.item : null
  if (!said && !toldOf && !fits && isFirstPetal(items, item))
    return make('loop', { slips: isPetalsSlip(items, item) })
  // "Ch 3 (counts as dc), dc2tog in same st, *dc3tog in next st": a dc, and the first leg of the first cluster.
  const firstLeg =
    together &&
    onePlace &&
    (bunched
      ? name.size > 0 && (fits || toldOf?.cluster || (toldOf?.says === 'counts' && toldOf.stitch === null))
      : !own && (toldOf?.cluster || (fits && bunch.only && item.count <= heightOf(stitch ?? 'dc'))))
  if (said?.says === 'counts' && !said.cluster && !firstLeg) {
    const as = said.stitch ?? STITCH_BY_HEIGHT[item.count] ?? stitch
    const extra = said.chains > 0 ? said.chains : 0
    return {
      ...counts(as === 'ch' || as === 'sl st' ? stitch : as, extra),
      said: said.stitch !== null,
      told: true,
    }
  }
  if (said?.says === 'counts' && !firstLeg) return { ...counts(stitch, 0), told: true }
  if (next?.kind === 'described') return make('leg', { legs: 0, stitch: 'dc' })
  // "Ch 3, pc in next dc": a bunch of one place has no leg in the place before.
  const isNext = into?.which === 'next' && into.count === 1 && into.noun.kind === 'stitch'
  const apart = name !== null && IN_ONE_PLACE.has(name.form) && isNext
  if (together && item.count > 1 && (isBunch(name) || name.beginning) && stitch !== 'sc' && !apart) {
    return make('leg', {
      stitch: stitch ?? bunch?.stitch ?? null,
      legs: name.size > 0 ? name.size + 1 : (bunch?.legs ?? 0),
    })
  }
  // "Ch 2, dc in next sc (counts as dc2tog), *dc2tog over next 2 sc".
  const toNext = into?.which === 'next' && into.count === 1 && single === 1 && !own
  if (
    together &&
    toNext &&
    name.form === 'plain' &&
    stitch !== 'sl st' &&
    (toldOf?.cluster || (fits && bunch.only && item.count > 1 && item.count < heightOf(stitch ?? 'dc')))
  )
    return make('leg', { legs: 2 })
  const inRing = toldOf?.cluster && into?.noun.kind === 'ring'
  if (together && (firstLeg || inRing) && name.form === 'plain' && stitch !== 'sc' && stitch !== 'sl st')
    return make('leg', { legs: single + 1 })
  const join = lastJoin(items)
  const part = join?.place?.parts[0]
  const closing = part?.noun.kind === 'own' ? part.noun : null
  const inChains = closing !== null && /ch(ain)?s?\b|\d-?ch|ch-?\d/i.test(closing.words)
  if (closing && closing.chain > 0 && closing.chain <= item.count && inChains) {
    const as = STITCH_BY_HEIGHT[closing.chain] ?? stitch
    return counts(as, item.count - closing.chain)
  }
  if (closing && inChains && (closing.of === 0 || closing.of === item.count)) {
    const height = stitch && stitch !== 'sl st' ? heightOf(stitch) : item.count
    if (item.count === 1) return make('turning')
    const as = stitch === 'sc' ? (STITCH_BY_HEIGHT[item.count] ?? 'sc') : stitch
    return { ...counts(as, height > 1 && item.count > height ? item.count - height : 0), topped: true }
  }
  // "In ring: ch 2, 3 tr, …, ch 2, sl st in ring": a heart has such edges, too.
  const beside = chain.together ?? (endsInRing(items) ? flat(items) : null)
  if (isPetalEdge(beside, item)) return make('loop', { slips: isPetalsSlip(beside!, item) })
  if (stitch === null || stitch === 'sl st' || stitch === 'ch') {
    const shell = name !== null && name.form !== 'plain'
    return shell && item.count >= 3
      ? counts('dc', item.count - 3)
      : item.count === 1
        ? make('turning')
        : make('loop')
  }
  if (item.count === 1) return make('turning')
  if (stitch === 'sc') return item.count === 2 ? make('turning') : make('loop')
  const firstNamed =
    part?.which === 'first' && part.noun.kind === 'stitch' && part.noun.name?.stitch === stitch
  const height = heightOf(stitch)
  const extra = Math.max(0, item.count - height)
  if (stitch === 'hdc') {
    if (extra > 0) return counts('hdc', extra)
    return make('turning', { unsaid: !firstNamed })
  }
  if (item.count === 2 && isHeld(found.rest)) return counts(stitch, 0)
  if (item.count === 2) return make('turning', { unsaid: !firstNamed })
  return STITCHES[stitch].beginningCounts ? counts(stitch, extra) : make('turning')
}

/** The other way to read beginning chains of which the text says nothing. */
export function otherReading(beginning: Beginning): Beginning | null {
  const { as, item, next, held } = beginning
  if (beginning.told) return null
  if (as === 'leg' && item.count >= 2) return { ...beginning, as: 'turning' }
  if (next === null || next === 'sc' || next === 'sl st' || next === 'ch') return null
  if (as === 'turning' && item.count >= 2) return { ...beginning, as: 'counts', stitch: next, extra: 0 }
  if (as === 'counts' && beginning.topped) return null
  if (as === 'counts' && !beginning.unsaid && (item.count >= 3 || held))
    return { ...beginning, as: 'turning', extra: 0 }
  return null
}
