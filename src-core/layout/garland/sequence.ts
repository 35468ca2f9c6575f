/** M50: the sequence that repeats: motifs and beads as they hang, and the gaps between them. */
import type { Finding } from '../../../shared-types/finding'
import type { MotifAccount } from '../../../shared-types/plan'
import type { GarlandLayout, Motif } from '../../../shared-types/project'
import type { Settled } from '../../../shared-types/settled'
import { accountOf } from '../../accounts'
import { PART } from '../../fields/garland'
import { finding } from '../../findings/finding'
import type { Millimetres } from '../../units/quantity'
import { hangBead, hangMotif } from './hanging'
import type { Hanging } from './hanging'
import type { GarlandReader, HangWay } from './read'

/** One thing of the sequence. */
export interface Thing {
  /** Null for a bead. */
  readonly motif: Motif | null
  readonly account: MotifAccount | null
  readonly colourway: string
  /** '' for a motif. */
  readonly bead: string
  readonly hanging: Hanging
  /** Which of the layout's `items` it is. */
  readonly part: number
  /** Room behind it, beyond the spacing. */
  readonly gap: Millimetres
}

/** Reads the sequence; a gap belongs to the thing before it, one at the very beginning to the last. */
export function readSequence(
  project: Settled,
  layout: GarlandLayout,
  way: HangWay,
  chainLength: Millimetres,
  reader: GarlandReader,
): { things: Thing[]; findings: Finding[] } {
  const findings: Finding[] = []
  const things: { -readonly [Key in keyof Thing]: Thing[Key] }[] = []
  const told = new Set<Motif>()
  let leading = 0
  layout.items?.forEach((item, i) => {
    const where = `items[${i}]`
    const gap = reader.within(item.gap, PART.room, `layout.${where}.gap`) ?? 0
    const motif = item.motif ? project.motifs.find((entry) => entry.id === item.motif) : undefined
    if (motif) {
      const read = accountOf(project, motif)
      if (!told.has(motif)) findings.push(...read.findings)
      told.add(motif)
      const way0 = project.colourways.find((colourway) => colourway.id === item.colourway)
      if (way0?.motif && way0.motif !== motif.id) {
        const values = { colourway: way0.code || way0.name || way0.id, motif: motif.name ?? motif.id }
        findings.push(finding('garland/other-colourway', `layout.${where}.colourway`, values))
      }
      if (read.account) {
        const hanging = hangMotif(read.account, { by: way.by, chains: way.chains, chainLength })
        const colourway = way0?.id ?? ''
        things.push({ motif, account: read.account, colourway, bead: '', hanging, part: i, gap })
      }
    } else if (item.bead !== undefined) {
      const size = reader.within(item.size ?? 0, PART.size, `layout.${where}.size`)
      const bead = item.bead.trim() || 'bead'
      if (size)
        things.push({
          motif: null,
          account: null,
          colourway: '',
          bead,
          hanging: hangBead(size),
          part: i,
          gap,
        })
    } else if (item.gap !== undefined) {
      const last = things.at(-1)
      if (last) last.gap += gap
      else leading += gap
    } else if (!item.motif) findings.push(finding('garland/empty-item', `layout.${where}`))
  })
  const last = things.at(-1)
  if (last) last.gap += leading
  else findings.push(finding('garland/no-items', 'layout.items'))
  return { things, findings }
}
