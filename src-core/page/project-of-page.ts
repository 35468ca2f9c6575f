/** A project of the text of a pattern: its rounds as a motif, and all that the page proposes for it taken. */
import type { Project, Terms } from '../../shared-types/project'
import { accountOf } from '../accounts'
import { laidFirst } from '../layout/first-layout'
import { takeApart } from '../notation/take-apart'
import { settled } from '../settled'
import { colourName, proposalsFor, takeProposals, withPage } from './proposals'
import { unitsOf } from './units-of-page'

/** Colour of rounds where the text names none. */
const MAIN = 'main'

/** Each colour of the motif with a yarn of the project: the one that the page gives it, else one after the other. */
function withYarns(project: Project): Project {
  const ids = (project.yarns ?? []).flatMap(({ id }) => id ?? [])
  const { colourways: ways = [], ...others } = project
  if (ids.length === 0) return others
  const free = ids.filter((id) => ways.every(({ yarns }) => !Object.values(yarns ?? {}).includes(id)))
  const next = () => free.shift() ?? ids[0]!
  return {
    ...others,
    colourways: ways.map(({ yarns, ...way }) => ({
      ...way,
      yarns: Object.fromEntries(
        Object.entries(yarns ?? {}).map(([slot, id]) => [slot, ids.includes(id) ? id : next()]),
      ),
    })),
  }
}

/** The project that a text gives, in its own terms; null where it has no rounds. `name`: that of the motif where the page names none. */
export function projectOfPage(text: string, terms: Terms, name: string | undefined): Project | null {
  const { rounds, foundation, special } = takeApart(text, terms, terms)
  if (rounds.length === 0) return null
  const id = 'm1'
  let slot = MAIN
  const written = rounds.map(({ work, colour }) => {
    if (colour !== null) slot = colourName(colour, terms)
    return { slot, work }
  })
  const slots = [...new Set(written.map((round) => round.slot))]
  const begun: Project = {
    format: 'petalyard-project',
    version: 1,
    terms,
    motifs: [
      {
        id,
        ...(name !== undefined && { name }),
        kind: 'rounds',
        ...(foundation !== undefined && { foundation }),
        ...(special !== '' && { special }),
        rounds: written,
      },
    ],
    // Which yarns there are is taken from the page.
    colourways: [{ id: 'A', motif: id, yarns: Object.fromEntries(slots.map((each) => [each, ''])) }],
    layout: { kind: 'blanket', motif: id },
  }
  const paged = withPage(begun, id, text, terms)
  const [motif] = settled(paged).motifs
  const shape = (motif && accountOf(paged, motif).account?.shape) ?? null
  const proposals = proposalsFor(paged, id, shape)
  const ids = proposals.map((proposal) => proposal.id)
  const taken = withYarns(takeProposals(paged, id, ids, shape))
  const units = unitsOf(proposals)
  const title = taken.motifs?.[0]?.name
  return laidFirst({ ...taken, ...(title !== undefined && { title }), ...(units && { units }) }, id)
}
