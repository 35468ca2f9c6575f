import { basename } from 'node:path'
import { version } from '../../../package.json'
import type { Finding } from '../../../shared-types/finding'
import { finding } from '../../../src-core/findings/finding'
import { wordsOfPath } from '../../../src-core/fields/words-of-path'
import { capital } from '../../../src-core/figures/words'
import { explainOutcome } from '../outcome'
import type { OpenOutcome, TextOutcome } from '../outcome'
import { openProject, readProjectText } from '../read'
import { explainWriteFailure, replaceFile, whyNotWritten, WriteFailure } from '../replace-file'
import { writeProjectText } from '../save'
import type { Checked, ProjectFiles, WriteOptions, Written } from './ports'

/** Project files through the one way in (open → shape → version → migrate → validate) and the one way out. */
export const projectFiles: ProjectFiles = {
  open: async (path) => {
    const outcome = await openProject(path)
    return outcome.kind === 'opened'
      ? { ...readFrom(outcome, basename(path)), stamp: outcome.stamp }
      : unreadable(outcome, basename(path), await copyWords(path))
  },
  check: (text, name) => {
    const outcome = readProjectText(text)
    return outcome.kind === 'opened' ? readFrom(outcome, name) : unreadable(outcome, name)
  },
  write: (path, text, options) => writtenBytes(path, new TextEncoder().encode(text), options),
}

/** Writes a file of the program's own, whole or not at all, and leaves nothing beside it. */
export async function writeAtomically(path: string, text: string): Promise<Written> {
  try {
    await replaceFile(path, new TextEncoder().encode(text), { backup: false, keepWhole: false })
    return { ok: true }
  } catch (error) {
    return { ok: false, reason: whyNotWritten(error) }
  }
}

/** Writes an exported file, whole or not at all; what stood there before is replaced, as the user was asked. */
export const writeBytes = (path: string, bytes: Uint8Array): Promise<Written> =>
  writtenBytes(path, bytes, { backup: false })

type Opened = Extract<TextOutcome, { kind: 'opened' }>

/** Why a file is no project that can be shown. */
function unreadable(
  outcome: Exclude<OpenOutcome | TextOutcome, { kind: 'opened' }>,
  name: string,
  /** What stands beside it. */
  copy = '',
): Exclude<Checked, { ok: true }> {
  const words = explainOutcome(outcome, name, version)
  const first: Finding | undefined = outcome.kind === 'invalid' ? outcome.findings[0] : undefined
  const place = first ? ` ${capital(wordsOfPath(first.where))}: ${first.message}` : ''
  return { ok: false, problem: finding('app/cannot-open', name, { words: words + place + copy }) }
}

/** That the copy beside a file that cannot be read is a project; empty where there is none. */
async function copyWords(path: string): Promise<string> {
  const copy = `${path}~`
  if ((await openProject(copy)).kind !== 'opened') return ''
  return ` The version before stands beside it as ‘${basename(copy)}’: copy that to a name that ends in .petalyard, and open the copy.`
}

function readFrom({ project, migratedFrom, unkept }: Opened, name: string): Extract<Checked, { ok: true }> {
  const findings: Finding[] =
    migratedFrom === null
      ? []
      : [finding('app/brought-up', name, { from: migratedFrom, to: project.version })]
  if (unkept.length > 0) findings.push(finding('app/not-kept', name, { what: unkept.join('; ') }))
  return { ok: true, text: writeProjectText(project), title: project.title ?? '', findings }
}

async function writtenBytes(path: string, bytes: Uint8Array, options: WriteOptions): Promise<Written> {
  try {
    const { withoutBackup } = await replaceFile(path, bytes, options)
    return { ok: true, ...(withoutBackup !== null && { withoutBackup }) }
  } catch (error) {
    if (error instanceof WriteFailure)
      return { ok: false, reason: explainWriteFailure(error, basename(path)) }
    return { ok: false, reason: error instanceof Error ? error.message : String(error) }
  }
}
