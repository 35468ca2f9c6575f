/** Edits of an appliqué: its panel and what lies on it. Lengths in mm, turns in degrees clockwise. */
import type { Overlap, Point } from '../../../shared-types/plan'
import type { AppliqueLayout, Colourway, PanelShape, Project } from '../../../shared-types/project'
import { groundOf, itemId, itemIndex } from '../../../src-core/composing/ground'
import { roomFor } from '../../../src-core/composing/room'
import { turnPoint } from '../../../src-core/geometry/points'
import { align, distribute } from '../../../src-core/layout/arrangers/align'
import type { Alignment, Axis, Move } from '../../../src-core/layout/arrangers/align'
import { roundTurn } from '../../../src-core/layout/arrangers/arranged'
import { mirroredPair } from '../../../src-core/layout/arrangers/mirror'
import type { MirrorAxis } from '../../../src-core/layout/arrangers/mirror'
import { appliqueOf } from '../../../src-core/plans/layouts'
import { radians } from '../../../src-core/units/quantity'

export { appliqueOf }

type AppliqueItem = NonNullable<AppliqueLayout['items']>[number]

/** Puts fields over those of the appliqué. */
export function patchApplique(project: Project, patch: Partial<AppliqueLayout>): Project {
  const applique = appliqueOf(project)
  return applique ? { ...project, layout: { ...applique, ...patch } } : project
}

/** Puts fields over those of its panel. */
export const patchPanel = (project: Project, patch: NonNullable<AppliqueLayout['panel']>): Project =>
  patchApplique(project, { panel: { ...appliqueOf(project)?.panel, ...patch } })

/** mm. What a shape is no larger than and no smaller, when it takes over from another one. */
const FIRST_SIZE = 300

/** Another shape of the panel, about as large as the one before; drawn outlines begin as its corners. */
export function setPanelShape(project: Project, shape: PanelShape): Project {
  const panel = appliqueOf(project)?.panel
  if (panel?.shape === shape) return project
  const before = groundOf(project)?.panel
  const width = placed(before?.width ?? panel?.width ?? FIRST_SIZE)
  const height = placed(before?.height ?? panel?.height ?? FIRST_SIZE)
  switch (shape) {
    case 'circle':
      return patchPanel(project, { shape, diameter: Math.min(width, height) })
    case 'outline':
      return panel?.path !== undefined || panel?.points !== undefined
        ? patchPanel(project, { shape })
        : setCorners(
            project,
            before && before.outline.length <= FEW_CORNERS ? before.outline : boxCorners(width, height),
          )
    default:
      return patchPanel(project, { shape, width, height })
  }
}

/** More corners than anybody types; a round panel is then taken by its box. */
const FEW_CORNERS = 12

const boxCorners = (width: number, height: number): Point[] => [
  { x: 0, y: 0 },
  { x: width, y: 0 },
  { x: width, y: height },
  { x: 0, y: height },
]

/** A panel of typed corners. */
export function setCorners(project: Project, corners: readonly Point[]): Project {
  const { path: _, ...panel } = appliqueOf(project)?.panel ?? {}
  const points = corners.map(({ x, y }) => [placed(x), placed(y)])
  return patchApplique(project, { panel: { ...panel, shape: 'outline', points } })
}

/** A panel that follows path data in mm. */
export function setPanelPath(project: Project, path: string): Project {
  const { points: _, ...panel } = appliqueOf(project)?.panel ?? {}
  return patchApplique(project, { panel: { ...panel, shape: 'outline', path } })
}

/** The items of a project in the order of the list; an empty list for anything but an appliqué. */
export const itemsOf = (project: Project): readonly AppliqueItem[] => appliqueOf(project)?.items ?? []

/** The item with an id of the plan. */
export const findItem = (project: Project, id: string | null): AppliqueItem | undefined =>
  id === null ? undefined : itemsOf(project)[itemIndex(id)]

/** Ids of the items that `after` has at the end of its list and `before` has not. */
export const addedIds = (before: Project, after: Project): string[] =>
  itemsOf(after).flatMap((_, index) => (index < itemsOf(before).length ? [] : [itemId(index)]))

/** Places are kept to a thousandth of a millimetre: dust of sums does not belong into a file. */
const placed = (mm: number): number => Math.round(mm * 1000) / 1000

function withItems(project: Project, items: readonly AppliqueItem[]): Project {
  return patchApplique(project, { items: [...items] })
}

/** Replaces the items with these ids by what `edit` makes of them; the same project where nothing changes. */
function updateItems(
  project: Project,
  ids: Iterable<string>,
  edit: (item: AppliqueItem, index: number) => AppliqueItem,
): Project {
  const chosen = new Set([...ids].map(itemIndex))
  let isChanged = false
  const items = itemsOf(project).map((item, index) => {
    if (!chosen.has(index)) return item
    const next = edit(item, index)
    isChanged ||= next !== item
    return next
  })
  return isChanged ? withItems(project, items) : project
}

const moved = (item: AppliqueItem, { dx, dy }: Move): AppliqueItem =>
  dx === 0 && dy === 0 ? item : { ...item, x: placed((item.x ?? 0) + dx), y: placed((item.y ?? 0) + dy) }

/** Moves items by so many mm. */
export const moveItems = (project: Project, ids: Iterable<string>, by: Move): Project =>
  updateItems(project, ids, (item) => moved(item, by))

/** Turns items: one about its centre, several as a group about the middle of their centres. */
export function turnItems(project: Project, ids: Iterable<string>, degrees: number): Project {
  if (degrees % 360 === 0) return project
  const chosen = [...ids]
  const items = chosen.flatMap((id): AppliqueItem[] => {
    const item = findItem(project, id)
    return item ? [item] : []
  })
  const { x, y } = middleOfCentres(items)
  const isGroup = items.length > 1
  return updateItems(project, chosen, (item) => {
    const turn = roundTurn((item.turn ?? 0) + degrees)
    if (!isGroup) return { ...item, turn }
    const at = turnPoint({ x: (item.x ?? 0) - x, y: (item.y ?? 0) - y }, radians(degrees))
    return { ...item, x: placed(x + at.x), y: placed(y + at.y), turn }
  })
}

function middleOfCentres(items: readonly AppliqueItem[]): Point {
  const xs = items.map(({ x }) => x ?? 0)
  const ys = items.map(({ y }) => y ?? 0)
  const middle = (values: readonly number[]) => (Math.min(...values) + Math.max(...values)) / 2
  return items.length > 0 ? { x: middle(xs), y: middle(ys) } : { x: 0, y: 0 }
}

/** Lays items wrong side up where they lie, or right side up where all of them were wrong side up. */
export function flipItems(project: Project, ids: Iterable<string>): Project {
  const chosen = [...ids]
  const flipped = !chosen.every((id) => findItem(project, id)?.flipped === true)
  return setItem(project, chosen, { flipped })
}

/** Takes items away; those after them in the list move up and get other ids. */
export function removeItems(project: Project, ids: Iterable<string>): Project {
  const gone = new Set([...ids].map(itemIndex))
  const items = itemsOf(project).filter((_, index) => !gone.has(index))
  return items.length === itemsOf(project).length ? project : withItems(project, items)
}

/** mm right and down that a copy is laid beside its original. */
const BESIDE = 12

/** Copies of items at the end of the list, a finger's width beside them. */
export function duplicateItems(
  project: Project,
  ids: Iterable<string>,
  by: Move = { dx: BESIDE, dy: BESIDE },
): Project {
  const copies = inOrder(ids).flatMap((id) => {
    const item = findItem(project, id)
    return item ? [moved({ ...item }, by)] : []
  })
  return copies.length > 0 ? withItems(project, [...itemsOf(project), ...copies]) : project
}

const inOrder = (ids: Iterable<string>): string[] => [...ids].sort((a, b) => itemIndex(a) - itemIndex(b))

/** Indices from the lowest item to the topmost. */
const stackOf = (items: readonly AppliqueItem[]): number[] =>
  items.map((_, i) => i).sort((a, b) => (items[a]!.layer ?? 0) - (items[b]!.layer ?? 0) || a - b)

/** Gives layers, as few as there can be, so that items lie in this order. */
function restacked(project: Project, order: readonly number[]): Project {
  const items = itemsOf(project)
  const layers: number[] = []
  let layer = 0
  order.forEach((index, k) => {
    if (k > 0 && index < order[k - 1]!) layer++
    layers[index] = layer
  })
  if (stackOf(items).every((index, k) => index === order[k])) return project
  return withItems(
    project,
    items.map((item, index) => {
      const { layer: before = 0, ...rest } = item
      const next = layers[index]!
      return before === next ? item : next === 0 ? rest : { ...item, layer: next }
    }),
  )
}

/** How far up or down: past the next item, or past all. */
type Reach = 'one' | 'all'

/**
 * Raises items, keeping their order among themselves. With `overlaps` (those of the plan) "one" is past the next
 * item that an item overlaps, so that something is to be seen of it; where it overlaps none, past the next one.
 */
export const raiseItems = (
  project: Project,
  ids: Iterable<string>,
  reach: Reach = 'one',
  overlaps: readonly Overlap[] = [],
): Project => restacked(project, shifted(stackOf(itemsOf(project)), ids, reach, overlaps))

/** Lowers items; the rest as in `raiseItems`. */
export const lowerItems = (
  project: Project,
  ids: Iterable<string>,
  reach: Reach = 'one',
  overlaps: readonly Overlap[] = [],
): Project => restacked(project, shifted(stackOf(itemsOf(project)).reverse(), ids, reach, overlaps).reverse())

/** The order with the chosen ones moved towards its end. */
function shifted(
  order: readonly number[],
  ids: Iterable<string>,
  reach: Reach,
  overlaps: readonly Overlap[],
): number[] {
  const chosen = new Set([...ids].map(itemIndex).filter((index) => order.includes(index)))
  if (reach === 'all') return [...order.filter((i) => !chosen.has(i)), ...order.filter((i) => chosen.has(i))]
  const meets = (a: number, b: number): boolean =>
    overlaps.some(
      ({ below, above }) =>
        (below === itemId(a) && above === itemId(b)) || (below === itemId(b) && above === itemId(a)),
    )
  const next = [...order]
  // From the far end, so that neighbours that are both chosen do not pass each other.
  for (const index of [...order].reverse().filter((i) => chosen.has(i))) {
    const from = next.indexOf(index)
    const ahead = next.slice(from + 1)
    const free = ahead.findIndex((i) => !chosen.has(i))
    if (free < 0) continue
    const met = ahead.findIndex((i) => !chosen.has(i) && meets(index, i))
    const to = from + 1 + (met < 0 ? free : met)
    next.splice(from, 1)
    next.splice(to, 0, index)
  }
  return next
}

/** Puts fields over those of items. A motif of another name takes a colourway of its own with it. */
export function setItem(project: Project, ids: Iterable<string>, patch: Partial<AppliqueItem>): Project {
  return updateItems(project, ids, (item) => {
    const next: AppliqueItem = { ...item, ...patch }
    if (patch.turn !== undefined) next.turn = roundTurn(patch.turn)
    if (patch.x !== undefined) next.x = placed(patch.x)
    if (patch.y !== undefined) next.y = placed(patch.y)
    if (next.flipped === false) delete next.flipped
    if (patch.motif === undefined || patch.motif === item.motif || patch.colourway !== undefined) return next
    const way = wayFor(project, patch.motif, item.colourway)
    if (way) next.colourway = way.id
    else delete next.colourway
    return next
  })
}

/** Colourways that a motif may have: its own, and those that are for any. */
export const waysFor = (project: Project, motif: string | undefined): Colourway[] =>
  (project.colourways ?? []).filter((way) => way.motif === undefined || way.motif === motif)

/** The colourway of a motif with the same yarns as `like` as far as it has their colours; else its first. */
function wayFor(project: Project, motif: string, like: string | undefined): Colourway | undefined {
  const ways = waysFor(project, motif)
  const yarns = project.colourways?.find((way) => way.id === like)?.yarns ?? {}
  const shared = (way: Colourway) =>
    Object.entries(way.yarns ?? {}).filter(([slot, yarn]) => yarns[slot] === yarn).length
  return ways.reduce<Colourway | undefined>(
    (best, way) => (best && shared(best) >= shared(way) ? best : way),
    undefined,
  )
}

/** Lays one more item where there is room, nearest the middle; in the middle where there is none. */
export function addItem(project: Project, motif: string, colourway?: string): Project {
  const ground = groundOf(project)
  if (!ground) return project
  const account = ground.accounts.get(motif)
  const at = (account && roomFor(ground, account.outline)) ?? { x: 0, y: 0 }
  const way = colourway ?? wayFor(project, motif, undefined)?.id
  const item = { motif, ...(way && { colourway: way }), x: placed(at.x), y: placed(at.y), turn: 0 }
  return withItems(project, [...itemsOf(project), item])
}

/** Moves the chosen items, whose boxes are those of their outlines. */
function moveByBoxes(
  project: Project,
  ids: Iterable<string>,
  movesOf: (boxes: Parameters<typeof align>[0]) => readonly Move[],
): Project {
  const chosen = new Set(ids)
  const laid = (groundOf(project)?.laid ?? []).filter(({ id }) => chosen.has(id))
  const moves = movesOf(laid.map(({ edges }) => edges.box))
  const byId = new Map(laid.map(({ id }, i) => [id, moves[i]!]))
  return updateItems(project, byId.keys(), (item, index) => moved(item, byId.get(itemId(index))!))
}

/** Brings items to one side, or to the middle, of the box round them all. */
export const alignItems = (project: Project, ids: Iterable<string>, to: Alignment): Project =>
  moveByBoxes(project, ids, (boxes) => align(boxes, to))

/** Makes the gaps between items equal; the outermost stay where they are. */
export const distributeItems = (project: Project, ids: Iterable<string>, axis: Axis): Project =>
  moveByBoxes(project, ids, (boxes) => distribute(boxes, axis))

/** Adds the mirror images of items on the other side of a line; wrong side up where `flip` says so. */
export function mirrorItems(
  project: Project,
  ids: Iterable<string>,
  axis: MirrorAxis,
  flip = false,
): Project {
  const images = inOrder(ids).flatMap((id) => {
    const item = findItem(project, id)
    if (!item) return []
    const { x = 0, y = 0, turn = 0 } = item
    const image = mirroredPair({ ...item, x, y, turn }, axis, flip)[1]
    const { flipped, ...rest } = { ...image, x: placed(image.x), y: placed(image.y) }
    return [flipped ? { ...rest, flipped } : rest]
  })
  return images.length > 0 ? withItems(project, [...itemsOf(project), ...images]) : project
}
