/** One round after the other: each finds what the one before left, and leaves what it makes. */
import { nextSpaces } from './bare-next'
import { finishRound, settleSources } from './account'
import type { RoundAccount } from './account'
import { findBeginning, otherReading } from './beginning'
import type { Beginning } from './beginning'
import { definedLegs } from './bunches'
import { isError } from './laps'
import { leavePlaces } from './leaving'
import { EDGE, standsOnEdge } from './borders'
import { askForDoubts } from './doubts'
import { coverNext } from './long-stitches'
import { gatherLoose, listsForEach } from './loose-groups'
import { addFinding, clampCount } from './reading'
import type { Reading } from './reading'
import { STITCHES } from '../stitches/table'
import { stitchAbbreviation } from '../stitches/terms'
import { pieceOf, stemsOf } from './piece'
import { runItems } from './run'
import { betweenGroups, hasGapsBeside, losesCorners, usesAllGaps } from './side-gaps'
import { countedState, leavesOpen, stateOf } from './state'
import { statedSpaces, statedStitches } from './told-counts'
import { usualIn } from './usual-chains'
import type { RoundState } from './state'
import type { Item, RoundNode, RoundsTree } from './tree'
import type { Loop } from './stitch-name'
import { TooLong, report } from './work'
import type { Work } from './work'
import type { WorkedRound } from './worked'

function newWork(
  reading: Reading,
  tree: Omit<RoundsTree, 'repeats'>,
  node: RoundNode,
  number: number,
  items: readonly Item[],
  beginning: Beginning | null,
  turned: boolean,
): Work {
  return {
    index: reading.worked.length,
    number,
    node: items === node.items ? node : { ...node, items },
    tree,
    base: reading.base.kind === 'none' && standsOnEdge(node, tree) ? EDGE : reading.base,
    history: reading.history,
    earlier: reading.earlier,
    piece: pieceOf(reading.worked),
    sources: new Map(),
    gaps: reading.gaps,
    turned,
    colours: reading.colours,
    repeats: new Map(),
    budget: reading.budget,
    room: reading.room,
    beginning,
    elements: [],
    groups: new Map(),
    findings: [],
    reported: new Set(),
    scope: { loop: tree.usualLoop ?? null, around: false, round: null, behind: false },
    foundation: null,
    here: null,
    last: null,
    first: null,
    ahead: [],
    joinedAt: null,
    beginningDone: false,
    leg: null,
    lastStitch: null,
    chain: null,
    hand: null,
    spaceCells: null,
    flex: [],
    colour: null,
    described: null,
    held: null,
    repeated: 0,
    depth: 0,
    joined: false,
    leaveOpen: leavesOpen(reading.base, tree, turned),
    left: null,
    unrepeated: false,
    stitchWork: false,
    picked: false,
    overSpan: null,
    overReported: false,
    usesCorners: false,
    clause: null,
    spokes: 0,
    chainCells: new Set(),
    loopMarks: [],
    open: false,
  }
}

/** A round as it was worked. */
export interface Attempt {
  readonly work: Work
  readonly account: RoundAccount
  readonly round: WorkedRound
  readonly state: RoundState
  readonly errors: number
}

/** A chain that is far too short for the stitch that the text says it counts as. */
function checkHeight(work: Work): void {
  const { beginning } = work
  if (!beginning?.said || beginning.stitch === null) return
  const usual = STITCHES[beginning.stitch].beginningChains
  const chains = beginning.item.count
  // One chain less than usual is a matter of taste, but for tall ones: 3 chains are a dc's.
  if (usual - chains < (usual > 3 ? 1 : 2)) return
  report(work, 'rounds/chain-too-short', beginning.item, {
    ...{ chains, usual },
    stitch: stitchAbbreviation(beginning.stitch, work.tree.terms),
  })
}

/** The most used loop of a round's stitches. */
function mainLoop(work: Work): Loop {
  const element = work.elements.find(
    (found) => (found.standing || found.role === 'slip') && found.into.length > 0,
  )
  return element?.into[0]?.loop ?? 'both'
}

const turns = (items: readonly Item[], at: 'start' | 'end'): boolean => {
  const works = (item: Item) => item.type !== 'note' && item.type !== 'count' && item.type !== 'statement'
  const list = at === 'start' ? items : [...items].reverse()
  // "3 ch, turn, tr2tog, …", "With B, ch 1, turn, …".
  const begins = items.find(({ type }) => type !== 'colour')
  const risen = at === 'start' && begins?.type === 'chain' ? begins : null
  for (const item of list) {
    if (item.type === 'note' && item.effect === 'turn') return true
    // "Into ring work 3 tr, 1 ch, 1 tr, turn": told within what goes there.
    if (at === 'end' && item.type === 'placed') return turns(item.items, at)
    const changes = at === 'start' && item.type === 'colour' && item.place === null
    if (works(item) && item.type !== 'join' && item !== risen && !changes) return false
  }
  return false
}

/** A round whose yarn was joined, or whose first place was reached, at the end of the text of the one before, unless it joins its own. */
function fromAhead({ base }: Reading, items: readonly Item[]): readonly Item[] {
  const ahead = base.kind === 'round' ? base.state.ahead : []
  const own = items.some((item) => item.type === 'colour' && item.place !== null)
  return ahead.length > 0 && !own ? [...ahead, ...items] : items
}

function attempt(
  reading: Reading,
  tree: Omit<RoundsTree, 'repeats'>,
  node: RoundNode,
  number: number,
  items: readonly Item[],
  beginning: Beginning | null,
): Attempt {
  const turned = (tree.turned && reading.turned) || reading.turned !== turns(items, 'start')
  const work = newWork(reading, tree, node, number, items, beginning, turned)
  if (node.broken) work.open = true
  else checkHeight(work)
  try {
    runItems(work, fromAhead(reading, items))
  } catch (error) {
    if (!(error instanceof TooLong)) throw error
    report(work, 'rounds/too-long', error.span, { received: 'this round', most: 'number of stitches' })
    work.open = true
  }
  const { places, endsInSpace } = leavePlaces(work.elements)
  const { account, onto } = finishRound(work, places, true)
  askForDoubts(work, items)
  const errors = work.findings.filter((found) => isError(found)).length
  const stated = work.open || errors > 0 ? statedStitches(items) : null
  const asStated =
    stated !== null && stated !== account.made
      ? countedState(work.index, number, clampCount(stated), statedSpaces(items), true)
      : null
  const state =
    work.open && asStated && !beginning?.unsaid
      ? asStated
      : stateOf(work.index, number, places, {
          endsInSpace,
          unknown: work.open && !asStated && !beginning?.unsaid,
          joined: work.joined && !endsInSpace,
          stems: reading.base.kind === 'round' ? stemsOf(work.elements) : [],
          ahead: work.ahead,
          told: work.open,
          stated: asStated,
        })
  const round: WorkedRound = {
    index: work.index,
    number,
    label: node.label,
    ...(node.part !== null && { part: node.part }),
    source: reading.source,
    foundation: work.foundation,
    elements: work.elements,
    places,
    stitches: places.filter((place) => place.kind === 'stitch').length,
    onto: onto?.state.index ?? (reading.base.kind === 'round' ? reading.base.state.index : -2),
    loop: mainLoop(work),
    joined: work.joined,
    turned,
    certain: !work.open,
  }
  return { work, account, round, state, errors }
}

/** The account where the text says nothing about its chains and both readings fit. */
function leaveOpen(made: Attempt, beginning: Beginning, other: number | null): Attempt {
  const { work } = made
  const ways = other ?? made.account.made ?? 0
  const values = {
    chains: beginning.item.count,
    stitch: beginning.next ? stitchAbbreviation(beginning.next, work.tree.terms) : 'st',
    one: Math.max(ways, made.account.made ?? 0) + (ways === made.account.made ? 1 : 0),
    other: Math.min(ways, made.account.made ?? 0),
  }
  report(work, 'rounds/ch2-not-stated', beginning.item, values)
  return made
}

/** Errors that say the stitches do not go round; a wrong count at the end is the text's own business. */
const misfits = ({ work }: Attempt): number =>
  work.findings.filter((found) => isError(found) && found.code !== 'rounds/wrong-end-count').length

/** Works one round; where its long stitches are told to cover none, they do if only that comes out even, or the words say so. */
const workCovering: RoundWorker = (reading, tree, node, number, items) => {
  const made = workAsBegun(reading, tree, node, number, items)
  const covered = node.broken ? null : coverNext(items, tree)
  if (!covered || (made.errors === 0 && (!covered.said || statedStitches(items) !== null))) return made
  const other = workAsBegun(reading, tree, node, number, covered.items)
  return other.errors === 0 && !other.work.open ? other : made
}

const passesStitches = ({ work }: Attempt): boolean =>
  work.findings.some(({ code }) => code === 'rounds/stitches-passed')

/** Works one round; where a bare "next" behind a space is a space, if only that comes out even. */
const workNext: RoundWorker = (reading, tree, node, number, items) => {
  const made = workCovering(reading, tree, node, number, items)
  const spaced = made.errors === 0 && !passesStitches(made) ? null : nextSpaces(items, tree.text)
  if (!spaced || node.broken) return made
  const other = workAsBegun(reading, tree, node, number, spaced)
  return other.errors === 0 && !other.work.open ? other : made
}

/** Works one round; where stitches stand loose before a space, they are gathered into it if only that comes out even. */
const workLoose: RoundWorker = (reading, tree, node, number, items) => {
  const made = workNext(reading, tree, node, number, items)
  const lists = listsForEach(items)
  if ((made.errors === 0 && !passesStitches(made) && !lists) || node.broken) return made
  const gathered = reading.gathered.get(items) ?? gatherLoose(items, tree.text)
  if (!gathered) return made
  const other = workAsBegun(reading, tree, node, number, gathered.items)
  const better =
    (lists && misfits(other) <= misfits(made)) ||
    misfits(other) < misfits(made) ||
    (misfits(other) === misfits(made) &&
      (other.errors < made.errors ||
        (other.errors === made.errors && passesStitches(made) && !passesStitches(other))))
  if (!better || other.work.open) return made
  reading.gathered.set(items, gathered)
  const [group] = gathered.groups
  report(other.work, 'rounds/group-without-brackets', group!, {})
  return other
}

/** Works one round; where a space of no told size lies between two groups, if only that comes out even, or is usual. */
export const workRound: RoundWorker = (reading, tree, node, number, items) => {
  const made = workLoose(reading, tree, node, number, items)
  const { base } = reading
  if (node.broken || base.kind !== 'round' || !hasGapsBeside(base.state) || !betweenGroups(items)) return made
  const stated = statedStitches(items)
  const meant = stated === null ? !losesCorners(base.state, made.state, items) : made.account.made === stated
  if (made.errors === 0 && meant) return made
  const gathered = reading.gathered.get(items) ?? gatherLoose(items, tree.text)
  for (const way of [gathered, { items, groups: [] }]) {
    const between = way && betweenGroups(way.items)
    const other = between && workAsBegun(reading, tree, node, number, between)
    if (!other || other.errors > 0 || other.work.open || !usesAllGaps(other.work)) continue
    const [group] = way.groups
    if (group) {
      reading.gathered.set(items, gathered!)
      report(other.work, 'rounds/group-without-brackets', group, {})
    }
    return other
  }
  return made
}

/** "(does not count as a st here and throughout)": said once for all rounds. */
function keepUsual(
  reading: Reading,
  text: string,
  beginning: Beginning | null,
  items: readonly Item[],
): void {
  const at = beginning
    ? items.findIndex((item) => item.type === 'statement' && item.start >= beginning.item.end)
    : -1
  const statement = items[at]
  if (!beginning || statement?.type !== 'statement' || statement.says === 'made') return
  if (
    /\b(throughout|always|from (now|here) on|hereafter|here (and|or) (later|below)|all rounds|every (rnd|round)|each (rnd|round))\b/i.test(
      text.slice(statement.start, statement.end),
    )
  )
    reading.usual.set(beginning.item.count, statement)
}

/** Works one round of a text in what stands below it. */
export type RoundWorker = (
  reading: Reading,
  tree: Omit<RoundsTree, 'repeats'>,
  node: RoundNode,
  number: number,
  items: readonly Item[],
) => Attempt

/** Works one round; where beginning chains are not explained, the reading that fits is taken. */
const workAsBegun: RoundWorker = (reading, tree, node, number, items) => {
  const usual = usualIn(reading.usual, number)
  const beginning = findBeginning(items, reading.base.kind === 'none', usual, definedLegs(tree))
  keepUsual(reading, tree.text, beginning, items)
  const first = attempt(reading, tree, node, number, items, beginning)
  const other = beginning && !node.broken ? otherReading(beginning) : null
  if (!beginning || !other || (!beginning.unsaid && first.errors === 0)) return first
  const second = attempt(reading, tree, node, number, items, other)
  if (beginning.unsaid) {
    const fits = [first, second].filter((made) => made.errors === 0)
    // Where the round states its count, the one way that comes to it is meant.
    if (fits.length === 1)
      return statedStitches(items) === null ? leaveOpen(fits[0]!, beginning, null) : fits[0]!
    // Both come to it: one that leaves nothing to say of the rest of the round.
    const [plain, ...others] = fits.filter(({ work }) => work.findings.length === 0)
    if (plain && others.length === 0 && statedStitches(items) !== null) return plain
    const open = leaveOpen(first, beginning, second.account.made)
    if (fits.length === 0) return open
    return {
      ...open,
      account: { ...open.account, made: null, consumed: null, spaces: {} },
      round: { ...open.round, certain: false },
    }
  }
  return second.errors < first.errors && second.errors === 0 && !second.work.open ? second : first
}

/** Keeps how often the repeats of a round ran, where that is the same in every round worked from its text. */
function keepRepeats({ repeats, uneven }: Reading, made: ReadonlyMap<Item, number>): void {
  for (const [item, times] of made) {
    if (uneven.has(item)) continue
    if (!repeats.has(item) || repeats.get(item) === times) repeats.set(item, times)
    else {
      repeats.delete(item)
      uneven.add(item)
    }
  }
}

/** "Round 6: 60 sc, Round 7: 68 sc" behind rounds that are told together: whether one of them is of this round. */
const hasOwnCount = (items: readonly Item[], number: number): boolean =>
  items.some(
    (item) => item.type === 'count' && item.entries.some(({ round, inTurn }) => round === number || inTurn),
  )

export function commit(
  reading: Reading,
  text: string,
  node: RoundNode,
  number: number,
  made: Attempt,
  quiet: boolean,
): void {
  for (const state of made.work.sources.keys())
    reading.undo.push({
      state,
      loops: state.loops.slice(),
      touched: state.touched.slice(),
      loopsBy: state.loopsBy,
    })
  settleSources(made.work)
  reading.room = made.work.room
  keepRepeats(reading, made.work.repeats)
  // Of rounds that are worked alike only the first is told, but each is held to a count of its own.
  const own = quiet && hasOwnCount(node.items, number)
  if (!node.broken)
    for (const found of made.work.findings)
      if (!quiet || (own && found.code === 'rounds/wrong-end-count'))
        addFinding(reading, text, node, number, found)
  reading.worked.push(made.round)
  reading.accounts.push(made.account)
  reading.history.set(number, made.state)
  reading.base = { kind: 'round', state: made.state }
  const isRow = node.heading !== null && /row/i.test(text.slice(node.heading.start, node.heading.end))
  reading.turned =
    turns(made.work.node.items, 'end') || (isRow && !made.work.joined && made.work.tree.turned === true)
  reading.number = number
}
