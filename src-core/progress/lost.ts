/** What an edit would do to made motifs that nobody asked for: they have no place any more, or get another colour. */
import type { BlanketLayout, Colourway, Project } from '../../shared-types/project'
import { movesOutline, standingColours } from '../colour/hold'
import { isAddition, tidyAddress } from '../layout/addresses'
import { betweenName } from '../layout/opening-kinds'
import { planProject } from '../plan'
import { blanketOf, layoutKindOf } from '../plans/layouts'
import { DEFAULTS } from '../settled'
import { movedMarks } from './hold'
import { EDGING } from './marks'
import { clearMade } from './mark'

export interface LostMade {
  /** How many have no place any more, and where they are still marked. */
  readonly gone: number
  readonly stillMarked: readonly string[]
  /** How many get another colour. */
  readonly recoloured: number
  /** How many are joined already, and would lie beside others: rows become rings, or shifted ones straight. */
  readonly rejoined: number
}

/** What stands at an address: which motif, in which colourway. */
interface Stands {
  readonly motif: string
  readonly way: string
}

/** The made motifs that an edit takes away or recolours; null where there are none. */
export function lostMade(before: Project, after: Project): LostMade | null {
  const marked = Object.keys(before.made ?? {}).filter((key) => tidyAddress(key) !== EDGING)
  if (marked.length === 0 || before === after || !canMatter(before, after)) return null
  const move = movedMarks(before, after)
  const isOther = layoutKindOf(before) !== layoutKindOf(after)
  const [was, is] = [standingIn(before), standingIn(after)]
  const ways = changedWays(before, after)
  const stillMarked: string[] = []
  let gone = 0
  let recoloured = 0
  let rejoined = 0
  const [from, to] = [before, after].map(
    (project) => blanketOf(project)?.arrangement ?? DEFAULTS.blanket.arrangement,
  )
  const joined = from === to ? {} : (before.joined ?? {})
  for (const key of marked) {
    const stood = was(tidyAddress(key))
    // What had no place before cannot lose it.
    if (!stood) continue
    const now = move(key)
    // Nobody loses a mark that the edit itself clears.
    if (now !== null && !(now in (after.made ?? {}))) continue
    const stands = now === null || isOther ? null : is(tidyAddress(now))
    if (!stands || stands.motif !== stood.motif) {
      gone++
      if (now !== null) stillMarked.push(now)
    } else {
      if (stands.way !== stood.way || ways.has(stood.way)) recoloured++
      if (key in joined) rejoined++
    }
  }
  return gone + recoloured + rejoined > 0 ? { gone, stillMarked, recoloured, rejoined } : null
}

/** The project after an edit that was answered for: what has no place any more is marked no longer. */
export const settleLost = (after: Project, { stillMarked }: LostMade): Project =>
  clearMade(after, stillMarked)

const canMatter = (before: Project, after: Project): boolean =>
  before.layout !== after.layout ||
  before.colourways !== after.colourways ||
  before.made !== after.made ||
  movesOutline(before, after)

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
  const own = (fillers?.openings ?? []).filter((entry) => betweenName(entry.between ?? []) === name)
  const main = { motif: fillers?.motif }
  // Entries count from the largest opening down: what lies beyond them has the filler of all.
  return [...own, main]
    .map(({ motif }) => (motif === undefined ? main.motif : motif) ?? '')
    .join(' ')
    .trim()
}

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
