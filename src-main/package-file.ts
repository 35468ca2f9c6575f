/**
 * Files of packages that are read as they are while the program runs: no bundler puts them into a script. The build of
 * the desktop lays those of paper beside its scripts (scripts/window-build.mjs), since what is packed has no packages.
 */
import { existsSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { basename, dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import FILES from './package-files.json'

/** The bytes of the file of this name in its part of the table. */
export function packageFile(part: keyof typeof FILES, file: string): Uint8Array<ArrayBuffer> {
  const name = FILES[part].find((each) => basename(each) === file)
  if (!name) throw new Error(`${file} is not in the table of package files`)
  // Not `new URL(…, import.meta.url)`: Vite takes that for a page's asset and refuses a name that is only known later.
  const beside = join(dirname(fileURLToPath(import.meta.url)), 'files', file)
  return new Uint8Array(
    readFileSync(existsSync(beside) ? beside : createRequire(import.meta.url).resolve(name)),
  )
}
