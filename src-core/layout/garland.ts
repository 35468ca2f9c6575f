/**
 * M50, M51: a garland. Things in a sequence that repeats along a cord, the cord in chains, hung straight or in
 * swags, fastened by two petals; and the yarn, ends and time of one garland.
 */
import type { Finding } from '../../shared-types/finding'
import type { GarlandAccount, GarlandItem, MotifAccount, PlacedMotif, Plan } from '../../shared-types/plan'
import type { GarlandLayout, Motif, Project, StitchGauge } from '../../shared-types/project'
import { bySeverity, finding } from '../findings/finding'
import { fineLengthValue } from '../findings/quantities'
import type { OtherWork, Piece } from '../materials/input'
import { materials } from '../materials/materials'
import { resolveGauge, stitchYarn } from '../stitches/gauge'
import type { ResolvedGauge } from '../stitches/gauge'
import { STITCHES } from '../stitches/table'
import { formatLength, formatNumber } from '../units/format'
import { degrees } from '../units/quantity'
import { BENDING_SHARE, GARLAND_LIMITS, MOST_ITEMS } from './garland/constants'
import { chainOf, chainYarn, cordAccount, isWorked } from './garland/cord'
import type { Chain } from './garland/cord'
import { beadWords, fasteningWords } from './garland/hanging'
import { collisions, hangUp } from './garland/place'
import type { HungGarland } from './garland/place'
import { GarlandReader, readHanging, readWay } from './garland/read'
import type { Hung } from './garland/read'
import { readSequence } from './garland/sequence'
import type { Told, Thing } from './garland/sequence'
import { spaceOut } from './garland/spacing'
import type { Spaced } from './garland/spacing'

/** What the planner lends to a layout that places several motifs. */
export interface GarlandStages {
  /** A plan of nothing. */
  readonly empty: Plan
  /** Findings on ids and references. */
  readonly references: readonly Finding[]
  readonly accountOf: (motif: Motif) => Told
}

/** The plan of a garland; it shows what can be shown, also when there are errors. */
export function planGarland(project: Project, layout: GarlandLayout, stages: GarlandStages): Plan {
  const units = project.units ?? 'metric'
  const reader = new GarlandReader(units)
  const findings: Finding[] = [...stages.references]
  const way = readWay(layout, reader)
  const gauge = gaugeOf(project, layout)
  const { chain, findings: chainFindings } = chainOf(layout, gauge, project)
  const sequence = readSequence(project, layout, way, chain.length, reader, stages.accountOf)
  const hung = readHanging(layout, reader, units)
  const ties = reader.length(layout.cord?.ties, 'cord.ties', 'a tie', GARLAND_LIMITS.ties) ?? 0
  const spaced = hung && readSpacing(layout, sequence.things, hung, reader, units)
  findings.push(...sequence.findings, ...chainFindings, ...reader.findings)
  const accounts = [
    ...new Map(sequence.things.flatMap((t) => (t.account ? [[t.account.id, t.account]] : []))),
  ]
  const known = accounts.map(([, account]) => account)
  if (!hung || !spaced || sequence.things.length === 0)
    return { ...stages.empty, accounts: known, findings: bySeverity(findings) }

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
    between: layout.spacing?.between ?? 'edges',
    line: up.line,
    hooks: up.hooks,
    collisions: collisions(up.items),
  }
  const works = cordWork(project, layout, garland, things, chain, gauge)
  const pieces = piecesOf(things)
  const needed = materials({
    // Joins between motifs are a blanket's; here everything is joined to the cord.
    project: { ...project, joining: { ...project.joining, rule: 'tips' } },
    motif: pieces[0]?.motif ?? null,
    account: pieces[0]?.account ?? null,
    gauge,
    counts: pieces[0]?.counts ?? { motifs: 0, byColourway: {} },
    others: pieces.slice(1),
    joinOperations: items.length,
    joinNodes: 0,
    seams: { length: 0, count: 0 },
    edgingBase: null,
    works: works.works,
  })
  findings.push(...works.findings, ...needed.findings)
  findings.push(...remarks(project, layout, garland, things, sequence.things.length, chain, gauge))
  const motifs = motifsOf(things, up)
  const byColourway = new Map<string, number>()
  for (const { colourway } of motifs)
    if (colourway) byColourway.set(colourway, (byColourway.get(colourway) ?? 0) + 1)
  const size = { width: up.width, height: up.height }
  return {
    ...stages.empty,
    ...needed,
    size: { ...size, sensitivity: stages.empty.size.sensitivity, range: { low: size, high: size } },
    counts: { motifs: motifs.length, byColourway: Object.fromEntries(byColourway) },
    motifs,
    // The cord holds everything.
    pieces: 1,
    accounts: known,
    cord,
    items,
    swags: garland.swags,
    garland,
    findings: bySeverity(findings),
  }
}

/** The gauge of the cord's yarn as it was given: the project's, else that of the first motif that has one. */
export function cordGauge(project: Project, layout: GarlandLayout): StitchGauge | undefined {
  const used = new Set(layout.items?.map((item) => item.motif))
  const own = project.motifs?.find((motif) => used.has(motif.id) && motif.gauge)?.gauge
  return project.gauge ?? own
}

const gaugeOf = (project: Project, layout: GarlandLayout): ResolvedGauge =>
  resolveGauge(cordGauge(project, layout), project.terms ?? 'US')

/** Places along the cord, or null with a finding. */
function readSpacing(
  layout: GarlandLayout,
  things: readonly Thing[],
  hung: Hung,
  reader: GarlandReader,
  units: 'metric' | 'imperial',
): Spaced | null {
  const between = layout.spacing?.between ?? 'edges'
  const limits = between === 'centres' ? GARLAND_LIMITS.centres : GARLAND_LIMITS.spacing
  const mm = reader.length(layout.spacing?.mm, 'spacing.mm', 'the spacing', limits)
  const count = reader.whole(
    layout.spacing?.count,
    'spacing.count',
    'what is to hang on the cord',
    GARLAND_LIMITS.items,
  )
  if (mm === null || count === null || things.length === 0) return null
  if (between === 'centres' && mm === undefined && count === undefined) {
    reader.findings.push(finding('garland/no-spacing', 'layout.spacing'))
    return null
  }
  if (hung.length === null && (mm === undefined || count === undefined)) {
    reader.findings.push(finding('garland/no-length', 'layout.cord.length'))
    return null
  }
  const spaced = spaceOut({
    bits: things.map(({ hanging, gap }) => ({ before: hanging.before, behind: hanging.behind, gap })),
    between,
    mm: mm ?? null,
    count: count ?? null,
    length: hung.length,
    symmetric: layout.symmetric ?? false,
  })
  if ('bits' in spaced) {
    if (spaced.length <= GARLAND_LIMITS.length.most) return spaced
    reader.length(spaced.length, 'spacing', 'the cord that follows', GARLAND_LIMITS.length)
    return null
  }
  if (spaced.problem === 'too-many') {
    reader.findings.push(finding('garland/too-many', 'layout.spacing', { most: formatNumber(MOST_ITEMS) }))
  } else {
    const values = {
      needed: formatLength(spaced.needed, units),
      length: formatLength(hung.length ?? 0, units),
    }
    reader.findings.push(finding('garland/does-not-fit', 'layout.spacing', values))
  }
  return null
}

/** Everything on the cord, with the chains before it and how it is fastened. */
function itemsOf(
  project: Project,
  layout: GarlandLayout,
  things: readonly Thing[],
  spaced: Spaced,
  up: HungGarland,
  chain: Chain,
): GarlandItem[] {
  const worked = isWorked(layout)
  const terms = project.terms ?? 'US'
  let done = 0
  return things.map((thing, i): GarlandItem => {
    const { along } = spaced.bits[i]!
    const { hanging, account } = thing
    // Counted from the tie each time, so that rounding does not add up along the cord.
    const start = Math.max(done, Math.round(along / chain.length - hanging.chains / 2))
    const chains = start - done
    done = start + hanging.chains
    return {
      ...up.items[i]!.at,
      turn: degrees(up.items[i]!.turn),
      along,
      motif: thing.motif?.id ?? '',
      colourway: thing.colourway,
      bead: thing.bead,
      part: thing.part,
      held: up.items[i]!.held,
      extent: hanging.before + hanging.behind,
      chains: worked ? chains : null,
      words: account ? fasteningWords(account.shape, hanging, worked, terms) : beadWords(thing.bead, worked),
    }
  })
}

function motifsOf(things: readonly Thing[], up: HungGarland): PlacedMotif[] {
  let number = 0
  return things.flatMap((thing, i): PlacedMotif[] => {
    const { motif, hanging, colourway } = thing
    if (!motif) return []
    number++
    const { centre, turn } = up.items[i]!
    return [
      {
        id: `1,${number}`,
        // Its number on the cord, beads counted: the one that list and paper give it.
        label: String(i + 1),
        row: 1,
        column: number,
        x: centre.x,
        y: centre.y,
        turn: hanging.turn + degrees(turn),
        colourway,
        motif: motif.id,
      },
    ]
  })
}

/** How often each motif is made, in which colourways; the most frequent first. */
function piecesOf(things: readonly Thing[]): Piece[] {
  const pieces = new Map<
    Motif,
    { motif: Motif; account: MotifAccount | null; motifs: number; ways: Map<string, number> }
  >()
  for (const { motif, account, colourway } of things) {
    if (!motif) continue
    const piece = pieces.get(motif) ?? { motif, account, motifs: 0, ways: new Map<string, number>() }
    piece.motifs++
    piece.ways.set(colourway, (piece.ways.get(colourway) ?? 0) + 1)
    pieces.set(motif, piece)
  }
  return [...pieces.values()]
    .sort((a, b) => b.motifs - a.motifs)
    .map(({ motif, account, motifs, ways }) => ({
      motif,
      account,
      counts: { motifs, byColourway: Object.fromEntries(ways) },
    }))
}

/** Yarn and loops of a worked cord, and of what fastens things to it. */
function cordWork(
  project: Project,
  layout: GarlandLayout,
  garland: GarlandAccount,
  things: readonly Thing[],
  chain: Chain,
  gauge: ResolvedGauge,
): { works: OtherWork[]; findings: Finding[] } {
  const chains = garland.cord.whole.chains
  if (chains === null) return { works: [], findings: [] }
  const only = project.yarns?.length === 1 ? project.yarns[0]?.id : undefined
  const yarn = layout.cord?.yarn ?? only
  if (!yarn) return { works: [], findings: [finding('garland/no-cord-yarn', 'layout.cord.yarn')] }
  const stitches = things.reduce((sum, { motif, hanging }) => sum + (motif ? hanging.places : 0), 0)
  const works: OtherWork[] = [
    { use: 'cord', yarn, millimetres: chainYarn(chain, chains), tails: 2, loops: chains },
    {
      use: 'joins',
      yarn,
      millimetres: stitches * stitchYarn('sc', gauge),
      tails: 0,
      loops: stitches * STITCHES.sc.loops,
    },
  ]
  return { works, findings: [] }
}

/** Places on the map of things on the cord; beads have none. */
function placesOf({ items }: GarlandAccount, things: readonly number[]): string[] {
  const wanted = new Set(things)
  let number = 0
  return items.flatMap(({ bead }, i) => {
    if (bead !== '') return []
    number++
    return wanted.has(i) ? [`1,${number}`] : []
  })
}

/** What a careful reader would remark about a garland that can be made. */
function remarks(
  project: Project,
  layout: GarlandLayout,
  garland: GarlandAccount,
  things: readonly Thing[],
  size: number,
  chain: Chain,
  gauge: ResolvedGauge,
): Finding[] {
  const units = project.units ?? 'metric'
  const length = (mm: number): string => formatLength(mm, units)
  const findings: Finding[] = []
  const { cord, collisions: pairs, swags } = garland
  const [pair] = pairs
  if (pair) {
    const values = { pairs: formatNumber(pairs.length), first: pair[0] + 1, second: pair[1] + 1 }
    const cells = placesOf(garland, pairs.flat())
    findings.push(finding('garland/collision', 'layout', values, { cells }))
  }
  const part = things.length % size
  if (part > 0 && !layout.symmetric)
    findings.push(finding('garland/cut-repeat', 'layout.items', { part, size }))
  if (swags) {
    const at = garland.items.findIndex(({ along, extent }) => {
      const hook = Math.round(along / swags.length)
      return hook > 0 && hook < swags.count && Math.abs(along - hook * swags.length) < extent / 4
    })
    const cells = placesOf(garland, [at])
    if (at >= 0) findings.push(finding('garland/at-hook', 'layout.swags', { number: at + 1 }, { cells }))
  }
  if (cord.stretched) {
    const { low, high } = cord.stretched
    const values = { length: length(cord.length), low: length(low), high: length(high) }
    findings.push(finding('garland/cord-gives', 'layout.cord', values))
  }
  if (cord.chains !== null && !chain.known) {
    const values = { chain: fineLengthValue(chain.length), spread: formatNumber(gauge.spread * 100) }
    findings.push(finding('garland/chain-by-thumb', 'layout.cord.gauge', values))
  }
  for (const thing of new Set(things))
    findings.push(...fasteningRemarks(thing, chain, cord.chains !== null, length))
  return findings
}

function fasteningRemarks(
  { motif, account, hanging }: Thing,
  chain: Chain,
  worked: boolean,
  length: (mm: number) => string,
): Finding[] {
  if (!motif || !account || account.shape === 'leaf') return []
  const where = `motif ${motif.id}`
  const target = { motif: motif.id }
  const name = motif.name ?? motif.id
  if (hanging.places === 1) return [finding('garland/one-petal', where, { motif: name }, target)]
  if (!worked || hanging.chains * chain.length >= BENDING_SHARE * hanging.apart) return []
  const values = {
    motif: name,
    apart: length(hanging.apart),
    chains: hanging.chains,
    flat: Math.round(hanging.apart / chain.length),
  }
  return [finding('garland/chains-between', where, values, target)]
}
