import type { Plugin } from 'vite'

interface Entry {
  readonly name: string
  readonly version: string
  readonly licence: string
  readonly text: string
}
export const ALLOWED: ReadonlySet<string>
export function isAllowed(licence: string): boolean
export function packageFolderOf(id: string): string | null
export function bundledPackages(found: Set<string>): Plugin
export function folderOfFile(name: string): string | null
export function licencesOf(folders: Iterable<string>): Entry[]
