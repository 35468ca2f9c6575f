import { createHash } from 'node:crypto'
import { stat } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import { z } from 'zod'
import type { RecentEntry } from '../../../shared-types/bridge'
import { SMALL_FILE } from '../limits'
import { readRegularText } from '../regular-file'
import type { KeptProjects } from './kept'
import { nameInWords } from './keeping-words'
import type { Written } from './ports'

const listSchema = z.array(z.object({ path: z.string(), openedAt: z.string() }))
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
  async used(path: string, at: string): Promise<void> {
    if (this.#files.some((file) => file.path === path)) await this.remember(path, at)
  }

  /** Puts a file on the list that was opened, or saved, at this time. */
  async remember(path: string, openedAt: string): Promise<void> {
    const others = this.#files.filter((file) => file.path !== path)
    const files = [{ path, openedAt }, ...others].sort((a, b) => b.openedAt.localeCompare(a.openedAt))
    await this.#store(files.slice(0, REMEMBERED))
  }

  async forgetFile(id: string): Promise<void> {
    await this.#store(this.#files.filter((file) => fileId(file.path) !== id))
  }

  /** The path that an id of the list stands for; null for anything that is not on the list. */
  pathOf(id: string): string | null {
    return this.#files.find((file) => fileId(file.path) === id)?.path ?? null
  }

  async list(): Promise<RecentEntry[]> {
    const files = await Promise.all(this.#files.map(fileEntry))
    const paths = new Set(this.#files.map((file) => file.path))
    const kept = await this.#kept.list()
    const own = await Promise.all(
      kept
        // A file's own entry in the app's folder is shown apart only while it holds more than the file does.
        .filter(
          (entry) => entry.path === null || entry.savedRevision < entry.revision || !paths.has(entry.path),
        )
        .map(async (entry): Promise<Used> => ({
          usedAt: entry.usedAt ?? entry.changedAt,
          id: `kept-${entry.id}`,
          name: entry.path === null ? entry.title || 'Untitled' : nameInWords(entry.path, ''),
          where: entry.path === null ? "Petalyard's own folder" : basename(dirname(entry.path)),
          place: entry.path === null ? 'app' : 'file',
          changedAt: entry.changedAt,
          interrupted: entry.holder !== null && !(await this.#kept.isHeld(entry)),
        })),
    )
    return [...files.filter((entry) => entry !== null), ...own]
      .sort((a, b) => b.usedAt.localeCompare(a.usedAt))
      .map(({ usedAt: _, ...entry }) => entry)
  }

  async #store(files: readonly Remembered[]): Promise<void> {
    this.#files = files
    await this.#write(this.#path, JSON.stringify(files, null, 2))
  }
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
    name: nameInWords(file.path, ''),
    where: basename(dirname(file.path)),
    place: 'file',
    changedAt: file.openedAt,
    usedAt: file.openedAt,
    interrupted: false,
  }
}

function fileId(path: string): string {
  return `file-${createHash('sha256').update(path).digest('hex').slice(0, 32)}`
}
