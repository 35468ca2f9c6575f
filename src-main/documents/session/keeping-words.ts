/** How a project is kept, in words. */
import { basename, dirname } from 'node:path'
import type { Finding } from '../../../shared-types/finding'
import { finding } from '../../../src-core/findings/finding'
import type { KeptProjects } from './kept'

/** A file's name without the endings that a project may have: "throw" for "throw.petalyard" and "throw.json". */
export const nameOfFile = (file: string): string => file.replace(/(?<=.)(\.json|\.petalyard)+$/i, '')

/** The name of its file without the ending, else its title. */
export function nameInWords(path: string | null, title: string): string {
  if (path !== null) return nameOfFile(basename(path))
  return title.trim() || 'Untitled'
}

/** Where a person finds it. */
export function placeInWords(path: string | null, isChanged: boolean, isUnsaved: boolean): string {
  if (path !== null) return `${basename(path)} in ${basename(dirname(path)) || '/'}`
  if (!isChanged) return 'not yet kept anywhere'
  return isUnsaved ? 'only in memory' : "Petalyard's own folder on this computer"
}

/** Why the program's own folder cannot be written, or null. */
export function folderProblem({ trouble, place }: KeptProjects, name: string): Finding | null {
  return trouble === null ? null : finding('app/own-folder', name, { folder: place, reason: trouble })
}
