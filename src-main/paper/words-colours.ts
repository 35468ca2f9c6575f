/** Parts of a motif that its pattern names by a color or a letter, beside the yarns that they are worked in. */
import type { Settled } from '../../shared-types/settled'
import type { ColourwayMark } from '../../src-core/figures/marks'
import { capital, listed } from '../../src-core/figures/words'
import { LETTERED, patternColour } from '../../src-core/page/colour-names'
import type { Terms } from '../../shared-types/project'
import { colourSpelled, saying } from '../../src-core/stitches/spelling'

/** Whether a part is called by the name of a colour, so that the name of a yarn beside it may be another one. */
export const isColour = (slot: string): boolean => LETTERED.test(slot) || patternColour(slot) !== null

/** "pink", "color A", "Petals": what a part is called. */
export const partName = (slot: string, terms: Terms): string =>
  patternColour(slot) ?? colourSpelled(slot, terms)

const lettersOf = (words: string): string => ` ${(words.toLowerCase().match(/\p{L}+/gu) ?? []).join(' ')} `

/** "in colorway B pink is Cream and cream is Pink": what the words of a motif name otherwise than its yarns; '' where nothing. */
export function otherYarns(
  { colourways }: Pick<Settled, 'colourways'>,
  marks: readonly ColourwayMark[],
  motif: string,
  terms: Terms,
  text?: string,
): string {
  const own = new Set(colourways.filter((way) => way.motif === motif).map(({ id }) => id))
  const ways = marks.filter(({ id }) => own.has(id))
  const told = ways.flatMap(({ code, name, slots }) => {
    const others = slots.flatMap(({ slot, yarnName }) => {
      const colour = patternColour(slot)
      if (colour === null || lettersOf(yarnName).includes(lettersOf(colour))) return []
      if (text !== undefined && !lettersOf(text).includes(lettersOf(colour))) return []
      return [`${colour} is ${yarnName}`]
    })
    const way = ways.length > 1 ? saying(terms)`in colourway ${code || name} ` : ''
    return others.length > 0 ? [`${way}${listed(others)}`] : []
  })
  if (told.length === 0) return ''
  return saying(terms)`The colours in the words are those of the pattern. ${capital(told.join('; '))}.`
}
