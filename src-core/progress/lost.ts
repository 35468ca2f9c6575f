/**
 * What an edit would do to made motifs that nobody asked for: they have no place any more, or get another colour,
 * other joins or another number.
 */
import type { BlanketLayout, Colourway, Project } from '../../shared-types/project'
import { movesCells, standingColours } from '../colour/hold'
import { isAddition, tidyAddress } from '../layout/addresses'
import { betweenName } from '../layout/opening-kinds'
import { planProject } from '../plan'
import { appliqueOf, blanketOf, layoutKindOf } from '../plans/layouts'
import { movedMarks } from './hold'
import { EDGING } from './marks'
import { clearJoined, clearMade, joinedOf } from './mark'
import { rejoinedBy } from './rejoined'
import { reorderedBy } from './reordered'

export interface LostMade {
  /** How many have no place any more, and where they are still marked. */
  readonly gone: number
  readonly stillMarked: readonly string[]
  /** How many get another colour, and how many of them were in which colourway, by name. */
  readonly recoloured: number
  readonly recolouredFrom: readonly (readonly [name: string, count: number])[]
  /** Where, after the edit, motifs stand that are joined already and would be joined otherwise. */
  readonly rejoined: readonly string[]
  /** Their numbers before it, in order, as far as they are known. */
  readonly rejoinedNumbers: readonly number[]
  /** Made motifs that stay and get another number: which they had, and which they get, in order. */
  readonly renumbered: readonly (readonly [was: number, is: number])[]
  /** These are sewn down, and would lie elsewhere. */
  readonly isSewn: boolean
}

/** What stands at an address: which motif, in which colourway. */
interface Stands {
  readonly motif: string
  readonly way: string
}

/** The made motifs that an edit takes away, recolours, renumbers or joins elsewhere; null where there are none. */
export function lostMade(before: Project, after: Project): LostMade | null {
  const made = before.made ?? {}
  const marked = Object.keys(made).filter((key) => tidyAddress(key) !== EDGING)
  if (marked.length === 0 || before === after) return null
  const move = movedMarks(before, after)
  const isSewn = appliqueOf(before) !== null && appliqueOf(after) !== null
  const otherwise = isSewn ? resewnBy(before, after, move) : rejoinedBy(before, after, move)
  const { numbers, waiting } = reorderedBy(before, after, move)
  if (otherwise.size === 0 && numbers.size === 0 && !canMatter(before, after)) return null
  const isOther = layoutKindOf(before) !== layoutKindOf(after)
  const [was, is] = [standingIn(before), standingIn(after)]
  const ways = changedWays(before, after)
  const joined = joinedOf(before)
  const stillMarked: string[] = []
  const recoloured = new Map<string, number>()
  /** Made on no known day, joined to nothing, and marked there no longer: they can lie in another place. */
  const laidAnew: Stands[] = []
  const rejoined: string[] = []
  const rejoinedNumbers: number[] = []
  const renumbered: (readonly [number, number])[] = []
  let gone = 0
  for (const key of marked) {
    const stood = was(tidyAddress(key))
    // What had no place before cannot lose it.
    if (!stood) continue
    const now = move(key)
    const isLoose = made[key] === '' && !(key in joined)
    // Nobody loses a mark that the edit itself clears; what is laid out anew may get another colour by it.
    if (now !== null && !(now in (after.made ?? {}))) {
      if (isLoose) laidAnew.push(stood)
      continue
    }
    const stands = now === null || isOther ? null : is(tidyAddress(now))
    if (!stands || stands.motif !== stood.motif) {
      gone++
      if (now !== null) stillMarked.push(now)
    } else {
      if (stands.way !== stood.way || ways.has(stood.way)) add(recoloured, stood.way)
      const id = tidyAddress(key)
      const number = numbers.get(id)
      if (now !== null && (otherwise.has(id) || waiting.has(id))) {
        rejoined.push(now)
        if (number) rejoinedNumbers.push(number[0])
      }
      // One that lies about, made before and joined to nothing, goes wherever there is a place for it.
      if (number && number[0] !== number[1] && !isLoose) renumbered.push(number)
    }
  }
  const fresh = isOther ? [] : laidOutBy(before, after, move).flatMap((key) => is(tidyAddress(key)) ?? [])
  if (fresh.length > 0) for (const { way } of withoutFellow(laidAnew, fresh)) add(recoloured, way)
  const many = [...recoloured.values()].reduce((sum, count) => sum + count, 0)
  if (gone + many + rejoined.length + renumbered.length === 0) return null
  const nameOf = (id: string) => before.colourways?.find((way) => way.id === id)?.code ?? id
  const recolouredFrom = [...recoloured].map(([id, count]) => [nameOf(id), count] as const)
  return {
    ...{ gone, stillMarked, recoloured: many, recolouredFrom, rejoined, isSewn },
    rejoinedNumbers: rejoinedNumbers.sort((a, b) => a - b),
    renumbered: renumbered.sort(([a], [b]) => a - b),
  }
}

/** mm, and degrees: what is moved by less lies where it was sewn (ours). */
const SEWN = 0.5

/** Addresses, before an edit, of items that are sewn down and would lie elsewhere, turned or over. */
function resewnBy(
  before: Project,
  after: Project,
  move: (address: string) => string | null,
): ReadonlySet<string> {
  const [was, is] = [before, after].map((project) => appliqueOf(project)?.items ?? [])
  const itemAt = (items: typeof was, address: string) => items![Number(address.split(',')[1]) - 1]
  const sewn = Object.keys(joinedOf(before)).map(tidyAddress)
  return new Set(
    sewn.filter((address) => {
      const now = move(address)
      const [one, other] = [itemAt(was, address), now === null ? undefined : itemAt(is, now)]
      if (!one || !other || one === other) return false
      const isOff = (key: 'x' | 'y' | 'turn') => Math.abs((one[key] ?? 0) - (other[key] ?? 0)) > SEWN
      return isOff('x') || isOff('y') || isOff('turn') || (one.flipped ?? false) !== (other.flipped ?? false)
    }),
  )
}

const add = (counts: Map<string, number>, name: string) => counts.set(name, (counts.get(name) ?? 0) + 1)

/** What an edit marks as made before: motifs that were there already and are laid out by it. */
function laidOutBy(before: Project, after: Project, move: (key: string) => string | null): string[] {
  const known = new Set(Object.keys(before.made ?? {}).map((key) => move(key) ?? key))
  return Object.entries(after.made ?? {}).flatMap(([key, day]) =>
    day === '' && !known.has(key) ? [key] : [],
  )
}

/** Of motifs that lie anew, those for which there is no place of their colour, though there is one of another. */
function withoutFellow(loose: readonly Stands[], places: readonly Stands[]): Stands[] {
  const nameOf = ({ motif, way }: Stands) => `${motif}\n${way}`
  const free = new Map<string, number>()
  for (const place of places) add(free, nameOf(place))
  const others = loose.filter((each) => {
    const left = free.get(nameOf(each)) ?? 0
    free.set(nameOf(each), left - 1)
    return left <= 0
  })
  // What is left over was said to be, whichever it is.
  return others.slice(Math.max(0, loose.length - places.length))
}

/**
 * The project after an edit that was answered for: what has no place any more is marked no longer, and what is joined
 * otherwise is made, but not joined.
 */
export function settleLost(after: Project, { stillMarked, rejoined }: LostMade): Project {
  const left = clearMade(after, stillMarked)
  return rejoined.length > 0 ? clearJoined(left, rejoined) : left
}

const canMatter = (before: Project, after: Project): boolean =>
  before.layout !== after.layout ||
  before.colourways !== after.colourways ||
  before.made !== after.made ||
  movesCells(before, after)

/** Colourways that are worked in other yarns now, or are gone. */
function changedWays(before: Project, after: Project): ReadonlySet<string> {
  if (before.colourways === after.colourways) return new Set()
  const now = new Map(after.colourways?.map((way) => [way.id, way]))
  const isSame = (way: Colourway): boolean => {
    const [a, b] = [way.yarns ?? {}, now.get(way.id)?.yarns ?? {}]
    return now.has(way.id) && Object.keys(a).every((slot) => a[slot] === b[slot])
  }
  return new Set(before.colourways?.filter((way) => !isSame(way)).map(({ id }) => id))
}

function standingIn(project: Project): (address: string) => Stands | null {
  const blanket = blanketOf(project)
  if (blanket) return standingOnBlanket(project, blanket)
  const placed = new Map(
    planProject(project).motifs.map(({ id, motif = '', colourway }) => [id, { motif, way: colourway }]),
  )
  return (address) => placed.get(address) ?? null
}

/** The fillers that openings between some motifs have, whatever their size: one text for the same ones; '' for none. */
function fillersBetween(fillers: BlanketLayout['fillers'], between: readonly string[]): string {
  const name = betweenName(between)
  const entries = fillers?.openings ?? []
  const exact = entries.filter((entry) => betweenName(entry.between ?? []) === name)
  // One in a lobe of an opening is joined to some of the motifs round it.
  const own =
    exact.length > 0 ? exact : entries.filter((entry) => isAmong([...(entry.between ?? [])], between))
  const main = { motif: fillers?.motif }
  // Entries count from the largest opening down: what lies beyond them has the filler of all.
  return [...own, main]
    .map(({ motif }) => (motif === undefined ? main.motif : motif) ?? '')
    .join(' ')
    .trim()
}

/** Whether `all` holds each of `some`, as often as it comes there. */
const isAmong = (all: string[], some: readonly string[]): boolean =>
  some.every((id) => {
    const place = all.indexOf(id)
    if (place >= 0) all.splice(place, 1)
    return place >= 0
  })

function standingOnBlanket(project: Project, blanket: BlanketLayout): (address: string) => Stands | null {
  const standing = standingColours(project)
  const motif = blanket.motif ?? ''
  const places = new Map(
    standing?.places.map(({ id }, i) => [
      id,
      { motif: standing.motifs[i] || motif, way: standing.assignment.colourways[i] ?? '' },
    ]),
  )
  const held = blanket.cells?.held ?? {}
  /** Half motifs and fillers as far as the layout alone tells: whether they are asked for, and what they lie between. */
  const addition = (address: string): Stands | null => {
    const way = held[address] ?? ''
    const round = address.split('+')
    if (round.length > 1) {
      const between = round.flatMap((place) => places.get(place)?.motif ?? [])
      if (between.length < round.length) return null
      const fillers = fillersBetween(blanket.fillers, between)
      return fillers ? { motif: `${fillers} ${blanket.arrangement ?? ''}`, way } : null
    }
    const isThere = blanket.halves && blanket.arrangement === 'offset-rows'
    return isThere && places.has(`${Number.parseInt(address)},1`) ? { motif, way } : null
  }
  return (address) => (isAddition(address) ? addition(address) : (places.get(address) ?? null))
}
