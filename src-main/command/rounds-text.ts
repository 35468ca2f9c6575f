/** Pasted rounds from a file or from standard input. */
import { fileBytes, textOf, unreadable } from './text-file'

/** Bytes. A whole book of patterns is shorter. */
const LARGEST = 4_000_000
const WHAT = 'a pattern'

async function standardInput(): Promise<Buffer> {
  const chunks: Buffer[] = []
  let size = 0
  for await (const chunk of process.stdin) {
    const bytes = Buffer.from(chunk as Uint8Array)
    size += bytes.length
    if (size > LARGEST) throw unreadable('standard input', `it is too large for ${WHAT}`)
    chunks.push(bytes)
  }
  return Buffer.concat(chunks)
}

/** The text of FILE (`-`: standard input) as UTF-8; ends the command where it is none. */
export async function loadRoundsText(file: string): Promise<string> {
  const text =
    file === '-'
      ? textOf('standard input', await standardInput())
      : textOf(file, await fileBytes(file, LARGEST, WHAT))
  if (isProject(text))
    throw unreadable(
      file === '-' ? 'standard input' : file,
      'it is a project; read takes the text of a pattern',
    )
  return text
}

/** Whether a text is a project file, which holds no words to read as rounds. */
const isProject = (text: string): boolean =>
  /^\s*\{/.test(text) && /"format"\s*:\s*"petalyard-project"/.test(text)
