/**
 * What differs between the kinds of layout in the window. There is one of these for a blanket, one for a garland
 * and one for an appliqué; the rest of the window asks it, and no project what it is. It knows no component: those
 * stand in `parts.ts`. A plan may still be that of another kind for a moment, while the next one is made.
 */
import type { MotifAccount, Plan, PlanNumbers } from '../../shared-types/plan'
import type { ClosedEnds, Project } from '../../shared-types/project'
import type { ListName } from '../../shared-types/sheets'
import type { PlacedPiece } from '../../src-core/layout/placed'
import type { Tool } from '../drawing/scene'
import type { OwnStart } from '../start/own-start.svelte'
import type { LayoutKind } from '../state/edits/layout-kind'
import type { LedgerFigure } from '../state/ledger-figures'
import type { Wish } from '../state/resize'
import type { Field } from '../state/sentence'

export interface KindOfLayout {
  readonly kind: LayoutKind
  /** "Blanket" */
  readonly name: string
  /** What it is made into: "a blanket". */
  readonly one: string
  /** What one thing on the map is called. */
  readonly thing: 'motif' | 'item'

  readonly tools: readonly [Tool, ...Tool[]]
  /** What the box is called that shows joins on the map; null where there are none to show. */
  readonly joinsName: string | null
  /** How what lies on the map gets its colourway, where no pattern lays them. */
  readonly colouring?: string
  /** Made motifs are joined, fastened or sewn down. */
  canJoin(project: Project): boolean
  /** Colours can be kept and freed, since a pattern may change them. */
  readonly keepsColours: boolean

  /** "Map of 120 motifs", "Garland of 29 items", "Panel of 27 items". */
  mapLabel(plan: Plan): string
  /** What the keys of the map do, for ears. */
  readonly mapHelp: string
  /** What is said where there is nothing to draw. */
  readonly emptyMap: EmptyMap
  /** Whether there is anything to draw. */
  isEmpty(plan: Plan): boolean
  /** What stands on the dimension lines; `from` is the plan that a change starts from. */
  measures(project: Project, plan: Plan, from: Plan): Measures
  /** A frame that is dragged: the project of the size that the hand asks for, and what undo calls it. */
  readonly resize: { readonly change: string; edit(project: Project, from: Plan, wish: Wish): Project }

  /** "55, row 5, motif 7, colourway A Dawn, 4 join points". */
  pieceWords(project: Project, plan: Plan, piece: PlacedPiece): string
  readonly hand: HandWords
  /** What a brush that met these places paints; a colourway of another motif paints nothing. Null frees. */
  painting(project: Project, plan: Plan, ids: readonly string[], colourway: string | null): Painting

  /** Of the ledger, without yarn and money; `before` while something is tried. */
  figures(project: Project, plan: PlanNumbers, before: PlanNumbers | null): LedgerFigure[]
  /** What stands under the names of two places, in one or two lines. */
  readonly summary: Readonly<Record<'arrangement' | 'joins', (project: Project, plan: Plan) => string[]>>
  /**
   * What an arrow key does on a part of the sentence that is about the layout: `steps` up or right (more), or down and
   * left. `plan` is the one before anything was tried. Null where it does nothing.
   */
  nudge(field: Field, steps: number, isSideways: boolean, plan: Plan): Nudge | null

  readonly paper: PaperOfKind
  /** How many motifs a project lays out, about; none where it is quick to plan whatever their number. */
  motifsAbout(project: Project): number
  /** What moves is measured alone: it is planned anew sooner than it could be sent to another thread. */
  readonly isPlannedHere: boolean

  readonly start: StartOfKind
}

/** How one begins from the motif on the table. */
export interface StartOfKind {
  /** What the examples of it are called. */
  readonly examples: string
  /** What was answered of it. */
  made(answers: Pick<OwnStart, 'number' | 'form' | 'ends' | 'forChild' | 'hung' | 'swags' | 'panel'>): Made
  /** The size that arrangements are proposed for; null where there is nothing to choose. */
  wish(made: Made): Wish | null
  /** The project laid out as answered, from one motif in one colourway. */
  lay(project: Project, motif: string, colourway: string, made: Made): Project
}

/** What joined motifs become. */
export type BlanketForm = 'flat' | 'shawl' | 'round'

/** What it is made into, with the one or two numbers (mm) that this needs. */
export type Made =
  | {
      readonly kind: 'blanket'
      readonly width: number
      readonly height: number
      /** Left out: flat. A shawl is a triangle; what is joined in the round is so wide around. */
      readonly form?: BlanketForm
      /** Of what is joined in the round: the ends that are closed; left out: none. */
      readonly ends?: ClosedEnds
      /** For a baby or child: arrangements that close well come first. */
      readonly forChild?: true
    }
  | { readonly kind: 'garland'; readonly length: number }
  | { readonly kind: 'garland'; readonly wall: number; readonly swags: number }
  | { readonly kind: 'applique'; readonly width: number; readonly height: number }
  | { readonly kind: 'applique'; readonly diameter: number }

/** A change of the project, with the name that undo tells. */
export interface Nudge {
  readonly label: string
  readonly edit: (project: Project) => Project
}

export interface PaperOfKind {
  /** What to put it together by, in the list of sheets and behind "Print". */
  readonly label: string
  readonly what: string
  /** The same where it is sold as a kit: the kit card goes in with it. The packing list is the seller's own. */
  readonly toPutIn: { readonly label: string; readonly what: string }
  /** It without the card, where somebody may want that. */
  readonly alone?: string
  /** It is a template, which can be mirrored for the back. */
  readonly isTemplate: boolean
  /** What comes one after the other, as a list for a spreadsheet. */
  readonly list: { readonly list: ListName; readonly label: string }
}

export interface Painting {
  /** "3 motifs and 2 fillers" */
  readonly count: string
  readonly edit: (project: Project) => Project
}

export interface HandWords {
  /** What a press on the map does, while nothing is in the hand. */
  readonly teaching: string
  /** What the keys do, in few words. */
  readonly moving: string
  /** The name of what is in the hand, and what is said of it beside that. */
  title(plan: Plan, piece: PlacedPiece, account: MotifAccount): readonly [name: string, beside: string]
  /** How it is worked; empty where nothing is said of that. */
  work(plan: Plan, piece: PlacedPiece): string
  /** The picture is lower, since fields stand below it. */
  readonly isLow: boolean
}

export interface EmptyMap {
  readonly what: string
  readonly then: string
  /** On the button that leads there. */
  readonly way: string
  readonly to: { readonly dialog: 'start' } | { readonly place: 'arrangement' }
}

/** A number on a dimension line, and what typing there changes. In mm. */
export interface Measure {
  readonly label: string
  readonly value: number
  readonly least: number
  readonly most: number
  /** Told in mm (or inches) rather than as a span. */
  readonly isShort?: boolean
  /** Null where the number follows from others and cannot be typed. */
  readonly edit: ((project: Project, mm: number) => Project) | null
  /** The name of the change, for undo. */
  readonly change: string
}

export interface Measures {
  readonly across: Measure
  readonly down: Measure
}
