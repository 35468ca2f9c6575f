/** Writing what a command made, in one step. */
import { explainWriteFailure, replaceFile, WriteFailure } from '../documents'
import { CommandEnd, EXIT } from './exit-codes'

/** Replaces a file; ends the command where it cannot be written. */
export async function writeOut(out: string, bytes: Uint8Array): Promise<void> {
  try {
    await replaceFile(out, bytes, { backup: false })
  } catch (error) {
    if (error instanceof WriteFailure) throw new CommandEnd(EXIT.notWritten, explainWriteFailure(error, out))
    throw error
  }
}
