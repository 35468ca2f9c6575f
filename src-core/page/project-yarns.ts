/** Yarns of a page in a project: which one is meant, what its colours are called, and the colours that take it. */
import type { Project, Terms, Yarn } from '../../shared-types/project'
import { inSpelling, saying } from '../stitches/spelling'
import { colourNamed } from './colour-names'
import type { PageFact } from './read-page'
import type { PageYarn } from './yarns'

const sameName = (one: string | undefined, other: string | undefined): boolean =>
  one?.trim().toLowerCase() === other?.trim().toLowerCase()

/** The yarn of a project that a page means: the one of that name, or that is called by its colour alone ("Meadow, pink"). */
export const yarnMeant = (project: Project, yarn: PageYarn): Yarn | undefined =>
  project.yarns?.find(({ name }) => sameName(name, yarn.name)) ??
  project.yarns?.find(({ name }) => sameName(name, yarn.name?.split(', ').at(-1)))

function freeYarn(project: Project): string {
  const taken = new Set(project.yarns?.map(({ id }) => id))
  let number = taken.size + 1
  while (taken.has(`y${number}`)) number++
  return `y${number}`
}

/** A colour by its word ("yellow"), "MC" and "B" as names of colours: letters alone are for colourways. */
export const colourName = (colour: string, terms: Terms): string =>
  colourNamed(colour) === null ? letterName(colour, terms) : colour.toLowerCase()

/** Of any name as of a letter, as files have it in which words were named so too. */
export const letterName = (colour: string, terms: Terms): string =>
  colour === 'MC'
    ? saying(terms)`main colour`
    : /^CC/.test(colour)
      ? `contrast ${colour.slice(2)}`.trim()
      : saying(terms)`colour ${colour}`

/** The project with a yarn: one of that name changed, else one more, which the motif's colour of that letter takes. */
export function withYarn(
  project: Project,
  motifId: string,
  { yarn, role }: Extract<PageFact, { kind: 'yarn' }>,
  isOnly: boolean,
): Project {
  const there = yarnMeant(project, yarn)
  const id = there?.id ?? freeYarn(project)
  const known = there?.assumed?.filter((field) => !(field in yarn))
  const yarns = there
    ? project.yarns!.map((one) =>
        one === there ? { ...one, ...yarn, ...(one.assumed && { assumed: known }) } : one,
      )
    : [...(project.yarns ?? []), { id, ...yarn }]
  const name = role === null ? null : colourName(role, 'US')
  return {
    ...project,
    yarns,
    colourways: project.colourways?.map((way) => {
      // A page with one yarn, and a motif with one colour: which is meant leaves no doubt.
      const slots = Object.keys(way.yarns ?? {})
      if (isOnly && way.motif === motifId && slots.length === 1) return { ...way, yarns: { [slots[0]!]: id } }
      // The colour was named when the rounds were taken, as the project's terms spelled it then.
      const slot = slots.find((each) => inSpelling(each, 'US') === name)
      return slot !== undefined && way.motif === motifId
        ? { ...way, yarns: { ...way.yarns, [slot]: id } }
        : way
    }),
  }
}
