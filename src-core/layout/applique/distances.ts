/** How far the items of an appliqué keep from each other and from the panel's edge. */
import Flatbush from 'flatbush'
import type { Finding } from '../../../shared-types/finding'
import type { Clearances, Overlap } from '../../../shared-types/plan'
import type { UnitSystem } from '../../../shared-types/project'
import { finding } from '../../findings/finding'
import { boxDistance } from '../../geometry/edges'
import { sharedArea } from '../../geometry/polygons'
import { formatFineLength, formatNumber } from '../../units/format'
import type { Millimetres } from '../../units/quantity'
import { APPLIQUE } from './constants'
import type { LaidItem } from './items'
import { stackItems } from './items'
import type { Panel } from './panel'
import { distanceOf, distanceWithin } from './remembered'

interface ItemDistances {
  readonly clearances: Clearances
  readonly overlaps: readonly Overlap[]
  readonly findings: readonly Finding[]
}

interface Pair {
  readonly first: LaidItem
  readonly second: LaidItem
  readonly distance: Millimetres
  /** mm² that both cover. */
  readonly area: number
}

/** Everything that is to be said about distances. `least`: what items are asked to keep from each other. */
export function measureDistances(
  laid: readonly LaidItem[],
  panel: Panel,
  least: Millimetres,
  allowed: boolean,
  units: UnitSystem,
): ItemDistances {
  const near = nearPairs(laid, least)
  const rank = new Map(stackItems(laid).map((item, i) => [item, i]))
  const overlaps = near.pairs
    .filter(({ area }) => area > 0)
    .map(({ first, second, area }) => {
      const [below, above] = rank.get(first)! < rank.get(second)! ? [first, second] : [second, first]
      return { below: below.id, above: above.id, area }
    })
  const edge = edgeDistances(laid, panel, units)
  return {
    clearances: { items: near.smallest, edge: edge.smallest },
    overlaps,
    findings: [...edge.findings, ...pairFindings(near, least, allowed, units)],
  }
}

interface NearPairs {
  readonly pairs: readonly Pair[]
  readonly smallest: Millimetres | null
  readonly heaped: boolean
}

/** Pairs that overlap or are nearer than `least`, and the smallest distance of all. */
function nearPairs(laid: readonly LaidItem[], least: Millimetres): NearPairs {
  if (laid.length < 2) return { pairs: [], smallest: null, heaped: false }
  const tree = new Flatbush(laid.length, 8)
  for (const { edges } of laid) tree.add(edges.box.left, edges.box.top, edges.box.right, edges.box.bottom)
  tree.finish()
  const pairs: Pair[] = []
  let smallest = firstDistance(laid)
  for (let i = 0; i < laid.length; i++) {
    const first = laid[i]!
    const { box } = first.edges
    const reach = Math.max(least, smallest)
    const others = tree.search(box.left - reach, box.top - reach, box.right + reach, box.bottom + reach)
    for (const k of others.filter((other) => other > i).sort((a, b) => a - b)) {
      const second = laid[k]!
      const distance = distanceOf(first.edges, second.edges, Math.max(least, smallest, APPLIQUE.judged))
      smallest = Math.min(smallest, distance)
      const shared = distance === 0 ? sharedArea([first.edges.outline], [second.edges.outline]) : 0
      const area = shared > APPLIQUE.touching ? shared : 0
      if (area === 0 && distance >= least - APPLIQUE.judged) continue
      if (pairs.length === APPLIQUE.mostPairs) return { pairs, smallest, heaped: true }
      pairs.push({ first, second, distance, area })
    }
  }
  return { pairs, smallest, heaped: false }
}

/** The distance of one pair whose boxes lie near each other: a bound to begin with. */
function firstDistance(laid: readonly LaidItem[]): Millimetres {
  const first = laid[0]!
  const near = laid
    .slice(1)
    .reduce((best, item) =>
      boxDistance(item.edges.box, first.edges.box) < boxDistance(best.edges.box, first.edges.box)
        ? item
        : best,
    )
  return distanceOf(first.edges, near.edges, Infinity)
}

function pairFindings(
  { pairs, heaped }: NearPairs,
  least: Millimetres,
  allowed: boolean,
  units: UnitSystem,
): Finding[] {
  const bad = pairs.filter(({ area }) => !(allowed && area > 0)).sort((a, b) => a.distance - b.distance)
  const findings = bad.slice(0, APPLIQUE.toldPairs).map(({ first, second, distance, area }) => {
    const target = { cells: [first.id, second.id] }
    const where = `items ${first.number} and ${second.number}`
    const names = { first: `item ${first.name}`, second: `item ${second.name}` }
    if (area > 0) return finding('applique/overlap', where, names, target)
    const values = {
      ...names,
      distance: formatFineLength(distance, units),
      least: formatFineLength(least, units),
    }
    return finding('applique/too-close', where, values, target)
  })
  const rest = bad.length - findings.length
  if (rest > 0) findings.push(finding('applique/more-pairs', 'layout.items', { count: formatNumber(rest) }))
  if (heaped)
    findings.push(finding('applique/heap', 'layout.items', { most: formatNumber(APPLIQUE.mostPairs) }))
  return findings
}

function edgeDistances(
  laid: readonly LaidItem[],
  panel: Panel,
  units: UnitSystem,
): { smallest: Millimetres | null; findings: Finding[] } {
  const findings: Finding[] = []
  let smallest: Millimetres | null = null
  for (const item of laid) {
    const kept = distanceWithin(item.edges, panel.edges)
    smallest = smallest === null ? kept : Math.min(smallest, kept)
    const where = `item ${item.number}`
    const named = { item: `item ${item.name}` }
    const target = { cells: [item.id] }
    if (kept < -APPLIQUE.judged)
      findings.push(
        finding('applique/outside', where, { ...named, by: formatFineLength(-kept, units) }, target),
      )
    else if (kept < panel.allowance - APPLIQUE.judged) {
      const values = {
        ...named,
        by: formatFineLength(panel.allowance - kept, units),
        allowance: formatFineLength(panel.allowance, units),
      }
      findings.push(finding('applique/in-allowance', where, values, target))
    }
  }
  return { smallest, findings }
}
