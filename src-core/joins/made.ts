/** What is joined already while a work grows: which places of each piece are taken, and by whom. */
import type { Anchor } from '../../shared-types/plan'
import type { Hand } from '../../shared-types/project'

/** A join of a piece that is already there: which of its petals (corners, places), and with whom. */
interface Made {
  readonly group: number
  readonly label: number
}

/** Where the joins of a piece are counted from: its first petal, and whether petals go all the way round. */
interface CountedPiece {
  readonly count: number
  readonly first: number
  /** A half motif ends at its cut: nobody counts across it. */
  readonly isHalf: boolean
}

export class MadeJoins {
  readonly #made: Made[][]
  readonly #taken = new Map<string, number[]>()

  constructor(
    pieces: number,
    private readonly hand: Hand,
  ) {
    this.#made = Array.from({ length: pieces }, () => [])
  }

  /** Notes that a place of a piece is joined to the piece with this working number. */
  add(piece: number, anchor: Anchor, label: number): void {
    this.#made[piece]!.push({ group: anchor.petal, label })
    const key = `${piece} ${anchor.id}`
    const taken = this.#taken.get(key)
    if (taken) taken.push(label)
    else this.#taken.set(key, [label])
  }

  /** Working numbers of all that are joined to a place. */
  at(piece: number, anchor: Anchor): readonly number[] {
    return this.#taken.get(`${piece} ${anchor.id}`) ?? []
  }

  /** The join on a piece nearest to a place, and how many places away it lies; left is counter-clockwise. */
  nearest(
    piece: number,
    target: Anchor,
    { count, first, isHalf }: CountedPiece,
  ): { reference: number; leftward: number } {
    let steps = 0
    let reference = 0
    const from = (petal: number): number => (petal - first + count) % count
    for (const { group, label } of this.#made[piece]!) {
      if (group === target.petal) continue
      const onward = (target.petal - group + count) % count
      const round = onward <= count / 2 ? onward : onward - count
      const signed = isHalf ? from(target.petal) - from(group) : round
      if (
        steps === 0 ||
        Math.abs(signed) < Math.abs(steps) ||
        (Math.abs(signed) === Math.abs(steps) && label > reference)
      ) {
        steps = signed
        reference = label
      }
    }
    // Petals are counted counter-clockwise by right-handers, clockwise by left-handers.
    return { reference, leftward: this.hand === 'left' ? -steps : steps }
  }
}
