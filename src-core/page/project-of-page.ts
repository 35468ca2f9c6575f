/** A project of the text of a pattern: its rounds as a motif, and all that the page proposes for it taken. */
import type { Project, Terms, Yarn } from '../../shared-types/project'
import { accountOf } from '../accounts'
import { laidFirst } from '../layout/first-layout'
import { takeApart } from '../notation/take-apart'
import { settled } from '../settled'
import { colourNamed, LETTERED } from './colour-names'
import { withNamedYarns } from './named-yarns'
import type { Named } from './named-yarns'
import { proposalsFor, takeProposals, withPage } from './proposals'
import { colourName } from './project-yarns'
import { unitsOf } from './units-of-page'

/** Colour of rounds where the text names none. */
const MAIN = 'main'

/** A yarn that a page leaves unnamed is as the others that it names. */
function newYarn({ yarns = [] }: Project): Yarn {
  const { id: _, name: _name, colour: _colour, ...band } = yarns.at(-1) ?? { id: '' }
  const taken = new Set(yarns.map(({ id }) => id))
  let number = yarns.length + 1
  while (taken.has(`y${number}`)) number++
  const assumed = BAND.filter((field) => band[field] !== undefined)
  return { ...band, id: `y${number}`, name: `Yarn ${number}`, ...(assumed.length > 0 && { assumed }) }
}

const BAND = ['ballGrams', 'ballMetres'] as const

/**
 * Each colour of the motif with a yarn of the project: the one that the page gives it or that is called like it, else
 * one after the other. A page that lists no yarn leaves open which its letters are.
 */
function withYarns(given: Project, motifId: string, named: Named): Project {
  const real = new Set((given.yarns ?? []).map(({ id }) => id))
  // A part that was taken out as a motif of its own has colours of its own.
  const slotsOf = new Map(given.colourways?.map(({ id, yarns }) => [id, Object.keys(yarns ?? {})]))
  const open: Project = {
    ...given,
    colourways: given.colourways?.map(({ yarns, ...way }) => ({
      ...way,
      yarns: Object.fromEntries(Object.entries(yarns ?? {}).filter(([, id]) => real.has(id))),
    })),
  }
  const told = [...named].filter(([, colour]) => real.size > 0 || colourNamed(colour) !== null)
  const { colourways: ways = [], ...others } = withNamedYarns(open, motifId, new Map(told), newYarn)
  const ids = (others.yarns ?? []).flatMap(({ id }) => id ?? [])
  if (ids.length === 0) return others
  const free = ids.filter((id) => ways.every(({ yarns }) => !Object.values(yarns ?? {}).includes(id)))
  const next = () => free.shift() ?? ids[0]!
  return {
    ...others,
    colourways: ways.map(({ yarns = {}, ...way }) => ({
      ...way,
      yarns: Object.fromEntries((slotsOf.get(way.id) ?? []).map((slot) => [slot, yarns[slot] ?? next()])),
    })),
  }
}

/** The first letter that no color of the pattern goes by: beside “color A” a colorway A would be taken for it. */
function freeLetter(slots: readonly string[]): string {
  const taken = new Set(slots.map((slot) => LETTERED.exec(slot)?.[1]?.toUpperCase()))
  return [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].find((letter) => !taken.has(letter)) ?? 'A'
}

/** The project that a text gives, in its own terms; null where it has no rounds. `name`: that of the motif where the page names none. */
export function projectOfPage(text: string, terms: Terms, name: string | undefined): Project | null {
  const { rounds, foundation, special } = takeApart(text, terms, terms)
  if (rounds.length === 0) return null
  const id = 'm1'
  let slot = MAIN
  const named = new Map<string, string>()
  const written = rounds.map(({ work, colour }) => {
    if (colour !== null) {
      slot = colourName(colour, terms)
      named.set(slot, colour)
    }
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
    colourways: [
      {
        id: 'A',
        code: freeLetter(slots),
        motif: id,
        yarns: Object.fromEntries(slots.map((each) => [each, ''])),
      },
    ],
    layout: { kind: 'blanket', motif: id },
  }
  const paged = withPage(begun, id, text, terms)
  const [motif] = settled(paged).motifs
  const shape = (motif && accountOf(paged, motif).account?.shape) ?? null
  const proposals = proposalsFor(paged, id, shape)
  const ids = proposals.map((proposal) => proposal.id)
  const taken = withYarns(takeProposals(paged, id, ids, shape), id, named)
  const units = unitsOf(proposals)
  const title = taken.title || taken.motifs?.[0]?.name
  return laidFirst({ ...taken, ...(title !== undefined && { title }), ...(units && { units }) }, id)
}
