/** A text file, whole, for commands that read one. */
import { whyNotRead } from '../documents/read-refusal'
import { readRegularFile, TOO_LARGE } from '../documents/regular-file'
import { CommandEnd, EXIT } from './exit-codes'

export const unreadable = (name: string, why: string) =>
  new CommandEnd(EXIT.unreadable, `${name} could not be read: ${why}.`)

/** The bytes of a file of at most `largest` bytes; `tooLarge` says what it is too large for. */
export async function fileBytes(file: string, largest: number, tooLarge: string): Promise<Buffer> {
  try {
    return Buffer.from((await readRegularFile(file, largest)).bytes)
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? ''
    if (code === TOO_LARGE) throw unreadable(file, `it is too large for ${tooLarge}`)
    throw unreadable(file, whyNotRead(code))
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
