/** The piece that stands before a round, as far as it is worked in rows: their ends, and the chain under them. */
import { counted } from '../figures/words'
import { FREE } from './source'
import type { Source } from './source'
import type { Stem } from './state'
import { placeParts } from './tree'
import type { Item, PlacePart } from './tree'
import { baseSource, report, targetAt } from './work'
import type { Target, Work } from './work'
import type { WorkedElement, WorkedRound } from './worked'

export interface Piece {
  /** Rows that were worked one on the other. */
  readonly rows: number
  /** Chains under the first of them that stitches stand in; 0 where it stands on something else. */
  readonly chains: number
  /** Rows that are turned, or one along a chain: what goes around them goes along their ends as well. */
  readonly flat: boolean
}

/** Chains that the stitches of a first row stand in. */
function chainsUnder({ elements, onto }: WorkedRound): number {
  // Chains that a round on another one works along are points of it.
  if (onto >= 0) return 0
  const cells = new Set<number>()
  let standing = 0
  for (const { role, standing: stands, into } of elements) {
    if (role === 'stem' || role === 'beginning') standing += stands ? 1 : 0
    for (const { kind, cell, opposite } of into) if (kind === 'chain' && !opposite) cells.add(cell)
  }
  // Chains that are passed over between two stitches lie under the row as well.
  return cells.size > 0 ? Math.max(...cells) - Math.min(...cells) + 1 + standing : 0
}

const isOpposite = ({ elements }: WorkedRound): boolean =>
  elements.some(({ into }) => into.some(({ kind, opposite }) => kind === 'chain' && opposite))

/** What was worked in rows, up to the last of the rounds so far. */
export function pieceOf(worked: readonly WorkedRound[]): Piece {
  let rows = 0
  let turned = false
  let around = false
  for (let index = worked.length - 1; index >= 0; index--) {
    const round = worked[index]!
    if (round.joined) break
    rows++
    turned ||= round.turned
    around ||= isOpposite(round)
    const chains = chainsUnder(round)
    if (chains > 0) return { rows, chains, flat: !around && (turned || (rows === 1 && chains > 1)) }
  }
  return { rows, chains: 0, flat: false }
}

/** The ends of rows: what is worked there takes nothing of the last row. */
export function rowEndTargets(work: Work, part: PlacePart): Target[] {
  const { rows } = work.piece
  const known = work.base.kind !== 'round' || !work.base.state.unknown
  // "121 sc evenly along edge" of cloth: told in sum, whatever it is worked in.
  const first = work.index === 0 && part.which === 'next' && part.count > 0 && work.base.kind !== 'round'
  if (rows === 0 && known && !first) {
    report(work, 'rounds/not-countable', part, { what: 'the ends of rows' }, 'once')
    work.open = true
  }
  const count = part.which === 'each' ? Math.max(1, rows) : part.count
  if (known && rows > 0 && count > rows)
    report(work, 'rounds/too-many-used', part, {
      uses: `the side uses ${counted(count, 'row end')}`,
      available: rows,
    })
  return Array.from({ length: count }, () => targetAt(work, null, { kind: 'unknown', round: -2, index: -1 }))
}

/** Whether a corner is one of a piece in rows, where no stitch need stand. */
export function isCornerOfPiece(work: Work): boolean {
  const source = baseSource(work)
  const cornered = source?.places.some(({ corner, kind }) => corner || kind === 'space') ?? true
  if (work.piece.chains < 2 || cornered) return false
  work.picked = true
  return true
}

/** Chains of a round that its stitches were worked back along. */
export const stemsOf = (elements: readonly WorkedElement[]): readonly Stem[] =>
  elements.flatMap(({ role, count, index }) => {
    const [into] = elements[index + 1]?.into ?? []
    return role === 'stem' && into?.kind === 'chain' && into.index === index
      ? [{ chains: count, slip: elements[index + 1]!.role === 'slip' }]
      : []
  })

/** Where the round was joined in the stitch between two points, the hook is past it as it goes up the first one. */
function passBetween(source: Source, stems: readonly Stem[]): void {
  const { state, places } = source
  const isBegun = places.some((_, at) => source.used[at]! > FREE)
  if (isBegun || !state.joined || !state.ordered || places[0]?.kind !== 'stitch') return
  const standing = stems.reduce((sum, { chains, slip }) => sum + chains - (slip ? 2 : 1), 0)
  if (source.total('stitch') === standing + stems.length) source.moveTo(1)
}

/** "Sc in each of 3 ch up the point, 3 sc in tip": the free side of a chain that the round before worked back along. */
export function stemTargets(work: Work, part: PlacePart): Target[] | null {
  const source = baseSource(work)
  const { stems = [] } = source?.state ?? {}
  if (stems.length === 0 || part.which === 'from-hook') return null
  if (source) passBetween(source, stems)
  const most = Math.max(...stems.map(({ chains }) => chains))
  const side = most - 1
  const count = part.which === 'each' ? side : part.count
  if (count > side) {
    report(work, 'rounds/no-chain', part, { wanted: `${count} ch`, available: `a point has ${side} ch` })
    work.open = true
  }
  return Array.from({ length: count }, () => targetAt(work, null, { kind: 'unknown', round: -2, index: -1 }))
}

/** "3 sc in first ch, sc in next 9 ch" of a piece in rows: goes along the chain under its first row. */
export function turnUnder(work: Work): boolean {
  const { chains } = work.piece
  if (chains === 0 || work.chain?.element === UNDER) return false
  work.chain = { element: UNDER, chains, firstCell: chains - 1, cell: 0, opposite: true }
  return true
}
/** The chain under a piece in rows, among the elements of a round that comes back along it. */
export const UNDER = -3

/** "*sc in each of 3 row ends, (sc, ch 2, sc) in tip, …; rep from * 4 more times": round pieces alike, of which the text makes one. */
export function goesRoundPieces(work: Work, items: readonly Item[]): boolean {
  const along = [...placeParts(items)].some(({ noun }) => noun.kind === 'row-end')
  if (!along || work.base.kind !== 'round' || work.base.state.joined) return false
  work.overReported = true
  return true
}
