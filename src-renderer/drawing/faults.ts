/** What of a plan lies where it should not, for the drawing to show in place: parts of outlines in mm. */
import type { MotifAccount, PlacedMotif, Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { placeOutline } from '../../src-core/geometry/place'
import { clockwise, difference, intersection } from '../../src-core/geometry/polygons'
import { signedArea } from '../../src-core/geometry/points'
import type { Outline } from '../../src-core/geometry/points'
import { appliqueOf } from '../state/edits/applique'

export interface Faults {
  /** Ids of the motifs that are too near to something, or not where they may be. */
  readonly warned: ReadonlySet<string>
  /** What two motifs share, and what sticks out of the seam line. */
  readonly parts: readonly Outline[]
}

const NONE: Faults = { warned: new Set(), parts: [] }
/** Parts that are worked out at most: beyond them the contours in the warning tone say enough. */
const MOST_PARTS = 80
/** mm². Less than a pinhead shows nothing. */
const PINHEAD = 0.05

/** Finds faults, and remembers those of the plan before: a drag changes few of them. */
export class FaultFinder {
  #last: { readonly plan: Plan; readonly faults: Faults } | null = null
  #known = new Map<string, readonly Outline[]>()
  #used = new Map<string, readonly Outline[]>()

  find(project: Project, plan: Plan): Faults {
    if (this.#last?.plan === plan) return this.#last.faults
    if (!this.#last || !isLike(this.#last.plan, plan)) this.#known.clear()
    const faults = plan.panel ? this.#onPanel(project, plan) : plan.garland ? this.#alongCord(plan) : NONE
    this.#known = this.#used
    this.#used = new Map()
    this.#last = { plan, faults }
    return faults
  }

  #onPanel(project: Project, plan: Plan): Faults {
    const { panel, overlaps = [] } = plan
    const pieces = piecesOf(plan)
    const warned = new Set<string>()
    const parts: Outline[] = []
    const take = (key: string, make: () => readonly Outline[]) => {
      if (parts.length < MOST_PARTS) parts.push(...this.#once(key, make))
    }
    for (const { code, target } of plan.findings) {
      if (!NEAR_CODES.has(code) && !EDGE_CODES.has(code)) continue
      for (const id of target?.cells ?? []) {
        warned.add(id)
        const piece = pieces.get(id)
        if (!piece || !panel || !EDGE_CODES.has(code)) continue
        take(`${keyOf(piece)} out`, () => difference([piece.outline()], panel.inner))
      }
    }
    if (appliqueOf(project)?.overlaps === 'allowed') return { warned, parts }
    for (const { below, above } of overlaps) {
      const [one, other] = [pieces.get(below), pieces.get(above)]
      if (!one || !other) continue
      warned.add(below).add(above)
      take(`${keyOf(one)} on ${keyOf(other)}`, () => intersection([one.outline()], [other.outline()]))
    }
    return { warned, parts }
  }

  #alongCord(plan: Plan): Faults {
    const { items, collisions } = plan.garland!
    const pieces = [...piecesOf(plan).values()]
    let number = 0
    const pieceOf = items.map(({ motif }) => (motif === '' ? null : (pieces[number++] ?? null)))
    const warned = new Set<string>()
    const parts: Outline[] = []
    for (const pair of collisions) {
      const [one, other] = [pieceOf[pair[0]], pieceOf[pair[1]]]
      for (const piece of [one, other]) if (piece) warned.add(piece.motif.id)
      if (one && other && parts.length < MOST_PARTS)
        parts.push(
          ...this.#once(`${keyOf(one)} on ${keyOf(other)}`, () =>
            intersection([one.outline()], [other.outline()]),
          ),
        )
    }
    return { warned, parts }
  }

  #once(key: string, make: () => readonly Outline[]): readonly Outline[] {
    const made = this.#used.get(key) ?? this.#known.get(key) ?? make().filter(isSeen)
    this.#used.set(key, made)
    return made
  }
}

/** Same motifs on the same panel: what was worked out before still holds. */
const isLike = (a: Plan, b: Plan): boolean =>
  a.panel?.inner === b.panel?.inner &&
  a.accounts.length === b.accounts.length &&
  a.accounts.every((account, i) => account === b.accounts[i])

const NEAR_CODES: ReadonlySet<string> = new Set(['applique/overlap', 'applique/too-close'])
const EDGE_CODES: ReadonlySet<string> = new Set(['applique/outside', 'applique/in-allowance'])

interface Piece {
  readonly motif: PlacedMotif
  readonly account: MotifAccount
  /** Its outline in place. */
  outline(): Outline
}

function piecesOf(plan: Plan): Map<string, Piece> {
  const accounts = new Map(plan.accounts.map((account) => [account.id, account]))
  const pieces = new Map<string, Piece>()
  for (const motif of plan.motifs) {
    const account = accounts.get(motif.motif ?? '')
    if (account)
      pieces.set(motif.id, { motif, account, outline: () => clockwise(placeOutline(account.outline, motif)) })
  }
  return pieces
}

/** What a part follows from: the motif and how it lies. */
const keyOf = ({ motif, account }: Piece): string =>
  [account.id, motif.x, motif.y, motif.turn, motif.flipped].join()

const isSeen = (outline: Outline): boolean => Math.abs(signedArea(outline)) > PINHEAD
