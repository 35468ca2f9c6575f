/** Takes motifs and yarns over from another project, under ids of their own here. */
import type { Motif, Project, Yarn } from '../../../shared-types/project'
import { freeId, freeLetter, freeName } from './ids'
import { setTerms } from './terms'
import { settled, withGauge } from '../../../src-core/settled'

/** A yarn is the same one where name, colour and ball band agree. */
const sameYarn = (a: Yarn, b: Yarn): boolean =>
  a.name === b.name && a.colour === b.colour && a.ballGrams === b.ballGrams && a.ballMetres === b.ballMetres

/** Takes a yarn over; answers the project and the id that the yarn has in it. */
export function takeYarn(project: Project, yarn: Yarn): { project: Project; id: string } {
  const known = project.yarns?.find((entry) => sameYarn(entry, yarn))
  if (known) return { project, id: known.id }
  const id = freeId('y', project.yarns)
  const copy: Yarn = { ...yarn, id }
  delete copy.onHandGrams
  delete copy.onHandBalls
  delete copy.onHandAt
  delete copy.noMore
  return { project: { ...project, yarns: [...(project.yarns ?? []), copy] }, id }
}

/**
 * Takes a motif over with its colourways and their yarns, in the terms of the project that takes it; a motif
 * without a gauge brings that of its project.
 */
export function takeMotif(project: Project, other: Project, id: string): { project: Project; id: string } {
  const from = setTerms(other, settled(project).terms)
  const motif = from.motifs?.find((entry) => entry.id === id)
  return motif ? bring(project, from, motif) : { project, id }
}

function bring(project: Project, from: Project, motif: Motif): { project: Project; id: string } {
  const id = freeId('m', project.motifs)
  const names = (project.motifs ?? []).map((entry) => entry.name)
  const gauge = withGauge(motif, from.gauge).gauge
  const copy = {
    ...motif,
    id,
    name: freeName(motif.name ?? 'Motif', names),
    ...(gauge ? { gauge } : {}),
  }
  let next: Project = { ...project, motifs: [...(project.motifs ?? []), copy] }
  for (const way of from.colourways ?? []) {
    if (way.motif !== motif.id) continue
    const yarns: Record<string, string> = {}
    for (const [slot, yarnId] of Object.entries(way.yarns ?? {})) {
      const yarn = from.yarns?.find((entry) => entry.id === yarnId)
      if (!yarn) continue
      const taken = takeYarn(next, yarn)
      next = taken.project
      yarns[slot] = taken.id
    }
    const ways = next.colourways ?? []
    const copied = { ...way, id: freeId('c', ways), code: freeLetter(ways), motif: id, yarns }
    next = { ...next, colourways: [...ways, copied] }
  }
  return { project: next, id }
}
