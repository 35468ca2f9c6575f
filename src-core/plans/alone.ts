/** The pattern of one motif alone, as a designer sells it: a project of one, from which everything printed follows as always. */
import type { Project } from '../../shared-types/project'

/**
 * A project of one motif (by its id), with the pieces that go with it: its yarns, gauge and words as they are, nothing
 * of what it is put together to, of what is made and bought, or of a kit. The title is the motif's own name where the
 * project has other motifs, too. The project itself where it has no such motif.
 */
export function motifAlone(project: Project, id: string): Project {
  const motif = project.motifs?.find((each) => each.id === id)
  if (!motif) return project
  const { joining: _joining, order: _order, made: _made, joined: _joined, ...rest } = project
  const { goesWith: _goesWith, ...own } = motif
  const beside = (project.motifs ?? []).filter(({ goesWith }) => goesWith?.motif === id)
  const kept = new Set([id, ...beside.map((each) => each.id)])
  const colourways = (project.colourways ?? []).filter(({ motif: of }) => of !== undefined && kept.has(of))
  const first = colourways.find(({ motif: of }) => of === id)
  const isOne = (project.motifs ?? []).length === kept.size
  // Notes and the line below the title tell of the whole, where that is more than this.
  const { notes: _notes, pattern, ...ofAll } = rest
  const { line: _line, ...published } = pattern ?? {}
  return {
    ...(isOne ? rest : { ...ofAll, ...(pattern && { pattern: published }) }),
    title: (isOne ? project.title : '') || motif.name || project.title || '',
    motifs: [own, ...beside],
    colourways,
    yarns: (project.yarns ?? []).map(({ packs: _packs, left: _left, ...yarn }) => yarn),
    layout: {
      ...{ kind: 'blanket', arrangement: 'straight-rows', motif: id, columns: 1, rows: 1 },
      ...(first && { cells: { fill: { pattern: 'one', colourways: [first.id] } } }),
    },
  }
}

/** The motifs that can be printed alone: those that have a place or could have one, not the pieces that go with others. */
export const motifsAlone = ({
  motifs = [],
}: Pick<Project, 'motifs'>): readonly { id: string; name: string }[] =>
  motifs.flatMap(({ id, name, goesWith }) => (goesWith?.motif ? [] : [{ id, name: name || id }]))
