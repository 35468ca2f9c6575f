/** The panel of a project and what lies on it, as those need it who lay more on it. Lengths in mm. */
import type { MotifAccount, Point } from '../../shared-types/plan'
import type { AppliqueLayout, Project } from '../../shared-types/project'
import { measureProject } from '../accounts'
import { CLEARANCE } from '../fields/applique'
import { isWithin } from '../fields/field'
import { areaDistance, boxDistance } from '../geometry/edges'
import { boxOf, contains } from '../geometry/points'
import type { Box } from '../geometry/points'
import { layItems } from '../layout/applique/items'
import type { AppliqueItem, LaidItem } from '../layout/applique/items'
import { readPanel } from '../layout/applique/panel'
import { distanceWithin } from '../layout/applique/remembered'
import type { Panel } from '../layout/applique/panel'
import { remembered } from '../memo'
import { appliqueOf } from '../plans/layouts'
import { DEFAULTS, settled } from '../settled'
import type { Millimetres } from '../units/quantity'

export type { AppliqueItem } from '../layout/applique/items'

export interface Ground {
  readonly layout: AppliqueLayout
  readonly items: readonly AppliqueItem[]
  /** Items that have a place and an outline; `id` is that of the plan. */
  readonly laid: readonly LaidItem[]
  /** null where there is no panel to place anything on. */
  readonly panel: Panel | null
  readonly accounts: ReadonlyMap<string, MotifAccount>
  /** What items are asked to keep from each other. */
  readonly clearance: Millimetres
}

/** The ground of an appliqué, worked out once for a project; null where it is made into something else. */
export const groundOf = remembered((given: Project): Ground | null => {
  const project = settled(given)
  // As they are written: what lies there is kept as it is when more is laid.
  const layout = appliqueOf(given)
  if (!layout) return null
  const { items = [], clearance: asked = DEFAULTS.applique.clearance } = layout
  const known = new Map(project.motifs.map((motif) => [motif.id, motif]))
  const accounts = new Map(measureProject(project).motifs.map((account) => [account.id, account]))
  const motifs = new Map(
    [...accounts].flatMap(([id, account]) => {
      const motif = known.get(id)
      return motif ? [[id, { motif, account }] as const] : []
    }),
  )
  const { laid } = layItems(project, items, motifs)
  const { panel } = readPanel(layout.panel, project.units)
  const clearance = isWithin(asked, CLEARANCE) ? asked : 0
  return { layout, items, laid, panel, accounts, clearance }
})

/** Id of the n-th item of the list, from 0; the plan has the same. */
export const itemId = (index: number): string => `1,${index + 1}`

/** Index of an item in the list, or −1. */
export function itemIndex(id: string): number {
  const found = /^1,(\d+)$/.exec(id)
  return found ? Number(found[1]) - 1 : -1
}

/** How far one item keeps from what is next to it. */
interface ItemSpacing {
  /** The nearest other item; distance 0 where they touch or overlap. null for a single one. */
  readonly neighbour: { readonly item: LaidItem; readonly distance: Millimetres } | null
  /** To the edge of the panel, below zero by how far it sticks out; null without a panel. */
  readonly edge: Millimetres | null
  /** To the seam line: less than the edge by the allowance. */
  readonly seam: Millimetres | null
}

/** The distances of one item; null where it does not lie anywhere. */
export function spacingOf({ laid, panel }: Ground, id: string): ItemSpacing | null {
  const own = laid.find((item) => item.id === id)
  if (!own) return null
  let neighbour: ItemSpacing['neighbour'] = null
  const others = laid
    .filter((item) => item !== own)
    .map((item) => ({ item, far: boxDistance(item.edges.box, own.edges.box) }))
    .sort((a, b) => a.far - b.far)
  for (const { item, far } of others) {
    const best = neighbour?.distance ?? Infinity
    if (far >= best) break
    const distance = areaDistance(item.edges, own.edges, best)
    if (distance < best) neighbour = { item, distance }
  }
  const edge = panel && distanceWithin(own.edges, panel.edges)
  return { neighbour, edge, seam: edge === null ? null : edge - panel!.allowance }
}

/** The middle of what the seam allowance leaves, on the panel. */
export function middleOf({ inner, outline }: Panel): Point {
  const box: Box = inner.length > 0 ? boxOf(...inner) : boxOf(outline)
  return { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 }
}

/** Whether a point lies within the seam line. */
export const isWithinSeam = ({ inner }: Panel, point: Point): boolean =>
  inner.some((piece) => contains(piece, point))
