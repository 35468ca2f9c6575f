import type { MenuItemConstructorOptions } from 'electron'
import type { EditState, RecentEntry } from '../../shared-types/bridge'
import { COMMANDS, shortcutOf } from '../../shared-types/commands'
import type { CommandEntry, CommandId } from '../../shared-types/commands'
import { inSpelling } from '../../src-core/stitches/spelling'

export interface MenuState extends EditState {
  readonly platform: 'mac' | 'windows' | 'linux'
  readonly recent: readonly RecentEntry[]
  readonly hasWindow: boolean
  readonly forDevelopers: boolean
}

export interface MenuActions {
  command(id: CommandId): void
  openRecent(id: string): void
  /** New and Open when no window is there to ask (Mac). */
  withoutWindow(id: 'new' | 'open'): void
}

/** "+" without Shift, and the keys of a number pad: what the same commands are called by on many keyboards. */
const OTHER_KEYS = [
  ['larger', '='],
  ['larger', 'numadd'],
  ['smaller', 'numsub'],
  ['usual-size', 'num0'],
] as const

const separator: MenuItemConstructorOptions = { type: 'separator' }

/** The whole menu as data: standard roles, the commands' own names and shortcuts, undo and redo by name. */
export function menuTemplate(state: MenuState, actions: MenuActions): MenuItemConstructorOptions[] {
  const isMac = state.platform === 'mac'
  const item = (entry: CommandEntry): MenuItemConstructorOptions => ({
    id: entry.id,
    label: labelOf(entry, state),
    ...(entry.shortcut ? { accelerator: acceleratorOf(entry, isMac) } : {}),
    enabled: isEnabled(entry, state),
    click: () => {
      if (state.hasWindow) actions.command(entry.id)
      else if (entry.id === 'new' || entry.id === 'open') actions.withoutWindow(entry.id)
    },
  })
  const group = (menu: CommandEntry['menu'], number: number, without: readonly CommandId[] = []) =>
    COMMANDS.filter((each) => each.menu === menu && each.group === number && !without.includes(each.id)).map(
      item,
    )
  const only = (id: CommandId) => COMMANDS.filter((each) => each.id === id).map(item)

  const file: MenuItemConstructorOptions = {
    label: 'File',
    submenu: [
      ...group('file', 1),
      { label: 'Open Recent', submenu: recentItems(state.recent, actions), enabled: state.recent.length > 0 },
      separator,
      ...group('file', 2),
      separator,
      ...group('file', 3),
      ...group('file', 4),
      separator,
      ...(isMac ? [] : [...only('settings'), separator]),
      { role: 'close' },
      ...(isMac ? [] : [{ role: 'quit' } as const]),
    ],
  }
  const edit: MenuItemConstructorOptions = {
    label: 'Edit',
    submenu: [
      ...group('edit', 1),
      separator,
      { role: 'cut' },
      { role: 'copy' },
      { role: 'paste' },
      { role: 'delete' },
      separator,
      ...group('edit', 3),
      separator,
      ...group('edit', 4),
    ],
  }
  const view: MenuItemConstructorOptions = {
    label: 'View',
    submenu: [
      ...group('view', 1),
      separator,
      ...group('view', 2),
      ...OTHER_KEYS.map(([id, accelerator]): MenuItemConstructorOptions => ({
        label: accelerator,
        accelerator: `CommandOrControl+${accelerator}`,
        visible: false,
        enabled: state.hasWindow,
        click: () => actions.command(id),
      })),
      separator,
      { role: 'togglefullscreen' },
      ...(state.forDevelopers ? [separator, { role: 'toggleDevTools' } as const] : []),
    ],
  }
  const help: MenuItemConstructorOptions = {
    role: 'help',
    label: 'Help',
    // A Mac has About in the program's own menu.
    submenu: [...group('help', 1), separator, ...group('help', 2, isMac ? ['about'] : [])],
  }
  const own: MenuItemConstructorOptions = {
    label: 'Petalyard',
    submenu: [
      ...only('about'),
      separator,
      ...only('settings'),
      separator,
      { role: 'services' },
      separator,
      { role: 'hide' },
      { role: 'hideOthers' },
      { role: 'unhide' },
      separator,
      { role: 'quit' },
    ],
  }
  return [...(isMac ? [own] : []), file, edit, view, { role: 'windowMenu', label: 'Window' }, help]
}

function labelOf(entry: CommandEntry, { undo, redo, terms }: MenuState): string {
  // An ampersand in a label marks a letter; a name that has one needs two.
  const named = (name: string | null) => (name ? ` ${name.replace(/&/g, '&&')}` : '')
  if (entry.id === 'undo') return entry.label + named(undo)
  if (entry.id === 'redo') return entry.label + named(redo)
  return inSpelling(entry.label, terms)
}

function isEnabled(entry: CommandEntry, state: MenuState): boolean {
  // Undo and redo stay enabled while a text field may have something of its own to take back.
  return state.hasWindow || (state.platform === 'mac' && (entry.id === 'new' || entry.id === 'open'))
}

const acceleratorOf = (entry: CommandEntry, isMac: boolean): string =>
  (shortcutOf(entry, isMac) ?? '').replace('Mod', 'CommandOrControl')

function recentItems(recent: readonly RecentEntry[], actions: MenuActions): MenuItemConstructorOptions[] {
  return recent.map((entry) => ({
    label: `${entry.name} (${entry.where})`.replace(/&/g, '&&'),
    click: () => actions.openRecent(entry.id),
  }))
}
