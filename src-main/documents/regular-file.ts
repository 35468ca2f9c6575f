/**
 * Reading files and nothing else. What stands at a path may be a pipe, at which a plain read waits for ever, or
 * a device that never ends; and it may become one between a look and a read. So the file is opened without
 * waiting, looked at by its descriptor, and read no further than was asked for.
 */
import { createHash } from 'node:crypto'
import { constants } from 'node:fs'
import type { Stats } from 'node:fs'
import { open } from 'node:fs/promises'
import type { FileHandle } from 'node:fs/promises'
import type { FileStamp } from './outcome'

/** Largest piece of a read (bytes): files of unknown length, as in /proc, grow by it. */
const PIECE = 256 * 1024

/** Windows knows neither; it has no pipes among its files. */
const WITHOUT_WAITING = (constants.O_NONBLOCK ?? 0) | (constants.O_NOCTTY ?? 0)

/** Codes of our own, beside those of the system. */
export const NO_FILE = 'ENOTREG'
export const TOO_LARGE = 'EFBIG'

interface RegularFile {
  readonly bytes: Uint8Array
  readonly stats: Stats
}

/**
 * The bytes of a regular file of at most `largest` bytes. Throws an error with a `code`: the system's, EISDIR
 * for a folder, ENOTREG for anything else that is no file, EFBIG (with `bytes`, its size) for a larger one.
 */
export function readRegularFile(path: string, largest: number): Promise<RegularFile> {
  return withRegularFile(path, async (handle, stats) => {
    if (stats.size > largest) throw tooLarge(stats.size)
    return { bytes: await readAtMost(handle, stats.size, largest), stats }
  })
}

/** The first `count` bytes of a regular file of any size, fewer where it has no more. Throws as the above does. */
export function readBeginning(path: string, count: number): Promise<Uint8Array> {
  return withRegularFile(path, async (handle) => {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(count), 0, count, 0)
    return buffer.subarray(0, bytesRead)
  })
}

async function withRegularFile<T>(
  path: string,
  use: (handle: FileHandle, stats: Stats) => Promise<T>,
): Promise<T> {
  const handle = await openToRead(path)
  try {
    const stats = await handle.stat()
    if (stats.isDirectory()) throw failure('EISDIR', 'this is a folder')
    if (!stats.isFile()) throw failure(NO_FILE, 'this is not a file')
    return await use(handle, stats)
  } finally {
    await handle.close()
  }
}

/**
 * The stamp of a file as it was read. Its time is from before the read: what somebody writes meanwhile, or right
 * after it, is found changed at the next look.
 */
export const stampOfRead = ({ bytes, stats }: RegularFile): FileStamp => ({
  size: bytes.length,
  modified: stats.mtimeMs,
  hash: hashOf(bytes),
})

/** The hash of a stamp, of content that is here. */
export const hashOf = (bytes: Uint8Array | string): string => createHash('sha256').update(bytes).digest('hex')

/** The same as text in UTF-8, for files of the program's own. */
export async function readRegularText(path: string, largest: number): Promise<string> {
  return new TextDecoder().decode((await readRegularFile(path, largest)).bytes)
}

async function openToRead(path: string): Promise<FileHandle> {
  try {
    return await open(path, constants.O_RDONLY | WITHOUT_WAITING)
  } catch (error) {
    // What a socket, or a device without its driver, answers to being opened.
    const code = (error as NodeJS.ErrnoException).code ?? ''
    throw ['ENXIO', 'ENODEV', 'EOPNOTSUPP'].includes(code) ? failure(NO_FILE, 'this is not a file') : error
  }
}

/** Reads to the end, whatever size was told: a file may grow meanwhile. */
async function readAtMost(handle: FileHandle, size: number, largest: number): Promise<Uint8Array> {
  const pieces: Buffer[] = []
  let length = 0
  // One byte more than expected, so that the end of a file that did not grow is found in one go.
  for (let room = Math.min(size, largest) + 1; ; room = PIECE) {
    const piece = Buffer.allocUnsafe(Math.min(room, largest + 1 - length))
    const { bytesRead } = await handle.read(piece, 0, piece.length, null)
    if (bytesRead === 0) return pieces.length === 1 ? pieces[0]! : Buffer.concat(pieces, length)
    pieces.push(piece.subarray(0, bytesRead))
    length += bytesRead
    if (length > largest) throw tooLarge(length)
  }
}

const failure = (code: string, message: string, more: object = {}): Error =>
  Object.assign(new Error(message), { code, ...more })

const tooLarge = (bytes: number) => failure(TOO_LARGE, 'the file is too large', { bytes })
