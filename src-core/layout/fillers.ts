/** M27: fillers in the openings between motifs: which openings take which, and what is to be said about it. */
import type { Finding } from '../../shared-types/finding'
import type { MotifAccount } from '../../shared-types/plan'
import type { Terms, UnitSystem } from '../../shared-types/project'
import { finding, findingOf, said } from '../findings/finding'
import type { Said } from '../findings/finding'
import { lengthValue } from '../findings/quantities'
import { CHILD_OPENING } from '../joins/constants'
import { stretchLimit } from '../joins/rule'
import { sideWork } from '../joins/sides'
import type { Sides } from '../joins/sides'
import type { ResolvedGauge } from '../stitches/gauge'
import { stitchAbbreviation } from '../stitches/terms'
import { formatLength } from '../units/format'
import type { Millimetres } from '../units/quantity'
import { FILLER_GIVES, LEAST_FILLER_STITCHES, SAME_OPENING } from './constants'
import { fillerRadii, fitFillers } from './filler-fit'
import type { FillerFit, OpeningFit } from './filler-fit'
import type { Opening, OpeningKind } from './holes'
import type { Lattice } from './lattice'
import { LEAST_SIDES } from './opening-kinds'
import type { OpeningGroup } from './opening-kinds'

/** A motif that is to stand in openings. */
export interface Filler {
  readonly account: MotifAccount
  readonly gauge: ResolvedGauge
  /** 0 where it is named for all openings, else the number of its entry among those for kinds of them, from 1. */
  readonly place: number
  /** Path into the file where it is named. */
  readonly where: string
}

/** Which filler goes where: what a file asks for, and what it asks for by kind of opening (null: nothing). */
export interface Asked {
  readonly main: Filler | null
  readonly own: ReadonlyMap<OpeningGroup, Filler | null>
  readonly findings: readonly Finding[]
}

/** A filler in an opening. */
export interface Filled {
  readonly opening: Opening
  readonly filler: Filler
  readonly fit: FillerFit
  /** Those of the opening's motifs that it is joined to, in their order. */
  readonly motifs: readonly number[]
}

export interface Filling {
  /** In the order of the motifs that the openings begin with. */
  readonly filled: readonly Filled[]
  /** Joins of all fillers together: one to each motif that each of them reaches. */
  readonly joins: number
  /** Of these, those along a whole side. */
  readonly along: Sides
  /** Radius of the largest opening that stays. */
  readonly open: Millimetres
  readonly findings: readonly Finding[]
}

const largest = (radii: readonly Millimetres[]): Millimetres =>
  radii.reduce((most, r) => Math.max(most, r), 0)

/** What fillers are put into, how far they are joined, and how that is told. */
interface Given {
  readonly lattice: Lattice
  readonly reach: Millimetres
  readonly terms: Terms
  readonly units: UnitSystem
}

/** The kinds of openings that a filler goes into where nobody says: as large as the one that it fits best. */
function bestKinds(kinds: readonly OpeningKind[], filler: MotifAccount): OpeningKind[] {
  const radii = fillerRadii(filler)
  const miss = (kind: OpeningKind) => Math.min(...radii.map((radius) => Math.abs(kind.radius - radius)))
  const best = kinds.reduce<OpeningKind | null>(
    (found, kind) => (!found || miss(kind) < miss(found) - SAME_OPENING / 2 ? kind : found),
    null,
  )
  if (!best) return []
  const alike = (kind: OpeningKind): boolean =>
    kind.sides === best.sides && Math.abs(kind.radius - best.radius) < SAME_OPENING
  return [best, ...kinds.filter((kind) => kind !== best && alike(kind))]
}

/** Fillers in so many kinds of openings that are as large as the first of them: how they fit, and what is to be said. */
function fitted(
  kinds: readonly OpeningKind[],
  { account, gauge, where }: Filler,
  { lattice, reach, terms, units }: Given,
): { readonly fits: ReadonlyMap<OpeningKind, OpeningFit>; readonly findings: readonly Finding[] } {
  const length = (mm: Millimetres): string => formatLength(mm, units)
  const say = (found: Said): Finding => findingOf(found, where, { motif: account.id })
  const first = kinds[0]!
  const size = length(2 * first.radius)
  const least = LEAST_FILLER_STITCHES * gauge.width
  if (2 * first.radius < least) {
    const values = { size, least: length(least), stitch: stitchAbbreviation('sc', terms) }
    return { fits: new Map(), findings: [say(said('layout/filler-stays-open', values))] }
  }
  const fits = new Map(kinds.map((kind) => [kind, fitFillers(kind, account, lattice, reach)]))
  const all = [...fits.values()].flatMap((opening) => opening.fits)
  const values = {
    across: length(2 * largest(all.map(({ radius }) => radius))),
    fits: size,
    count: first.sides,
  }
  const findings: Finding[] = []
  const within = length(reach - FILLER_GIVES)
  const overlap = largest(all.map((fit) => fit.overlap))
  const bridge = largest(all.map((fit) => fit.bridge))
  if (overlap > FILLER_GIVES)
    findings.push(say(said('layout/filler-large', { ...values, overlap: length(overlap) })))
  const missed = [...fits.values()].flatMap(missedIn)
  if (missed.length > 0) {
    const gap = length(largest(missed))
    findings.push(say(said('layout/filler-short', { ...values, gap, reach: within })))
  }
  if (bridge > reach)
    findings.push(say(said('layout/filler-far', { ...values, bridge: length(bridge), reach: within })))
  else if (bridge > stretchLimit({ gap: 0 }, account, gauge))
    findings.push(say(said('layout/filler-small', { ...values, bridge: length(bridge) })))
  return { fits, findings }
}

/** How far the fillers of an opening stay from the motifs round it that none of them is joined to. */
function missedIn({ fits }: OpeningFit): Millimetres[] {
  const joined = new Set(fits.flatMap(({ contacts }) => contacts.map(({ motif }) => motif)))
  const gaps = new Map<number, Millimetres>()
  for (const { motif, gap } of fits.flatMap(({ beyond }) => beyond))
    if (!joined.has(motif)) gaps.set(motif, Math.min(gap, gaps.get(motif) ?? Infinity))
  return [...gaps.values()]
}

/**
 * Puts fillers into the openings: into each kind of them its own, where one is chosen for it; into the others, where
 * one is chosen for all, that of the kind whose inscribed circle it fits best. Openings between two motifs alone get
 * none. `reach`: the joining distance of the motifs (M30).
 */
export function fillOpenings(
  openings: readonly Opening[],
  lattice: Lattice,
  { main, own, findings: asked }: Asked,
  reach: Millimetres,
  terms: Terms,
  units: UnitSystem,
): Filling {
  const findings: Finding[] = [...asked]
  const found = new Map<OpeningKind, { readonly filler: Filler; readonly fit: OpeningFit }>()
  const given = { lattice, reach: reach + FILLER_GIVES, terms, units }
  const put = (kinds: readonly OpeningKind[], filler: Filler): void => {
    if (kinds.length === 0) return
    const told = fitted(kinds, filler, given)
    findings.push(...told.findings)
    for (const [kind, fit] of told.fits) found.set(kind, { filler, fit })
  }
  if (main) {
    const kinds = [...new Set(openings.map(({ kind }) => kind))].filter(({ sides }) => sides >= LEAST_SIDES)
    const taken = new Set([...own.keys()].flatMap((group) => [...group.kinds]))
    if (kinds.length === 0)
      findings.push(
        findingOf(said('layout/filler-nowhere'), main.where, {
          motif: main.account.id,
        }),
      )
    put(
      bestKinds(kinds, main.account).filter((kind) => !taken.has(kind)),
      main,
    )
  }
  for (const [{ kinds }, filler] of own) if (filler) put([...kinds], filler)
  const filled = openings.flatMap((opening): Filled[] => {
    const { filler, fit } = found.get(opening.kind) ?? {}
    if (!filler || !fit) return []
    return fit.fits.map((own) => {
      const joined = own.contacts.map(({ motif }) => motif).sort((a, b) => a - b)
      return { opening, filler, fit: own, motifs: joined.map((motif) => opening.motifs[motif]!) }
    })
  })
  const along = filled.flatMap(({ fit, filler: { account, gauge } }) =>
    fit.contacts.flatMap(({ along: length }) =>
      length === undefined ? [] : [{ length, ...sideWork(length, gauge.width, [account.side]) }],
    ),
  )
  return {
    filled,
    along: {
      ...{ count: along.length, joins: along.length, points: along.length },
      length: along.reduce((sum, { length }) => sum + length, 0),
      stitches: along.reduce((sum, { stitches }) => sum + stitches, 0),
      counted: along.filter(({ isCounted }) => isCounted).length,
      each: new Set(along.map(({ stitches }) => stitches)).size === 1 ? along[0]!.stitches : null,
      worked: along.reduce((sum, { worked }) => sum + worked, 0),
    },
    joins: filled.reduce((sum, { motifs }) => sum + motifs.length, 0),
    open: largest(openings.map(({ kind }) => found.get(kind)?.fit.open ?? kind.radius)),
    findings,
  }
}

/** M32, for a child's project: the widest opening that stays. */
export function childOpenings(open: Millimetres, units: UnitSystem): Finding[] {
  if (open === 0) return []
  const code = 2 * open >= CHILD_OPENING ? 'joins/gap-for-hands' : 'joins/gap-for-fingers'
  return [
    finding(code, 'joining', { size: formatLength(2 * open, units), limit: lengthValue(CHILD_OPENING) }),
  ]
}
