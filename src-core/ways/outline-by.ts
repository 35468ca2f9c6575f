/** The outline that a blanket is cut out in, larger or smaller. */
import type { OutlineShape, Project } from '../../shared-types/project'
import { boxOf } from '../geometry/points'
import { cutOut } from '../layout/outline'
import { blanketOf } from '../plans/layouts'
import type { Millimetres } from '../units/quantity'
import type { Size } from './size'

/** Width and height of an outline, in mm; null where none is cut out. */
export function boxOfOutline(asked: OutlineShape | undefined): Size | null {
  const { shape } = cutOut(asked)
  const box = shape && boxOf(shape)
  return box && { width: box.right - box.left, height: box.bottom - box.top }
}

/** Kept to a ten-thousandth of a millimetre, so that the same motifs stay under an outline that grows with them. */
const kept = (value: Millimetres): Millimetres => Math.round(value * 1e4) / 1e4

/** An outline by a factor for its width and one for its height, where it has one of its own. */
function scaledOutline(asked: OutlineShape, wider: number, longer: number): OutlineShape {
  const box = boxOfOutline(asked)
  if (!box) return asked
  const hasHeight = asked.kind === 'rectangle' || asked.kind === 'triangle'
  const isOwn = asked.height !== undefined || wider !== longer
  return {
    ...asked,
    size: kept(box.width * wider),
    ...(hasHeight && isOwn && { height: kept(box.height * longer) }),
  }
}

/** A project whose outline grows by a factor, as its motifs do: the same ones stay. */
export function withOutlineBy(project: Project, wider: number, longer = wider): Project {
  const layout = blanketOf(project)
  if (!layout?.outlineShape) return project
  return {
    ...project,
    layout: { ...layout, outlineShape: scaledOutline(layout.outlineShape, wider, longer) },
  }
}

/** A project whose outline lies in the middle of its rows. */
export function inMiddle(project: Project): Project {
  const layout = blanketOf(project)
  if (!layout?.outlineShape?.middle) return project
  const { middle: _, ...outlineShape } = layout.outlineShape
  return { ...project, layout: { ...layout, outlineShape } }
}
