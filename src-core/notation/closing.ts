/** What closes: a round in its first stitch, a picot on the stitch below it, a chain to a ring. */
import { answersTo, BUNCHES } from './answers-to'
import { cellsLeft } from './chain-targets'
import { STITCHES } from '../stitches/table'
import { stitchAbbreviation } from '../stitches/terms'
import { TRAVELLED } from './source'
import { isSlip } from './stitch-name'
import type { Item, Place, WorkItem } from './tree'
import type { StitchName } from './stitch-name'
import { baseSource, hasBody, push, report } from './work'
import type { Work } from './work'
import { firstStitchOf } from './worked'

/** "Sc in 3rd ch of ch-5" where the round before has such loops, and this one began with none: a loop is meant. */
export function isOfLoops(
  work: Work,
  { chain, of }: { readonly chain: number; readonly of: number },
): boolean {
  if (chain === 0 || of === 0 || (work.beginning?.item.count === of && work.repeated === 0)) return false
  const source = baseSource(work)
  return source?.has('space', `loops ${of}`, ({ chains }) => chains === of) ?? false
}

/** Whether the place is the first stitch of this very round: the round closes there. `slip`: with a slip stitch. */
export function closesRound(work: Work, place: Place | null, slip: boolean): boolean {
  const part = place?.parts[0]
  if (!part || place.parts.length > 1 || !hasBody(work)) return false
  const own = part.round && 'number' in part.round && part.round.number === work.number
  if ((part.round && !own) || part.which === 'same') return false
  // "Ch 4 (counts as dc, ch 1), dc in first dc": of the row before; no stitch is there yet to close it in.
  if (!slip && !work.elements.some(({ role }) => role === 'stitch')) return false
  // "dc in top of turning ch" ends a row in the first stitch of the row before.
  // "Sl st in beg-CL".
  const { name } = part.noun.kind === 'stitch' ? part.noun : { name: null }
  if (slip && (name?.beginning || name?.standing) && work.repeated === 0) return true
  if (part.noun.kind === 'own' && !slip && isOfLoops(work, part.noun)) return false
  if (part.noun.kind === 'own') {
    if (slip && endsInEdge(work, part.noun.of)) return false
    const source = baseSource(work)
    return slip || ((source?.edge() ?? -1) < 0 && source?.isPastEdge(part.noun) !== true)
  }
  // "On the other side of the ch: dc in first ch" goes on along the chain.
  if (part.noun.kind === 'chain' && work.chain?.opposite && cellsLeft(work.chain) > 1) return false
  // "Ss to the 3ch": the chains that the round began with.
  const begun = work.beginning?.item.count === part.count && part.which === 'next' && work.repeated === 0
  const named = /^the\b/i.test(work.tree.text.slice(part.start, part.end))
  if (slip && part.noun.kind === 'chain' && begun && named && !work.chain && part.count > 1) return true
  // "Shell in 1st shell, ch 3, sc in 1st tr": there are none in this row, but in the one before.
  if (!slip && name && liesBelow(work, name)) return false
  return part.which === 'first' && (part.noun.kind === 'stitch' || part.noun.kind === 'chain') && !work.here
}

/** "1 ch, …, ss into top of 3 ch" at the end of a row: the chain that the row before began with. */
function endsInEdge(work: Work, chains: number): boolean {
  const source = baseSource(work)
  const edge = source?.edge() ?? -1
  const stitch = edge < 0 ? null : source!.places[edge]!.stitch
  return (
    stitch !== null &&
    chains > 1 &&
    work.beginning?.item.count !== chains &&
    STITCHES[stitch].beginningChains === chains
  )
}

/** Whether the round before has such a stitch that is free, and the one in hand has none. */
function liesBelow(work: Work, name: StitchName): boolean {
  const source = baseSource(work)
  const isOwn = work.elements.some(({ stitch }) => stitch === name.stitch)
  if (!source || name.stitch === null || isOwn) return false
  return source.places.some(
    (place, at) => place.kind === 'stitch' && answersTo(place, name) && source.used[at]! <= TRAVELLED,
  )
}

const IS_PICOT = /^\s*\(\s*(?:a )?picot\b/i

/** A slip stitch that closes the chains just made to a picot; how many chains, or 0. */
export function picotChains(work: Work, item: WorkItem, next: Item | undefined): number {
  const last = work.elements[work.elements.length - 1]
  const part = item.place?.parts[0]
  if (!last || last.role !== 'space' || !part || item.place!.parts.length > 1 || (item.count ?? 1) > 1)
    return 0
  const single = isSlip(item.stitch) || (item.stitch.stitch === 'sc' && item.stitch.form === 'plain')
  if (!single) return 0
  if (part.which === 'from-hook') {
    if (part.count > last.count || part.count < 2) return 0
    // "ch 7, sc in 2nd ch from hook, sc in next 5 chs" is worked back along the chain.
    const along = next?.type === 'work' && next.place?.parts[0]?.noun.kind === 'chain'
    // "Ch 7, sc in 4th ch from hook (picot made), ch 3": in the middle of a loop that goes on.
    const isOpen = next?.type === 'chain' || IS_PICOT.test(work.tree.text.slice(item.end, item.end + 24))
    const inLoop = part.count > 2 && isOpen
    if (along || (!isSlip(item.stitch) && part.count < last.count && !inLoop)) return 0
    if (isSlip(item.stitch) && part.count === 2 && last.count > 3) return 0
    return part.count
  }
  const { noun } = part
  // "4 ch, 1 dc in first of these ch" as the UK says it, too.
  const first = part.which === 'first' || (part.which === 'nth' && part.count === 1)
  if (noun.kind === 'chain' && first && (isSlip(item.stitch) || last.count > 2)) return last.count
  if (!isSlip(item.stitch)) return 0
  if (part.which === 'made' && noun.kind === 'stitch') return last.count
  if (
    noun.kind === 'own' &&
    !/\b(first|1st|beg|beginning|start|join)/i.test(noun.words) &&
    noun.of === 0 &&
    noun.chain === 0
  )
    return last.count
  if (
    part.which === 'last' &&
    part.count === 1 &&
    noun.kind === 'stitch' &&
    hasBody(work) &&
    (work.repeated > 0 || standsOn(work, noun.name))
  )
    return last.count
  return 0
}

/** "1 d.c. into next 3 tr., 3 ch., s.s. into the last d.c.": the stitch below the chains, while others are to come. */
function standsOn(work: Work, name: StitchName | null): boolean {
  const below = work.elements.at(-2)
  const source = baseSource(work)
  const like = below?.role === 'stitch' && (!name || (name.form === 'plain' && name.stitch === below.stitch))
  return like && source !== null && !source.state.unknown && source.free('stitch') > 1
}

/** Joins the round; a chain that is joined before anything else is a ring, said in fewer words. */
export function closeRound(work: Work, item: Item): void {
  const last = work.elements[work.elements.length - 1]
  if (work.base.kind === 'none' && last?.role === 'stem' && work.elements.length === 1) {
    // A chain and a join are a ring, said in fewer words.
    work.base = { kind: 'ring', chains: last.count }
    work.foundation = { kind: 'ring', chains: last.count }
    return
  }
  push(work, 'join', 'sl st', item, { into: [firstStitchOf(work.index)] })
  work.joined = true
}

/** "Ch 4, sl st in first ch, ch 1, 8 sc in ring": the chain that all begins with is closed to a ring. */
export function closesChain(work: Work, { parts }: Place): boolean {
  const [part] = parts
  const [stem, ...others] = work.elements
  const begins = work.base.kind === 'none' && stem?.role === 'stem' && others.length === 0
  if (!begins || parts.length > 1 || part?.noun.kind !== 'chain') return false
  // "Ch 4, sl st in 4th ch from hook": the very first one.
  return part.which === 'first' || (part.which === 'from-hook' && part.count === stem!.count)
}

/** "Slip stitch." where all is worked: it can only close the round. */
export function endsLap(work: Work): boolean {
  const source = baseSource(work)
  // "…, 3 tr in the last ch. ss.": both sides of the chain are worked.
  if (!source && work.chain?.opposite && work.repeated === 0 && !work.here) return cellsLeft(work.chain) <= 1
  if (!source || source.state.unknown || work.repeated > 0 || work.here || !hasBody(work)) return false
  if (source.over > 0) return false
  // "…, 1 ch; rep from * twice more, ss.": all spaces are worked, and nothing stands behind it.
  const then = work.hand?.then ?? []
  const spaces = source.total('space')
  const last = work.elements.at(-1)?.role === 'space' && !then.some((item) => GOES_ON.has(item.type))
  if (last && spaces > 0 && source.free('space') === 0) return true
  return source.total('stitch') > 0 && source.free('stitch') === 0
}

const GOES_ON = new Set<Item['type']>(['work', 'chain', 'group', 'placed', 'star', 'skip', 'scope'])

/** "Sl st in next st", "sc in next 2 sts", "sc": on along the round, nothing more particular. */
function goesOn(item: Item): item is WorkItem {
  if (item.type !== 'work' || item.stitch.form !== 'plain') return false
  const [part, ...others] = item.place?.parts ?? []
  if (!part) return true
  return others.length === 0 && part.which === 'next' && part.noun.kind === 'stitch' && !part.round
}

/**
 * Where all is worked: "sl st in next 2 sts", "hdc, sc and sl st in next sts, fasten off" step down on the round's own
 * first stitches, and so does all that stands behind its count.
 */
export function stepsDown(work: Work, item: WorkItem, then: readonly Item[]): boolean {
  if (stepsIntoSpace(work, item, then)) return true
  if (!goesOn(item) || !endsLap(work)) return false
  if (isSlip(item.stitch)) return item.place !== null
  // "…, hdc, sc, sl st" up the other side of a chain: there is one left.
  if (!baseSource(work) && work.chain && cellsLeft(work.chain) > 0) return false
  const counted = work.node.items.some(({ type, end }) => type === 'count' && end <= item.start)
  if (counted) return true
  const at = then.findIndex((found) => !goesOn(found) || isSlip(found.stitch))
  const [slip, behind] = then.slice(Math.max(0, at))
  return at >= 0 && goesOn(slip!) && (!behind || behind.type === 'note' || behind.type === 'count')
}

/** "Ss into next 4-ch loop and fasten off" where all loops are worked: into the round's own first one. */
function stepsIntoSpace(work: Work, item: WorkItem, then: readonly Item[]): boolean {
  const [part, ...others] = item.place?.parts ?? []
  if (!isSlip(item.stitch) || part?.which !== 'next' || part.count > 1 || others.length > 0) return false
  const { noun } = part
  const source = baseSource(work)
  if (noun.kind !== 'space' || !source || source.state.unknown || work.repeated > 0 || work.here) return false
  if (source.over > 0 || source.total('space') === 0 || source.free('space') > 0) return false
  const own = work.elements.some(({ role, count }) => role === 'space' && (noun.chains ?? count) === count)
  return own && then.every(({ type }) => type === 'note' || type === 'count')
}

/** Whether the first chains of a round, a loop on the way perhaps, are so many. */
const hasChain = (work: Work, chains: number): boolean =>
  work.elements.slice(0, 2).some(({ stitch, count }) => stitch === 'ch' && count === chains)

/** "Join in first hdc" of a round of sc alone: taken over from another round. */
function checkFirst(work: Work, place: Place | null): void {
  const [part, ...others] = place?.parts ?? []
  if (!part || others.length > 0 || part.round || part.which !== 'first' || part.noun.kind !== 'stitch')
    return
  const { name } = part.noun
  if (!name || isSlip(name) || name.foreign || name.beginning || name.standing) return
  if (!hasBody(work) || work.open || !(name.form === 'plain' ? name.stitch : BUNCHES.has(name.form))) return
  const own = work.elements.filter(({ role, countsAs }) => role === 'stitch' || countsAs !== null)
  const named = own.map((element) => ({ ...element, stitch: element.countsAs ?? element.stitch }))
  if (named.length === 0 || named.some((element) => answersTo(element, name))) return
  const { terms } = work.tree
  const have = named.map(({ form, stitch }) =>
    BUNCHES.has(form) ? `${form}s` : stitchAbbreviation(stitch, terms),
  )
  const values = { have: [...new Set(have)].join(' and '), wanted: name.name, round: 'this round' }
  report(work, 'rounds/no-such-stitch', part, values, `first ${name.name}`)
}

/** "16 dc in a magic ring (ch 3 counts as first dc)": chains that only the bracket tells of. */
const tellsChains = ({ node, tree }: Work, chains: number): boolean =>
  node.items.some(
    (item) =>
      item.type === 'statement' &&
      item.says === 'counts' &&
      new RegExp(`\\b(ch[- ]?${chains}|${chains}[- ]?ch)\\b`, 'i').test(
        tree.text.slice(item.start, item.end),
      ),
  )

/** "Join in 3rd ch of beg ch-4" where the text says that the four stand for one stitch: its top is the 4th. */
export function checkTop(work: Work, place: Place | null): void {
  const { beginning } = work
  checkFirst(work, place)
  const noun = place?.parts[0]?.noun
  const begins = beginning?.item.count ?? 0
  // "S.s. to 6th of the 4 ch" is a place of no chain.
  if (noun?.kind === 'own' && noun.of > 0 && noun.chain > noun.of && hasBody(work))
    return report(work, 'rounds/join-beyond-chain', place, { chain: noun.chain, chains: noun.of })
  // "S.s. to 3rd of 5 ch" in a round that begins with a stitch.
  const first = beginning === null ? work.elements.find(({ role }) => role !== 'travel') : undefined
  // A stitch that the text explains elsewhere may begin with chains of its own.
  const elsewhere = first && (first.span.start < work.node.start || first.span.end > work.node.end)
  const words = first ? work.tree.text.slice(first.span.start, first.span.end) : ''
  const begun = elsewhere || /^(a )?(standing|chainless|beg|first|start)/i.test(words)
  const bare = first?.role === 'stitch' && !begun && !(noun?.kind === 'own' && tellsChains(work, noun.of))
  if (noun?.kind === 'own' && noun.of > 1 && bare && !hasChain(work, noun.of) && !isOfLoops(work, noun))
    return report(work, 'rounds/join-no-such-chain', place, { begins: 'a stitch', chains: noun.of })
  // "Ss to top of 3 ch" in a round that begins with one chain: that one was of another round.
  if (noun?.kind === 'own' && noun.of > begins && beginning && hasBody(work) && !hasChain(work, noun.of))
    return report(work, 'rounds/join-no-such-chain', place, { begins: `ch ${begins}`, chains: noun.of })
  // "Top of beg ch-3" in a round that begins with ch 4 for a dc and a chain: taken over from another round.
  if (noun?.kind === 'own' && noun.of > 1 && noun.of < begins && beginning?.said && hasBody(work))
    return report(work, 'rounds/join-no-such-chain', place, { begins: `ch ${begins}`, chains: noun.of })
  if (noun?.kind !== 'own' || noun.chain === 0 || !beginning?.said || beginning.as !== 'counts') return
  const chains = beginning.item.count
  const top = chains - beginning.extra
  if ((noun.of !== 0 && noun.of !== chains) || noun.chain === top || noun.chain > chains) return
  report(work, 'rounds/join-not-in-top', place, { chain: noun.chain, top, chains })
}
