/** Who hears the shortcut of a command: the window, the host's own menu, or the field that is written in. */
import type { CommandId } from '../../shared-types/commands'

const isInput = (target: EventTarget | null): target is HTMLInputElement => target instanceof HTMLInputElement

/** Whether keys go into what has the keyboard: a field, or a list in which letters look for an entry. */
export const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName)) &&
  !(isInput(target) && /^(radio|checkbox|color)$/.test(target.type))

/** Whether text is written in it, which has steps of its own to take back. */
const isWriting = (target: EventTarget | null): boolean =>
  isTyping(target) && !(target instanceof HTMLSelectElement)

/** A field in which nothing waits to be kept has nothing of its own to take back: the last step of the project is meant. */
const isKept = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.dataset.kept !== undefined

/**
 * What becomes of a command's key. Undo and redo never go on to the engine of the window unless text is written where
 * they are pressed: it would take back what was typed in another field before, and go there.
 */
export function wayOfKey(
  id: CommandId,
  target: EventTarget | null,
  { hasMenu, inDialog }: { readonly hasMenu: boolean; readonly inDialog: boolean },
): 'run' | 'leave' | 'nothing' {
  const isStep = id === 'undo' || id === 'redo'
  if (inDialog) return isStep && !isWriting(target) ? 'nothing' : 'leave'
  if (isStep) return !isWriting(target) || isKept(target) ? 'run' : 'leave'
  // The host's own menu hears its shortcuts itself.
  if (hasMenu || (isTyping(target) && id === 'select-all')) return 'leave'
  return 'run'
}
