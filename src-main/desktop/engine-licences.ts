import { existsSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { shell } from 'electron'

/** The licences of Chromium and what is in it, as Electron brings them: on a Mac within the bundle. */
const NAME = 'LICENSES.chromium.html'

/** Shows them in the program that the system has for such pages; null, or why that cannot be done. */
export async function showEngineLicences(): Promise<string | null> {
  const places = [process.resourcesPath, dirname(process.execPath)].map((folder) => join(folder, NAME))
  const path = places.find((each) => existsSync(each))
  if (!path) return `${NAME} is not there`
  return (await shell.openPath(path)) || null
}
