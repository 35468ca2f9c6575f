/** A text file, whole, for commands that read one. */
import { NO_FILE, readRegularFile, TOO_LARGE } from '../documents/regular-file'
import { CommandEnd, EXIT } from './exit-codes'

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'it does not exist',
  EACCES: 'you may not read it',
  EPERM: 'you may not read it',
  EISDIR: 'it is a folder',
  [NO_FILE]: 'it is a device or a pipe, not a file',
}

export const unreadable = (name: string, why: string) =>
  new CommandEnd(EXIT.unreadable, `${name} could not be read: ${why}.`)

/** The bytes of a file of at most `largest` bytes; `tooLarge` says what it is too large for. */
export async function fileBytes(file: string, largest: number, tooLarge: string): Promise<Buffer> {
  try {
    return Buffer.from((await readRegularFile(file, largest)).bytes)
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? ''
    if (code === TOO_LARGE) throw unreadable(file, `it is too large for ${tooLarge}`)
    throw unreadable(file, REASONS[code] ?? (code || 'something went wrong'))
  }
}

/** Bytes as UTF-8 text; ends the command where they are none. */
export function textOf(name: string, bytes: Buffer): string {
  if (bytes.includes(0)) throw unreadable(name, 'it is not a text')
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    throw unreadable(name, 'it is not a text in UTF-8')
  }
}
