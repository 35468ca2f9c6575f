/** Opening a project: one step after the other, each with an outcome of its own. Nothing here writes. */
import type { Stats } from 'node:fs'
import { PROJECT_FORMAT } from '../../shared-types/project'
import { finding } from '../../src-core/findings/finding'
import { findJsonBreak } from './json-place'
import { DEPTH_LIMIT, SIZE_LIMIT } from './limits'
import { CURRENT_MIGRATIONS, migrate } from './migrations'
import type { JsonObject, MigrationSet } from './migrations'
import { nestsDeeperThan } from './nesting'
import { explainNoProject } from './outcome'
import type { FileOutcome, OpenOutcome, TextOutcome } from './outcome'
import { whyNotRead } from './read-refusal'
import { NO_FILE, readRegularFile, stampOfRead, TOO_LARGE } from './regular-file'
import { unkeptIn } from './unkept'
import { validateProject } from './validate'

/** Opens the project file at `path`. Every failure is an outcome; only bugs throw. */
export async function openProject(path: string): Promise<OpenOutcome> {
  const file = await readBytes(path)
  if ('kind' in file) return file
  const text = decodeText(file.bytes)
  if (typeof text !== 'string') return text
  const outcome = readProjectText(text)
  if (outcome.kind !== 'opened') return outcome
  return { ...outcome, stamp: stampOfRead(file) }
}

/** Reads a project from text: depth, JSON, project, version, migration, values. */
export function readProjectText(text: string, set: MigrationSet = CURRENT_MIGRATIONS): TextOutcome {
  if (nestsDeeperThan(text, DEPTH_LIMIT)) return { kind: 'too-deep' }
  const parsed = parseJson(text)
  if (!('value' in parsed)) return { kind: 'not-json', ...findJsonBreak(text) }
  const document = parsed.value
  if (!isProjectDocument(document)) return { kind: 'not-a-project', detail: explainNoProject(document) }
  const version = document.version
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    const received = version === undefined ? 'nothing' : JSON.stringify(version)
    const expected = 'a whole number from 1 (the version of the file)'
    return { kind: 'invalid', findings: [finding('file/invalid-value', 'version', { received, expected })] }
  }
  if (version > set.current) return { kind: 'newer', version }
  const current = bringUpToDate(document, version, set)
  if ('kind' in current) return current
  const checked = validateProject(current.document)
  if ('findings' in checked) return { kind: 'invalid', findings: checked.findings }
  const migratedFrom = version < set.current ? version : null
  return { kind: 'opened', project: checked.project, migratedFrom, unkept: unkeptIn(text) }
}

async function readBytes(path: string): Promise<FileOutcome | { bytes: Uint8Array; stats: Stats }> {
  try {
    return await readRegularFile(path, SIZE_LIMIT)
  } catch (error) {
    return explainReadError(error)
  }
}

/** A failed file operation as an outcome. */
export function explainReadError(error: unknown): FileOutcome {
  const code = error instanceof Error && 'code' in error ? String(error.code) : ''
  const detail = code ? whyNotRead(code) : error instanceof Error ? error.message : String(error)
  if (code === TOO_LARGE)
    return { kind: 'too-large', bytes: (error as { bytes?: number }).bytes ?? SIZE_LIMIT + 1 }
  if (code === NO_FILE) return { kind: 'unreadable', reason: 'not-a-file', detail: '' }
  if (code === 'ENOENT' || code === 'ENOTDIR') return { kind: 'unreadable', reason: 'missing', detail }
  if (code === 'EACCES' || code === 'EPERM') return { kind: 'unreadable', reason: 'permission', detail }
  if (code === 'EISDIR') return { kind: 'unreadable', reason: 'folder', detail }
  return { kind: 'unreadable', reason: 'other', detail }
}

/** Bytes as text (a byte order mark is dropped), or why they are none. */
function decodeText(bytes: Uint8Array): string | FileOutcome {
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff))
    return { kind: 'not-text', detail: 'this is UTF-16 text' }
  if (bytes.includes(0)) return { kind: 'not-text', detail: 'this is a binary file' }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return { kind: 'not-text', detail: 'this is not UTF-8' }
  }
}

function parseJson(text: string): { value: unknown } | { broken: true } {
  try {
    return { value: JSON.parse(text) as unknown }
  } catch {
    return { broken: true }
  }
}

function isProjectDocument(value: unknown): value is JsonObject {
  return (
    value !== null &&
    typeof value === 'object' &&
    !Array.isArray(value) &&
    (value as JsonObject).format === PROJECT_FORMAT
  )
}

function bringUpToDate(
  document: JsonObject,
  from: number,
  set: MigrationSet,
): { document: JsonObject } | Extract<TextOutcome, { kind: 'not-migrated' }> {
  try {
    return { document: migrate(document, from, set) }
  } catch (error) {
    const detail = error instanceof Error ? error.message : String(error)
    return { kind: 'not-migrated', from, to: set.current, detail }
  }
}
