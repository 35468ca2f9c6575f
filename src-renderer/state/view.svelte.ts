/** What of the project is shown, and how. Not part of the project, and not undone. */
import type { Settings } from '../../shared-types/bridge'
import type { Point } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import type { OfferedWay } from './background'
import type { Piles } from '../../src-core/layout/piles'
import type { FitFrom } from './edits/layout'
import type { LeftLayouts } from './edits/layout-kind'

export const PLACES = [
  'motif',
  'arrangement',
  'joins',
  'colours',
  'yarn',
  'progress',
  'kit',
  'paper',
] as const
export type PlaceId = (typeof PLACES)[number]
/** What the tool that marks says of a motif; loose ones are made, and not joined yet. */
export type Marking = 'made' | 'joined' | 'loose'
type DialogId = 'keys' | 'settings' | 'findings' | 'start' | 'take' | 'about' | 'licences' | 'help' | 'photo'
export type Tool = 'select' | 'paint' | 'turn' | 'mark' | 'move' | 'line'

/** With less width than this (CSS pixels), an open place takes the room of the hand. */
export const WIDE_WINDOW = 1500

/** Windows as small as a laptop's at 200 %: the places stand in a line. Style sheets ask for the same `max-` pixels. */
export const isCompact = (width: number, height: number): boolean => width < 860 || height < 560

interface FoundWays {
  readonly of: Project
  readonly for: string
  readonly ways: readonly OfferedWay[]
}

/** Lists of ways that are kept: undo leads back to what one was found for. */
export const WAYS_KEPT = 6

export class ViewState {
  place = $state<PlaceId | null>(null)
  dialog = $state<DialogId | null>(null)
  /** Null until one is chosen: each kind of project starts with its own. */
  tool = $state<Tool | null>(null)
  /** Colourway that the brush paints with; null wipes off what was painted. */
  brush = $state<string | null>(null)
  marking = $state<Marking>('made')
  /** The day that marks are given; null for today. */
  day = $state<string | null>(null)
  /**
   * What arrangements are to fit, how many motifs are made already (null until it is asked), and the proportions that
   * were asked for when one was taken.
   */
  fitTo = $state.raw<{
    readonly from: FitFrom
    readonly motifs: number | null
    /** Somebody typed that number; left out while it is a first one. */
    readonly isTyped?: true | undefined
    /** How many of these are in each colourway, by its id; left out until it is said. */
    readonly piles?: Piles | undefined
    readonly like: { readonly width: number; readonly height: number } | null
  }>({ from: 'size', motifs: null, like: null })
  /** Ways to a size, by the project and the wish that they were found for, the latest first. */
  waysFound = $state.raw<readonly FoundWays[]>([])
  /** Layouts of other kinds as they were left: whoever looks at a garland finds the blanket again. */
  leftLayouts = $state.raw<LeftLayouts>({})
  /** Motif that the Motif place shows; null for the one that is arranged. */
  motif = $state<string | null>(null)
  /** What the dialog of photos measures: a motif that is there, or (null) a new one; `file` was dropped or pasted. */
  photo = $state.raw<{
    readonly motif: string | null
    readonly file: File | null
    /** The file is the one that is kept with the motif. */
    readonly isKept?: boolean
  }>({
    motif: null,
    file: null,
  })
  /** Part of a garland's sequence that is open to be changed. */
  part = $state<number | null>(null)
  /** The Motif place shows a motif's written rounds in place of the map. */
  showRounds = $state(true)
  /** Title of a folded part that something led to: it opens, and forgets it. */
  wishedFold = $state<string | null>(null)
  /** Index of the round that something led to: the editor goes there, and forgets it. */
  wishedRound = $state<number | null>(null)
  /** The same of a border's written rounds, with the words there that it is about. */
  wishedBorder = $state.raw<{
    readonly entry: number
    readonly at: { readonly start: number; readonly end: number } | null
  } | null>(null)
  showLabels = $state(false)
  showJoins = $state(true)
  asTable = $state(false)
  /** The line that the hand drew on the map with the line tool, in mm of the panel: a row is laid along it. */
  drawnLine = $state.raw<readonly Point[] | null>(null)
  /** Motifs that a finding points at. */
  flagged = $state.raw<ReadonlySet<string>>(new Set())
  /** What was painted last and which others changed with it, for as long as `project` is the project. */
  painted = $state.raw<{
    readonly project: Project
    readonly words: string
    readonly others: ReadonlySet<string>
  } | null>(null)
  /** Folds that were opened or closed by hand, by place and title: they stay so for the session. */
  readonly folds = new Map<string, boolean>()
  #wished: Settings['theme'] = $state('system')
  #systemIsDark = $state(false)
  readonly theme: 'light' | 'dark' = $derived(
    this.#wished === 'system' ? (this.#systemIsDark ? 'dark' : 'light') : this.#wished,
  )

  wishTheme(theme: Settings['theme']): void {
    this.#wished = theme
  }

  /** Follows the system's theme from now on; answers the way to stop. */
  followSystem(query: MediaQueryList): () => void {
    const read = () => (this.#systemIsDark = query.matches)
    read()
    query.addEventListener('change', read)
    return () => query.removeEventListener('change', read)
  }

  /** Opens a place, or closes it where it is open. */
  togglePlace(place: PlaceId): void {
    this.place = this.place === place ? null : place
  }
}
