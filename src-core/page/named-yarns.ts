/**
 * A yarn for each colour that the text of a pattern names: the one of the project that is called so, else one that is
 * still open, else a new one, called and coloured after the word. Never two named colours in one yarn.
 */
import type { Colourway, Project, Yarn } from '../../shared-types/project'
import { capital } from '../figures/words'
import { colourNamed } from './colour-names'

/** Yarns of a project whose pattern is still to be written: which they are, its text will tell. */
export const OPEN_YARNS: readonly string[] = ['Main yarn', 'Second yarn']

/** The colours that the text names, by the colour of the motif that they stand for. */
export type Named = ReadonlyMap<string, string>

const words = (name: string | undefined): string =>
  ` ${(name ?? '')
    .toLowerCase()
    .match(/\p{L}+/gu)
    ?.join(' ')} `

/** Whether somebody has said something of a yarn besides what it is called and how it looks. */
const isOpen = ({ name, onHandBalls, onHandGrams, left }: Yarn): boolean =>
  OPEN_YARNS.includes(name ?? '') && onHandBalls === undefined && onHandGrams === undefined && !left

/** A yarn that the program put in until it is known which it is: "Main yarn", "Yarn 2". */
const isStandIn = (yarn: Yarn): boolean =>
  isOpen({ ...yarn, name: /^Yarn(?: \d+)?$/.test(yarn.name ?? '') ? OPEN_YARNS[0] : yarn.name }) &&
  (yarn.assumed?.includes('ballGrams') ?? false) &&
  (yarn.price === undefined || (yarn.assumed?.includes('price') ?? false))

/** The project without those of them that nothing names, where its page has brought its own. */
export function withoutOpenYarns(project: Project): Project {
  const { yarns, ...others } = project
  // Whatever names a yarn does so by its id.
  const named = JSON.stringify({ ...others, motifs: undefined, title: undefined, notes: undefined })
  const kept = yarns?.filter((yarn) => !isStandIn(yarn) || named.includes(JSON.stringify(yarn.id)))
  return kept?.length === yarns?.length ? project : { ...project, yarns: kept }
}

/**
 * Which of the yarns each named colour is in: `free` ones, of which those that `isFree` tells may be called otherwise.
 * A letter says nothing of its yarn, and takes one after the other.
 */
function yarnsMeant(free: Set<Yarn>, named: Named, isFree: (yarn: Yarn) => boolean) {
  const meant = new Map<string, Yarn>()
  const take = (slot: string, yarn: Yarn | undefined): void => {
    if (!yarn) return
    free.delete(yarn)
    meant.set(slot, yarn)
  }
  const wanted = [...named].filter(([, colour]) => colourNamed(colour) !== null)
  const rest = () => wanted.filter(([slot]) => !meant.has(slot))
  for (const [slot, colour] of rest())
    take(
      slot,
      [...free].find(({ name }) => words(name) === words(colour)),
    )
  for (const [slot, colour] of rest())
    take(
      slot,
      [...free].find(({ name }) => words(name).includes(words(colour))),
    )
  for (const [slot] of rest()) take(slot, [...free].find(isFree))
  for (const [slot, colour] of named) if (colourNamed(colour) === null) take(slot, [...free][0])
  return meant
}

/** A yarn as its colour is named; letters name none, so that it keeps its own. */
function called(yarn: Yarn, colour: string): Yarn {
  const shown = colourNamed(colour)
  return shown === null ? yarn : { ...yarn, name: capital(colour), colour: shown }
}

/** The project with a yarn for every named colour of a motif that has none in a colourway. */
export function withNamedYarns(
  project: Project,
  motifId: string,
  named: Named,
  made: (project: Project) => Yarn,
): Project {
  const ways = (project.colourways ?? []).filter(({ motif }) => motif === motifId)
  const missing = new Map([...named].filter(([slot]) => ways.some(({ yarns }) => !yarns?.[slot])))
  if (missing.size === 0) return project
  const usedBy = (of: readonly Colourway[]) => new Set(of.flatMap(({ yarns }) => Object.values(yarns ?? {})))
  const [own, all] = [usedBy(ways), usedBy(project.colourways ?? [])]
  const isFree = (yarn: Yarn): boolean => isOpen(yarn) && !all.has(yarn.id)
  const free = new Set((project.yarns ?? []).filter(({ id }) => !own.has(id)))
  const meant = yarnsMeant(free, missing, isFree)
  let next = project
  const ids = new Map<string, string>()
  for (const [slot, colour] of missing) {
    const there = meant.get(slot)
    const yarn = there && !isFree(there) ? there : called(there ?? made(next), colour)
    ids.set(slot, yarn.id)
    const yarns = next.yarns ?? []
    next = { ...next, yarns: there ? yarns.map((one) => (one === there ? yarn : one)) : [...yarns, yarn] }
  }
  return {
    ...next,
    colourways: next.colourways?.map((way) => {
      if (way.motif !== motifId) return way
      const given = [...ids].filter(([slot]) => !way.yarns?.[slot])
      return given.length === 0 ? way : { ...way, yarns: { ...way.yarns, ...Object.fromEntries(given) } }
    }),
  }
}
