import { homedir } from 'node:os'
import { isAbsolute, join } from 'node:path'

interface Surroundings {
  readonly platform: NodeJS.Platform
  readonly env: Readonly<Record<string, string | undefined>>
  readonly home: string
}

/**
 * The program's folder for this person, the same for desktop and browser, so that a project begun in one is
 * found in the other. `PETALYARD_DATA` puts it elsewhere.
 */
export function programFolder(
  { platform, env, home }: Surroundings = { platform: process.platform, env: process.env, home: homedir() },
): string {
  if (env.PETALYARD_DATA) return env.PETALYARD_DATA
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Petalyard')
  if (platform === 'win32') return join(env.APPDATA || join(home, 'AppData', 'Roaming'), 'Petalyard')
  // The XDG Base Directory Specification: a path that is not absolute is to be ignored.
  const { XDG_CONFIG_HOME: config = '' } = env
  return join(isAbsolute(config) ? config : join(home, '.config'), 'Petalyard')
}

/** Where projects, settings and the list of recent files are kept in it. */
export const dataFolderIn = (folder: string): string => join(folder, 'projects')

/** The platform as the window tells them apart. */
export function platformName(platform: NodeJS.Platform): 'mac' | 'windows' | 'linux' {
  return platform === 'darwin' ? 'mac' : platform === 'win32' ? 'windows' : 'linux'
}
