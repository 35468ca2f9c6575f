/** Yarn of one motif by colour, in words: length, and grams where the colourway's yarn tells its ball. */
import type { MotifAccount } from '../../../../shared-types/plan'
import type { Motif, Project, Yarn } from '../../../../shared-types/project'
import { motifYarn } from '../../../../src-core/materials/motif-yarn'
import { marked, splitWords } from '../../../../src-core/figures/yarn-words'
import { formatMass, formatRange, formatYarnLength } from '../../../../src-core/units/format'
import { findYarn } from '../../../state/edits/yarn'
import { settled } from '../../../../src-core/settled'

interface SlotWords {
  readonly slot: string
  readonly colour: string | undefined
  readonly words: string
}

/** The yarn that the first colourway of a motif has for a colour. */
export function yarnOfSlot(project: Project, motif: Motif, slot: string | undefined): Yarn | undefined {
  const way = project.colourways?.find((entry) => entry.motif === motif.id)
  return slot === undefined ? undefined : findYarn(project, way?.yarns?.[slot])
}

/** What each colour takes of its yarn. */
export function slotYarnWords(project: Project, motif: Motif, account: MotifAccount | null): SlotWords[] {
  const { units, terms } = settled(project)
  return motifYarn(motif, account, '', terms).slots.map(({ slot, unit, amount, source, split }) => {
    const yarn = yarnOfSlot(project, motif, slot)
    const perMetre = yarn?.ballGrams && yarn.ballMetres ? yarn.ballGrams / yarn.ballMetres : null
    const long = unit === 'm' ? formatRange(amount, (value) => formatYarnLength(value, units)) : ''
    const grams = unit === 'g' ? amount.expected : perMetre === null ? null : amount.expected * perMetre
    // Grams that follow from a length hang on the band.
    const guessed = unit === 'm' && (yarn?.assumed?.some((field) => field !== 'price') ?? false)
    const heavy = grams === null ? '' : marked(formatMass(grams, units), guessed)
    const known = source === 'stitches' ? '' : source
    const words = [long, heavy, split === undefined ? known : splitWords({ split: [split] })]
    return { slot, colour: yarn?.colour, words: words.filter(Boolean).join(', ') }
  })
}
