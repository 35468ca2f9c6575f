/** One motif as paths of the canvas, in mm about its centre, kept by level of detail. */
import type { MotifAccount } from '../../shared-types/plan'
import { levelAt } from '../../src-core/figures/detail'
import type { Path } from '../../src-core/figures/figure'
import { partsAtLevel } from '../../src-core/figures/motif-parts'
import type { Half } from '../../src-core/figures/motif-parts'
import { trace } from './canvas'

export interface MotifArt {
  /** A path for each layer, the outermost first. */
  readonly layers: readonly Path2D[]
  /** Lines on the outermost layer (between petals), and on the innermost (rounds). */
  readonly petals: Path2D | null
  readonly rounds: Path2D | null
}

/** A half of a motif that is cut off as it lies. */
interface Cut {
  readonly half: Half
  readonly turn: number
}

/** Paths of one motif, made when first asked for. */
export class MotifArtist {
  readonly account: MotifAccount
  readonly #made = new Map<string, MotifArt>()

  constructor(account: MotifAccount) {
    this.account = account
  }

  /** The art for a scale in device pixels per mm: of the whole motif, or of a half of it, turned as it lies. */
  at(scale: number, cut?: Cut): MotifArt {
    const level = levelAt(scale)
    const key = cut ? `${level} ${cut.half} ${cut.turn}` : `${level}`
    let art = this.#made.get(key)
    if (!art) {
      const { layers, petals, rounds } = partsAtLevel(this.account, level, cut && { ...cut, scale: 1 })
      art = { layers: layers.map(kept), petals: keptLines(petals), rounds: keptLines(rounds) }
      this.#made.set(key, art)
    }
    return art
  }
}

function kept(path: Path): Path2D {
  const own = new Path2D()
  trace(own, path)
  return own
}

const keptLines = (path: Path): Path2D | null => (path.length > 0 ? kept(path) : null)
