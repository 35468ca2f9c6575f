/** What a place of the file is called, for who never reads the file. */
import { ordinal } from '../figures/words'
import { FIELDS } from './all'
import { fieldText } from './words'

/** What the entries of a list are. */
const ENTRIES: Readonly<Record<string, string>> = {
  motifs: 'motif',
  yarns: 'yarn',
  rounds: 'round',
  packs: 'pack',
  items: 'part',
  extras: 'extra',
}

/** "motifs[0].minutes" → "the minutes for a motif (1st motif)"; a place without a field of its own stays as it is. */
export function wordsOfPath(path: string): string {
  const field = FIELDS.find((each) => each.path === path.replace(/\[\d+\]/g, '[]'))
  if (!field) return path
  const entries = [...path.matchAll(/(\w+)\[(\d+)\]/g)].flatMap(([, list = '', at = '']) =>
    ENTRIES[list] ? [`${ordinal(Number(at) + 1)} ${ENTRIES[list]}`] : [],
  )
  const name = fieldText(field.what ?? field.label, { format: 'petalyard-project', version: 1 })
  return entries.length > 0 ? `${name} (${entries.join(', ')})` : name
}
