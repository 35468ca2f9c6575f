/** M19: whether a large motif is as large as the places that it takes. */
import type { Finding } from '../../shared-types/finding'
import type { MotifAccount } from '../../shared-types/plan'
import type { Motif, UnitSystem } from '../../shared-types/project'
import type { SettledJoining } from '../../shared-types/settled'
import { finding } from '../findings/finding'
import { lengthValue } from '../findings/quantities'
import { boxOf } from '../geometry/points'
import { joinReach } from '../joins/rule'
import type { Rules } from '../joins/rule'
import type { ResolvedGauge } from '../stitches/gauge'
import { lengthsIn } from '../units/format'
import type { Cells } from './cells'
import { outlineAt } from './lattice'
import type { Lattice } from './lattice'

/**
 * A finding for each motif that is so much larger or smaller than its block that joins do not reach; `natural` is the
 * lattice that small motifs alone would have. Every size of block is told of once for each motif.
 */
export function largeSizes(
  { blocks, own }: Cells,
  motifs: readonly Motif[],
  accounts: readonly MotifAccount[],
  natural: Lattice,
  rules: Rules,
  joining: SettledJoining,
  gauge: ResolvedGauge,
  units: UnitSystem,
): Finding[] {
  const told = new Set<string>()
  return [...blocks].flatMap(([address, size]): Finding[] => {
    const kind = own.get(address)
    const key = `${kind} ${size}`
    if (kind == null || told.has(key)) return []
    told.add(key)
    const rule = rules.of(kind, 0)
    const smaller = accounts.reduce((least, each) => (each.overTips < least.overTips ? each : least))
    const { reach } = joinReach(joining, rule, smaller, gauge)
    const box = boxOf(outlineAt(natural, { kind, even: false }))
    const places = size * natural.column
    const measured = box.right - box.left
    const over = measured + rule.gap - places
    // Too small, it gapes on both sides; too large, it pushes apart what stands between two rows beside it.
    const gap = over < 0 ? -over / 2 : over / (size + 1)
    if (gap <= reach || rule.rule === 'apart') return []
    const length = lengthsIn(units, [measured, places])
    const values = {
      name: motifs[kind]?.name ?? motifs[kind]?.id ?? '',
      measured: length(measured),
      size: String(size),
      places: length(places),
      wanted: length(places - rule.gap),
      gap: lengthValue(gap),
    }
    return [
      over < 0
        ? finding('layout/large-gapes', `layout.cells.large["${address}"]`, values)
        : finding('layout/large-pushes', `layout.cells.large["${address}"]`, values),
    ]
  })
}
