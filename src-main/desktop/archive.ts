import { promises } from 'original-fs'

/**
 * Which archive a packed program stands in: another word for every package that is put in its place. Electron's own `fs`
 * would show the archive that is open.
 */
export async function archiveAt(path: string): Promise<string> {
  const archive = await promises.stat(path).catch(() => null)
  return archive ? `${archive.size} ${archive.mtimeMs}` : 'gone'
}
