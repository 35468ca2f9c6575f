import { createHash } from 'node:crypto'
import { stat } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import { z } from 'zod'
import type { RecentEntry } from '../../../shared-types/bridge'
import { oneLine } from '../../../src-core/letters/one-line'
import { writeMoment } from '../../../src-core/units/language'
import { SMALL_FILE } from '../limits'
import { readRegularText } from '../regular-file'
import type { KeptProjects } from './kept'
import { nameInWords } from './keeping-words'
import type { Written } from './ports'

const listSchema = z.array(z.object({ path: z.string(), openedAt: z.string(), title: z.string().optional() }))
type Remembered = z.infer<typeof listSchema>[number]

const REMEMBERED = 12

/** An entry with the time that puts it in its place. */
type Used = RecentEntry & { readonly usedAt: string }

/** Files that were open lately, and the projects in the app's own folder; one list, what was used last first. */
export class RecentProjects {
  #files: readonly Remembered[] = []
  readonly #path: string
  readonly #kept: KeptProjects
  readonly #write: (path: string, text: string) => Promise<Written>

  constructor(
    dataFolder: string,
    kept: KeptProjects,
    write: (path: string, text: string) => Promise<Written>,
  ) {
    this.#path = join(dataFolder, 'recent.json')
    this.#kept = kept
    this.#write = write
  }

  async load(): Promise<void> {
    try {
      this.#files = listSchema.parse(JSON.parse(await readRegularText(this.#path, SMALL_FILE)))
    } catch {
      this.#files = []
    }
  }

  /** The file was in use at this time; one that was taken off the list stays off it. */
  async used(path: string, at: string, title: string): Promise<void> {
    if (this.#files.some((file) => file.path === path)) await this.remember(path, at, title)
  }

  /** Puts a file on the list that was opened, or saved, at this time, with the title of its project. */
  async remember(path: string, openedAt: string, title: string): Promise<void> {
    const others = this.#files.filter((file) => file.path !== path)
    const files = [{ path, openedAt, title }, ...others].sort((a, b) => b.openedAt.localeCompare(a.openedAt))
    await this.#store(files.slice(0, REMEMBERED))
  }

  async forgetFile(id: string): Promise<void> {
    await this.#store(this.#files.filter((file) => fileId(file.path) !== id))
  }

  /** Takes a path off the list. */
  forget(path: string): Promise<void> {
    return this.forgetFile(fileId(path))
  }

  /** The path that an id of the list stands for; null for anything that is not on the list. */
  pathOf(id: string): string | null {
    return this.#files.find((file) => fileId(file.path) === id)?.path ?? null
  }

  async list(): Promise<RecentEntry[]> {
    const kept = await this.#kept.list()
    // What is open has the title that it has now.
    const titles = new Map(kept.map(({ path, title }) => [path, title]))
    const files = await Promise.all(
      this.#files.map((file) => fileEntry({ ...file, title: titles.get(file.path) ?? file.title })),
    )
    const paths = new Set(this.#files.map((file) => file.path))
    const own = await Promise.all(
      kept
        // A file's own entry in the app's folder is shown apart only while it holds more than the file does.
        .filter(
          (entry) => entry.path === null || entry.savedRevision < entry.revision || !paths.has(entry.path),
        )
        .map(async (entry): Promise<Used> => ({
          usedAt: entry.usedAt ?? entry.changedAt,
          id: `kept-${entry.id}`,
          ...(entry.path === null
            ? { name: entry.title || 'Untitled', where: "Petalyard's own folder" }
            : toldAs(entry.path, entry.title)),
          place: entry.path === null ? 'app' : 'file',
          changedAt: entry.changedAt,
          interrupted: entry.holder !== null && !(await this.#kept.isHeld(entry)),
        })),
    )
    return toldApart(
      [...files.filter((entry) => entry !== null), ...own]
        .sort((a, b) => b.usedAt.localeCompare(a.usedAt))
        .map(({ usedAt: _, ...entry }) => entry),
    )
  }

  async #store(files: readonly Remembered[]): Promise<void> {
    this.#files = files
    await this.#write(this.#path, JSON.stringify(files, null, 2))
  }
}

/** Of those that would read the same, each says when it was changed. */
function toldApart(entries: readonly RecentEntry[]): RecentEntry[] {
  const read = ({ name, where }: RecentEntry) => `${name}\n${where}`
  const seen = new Map<string, number>()
  for (const entry of entries) seen.set(read(entry), (seen.get(read(entry)) ?? 0) + 1)
  return entries.map((entry) => {
    const changed = new Date(entry.changedAt)
    if (seen.get(read(entry)) === 1 || Number.isNaN(changed.getTime())) return entry
    return { ...entry, where: `${entry.where}, changed ${writeMoment(changed)}` }
  })
}

/** The entry of a file, or null while it is not there (an unplugged disk, say): it stays remembered. */
async function fileEntry(file: Remembered): Promise<Used | null> {
  try {
    await stat(file.path)
  } catch {
    return null
  }
  return {
    id: fileId(file.path),
    ...toldAs(file.path, file.title),
    place: 'file',
    changedAt: file.openedAt,
    usedAt: file.openedAt,
    interrupted: false,
  }
}

/** A project is known by its title; where its file has another name, that one stands beside it. */
function toldAs(path: string, title = ''): Pick<RecentEntry, 'name' | 'where'> {
  const [file, folder] = [nameInWords(path, ''), basename(dirname(path))]
  const name = oneLine(title).trim()
  return name === '' || name === file
    ? { name: file, where: folder }
    : { name, where: `${basename(path)} in ${folder}` }
}

function fileId(path: string): string {
  return `file-${createHash('sha256').update(path).digest('hex').slice(0, 32)}`
}
