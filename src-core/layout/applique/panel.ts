/** The ground of an appliqué: its edge as a polygon, and what the seam allowance leaves of it. */
import type { Finding } from '../../../shared-types/finding'
import type { PanelAccount, Point } from '../../../shared-types/plan'
import type { AppliqueLayout, UnitSystem } from '../../../shared-types/project'
import { PANEL } from '../../fields/applique'
import { isWithin } from '../../fields/field'
import { finding, findingOf } from '../../findings/finding'
import { boundValues, lengthValue, mostValue } from '../../findings/quantities'
import { indexEdges, selfCrossing } from '../../geometry/edges'
import type { Edges } from '../../geometry/edges'
import { boxOf, distance, moveOutline, signedArea } from '../../geometry/points'
import type { Outline } from '../../geometry/points'
import { clockwise, grow } from '../../geometry/polygons'
import { FLATNESS, MOST_COORDINATE, MOST_PATH_POINTS, readPath, tidy } from '../../geometry/svg-path'
import { formatLength, formatNumber } from '../../units/format'
import type { Millimetres } from '../../units/quantity'
import { APPLIQUE } from './constants'
import { pathRefusal, refusal } from './drawing-words'
import type { Refusal } from './drawing-words'
import { DEFAULTS } from '../../settled'
import { remembered } from '../../memo'

export interface Panel extends PanelAccount {
  readonly width: Millimetres
  readonly height: Millimetres
  /** The edge with an index for distances. */
  readonly edges: Edges
}

type PanelFields = NonNullable<AppliqueLayout['panel']>

interface ReadPanel {
  readonly panel: Panel | null
  readonly findings: readonly Finding[]
}

/**
 * Reads the panel; null with findings where there is none to lay anything on. It is remembered as long as its fields
 * are the same object: a drag of what lies on it leaves it alone.
 */
export const readPanel = (fields: PanelFields | undefined, units: UnitSystem): ReadPanel =>
  fields ? remember(fields, units) : readFields(fields, units)

const remember = remembered((fields: PanelFields, units: UnitSystem): ReadPanel => readFields(fields, units))

function readFields(fields: PanelFields | undefined, units: UnitSystem): ReadPanel {
  const findings: Finding[] = []
  const shape = fields?.shape ?? DEFAULTS.panel.shape
  const drawn = outlineOf(shape, fields ?? {}, units, findings)
  if (!drawn) return { panel: null, findings }
  const box = boxOf(drawn)
  const outline = moveOutline(clockwise(drawn), -box.left, -box.top)
  const width = box.right - box.left
  const height = box.bottom - box.top
  const asked = fields?.allowance ?? DEFAULTS.panel.allowance
  const usable = isWithin(asked, PANEL.allowance)
  if (!usable) {
    const values = { received: lengthValue(asked), most: mostValue(PANEL.allowance.most) }
    findings.push(finding('applique/allowance', 'layout.panel.allowance', values))
  }
  const allowance = usable ? asked : 0
  const inner = allowance === 0 ? [outline] : grow([outline], -allowance, APPLIQUE.roundness)
  if (inner.length === 0) {
    const values = { allowance: lengthValue(allowance) }
    findings.push(finding('applique/allowance-takes-all', 'layout.panel.allowance', values))
  }
  return { panel: { shape, outline, allowance, inner, width, height, edges: indexEdges(outline) }, findings }
}

function outlineOf(
  shape: PanelAccount['shape'],
  fields: PanelFields,
  units: UnitSystem,
  findings: Finding[],
): Outline | null {
  const measure = (key: 'width' | 'height' | 'diameter'): Millimetres | null => {
    const value = fields[key]
    if (value !== undefined && isWithin(value, PANEL[key])) return value
    const received = value === undefined ? 'nothing' : lengthValue(value)
    findings.push(
      finding('applique/panel-size', `layout.panel.${key}`, {
        what: key,
        received,
        ...boundValues(PANEL[key]),
      }),
    )
    return null
  }
  if (shape === 'outline') return drawnOutline(fields, units, findings)
  if (shape === 'circle') {
    const diameter = measure('diameter')
    return diameter === null ? null : ellipseOutline(diameter, diameter)
  }
  const width = measure('width')
  const height = measure('height')
  if (width === null || height === null) return null
  if (shape === 'ellipse') return ellipseOutline(width, height)
  return [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ]
}

/** An ellipse as a polygon from 12 o'clock, with corners at all four ends of its axes. */
export function ellipseOutline(width: Millimetres, height: Millimetres): Outline {
  const [rx, ry] = [width / 2, height / 2]
  const quarter = Math.ceil(Math.PI / 4 / Math.acos(1 - APPLIQUE.roundness / Math.max(rx, ry)))
  return Array.from({ length: 4 * quarter }, (_, i) => {
    const angle = (Math.PI * i) / (2 * quarter)
    // Sines of whole quarters are exact, so that the size is.
    const [sin, cos] = i % quarter === 0 ? QUARTERS[i / quarter]! : [Math.sin(angle), Math.cos(angle)]
    return { x: rx + rx * sin, y: ry - ry * cos }
  })
}

const QUARTERS: readonly (readonly [number, number])[] = [
  [0, 1],
  [1, 0],
  [0, -1],
  [-1, 0],
]

/** The outline of path data or typed points; null with a finding where it is no panel. */
function drawnOutline(fields: PanelFields, units: UnitSystem, findings: Finding[]): Outline | null {
  const where = fields.path === undefined ? 'layout.panel.points' : 'layout.panel.path'
  const refuse = (refused: Refusal): null => {
    findings.push(findingOf(refused, where))
    return null
  }
  const read = fields.path !== undefined ? pathPoints(fields.path) : typedPoints(fields.points)
  if ('code' in read) return refuse(read)
  const { points, closed } = read
  const box = boxOf(points)
  const isFlat = points.length < 3 || box.right - box.left < 1 || box.bottom - box.top < 1
  // A figure of eight has no area either, but it is its crossing that is wrong.
  const crossing = isFlat ? null : selfCrossing(indexEdges(points))
  if (isFlat || (!crossing && Math.abs(signedArea(points)) < 1))
    return refuse(refusal('applique/path-flat', { points: points.length }))
  if (crossing)
    return refuse(
      refusal('applique/path-crosses', {
        x: lengthValue(crossing.x),
        y: lengthValue(crossing.y),
      }),
    )
  for (const [what, size] of [
    ['width', box.right - box.left],
    ['height', box.bottom - box.top],
  ] as const)
    if (!isWithin(size, PANEL.width))
      return refuse(
        refusal('applique/panel-size', {
          what,
          received: lengthValue(size),
          ...boundValues(PANEL.width),
        }),
      )
  const gap = distance(points[0]!, points.at(-1)!)
  if (!closed && gap > FLATNESS)
    findings.push(finding('applique/path-open', where, { gap: formatLength(gap, units) }))
  return points
}

type Drawn = { readonly points: readonly Point[]; readonly closed: boolean } | Refusal

function pathPoints(text: string): Drawn {
  const read = readPath(text)
  if ('trouble' in read) return pathRefusal(read.trouble)
  // A move without a line after it draws nothing.
  const pieces = read.subPaths.filter(({ points }) => points.length > 1)
  if (pieces.length === 0) return refusal('applique/path-flat', { points: read.subPaths.length })
  if (pieces.length > 1) return refusal('applique/path-pieces', { pieces: pieces.length })
  return pieces[0]!
}

function typedPoints(list: PanelFields['points']): Drawn {
  if (!list || list.length === 0) return refusal('applique/path-missing', {})
  if (list.length > MOST_PATH_POINTS)
    return refusal('applique/path-too-many-points', { most: formatNumber(MOST_PATH_POINTS) })
  const usable = list.every(
    (point) => point.length === 2 && point.every((value) => Math.abs(value) <= MOST_COORDINATE),
  )
  if (!usable) return refusal('applique/path-number', { most: mostValue(MOST_COORDINATE) })
  return { points: tidy(list.map(([x, y]) => ({ x: x!, y: y! }))), closed: true }
}
