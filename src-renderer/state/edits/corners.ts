/** Corners of a panel as a person types them: one a line, x and y from the top left. */
import type { Point } from '../../../shared-types/plan'
import type { UnitSystem } from '../../../shared-types/project'
import { MM_PER_INCH } from '../../../src-core/units/quantity'

const unitOf = (units: UnitSystem): number => (units === 'imperial' ? MM_PER_INCH : 1)

/** "0, 0", one corner a line, in mm or inches. */
export const writeCorners = (points: readonly (readonly number[])[], units: UnitSystem): string =>
  points
    .map((point) => point.map((value) => Math.round((value / unitOf(units)) * 1000) / 1000).join(', '))
    .join('\n')

/** Corners in mm, or what is wrong with the first line that cannot be read. */
export function readCorners(
  text: string,
  units: UnitSystem,
): { readonly corners: Point[] } | { readonly problem: string } {
  const corners: Point[] = []
  for (const [index, line] of text.split('\n').entries()) {
    if (line.trim() === '') continue
    const parts = line
      .trim()
      .split(/\s*[,;]\s*|\s+/)
      .map((part) => (/^[+\-−]?\d+(\.\d+)?$/.test(part) ? Number(part.replace('−', '-')) : NaN))
    const [x = NaN, y = NaN] = parts.map((value) => value * unitOf(units))
    if (parts.length !== 2 || Number.isNaN(x + y))
      return {
        problem: `Line ${index + 1} ("${line.trim().slice(0, 30)}") is not a corner: two numbers are expected, such as "120, 80".`,
      }
    corners.push({ x, y })
  }
  return corners.length < 3
    ? { problem: 'A panel has three corners or more, one on each line.' }
    : { corners }
}
