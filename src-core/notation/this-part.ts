/** "This", "these two steps", "the above sequence", "that bit", "this pair of operations": what was just told, named again. */
import type { Reader } from './reader'

const WHAT = [
  'this',
  'that',
  'it',
  'so',
  'these',
  'those',
  'the',
  'above',
  'all',
  'of',
  'both',
  'same',
  'whole',
  'entire',
]
/** What is meant, in words that name nothing new. */
const STEPS = [
  'step',
  'steps',
  'sequence',
  'instructions',
  'process',
  'thing',
  'part',
  'bit',
  'section',
  'combination',
  'set',
  'operation',
  'operations',
  'move',
  'moves',
  'action',
  'actions',
]
const SEVERAL = ['pair', 'lot', 'set', 'series', 'group', 'run', 'string']

/** Passes it; false where nothing is named. */
export function passThis(reader: Reader): boolean {
  const start = reader.at
  while (reader.skip(...WHAT)) continue
  reader.attempt(() => {
    const several = reader.number() === null && reader.skip(...SEVERAL) && reader.skip('of')
    return (
      reader.skip(...STEPS) ||
      reader.skipA('pattern') ||
      (reader.at > start && reader.skipA('stitch')) ||
      several ||
      null
    )
  })
  return reader.at > start
}
