/** Slip stitches at the beginning of a round that only lead to the first place. */
import { TRAVELLED } from './source'
import { settle } from './taking'
import { placeParts } from './tree'
import { isSlip } from './stitch-name'
import type { Item, Place, WorkItem } from './tree'
import type { StitchName } from './stitch-name'
import { baseSource, hasBody } from './work'
import type { Target, Work } from './work'

/** Slip stitches into a place that the next stitches use again were only the way there. */
function turnSlipsToTravel(work: Work): void {
  if (
    work.elements.length === 0 ||
    !work.elements.every((element) => element.role === 'slip' || element.role === 'travel')
  )
    return
  for (const element of work.elements) element.role = 'travel'
  work.first = work.last
}

/**
 * Where slip stitches were only the way to the first place: the next stitches use it again, or go round all spaces and
 * begin in the one that was reached.
 */
export function leaveTheWay(work: Work, place: Place): void {
  const [part] = place.parts
  if (part?.which === 'same') return turnSlipsToTravel(work)
  const isRound = part?.which === 'each' && part.noun.kind === 'space' && (part.extent?.to ?? 'end') === 'end'
  const source = baseSource(work)
  const reached = work.elements.at(-1)?.into[0]
  const isOnTheWay = reached?.kind === 'space' && reached.round === source?.state.index
  if (!isRound || !isOnTheWay || work.repeated > 0) return
  turnSlipsToTravel(work)
  if (work.elements.at(-1)!.role === 'travel') source.putBack(reached.index)
}

/** "Beg cl": the one that the round begins with. */
const begins = ({ beginning, name }: StitchName): boolean => beginning || /^(beg|start|first)/i.test(name)

/** "Sl st in next 3 dc, sc in same place as last sl st", "…, sl st in sp, beg cl": what follows goes where slip stitches led. */
function goesOnThere(then: readonly Item[]): boolean {
  const next = then.find(
    (item) =>
      item.type !== 'note' && item.type !== 'statement' && !(item.type === 'work' && isSlip(item.stitch)),
  )
  if (next === undefined) return false
  if (next.type === 'work' && next.place === null) return begins(next.stitch)
  return 'place' in next && next.place?.parts[0]?.which === 'same'
}

/** Whether a slip stitch at the beginning of a round leads to where its beginning chains, or its first stitches, go. */
export function leadsThere(work: Work): boolean {
  const { beginning } = work
  if (work.repeated > 0 || hasBody(work) || beginning?.slips) return false
  return beginning === null ? goesOnThere(work.hand?.then ?? []) : !work.beginningDone
}

/** "Sl st in ch-3 sp, *(sc, 3 dc, sc) in ch-3 sp": without "next" the space is meant in which the hook stands. */
export function stayThere(work: Work, reached: Target | undefined, next: Item | undefined): void {
  const [part] = next ? placeParts([next]) : []
  const { noun } = part ?? {}
  // "Sc in sp of shell".
  const inGroup = noun?.kind === 'within' && noun.what === 'space'
  const said = part ? work.tree.text.slice(part.start, inGroup ? part.end : part.nounSpan.start) : ''
  const near = inGroup ? !/\b(next|following|each|every)\b/i.test(said) : /^(the\s*)?$/i.test(said)
  const led = noun?.kind === 'space' || inGroup || (noun?.kind === 'landmark' && noun.name === 'tip')
  const bare = led && part?.which === 'next' && near
  if (!bare || reached?.place.kind !== 'space' || work.beginning || work.repeated > 0) return
  if (reached.source !== baseSource(work)) return
  turnSlipsToTravel(work)
  if (work.elements.at(-1)!.role !== 'travel' || !reached.source) return
  for (const { into } of work.elements) reached.source.putBack(into[0]!.index)
  work.stitchWork = false
}

/**
 * "Sl st to the corner sp. Ch 3, (2 dc, ch 2, 3 dc) in the corner", "sl st along to ch-3 sp, (ch 3, 2 dc) in sp": behind
 * the way there and the chains that stand for the first stitch, a space that is not called the next one is that in which they stand.
 */
export function stillThere(work: Work, place: Place, grouped = false): Target | null {
  const [part] = place.parts
  const last = work.elements.at(-1)
  const begun = last?.role === 'beginning'
  if (!last || (begun && (!last.standing || work.elements.length < 2)) || place.parts.length !== 1)
    return null
  const target = work.last
  if (target?.place.kind !== 'space' || target.source !== baseSource(work)) return null
  if (!begun && (!grouped || work.repeated > 0)) return null
  const way = begun ? work.elements.slice(0, -1) : work.elements
  if (!way.every(({ role }) => role === 'travel')) return null
  const noun = part?.noun
  if (part?.which !== 'next' || part.count > 1 || (noun?.kind !== 'space' && noun?.kind !== 'corner'))
    return null
  if (/next|follow|foll/i.test(work.tree.text.slice(part.start, part.end))) return null
  const chains = target.source?.places[target.place.index]?.chains
  return noun.kind === 'corner' || noun.chains === null || noun.chains === chains ? target : null
}

/** "Join, sl st in next 2 dc and in ch-2 sp": behind the joining slip stitches lead to where the next round begins. */
export function leadsOn(work: Work, { stitch, place }: WorkItem): boolean {
  const [part] = place?.parts ?? []
  if (stitch.form !== 'plain' || stitch.stitch !== 'sl st' || !part || work.repeated > 0) return false
  const led = part.which === 'next' || part.noun.kind === 'within'
  return led && !part.round && work.joined && work.elements.at(-1)?.role === 'join'
}

/** "Sl st in ch-1 sp, beg shell", "beg shell over shell": where the hook has come to; null where it has not been led. */
export function reachedBy(work: Work, name: StitchName, place: Place | null): Target | null {
  const noun = place?.parts[0]?.noun
  const form = noun?.kind === 'stitch' ? noun.name?.form : null
  if (!begins(name) || (place && form !== 'shell' && form !== 'v-stitch')) return null
  turnSlipsToTravel(work)
  return work.elements.at(-1)?.role === 'travel' && work.last ? settle(work, work.last) : null
}

/** "Sl st in next 2 dc": where the round before was joined, the next one is behind the stitch of the joining. */
export function leaveJoin(work: Work, place: Place): void {
  const source = baseSource(work)
  const [part] = place.parts
  const next =
    part?.which === 'next' && part.noun.kind === 'stitch' && !part.round && work.scope.round === null
  if (!next || work.elements.length > 0 || !source?.state.joined || work.last) return
  const first = source.find('stitch', 'first', () => true)
  if (first >= 0 && source.total('stitch') > part.count) source.take(first, TRAVELLED)
}
