/**
 * M50, M51: a garland. Things in a sequence that repeats along a cord, the cord in chains, hung straight or in
 * swags, fastened by two petals; and the yarn, ends and time of one garland.
 */
import type { Finding } from '../../shared-types/finding'
import type { GarlandAccount, GarlandPlan } from '../../shared-types/plan'
import type { Settled, SettledGarland } from '../../shared-types/settled'
import { namedByItems } from '../checks/references'
import { tally } from '../layout/additions'
import { GARLAND } from '../fields/garland'
import { bySeverity } from '../findings/finding'
import { chainOf, cordAccount, cordGauge, cordWork } from '../layout/garland/cord'
import { itemsOf, motifsOf, piecesOf } from '../layout/garland/items'
import { collisions, hangUp } from '../layout/garland/place'
import { garlandPutIn } from '../layout/garland/put-in'
import { GarlandReader, readHanging, readWay } from '../layout/garland/read'
import { remarks } from '../layout/garland/remarks'
import { readSequence } from '../layout/garland/sequence'
import { readSpacing } from '../layout/garland/spacing'
import { goingWith } from '../materials/beside'
import type { MaterialsInput } from '../materials/input'
import { materials } from '../materials/materials'
import { garlandWork } from '../progress/item-work'
import { isBegun, notBegun, tellProgress } from '../progress/progress'
import { resolveGauge } from '../stitches/gauge'
import { EMPTY } from './empty'
import type { KindPlanner } from './kind'

export const GARLAND_PLANNER: KindPlanner<SettledGarland> = {
  plan: planGarland,
  putIn:
    (project, layout, { garland }) =>
    (extras) =>
      garland ? garlandPutIn(garland, layout, extras, project.units) : [],
  placedMotifs: ({ items }) => items.map(({ motif }) => motif),
  names: ({ cord, items }) => [['yarn', cord.yarn, 'layout.cord.yarn'], ...namedByItems(items)],
}

/** The plan of a garland; it shows what can be shown, also when there are errors. */
function planGarland(project: Settled, layout: SettledGarland): GarlandPlan {
  const units = project.units
  const reader = new GarlandReader()
  const findings: Finding[] = []
  const way = readWay(layout, reader)
  const gauge = resolveGauge(cordGauge(project, layout), project.terms)
  const { chain, findings: chainFindings } = chainOf(layout, gauge, project)
  const sequence = readSequence(project, layout, way, chain.length, reader)
  const hung = readHanging(layout, reader, units)
  const ties = reader.within(layout.cord.ties, GARLAND.ties) ?? 0
  const spaced = hung && readSpacing(layout, sequence.things, hung, reader, units)
  findings.push(...sequence.findings, ...chainFindings, ...reader.findings)
  const accounts = [
    ...new Map(sequence.things.flatMap((t) => (t.account ? [[t.account.id, t.account]] : []))),
  ]
  const known = accounts.map(([, account]) => account)
  if (!hung || !spaced || sequence.things.length === 0)
    return { ...EMPTY, kind: 'garland', accounts: known, findings: bySeverity(findings) }

  const things = spaced.bits.map(({ bit }) => sequence.things[bit]!)
  const up = hangUp(
    spaced.bits.map(({ along }, i) => ({ hanging: things[i]!.hanging, along })),
    hung.swags,
    spaced.length,
    way.along,
  )
  const cord = cordAccount(layout, chain, spaced.length, ties)
  const items = itemsOf(project, layout, things, spaced, up, chain)
  const taken = items.reduce((sum, item, i) => sum + (item.chains ?? 0) + things[i]!.hanging.chains, 0)
  const garland: GarlandAccount = {
    cord,
    items,
    chainsAfter: cord.chains === null ? null : Math.max(0, cord.chains - taken),
    swags: hung.swags && {
      count: hung.swags.count,
      span: hung.swags.cord.span,
      drop: hung.swags.cord.drop,
      a: Number.isFinite(hung.swags.cord.a) ? hung.swags.cord.a : null,
      length: hung.swags.cord.length,
      width: hung.swags.count * hung.swags.cord.span,
    },
    spacing: spaced.spacing,
    between: layout.spacing.between,
    line: up.line,
    hooks: up.hooks,
    collisions: collisions(up.items),
  }
  const works = cordWork(project, layout, garland, things, chain, gauge)
  const pieces = piecesOf(things)
  const input: MaterialsInput = {
    basis: project,
    // Joins between motifs are a blanket's; here everything is joined to the cord.
    joining: { rule: 'tips', minutes: project.joining?.minutes },
    motif: pieces[0]?.motif ?? null,
    account: pieces[0]?.account ?? null,
    gauge,
    counts: pieces[0]?.counts ?? { motifs: 0, byColourway: {} },
    others: pieces.slice(1),
    beside: goingWith(project),
    joinOperations: items.length,
    seams: { length: 0, count: 0 },
    edgingBase: null,
    works: works.works,
  }
  const needed = materials(input)
  findings.push(...works.findings, ...needed.findings)
  findings.push(...remarks(project, layout, garland, things, sequence.things.length, chain, gauge))
  const motifs = motifsOf(things, up)
  const { progress, marks, yarns, ...told } = isBegun(project)
    ? tellProgress(project, garlandWork(motifs, items, pieces, input), needed.yarns)
    : notBegun(needed, { motifs: motifs.length, joins: items.length }, 'fastened')
  findings.push(...told.findings)
  const size = { width: up.width, height: up.height }
  return {
    ...EMPTY,
    ...needed,
    ...{ progress, marks, yarns },
    kind: 'garland',
    size: { ...size, sensitivity: EMPTY.size.sensitivity, range: { low: size, high: size } },
    counts: { motifs: motifs.length, byColourway: tally(motifs.map(({ colourway }) => colourway)) },
    motifs,
    // The cord holds everything.
    pieces: 1,
    accounts: known,
    garland,
    findings: bySeverity(findings),
  }
}
