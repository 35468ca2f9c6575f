/** "3 dc in ch-2 sp of each V-st": the chains that a space within a group is said to have are those that it has. */
import { roundWords, spacesThere } from './taking'
import type { PlacePart } from './tree'
import type { Source } from './source'
import { report } from './work'
import type { Work } from './work'

const CHAINS = /\b(?:ch(?:ain)?[-‑ ]?(\d+)|(\d+)[-‑ ]?ch(?:ain)?)[-‑ ]+(?:sp|space|lp|loop|arch)/i

/** Reports a space of another size; it is worked in all the same. */
export function checkChainsTold(work: Work, source: Source, part: PlacePart, index: number): void {
  const place = source.places[index]
  const [, after, before] = CHAINS.exec(work.tree.text.slice(part.start, part.end)) ?? []
  const told = Number(after ?? before ?? 0)
  if (place?.kind !== 'space' || told === 0 || place.chains === told || place.chains === 0) return
  const wanted = `ch-${told}`
  report(
    work,
    'rounds/no-such-space',
    part,
    { have: spacesThere(source), wanted: `${wanted} sps`, round: roundWords(work, source) },
    wanted,
  )
}
