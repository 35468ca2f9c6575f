/**
 * The first stage of everything: a project of which nothing is open any more. Every default stands here, and what
 * follows from something else is resolved once; nothing after it asks what holds where the file says nothing.
 *
 * What only the geometry can tell stays with its stage: the style of an edging, which follows the motif's shape.
 */
import type { Finding } from '../shared-types/finding'
import type {
  AppliqueLayout,
  BlanketLayout,
  GarlandLayout,
  Kit,
  Layout,
  Motif,
  Project,
  StitchGauge,
} from '../shared-types/project'
import type { Settled, SettledLayout } from '../shared-types/settled'
import { lettered } from './colour/letters'
import { KIT } from './fields/kit'
import { finding } from './findings/finding'
import { HANGS_BY } from './layout/garland/constants'
import { DEFAULT_SEAM, MATERIAL_CONSTANTS } from './materials/constants'
import { remembered } from './memo'
import { isUsableOrZero } from './units/usable'

/** What holds where a project says nothing; in the units of the file. */
export const DEFAULTS = {
  title: '',
  designer: '',
  notes: '',
  pattern: { line: '', copyright: '' },
  units: 'metric',
  terms: 'US',
  hand: 'right',
  forChild: false,
  currency: 'EUR',
  order: 'there-and-back',
  joining: { rule: 'tips', seam: DEFAULT_SEAM, bridgeChains: 0, gap: 0 },
  allowance: { wastePercent: MATERIAL_CONSTANTS.wastePercent, tail: MATERIAL_CONSTANTS.tail },
  /** Its terms are the project's. */
  sheet: { paper: 'A4', style: 'ink' },
  blanket: {
    arrangement: 'straight-rows',
    alternateRows: 'same',
    turn: 0,
    alternateTurn: 0,
    halves: false,
    inTheRound: false,
    closedEnds: 'none',
    cells: {},
  },
  blocking: { width: 1, height: 1 },
  /** Colourways without a pattern repeat. */
  fill: { seed: 0, direction: 'down' },
  edging: { rounds: [], ends: 'both' },
  garland: { items: [], symmetric: false },
  cord: { ties: 0, worked: 'chain' },
  spacing: { between: 'edges' },
  hang: { way: 'plumb', by: HANGS_BY },
  swags: { count: 1 },
  applique: { items: [], clearance: 0, overlaps: 'refused' },
  panel: { shape: 'rectangle', allowance: 0 },
  item: { turn: 0, flipped: false, layer: 0 },
  kit: {
    count: 1,
    windTo: KIT.windTo.initial,
    lengths: 'joined',
    sparePercent: 0,
    extras: [],
    packaging: 0,
    marginPercent: 0,
    taxPercent: 0,
  },
  fees: { fixed: 0, sharePercent: 0, on: 'price' },
  extra: { count: 1 },
} as const satisfies Record<string, unknown>

/** Fills a part of the file: the same object each time, so that what reads it is not made again. */
function filling<Fields extends object, Name extends keyof Fields>(defaults: { [Key in Name]: unknown }) {
  type FilledPart = Fields & { [Key in Name]-?: NonNullable<Fields[Key]> }
  const fill = remembered((given: object): FilledPart => {
    const filled: Record<string, unknown> = { ...defaults }
    for (const [name, value] of Object.entries(given)) if (value !== undefined) filled[name] = value
    return filled as FilledPart
  })
  const none = { ...defaults } as unknown as FilledPart
  return (given: Fields | undefined): FilledPart => (given ? fill(given) : none)
}

type Part<Fields, Name extends keyof Fields> = NonNullable<Fields[Name]>
type Kind<Name extends keyof typeof DEFAULTS> = keyof (typeof DEFAULTS)[Name]

const fillBlanket = filling<BlanketLayout, Kind<'blanket'>>(DEFAULTS.blanket)
const fillBlocking = filling<Part<BlanketLayout, 'blocking'>, Kind<'blocking'>>(DEFAULTS.blocking)
const fillEdging = filling<Part<BlanketLayout, 'edging'>, Kind<'edging'>>(DEFAULTS.edging)
const fillFill = filling<Part<Part<BlanketLayout, 'cells'>, 'fill'>, Kind<'fill'>>(DEFAULTS.fill)
const fillGarland = filling<GarlandLayout, Kind<'garland'>>(DEFAULTS.garland)
const fillCord = filling<Part<GarlandLayout, 'cord'>, Kind<'cord'>>(DEFAULTS.cord)
const fillSpacing = filling<Part<GarlandLayout, 'spacing'>, Kind<'spacing'>>(DEFAULTS.spacing)
const fillHang = filling<Part<GarlandLayout, 'hang'>, Kind<'hang'>>(DEFAULTS.hang)
const fillSwags = filling<Part<GarlandLayout, 'swags'>, Kind<'swags'>>(DEFAULTS.swags)
const fillApplique = filling<AppliqueLayout, Kind<'applique'>>(DEFAULTS.applique)
const fillPanel = filling<Part<AppliqueLayout, 'panel'>, Kind<'panel'>>(DEFAULTS.panel)
const fillItem = filling<Part<AppliqueLayout, 'items'>[number], Kind<'item'>>(DEFAULTS.item)
const fillKit = filling<Kit, Kind<'kit'>>(DEFAULTS.kit)
const fillFees = filling<Part<Kit, 'fees'>, Kind<'fees'>>(DEFAULTS.fees)
const fillExtra = filling<Part<Kit, 'extras'>[number], Kind<'extra'>>(DEFAULTS.extra)
const fillJoining = filling<Part<Project, 'joining'>, Kind<'joining'>>(DEFAULTS.joining)
const fillPattern = filling<Part<Project, 'pattern'>, Kind<'pattern'>>(DEFAULTS.pattern)
const fillSheet = filling<Part<Project, 'sheet'>, Kind<'sheet'>>(DEFAULTS.sheet)

const settledKit = remembered((kit: Kit) => ({
  ...fillKit(kit),
  fees: fillFees(kit.fees),
  extras: (kit.extras ?? DEFAULTS.kit.extras).map(fillExtra),
}))

const settledCells = remembered((cells: Part<BlanketLayout, 'cells'>) => {
  if (!cells.fill) return cells
  const fill = fillFill(cells.fill)
  return { ...cells, fill: fill.pattern || !fill.colourways ? fill : repeating(fill) }
})
const repeating = remembered((fill: ReturnType<typeof fillFill>) => ({ ...fill, pattern: 'repeat' as const }))

const settledItems = remembered((items: Part<AppliqueLayout, 'items'>) => items.map(fillItem))

const settledLayout = remembered((layout: Layout): SettledLayout => {
  const kit = layout.kit && { kit: settledKit(layout.kit) }
  switch (layout.kind) {
    case 'blanket':
      return {
        ...fillBlanket(layout),
        ...kit,
        // The first of those that alternate is the motif of the layout.
        ...(!layout.motif && layout.alternate?.motifs?.[0] && { motif: layout.alternate.motifs[0] }),
        blocking: fillBlocking(layout.blocking),
        ...(layout.cells && { cells: settledCells(layout.cells) }),
        ...(layout.edging && { edging: fillEdging(layout.edging) }),
      }
    case 'garland':
      return {
        ...fillGarland(layout),
        ...kit,
        cord: fillCord(layout.cord),
        spacing: fillSpacing(layout.spacing),
        hang: fillHang(layout.hang),
        ...(layout.swags && { swags: fillSwags(layout.swags) }),
      }
    case 'applique':
      return {
        ...fillApplique(layout),
        ...kit,
        panel: fillPanel(layout.panel),
        ...(layout.items && { items: settledItems(layout.items) }),
      }
  }
})

const gauged = remembered((motif: Motif, gauge: StitchGauge): Motif => ({ ...motif, gauge }))

/** A motif with the gauge that it is worked in: its own, else the project's. */
export const withGauge = <Kind extends Motif>(motif: Kind, gauge: StitchGauge | undefined): Kind =>
  motif.gauge || !gauge ? motif : (gauged(motif, gauge) as Kind)

const settledMotifs = remembered((motifs: Motif[], gauge: StitchGauge | undefined) =>
  motifs.map((motif) => withGauge(motif, gauge)),
)

/** Waste and tails, and what was refused of them. */
function settledAllowance({ allowance }: Project) {
  const refused: Finding[] = []
  const read = (field: keyof typeof DEFAULTS.allowance): number => {
    const value = allowance?.[field]
    if (isUsableOrZero(value)) return value
    const taken = DEFAULTS.allowance[field]
    if (value !== undefined)
      refused.push(
        finding('yarn/invalid-allowance', `allowance.${field}`, { received: String(value), taken }),
      )
    return taken
  }
  return { allowance: { wastePercent: read('wastePercent'), tail: read('tail') }, refused }
}

const made = new WeakSet<object>()
const settle = remembered((project: Project): Settled => {
  const terms = project.terms ?? DEFAULTS.terms
  const settled: Settled = {
    ...project,
    title: project.title?.trim() ?? DEFAULTS.title,
    designer: project.designer?.trim() ?? DEFAULTS.designer,
    notes: project.notes ?? DEFAULTS.notes,
    pattern: fillPattern(project.pattern),
    units: project.units ?? DEFAULTS.units,
    terms,
    hand: project.hand ?? DEFAULTS.hand,
    forChild: project.forChild ?? DEFAULTS.forChild,
    currency: project.currency ?? DEFAULTS.currency,
    order: project.order ?? DEFAULTS.order,
    yarns: project.yarns ?? NO_YARNS,
    motifs: settledMotifs(project.motifs ?? NO_MOTIFS, project.gauge),
    colourways: project.colourways ? lettered(project.colourways) : NO_COLOURWAYS,
    layout: project.layout && settledLayout(project.layout),
    joining: fillJoining(project.joining),
    sheet: { ...fillSheet(project.sheet), terms: project.sheet?.terms ?? terms },
    ...settledAllowance(project),
  }
  made.add(settled)
  return settled
})

/** Lists that stay the same object. */
const NO_YARNS: Settled['yarns'] = []
const NO_MOTIFS: Settled['motifs'] = []
const NO_COLOURWAYS: Settled['colourways'] = []

/**
 * A project with every default filled in, and with findings (`refused`) on what cannot be taken as it stands. The
 * same project gives the same object, and parts that did not change stay the same; one that is settled is given back.
 */
export const settled = (project: Project): Settled => (isSettled(project) ? project : settle(project))

const isSettled = (project: Project): project is Settled => made.has(project)
