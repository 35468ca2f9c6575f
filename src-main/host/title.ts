import type { Keeping } from '../../shared-types/bridge'
import { oneLine } from '../../src-core/letters/one-line'

/** The window's title: the project's name, and where or when it was saved. `locale` as in "en-GB". */
export function windowTitle(keeping: Keeping, locale: string): string {
  return `${oneLine(keeping.name)} – ${savedWords(keeping, locale)}`
}

function savedWords(keeping: Keeping, locale: string): string {
  if (keeping.disk === 'changed') return 'changed on disk by another program'
  if (keeping.disk === 'missing') return 'no longer where it was'
  if (keeping.problem?.code === 'app/cannot-keep') return 'not saved, only in memory'
  if (keeping.problem) return 'not saved, kept in Petalyard'
  if (keeping.place === 'nowhere') return keeping.folderProblem ? 'changes cannot be kept' : 'Petalyard'
  if (keeping.savedAt === null)
    return keeping.savedRevision < keeping.revision ? 'saving soon' : 'as it was opened'
  const time = new Date(keeping.savedAt).toLocaleTimeString(safeLocale(locale), {
    hour: '2-digit',
    minute: '2-digit',
  })
  return keeping.place === 'app' ? `kept in Petalyard at ${time}` : `saved at ${time}`
}

function safeLocale(locale: string): string {
  try {
    return Intl.getCanonicalLocales(locale)[0] ?? 'en'
  } catch {
    return 'en'
  }
}
