/**
 * What can come of opening a project: a closed set, in the order in which the steps are tried, each with its
 * own words. Window and command line tell them alike.
 */
import type { Finding } from '../../shared-types/finding'
import { PROJECT_FORMAT, PROJECT_VERSION } from '../../shared-types/project'
import type { Project } from '../../shared-types/project'
import { DEPTH_LIMIT, SIZE_LIMIT } from './limits'

/** What a file was like when it was read or written: enough to notice that somebody else changed it. */
export interface FileStamp {
  readonly size: number
  /** Modification time in ms. */
  readonly modified: number
  /** SHA-256 of the bytes, hexadecimal. */
  readonly hash: string
}

export type UnreadableReason = 'missing' | 'permission' | 'folder' | 'not-a-file' | 'other'

export type TextOutcome =
  | { readonly kind: 'too-deep' }
  | { readonly kind: 'not-json'; readonly line: number; readonly column: number; readonly detail: string }
  | { readonly kind: 'not-a-project'; readonly detail: string }
  | { readonly kind: 'newer'; readonly version: number }
  | { readonly kind: 'not-migrated'; readonly from: number; readonly to: number; readonly detail: string }
  | { readonly kind: 'invalid'; readonly findings: readonly Finding[] }
  | {
      readonly kind: 'opened'
      readonly project: Project
      readonly migratedFrom: number | null
      /** What of the text would be written otherwise, the first few, in words. */
      readonly unkept: readonly string[]
    }

export type FileOutcome =
  | { readonly kind: 'unreadable'; readonly reason: UnreadableReason; readonly detail: string }
  | { readonly kind: 'too-large'; readonly bytes: number }
  | { readonly kind: 'not-text'; readonly detail: string }

export type OpenOutcome =
  | FileOutcome
  | Exclude<TextOutcome, { kind: 'opened' }>
  | (Extract<TextOutcome, { kind: 'opened' }> & { readonly stamp: FileStamp })

const UNREADABLE: Record<UnreadableReason, (detail: string) => string> = {
  missing: () => 'there is no such file.',
  permission: () => 'you have no permission to read it.',
  folder: () => 'this is a folder, not a file.',
  'not-a-file': () => 'this is a device or a pipe, not a file.',
  other: (detail) => `it could not be read (${detail}).`,
}

/** One line in words for an outcome that gives no project; `name` is the file as the person knows it. */
export function explainOutcome(
  outcome: Exclude<OpenOutcome | TextOutcome, { kind: 'opened' }>,
  name: string,
  programVersion: string,
): string {
  switch (outcome.kind) {
    case 'unreadable':
      return `${name}: ${UNREADABLE[outcome.reason](outcome.detail)}`
    case 'too-large':
      return `${name}: ${Math.ceil(outcome.bytes / 2 ** 20)} MB is more than a project can have (${SIZE_LIMIT / 2 ** 20} MB).`
    case 'not-text':
      return `${name}: ${outcome.detail}; a Petalyard project is UTF-8 text.`
    case 'too-deep':
      return `${name}: its brackets are nested more than ${DEPTH_LIMIT} deep; no project is.`
    case 'not-json':
      return `${name}: line ${outcome.line}, column ${outcome.column}: ${outcome.detail} The file is damaged or no project; it was left as it is.`
    case 'not-a-project':
      return `${name}: this is not a Petalyard project: ${outcome.detail}`
    case 'newer':
      return (
        `${name}: this project was saved by a newer Petalyard (file version ${outcome.version}). ` +
        `This is Petalyard ${programVersion}, which reads versions up to ${PROJECT_VERSION}: ` +
        `get one that reads version ${outcome.version}. The file was left as it is.`
      )
    case 'not-migrated':
      return `${name}: it could not be brought from file version ${outcome.from} to ${outcome.to}: ${outcome.detail} The file was left as it is.`
    case 'invalid':
      return `${name}: ${outcome.findings.length === 1 ? 'one value' : 'some values'} cannot be right.`
  }
}

/** Words for a JSON value that is no project. */
export function explainNoProject(value: unknown): string {
  if (value === null || typeof value !== 'object') return 'it holds a single value.'
  if (Array.isArray(value)) return 'it holds a list.'
  return `it does not say "format": "${PROJECT_FORMAT}".`
}
