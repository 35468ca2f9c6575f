/**
 * What the browser's launcher is given: the address of a file that only its owner can read, never the address that
 * lets in. The arguments of a process can be read by everybody on the machine.
 */
import { lstat, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { makePath } from '../documents/make-path'
import { demandOurs } from '../documents/session/own-folder'

const PREFIX = '.opening-'
/** Who made it: what belongs to nobody who still runs was left behind by a kill. */
const MAKER = /^\.opening-(\d+)-/
/** A browser has read the page by then (ms). */
const HOLDS = 60_000

export class OpeningPage {
  readonly #folder: string
  #own: string | null = null
  #timer: NodeJS.Timeout | undefined

  /** `folder` is one that a browser may read: those that come in a box of their own see no hidden folder of a home. */
  constructor(folder: string) {
    this.#folder = folder
  }

  /** Writes a page that goes on to `url`, and answers with its address; null where it cannot be written. */
  async write(url: string): Promise<string | null> {
    await this.remove()
    try {
      await makePath(this.#folder)
      // Its owner could put another page in the place of this one, and a browser is sent there.
      await demandOurs(this.#folder)
      await this.#tidy()
      // mkdtemp makes a folder that nobody else may enter.
      this.#own = await mkdtemp(join(this.#folder, `${PREFIX}${process.pid}-`))
      const page = join(this.#own, 'petalyard.html')
      await writeFile(page, pageTo(url), { flag: 'wx', mode: 0o600 })
      this.#timer = setTimeout(() => void this.remove(), HOLDS)
      this.#timer.unref()
      return pathToFileURL(page).href
    } catch {
      await this.remove()
      return null
    }
  }

  /** The address was used, or no longer lets in. */
  async remove(): Promise<void> {
    clearTimeout(this.#timer)
    const own = this.#own
    this.#own = null
    if (own !== null) await rm(own, { recursive: true, force: true }).catch(() => undefined)
  }

  async #tidy(): Promise<void> {
    for (const name of await readdir(this.#folder)) {
      const path = join(this.#folder, name)
      if (!name.startsWith(PREFIX)) continue
      // What somebody else put there, a link to nothing say, keeps no page from being written.
      const facts = await lstat(path).catch(() => null)
      if (facts === null) continue
      const isOld = Date.now() - facts.mtimeMs >= HOLDS
      if (!isOld && runs(Number(MAKER.exec(name)?.[1] ?? process.pid))) continue
      await rm(path, { recursive: true, force: true }).catch(() => undefined)
    }
  }
}

function runs(id: number): boolean {
  try {
    return process.kill(id, 0)
  } catch (error) {
    // Of another user, but there.
    return (error as NodeJS.ErrnoException).code === 'EPERM'
  }
}

/** The address is one of ours: letters, digits and signs that mean nothing in HTML. */
function pageTo(url: string): string {
  return `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <meta name="referrer" content="no-referrer" />
    <meta http-equiv="refresh" content="0; url=${url}" />
    <title>Petalyard</title>
  </head>
  <body>
    <p><a href="${url}">Open Petalyard</a></p>
  </body>
</html>
`
}
