/** The assembly map: every motif in its place, with its working number, its letter and its meeting points. */
import type { MotifAccount, PlacedMotif, Point } from '../../shared-types/plan'
import { accountAt, marksOnMap, placedPieces } from '../layout/placed'
import type { PlacedPiece } from '../layout/placed'
import { closingLines } from './closing-line'
import { cornerPlates } from './edging-corners'
import type { Bounds, FigureItem, FigureSymbol } from './figure'
import { drawText, INK, PAPER, useAt } from './figure'
import { joinMarkOf } from './join-marks'
import type { JoinMark } from './join-marks'
import type { MotifLabel } from './lettering'
import { capitalDrop, SMALLEST_TYPE } from './lettering'
import { TICK_ASLANT, tickItems } from './made-ticks'
import type { MadeTick } from './made-ticks'
import { EdgingPainter } from './map-edging'
import type { MapGround } from './map-ground'
import { areHalvesTurned, keyMarks } from './map-ground'
import type { ColourwayMark } from './marks'
import { EDGE, joinSymbol } from './map-symbols'
import { keptHalf } from './motif-parts'
import { pairMarkItems, pairMarks } from './pair-marks'
import { MotifSymbols, slotColours } from './motif-symbol'
import { discItems, discReach, fitNumber } from './number-disc'
import type { NumberDisc, NumberPlace } from './number-disc'
import { HALF, halfKey } from './number-places'
import { halfSeats, seatAround } from './seats'
import { isShown, shownOf } from './shown'
import { turnedNumber } from './turned-number'
import { workPath, workPathItems } from './work-path'
import type { WorkStep } from './work-path'

/** mm on paper: of the ground that a tick stands on. */
const TICK = { least: 0.6, most: 2.2 } as const

/** Draws motifs at one scale; symbols are shared by all sheets of that scale. */
export class MapPainter {
  /** How the motifs carry their numbers; null where they have no room for them. */
  readonly number: NumberDisc | null
  private readonly halfNumbers: ReadonlyMap<string, NumberDisc | null>
  /** By motif; '' where there is but one. */
  private readonly kinds: ReadonlyMap<string, DrawnKind>
  /** By the motif of the filler; without a disc, which is drawn over them. */
  private readonly fillers: ReadonlyMap<string, DrawnFiller>
  private readonly marks: ReadonlyMap<string, ColourwayMark>
  private readonly edging: EdgingPainter
  private readonly joinSymbols: Readonly<Record<JoinMark, FigureSymbol>>
  /** From number to number in the order of work, where no rows say it and the motifs have numbers. */
  readonly workPath: readonly WorkStep[]

  constructor(
    readonly ground: MapGround,
    readonly scale: number,
  ) {
    const { plan, marks, numbers } = ground
    const fit = (place: NumberPlace | null): NumberDisc | null => place && fitNumber(place, scale)
    this.number = fit(numbers.motif)
    // A half has less room: its letter tells the colourway too, where rings find none.
    const fitHalf = (place: NumberPlace) => fit(place) ?? fit({ ...place, marks: [] })
    this.halfNumbers = new Map([...numbers.halves].map(([key, place]) => [key, fitHalf(place)]))
    this.marks = new Map(keyMarks(ground).map((mark) => [mark.id, mark]))
    const byId = new Map(marks.map((mark) => [mark.id, mark]))
    const kind = (account: MotifAccount, number: NumberDisc | null): DrawnKind => {
      const symbols = (disc: number, rings: readonly string[]) =>
        new MotifSymbols(account, byId, {
          ...{ scale, disc, rings, look: ground.style, stretch: ground.stretch },
        })
      return { number, symbols: symbols(number?.label.disc ?? 0, number?.rings ?? []), bare: symbols(0, []) }
    }
    const several = plan.accounts.map(
      (account) => [account.id, kind(account, fit(numbers.byMotif.get(account.id) ?? null))] as const,
    )
    const { motif } = plan
    this.kinds = new Map(several.length > 0 || !motif ? several : [['', kind(motif, this.number)]])
    const ofFillers = new Map(ground.fillerMarks.map((mark) => [mark.id, mark]))
    this.fillers = new Map(
      plan.fillerMotifs.map((account) => {
        const look = { scale, look: ground.style, disc: 0, rings: [], stretch: ground.stretch }
        const symbols = new MotifSymbols(account, ofFillers, look)
        return [account.id, { symbols, number: fit(numbers.fillers.get(account.id) ?? null) }]
      }),
    )
    this.workPath = this.number ? workPath(plan, this.largestDisc / scale) : []
    const { dot } = this
    this.joinSymbols = {
      two: joinSymbol('two', dot),
      several: joinSymbol('several', dot),
      stretched: joinSymbol('stretched', dot),
    }
    this.edging = new EdgingPainter(ground, scale)
  }

  /** Parts that are shown as rings round numbers, the outermost first. */
  get rings(): readonly string[] {
    return (
      [
        ...[...this.kinds.values()].map(({ number }) => number),
        ...this.halfNumbers.values(),
        ...[...this.fillers.values()].map(({ number }) => number),
      ].find((each) => each?.rings.length)?.rings ?? []
    )
  }

  /** Radius of the largest disc of a motif, its rings included, in printed mm. */
  private get largestDisc(): number {
    const discs = [...this.kinds.values()].map(({ number }) => (number ? discReach(number) : 0))
    return Math.max(0, ...discs)
  }

  /** Printed diameter of a motif over its tips. */
  get across(): number {
    return 2 * this.ground.tip * this.scale
  }

  /** Diameter of a plain join point in printed mm. */
  private get dot(): number {
    return Math.min(1, Math.max(0.3, this.across * 0.07))
  }

  /** The symbol of a colourway, turned by so many degrees. */
  symbol(colourway: string, turn: number): FigureSymbol | null {
    return this.kindOf({})?.symbols.get(colourway, turn) ?? null
  }

  /** How the motif of what is placed is drawn; of half motifs that of the whole. */
  private kindOf({ motif = '' }: Pick<PlacedMotif, 'motif'>): DrawnKind | undefined {
    return this.kinds.get(motif) ?? this.kinds.values().next().value
  }

  /** Motifs, meeting points, edging and labels within a window (plan mm); the window's top left is (0, 0). */
  window(view: Bounds, labelled = true): FigureItem[] {
    const { scale } = this
    const seen = isShown(view, this.ground.tip)
    const shown = <Piece extends Point>(pieces: readonly Piece[]) => shownOf(pieces, view, this.ground.tip)
    const items: FigureItem[] = []
    items.push(...this.edging.items(view, seen))
    const motifs = shown(this.ground.plan.motifs)
    for (const motif of motifs) {
      const kind = this.kindOf(motif)
      const isLabelled = labelled && this.hasLabel(motif, view, kind?.number ?? null)
      const symbol = (isLabelled ? kind?.symbols : kind?.bare)?.get(motif.colourway, motif.turn)
      if (symbol) items.push(useAt(symbol, (motif.x - view.x) * scale, (motif.y - view.y) * scale))
    }
    items.push(...this.additions(view, shown))
    if (labelled) items.push(...this.wayOfWork(view, seen))
    for (const node of shown(marksOnMap(this.ground.plan)))
      items.push(
        useAt(this.joinSymbols[joinMarkOf(node)], (node.x - view.x) * scale, (node.y - view.y) * scale),
      )
    const dot = this.dot
    for (const mark of shown(pairMarks(this.ground.plan))) {
      const at = { x: (mark.x - view.x) * scale, y: (mark.y - view.y) * scale }
      items.push(...pairMarkItems(mark, at, { reach: 2 * dot, line: 0.4 * dot, ink: INK, paper: PAPER }))
    }
    items.push(...this.ticks(view, shown(placedPieces(this.ground.plan))))
    if (labelled)
      for (const motif of motifs) {
        const number = this.kindOf(motif)?.number
        if (number) this.writeLabel(items, motif, view, number)
      }
    items.push(...closingLines(this.ground.plan, view, scale))
    if (labelled) items.push(...this.corners(view))
    for (const piece of labelled ? shown(placedPieces(this.ground.plan)) : [])
      if (piece.kind !== 'motif') this.labelAddition(items, piece, view)
    return items
  }

  /** The whole as it looks: motifs, half motifs, fillers and edging, with nothing that a map says about them. */
  plain(): FigureItem[] {
    const motifs = this.ground.plan.motifs.flatMap((motif) => {
      const symbol = this.kindOf(motif)?.bare.get(motif.colourway, motif.turn)
      return symbol ? [useAt(symbol, motif.x * this.scale, motif.y * this.scale)] : []
    })
    const [origin, all] = [{ x: 0, y: 0 }, () => true]
    return [...this.edging.items(origin, all), ...motifs, ...this.additions(origin, (pieces) => pieces)]
  }

  /** Corners of the edging with their numbers, and the stitches between them. */
  private corners(view: Bounds): FigureItem[] {
    const { scale } = this
    return cornerPlates(this.ground.plan, {
      ...{ scale, type: SMALLEST_TYPE, ink: INK, paper: PAPER, line: EDGE.outline },
      ...{ left: -view.x * scale, top: -view.y * scale },
    })
  }

  /** The line from number to number, below the marks of the join points that it runs through. */
  private wayOfWork(view: Point, seen: (x: number, y: number) => boolean): FigureItem[] {
    const at = ({ x, y }: Point): Point => ({ x: (x - view.x) * this.scale, y: (y - view.y) * this.scale })
    const steps = this.workPath.filter(({ from, to }) => seen(from.x, from.y) && seen(to.x, to.y))
    return workPathItems(steps, at, this.largestDisc)
  }

  /** Ticks on what is made; numbers stand over them. */
  private ticks(view: Bounds, pieces: readonly PlacedPiece[]): FigureItem[] {
    const { plan, tip } = this.ground
    if (plan.marks.made.length === 0) return []
    const isStraight = plan.arrangement === 'straight-rows'
    const [made, joined] = [new Set(plan.marks.made), new Set(plan.marks.joined)]
    const fillers = new Map(plan.fillers.map(({ id, radius }) => [id, radius]))
    const ticks = pieces.flatMap((piece): MadeTick[] => {
      if (!made.has(piece.id)) return []
      const { x, y } = this.middleOf(piece)
      return [
        {
          x: (x - view.x) * this.scale,
          y: (y - view.y) * this.scale,
          reach: (fillers.get(piece.id) ?? tip) * this.scale,
          isJoined: joined.has(piece.id),
          clear: this.discOf(piece),
          ...(piece.kind === 'half' && { place: this.placeOnHalf(piece, view) }),
        },
      ]
    })
    return tickItems(ticks, TICK, INK, PAPER, isStraight ? TICK_ASLANT : undefined)
  }

  /** Where a mark stands on a half motif, so many printed mm from its middle. */
  private placeOnHalf(piece: PlacedPiece, view: Point): (off: number) => Point {
    const { plan, stretch } = this.ground
    const { side = 'left', turn } = piece
    const account = accountAt(plan, piece)!
    const { x, y } = piece
    return (off) => {
      const at = seatAround(halfSeats(account, { side, turn }, stretch), off / this.scale)
      return { x: (x + at.x - view.x) * this.scale, y: (y + at.y - view.y) * this.scale }
    }
  }

  /** How far the disc with the number of a piece reaches from its middle, in printed mm. */
  private discOf(piece: PlacedPiece): number {
    const number = piece.kind === 'motif' ? this.kindOf(piece)?.number : this.addedNumber(piece)
    return number ? discReach(number) : 0
  }

  /** How a half motif or a filler carries its number; null where it has no room. */
  private addedNumber(piece: PlacedPiece): NumberDisc | null {
    const of = piece.kind === 'half' ? this.halfNumbers.get(halfKey(piece)) : null
    return of ?? this.fillers.get(piece.motif ?? '')?.number ?? null
  }

  /** The middle of what is there of a piece, in plan mm. */
  private middleOf<Piece extends PlacedPiece>(piece: Piece): Piece {
    const { x = 0, y = 0 } =
      (piece.kind === 'half' && this.ground.numbers.halves.get(halfKey(piece))?.centre) || {}
    return { ...piece, x: piece.x + x, y: piece.y + y }
  }

  /** Half motifs and fillers. */
  private additions(
    view: Point,
    shown: <Piece extends Point>(pieces: readonly Piece[]) => readonly Piece[],
  ): FigureItem[] {
    const { plan } = this.ground
    const items: FigureItem[] = []
    const put = (symbol: FigureSymbol | undefined, at: Point): void => {
      if (symbol) items.push(useAt(symbol, (at.x - view.x) * this.scale, (at.y - view.y) * this.scale))
    }
    for (const half of shown(plan.halves))
      put(this.kindOf(half)?.symbols.get(half.colourway, half.turn, { half: keptHalf(half) }), half)
    for (const filler of shown(plan.fillers))
      put(this.fillers.get(filler.motif)?.symbols.get(filler.colourway, filler.turn), filler)
    return items
  }

  /** A half motif carries its number in the middle of what is there, a filler in its own, where they have room. */
  private labelAddition(items: FigureItem[], piece: PlacedPiece, view: Bounds): void {
    const number = this.addedNumber(piece)
    const at = this.middleOf(piece)
    if (!number) {
      const isTurned = piece.kind === 'half' && this.number && areHalvesTurned(this.ground)
      if (isTurned) items.push(...turnedNumber(piece.label, at, view, this.scale))
      return
    }
    const [x, y] = [(at.x - view.x) * this.scale, (at.y - view.y) * this.scale]
    const colours = slotColours(this.marks.get(piece.colourway) ?? null, number.rings)
    const disc = discItems(x, y, number.label.disc, colours)
    items.push(...disc)
    const before = items.length
    this.writeLabel(items, at, view, number)
    // Without its number an empty disc would say nothing.
    if (items.length === before) items.splice(-disc.length)
  }

  /** Whether a motif's number stands whole inside a window: else it is printed on the sheet beside it. */
  private hasLabel(motif: Point & Partial<PlacedPiece>, view: Bounds, number: NumberDisc | null): boolean {
    if (!number) return false
    // The disc of a half may lie a little over its cut, where the map may end.
    const half = motif.kind === 'half' ? this.ground.numbers.halves.get(halfKey(motif as PlacedPiece)) : null
    const room = Math.min(discReach(number) / this.scale, half?.inner ? half.inner / HALF.inner : Infinity)
    const { x, y, width, height } = view
    // What stands on the line at which a round closes reaches over the end of its map, onto no other sheet.
    const { round } = this.ground.plan
    const isLast = round !== undefined && x + width >= round.map - 1e-6
    return (
      motif.x >= x + room &&
      motif.x <= x + width - (isLast ? 0 : room) &&
      motif.y >= y + room &&
      motif.y <= y + height - room
    )
  }

  private writeLabel(items: FigureItem[], motif: PlacedMotif, view: Bounds, number: NumberDisc): void {
    if (!this.hasLabel(motif, view, number)) return
    const { label } = number
    const x = (motif.x - view.x) * this.scale
    const y = (motif.y - view.y) * this.scale
    const letter = this.marks.get(motif.colourway)?.code ?? ''
    const isLettered = (this.ground.numbers.motif?.letters ?? 0) > 0
    const lift = letter === '' && isLettered ? this.centring(label) : 0
    items.push(
      drawText(motif.label, x, y + label.numberBaseline + lift, label.number, {
        anchor: 'middle',
        weight: 'bold',
      }),
    )
    if (letter !== '')
      items.push(drawText(letter, x, y + label.letterBaseline, label.letter, { anchor: 'middle' }))
  }

  /** A number without a letter below it stands in the middle of its disc. */
  private centring(label: MotifLabel): number {
    return capitalDrop(label.number) - label.numberBaseline
  }
}

/** How the fillers of one motif are drawn. */
interface DrawnFiller {
  readonly number: NumberDisc | null
  readonly symbols: MotifSymbols
}

/** How one of the motifs of a plan is drawn. */
interface DrawnKind {
  readonly number: NumberDisc | null
  readonly symbols: MotifSymbols
  /** The same without a disc, for motifs whose number stands on another sheet. */
  readonly bare: MotifSymbols
}
