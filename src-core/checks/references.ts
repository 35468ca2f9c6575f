/** What refers to what in a project: ids used twice, and names that nothing answers to. */
import type { Finding } from '../../shared-types/finding'
import type { Motif, Project } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { remembered } from '../memo'
import { workedEntries } from '../motif/rounds/special'

/** An id that a layout names, and the path into the file where it does. */
export type Reference = readonly [what: 'yarn' | 'motif' | 'colourway', id: string | undefined, where: string]

interface Naming {
  readonly motif?: string
  readonly colourway?: string
}

// Thousands of things are asked at every step of a drag of one.
const namedBy = remembered((item: Naming, i: number): readonly Reference[] => [
  ['motif', item.motif, `layout.items[${i}].motif`],
  ['colourway', item.colourway, `layout.items[${i}].colourway`],
])

/** What the things on a cord or a panel name. */
export const namedByItems = (items: readonly Naming[]): Reference[] =>
  items.flatMap((item, i) => namedBy(item, i))

/** Findings on ids and references, with `laid` those of the layout; places are paths into the file. */
export function checkReferences(project: Project, laid: readonly Reference[]): Finding[] {
  const findings: Finding[] = []
  const known = {
    yarn: ids(project.yarns, 'yarns', findings),
    motif: ids(project.motifs, 'motifs', findings),
    colourway: ids(project.colourways, 'colourways', findings),
  }
  const check = (...[what, id, where]: Reference) => {
    if (id && !known[what].has(id)) findings.push(finding(`file/unknown-${what}`, where, { id }))
  }

  project.colourways?.forEach((way, i) => {
    check('motif', way.motif, `colourways[${i}].motif`)
    for (const [slot, id] of Object.entries(way.yarns ?? {}))
      check('yarn', id, `colourways[${i}].yarns.${slot}`)
    const own = project.motifs?.find((entry) => entry.id === way.motif)
    if (own) findings.push(...checkSlots(own, Object.keys(way.yarns ?? {}), `colourways[${i}].yarns`, way.id))
  })
  project.motifs?.forEach(({ goesWith }, i) => check('motif', goesWith?.motif, `motifs[${i}].goesWith.motif`))
  check('yarn', project.joining?.yarn, 'joining.yarn')
  project.joining?.pairs?.forEach((pair, i) =>
    pair.motifs.forEach((id, k) => check('motif', id, `joining.pairs[${i}].motifs[${k}]`)),
  )
  for (const reference of laid) check(...reference)
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
