/**
 * Worked rounds: what hands and hook do when they follow the text, as one flat list per round. Geometry, yarn and
 * chart read nothing else. Elements stand in the order worked; each says what it is and where it goes into.
 *
 * Indices: `WorkedPlace.round` is an index into the list of worked rounds (−1: the round before the text, of which
 * only counts are known; −2: none, the ring or chain everything begins with), `WorkedPlace.index` an index into
 * that round's `places`, `LeftPlace.element` an index into the same round's `elements`.
 */
import type { StitchKey } from '../stitches/table'
import type { Span } from './tokens'
import type { Loop, StitchForm } from './stitch-name'

/** Where a stitch goes into. */
export interface WorkedPlace {
  readonly kind: 'stitch' | 'space' | 'gap' | 'ring' | 'chain' | 'unknown'
  /** Which worked round carries it; see above. Of a chain of this very round: its own index. */
  readonly round: number
  /** Index into that round's places; a gap has the number of the stitch before it, among stitches; of chains the element. */
  readonly index: number
  /** Number of the chain along a chain, from its beginning, from 0; else 0. */
  readonly cell: number
  /** Along the second side of a chain. */
  readonly opposite: boolean
  readonly loop: Loop
  readonly post: 'front' | 'back' | null
}

/** The first stitch of a round, where it is closed and where the next one begins. */
export const firstStitchOf = (round: number): WorkedPlace => ({
  ...{ kind: 'stitch', round, index: 0, cell: 0 },
  ...{ opposite: false, loop: 'both', post: null },
})

export type ElementRole =
  /** Stands at the end of the round: stitches, clusters, decreases. */
  | 'stitch'
  | 'slip'
  /** Chains between stitches: a space for the next round. */
  | 'space'
  /** Chains at the beginning; `standing` says whether they count as a stitch. */
  | 'beginning'
  /** A closed loop of chains on top of a stitch. */
  | 'picot'
  /** Chains that are worked back along (a spoke, a leaf), or that the whole motif begins with. */
  | 'stem'
  /** A slip stitch that closes the round. */
  | 'join'
  /** A tall stitch that closes the round and stands for the last chains of a loop. */
  | 'closing'
  /** Slip stitches that only bring the hook to where the round begins. */
  | 'travel'

export interface WorkedElement {
  readonly index: number
  readonly role: ElementRole
  readonly form: StitchForm
  /** US key; of chains 'ch'; of a beginning chain that counts, the stitch that it counts as is in `countsAs`. */
  readonly stitch: StitchKey
  /** Chains of a run of chains; 1 otherwise. */
  readonly count: number
  /** Posts drawn together at the top: 1 for a plain stitch, 3 for dc3tog or a 3-dc cluster. */
  readonly legs: number
  /** Nothing tells how many legs it has: `legs` is what is usual. */
  readonly assumed: boolean
  /** One place, or several under one decrease; none for chains between stitches. */
  readonly into: readonly WorkedPlace[]
  /** Elements with the same number go into the same place: a petal, a shell, a corner, an increase. */
  readonly group: number
  /** Counts as a stitch of the round. */
  readonly standing: boolean
  readonly countsAs: StitchKey | null
  /** Worked behind what stands in front (petals folded forward). */
  readonly behind: boolean
  readonly reverse: boolean
  /** Colour named in the text ("MC", "B"), or null: the slot of the round. */
  readonly colour: string | null
  readonly span: Span
}

/** Stitches of one element as the table knows them: a 3-dc cluster is three dc, a picot its chains and a slip stitch. */
export function stitchesOf(
  element: Pick<WorkedElement, 'role' | 'stitch' | 'legs' | 'count'>,
): [StitchKey, number][] {
  switch (element.role) {
    case 'space':
    case 'stem':
    case 'beginning':
      return [['ch', element.count]]
    case 'picot':
      return [
        ['ch', element.count],
        ['sl st', 1],
      ]
    // Its chains are those that it stands for.
    case 'closing':
      return [[element.stitch, 1]]
    case 'slip':
    case 'join':
    case 'travel':
      return [['sl st', Math.max(1, element.count)]]
    default:
      return [[element.stitch, Math.max(1, element.legs) * Math.max(1, element.count)]]
  }
}

/** What a round leaves for the next one, in order. */
export interface LeftPlace {
  readonly kind: 'stitch' | 'space' | 'slip'
  readonly element: number
  readonly stitch: StitchKey | null
  readonly form: StitchForm
  /** Chains of a space. */
  readonly chains: number
  /** A space (or stitch) in the middle of a group in one place: where a straight-sided motif has its corner. */
  readonly corner: boolean
  readonly group: number
  /** A stitch around a post, from this side. */
  readonly post?: 'front' | 'back'
}

/** How the whole thing begins, where this round makes it. */
export type Foundation =
  | { readonly kind: 'ring'; readonly chains: number }
  /** A chain worked along on both sides, or into one chain only. */
  | { readonly kind: 'chain'; readonly chains: number }

export interface WorkedRound {
  /** Index in the list of worked rounds. */
  readonly index: number
  /** Number as in the text, or counted on. */
  readonly number: number
  readonly label: string | null
  /** The part of the pattern that it belongs to ("Leaf"), where the text has parts. */
  readonly part?: string
  /** Which of the texts handed in it comes from. */
  readonly source: number
  readonly foundation: Foundation | null
  readonly elements: readonly WorkedElement[]
  readonly places: readonly LeftPlace[]
  /** Standing stitches. */
  readonly stitches: number
  /** Worked round that most of it goes into; −1, −2 as above. */
  readonly onto: number
  readonly loop: Loop
  readonly joined: boolean
  /** The work was turned over before this round. */
  readonly turned: boolean
  /** The account is certain; else the list follows the most likely reading. */
  readonly certain: boolean
}
