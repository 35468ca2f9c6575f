/**
 * What the drawing shows and what it tells. The window hands a scene in and hears of gestures; the drawing
 * changes nothing by itself but its own view (where it looks and how close).
 */
import type { Plan, Point } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'

export type Theme = 'light' | 'dark'

/**
 * What a press and a drag does: select motifs, paint them, rotate them, mark them as made; on a panel also move them, and draw a
 * line by hand that a row is to be laid along.
 */
export type Tool = 'select' | 'paint' | 'turn' | 'mark' | 'move' | 'line'

export interface Scene {
  readonly project: Project
  readonly plan: Plan
  /** The plan before the change that is being tried out: its frame stays visible, dashed. */
  readonly previous: Plan | null
  readonly theme: Theme
  /** Ids of placed motifs ("row,place"). */
  readonly selection: ReadonlySet<string>
  /** The placed motif that the keyboard is on. */
  readonly focus: string | null
  readonly tool: Tool
  readonly showLabels: boolean
  readonly showJoins: boolean
  /** Corners of the edging and the stitches between them; left out: shown. */
  readonly showCorners?: boolean
  /** Placed motifs that a finding points at. */
  readonly flagged: ReadonlySet<string>
  /** Placed motifs that changed along with what was painted. */
  readonly changed?: ReadonlySet<string> | undefined
  /** Placed motifs whose colour is fixed: painted by hand or kept. */
  readonly fixed?: ReadonlySet<string>
  /** Placed motifs that are made, and those of them that are joined. */
  readonly made?: ReadonlySet<string>
  readonly joined?: ReadonlySet<string>
  /** A line that was drawn by hand, in mm on the panel; it is shown for as long as it is there. */
  readonly line?: readonly Point[] | null
}

/** `cancel`: the gesture was given up (Escape, a second finger); whatever it tried out is to be undone. */
export type Phase = 'start' | 'move' | 'end' | 'cancel'

export type SelectHow = 'replace' | 'add' | 'toggle'

/** A rectangle in CSS pixels from the top left of the drawing's container. */
export interface ScreenBox {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

/** Where the drawing looks. All positions in CSS pixels from the top left of the container. */
export interface DrawingView {
  /** CSS pixels for one mm. */
  readonly scale: number
  /** 1 = the whole plan just fits. */
  readonly zoom: number
  /** The finished size on screen; parts of it may lie outside the container. */
  readonly frame: ScreenBox
  /** The clear space in the line over the width, and the one in the line beside the height (a tall box whose
   * number is set upright along the line, or level under a line that is too short); null where the plan is empty. */
  readonly widthNumber: ScreenBox | null
  readonly heightNumber: ScreenBox | null
  readonly levelHeight: boolean
}

export interface Size {
  /** mm */
  readonly width: number
  readonly height: number
}

/** How far motifs are moved, in mm. */
export interface Shift {
  readonly dx: number
  readonly dy: number
}

export interface DrawingCallbacks {
  /** An empty list with 'replace' clears the selection. */
  onSelect(ids: readonly string[], how: SelectHow): void
  /** Motifs that the brush met since the last call; each motif comes once in a stroke. */
  onPaint(ids: readonly string[], phase: Phase): void
  /** Motifs that are marked, as `onPaint` has them. */
  onMark?(ids: readonly string[], phase: Phase): void
  /** The finished size that the hand asks for. */
  onResize(size: Size, phase: Phase): void
  /** The motif that was pressed (it takes the keyboard's place), or null for none. */
  onFocus(id: string | null): void
  /** The view changed, or the frame in it. Called at most once a frame. */
  onView(view: DrawingView): void
  /** Tool 'turn' where all motifs turn together: degrees clockwise since the start of the drag. */
  onTurn?(degrees: number, phase: Phase): void
  /** Tool 'turn' on a panel: the motifs that were chosen when it started, and degrees clockwise since then. */
  onTurnItem?(ids: readonly string[], degrees: number, phase: Phase): void
  /** Tool 'move': the motifs that were chosen when it started, and how far they are moved since then. */
  onMove?(ids: readonly string[], shift: Shift, phase: Phase): void
  /** Tool 'line': the line so far, in mm on the panel. */
  onDrawLine?(points: readonly Point[], phase: Phase): void
  /** The pointer is over a motif, or over none. */
  onHover?(id: string | null): void
  /** The menu key or the second button on a motif or beside all of them; CSS pixels in the container. */
  onContext?(id: string | null, at: { readonly x: number; readonly y: number }): void
}

/** Where the arrow keys go. */
export type Direction = 'left' | 'right' | 'up' | 'down'
