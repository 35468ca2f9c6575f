/** Edits of what fills the openings between the motifs of a blanket, by kind of opening. Lengths in mm. */
import type { OpeningsOfKind } from '../../../shared-types/plan'
import type { BlanketLayout, Colourway, MeasuredMotif, Project } from '../../../shared-types/project'
import { betweenName } from '../../../src-core/layout/opening-kinds'
import { blanketOf, patchBlanket } from './layout'
import { addMotif, newMotif } from './motif'
import { freeName } from './ids'
import { addColourway, newColourway } from './yarn'

type Fillers = NonNullable<BlanketLayout['fillers']>
type Entry = NonNullable<Fillers['openings']>[number]

/** A kind of openings among all that a plan has. */
export interface OneKind {
  readonly kind: OpeningsOfKind
  readonly all: readonly OpeningsOfKind[]
}

const fillersOf = (project: Project): Fillers => blanketOf(project)?.fillers ?? {}
const entriesOf = ({ openings = [] }: Fillers): readonly Entry[] => openings
const isBetween = ({ between = [] }: Entry, name: string): boolean => betweenName(between) === name

/** Where in the file a kind of openings has an entry; −1 where it has none. */
function entryPlace(fillers: Fillers, { between, nth }: OpeningsOfKind): number {
  const name = betweenName(between)
  const places = entriesOf(fillers).flatMap((entry, place) => (isBetween(entry, name) ? [place] : []))
  return places[nth - 1] ?? -1
}

/** What a kind of openings has of its own: null for none, undefined where it has what all have. */
const ownMotif = (fillers: Fillers, kind: OpeningsOfKind): string | null | undefined =>
  entriesOf(fillers)[entryPlace(fillers, kind)]?.motif

/** Id of the motif that is chosen for a kind of openings, also where it cannot stand there; '' for none. */
export function chosenFor(project: Project, { kind, all }: OneKind): string {
  const fillers = fillersOf(project)
  const own = ownMotif(fillers, kind)
  if (own !== undefined) return own ?? ''
  return (all.length === 1 ? fillers.motif : kind.filler) ?? ''
}

/** The colourways that a motif can be worked in as a filler: those made for it. */
export const fillerWays = (project: Project, motif: string): Colourway[] =>
  (project.colourways ?? []).filter((way) => way.motif === motif)

/** The colourway that fillers of a kind have where they are not painted: the one chosen, else the first of their motif. */
export function fillerWay(project: Project, one: OneKind): Colourway | undefined {
  const fillers = fillersOf(project)
  const entry = entriesOf(fillers)[entryPlace(fillers, one.kind)]
  const named = entry?.motif === undefined ? fillers.colourway : entry.colourway
  const ways = fillerWays(project, chosenFor(project, one))
  return ways.find(({ id }) => id === named) ?? ways[0]
}

/** The entries of a file with what one kind of openings has; those of larger kinds between the same motifs come before it. */
function withEntry(fillers: Fillers, { between, nth }: OpeningsOfKind, entry: Partial<Entry>): Entry[] {
  const name = betweenName(between)
  const entries = entriesOf(fillers)
  const same = entries.filter((each) => isBetween(each, name))
  while (same.length < nth) same.push({ between: [...between] })
  same[nth - 1] = { between: [...between], ...entry }
  return [...entries.filter((each) => !isBetween(each, name)), ...same]
}

/** Without entries that say nothing, unless smaller kinds between the same motifs count on them. */
function tidied(fillers: Fillers): Fillers | undefined {
  const entries = entriesOf(fillers)
  const isSaid = ({ motif }: Entry): boolean => (fillers.motif ? motif !== undefined : Boolean(motif))
  const openings = entries.filter(
    (entry, place) =>
      isSaid(entry) ||
      entries
        .slice(place + 1)
        .some((later) => isSaid(later) && isBetween(later, betweenName(entry.between ?? []))),
  )
  const { openings: _, ...rest } = fillers
  if (openings.length > 0) return { ...rest, openings }
  return fillers.motif ? rest : undefined
}

/**
 * Fills the openings of one kind with a motif, in a colourway of its own: one that is made for it, else a new one;
 * without yarns there is nothing to work it in yet. Null leaves them open; what fillers were painted with is kept for
 * when they come back.
 */
export function fillKind(project: Project, one: OneKind, motif: string | null): Project {
  const own = motif === null ? undefined : fillerWays(project, motif)[0]
  const made = motif !== null && !own && project.yarns?.length ? newColourway(project, motif) : undefined
  const next = made ? addColourway(project, made) : project
  const way = own ?? made
  const named = { motif, ...(way && { colourway: way.id }) }
  const fillers = fillersOf(project)
  return patchBlanket(next, { fillers: tidied(withFiller(fillers, one, named)) })
}

function withFiller(
  fillers: Fillers,
  { kind, all }: OneKind,
  named: Pick<Entry, 'motif' | 'colourway'>,
): Fillers {
  const { motif, colourway, ...rest } = fillers
  // What is the only kind has the filler of all: it stays whatever becomes of the arrangement.
  if (all.length === 1) {
    const openings = withEntry(fillers, kind, {})
    return named.motif
      ? { ...rest, motif: named.motif, colourway: named.colourway, openings }
      : { ...rest, openings }
  }
  const isUsed = all.some((each) => each !== kind && each.filler && ownMotif(fillers, each) === undefined)
  return { ...rest, ...(isUsed && { motif, colourway }), openings: withEntry(fillers, kind, named) }
}

/** Leaves all openings open. */
export const removeFillers = (project: Project): Project => patchBlanket(project, { fillers: undefined })

/** Puts another colourway on every filler in the openings of a kind that is not painted by hand. */
export function setFillerWay(project: Project, { kind }: Pick<OneKind, 'kind'>, colourway: string): Project {
  const fillers = fillersOf(project)
  const entry = entriesOf(fillers)[entryPlace(fillers, kind)]
  return patchBlanket(project, {
    fillers:
      entry?.motif === undefined
        ? { ...fillers, colourway }
        : { ...fillers, openings: withEntry(fillers, kind, { ...entry, colourway }) },
  })
}

/** Adds a colourway for the fillers of a kind and puts it on them. */
export function addFillerWay(project: Project, one: OneKind): Project {
  const motif = chosenFor(project, one)
  if (!motif) return project
  const way = newColourway(project, motif)
  return setFillerWay(addColourway(project, way), one, way.id)
}

/** A round motif that just fits an opening of so much radius. */
function fillerFor(project: Project, radius: number): MeasuredMotif {
  const names = (project.motifs ?? []).map((motif) => motif.name)
  return {
    ...newMotif(project, 'round'),
    name: freeName('Filler', names),
    across: Math.round(20 * radius) / 10,
  }
}

/** Makes a round filler for the openings of a kind, with a colourway, and puts it there. */
export function makeFiller(project: Project, one: OneKind): Project {
  const motif = fillerFor(project, one.kind.radius)
  return fillKind(addMotif(project, motif), one, motif.id)
}

/** Fillers chosen for kinds of openings that there are not now: how many kinds. */
export function waitingFillers(project: Project, all: readonly OpeningsOfKind[]): number {
  const fillers = fillersOf(project)
  const there = new Set(all.map((kind) => entryPlace(fillers, kind)))
  return entriesOf(fillers).filter(({ motif }, place) => motif && !there.has(place)).length
}

/** Without what was chosen for kinds of openings that there are not. */
export function forgetWaiting(project: Project, all: readonly OpeningsOfKind[]): Project {
  const fillers = fillersOf(project)
  const there = new Set(all.map((kind) => entryPlace(fillers, kind)))
  const openings = entriesOf(fillers).filter((_, place) => there.has(place))
  return patchBlanket(project, { fillers: tidied({ ...fillers, openings }) })
}
