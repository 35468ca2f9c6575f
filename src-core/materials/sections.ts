/** Colour sections: stretches of a motif that are worked without cutting the yarn. */
import type { MotifAccount } from '../../shared-types/plan'
import type { Colourway, Motif } from '../../shared-types/project'
import { workedEntries } from '../motif/rounds/special'

/** The name of the only colour of a motif that names none. */
export const ONLY_SLOT = ''

/** The colours of a motif in the order worked, one entry per change: centre, petals, centre. */
function slotSequence(motif: Motif): string[] {
  const named =
    motif.kind === 'rounds'
      ? workedEntries(motif).map((round) => round.slot ?? ONLY_SLOT)
      : (motif.slots ?? []).map((slot) => slot.slot)
  const sequence = named.filter((slot, index) => slot !== named[index - 1])
  return sequence.length > 0 ? sequence : [ONLY_SLOT]
}

/** Every colour of a motif once, in the order first worked; an account may know more than the file. */
export const slotsOf = (motif: Motif, account: MotifAccount | null): string[] => {
  const slots = new Set(slotSequence(motif))
  if (account && slots.size === 1 && slots.has(ONLY_SLOT)) {
    const accounted = Object.keys(account.metres)
    if (accounted.length > 0) return accounted
  }
  return [...slots]
}

/** The colour that the last round is worked in: what joins and edgings start from. */
export const outerSlot = (motif: Motif): string => slotSequence(motif).at(-1) ?? ONLY_SLOT

/**
 * The yarn of a colour in a colourway, or undefined. A motif that names no colours takes the colourway's only
 * yarn, whatever the colourway calls it.
 */
export function yarnOfSlot(colourway: Colourway | undefined, slot: string): string | undefined {
  const yarns = colourway?.yarns ?? {}
  if (Object.hasOwn(yarns, slot)) return yarns[slot]
  const values = Object.values(yarns)
  return slot === ONLY_SLOT && values.length === 1 ? values[0] : undefined
}

interface ColourSection {
  readonly slot: string
  readonly yarn: string | undefined
}

/** The sections of one motif in a colourway: neighbours in the same yarn are one, for nobody cuts between them. */
export function colourSections(motif: Motif, colourway: Colourway | undefined): ColourSection[] {
  const sections: ColourSection[] = []
  for (const slot of slotSequence(motif)) {
    const yarn = yarnOfSlot(colourway, slot)
    const last = sections.at(-1)
    if (!last || yarn === undefined || last.yarn !== yarn) sections.push({ slot, yarn })
  }
  return sections
}
