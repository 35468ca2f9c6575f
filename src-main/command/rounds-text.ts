/** Pasted rounds from a file or from standard input. */
import { readFile, stat } from 'node:fs/promises'
import { CommandEnd, EXIT } from './exit-codes'

/** Bytes. A whole book of patterns is shorter. */
const LARGEST = 4_000_000

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'it does not exist',
  EACCES: 'you may not read it',
  EPERM: 'you may not read it',
  EISDIR: 'it is a folder',
}

const unreadable = (name: string, why: string) =>
  new CommandEnd(EXIT.unreadable, `${name} could not be read: ${why}.`)

async function standardInput(): Promise<Buffer> {
  const chunks: Buffer[] = []
  let size = 0
  for await (const chunk of process.stdin) {
    const bytes = Buffer.from(chunk as Uint8Array)
    size += bytes.length
    if (size > LARGEST) throw unreadable('standard input', 'it is too large for a pattern')
    chunks.push(bytes)
  }
  return Buffer.concat(chunks)
}

async function fileBytes(file: string): Promise<Buffer> {
  try {
    const facts = await stat(file)
    if (facts.size > LARGEST) throw unreadable(file, 'it is too large for a pattern')
    return await readFile(file)
  } catch (error) {
    if (error instanceof CommandEnd) throw error
    const code = (error as NodeJS.ErrnoException).code ?? ''
    throw unreadable(file, REASONS[code] ?? (code || 'something went wrong'))
  }
}

/** The text of FILE (`-`: standard input) as UTF-8; ends the command where it is none. */
export async function loadRoundsText(file: string): Promise<string> {
  const name = file === '-' ? 'standard input' : file
  const bytes = file === '-' ? await standardInput() : await fileBytes(file)
  if (bytes.includes(0)) throw unreadable(name, 'it is no text')
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    throw unreadable(name, 'it is no text in UTF-8')
  }
}
