/** What a round finds: the places that the rounds before it left, with the loops that are still free. */
import type { Span } from './tokens'
import type { ColourItem, WorkItem } from './tree'
import type { LeftPlace } from './worked'

export const FRONT = 1
export const BACK = 2

/** What is known about the round before a text (`--after`). */
export interface After {
  readonly stitches?: number
  /** "ch-3" → how many. */
  readonly spaces?: Readonly<Record<string, number>>
  /** Chains of the ring; 0 for an adjustable ring. */
  readonly ring?: number
  /** Chains of a foundation chain that is worked along. */
  readonly chain?: number
  /** Nothing has been made yet. */
  readonly start?: boolean
  /** An older round that the text refers to. */
  readonly from?: {
    readonly round: number
    readonly stitches?: number
    readonly spaces?: Readonly<Record<string, number>>
    readonly gaps?: number
    /** "both loops by round 3". */
    readonly used?: string
  }
  /** Colours of the materials list. */
  readonly colours?: readonly string[]
}

/** A chain that stitches stand along; `slip`: the first of them is a slip stitch. */
export interface Stem {
  readonly chains: number
  readonly slip: boolean
}

/** A round as later rounds see it. Loop marks change as rounds are worked into it. */
export interface RoundState {
  /** Index in the list of worked rounds, or −1. */
  readonly index: number
  readonly number: number
  readonly places: readonly LeftPlace[]
  /** Whether the order of the places is known, or only how many there are. */
  readonly ordered: boolean
  /** Counts are not known: everything asked for is there. */
  readonly unknown: boolean
  /** Taken from the count that the text states: of its spaces and of its order nothing is known. */
  readonly told: boolean
  /** What the text says of a round that came out otherwise: later rounds may go on from that. */
  readonly stated: RoundState | null
  /** FRONT and BACK, by place, as far as they are worked in. */
  readonly loops: Uint8Array
  /** Number of the round that last worked into its loops. */
  loopsBy: number
  /** Places worked in or skipped by the round that followed; 2 worked, 1 skipped. */
  readonly touched: Uint8Array
  /** Index of the place where the hook stands at its end: 0, or the last space where a stitch closed it. */
  readonly endsInSpace: boolean
  /** Closed with a slip stitch in its first stitch, where the hook stands. */
  readonly joined: boolean
  /** Chains that were worked back along for points, with the one that is turned in: their other side is free. */
  readonly stems: readonly Stem[]
  /** New yarn that the text joins behind the end of the round: the next one begins there. */
  readonly ahead: readonly (ColourItem | WorkItem)[]
}

/** Rows of which one piece took some stitches and another one takes others: what is left is meant. */
export const SHARED = new WeakSet<RoundState>()

/** Rows that a second piece goes back to: what the first one took is no longer there. */
export const GONE_BACK_TO = new WeakSet<RoundState>()

export type Base =
  | { readonly kind: 'none' }
  | { readonly kind: 'ring'; readonly chains: number }
  | { readonly kind: 'chain'; readonly chains: number; readonly span?: Span }
  | { readonly kind: 'round'; readonly state: RoundState }

const SPACE_KEY = /^(?:ch-?)?(\d+)(?:-?ch)?$/i

/** "ch-3", "3-ch" or "3" → 3; 0 where it is none of these. */
export const chainsOf = (key: string): number => Number(SPACE_KEY.exec(key.trim())?.[1] ?? 0)

/** "ch-5". */
export const spaceKey = (chains: number): string => `ch-${chains}`

/** Places of which only counts are known, spread evenly, spaces behind stitches (as after a granny round). */
function spreadPlaces(stitches: number, spaces: Readonly<Record<string, number>>): LeftPlace[] {
  const drafts: { at: number; place: Omit<LeftPlace, 'element'> }[] = []
  for (let index = 0; index < stitches; index++) {
    const place = {
      kind: 'stitch',
      stitch: null,
      form: 'plain',
      chains: 0,
      corner: false,
      group: -1,
    } as const
    drafts.push({ at: index / Math.max(1, stitches), place })
  }
  const kinds = Object.entries(spaces)
  for (const [key, count] of kinds) {
    const chains = chainsOf(key)
    for (let index = 0; index < count; index++) {
      const place = { kind: 'space', stitch: null, form: 'plain', chains, corner: false, group: -1 } as const
      drafts.push({ at: (index + 1) / count - 1e-9, place })
    }
  }
  drafts.sort((a, b) => a.at - b.at)
  return drafts.map(({ place }, index) => ({ ...place, element: index }))
}

/** A round of which only counts are known. */
export function countedState(
  index: number,
  number: number,
  stitches: number,
  spaces: Readonly<Record<string, number>>,
  told = false,
): RoundState {
  const places = spreadPlaces(stitches, spaces)
  return stateOf(index, number, places, { ordered: false, told })
}

/** A round as left by its worked elements. */
export function stateOf(
  index: number,
  number: number,
  places: readonly LeftPlace[],
  options: {
    ordered?: boolean
    unknown?: boolean
    endsInSpace?: boolean
    joined?: boolean
    stems?: readonly Stem[]
    ahead?: readonly (ColourItem | WorkItem)[]
    told?: boolean
    stated?: RoundState | null
  } = {},
): RoundState {
  return {
    index,
    number,
    places,
    ordered: options.ordered ?? true,
    unknown: options.unknown ?? false,
    loops: new Uint8Array(places.length),
    loopsBy: 0,
    touched: new Uint8Array(places.length),
    endsInSpace: options.endsInSpace ?? false,
    joined: options.joined ?? false,
    stems: options.stems ?? [],
    ahead: options.ahead ?? [],
    told: options.told ?? false,
    stated: options.stated ?? null,
  }
}

/** "both loops by round 3" → loops and round. */
export function markUsed(state: RoundState, used: string): void {
  const by = Number(/\b(?:rnd|round|row)\s*(\d+)/i.exec(used)?.[1] ?? 0)
  const mark = /both/i.test(used) ? FRONT | BACK : /front/i.test(used) ? FRONT : /back/i.test(used) ? BACK : 0
  if (mark === 0) return
  state.loops.fill(mark)
  state.loopsBy = by
}

/** "The stitches left unworked at the end of the rows form the points": said once of all rows. */
const ENDS_LEFT =
  /\b(?:stitch(?:es)?|sts?|chains?|ch|loops?|d\.? ?c)\b[^.\n]{0,30}\b(?:left|unworked)\b[^.\n]{0,40}\bends? of (?:the|each|every|all|most) rows?\b/i

/** Whether a text says of all its rows that stitches stay unworked at their ends. */
export const leavesUnworked = (text: string): boolean => ENDS_LEFT.test(text)

/** Whether a text says so, asked once for all its rounds. */
const endsLeft = new WeakMap<object, boolean>()
function leavesEnds(tree: { readonly text: string }): boolean {
  const known = endsLeft.get(tree) ?? leavesUnworked(tree.text)
  endsLeft.set(tree, known)
  return known
}

/** Whether stitches may be left over without a word: others work them as well, or the text says so of its rows. */
export const leavesOpen = (base: Base, tree: { readonly text: string }, turned: boolean): boolean =>
  (base.kind === 'round' && SHARED.has(base.state)) || ((turned || base.kind === 'chain') && leavesEnds(tree))
