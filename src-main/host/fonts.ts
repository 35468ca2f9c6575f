/** The fonts that a person chose for other scripts: copies in the own folder, so that they do not go missing. */
import { createHash } from 'node:crypto'
import { rename, rm, writeFile } from 'node:fs/promises'
import type { Settings } from '../../shared-types/bridge'
import { FONT_LIMITS } from '../../shared-types/fonts'
import type { FontPlace, KeptFont } from '../../shared-types/fonts'
import type { OwnFolder } from '../documents/session/own-folder'
import { UpdatedError } from './build'
import type { Paper } from './ports'

const FOLDER = 'fonts'

interface FontPorts {
  readonly own: OwnFolder
  readonly paper: Pick<Paper, 'readFont'>
  readonly current: () => Settings
  readonly change: (fonts: readonly KeptFont[]) => Promise<Settings>
}

/** Why a font was not taken, as the end of a sentence. */
export class FontProblem extends Error {}

export class FontStore {
  readonly #ports: FontPorts

  constructor(ports: FontPorts) {
    this.#ports = ports
  }

  #path(id: string): string {
    return this.#ports.own.at(FOLDER, `${id}.font`)
  }

  /** Where they are, for paper. */
  get places(): readonly FontPlace[] {
    return this.#ports.current().fonts.map(({ id, name, face }) => ({ name, path: this.#path(id), face }))
  }

  /** Takes a font in, or says which ones are in a collection. Throws FontProblem where it cannot be. */
  async add(
    bytes: Uint8Array,
    face: number | null,
  ): Promise<Settings | { readonly choose: readonly string[] }> {
    const { own, paper, current, change } = this.#ports
    const read = await paper.readFont(bytes, face).catch((error: unknown) => {
      if (error instanceof UpdatedError) throw error
      throw new FontProblem(error instanceof Error ? error.message : String(error))
    })
    if ('choose' in read) return read
    const id = createHash('sha256').update(bytes).update(String(read.face)).digest('hex').slice(0, 32)
    const before = current().fonts
    if (before.some((font) => font.id === id)) return current()
    if (before.length >= FONT_LIMITS.count)
      throw new FontProblem(`there are ${FONT_LIMITS.count} fonts already; remove one first`)
    await own.make(FOLDER)
    const path = this.#path(id)
    const written = await own.attempt(async () => {
      await writeFile(`${path}.new`, bytes, { mode: 0o600 })
      await rename(`${path}.new`, path)
    })
    if (!written) throw new FontProblem(`no copy of it could be kept: ${own.problem ?? ''}`)
    return change([...current().fonts, { id, ...read }])
  }

  async remove(id: string): Promise<Settings> {
    const { current, change } = this.#ports
    const { fonts } = current()
    if (!fonts.some((font) => font.id === id)) return current()
    const settings = await change(fonts.filter((font) => font.id !== id))
    await rm(this.#path(id), { force: true }).catch(() => undefined)
    return settings
  }
}
