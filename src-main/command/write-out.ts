/** Writing what a command made, in one step. */
import { access, realpath } from 'node:fs/promises'
import { basename, resolve } from 'node:path'
import type { Project } from '../../shared-types/project'
import { explainWriteFailure, replaceFile, saveProject, WriteFailure } from '../documents'
import { makePath } from '../documents/make-path'
import { NO_NAME, whyNotRead } from '../documents/read-refusal'
import { readBeginning, readRegularFile } from '../documents/regular-file'
import { whyNotWritten } from '../documents/replace-file'
import { CommandEnd, EXIT } from './exit-codes'

/** Bytes; no map comes near it (our own choice). */
const LARGEST_PDF = 2 ** 30

/** Replaces a file; ends the command where it cannot be written. */
export const writeOut = (out: string, bytes: Uint8Array): Promise<void> =>
  orEnd(out, () => replaceFile(out, bytes, { backup: false }))

/** Ends the command in words where writing to `out` fails. */
async function orEnd(out: string, write: () => Promise<unknown>): Promise<void> {
  try {
    await write()
  } catch (error) {
    if (error instanceof WriteFailure) throw new CommandEnd(EXIT.notWritten, explainWriteFailure(error, out))
    throw error
  }
}

/** Ends the command where `out` is `file`, by another name or behind links too; `what` is what would be lost. */
export async function demandApart(out: string, file: string, what: string): Promise<void> {
  if (resolve(out) !== resolve(file) && (await behindLinks(out)) !== (await behindLinks(file))) return
  throw new CommandEnd(EXIT.wrongUse, `--out ${out} would replace the ${what} itself.`)
}

/** What is no file, or none yet, is called by its name. */
const behindLinks = (path: string): Promise<string> => realpath(path).catch(() => resolve(path))

/** Makes a folder where there is none; ends the command where that cannot be. */
export async function makeFolder(folder: string): Promise<void> {
  try {
    await makePath(folder)
  } catch (error) {
    const isFile = (error as NodeJS.ErrnoException).code === 'EEXIST'
    const reason = isFile ? 'a file has this name' : whyNotWritten(error)
    throw new CommandEnd(EXIT.notWritten, `${folder} cannot be made as a folder: ${reason}.`)
  }
}

/** Ends the command where a file is there already, unless `force` is to replace it. */
export async function demandFree(out: string, force: boolean): Promise<void> {
  if (!force && (await exists(out)))
    throw new CommandEnd(
      EXIT.notWritten,
      `${out} is there already; it was left as it is. --force replaces it.`,
    )
}

/** How files of a kind begin. */
const BEGINS = {
  PDF: /^%PDF-/,
  'HTML page': /^\uFEFF?\s*<(!doctype html|html)\b/i,
  PNG: /^.PNG\r\n/,
  SVG: /^\uFEFF?\s*<(\?xml|!--|!doctype svg|svg)\b/i,
} as const

/** Bytes that show of what kind a file is, however large it is (our own choice). */
const BEGINNING = 200

/** Ends the command where a file of another kind is there, or one that cannot be read: only one like it is replaced. */
export async function demandAlike(out: string, kind: keyof typeof BEGINS): Promise<void> {
  const beginning = await beginningOf(out)
  if (beginning === null || beginning.length === 0) return
  if (BEGINS[kind].test(new TextDecoder().decode(beginning))) return
  throw new CommandEnd(
    EXIT.notWritten,
    `${out} is there already and is no ${kind}; it was left as it is. Choose another name.`,
  )
}

/** Nothing is there that a file could replace, or nothing can be: writing says which. */
const NOTHING_THERE = new Set(['ENOENT', 'ENOTDIR', 'ENAMETOOLONG', 'ELOOP', 'EISDIR', NO_NAME])

/** How the file begins; null where nothing is there. Whatever else keeps it from being read ends the command. */
async function beginningOf(out: string): Promise<Uint8Array | null> {
  try {
    return await readBeginning(out, BEGINNING)
  } catch (error) {
    const { code = '' } = error as NodeJS.ErrnoException
    if (NOTHING_THERE.has(code)) return null
    throw new CommandEnd(
      EXIT.notWritten,
      `${out} was not written: what is there cannot be read (${whyNotRead(code)}). Choose another name.`,
    )
  }
}

/** Ends the command where files are in the way that `isOurs` does not know as made here; nothing is written then. */
export async function demandOurs(
  targets: readonly string[],
  isOurs: (bytes: Uint8Array) => boolean,
  force: boolean,
): Promise<void> {
  if (force) return
  const foreign: string[] = []
  for (const target of targets) {
    if (!(await exists(target))) continue
    // What cannot be read was not made here as far as anybody knows.
    const read = await readRegularFile(target, LARGEST_PDF).catch(() => null)
    if (!read || !isOurs(read.bytes)) foreign.push(basename(target))
  }
  if (foreign.length === 0) return
  const [first, ...others] = foreign
  const more = others.length === 0 ? '' : ` and ${others.length} more`
  throw new CommandEnd(
    EXIT.notWritten,
    `${first}${more}: there already, and not made by Petalyard. Nothing was written. --force replaces what is there.`,
  )
}

/** Writes a file of the user's own: one that is there stays, unless `force` replaces it and keeps a copy. */
export async function writeNew(out: string, text: string, force: boolean): Promise<void> {
  await demandFree(out, force)
  const bytes = new TextEncoder().encode(text)
  await orEnd(out, () => replaceFile(out, bytes, { backup: 'demanded' }))
}

/** The same for a project that has to open again. */
export async function writeNewProject(out: string, project: Project, force: boolean): Promise<void> {
  await demandFree(out, force)
  await orEnd(out, () => saveProject(out, project, undefined, 'demanded'))
}

const exists = (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  )
