/**
 * What the window may ask of its host, and what the host tells the window. One surface for both hosts: the
 * desktop (Electron) and the loopback server that shows the same window in a browser. The window finds it as
 * `window.petalyard`.
 *
 * - Answers are outcomes, never exceptions; problems are findings with the words of the catalogue.
 * - The window owns the project and its history. The host keeps it: the window hands over the whole project
 *   (the file's own text, JSON) within a second of each change, and the host sees that it is never lost.
 * - No path ever comes from the window. A window has one project for life; the host knows which, by who asks.
 */
import type { CommandId } from './commands'
import type { Finding } from './finding'
import type { KeptFont } from './fonts'
import type { House } from './house'
import type { Paper, SheetStyle, Terms, UnitSystem, Hand } from './project'
import type { PictureChoice } from './pictures'
import type { LabelCount, ListName, OptionalPage, SheetName } from './sheets'

export type Outcome<T> =
  | { readonly outcome: 'done'; readonly value: T }
  | { readonly outcome: 'cancelled' }
  | { readonly outcome: 'refused'; readonly problem: Finding }

export type Unsubscribe = () => void

/** Long work: how it ended, and the way to end it early (the outcome is then 'cancelled'). */
export interface Job<T> {
  readonly finished: Promise<Outcome<T>>
  cancel(): void
}

/** How far long work has come; `words` say what is being done. */
export interface Progress {
  readonly done: number
  readonly total: number
  readonly words: string
}

/** The whole project as the text of its file. `revision` counts the window's changes and only ever grows. */
export interface ProjectChange {
  readonly revision: number
  readonly text: string
}

/**
 * Where the project came from: one of the examples, nothing, a file, the app's own folder, an interrupted
 * run, or another open project.
 */
export type ProjectOrigin = 'example' | 'blank' | 'file' | 'kept' | 'recovered' | 'duplicate'

/** How the project is kept at this moment; what the title and the header tell. */
export interface Keeping {
  /** The file's name without its ending, else the project's title, else "Untitled". */
  readonly name: string
  /** 'nowhere': nothing was changed yet. 'app': in the app's own folder. 'file': in a file of the user's. */
  readonly place: 'nowhere' | 'app' | 'file'
  /** The place in words that a person can find it by ("throw.petalyard in Documents"). */
  readonly where: string
  /** Last change that the host holds, and the last one that is in the place named above. */
  readonly revision: number
  readonly savedRevision: number
  /** When that was, as an ISO time; null before the first time. */
  readonly savedAt: string | null
  /**
   * Why saving does not work at the moment. What was changed is kept in the app's own folder meanwhile, but for
   * `app/cannot-keep`: then it is in memory alone.
   */
  readonly problem: Finding | null
  /** What is otherwise than usual although everything is kept: no copy of the former file, say. */
  readonly remark?: Finding
  /** Why the app's own folder cannot be written at the moment, whether or not anything was changed. */
  readonly folderProblem: Finding | null
  /** The file was changed or removed by somebody else since it was read; saving waits for an answer. */
  readonly disk: DiskState
  /** While it is changed: what the file holds now, beside what is here. */
  readonly theirs?: OnDisk
}

/** The version of somebody else, in words of what differs. */
export interface OnDisk {
  /** When the file was changed, as an ISO time. */
  readonly changedAt: string
  /** "Rows: 14 here, 9 in the file", a few of them; none where no number differs. */
  readonly differs: readonly string[]
  /** How many more numbers differ. */
  readonly more: number
}

export type DiskState = 'same' | 'changed' | 'missing'

export interface OpenProject {
  readonly text: string
  readonly origin: ProjectOrigin
  /** First revision the window may use: one more than what the host holds. */
  readonly nextRevision: number
  /** What reading the file remarked: brought up from an older version, unknown ids… */
  readonly findings: readonly Finding[]
  readonly keeping: Keeping
  /** Why the text is no project that can be shown: it was kept by another version, or came to harm. */
  readonly unreadable?: Finding
}

export interface HostFacts {
  readonly host: 'desktop' | 'browser'
  readonly platform: 'mac' | 'windows' | 'linux'
  readonly version: string
  /** No window was ever opened before on this machine by this person. */
  readonly firstStart: boolean
  /** The host draws a menu of its own; without one the window offers the commands itself. */
  readonly hasMenu: boolean
}

export interface ExampleEntry {
  readonly name: string
  readonly title: string
  /** One sentence: what it is and for whom. */
  readonly words: string
}

/** A project that can be opened again. `id` stands for its place; the window never learns to name places. */
export interface RecentEntry {
  readonly id: string
  readonly name: string
  readonly where: string
  readonly place: 'app' | 'file'
  /** ISO time. */
  readonly changedAt: string
  /** Its window was cut off before everything was in the file. */
  readonly interrupted: boolean
}

export interface Settings {
  readonly theme: 'system' | 'light' | 'dark'
  /** Of text and buttons, in percent, where the host has no zoom of its own (the desktop). */
  readonly zoom: number
  /** What new projects start with. */
  readonly units: UnitSystem
  readonly terms: Terms
  readonly hand: Hand
  readonly currency: string
  readonly paper: Paper
  /** What paper of every project says of who makes it. */
  readonly house: House
  /** Fonts for other scripts, on paper of every project. */
  readonly fonts: readonly KeptFont[]
}

/** What becomes of the settings; of the house style only the fields that change, so that two changes at once both hold. */
export type SettingsChange = Partial<Omit<Settings, 'house' | 'fonts'>> & {
  readonly house?: Partial<House> | undefined
}

/** A font file that a person chose. */
export interface NewFont {
  readonly name: string
  /** Its bytes in base64. */
  readonly data: string
  readonly face: number | null
}

export type FontAdded = { readonly settings: Settings } | { readonly choose: readonly string[] }

type NewProject = { readonly from: 'blank' } | { readonly from: 'example'; readonly name: string }

/** A package of others of which something is in the program. */
export interface LicenceEntry {
  readonly name: string
  readonly version: string
  /** As an SPDX expression: "MIT AND OFL-1.1". */
  readonly licence: string
  readonly text: string
}

/** Another project, read only to take motifs and yarns from. */
interface TakenProject {
  readonly name: string
  readonly text: string
}

export interface PaperChoice {
  readonly paper?: Paper | undefined
  readonly style?: SheetStyle | undefined
  readonly terms?: Terms | undefined
  /** What is printed; everything but the labels where absent. */
  readonly sheets?: readonly SheetName[] | undefined
  /** How many labels; one page to copy where absent. */
  readonly labels?: LabelCount | undefined
  /** An appliqué's template mirrored, for marking from the back. */
  readonly reverse?: boolean | undefined
  /** Pages that are left out; those of the house style where absent. */
  readonly leaveOut?: readonly OptionalPage[] | undefined
  /** Page numbers from 1; all pages where absent. */
  readonly pages?: readonly number[] | undefined
}

export type ExportRequest = { readonly text: string } & (
  | ({ readonly kind: 'map' } & PaperChoice)
  | ({ readonly kind: 'picture' } & PictureChoice)
  /** The map as one HTML file for a phone. */
  | { readonly kind: 'page' }
  /** The same sheets in several editions ("us", "a4"…, crossed), in one ZIP. */
  | ({ readonly kind: 'editions'; readonly editions: readonly string[] } & Pick<
      PaperChoice,
      'sheets' | 'labels' | 'reverse' | 'leaveOut'
    >)
  /** One of the lists, as CSV. */
  | { readonly kind: 'table'; readonly table: ListName }
)

export interface ExportDone {
  /** Where it went, in words. */
  readonly where: string
  readonly bytes: number
  readonly pages: number | null
}

export interface PageRequest extends PaperChoice {
  readonly text: string
  /** From 1. */
  readonly page: number
  /**
   * What the page is for. A later question for a page to look at overtakes the ones before it (they are cancelled);
   * pages to print all come.
   */
  readonly purpose?: 'look' | 'print' | undefined
}

export interface PagePreview {
  /** The page as a picture of its own, in the letters that are printed. */
  readonly svg: string
  readonly page: number
  readonly pageCount: number
  readonly title: string
  /** Size of the page, in mm. */
  readonly width: number
  readonly height: number
}

interface PrintSheets {
  /** What the dialog starts with. */
  readonly paper: Paper
}

export interface EditState {
  /** What undo and redo would take back and do again ("paint 3 motifs"); null where there is nothing. */
  readonly undo: string | null
  /** How the window spells what its menu says too. */
  readonly terms: Terms
  readonly redo: string | null
}

/** What somebody changed on disk meanwhile: keep the window's version, or take the file's. */
export interface DiskAnswer extends ProjectChange {
  readonly answer: 'keep-mine' | 'take-theirs'
}

/** Each asks the host for one thing. Every payload is checked in the host before anything is done. */
export interface HostOperations {
  facts(nothing?: null): Promise<Outcome<HostFacts>>
  /** The project of this window. */
  currentProject(nothing?: null): Promise<Outcome<OpenProject>>
  /** Hands over what was changed; within a second of each change. */
  keepProject(change: ProjectChange): Promise<Outcome<Keeping>>
  /** Writes now. A project without a file gets one: the desktop asks where, the browser uses the app's folder. */
  saveProject(change: ProjectChange): Promise<Outcome<Keeping>>
  /** The desktop asks for a file that the project then lives in; the browser downloads a copy. */
  saveProjectAs(change: ProjectChange): Promise<Outcome<Keeping>>
  /** Opens a copy in a window of its own. */
  duplicateProject(change: ProjectChange): Promise<Outcome<null>>
  /** The same without marks, and without what was weighed and counted while it was made. */
  duplicateAsPlan(change: ProjectChange): Promise<Outcome<null>>
  newProject(what: NewProject): Promise<Outcome<null>>
  openProject(nothing?: null): Promise<Outcome<null>>
  openRecent(entry: { readonly id: string }): Promise<Outcome<null>>
  /** Takes an entry off the list. A project in the app's own folder goes to its bin for 30 days. */
  forgetRecent(entry: { readonly id: string }): Promise<Outcome<null>>
  listRecent(nothing?: null): Promise<Outcome<readonly RecentEntry[]>>
  listExamples(nothing?: null): Promise<Outcome<readonly ExampleEntry[]>>
  /** Reads another project, chosen by the user, to take a motif or a yarn from. */
  takeFromProject(nothing?: null): Promise<Outcome<TakenProject>>
  answerDisk(answer: DiskAnswer): Promise<Outcome<OpenProject>>
  previewPage(request: PageRequest): Promise<Outcome<PagePreview>>
  /** Opens the system's print dialog on the sheets that the window has laid out for it; done once it is closed. */
  printSheets(sheets: PrintSheets): Promise<Outcome<null>>
  settings(nothing?: null): Promise<Outcome<Settings>>
  changeSettings(change: SettingsChange): Promise<Outcome<Settings>>
  /**
   * Keeps a font for other scripts. Of a collection without `face` (from 1) it answers with the names of its fonts, of
   * which one has to be chosen.
   */
  addFont(font: NewFont): Promise<Outcome<FontAdded>>
  removeFont(font: { readonly id: string }): Promise<Outcome<Settings>>
  /** Names undo and redo in the host's menu. */
  showEditState(state: EditState): Promise<Outcome<null>>
  /** Whose work is in the program. */
  licences(nothing?: null): Promise<Outcome<readonly LicenceEntry[]>>
  /** Shows the licences of the desktop's own browser, as it brings them, in the system's program for pages. */
  showEngineLicences(nothing?: null): Promise<Outcome<null>>
  closeWindow(nothing?: null): Promise<Outcome<null>>
}

/** It was stopped, or no longer lets this window in: which finding says so. */
export type HostGone = 'app/host-gone' | 'app/shut-out' | null

/** What the host tells the window by itself. */
export interface HostEvents {
  keeping: Keeping
  command: CommandId
  settings: Settings
  recent: readonly RecentEntry[]
  /** The same project was opened in another tab, which has it now; this one may only look on. */
  movedElsewhere: null
  /** Why the program behind the window cannot be reached, or null when it can again: nothing is kept meanwhile. */
  hostGone: HostGone
  /** The program's files were replaced while it runs: it works on with what it has in memory, and has to be started again. */
  updated: null
}

/** The whole surface, as `window.petalyard`. */
export interface HostBridge extends HostOperations {
  /** Computes, asks where to, writes. Progress comes several times a second. */
  exportProject(request: ExportRequest, onProgress?: (progress: Progress) => void): Job<ExportDone>
  onKeeping(listener: (keeping: Keeping) => void): Unsubscribe
  onCommand(listener: (command: CommandId) => void): Unsubscribe
  onSettings(listener: (settings: Settings) => void): Unsubscribe
  onRecent(listener: (entries: readonly RecentEntry[]) => void): Unsubscribe
  onMovedElsewhere(listener: () => void): Unsubscribe
  onHostGone(listener: (gone: HostGone) => void): Unsubscribe
  onUpdated(listener: () => void): Unsubscribe
  /** Called before the window closes: hand over what was not yet handed over, then settle the promise. */
  onBeforeClose(listener: () => Promise<void>): Unsubscribe
}

export type OperationName = keyof HostOperations
export type OperationPayload<Name extends OperationName> = Exclude<
  Parameters<HostOperations[Name]>[0],
  undefined
>
export type OperationValue<Name extends OperationName> =
  Awaited<ReturnType<HostOperations[Name]>> extends Outcome<infer Value> ? Value : never

/** Done, with its value. */
export function done<T>(value: T): Outcome<T> {
  return { outcome: 'done', value }
}

/** The user or the window thought better of it. */
export const CANCELLED = { outcome: 'cancelled' } as const

/** Not done; `problem` says why, what was kept and what would mend it. */
export function refused(problem: Finding): { readonly outcome: 'refused'; readonly problem: Finding } {
  return { outcome: 'refused', problem }
}

declare global {
  interface Window {
    readonly petalyard: HostBridge
  }
}
