import { spawn } from 'node:child_process'

/** The command that opens an address in the user's own browser on this platform. */
export function openCommand(platform: NodeJS.Platform, url: string): readonly [string, readonly string[]] {
  if (platform === 'darwin') return ['open', [url]]
  // `start` is built into the shell; its first quoted word is a title.
  if (platform === 'win32') return ['cmd', ['/c', 'start', '""', url.replace(/&/g, '^&')]]
  return ['xdg-open', [url]]
}

/** Opens an address in the user's browser. False where there is no way to: the address was printed. */
export async function openAddress(
  url: string,
  platform: NodeJS.Platform = process.platform,
): Promise<boolean> {
  const [command, words] = openCommand(platform, url)
  return new Promise((resolve) => {
    const child = spawn(command, words, { stdio: 'ignore', detached: true })
    child.on('error', () => resolve(false))
    child.on('spawn', () => {
      child.unref()
      resolve(true)
    })
  })
}
