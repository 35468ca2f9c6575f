/**
 * Replaces a file in one step: whoever looks, and whatever fails, finds either the old content or the new.
 *
 * write-file-atomic writes and syncs, but it does not notice a short write (a full disk), keeps no backup,
 * does not wait for a virus scanner or a sync program that holds the file on Windows, and does not sync the
 * folder. So it writes a staging file beside the target here; that is read back and compared, the old
 * content is copied aside, and only then the staging file takes the target's place.
 */
import { dirname, resolve } from 'node:path'
import { machineFiles } from './file-port'
import type { FileFacts, FilePort } from './file-port'
import { NO_NAME } from './read-refusal'
import { asidePath } from './staging-name'

type WriteStep = 'look' | 'write' | 'compare' | 'copy' | 'replace'

/** The file could not be replaced; its old content is still there. */
export class WriteFailure extends Error {
  override readonly name = 'WriteFailure'
  constructor(
    readonly step: WriteStep,
    readonly code: string,
    /** Where the new content was kept, when it was whole and only its last step failed. */
    readonly keptAt: string | null,
    detail: string,
  ) {
    super(detail)
  }
}

export interface Replaced {
  readonly stamp: Pick<FileFacts, 'mtimeMs' | 'size'>
  /** Path of the copy of the old content; null where there was none or it could not be made. */
  readonly backup: string | null
  /** Why it could not be made, in a few words; null where it could, or none was asked for. */
  readonly withoutBackup: string | null
}

/** Waits before trying again, in ms: about two seconds in all (our own choice). */
const RETRY_WAITS = [10, 20, 40, 80, 160, 320, 640, 800]
const LOCKED = new Set(['EPERM', 'EACCES', 'EBUSY'])

const queues = new Map<string, Promise<unknown>>()
/** Where the content is that could not take its target's place, until a later one can. */
const left = new Map<string, string>()

interface ReplaceOptions {
  /** Keeps the old content at `path~`; where it is demanded, nothing is replaced without it. */
  readonly backup: boolean | 'demanded'
  /** The new content stays beside the target where only the last step fails; it does unless this is false. */
  readonly keepWhole?: boolean
  /** Asked in the last moment before the new content takes the target's place. */
  readonly mayReplace?: () => Promise<boolean>
  /** Nothing is replaced: it fails with NAME_TAKEN where anything has the name by then. */
  readonly onlyIfFree?: boolean
  readonly files?: FilePort
}

/** Code of a file that is not as it was, so that nothing was written over it. */
export const CHANGED_MEANWHILE = 'ECHANGED'

/** Code of a name that somebody else took, where nothing may be replaced. */
const NAME_TAKEN = 'ETAKEN'

/** Code of a file of which a copy was demanded and could not be made. */
const NO_COPY = 'ENOCOPY'

/** Writes `bytes` to `path` in one step. Throws WriteFailure. */
export function replaceFile(path: string, bytes: Uint8Array, options: ReplaceOptions): Promise<Replaced> {
  const key = resolve(path)
  const before = queues.get(key) ?? Promise.resolve()
  const task = before.catch(() => undefined).then(() => replaceNow(key, bytes, options))
  queues.set(key, task)
  const forget = () => {
    if (queues.get(key) === task) queues.delete(key)
  }
  task.then(forget, forget)
  return task
}

async function replaceNow(
  path: string,
  bytes: Uint8Array,
  { backup, keepWhole = true, mayReplace, onlyIfFree = false, files = machineFiles }: ReplaceOptions,
): Promise<Replaced> {
  const target = await step('look', async () => (await files.realPath(path)) ?? path)
  const old = await step('look', () => files.facts(target))
  if (old && !old.isFile) throw new WriteFailure('look', 'EISDIR', null, 'a folder or device has this name')
  if (old && onlyIfFree) throw nameTaken()
  if (old) await step('look', () => files.demandWritable(target))

  const staging = asidePath(target, 'new')
  let whole = false
  try {
    await step('write', () => files.writeDurably(staging, bytes, old))
    const written = await step('compare', () => files.read(staging, bytes.length))
    if (written.length < bytes.length)
      throw new WriteFailure('compare', 'ENOSPC', null, 'only a part of it could be written')
    if (Buffer.compare(Buffer.from(written), Buffer.from(bytes)) !== 0)
      throw new WriteFailure('compare', 'EIO', null, 'what was written does not read back the same')
    if (mayReplace && !(await mayReplace()))
      throw new WriteFailure('look', CHANGED_MEANWHILE, null, 'somebody else is writing this file')
    const kept = backup && old ? await keepBackup(target, files) : NO_BACKUP
    if (backup === 'demanded' && kept.withoutBackup !== null)
      throw new WriteFailure(
        'copy',
        NO_COPY,
        null,
        `no copy of it can be kept at ${target}~: ${kept.withoutBackup}`,
      )
    if (onlyIfFree) await files.renameToFree(staging, target).catch(demandNotTaken)
    else {
      whole = true
      await step('replace', () => retryWhileLocked(() => files.rename(staging, target), files))
    }
    await forgetLeft(target, files)
    await files.syncFolder(dirname(target)).catch(() => undefined)
    const facts = await files.facts(target).catch(() => null)
    return { stamp: { mtimeMs: facts?.mtimeMs ?? 0, size: facts?.size ?? bytes.length }, ...kept }
  } catch (error) {
    if (whole && keepWhole && error instanceof WriteFailure)
      throw new WriteFailure(
        error.step,
        error.code,
        await keepWholeBeside(target, staging, files),
        error.message,
      )
    await files.remove(staging).catch(() => undefined)
    throw error
  }
}

/**
 * Gives what could not take its target's place a name that no tidying knows, since a person is told of it: that
 * of an earlier try, so that one stays at most. Answers with where it is.
 */
async function keepWholeBeside(target: string, staging: string, files: FilePort): Promise<string> {
  const before = left.get(target)
  let kept = before ?? asidePath(target, 'kept')
  try {
    await files.rename(staging, kept)
  } catch {
    // Whatever holds it from being renamed may still let it be read. An earlier one stays until the copy is whole.
    kept = asidePath(target, 'kept')
    const isCopied = await files.copy(staging, kept).then(
      () => true,
      () => false,
    )
    await files.remove(isCopied ? staging : kept).catch(() => undefined)
    if (!isCopied) return staging
    await forgetLeft(target, files)
  }
  left.set(target, kept)
  return kept
}

/** What an earlier try left is no longer needed: later content is whole. */
async function forgetLeft(target: string, files: FilePort): Promise<void> {
  const kept = left.get(target)
  left.delete(target)
  if (kept !== undefined) await files.remove(kept).catch(() => undefined)
}

const NO_BACKUP = { backup: null, withoutBackup: null }

/**
 * Copies the old content to `NAME~`, by way of a copy that takes its place when it is whole. A backup that
 * cannot be made does not keep the new content from being saved.
 */
async function keepBackup(
  target: string,
  files: FilePort,
): Promise<Pick<Replaced, 'backup' | 'withoutBackup'>> {
  const backup = `${target}~`
  const copy = asidePath(target, 'old')
  try {
    // Something that is no file, a pipe say, is not ours to replace.
    if ((await files.facts(backup))?.isFile === false)
      return { backup: null, withoutBackup: 'a folder or device has its name' }
    await files.copy(target, copy)
    await retryWhileLocked(() => files.rename(copy, backup), files)
    return { backup, withoutBackup: null }
  } catch (error) {
    await files.remove(copy).catch(() => undefined)
    return { backup: null, withoutBackup: whyNotWritten(error) }
  }
}

async function retryWhileLocked(action: () => Promise<void>, files: FilePort): Promise<void> {
  for (const pause of RETRY_WAITS) {
    try {
      return await action()
    } catch (error) {
      if (!LOCKED.has(codeOf(error))) throw error
      await files.wait(pause)
    }
  }
  return action()
}

async function step<T>(name: WriteStep, action: () => Promise<T>): Promise<T> {
  try {
    return await action()
  } catch (error) {
    const detail = error instanceof Error ? error.message : String(error)
    throw new WriteFailure(name, codeOf(error), null, detail)
  }
}

const nameTaken = () => new WriteFailure('look', NAME_TAKEN, null, 'another file has this name by now')

function demandNotTaken(error: unknown): never {
  if (codeOf(error) === 'EEXIST') throw nameTaken()
  throw new WriteFailure(
    'replace',
    codeOf(error),
    null,
    error instanceof Error ? error.message : String(error),
  )
}

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error ? String(error.code) : 'UNKNOWN'

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'the folder does not exist',
  ENOTDIR: 'the folder does not exist',
  EACCES: 'you have no permission to write there',
  EPERM: 'you have no permission to write there',
  EROFS: 'this place can only be read',
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk quota is used up',
  EEXIST: 'a file has the name of its folder',
  EISDIR: 'a folder or device has this name',
  EBUSY: 'another program holds the file',
  ENAMETOOLONG: 'the name is too long',
  ELOOP: 'its links lead in a circle',
  [NO_NAME]: 'no file can have this name',
}

/** Why something could not be written, in a few words. */
export function whyNotWritten(error: unknown): string {
  return REASONS[codeOf(error)] ?? (error instanceof Error ? error.message : String(error))
}

/** Is this the system's refusal to write, rather than a fault of the program? */
export const isWriteRefusal = (error: unknown): boolean => codeOf(error) in REASONS

/** One line in words; `name` is the file as the person knows it. */
export function explainWriteFailure(failure: WriteFailure, name: string): string {
  if (failure.code === NO_COPY) return `${name} was left as it is: ${failure.message}.`
  const reason = whyNotWritten(failure)
  const kept = failure.keptAt ? ` What was to be saved is in ${failure.keptAt}.` : ''
  return `${name} could not be written: ${reason}.${kept}`
}
