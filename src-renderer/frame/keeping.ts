/** How the project is kept, in the few words that stand under its title. */
import type { HostGone, Keeping } from '../../shared-types/bridge'
import { writeMoment } from '../../src-core/units/language'

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

/** That somebody else changed the file: when, and in which numbers it differs from what is here. */
export function changedWords({ theirs }: Pick<Keeping, 'theirs'>): string {
  if (!theirs) return 'The file was changed elsewhere since it was opened here.'
  const when = `The file was changed elsewhere: ${writeMoment(new Date(theirs.changedAt))}.`
  if (theirs.differs.length === 0) return `${when} Its numbers are the same as here.`
  const more =
    theirs.more === 0
      ? ''
      : `; ${theirs.more} more ${theirs.more === 1 ? 'number differs' : 'numbers differ'}`
  return `${when} ${theirs.differs.join('; ')}${more}.`
}

/** "Throw – Petalyard", and with the name of a file that is called otherwise, so that copies of it can be told apart. */
export function pageTitle(name: string, { place, name: file }: Pick<Keeping, 'place' | 'name'>): string {
  const isOther = place === 'file' && file.toLowerCase() !== name.toLowerCase()
  return `${isOther ? `${name} (${file})` : name} – Petalyard`
}
