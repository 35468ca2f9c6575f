/** Along a chain ("2nd ch from hook", "next 5 chs", "opposite side of ch") and up to the tip of a petal. */
import { STITCHES } from '../stitches/table'
import { stitchAbbreviation } from '../stitches/terms'
import type { Span } from './tokens'
import { isSlip } from './stitch-name'
import { placeParts } from './tree'
import type { Place, PlacePart } from './tree'
import { baseSource, push, report, spend, targetAt } from './work'
import type { ChainWork, Target, Work } from './work'
import { UNDER, stemTargets, turnUnder } from './piece'
import { missing, nextStitch, settle, takeAt } from './taking'
import type { Taking } from './taking'
import type { WorkedElement } from './worked'

function noChain(work: Work, part: PlacePart, available: string): Target[] {
  const wanted = part.which === 'from-hook' ? `ch ${part.count} from the hook` : `${part.count} ch`
  report(work, 'rounds/no-chain', part, { wanted, available }, 'once')
  work.open = true
  return [targetAt(work, null, { kind: 'unknown', round: -2, index: -1 })]
}

/** Chains from which on one is long enough to be worked back along, where it might be a space (ours). */
const LONG = 5

/**
 * "Ch 8, skip 1 ch, sc, hdc", "12 ch, miss 1 ch, 1 dc in each ch": the chain just made is begun behind those that are
 * passed over. Null where what is passed lies in the round before.
 */
export function passesOwnChains(work: Work, { parts: [part, ...more] }: Place): PlacePart | null {
  const last = work.elements.at(-1)
  if (!part || more.length > 0 || part.extent || last?.stitch !== 'ch' || last.role === 'picot') return null
  if ((part.which !== 'next' && part.which !== 'first') || part.count >= last.count) return null
  const isChain = part.noun.kind === 'chain'
  if (!isChain && !(part.noun.kind === 'stitch' && part.noun.name === null)) return null
  const alone = work.base.kind === 'none' || (work.base.kind === 'ring' && last.count >= LONG)
  const plain = isChain && last.count >= LONG && baseSource(work)?.total('space') === 0
  return alone || plain ? { ...part, which: 'from-hook', count: part.count + 1 } : null
}

/** Starts along the chain that the hook has just made, or the foundation chain. */
function beginAlong(work: Work, part: PlacePart): Target[] {
  const last = work.elements[work.elements.length - 1]
  const own = last && last.stitch === 'ch' && last.role !== 'picot' ? last : null
  const chains = own ? own.count : work.base.kind === 'chain' ? work.base.chains : 0
  if (part.count > chains) return noChain(work, part, chains > 0 ? `there are ${chains} ch` : 'there is none')
  if (own) {
    own.role = 'stem'
    own.standing = false
    own.countsAs = null
    if (work.base.kind === 'none') {
      work.base = { kind: 'chain', chains }
      work.foundation = { kind: 'chain', chains }
    } else if (work.foundation?.kind !== 'chain' || work.elements.length > 1) work.spokes += 1
  }
  const cell = chains - part.count
  work.chain = { element: own?.index ?? -1, chains, firstCell: cell, cell: cell - 1, opposite: false }
  return [cellTarget(work, cell)]
}

/** "Starting in 2nd ch from hook": the next stitch goes there. */
export function startAlongChain(work: Work, part: PlacePart): void {
  const cells = new Set(work.chainCells)
  beginAlong(work, part)
  if (!work.chain) return
  work.chainCells = cells
  work.chain.cell++
}

function cellTarget(work: Work, cell: number): Target {
  const along = work.chain!
  work.chainCells.add(`${along.element} ${cell} ${along.opposite}`)
  return targetAt(work, null, {
    kind: 'chain',
    round: along.element >= 0 ? work.index : -2,
    index: Math.max(0, along.element),
    cell,
    opposite: along.opposite,
  })
}

/** The next chain of the one that is worked along. */
export function nextCell(work: Work): Target {
  const along = work.chain!
  const target = cellTarget(work, along.cell)
  along.cell += along.opposite ? 1 : -1
  return target
}

/** Chains that are still ahead on this side. */
export function cellsLeft(along: ChainWork): number {
  return along.opposite ? Math.max(0, along.firstCell - along.cell + 1) : along.cell + 1
}

/** A place of another part or motif. */
export const ELSEWHERE = {
  kind: 'unknown',
  round: -2,
  index: -1,
  cell: 0,
  opposite: false,
  loop: 'both',
  post: null,
} as const

/** A stem that is fastened with the hook, "…, sl st in flower", "sl st in center ring": behind all of its chain, to another part. */
export function attaches(work: Work, place: Place | null, item: Span): boolean {
  const { base, chain } = work
  const done = base.kind === 'chain' && chain !== null && cellsLeft(chain) === 0
  if (!done || (place !== null && place.parts[0]!.noun.kind !== 'ring')) return false
  push(work, 'travel', 'sl st', item, { into: [{ ...ELSEWHERE }] })
  return true
}

/** Single chains of a space of the round before: "sc in each ch", "sc in next 3 chs". */
function spaceCells(work: Work, part: PlacePart, taking: Taking): Target[] {
  const source = baseSource(work)
  if (!source) return noChain(work, part, 'there is none')
  const targets: Target[] = []
  const all = part.which === 'each'
  const count = all ? Number.POSITIVE_INFINITY : part.count
  while (targets.length < count) {
    spend(work, part)
    const open = work.spaceCells
    if (!open || open.left === 0) {
      // "Ch 2, sk next 2 chs, dc in next ch" at the end of a row: the chain that stands there for its first stitch.
      const edge = !all && open ? source.edge() : -1
      if (edge >= 0 && source.distance(edge) === 0) {
        targets.push(takeAt(work, source, edge, part, taking))
        continue
      }
      const index = source.find('space', '', () => true)
      if (index < 0) {
        if (!all) targets.push(missing(work, source, 'space', part))
        if (all || source.total('space') === 0) break
        continue
      }
      source.take(index, taking.as)
      const target = targetAt(work, source, { kind: 'space', round: source.state.index, index })
      work.spaceCells = { target, left: Math.max(1, source.places[index]!.chains), cell: 0 }
      continue
    }
    targets.push(targetAt(work, source, { ...open.target.place, cell: open.cell }))
    open.cell++
    open.left--
  }
  return targets
}

const isAtTip = ({ into: [place] }: WorkedElement): boolean => place?.kind === 'chain' && place.cell === 0

/**
 * "Sc in 2nd ch from hook, hdc in next, dc in next 2": along a chain of which no round stands below, or along one that
 * the round has just made where nothing else is named.
 */
export function goesAlong(work: Work, part: PlacePart): boolean {
  const { noun, which, round } = part
  const plain =
    (noun.kind === 'stitch' && noun.name === null) || (noun.kind === 'space' && noun.chains === null)
  // "Sc in 2nd ch from hook, sc across".
  const across = which === 'each' && part.extent?.to === 'end' && work.base.kind === 'chain'
  if (!plain || (which !== 'next' && which !== 'last' && !across) || round || !work.chain) return false
  return work.base.kind === 'chain' || goesDown(work, work.chain, part)
}

/** "*Ch 9, sl st in 2nd ch from hook, sc in next, dc in next 3, sc in last": down a chain that the round has made. */
function goesDown(work: Work, along: ChainWork, { start, end, count, which }: PlacePart): boolean {
  if (along.element < 0 || !ALONE.test(work.tree.text.slice(start, end).trim())) return false
  const before = work.elements.at(-1)
  const begun = before?.standing === true && before.into[0]?.kind === 'chain'
  // Of a chain that is worked to its end there is no last one: told, and not sought in the round before.
  if (which === 'last' && begun) return true
  const left = cellsLeft(along)
  // Nor of a chain that is too short: words that lead back to the round behind it are still ahead.
  if (begun && left < count) return leadsBack(work)
  // A picot on a chain leaves a chain or two that nothing goes into.
  return left >= count && (left > 2 || begun)
}

/** "…, sc in next, sl st in next sc of Rnd 1": whether the way back to the round is told behind the stitch in hand. */
function leadsBack({ hand, tree }: Work): boolean {
  if (!hand || isSlip(hand.item.stitch)) return false
  for (const item of hand.then) {
    if (item.type === 'chain' || item.type === 'join') return false
    const part = (item.type === 'work' || item.type === 'skip') && item.place?.parts[0]
    if (part && part.which === 'next' && part.noun.kind === 'stitch')
      if (!ALONE.test(tree.text.slice(part.start, part.end).trim())) return true
  }
  return false
}
/** Nothing is named: "next", "each of next 3", "last". */
const ALONE = /^(the )?(each of (the )?)?(next|last)( (\d+|one|two|three|four|five|six))?$/i

/**
 * "…, dc in last ch, ch 2, on the other side dc in next ch, …, dc in last ch": where one stitch alone stands at the tip
 * and the other side takes one more, it began in the chain of the tip; all of it moves there.
 */
function beganAtTip(work: Work, along: ChainWork): boolean {
  if (!along.opposite || work.elements.filter(isAtTip).length > 1) return false
  for (const element of work.elements)
    element.into = element.into.map((place) =>
      place.kind === 'chain' && place.opposite ? { ...place, cell: place.cell - 1 } : place,
    )
  work.chainCells.add(`${along.element} 0 true`)
  return true
}

/** The chain that the other side has left at the end where it would begin in that of the tip; null where it has none. */
export function tipCell(work: Work, along: ChainWork): Target | null {
  if (!along.opposite || !beganAtTip(work, along)) return null
  along.cell = along.firstCell + 1
  return cellTarget(work, along.firstCell)
}

/** "*Ch 6, sl st in 2nd ch from hook, sc, hdc, dc": whether the hook stands on a chain of the round, with chains ahead. */
export function standsOnChain({ chain, elements }: Work): boolean {
  if (!chain || chain.element < 0 || cellsLeft(chain) === 0) return false
  const last = elements.at(-1)
  const [into] = last?.into ?? []
  // Behind the words that begin a chain nothing is worked yet.
  return last?.index === chain.element || (into?.kind === 'chain' && into.index === chain.element)
}

/** "10 ch, dc in 3rd ch from hook, …" that ends a chain too late: begun a chain nearer to the hook it would fit. */
function askForBeginning(work: Work): void {
  const first = work.elements.find(({ standing, into: [place] }) => standing && place?.kind === 'chain')
  const from = [...placeParts(work.node.items)].find(({ which }) => which === 'from-hook')
  if (!first || !from || from.count !== STITCHES[first.stitch].beginningChains + 2) return
  report(
    work,
    'rounds/chain-begun-late',
    from,
    { stitch: stitchAbbreviation(first.stitch, work.tree.terms) },
    'once',
  )
}

/** Places along a chain. */
export function chainTargets(work: Work, part: PlacePart, taking: Taking): Target[] {
  if (part.which === 'from-hook') return beginAlong(work, part)
  if (!work.chain && work.base.kind === 'chain') {
    const { chains } = work.base
    work.chain = { element: -1, chains, firstCell: chains - 1, cell: chains - 1, opposite: false }
  }
  const done = !work.chain || cellsLeft(work.chain) === 0
  const stems = done ? stemTargets(work, part) : null
  if (stems) return stems
  const named = part.noun.kind === 'chain'
  if (done && named && baseSource(work) && !(baseSource(work)!.total('space') === 0 && turnUnder(work)))
    return spaceCells(work, part, taking)
  if (!work.chain) return spaceCells(work, part, taking)
  const along = work.chain
  if (part.which === 'first') {
    // Where one stitch alone stands in the last chain, the other side begins in that chain.
    const turned = along.opposite && along.cell === 1
    if (turned && work.elements.filter(isAtTip).length <= 1) along.cell = 0
    // "Starting in 2nd ch from hook, 1 dc in first ch": the one where it starts.
    else if (!along.opposite && along.cell !== along.firstCell) along.cell = along.chains - 1
  }
  // "2 sc in same ch as first sc".
  const first = part.which === 'same' && part.asBeginning && along.opposite
  if (first || (part.which === 'last' && part.count === 1)) {
    const cell = along.opposite ? along.firstCell : 0
    if (cellsLeft(along) === 0 && !beganAtTip(work, along)) {
      report(work, 'rounds/chain-worked-twice', part, {}, 'once')
      askForBeginning(work)
    }
    // "Tr in next 3 chs, sc in last ch" of five that are left: one is passed over.
    // On the other side the one where all began is worked already, and may be the last or not.
    const passed = cellsLeft(along) - (along.opposite ? 2 : 1)
    if (passed > 0 && !first) report(work, 'rounds/chains-left', part, { left: passed }, 'once')
    along.cell = along.opposite ? along.firstCell + 1 : -1
    return [cellTarget(work, cell)]
  }
  // "Turn the chain over and sc in each of the 29 ch along the other side" of 29: the last one is worked from both sides.
  const tipFree = along.opposite && along.cell === 1 && work.elements.filter(isAtTip).length <= 1
  if (tipFree && (part.which === 'each' ? !part.extent : part.count === cellsLeft(along) + 1)) along.cell = 0
  const left = cellsLeft(along)
  const wanted =
    part.which === 'each' ? left - (part.extent?.to === 'last' ? part.extent.count : 0) : part.count
  if (wanted > left) return noChain(work, part, left > 0 ? `${left} ch are left` : 'none is left')
  const targets: Target[] = []
  for (let at = 0; at < wanted; at++) {
    targets.push(nextCell(work))
  }
  return targets
}

/** Turns to the other side of the chain; the chain at its end is worked already. */
export function turnAlongChain(work: Work, span: Span): void {
  if (!work.chain && work.base.kind === 'chain') {
    const { chains } = work.base
    work.chain = { element: -1, chains, firstCell: chains - 1, cell: 0, opposite: false }
  }
  // "… and sc in each ch along the other side": told behind what was worked there.
  if (!work.chain || (work.chain.opposite && (work.chain.cell === 1 || cellsLeft(work.chain) === 0))) return
  checkChain(work, span)
  work.chain.opposite = true
  work.chain.cell = 1
}

/** "each st to tip of petal": its share of what the petal has beside the stitches that are named. */
export function landmarkTargets(work: Work, part: PlacePart, taking: Taking): Target[] {
  const share = work.flex.shift()
  if (share === undefined) {
    if (!work.open)
      report(
        work,
        'rounds/not-countable',
        part,
        { what: 'the way to the ' + (part.extent?.to === 'landmark' ? part.extent.name : 'tip') },
        'once',
      )
    work.open = true
    return [settle(work, nextStitch(work, part, taking))]
  }
  return Array.from({ length: share }, () => nextStitch(work, part, taking))
}

/** Whether the chain in hand is the one that everything begins with. */
const alongFoundation = (work: Work, along: ChainWork): boolean =>
  along.element === -1 ||
  (along.element === 0 && work.foundation?.kind === 'chain' && work.elements[0]?.role === 'stem')

/** A loop of chains at the tip of a leaf, or at the corner of a block, does not lead away from the chain under it. */
export const staysOnChain = (work: Work): boolean =>
  work.chain !== null &&
  (work.chain.element === UNDER || (work.base.kind === 'chain' && alongFoundation(work, work.chain)))

/** A foundation chain is worked to its end on the side in hand, or the rest is told. */
export function checkChain(work: Work, span: Span | null): void {
  const along = work.chain
  if (!along || !alongFoundation(work, along) || work.open || work.leaveOpen) return
  const left = cellsLeft(along)
  // The chain at the end is worked from the first side already.
  if (left > (along.opposite ? 1 : 0)) report(work, 'rounds/chains-left', span, { left }, 'once')
}
