/**
 * Which build of the program stands on the disk. One that takes its place while the program runs (a package that is
 * upgraded, a source folder that is built anew) does not fit what is in memory: its pages and workers ask for what this
 * program does not know, and what this program asks of them they do not have.
 */
import { join } from 'node:path'
import { finding } from '../../src-core/findings/finding'
import { readRegularText } from '../documents/regular-file'

/** Written by the builds (scripts/fresh-build.mjs) into every folder that they make. */
const MARK = '.built-from'
/** Bytes; a mark has 16. */
const MARK_AT_MOST = 256

/** What is in these folders that were built; another word after each build of other sources. */
export async function builtIn(folders: readonly string[]): Promise<string> {
  const marks = folders.map((folder) => readRegularText(join(folder, MARK), MARK_AT_MOST).catch(() => 'gone'))
  return (await Promise.all(marks)).join(' ')
}

/** Work that would have needed a part of the program that is not there any more. */
export class UpdatedError extends Error {
  readonly finding = updated()
  constructor() {
    super('Petalyard was updated while it ran')
  }
}

/** What windows are told then. */
export const updated = () => finding('app/updated', 'Petalyard')

/** Compares what stands on the disk with what was there at the start; `look` names it. */
export class Build {
  readonly #look: () => Promise<string>
  readonly #onReplaced: () => void
  #atStart: string | null = null
  #isReplaced = false

  constructor(look: () => Promise<string>, onReplaced: () => void) {
    this.#look = look
    this.#onReplaced = onReplaced
  }

  async start(): Promise<void> {
    this.#atStart = await this.#look()
  }

  /** Looks now: for whatever is about to be read from the program's own files. */
  async isReplaced(): Promise<boolean> {
    const isReplaced = this.#atStart !== null && (await this.#look()) !== this.#atStart
    if (isReplaced && !this.#isReplaced) this.#onReplaced()
    return (this.#isReplaced = isReplaced)
  }

  /** As it was found last. */
  get wasReplaced(): boolean {
    return this.#isReplaced
  }

  /** Throws where work would need the program's own files and they are others by now. */
  async demand(): Promise<void> {
    if (await this.isReplaced()) throw new UpdatedError()
  }
}

/** Instead of a window whose page is of another build. The policy of content allows no style in it, and it needs none. */
export function updatedPage(): string {
  const { message, mend } = updated()
  return `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <meta name="color-scheme" content="light dark" />
    <title>Petalyard</title>
  </head>
  <body>
    <main role="alert">
      <h1>${message[0]!.toUpperCase()}${message.slice(1)}</h1>
      <p>${mend}</p>
    </main>
  </body>
</html>
`
}
