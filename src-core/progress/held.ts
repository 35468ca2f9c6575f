/** The colourways that made motifs were made in. */
import type { Project } from '../../shared-types/project'
import { tidyAddress } from '../layout/addresses'
import { memoised } from '../memo'

type Colours = Readonly<Record<string, string>>

/** Of what the file holds, that which is marked as made: the same object as long as both are. */
export const heldColours = memoised(
  (held: Colours | undefined, made: Project['made']): Colours | undefined => {
    if (!held || !made) return undefined
    const marked = new Set(Object.keys(made).map(tidyAddress))
    const own = Object.entries(held).filter(([key]) => marked.has(tidyAddress(key)))
    return own.length > 0 ? Object.fromEntries(own) : undefined
  },
  6,
)
