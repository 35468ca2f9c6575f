/**
 * The commands of the menu: one table from which the desktop's menu is built, and from which the window
 * takes names and shortcuts where the host has no menu (in a browser).
 */

export type CommandId =
  | 'new'
  | 'open'
  | 'save'
  | 'save-as'
  | 'duplicate'
  | 'duplicate-plan'
  | 'take-from'
  | 'print'
  | 'export-map'
  | 'export-picture'
  | 'export-page'
  | 'export-materials'
  | 'export-order'
  | 'settings'
  | 'undo'
  | 'redo'
  | 'select-all'
  | 'keep-colours'
  | 'free-colours'
  | 'zoom-in'
  | 'zoom-out'
  | 'zoom-fit'
  | 'zoom-actual'
  | 'larger'
  | 'smaller'
  | 'usual-size'
  | 'keys'
  | 'help'
  | 'licences'
  | 'about'

export interface CommandEntry {
  readonly id: CommandId
  /** An ellipsis where something is asked before anything happens. */
  readonly label: string
  /** "Mod" is Command on a Mac and Control elsewhere; null where there is no shortcut. */
  readonly shortcut: string | null
  readonly menu: 'file' | 'edit' | 'view' | 'help'
  /** Entries of one group stand together; a line divides the groups. */
  readonly group: number
  /** Shortcut on Windows and Linux where custom differs there. */
  readonly shortcutElsewhere?: string
  /** In a browser the shortcut belongs to the browser itself: offered in the window's menu alone. */
  readonly browserKeepsShortcut?: true
  /** A browser does this by itself: neither offered nor heard there. */
  readonly browserDoes?: true
}

/** The shortcut of a command on a kind of machine; null where there is none. */
export const shortcutOf = ({ shortcut, shortcutElsewhere }: CommandEntry, isMac: boolean): string | null =>
  (!isMac && shortcutElsewhere) || shortcut

export const COMMANDS: readonly CommandEntry[] = [
  { id: 'new', label: 'New…', shortcut: 'Mod+N', menu: 'file', group: 1, browserKeepsShortcut: true },
  { id: 'open', label: 'Open…', shortcut: 'Mod+O', menu: 'file', group: 1 },
  { id: 'save', label: 'Save', shortcut: 'Mod+S', menu: 'file', group: 2 },
  { id: 'save-as', label: 'Save As…', shortcut: 'Mod+Shift+S', menu: 'file', group: 2 },
  { id: 'duplicate', label: 'Duplicate', shortcut: 'Mod+Shift+D', menu: 'file', group: 2 },
  { id: 'duplicate-plan', label: 'Duplicate as a New Plan', shortcut: null, menu: 'file', group: 2 },
  { id: 'take-from', label: 'Take a Motif or Yarn from…', shortcut: null, menu: 'file', group: 3 },
  { id: 'print', label: 'Print…', shortcut: 'Mod+P', menu: 'file', group: 4 },
  { id: 'export-map', label: 'Export as PDF…', shortcut: 'Mod+E', menu: 'file', group: 4 },
  { id: 'export-picture', label: 'Save a Picture…', shortcut: null, menu: 'file', group: 4 },
  { id: 'export-page', label: 'Export Page for a Phone…', shortcut: null, menu: 'file', group: 4 },
  { id: 'export-materials', label: 'Export Materials (CSV)…', shortcut: null, menu: 'file', group: 4 },
  { id: 'export-order', label: 'Export Working Order (CSV)…', shortcut: null, menu: 'file', group: 4 },
  { id: 'settings', label: 'Settings…', shortcut: 'Mod+,', menu: 'file', group: 5 },
  { id: 'undo', label: 'Undo', shortcut: 'Mod+Z', menu: 'edit', group: 1 },
  { id: 'redo', label: 'Redo', shortcut: 'Mod+Shift+Z', shortcutElsewhere: 'Mod+Y', menu: 'edit', group: 1 },
  { id: 'select-all', label: 'Select All', shortcut: 'Mod+A', menu: 'edit', group: 3 },
  { id: 'keep-colours', label: 'Keep These Colours', shortcut: 'Mod+K', menu: 'edit', group: 4 },
  { id: 'free-colours', label: 'Free These Colours', shortcut: 'Mod+Shift+K', menu: 'edit', group: 4 },
  // The drawing has keys of its own: + and −, 0. With Ctrl or Command they are those of all text, as everywhere.
  { id: 'zoom-in', label: 'Zoom In', shortcut: null, menu: 'view', group: 1 },
  { id: 'zoom-out', label: 'Zoom Out', shortcut: null, menu: 'view', group: 1 },
  { id: 'zoom-fit', label: 'Show All', shortcut: null, menu: 'view', group: 1 },
  {
    id: 'zoom-actual',
    label: 'Real Size',
    shortcut: 'Mod+1',
    menu: 'view',
    group: 1,
    browserKeepsShortcut: true,
  },
  { id: 'larger', label: 'Larger Text', shortcut: 'Mod+Plus', menu: 'view', group: 2, browserDoes: true },
  { id: 'smaller', label: 'Smaller Text', shortcut: 'Mod+-', menu: 'view', group: 2, browserDoes: true },
  {
    id: 'usual-size',
    label: 'Usual Text Size',
    shortcut: 'Mod+0',
    menu: 'view',
    group: 2,
    browserDoes: true,
  },
  { id: 'keys', label: 'Keys', shortcut: 'Mod+/', menu: 'help', group: 1 },
  { id: 'help', label: 'How to…', shortcut: 'F1', menu: 'help', group: 1 },
  { id: 'licences', label: 'Licences…', shortcut: null, menu: 'help', group: 2 },
  { id: 'about', label: 'About Petalyard', shortcut: null, menu: 'help', group: 2 },
]
