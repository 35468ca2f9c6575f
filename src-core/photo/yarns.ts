/** Colours of a photo against yarns of a project. */
import { differenceCiede2000, parse } from 'culori'
import type { Yarn } from '../../shared-types/project'

/** Two colours are told apart by about so much (ΔE00) across a table; nearer ones may be the same yarn (ours). */
const LIKE = 12
const difference = differenceCiede2000()

/** The yarn whose colour is nearest to one in a photo; null where none is near enough to be it. */
export function yarnLike(colour: string, yarns: readonly Yarn[]): { yarn: Yarn; difference: number } | null {
  const near = yarns
    .flatMap((yarn) =>
      yarn.colour && parse(yarn.colour) ? [{ yarn, difference: difference(colour, yarn.colour) }] : [],
    )
    .sort((a, b) => a.difference - b.difference)[0]
  return near && near.difference < LIKE ? near : null
}
