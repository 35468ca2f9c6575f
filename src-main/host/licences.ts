/** Whose work is in the program: lists that the builds wrote beside what they made (scripts/bundled.mjs). */
import { join } from 'node:path'
import { z } from 'zod'
import type { LicenceEntry } from '../../shared-types/bridge'
import { readRegularText } from '../documents/regular-file'

const listSchema = z.array(
  z.object({ name: z.string(), version: z.string(), licence: z.string(), text: z.string() }),
)
/** Bytes: several times what all the texts come to. */
const LIST_AT_MOST = 4_000_000

/** The packages in what stands in these folders, each once, by name. */
export async function licencesIn(folders: readonly string[]): Promise<readonly LicenceEntry[]> {
  const lists = await Promise.all(
    folders.map(async (folder) => {
      const text = await readRegularText(join(folder, 'licences.json'), LIST_AT_MOST)
      return listSchema.parse(JSON.parse(text))
    }),
  )
  const byName = new Map(lists.flat().map((entry) => [`${entry.name} ${entry.version}`, entry]))
  return [...byName.values()].sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0))
}
