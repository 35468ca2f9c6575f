/** What is said of a size that was asked for. */
import type { Finding } from '../../shared-types/finding'
import type { Plan } from '../../shared-types/plan'
import type { BlanketLayout, UnitSystem } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { formatSize } from '../units/format'

/** Share of the wish beyond which a size is worth a note. */
const OFF_TARGET = 0.02

/** Share of the wish beyond which the window says it over the map (ours). */
export const OFF_TARGET_FAR = 0.1

/** By which share of a target a size is off it, on the side where that is more; 0 without one. */
export const sharesOff = ({ width = 0, height = 0 }: Partial<Plan['size']>, size: Plan['size']): number =>
  width > 0 && height > 0 ? Math.max(Math.abs(size.width / width - 1), Math.abs(size.height / height - 1)) : 0

/** A note where the finished size is off the target; an error where there can be no such target. */
export function offTarget(layout: BlanketLayout, size: Plan['size'], units: UnitSystem): Finding[] {
  const { width, height } = layout.target ?? {}
  if (!width || !height) return []
  if (!(width > 0 && height > 0))
    return [finding('layout/target', 'layout.target', { received: formatSize(width, height, units) })]
  const off = sharesOff({ width, height }, size)
  if (off <= OFF_TARGET) return []
  const values = { size: formatSize(size.width, size.height, units), wish: formatSize(width, height, units) }
  return [finding('layout/off-target', 'layout.target', values)]
}
