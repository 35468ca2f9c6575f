/** Tops of clusters, puffs, popcorns and bobbles that are told without "next": "2 sc in top of bobble". */
import { NO_NAME } from './stitch-name'
import type { PlacePart } from './tree'
import { wordOf } from './words'

/** "Top of bobble", "tip of the cluster"; of the first one of the round the words tell. */
const TOP = /^(?:the )?(?:top|tip) of (?:the )?(\p{L}+)\.?(?: (?:st|stitch))?\.?$/iu
const FORMS = ['cluster', 'puff', 'popcorn', 'bobble'] as const

/** The same place as the next such stitch of the round before; null where another one is meant. */
export function bunchTop(part: PlacePart): PlacePart | null {
  const { noun } = part
  const named =
    noun.kind === 'own' && noun.chain === 0 && noun.of === 0 ? TOP.exec(noun.words)?.[1] : undefined
  if (named === undefined) return null
  const { is, kinds } = wordOf(named.toLowerCase())
  const form = FORMS.find((each) => is === each || kinds.has(each))
  if (!form) return null
  const name = { ...NO_NAME, form, name: named, ...part.nounSpan }
  return { ...part, which: 'next', count: 1, noun: { kind: 'stitch', name } }
}
