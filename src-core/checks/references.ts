/** What refers to what in a project: ids used twice, and names that nothing answers to. */
import type { Finding } from '../../shared-types/finding'
import type { Motif, Project } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { workedEntries } from '../motif/rounds/special'

/** Findings on ids and references; places are paths into the file. */
export function checkReferences(project: Project): Finding[] {
  const findings: Finding[] = []
  const yarns = ids(project.yarns, 'yarns', findings)
  const motifs = ids(project.motifs, 'motifs', findings)
  const colourways = ids(project.colourways, 'colourways', findings)
  const yarn = (id: string | undefined, where: string) => {
    if (id && !yarns.has(id)) findings.push(finding('file/unknown-yarn', where, { id }))
  }
  const motif = (id: string | undefined, where: string) => {
    if (id && !motifs.has(id)) findings.push(finding('file/unknown-motif', where, { id }))
  }
  const colourway = (id: string | undefined, where: string) => {
    if (id && !colourways.has(id)) findings.push(finding('file/unknown-colourway', where, { id }))
  }

  project.colourways?.forEach((way, i) => {
    motif(way.motif, `colourways[${i}].motif`)
    for (const [slot, id] of Object.entries(way.yarns ?? {})) yarn(id, `colourways[${i}].yarns.${slot}`)
    const own = project.motifs?.find((entry) => entry.id === way.motif)
    if (own) findings.push(...checkSlots(own, Object.keys(way.yarns ?? {}), `colourways[${i}].yarns`, way.id))
  })
  yarn(project.joining?.yarn, 'joining.yarn')
  const layout = project.layout
  if (layout?.kind === 'blanket') {
    motif(layout.motif, 'layout.motif')
    motif(layout.fillers?.motif, 'layout.fillers.motif')
    colourway(layout.fillers?.colourway, 'layout.fillers.colourway')
    yarn(layout.edging?.yarn, 'layout.edging.yarn')
    layout.cells?.fill?.colourways?.forEach((id, i) => colourway(id, `layout.cells.fill.colourways[${i}]`))
    for (const [cell, id] of Object.entries(layout.cells?.painted ?? {}))
      colourway(id, `layout.cells.painted["${cell}"]`)
  } else if (layout) {
    if (layout.kind === 'garland') yarn(layout.cord?.yarn, 'layout.cord.yarn')
    layout.items?.forEach((item, i) => {
      motif(item.motif, `layout.items[${i}].motif`)
      colourway(item.colourway, `layout.items[${i}].colourway`)
    })
  }
  return findings
}

function ids(list: readonly { id: string }[] | undefined, where: string, findings: Finding[]): Set<string> {
  const known = new Set<string>()
  list?.forEach(({ id }, i) => {
    if (known.has(id)) findings.push(finding('file/duplicate-id', `${where}[${i}].id`, { id }))
    known.add(id)
  })
  return known
}

/** The colour names of a motif, in the order in which they are worked. */
function slotsOf(motif: Motif): string[] {
  const named = motif.kind === 'measured' ? motif.slots : workedEntries(motif)
  return [...new Set(named?.map((entry) => entry.slot ?? '').filter((slot) => slot !== ''))]
}

function checkSlots(motif: Motif, named: readonly string[], where: string, colourway: string): Finding[] {
  const slots = slotsOf(motif)
  if (slots.length === 0) return []
  const unknown = named.filter((slot) => !slots.includes(slot))
  const missing = slots.filter((slot) => !named.includes(slot))
  return [
    ...unknown.map((slot) =>
      finding('file/unknown-slot', `${where}.${slot}`, { slot, known: slots.join(', ') }, { colourway }),
    ),
    ...missing.map((slot) => finding('file/missing-slot', where, { slot }, { colourway })),
  ]
}
