/** The shortcuts of the commands: as they are written, and as they are pressed where the host has no menu of its own. */
import type { CommandEntry, CommandId } from '../../shared-types/commands'
import { COMMANDS, shortcutOf } from '../../shared-types/commands'

/** A shortcut as people write it: "Ctrl+Shift+S", "⇧⌘S". */
export function shortcutWords(shortcut: string, isMac: boolean): string {
  if (!isMac) return shortcut.replace('Mod', 'Ctrl').replace('Plus', '+')
  return shortcut.replace('Shift+', '⇧').replace('Mod+', '⌘').replace('Plus', '+')
}

const keyOf = (shortcut: string): string => shortcut.split('+').at(-1)!.replace('Plus', '+').toLowerCase()

/** The command that a key press calls, or null. */
export function commandOfKey(event: KeyboardEvent, isMac: boolean): CommandId | null {
  for (const entry of COMMANDS) {
    const shortcut = shortcutOf(entry, isMac)
    if (!shortcut) continue
    const wantsMod = shortcut.includes('Mod+')
    const hasMod = isMac ? event.metaKey : event.ctrlKey
    const key = event.key.toLowerCase()
    const isKey = key === keyOf(shortcut) || (keyOf(shortcut) === '+' && key === '=')
    if (!isKey || hasMod !== wantsMod || event.altKey) continue
    // "+" and "?" need Shift on many keyboards, so it is asked of letters alone.
    if (/^[a-z]$/.test(key) && event.shiftKey !== shortcut.includes('Shift+')) continue
    return entry.id
  }
  return null
}

/** Commands with their shortcuts, as the sheet of keys tells them. */
export const commandRows = (
  entries: readonly CommandEntry[],
  isMac: boolean,
): (readonly [string, string])[] =>
  entries.flatMap((entry) => {
    const shortcut = shortcutOf(entry, isMac)
    return shortcut ? [[shortcutWords(shortcut, isMac), entry.label.replace('…', '')] as const] : []
  })
