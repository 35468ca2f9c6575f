/** How the project is kept, in the few words that stand under its title. */
import type { HostGone, Keeping } from '../../shared-types/bridge'

const A_MOMENT = 60_000

/** "saved a moment ago"; `now` in ms since 1970. Without the program behind the window nothing is kept. */
export function keepingWords(keeping: Keeping, now: number, gone: HostGone = null): string {
  if (gone === 'app/shut-out') return 'not kept: this window was shut out'
  if (gone) return 'not kept: Petalyard does not answer'
  if (keeping.problem?.code === 'app/cannot-keep') return 'not saved, only in memory'
  if (keeping.problem) return 'not saved, kept in the app'
  if (keeping.disk === 'changed') return 'the file was changed elsewhere'
  if (keeping.disk === 'missing') return 'the file is gone, kept in the app'
  if (keeping.place === 'nowhere' && keeping.folderProblem) return 'changes cannot be kept'
  if (keeping.place === 'nowhere') return 'nothing to save yet'
  const place = keeping.place === 'app' ? 'kept in the app' : 'saved'
  // As it was opened: when that was, nobody wrote down.
  if (keeping.savedAt === null) return keeping.savedRevision < keeping.revision ? 'not saved yet' : place
  const since = now - Date.parse(keeping.savedAt)
  if (since < A_MOMENT) return `${place} a moment ago`
  const time = new Intl.DateTimeFormat(undefined, { hour: '2-digit', minute: '2-digit' })
  return `${place} at ${time.format(new Date(keeping.savedAt))}`
}

/** Would something be lost, or not reach its file, as things are? */
export const isInDanger = (keeping: Keeping): boolean =>
  keeping.problem !== null || (keeping.place !== 'file' && keeping.folderProblem !== null)
