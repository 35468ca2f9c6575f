import type { Project } from '../../shared-types/project'
import type { FilePort } from './file-port'
import { readProjectText } from './read'
import { replaceFile, WriteFailure } from './replace-file'
import type { Replaced } from './replace-file'

/** A project as the text of its file: two spaces, keys in the order in which they were loaded or added. */
export function writeProjectText(project: Project): string {
  return `${JSON.stringify(project, null, 2)}\n`
}

/**
 * Saves a project at `path` in one step and keeps the former content at `path~`, where it can; not at all without
 * that copy where it is demanded. What could not be opened again (a number that is none) is never written. Throws
 * WriteFailure; the old content is then still there.
 */
export async function saveProject(
  path: string,
  project: Project,
  files?: FilePort,
  backup: true | 'demanded' = true,
): Promise<Replaced> {
  const text = writeProjectText(project)
  const again = readProjectText(text)
  if (again.kind !== 'opened') {
    const place =
      again.kind === 'invalid' ? again.findings.map((entry) => entry.where).join(', ') : again.kind
    throw new WriteFailure('compare', 'EINVAL', null, `the project could not be opened again (${place})`)
  }
  return replaceFile(path, new TextEncoder().encode(text), { backup, ...(files ? { files } : {}) })
}
