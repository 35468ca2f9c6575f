/** Edits of written rounds. Measures in mm. */
import type { Project, RoundsMotif, Terms } from '../../../../shared-types/project'
import { accountOf } from '../../../../src-core/accounts'
import { measuredAs, ruling } from '../../../../src-core/motif/ruling'
import { namesWeighed } from '../../../../src-core/materials/weighed-colours'
import { rewordRounds } from '../../../../src-core/motif/rounds/reword'
import type { PrintStyle } from '../../../../src-core/notation/print'
import type { TakenApart } from '../../../../src-core/notation/take-apart'
import { withNamedYarns } from '../../../../src-core/page/named-yarns'
import type { Named } from '../../../../src-core/page/named-yarns'
import { colourName, letterName } from '../../../../src-core/page/project-yarns'
import { withPage } from '../../../../src-core/page/proposals'
import { inTermsOf } from './first-page'
import { freeId, freeName } from '../../../state/edits/ids'
import { findMotif, slotsOf, updateMotif } from '../../../state/edits/motif'
import { renameSlot } from '../../../state/edits/slots'
import { newYarn } from '../../../state/edits/yarn'
import { settled } from '../../../../src-core/settled'

export type WrittenRound = NonNullable<RoundsMotif['rounds']>[number]
export type Foundation = RoundsMotif['foundation']

/** Colour of a round where nothing says another. */
const MAIN = 'main'

const updateRounds = (
  project: Project,
  id: string,
  edit: (rounds: readonly WrittenRound[]) => WrittenRound[],
) =>
  updateMotif(project, id, (motif) =>
    motif.kind === 'rounds' ? { ...motif, rounds: edit(motif.rounds ?? []) } : motif,
  )

/** Puts fields over those of one round; a field given as undefined is taken out. */
export const patchRound = (
  project: Project,
  id: string,
  index: number,
  patch: Partial<WrittenRound>,
): Project =>
  updateRounds(project, id, (rounds) =>
    rounds.map((round, i) => (i === index ? { ...round, ...patch } : round)),
  )

/** The colours that a motif is known to have, before its rounds say so: of its colourway, else those that were weighed. */
function knownColours(project: Project, id: string): readonly string[] {
  const motif = findMotif(project, id)
  const way = project.colourways?.find((entry) => entry.motif === id)
  const named = Object.keys(way?.yarns ?? {})
  return named.length > 0 || !motif ? named : namesWeighed(motif)
}

/**
 * Puts rounds in before the one at `index`. Where they have no colour they take that of the round before; at the end,
 * colours of the colourway that no round has yet come first.
 */
export function insertRounds(
  project: Project,
  id: string,
  index: number,
  added: readonly WrittenRound[],
  named?: Named,
): Project {
  const known = knownColours(project, id)
  const next = updateRounds(project, id, (rounds) => {
    const used = new Set(rounds.map((round) => round.slot))
    const isEnd = index >= rounds.length
    const free = isEnd ? known.filter((slot) => !used.has(slot)) : []
    const before = rounds[index - 1]?.slot ?? rounds[index]?.slot ?? MAIN
    const made = added.map((round, i) => ({ slot: free[i] ?? free.at(-1) ?? before, ...round }))
    return [...rounds.slice(0, index), ...made, ...rounds.slice(index)]
  })
  return withYarns(next, id, named)
}

export const removeRound = (project: Project, id: string, index: number): Project =>
  updateRounds(project, id, (rounds) => rounds.filter((_, i) => i !== index))

/** Divides a round in two at a place in its text. */
export function splitRound(project: Project, id: string, index: number, at: number): Project {
  return updateRounds(project, id, (rounds) =>
    rounds.flatMap((round, i) =>
      i === index
        ? [
            { ...round, work: round.work.slice(0, at).trimEnd(), across: undefined },
            { ...round, work: round.work.slice(at).trimStart() },
          ]
        : [round],
    ),
  )
}

/**
 * Gives a round its colour; a colour that no other round has and that is new is renamed wherever it is spoken of, and
 * one that no round has any more leaves the colourways.
 */
export function setRoundSlot(project: Project, id: string, index: number, slot: string): Project {
  const motif = findMotif(project, id)
  const name = slot.trim()
  if (motif?.kind !== 'rounds' || !name) return project
  const from = motif.rounds?.[index]?.slot
  const alone = from !== undefined && motif.rounds?.filter((round) => round.slot === from).length === 1
  if (from && alone && !slotsOf(motif).includes(name)) return renameSlot(project, id, from, name)
  return withYarns(withoutStrangers(patchRound(project, id, index, { slot: name }), id), id)
}

/**
 * Gives the colourways of a motif a yarn for every colour that they have none for: one of its own for each that the text
 * names, else the one of their last colour, in a colourway that has none yet one yarn of the shelf after the other.
 */
export function withYarns(given: Project, id: string, named?: Named): Project {
  const project = named ? withNamedYarns(given, id, named, newYarn) : given
  const motif = findMotif(project, id)
  if (!motif) return project
  const slots = slotsOf(motif)
  const shelf = (project.yarns ?? []).flatMap(({ id: yarn }) => yarn ?? [])
  return {
    ...project,
    colourways: project.colourways?.map((way) => {
      if (way.motif !== id) return way
      const yarns = way.yarns ?? {}
      const missing = slots.filter((slot) => yarns[slot] === undefined)
      const last = Object.values(yarns).at(-1)
      const given = missing.flatMap((slot, i) => {
        const yarn = last ?? shelf[Math.min(i, shelf.length - 1)]
        return yarn === undefined ? [] : [[slot, yarn] as const]
      })
      return given.length === 0 ? way : { ...way, yarns: { ...yarns, ...Object.fromEntries(given) } }
    }),
  }
}

/** Takes out of a motif's colourways the colours that none of its rounds has. */
function withoutStrangers(project: Project, id: string): Project {
  const motif = findMotif(project, id)
  if (!motif) return project
  const slots = new Set(slotsOf(motif))
  return {
    ...project,
    colourways: project.colourways?.map((way) => {
      if (way.motif !== id) return way
      const kept = Object.entries(way.yarns ?? {}).filter(([slot]) => slots.has(slot))
      return kept.length === Object.keys(way.yarns ?? {}).length
        ? way
        : { ...way, yarns: Object.fromEntries(kept) }
    }),
  }
}

const patchWritten = (project: Project, id: string, patch: Partial<RoundsMotif>): Project =>
  updateMotif(project, id, (motif) => (motif.kind === 'rounds' ? { ...motif, ...patch } : motif))

/** What the motif begins with; undefined: what its first round says. */
export const setFoundation = (project: Project, id: string, foundation: Foundation): Project =>
  patchWritten(project, id, { foundation })

export const setSpecial = (project: Project, id: string, special: string): Project =>
  patchWritten(project, id, { special: special.trim() === '' ? undefined : special })

/**
 * The rounds of a block with their colours. Colours that the text names take the `known` ones in their order, then
 * names of their own; where it names none, a round keeps the colour that stood there before, and the first rounds of
 * a motif take its colours from the centre outward.
 */
function roundsOf(
  taken: TakenApart,
  before: readonly WrittenRound[],
  known: readonly string[],
  terms: Terms,
): { readonly rounds: WrittenRound[]; readonly named: Named } {
  const slots = slotsNamed(taken, known, terms)
  let named: string | null = null
  const rounds = taken.rounds.map(({ work, colour }, i) => {
    if (colour !== null) named = slots.get(colour)!
    const usual = known[Math.min(i, known.length - 1)]
    return { slot: named ?? before[i]?.slot ?? before.at(-1)?.slot ?? usual ?? MAIN, work }
  })
  return { rounds, named: new Map([...slots].map(([colour, slot]) => [slot, colour])) }
}

/** Which colour of the motif each one is that the text names: the one called so, else the next of the `known` ones. */
function slotsNamed(taken: TakenApart, known: readonly string[], terms: Terms): ReadonlyMap<string, string> {
  const names = [...new Set(taken.rounds.flatMap(({ colour }) => colour ?? []))]
  const calledSo = (colour: string) =>
    known.find((slot) =>
      [colourName(colour, terms), letterName(colour, 'US'), letterName(colour, 'UK')].some(
        (name) => name.toLowerCase() === slot.toLowerCase(),
      ),
    )
  const same = names.map(calledSo)
  const free = known.filter((slot) => !same.includes(slot))
  return new Map(names.map((colour, i) => [colour, same[i] ?? free.shift() ?? colourName(colour, terms)]))
}

/** Sizes that differ by more than this from what the gauge makes of the rounds are those of another motif (our own choice). */
const OF_ANOTHER = 1.6

/** What was measured and weighed of the motif that rounds took the place of. */
const OF_THE_OLD: Partial<RoundsMotif> = {
  measured: undefined,
  measuredWith: undefined,
  weighed: undefined,
  weighedWith: undefined,
  weightWorkedOut: undefined,
  unravelled: undefined,
  stated: undefined,
  slots: undefined,
}

/**
 * What was measured before there were these rounds, as the motif is measured that they make; nothing of it where they
 * are plainly those of another motif.
 */
function withSizes(project: Project, id: string): Project {
  const motif = findMotif(project, id)
  if (motif?.kind !== 'rounds' || !motif.measured) return project
  const { account } = accountOf(project, { ...motif, measured: undefined })
  if (!account) return project
  const measured = measuredAs(motif.measured, account.shape)
  const ruled = (['tips', 'dips'] as const).flatMap((circle) => {
    const size = measured[ruling(measured, account.shape, circle) ?? 'across'] ?? 0
    return size > 0 ? [size / (circle === 'tips' ? account.overTips : account.overValleys)] : []
  })
  // Without a gauge nobody knows how large they come out.
  const isSure = account.provenance === 'gauge'
  const isAnother = isSure && ruled.some((share) => share > OF_ANOTHER || share < 1 / OF_ANOTHER)
  return patchWritten(project, id, isAnother ? OF_THE_OLD : { measured })
}

/** Whether sizes of a motif were measured that later rounds left out. */
export function lostSizes(before: Project, after: Project, id: string): boolean {
  const has = (project: Project) => {
    const motif = findMotif(project, id)
    return motif?.kind === 'rounds' && motif.measured !== undefined
  }
  return has(before) && !has(after)
}

/** Puts a block in the place of all rounds; a project in which nothing is written yet takes its terms and units. */
export function replaceRounds(before: Project, id: string, given: TakenApart): Project {
  const { project, taken } = inTermsOf(before, given)
  const motif = findMotif(project, id)
  if (motif?.kind !== 'rounds') return project
  const known = knownColours(project, id)
  const { rounds, named } = roundsOf(taken, motif.rounds ?? [], known, settled(project).terms)
  const next = patchWritten(project, id, {
    rounds,
    foundation: taken.foundation,
    // A pattern that explains nothing leaves what is explained.
    special: taken.special === '' ? motif.special : taken.special,
  })
  const told = withSizes(withYarns(withoutStrangers(next, id), id, named), id)
  return withPage(told, id, taken.text, taken.terms)
}

/** Puts the rounds in other words; null where a style would not leave each round in its own place. */
export function rewordMotif(project: Project, id: string, style: PrintStyle): Project | null {
  const motif = findMotif(project, id)
  if (motif?.kind !== 'rounds') return null
  const words = rewordRounds(motif, settled(project).terms, style)
  return (
    words &&
    updateRounds(project, id, (rounds) =>
      rounds.map((round, i) => ({ ...round, work: words[i] ?? round.work })),
    )
  )
}

/** Adds what a block explains to the special stitches that are there; a name that is explained already stays. */
function addSpecial(project: Project, id: string, special: string): Project {
  const motif = findMotif(project, id)
  if (motif?.kind !== 'rounds' || special.trim() === '') return project
  const nameOf = (line: string) => line.split(/[:=]/)[0]!.trim().toLowerCase()
  const there = (motif.special ?? '').split('\n').filter((line) => line.trim() !== '')
  const known = new Set(there.map(nameOf))
  const added = special.split('\n').filter((line) => line.trim() !== '' && !known.has(nameOf(line)))
  return added.length === 0 ? project : setSpecial(project, id, [...there, ...added].join('\n'))
}

/** Adds what a block says besides its rounds, which are put in among others: its own stitches, and its page. */
const addFromBlock = (project: Project, id: string, { special, text, terms }: TakenApart): Project =>
  withPage(addSpecial(project, id, special), id, text, terms, true)

/** An empty motif in written rounds. */
export function newRoundsMotif(project: Project): RoundsMotif {
  const names = (project.motifs ?? []).map((motif) => motif.name)
  return {
    id: freeId('m', project.motifs),
    name: freeName('Written flower', names),
    kind: 'rounds',
    rounds: [],
  }
}

/** Puts a block in after the round at `index`, of which nothing stays where nothing is written there. */
export function pasteRounds(before: Project, id: string, index: number, taken: TakenApart): Project {
  const project = addFromBlock(before, id, taken)
  const motif = findMotif(project, id)
  const at = motif?.kind === 'rounds' ? motif.rounds?.[index] : undefined
  if (!motif || !at) return before
  const { rounds, named } = roundsOf(taken, [at], slotsOf(motif), settled(project).terms)
  const next = insertRounds(project, id, index + 1, rounds, named)
  return at.work.trim() === '' ? removeRound(next, id, index) : next
}
