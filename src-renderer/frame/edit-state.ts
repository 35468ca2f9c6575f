import type { EditState } from '../../shared-types/bridge'

/** ms without a change after which the words of a menu follow: nobody reads them while a key is held. */
const REST = 150

/**
 * Tells the host's menu what can be undone. Whether anything can, and in which terms it speaks, is told at once, since
 * its shortcuts hang on it; other words wait until the window rests, for a host builds its whole menu anew.
 */
export function editStateTeller(show: (state: EditState) => void): (state: EditState) => () => void {
  let told: EditState | null = null
  const tell = (state: EditState): void => {
    told = state
    show(state)
  }
  const isOther = (state: EditState): boolean =>
    told === null ||
    (told.undo === null) !== (state.undo === null) ||
    (told.redo === null) !== (state.redo === null) ||
    told.terms !== state.terms
  return (state) => {
    if (isOther(state)) tell(state)
    else if (told?.undo !== state.undo || told.redo !== state.redo) {
      const timer = setTimeout(() => tell(state), REST)
      return () => clearTimeout(timer)
    }
    return () => undefined
  }
}
