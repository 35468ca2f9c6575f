/**
 * The syntax tree of written rounds. It says what the text says, not what follows from it. Every node knows its
 * stretch of the text, so the designer's own words are never lost.
 */
import type { Terms } from '../../shared-types/project'
import type { StitchKey } from '../stitches/table'
import type { Filet, Square } from './filet'
import type { Loop, StitchForm, StitchName } from './stitch-name'
import type { Span, Token } from './tokens'

export type Noun =
  | { readonly kind: 'stitch'; readonly name: StitchName | null }
  | {
      readonly kind: 'space'
      readonly chains: number | null
      readonly corner: boolean
      /** "Ch-1 sp between first 2 tr": the stitch on both of its sides. */
      readonly between?: StitchName
    }
  /** Corner spaces, or the corner stitches where a round has none. */
  | { readonly kind: 'corner' }
  | { readonly kind: 'chain' }
  /** `yarn`: an adjustable ring, made as it is named ("6 sc in magic ring"). */
  | {
      readonly kind: 'ring'
      readonly yarn: boolean
      /** "A ring of 8 ch": what it is made of, told with what goes into it. */
      readonly chains?: number
    }
  /** Between stitches ("sp between next 2 dc") or between groups ("sp between shells"). */
  | { readonly kind: 'gap'; readonly of: 'stitch' | 'group' }
  /** The end of a row, along the side of a piece. */
  | { readonly kind: 'row-end' }
  /** The stitch at the tip or in the valley of a petal. */
  | { readonly kind: 'landmark'; readonly name: 'tip' | 'valley' }
  /** A stitch or space by its place in a petal, shell or group: "center dc of next shell". */
  | {
      readonly kind: 'within'
      readonly what: 'stitch' | 'space'
      readonly nth: number | 'center' | 'last'
      /** "Last 3 dc of petal", "each dc of next shell": so many from there on, or all that are left; none: that one. */
      readonly run?: number | 'all'
      readonly name: StitchName | null
      /** "Next 3-dc group": how many stitches the group has; none: not told. */
      readonly size?: number
    }
  /** Part of this very round: "first sc", "top of beg ch-3", "3rd ch of ch-4". */
  | { readonly kind: 'own'; readonly chain: number; readonly of: number; readonly words: string }

export type Which =
  | 'next'
  | 'each'
  | 'every'
  | 'same'
  | 'first'
  | 'last'
  | 'any'
  /** "2nd ch from hook". */
  | 'from-hook'
  | 'nth'
  /** "lp just made". */
  | 'made'
  /** "corresponding ch-3 sp of previous motif": in a motif that is joined to. */
  | 'elsewhere'

export type Extent =
  | { readonly to: 'end' }
  | { readonly to: 'last'; readonly count: number }
  /** `short`: so many of them before it; `center`: a stitch in the middle. */
  | { readonly to: 'corner'; readonly short?: number; readonly center?: true }
  | { readonly to: 'named'; readonly noun: Noun; readonly short: number }
  | { readonly to: 'landmark'; readonly name: 'tip' | 'valley' }

/** One part of a place: "in next 5 sts", "and in corner sp". */
export interface PlacePart extends Span {
  readonly which: Which
  /** How many places; for every, from-hook and nth the number. */
  readonly count: number
  /** "each of next 3": the stitches are worked in each, whatever their number. */
  readonly each: boolean
  readonly noun: Noun
  readonly extent: Extent | null
  readonly loop: Loop | null
  readonly around: boolean
  /** "around the post … from behind". */
  readonly behind?: boolean
  /** A number of the text ("of Rnd 2"), or rounds below the one in hand ("2 rnds below"). */
  readonly round: { readonly number: number } | { readonly below: number } | null
  /** "Cluster below": in the last round that has one. */
  readonly beneath?: boolean
  /** "skipped st", "unworked st". */
  readonly unworked: boolean
  /** "same sp as beg ch-3", "same st as joining": where the round began. */
  readonly asBeginning: boolean
  /** The words of the noun alone, for pointing. */
  readonly nounSpan: Span
}

export interface Place extends Span {
  readonly parts: readonly PlacePart[]
  /** "over next 3 sts": several places under one stitch. */
  readonly over: boolean
}

export interface WorkItem extends Span {
  readonly type: 'work'
  readonly count: number | null
  readonly stitch: StitchName
  readonly place: Place | null
  /** "3 sp", "1 bl" of filet. */
  readonly square?: Square
}
export interface ChainItem extends Span {
  readonly type: 'chain'
  readonly count: number
  /** Lies between what goes into one place and what goes into the next. */
  readonly apart?: boolean
}
export interface SkipItem extends Span {
  readonly type: 'skip'
  readonly place: Place
  /** "leave rem sts unworked". */
  readonly unworked: boolean
  /** "leave last 3 sts": how many that are. */
  readonly left?: number
  /** Covered by the long stitch before it. */
  readonly covers?: true
}
export interface GroupItem extends Span {
  readonly type: 'group'
  readonly bracket: string
  readonly items: readonly Item[]
  readonly place: Place | null
  readonly times: number | null
  /** "[…] around". */
  readonly around: boolean
  /** "[…] across to next corner". */
  readonly toCorner: boolean
  readonly lastCount: number
}
export interface StarItem extends Span {
  readonly type: 'star'
  readonly mark: string
  readonly items: readonly Item[]
  readonly repeat: RepeatClause | null
  /** `*…* 6 times`: the amount stands after a closing asterisk and counts all. */
  readonly closed: boolean
}
export interface RepeatClause extends Span {
  /** As said: "4 more times" 4, "twice" 2; null where it goes on around. */
  readonly amount: number | null
  /** "more", "in all": the amount is said without doubt. */
  readonly said: 'plain' | 'more' | 'in-all'
  readonly lastCount: number
  readonly toCorner: boolean
  readonly endAtDouble: boolean
  readonly ending: RepeatEnding | null
  /** Only the words that tell how often, for pointing. */
  readonly amountSpan: Span
}
export interface RepeatEnding extends Span {
  /** `after`, `before`: the repeat goes as far as the item that is named. */
  readonly mode: 'append' | 'replace' | 'omit' | 'early' | 'after' | 'before'
  readonly items: readonly Item[]
}
/** "then rep from * to ** once more". */
export interface AgainItem extends Span {
  readonly type: 'again'
  readonly toDouble: boolean
  readonly times: number
}
export interface DoubleMarkItem extends Span {
  readonly type: 'double'
}
export interface JoinItem extends Span {
  readonly type: 'join'
  readonly place: Place | null
  /** "The last 5 ch being joined …": it takes the place of the last stitch of the repeat before it. */
  readonly ofLast?: boolean
}
/** New yarn joined at a place, or a change of colour. */
export interface ColourItem extends Span {
  readonly type: 'colour'
  readonly colour: string | null
  readonly place: Place | null
  /** "join with sc in any sp": the stitch that the yarn is joined with. */
  readonly stitch: StitchName | null
}
export interface ScopeItem extends Span {
  readonly type: 'scope'
  readonly loop: Loop | null
  readonly around: boolean
  readonly round: { readonly number: number } | { readonly below: number } | null
  readonly behind: boolean
  readonly opposite: boolean
  /** Turned round with the work: only where the first side of the chain is done. */
  readonly rotated?: boolean
  /** "Starting in 2nd ch from hook": where a chain is begun. */
  readonly along?: PlacePart
  /** Without "in" or "working in", for pointing. */
  readonly words: Span
}
/** "In next ch-5 sp work …". */
export interface PlacedItem extends Span {
  readonly type: 'placed'
  readonly place: Place
  readonly items: readonly Item[]
}
export interface StatementItem extends Span {
  readonly type: 'statement'
  readonly says: 'counts' | 'does-not-count' | 'made'
  /** Counts as: stitch and chains, where they are named. */
  readonly stitch: StitchKey | null
  readonly cluster: boolean
  readonly chains: number
  /** "… except in Rows 4 and 5": the rounds of which the contrary is said. */
  readonly notIn?: readonly number[]
}
export interface CountEntry extends Span {
  readonly count: number
  readonly noun: Noun
  readonly words: string
  /** "One chain loop at each end": so many of each, or of all. */
  readonly ofEach?: true
  /** "(36, 48 dc)" of two rounds: the count of each. */
  readonly inTurn?: readonly number[]
  /** "60 dc after Rnd 4": the round that is meant, of several written as one. */
  readonly round?: number
}
export interface CountItem extends Span {
  readonly type: 'count'
  readonly entries: readonly CountEntry[]
  /** "until you have 7 loops": what is repeated goes on up to it. */
  readonly until?: true
}
export interface FoundationItem extends Span {
  readonly type: 'foundation'
  /** "form a ring" closes the chain made before; "adjustable" makes one of yarn. */
  readonly ring: 'adjustable' | 'close-chain'
  /** "A ring of 6 ch": told with the ring itself. */
  readonly chains?: number
}
export interface RepeatRoundItem extends Span {
  readonly type: 'repeat-round'
  /** 'same': the round of that number in another part. */
  readonly from: number | 'last' | 'same'
  readonly to: number | 'last' | 'same'
  /** "as for first motif": the part whose round is meant; null: this one. */
  readonly part: string | null
  readonly times: number
  /** "Rep last 2 rows": how many that are, in turn. */
  readonly lastOf?: number
  /** "… but with 7 dc instead of 3": what is other than there. */
  readonly changes?: readonly RoundChange[]
  /** "…, complete as for first motif": what is left is worked as the repeats of that round go. */
  readonly completes?: boolean
  /** "…, having 1 more group on each side": worked on what has grown; the words that say so. */
  readonly grows?: Span
}
/** So many stitches or chains instead of so many; `from` null: whatever chains part the stitches. */
export interface RoundChange extends Span {
  readonly stitch: StitchName | 'ch'
  readonly to: number
  readonly from: number | null
  /** "…, taking each dc round a dc of Rnd 4": the round that is worked into instead; the numbers say nothing. */
  readonly round?: number
}
/** "working 2 dc in every 3rd dc": changes the run of stitches before it. */
export interface EveryItem extends Span {
  readonly type: 'every'
  readonly count: number
  readonly nth: number
}
/** "36 sc evenly around", "increasing 6 sts evenly around". */
export interface EvenItem extends Span {
  readonly type: 'evenly'
  readonly count: number | null
  readonly stitch: StitchName | null
  readonly change: 'work' | 'increase' | 'decrease'
  /** "…, counting the ch-3 as a dc": what begins the round is one of them. */
  readonly withFirst?: boolean
  /** "Evenly around": of a piece in rows around all its sides. */
  readonly around?: boolean
}
/** A cluster told in steps: "(yo, insert hook …) 3 times, yo and draw through all lps (cl made)". */
export interface DescribedItem extends Span {
  readonly type: 'described'
  readonly place: Place | null
  /** Ends the stitch: "draw through all lps on hook". */
  readonly closes: boolean
}
export interface NoteItem extends Span {
  readonly type: 'note'
  /** Not understood: a single unknown word, words that tell of stitches, or other words; none: an aside. */
  readonly unread?: 'word' | 'work' | 'words'
  /** dropped: the stitches before it are drawn together to a popcorn; held: to a cluster, once it is closed. */
  readonly effect: 'turn' | 'no-join' | 'fasten-off' | 'dropped' | 'held' | null
}

export type Item =
  | WorkItem
  | ChainItem
  | SkipItem
  | GroupItem
  | StarItem
  | AgainItem
  | DoubleMarkItem
  | JoinItem
  | ColourItem
  | ScopeItem
  | PlacedItem
  | StatementItem
  | CountItem
  | FoundationItem
  | RepeatRoundItem
  | EveryItem
  | EvenItem
  | DescribedItem
  | NoteItem

export interface RoundNode extends Span {
  /** Numbers of the rounds that this text is worked for; null where it has none of its own. */
  readonly numbers: readonly [number, number] | null
  /** "Edging", "leaf": a name in the heading. */
  readonly label: string | null
  readonly heading: Span | null
  /** The part of the pattern that it belongs to ("Leaf", "Second motif"); null where the text has no parts. */
  readonly part: string | null
  readonly items: readonly Item[]
  /** So many pieces alike are worked in rows ("Petals (make 5)"): this is a row of each. */
  readonly pieces?: number
  /** The text cannot be read on (a bracket that is never closed): its account is open. */
  readonly broken: boolean
}

/** A stitch that the text defines under "Special stitches". */
export interface Definition extends Span {
  readonly names: readonly string[]
  /** The names without blanks and hyphens: under these they are looked up. */
  readonly keys: readonly string[]
  readonly form: StitchForm
  /** The stitch that its name ends in ("long dc"), or null. */
  readonly stitch: StitchKey | null
  readonly items: readonly Item[]
  /** The words that explain it. */
  readonly description: Span
}

/** What the chains at the beginning of every round stand for, as a note or the first round says it. */
export interface UsualChain {
  readonly chains: number
  readonly statement: StatementItem
}

export interface RoundsTree {
  readonly text: string
  readonly terms: Terms
  readonly tokens: readonly Token[]
  readonly rounds: readonly RoundNode[]
  readonly definitions: readonly Definition[]
  readonly usual: readonly UsualChain[]
  /** The loop of all rounds, where a note says it. */
  readonly usualLoop?: Loop | null
  /** What the spaces and blocks of its rows are. */
  readonly filet?: Filet | null
  /** A note says that all rows are turned. */
  readonly turned?: boolean
  /** Colours that the text lists, in order. */
  readonly colours: readonly string[]
  /** How often each repeat runs in all, as far as the account found it out; for printing in full. */
  readonly repeats: ReadonlyMap<Item, number>
}

/** All parts of places that items name. */
export function* placeParts(items: readonly Item[]): Generator<PlacePart> {
  for (const item of items) {
    if ('place' in item && item.place) yield* item.place.parts
    if ('items' in item) yield* placeParts(item.items)
  }
}
