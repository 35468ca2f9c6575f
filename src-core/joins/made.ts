/** What is joined already while a work grows: which places of each piece are taken, and by whom. */
import type { Anchor } from '../../shared-types/plan'
import type { Hand } from '../../shared-types/project'

/** A join of a piece that is already there: at which of its places, and with whom. */
interface Made {
  readonly anchor: Anchor
  readonly label: number
}

/** Where the joins of a piece are counted from: its first petal, and whether petals go all the way round. */
interface CountedPiece {
  readonly count: number
  readonly first: number
  /** A half motif ends at its cut: nobody counts across it. */
  readonly isHalf: boolean
}

const sameOnes = (some: readonly number[], others: readonly number[]): boolean =>
  some.every((one) => others.includes(one)) && others.every((one) => some.includes(one))

export class MadeJoins {
  readonly #made: Made[][]

  constructor(
    pieces: number,
    private readonly hand: Hand,
  ) {
    this.#made = Array.from({ length: pieces }, () => [])
  }

  /** Notes that a place of a piece is joined to the piece with this working number. */
  add(piece: number, anchor: Anchor, label: number): void {
    this.#made[piece]!.push({ anchor, label })
  }

  /** Working numbers of all that are joined to a place. */
  at(piece: number, anchor: Anchor): readonly number[] {
    const labels: number[] = []
    for (const made of this.#made[piece]!) if (made.anchor.id === anchor.id) labels.push(made.label)
    return labels
  }

  /**
   * Where the same motifs are joined to a piece at other places too: on which side of those a place lies, as the piece
   * looks outward; null where it is the only one.
   */
  besides(piece: number, target: Anchor, counted: CountedPiece): 'left' | 'right' | 'middle' | null {
    // Places along a side lie opposite what they meet: nobody chooses among them.
    if (target.kind === 'side' || target.kind === 'shoulder') return null
    const own = this.at(piece, target)
    let left = false
    let right = false
    for (const { anchor } of this.#made[piece]!) {
      if (anchor.kind !== target.kind || anchor.petal === target.petal) continue
      if (!sameOnes(this.at(piece, anchor), own)) continue
      const side = this.#leftward(target.petal, anchor.petal, counted)
      if (side >= 0) left = true
      if (side <= 0) right = true
    }
    if (!left && !right) return null
    return left && right ? 'middle' : left ? 'left' : 'right'
  }

  /** How many petals one lies to the left of another, the shorter way round; left is counter-clockwise. */
  #leftward(petal: number, from: number, { count, first, isHalf }: CountedPiece): number {
    const along = (each: number): number => (each - first + count) % count
    const onward = (petal - from + count) % count
    const steps = isHalf ? along(petal) - along(from) : onward <= count / 2 ? onward : onward - count
    // Petals are counted counter-clockwise by right-handers, clockwise by left-handers.
    return this.hand === 'left' ? -steps : steps
  }

  /** The join on a piece nearest to a place, and how many places away it lies; left is counter-clockwise. */
  nearest(piece: number, target: Anchor, counted: CountedPiece): { reference: number; leftward: number } {
    let leftward = 0
    let reference = 0
    for (const { anchor, label } of this.#made[piece]!) {
      if (anchor.petal === target.petal) continue
      const side = this.#leftward(target.petal, anchor.petal, counted)
      const nearer = Math.abs(side) - Math.abs(leftward)
      if (reference === 0 || nearer < 0 || (nearer === 0 && label > reference)) {
        leftward = side
        reference = label
      }
    }
    return { reference, leftward }
  }
}
