/** Edits of the colours that a motif is made of. */
import type { Motif, Project } from '../../../shared-types/project'
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
