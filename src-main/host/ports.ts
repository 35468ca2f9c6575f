/** What the host needs from the two worlds it runs in, the desktop and the loopback server. */
import type {
  EditState,
  ExampleEntry,
  ExportRequest,
  HostEvents,
  HostFacts,
  PagePreview,
  PageRequest,
  Progress,
} from '../../shared-types/bridge'
import type { FontPlace, FontRead } from '../../shared-types/fonts'
import type { House } from '../../shared-types/house'
import type { Paper as PaperSize } from '../../shared-types/project'
import type { Written } from '../documents/session/ports'

/** A project that the user chose: a file of this machine, or a text that the browser handed over. */
export type ChosenProject = { readonly path: string } | { readonly name: string; readonly text: string }

export type FileType = 'petalyard' | 'pdf' | 'png' | 'svg' | 'csv' | 'html' | 'zip'

/** How a print dialog was closed. */
export type Printed = 'printed' | 'cancelled' | { readonly reason: string }

/** A place for a finished file. */
export interface Target {
  /** In words. */
  readonly where: string
  write(bytes: Uint8Array): Promise<Written>
}

export interface PlaceToSave {
  readonly path: string
  readonly isFree: boolean
}

/** The window that asks, with what only its world can do for it. `null` answers: the user cancelled. */
export interface Caller {
  readonly projectId: string
  /** Shows another project in a window of its own; brings that window to the front where it has one. */
  show(projectId: string): Promise<void>
  chooseProject(purpose: 'open' | 'take'): Promise<ChosenProject | null>
  /**
   * Where a project that has no file yet shall live. A place that the host chose itself (`isFree`) replaces nothing:
   * where somebody takes the name first it is asked for another, none of those `taken`.
   */
  placeToSave(name: string, taken: readonly string[]): Promise<PlaceToSave | null>
  /**
   * Where a project's file shall live now that its title is `name`; null where it stays. Only names that nobody chose
   * follow the title.
   */
  placeToFollow?(path: string, name: string): Promise<string | null>
  /** Another place for the project, or a copy that is handed out. */
  placeToSaveAs(name: string): Promise<{ readonly path: string } | { readonly copy: Target } | null>
  placeToExport(name: string, type: FileType): Promise<Target | null>
  /** Opens the print dialog on what the window has laid out for print; answers once it is closed. */
  print(paper: PaperSize): Promise<Printed>
  /** Null, or why they cannot be shown. */
  showEngineLicences(): Promise<string | null>
  closeWindow(): void
  showEditState(state: EditState): void
}

/** How the host reaches a window by itself. */
export type Announce = <Name extends keyof HostEvents>(
  projectId: string,
  event: Name,
  payload: HostEvents[Name],
) => void

export interface Examples {
  list(): Promise<readonly ExampleEntry[]>
  /** The example's file, or null where there is none of that name. */
  read(name: string): Promise<string | null>
}

export interface Exported {
  readonly bytes: Uint8Array
  readonly pages: number | null
}

/** What a window asks of paper, with the house style and the fonts that the settings have. */
export type Housed<Request> = Request & { readonly house?: House; readonly fonts?: readonly FontPlace[] }

/** The paper: made from the project's text, which was checked before. */
export interface Paper {
  make(
    request: Housed<ExportRequest>,
    onProgress: (progress: Progress) => void,
    signal: AbortSignal,
  ): Promise<Exported>
  /**
   * One page as a picture. Null where a later question of the same `asker`, for the same purpose, overtook it;
   * pages to print are never overtaken.
   */
  preview(request: Housed<PageRequest>, asker: string): Promise<PagePreview | null>
  /** What a font file is; rejects where it cannot be used, with why as the end of a sentence. */
  readFont(bytes: Uint8Array, face: number | null): Promise<FontRead>
  /** Ends what works in the background. */
  close(): Promise<void>
}

export type Facts = Omit<HostFacts, 'firstStart'>
