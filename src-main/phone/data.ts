/** What the page for a phone knows of a plan: short enough that a thousand motifs stay a small file. */
import { slotWords } from '../paper/words'
import type { Plan, PlacedMotif, Point } from '../../shared-types/plan'
import type { DrawnPlan } from '../../src-core/figures/figure'
import { keyMarks, mapGround } from '../../src-core/figures/map-ground'
import { outerRadius, turnAndScale } from '../../src-core/figures/path'
import { PIECE_NAME, standsWords } from '../../src-core/figures/piece-words'
import { mapRows, workedByRows } from '../../src-core/figures/rows'
import { accountAt, pieceAt, placedPieces } from '../../src-core/layout/placed'
import type { PlacedPiece } from '../../src-core/layout/placed'
import { numberedPlaces } from '../../src-core/motif/numbering'
import { spacesMet } from '../../src-core/motif/spaces'
import { byKind } from '../../src-core/plans/layouts'
import { lengthsIn } from '../../src-core/units/format'
import { itemWords, thingWords } from './words'

/** A petal with its number, from the middle of its motif, in mm of the drawing. */
export type NumberedPetal = readonly [x: number, y: number, number: number]

/** A motif, filler or half motif, or a thing on a cord. */
export interface PhonePiece {
  /** Its address in the project; '' for a bead, which nobody ticks. */
  readonly id: string
  /** Number as it is printed. */
  readonly label: string
  /** "motif", "half motif", "bead". */
  readonly name: string
  /** "row 2, motif 3". */
  readonly stands: string
  /** Row in which it is listed. */
  readonly row: number
  /** Which entry of the key, or -1. */
  readonly way: number
  /** Middle and reach in mm of the drawing. */
  readonly x: number
  readonly y: number
  readonly reach: number
  /** Which of `petals`, or -1. */
  readonly petals: number
  /** Numbers of its petals that are joined while it is worked. */
  readonly joined: readonly number[]
  /** What is done, and the figures that go into it. */
  readonly words: number
  readonly figures: readonly number[]
}

export interface PhoneWay {
  readonly code: string
  readonly name: string
  /** "Brick petals, Straw centre". */
  readonly yarns: string
  readonly colours: readonly string[]
}

export interface PhoneData {
  /** What ticks are kept under on the phone. */
  readonly key: string
  readonly title: string
  readonly kind: Plan['kind']
  readonly width: number
  readonly height: number
  readonly ways: readonly PhoneWay[]
  readonly petals: readonly (readonly NumberedPetal[])[]
  /** Sentences with # where a figure goes. */
  readonly words: readonly string[]
  /** In working order. */
  readonly pieces: readonly PhonePiece[]
  /** Addresses of those that were made when the page was written. */
  readonly made: readonly string[]
}

const hundredth = (value: number): number => Math.round(value * 100) / 100

/** A list in which equal entries stand once. */
class Once<Entry> {
  readonly entries: Entry[] = []
  private readonly places = new Map<string, number>()

  place(entry: Entry): number {
    const key = JSON.stringify(entry)
    const known = this.places.get(key)
    if (known !== undefined) return known
    this.places.set(key, this.entries.length)
    return this.entries.push(entry) - 1
  }
}

/** Takes the figures out of a sentence: those of neighbouring motifs differ in nothing else. */
function takeApart(words: string): { sentence: string; figures: number[] } {
  const figures: number[] = []
  // A figure that could not be put back as it was stays.
  const sentence = words.replace(/#|(?<![\d.,])\d{1,6}(?![\d.,]*\d)/g, (found) => {
    if (found === '#' || String(Number(found)) !== found) return found === '#' ? '＃' : found
    figures.push(Number(found))
    return '#'
  })
  return { sentence, figures }
}

/** One piece as it is told, before sentences and petals are shared. */
interface Told {
  readonly id: string
  readonly label: string
  readonly name: string
  readonly stands: string
  readonly row: number
  readonly colourway: string
  readonly at: Point
  readonly reach: number
  readonly words: string
  readonly petals: readonly NumberedPetal[]
  readonly joined: readonly number[]
}

/** Everything that the page shows beside its drawing. */
export function phoneData(plan: Plan, drawing: DrawnPlan, key: string): PhoneData {
  const ground = mapGround(plan, 'colour')
  const marks = keyMarks(ground)
  const wayAt = new Map(marks.map(({ id }, i) => [id, i]))
  const words = new Once<string>()
  const petals = new Once<readonly NumberedPetal[]>()
  const told = byKind(plan, {
    blanket: () => blanketPieces(plan, drawing.scale),
    garland: () => cordThings(plan, drawing.scale),
    applique: () => panelItems(plan, drawing.scale),
  })
  return {
    key,
    title: plan.settled.title,
    kind: plan.kind,
    width: hundredth(drawing.width),
    height: hundredth(drawing.height),
    ways: marks.map(({ code, name, slots }) => ({
      code,
      name,
      yarns: slotWords(slots, plan.settled.terms),
      colours: [...new Set(slots.map(({ colour }) => colour))],
    })),
    pieces: told.map((piece) => {
      const { sentence, figures } = takeApart(piece.words)
      return {
        id: piece.id,
        label: piece.label,
        name: piece.name,
        stands: piece.stands,
        row: piece.row,
        way: wayAt.get(piece.colourway) ?? -1,
        x: hundredth(drawing.left + piece.at.x * drawing.scale),
        y: hundredth(drawing.top + piece.at.y * drawing.scale),
        reach: hundredth(piece.reach * drawing.scale),
        petals: piece.petals.length > 0 ? petals.place(piece.petals) : -1,
        joined: piece.joined,
        words: sentence === '' ? -1 : words.place(sentence),
        figures,
      }
    }),
    words: words.entries,
    petals: petals.entries,
    made: plan.marks.made.filter((id) => pieceAt(plan, id)),
  }
}

/** The petals of a placed motif with the numbers that words and pictures count them by. */
function petalsOf(plan: Plan, piece: PlacedMotif, scale: number): NumberedPetal[] {
  const account = accountAt(plan, piece)
  if (!account) return []
  return numberedPlaces(account, piece).map(({ anchor, number }) => {
    const [at] = turnAndScale([anchor], piece.turn, scale)
    return [hundredth(at!.x), hundredth(at!.y), number]
  })
}

/** Where work goes by rows, a filler or half motif is listed in that of the motif after which it is joined, as on paper. */
function listedRows(plan: Plan, inOrder: readonly PlacedPiece[]): ReadonlyMap<string, number> {
  const rows = new Map<string, number>()
  if (!workedByRows(mapRows(plan))) return rows
  let row: number | null = null
  for (const piece of inOrder) {
    if (piece.kind === 'motif') row = piece.row
    rows.set(piece.id, row ?? piece.row)
  }
  return rows
}

function blanketPieces(plan: Plan, scale: number): Told[] {
  const steps = new Map(plan.order.map((step) => [step.motif, step]))
  const inOrder = plan.order.flatMap(({ motif }) => pieceAt(plan, motif) ?? [])
  const others = placedPieces(plan).filter(({ id }) => !steps.has(id))
  const rows = listedRows(plan, inOrder)
  return [...inOrder, ...others].map((piece): Told => {
    const step = steps.get(piece.id)
    const account = accountAt(plan, piece)
    const places = piece.kind === 'motif' && account ? numberedPlaces(account, piece) : []
    const joined = new Set(step?.joins.map(({ anchor }) => anchor))
    const met = account ? spacesMet(account, joined, piece.firstPetal) : null
    return {
      id: piece.id,
      label: piece.label,
      name: PIECE_NAME[piece.kind],
      stands: standsWords(plan, piece),
      row: rows.get(piece.id) ?? piece.row,
      colourway: piece.colourway,
      at: piece,
      reach: account ? outerRadius(account.outline) : 0,
      words: step?.words ?? '',
      petals: piece.kind === 'motif' ? petalsOf(plan, piece, scale) : [],
      joined: places
        .filter(({ anchor, number }) => joined.has(anchor.id) || met?.has(number))
        .map(({ number }) => number),
    }
  })
}

function cordThings(plan: Plan, scale: number): Told[] {
  const items = plan.garland?.items ?? []
  const { units } = plan.settled
  const along = lengthsIn(
    units,
    items.map((item) => item.along),
  )
  const placed = [...plan.motifs]
  return items.map((item, i): Told => {
    const motif = item.bead ? undefined : placed.shift()
    const account = motif ? accountAt(plan, motif) : null
    return {
      id: motif?.id ?? '',
      label: String(i + 1),
      name: item.bead ? 'bead' : PIECE_NAME.motif,
      stands: item.bead || (account?.name ?? item.motif),
      row: 1,
      colourway: item.colourway,
      at: motif ?? item,
      reach: account ? outerRadius(account.outline) : item.extent / 2,
      words: thingWords(along(item.along), item.chains, item.words),
      petals: motif ? petalsOf(plan, motif, scale) : [],
      joined: [],
    }
  })
}

function panelItems(plan: Plan, scale: number): Told[] {
  const { units } = plan.settled
  const places = lengthsIn(
    units,
    plan.motifs.flatMap(({ x, y }) => [x, y]),
  )
  const placed = new Map(plan.motifs.map((motif) => [motif.id, motif]))
  const labels = (ids: readonly string[]) => ids.map((id) => placed.get(id)?.label ?? '')
  return (plan.stacking ?? []).flatMap((id): Told[] => {
    const motif = placed.get(id)
    const account = motif && accountAt(plan, motif)
    if (!motif || !account) return []
    const below = (plan.overlaps ?? []).filter(({ above }) => above === id).map((overlap) => overlap.below)
    return [
      {
        id,
        label: motif.label,
        name: PIECE_NAME.motif,
        stands: account.name,
        row: 1,
        colourway: motif.colourway,
        at: motif,
        reach: outerRadius(account.outline),
        words: itemWords({
          across: places(motif.x),
          down: places(motif.y),
          turn: motif.turn,
          flipped: motif.flipped === true,
          below: labels(below),
        }),
        petals: petalsOf(plan, motif, scale),
        joined: [],
      },
    ]
  })
}
