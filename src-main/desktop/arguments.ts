import { isAbsolute, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'

/**
 * The files named on a command line, as whole paths. Switches are skipped (test drivers and the runtime add
 * their own), and so is the program's folder, which stands there when it runs from its sources.
 */
export function filesFromArguments(argv: readonly string[], folder: string, appPath: string): string[] {
  return argv
    .slice(1)
    .filter((word) => word !== '' && !word.startsWith('-'))
    .map((word) => wholePath(word, folder))
    .filter((path): path is string => path !== null && resolve(path) !== resolve(appPath))
}

function wholePath(word: string, folder: string): string | null {
  if (word.startsWith('file:')) {
    try {
      return fileURLToPath(word)
    } catch {
      return null
    }
  }
  return isAbsolute(word) ? word : resolve(folder, word)
}
