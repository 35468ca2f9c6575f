/** Edits of the colours that a motif is made of. */
import type { MeasuredMotif, Motif, Project } from '../../../shared-types/project'
import { weighedColours } from '../../../src-core/materials/weighed-colours'
import { isUsable } from '../../../src-core/units/usable'
import { freeName } from './ids'
import { findMotif, slotsOf, updateMotif } from './motif'

/** Adds a colour to a measured motif, outermost last. */
export function addSlot(project: Project, id: string): Project {
  return updateMotif(project, id, (motif) => {
    if (motif.kind !== 'measured') return motif
    const slots = motif.slots ?? []
    const slot = freeName(
      'edge',
      slots.map((entry) => entry.slot),
    )
    return { ...motif, slots: [...slots, { slot }] }
  })
}

/** Grams of one motif by several weighed together, and by its colours, where each of these has a weight of its own. */
export function weighedTwice(motif: Motif): { readonly whole: number; readonly colours: number } | null {
  const { grams, motifs = 1 } = motif.weighed ?? {}
  const names = slotsOf(motif)
  const own = weighedColours(motif, names)
  if (!isUsable(grams) || !isUsable(motifs) || !names.every((slot) => own.has(slot))) return null
  const colours = [...own.values()].reduce((sum, each) => sum + each, 0)
  return colours > 0 ? { whole: grams / motifs, colours } : null
}

/** Brings the weights of a motif's colours, in their proportions, to what it weighs as a whole; to 0.1 mg. */
export function coloursToWhole(project: Project, id: string): Project {
  return updateMotif(project, id, (motif) => {
    const found = weighedTwice(motif)
    if (!found) return motif
    const own = weighedColours(motif, slotsOf(motif))
    const slots = motif.slots as NonNullable<MeasuredMotif['slots']>
    const scaled = (grams: number): number => Math.round((grams * found.whole * 1e4) / found.colours) / 1e4
    return {
      ...motif,
      slots: slots.map((entry) =>
        entry.grams !== undefined && own.has(entry.slot) ? { ...entry, grams: scaled(entry.grams) } : entry,
      ),
    }
  })
}

const without = <T>(record: Readonly<Record<string, T>> | undefined, key: string) =>
  record && Object.fromEntries(Object.entries(record).filter(([name]) => name !== key))

const renamed = <T>(record: Readonly<Record<string, T>> | undefined, from: string, to: string) =>
  record &&
  Object.fromEntries(Object.entries(record).map(([name, value]) => [name === from ? to : name, value]))

/** Takes a colour out of a measured motif and out of its colourways. */
export function removeSlot(project: Project, id: string, slot: string): Project {
  const next = updateMotif(project, id, (motif) =>
    motif.kind === 'measured'
      ? {
          ...motif,
          slots: motif.slots?.filter((entry) => entry.slot !== slot),
          ...(motif.weighed?.shares
            ? { weighed: { ...motif.weighed, shares: without(motif.weighed.shares, slot) } }
            : {}),
        }
      : motif,
  )
  return {
    ...next,
    colourways: next.colourways?.map((way) =>
      way.motif === id ? { ...way, yarns: without(way.yarns, slot) } : way,
    ),
  }
}

const isNamed = (entry: unknown, slot: string): boolean =>
  typeof entry === 'object' && entry !== null && (entry as { slot?: unknown }).slot === slot

/** Renames a colour everywhere it is spoken of. Answers the same project where the name is taken or empty. */
export function renameSlot(project: Project, id: string, from: string, to: string): Project {
  const motif = findMotif(project, id)
  if (!motif || !to || slotsOf(motif).includes(to)) return project
  const next = updateMotif(project, id, (entry) => {
    const told = {
      ...(entry.weighed?.shares
        ? { weighed: { ...entry.weighed, shares: renamed(entry.weighed.shares, from, to) } }
        : {}),
      ...(entry.unravelled ? { unravelled: renamed(entry.unravelled, from, to) } : {}),
    }
    // What is kept of the other basis, measures beside rounds or rounds beside measures, speaks of it, too.
    const { slots, rounds } = entry as { slots?: unknown; rounds?: unknown }
    const list = (entries: unknown) =>
      Array.isArray(entries)
        ? (entries as unknown[]).map((one) => (isNamed(one, from) ? { ...(one as object), slot: to } : one))
        : entries
    return {
      ...entry,
      ...told,
      ...(slots !== undefined && { slots: list(slots) }),
      ...(rounds !== undefined && { rounds: list(rounds) }),
    } as Motif
  })
  return {
    ...next,
    colourways: next.colourways?.map((way) =>
      way.motif === id ? { ...way, yarns: renamed(way.yarns, from, to) } : way,
    ),
  }
}
