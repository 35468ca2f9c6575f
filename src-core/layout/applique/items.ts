/** The items of an appliqué as they lie on the panel. */
import { plural } from '../../units/language'
import type { Finding } from '../../../shared-types/finding'
import type { MotifAccount, PlacedMotif } from '../../../shared-types/plan'
import type { AppliqueLayout, Motif } from '../../../shared-types/project'
import type { Settled } from '../../../shared-types/settled'
import { accountOf } from '../../accounts'
import { ITEM, MOST_APPLIQUE_ITEMS } from '../../fields/applique'
import { isWithin } from '../../fields/field'
import { finding } from '../../findings/finding'
import { lengthValue } from '../../findings/quantities'
import { indexEdges } from '../../geometry/edges'
import type { Edges } from '../../geometry/edges'
import { placeOutline } from '../../geometry/place'
import { formatNumber } from '../../units/format'
import type { Degrees, Millimetres } from '../../units/quantity'
import { DEFAULTS } from '../../settled'
import { remembered } from '../../memo'

export type AppliqueItem = NonNullable<AppliqueLayout['items']>[number]

export interface LaidItem {
  /** "1,n" for the n-th in the list. */
  readonly id: string
  /** Place in the list, from 1. */
  readonly number: number
  /** "3 (Daisy)". */
  readonly name: string
  readonly motif: Motif
  readonly account: MotifAccount
  readonly colourway: string
  readonly x: Millimetres
  readonly y: Millimetres
  readonly turn: Degrees
  readonly flipped: boolean
  readonly layer: number
  /** The outline where it lies, with an index for distances. */
  readonly edges: Edges
}

export interface KnownMotif {
  readonly motif: Motif
  readonly account: MotifAccount
}

/** An item where it lies, remembered as long as it and its motif stay the same objects: a drag moves one of many. */
const laidItem = remembered(
  (item: AppliqueItem, index: number, motif: Motif, account: MotifAccount): LaidItem => {
    const { x = NaN, y = NaN } = item
    // Whole turns change nothing, and sines of numbers beyond all measure mean nothing.
    const turn = (item.turn ?? DEFAULTS.item.turn) % 360
    const flipped = item.flipped === true
    return {
      id: itemId(index),
      number: index + 1,
      name: `${index + 1} (${account.name})`,
      motif,
      account,
      colourway: item.colourway ?? '',
      x,
      y,
      turn,
      flipped,
      layer: item.layer ?? DEFAULTS.item.layer,
      edges: indexEdges(placeOutline(account.outline, { x, y, turn, flipped })),
    }
  },
)

const itemId = (index: number): string => `1,${index + 1}`

/** Lays every item that can be laid; numbers stay those of the list. */
export function layItems(
  project: Settled,
  items: readonly AppliqueItem[],
  motifs: ReadonlyMap<string, KnownMotif>,
): { laid: LaidItem[]; findings: Finding[] } {
  const findings: Finding[] = []
  if (items.length > MOST_APPLIQUE_ITEMS) {
    const values = { received: formatNumber(items.length), most: formatNumber(MOST_APPLIQUE_ITEMS) }
    return { laid: [], findings: [finding('applique/too-many', 'layout.items', values)] }
  }
  if (items.length === 0) findings.push(finding('applique/no-items', 'layout.items'))
  const ways = new Map(project.colourways.map((way) => [way.id, way]))
  const laid: LaidItem[] = []
  items.forEach((item, index) => {
    const where = () => `layout.items[${index}]`
    const target = () => ({ cells: [itemId(index)] })
    if (!item.motif) findings.push(finding('applique/no-motif', where(), {}, target()))
    const known = motifs.get(item.motif ?? '')
    if (!known) return
    if (!isWithin(item.x ?? NaN, ITEM.x) || !isWithin(item.y ?? NaN, ITEM.y)) {
      const told = (value: number | undefined) => (value === undefined ? 'nothing' : lengthValue(value))
      const values = { x: told(item.x), y: told(item.y) }
      findings.push(finding('applique/no-place', where(), values, target()))
      return
    }
    const way = ways.get(item.colourway ?? '')
    if (way?.motif && way.motif !== item.motif) {
      const values = { colourway: way.code || way.name || way.id }
      findings.push(finding('applique/other-motif', `${where()}.colourway`, values, target()))
    }
    laid.push(laidItem(item, index, known.motif, known.account))
  })
  return { laid, findings }
}

/** From the lowest to the topmost: by layer, then in the order of the list. */
export const stackItems = (laid: readonly LaidItem[]): LaidItem[] =>
  [...laid].sort((a, b) => a.layer - b.layer || a.number - b.number)

/** The motifs that items name, each with its account; one without an outline is left out with findings. */
export function knownMotifs(
  project: Settled,
  layout: AppliqueLayout,
  findings: Finding[],
): Map<string, KnownMotif> {
  const named = new Set(layout.items?.map((item) => item.motif))
  const known = new Map<string, KnownMotif>()
  for (const motif of project.motifs) {
    if (!named.has(motif.id) || known.has(motif.id)) continue
    const told = accountOf(project, motif)
    findings.push(...told.findings)
    if (told.account) known.set(motif.id, { motif, account: told.account })
  }
  return known
}

/** An item as the map shows it. */
export const placedMotif = (item: LaidItem): PlacedMotif => ({
  id: item.id,
  label: String(item.number),
  row: 1,
  column: item.number,
  x: item.x,
  y: item.y,
  turn: item.turn,
  colourway: item.colourway,
  motif: item.motif.id,
  flipped: item.flipped,
})

/** A note on items that lie with their wrong side up. */
export function flippedNote(laid: readonly LaidItem[]): Finding[] {
  const flipped = laid.filter((item) => item.flipped)
  if (flipped.length === 0) return []
  const items = `${plural(flipped.length, 'item')} ${flipped.map((item) => item.name).join(', ')}`
  const target = { cells: flipped.map(({ id }) => id) }
  return [finding('applique/wrong-side', 'layout.items', { items }, target)]
}
