/** Words of the appliqué's controls. */
import type { Corner } from '../../../../src-core/composing/arrange'
import type { Facing } from '../../../../src-core/layout/arrangers/arranged'
import type { PanelShape } from '../../../../shared-types/project'

export const SHAPE_OPTIONS: readonly { readonly value: PanelShape; readonly label: string }[] = [
  { value: 'rectangle', label: 'Rectangle' },
  { value: 'circle', label: 'Circle' },
  { value: 'ellipse', label: 'Ellipse' },
  { value: 'outline', label: 'Outline' },
]

export const FACING_OPTIONS: readonly { readonly value: Facing; readonly label: string }[] = [
  { value: 'outward', label: 'outward' },
  { value: 'inward', label: 'inward' },
  { value: 'along', label: 'along the line' },
  { value: 'up', label: 'up, all alike' },
]

export const CORNER_OPTIONS: readonly { readonly value: Corner; readonly label: string }[] = [
  { value: 'top-left', label: 'top left' },
  { value: 'top-right', label: 'top right' },
  { value: 'bottom-right', label: 'bottom right' },
  { value: 'bottom-left', label: 'bottom left' },
]
