/**
 * What becomes of a layout when a motif, a colourway, a yarn or the terms of its project change, and what a new one
 * is. It reads the layout alone: every edit of a project may ask it.
 */
import type { MotifAccount } from '../../shared-types/plan'
import type {
  AppliqueLayout,
  BlanketLayout,
  Colourway,
  GarlandLayout,
  Layout,
  Motif,
  Project,
} from '../../shared-types/project'
import type { FirstSizes } from '../../src-core/layout/first-sizes'

export interface LayoutEdits {
  /** Id of the motif that all of it is made of; left out where each thing has its own. */
  readonly motif?: string | undefined
  /** What of it needs a motif, or a yarn, in words. */
  usesOfMotif(id: string): string[]
  usesOfYarn(id: string): string[]
  /** With a new colourway among those that its pattern lays. */
  withWay(way: Colourway): Layout
  /** Without colourways, wherever they were laid or painted. */
  withoutWays(gone: ReadonlySet<string>): Layout
  /** With its stitches translated into other terms, and texts that belong together. */
  inTerms(
    translate: (stitch: string) => string,
    translateTexts: (texts: readonly string[]) => readonly string[],
  ): Layout
}

export function editsOf(layout: Layout): LayoutEdits {
  switch (layout.kind) {
    case 'blanket':
      return blanketEdits(layout)
    case 'garland':
      return {
        ...editsOfItems(layout, 'the garland'),
        usesOfYarn: (id) => (layout.cord?.yarn === id ? ['the cord'] : []),
      }
    case 'applique':
      return { ...editsOfItems(layout, 'the composition'), usesOfYarn: () => [] }
  }
}

const uses = (...told: readonly (readonly [isUsed: boolean, words: string])[]): string[] =>
  told.flatMap(([isUsed, words]) => (isUsed ? [words] : []))

/** A thing on a cord or a panel (or the fillers), without a colourway that is gone. */
const withoutWay = <Item extends { colourway?: string | undefined }>(
  item: Item,
  gone: ReadonlySet<string>,
): Item =>
  item.colourway !== undefined && gone.has(item.colourway) ? { ...item, colourway: undefined } : item

/** Whether a motif stands in openings, or openings beside it have a filler of their own. */
const isFiller = ({ fillers }: BlanketLayout, id: string): boolean =>
  fillers?.motif === id ||
  (fillers?.openings ?? []).some(({ motif, between = [] }) => motif === id || between.includes(id))

function blanketEdits(layout: BlanketLayout): LayoutEdits {
  const { motif, fillers, edging, cells } = layout
  return {
    motif,
    usesOfMotif: (id) => uses([motif === id, 'the arrangement'], [isFiller(layout, id), 'the fillers']),
    usesOfYarn: (id) =>
      uses([
        edging?.yarn === id || (edging?.written?.some(({ yarn }) => yarn === id) ?? false),
        'the edging',
      ]),
    withWay: (way) => {
      const fill = cells?.fill
      if (!fill?.colourways || fill.pattern === 'one' || motif !== way.motif) return layout
      return { ...layout, cells: { ...cells, fill: { ...fill, colourways: [...fill.colourways, way.id] } } }
    },
    withoutWays: (gone) => {
      const { fill, painted } = cells ?? {}
      const kept = Object.entries(painted ?? {}).filter(([, way]) => !gone.has(way))
      return {
        ...layout,
        ...(fillers && {
          fillers: {
            ...withoutWay(fillers, gone),
            ...(fillers.openings && { openings: fillers.openings.map((each) => withoutWay(each, gone)) }),
          },
        }),
        ...(cells && {
          cells: {
            ...cells,
            ...(fill && { fill: { ...fill, colourways: fill.colourways?.filter((way) => !gone.has(way)) } }),
            ...(painted && { painted: Object.fromEntries(kept) }),
          },
        }),
      }
    },
    inTerms: (translate, translateTexts) => {
      if (!edging) return layout
      const { written = [] } = edging
      const [special, ...works] = translateTexts([
        edging.special ?? '',
        ...written.map(({ work }) => work ?? ''),
      ])
      return {
        ...layout,
        edging: {
          ...edging,
          ...(edging.rounds && { rounds: edging.rounds.map(translate) }),
          ...(edging.special && { special }),
          ...(edging.written && {
            written: written.map((round, i) => ({
              ...round,
              ...(round.work !== undefined && { work: works[i] }),
            })),
          }),
        },
      }
    },
  }
}

/** Of a layout that is a list of things, each with a motif and a colourway of its own. */
const editsOfItems = (layout: GarlandLayout | AppliqueLayout, words: string) => ({
  usesOfMotif: (id: string) => uses([layout.items?.some(({ motif }) => motif === id) ?? false, words]),
  withWay: () => layout,
  withoutWays: (gone: ReadonlySet<string>): Layout => ({
    ...layout,
    items: layout.items?.map((item) => withoutWay(item, gone)),
  }),
  inTerms: () => layout,
})

/** What a new layout is made from. */
export interface Beginning {
  readonly motifs: readonly Motif[]
  /** The motif that a blanket is made of. */
  readonly main: Motif | undefined
  /** What it turns out to be: squares lie in straight rows. */
  readonly account: MotifAccount | null
  readonly yarns: Project['yarns']
  readonly first: FirstSizes
  /** The first colourway that a motif may have. */
  wayOf(motif: string): Colourway | undefined
  /** All that it may have. */
  waysOf(motif: string): readonly Colourway[]
}

const colourwayField = (way: Colourway | undefined) => (way ? { colourway: way.id } : {})

/** The motifs one after the other, each time in its next colourway, until every colourway has come. */
function inTurn(motifs: readonly Motif[], waysOf: Beginning['waysOf']): GarlandLayout['items'] {
  const turns = Math.max(1, ...motifs.map(({ id }) => waysOf(id).length))
  return Array.from({ length: turns }, (_, turn) =>
    motifs.map(({ id }) => {
      const ways = waysOf(id)
      return { motif: id, ...colourwayField(ways[turn % ways.length]) }
    }),
  ).flat()
}

/** Corners of motifs that lie side on side in straight rows: squares and octagons. */
const SQUARE = new Set([4, 8])

/** Rows of the main motif, offset but for squares: few enough to be seen one by one (our choice). */
const FIRST_COUNT = 8

export const NEW_LAYOUTS = {
  blanket: ({ main, account, wayOf }: Beginning): BlanketLayout => {
    const way = main && wayOf(main.id)
    const square = account?.shape === 'straight' && SQUARE.has(account.petals)
    return {
      kind: 'blanket',
      arrangement: square ? 'straight-rows' : 'offset-rows',
      ...(main && { motif: main.id }),
      columns: FIRST_COUNT,
      rows: FIRST_COUNT,
      alternateRows: 'same',
      ...(way && { cells: { fill: { pattern: 'one', colourways: [way.id], seed: 1 } } }),
    }
  },
  garland: ({ motifs, yarns, first, wayOf, waysOf }: Beginning): GarlandLayout => {
    const yarn = Object.values(wayOf(motifs[0]?.id ?? '')?.yarns ?? {}).at(-1) ?? yarns?.[0]?.id
    return {
      kind: 'garland',
      cord: { ...first.cord, worked: 'chain', ...(yarn && { yarn }) },
      items: inTurn(motifs, waysOf),
      spacing: { between: 'edges', mm: first.spacing },
    }
  },
  applique: ({ first }: Beginning): AppliqueLayout => ({
    kind: 'applique',
    panel: {
      ...{ shape: 'rectangle', width: first.panel.across, height: first.panel.across },
      allowance: first.panel.allowance,
    },
    clearance: first.clearance,
    items: [],
  }),
}
