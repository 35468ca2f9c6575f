/** Can the yarns be told apart, in colour and printed in black and white? */
import { differenceCiede2000, filterGrayscale, parse } from 'culori'
import type { Color } from 'culori'
import type { Finding } from '../../shared-types/finding'
import type { Colourway, Yarn } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { formatNumber } from '../units/format'
import { COLOUR_CONSTANTS } from './constants'

const ciede2000 = differenceCiede2000()
const grey = filterGrayscale(1)

/** ΔE00 between two colours (CIEDE2000, Sharma, Wu and Dalal 2005). */
export const colourDifference = (first: Color, second: Color): number => ciede2000(first, second)

/** ΔE00 between the greys that two colours print to. */
export const greyDifference = (first: Color, second: Color): number => ciede2000(grey(first), grey(second))

const label = (yarn: Yarn): string => yarn.name ?? yarn.id
const code = (colourway: Colourway): string => colourway.code ?? colourway.name ?? colourway.id

/** Colourways of one motif that have these two yarns in the same place: what the map must tell apart. */
function rivals(first: Yarn, second: Yarn, colourways: readonly Colourway[]): [Colourway, Colourway] | null {
  for (const one of colourways) {
    for (const other of colourways) {
      if (one === other || one.motif !== other.motif) continue
      const meet = Object.entries(one.yarns ?? {}).some(
        ([slot, id]) => id === first.id && other.yarns?.[slot] === second.id,
      )
      if (meet) return [one, other]
    }
  }
  return null
}

/**
 * Yarns under ΔE00 10 of each other, or printing to the same grey, where two of the colourways in use differ
 * by them; and colours that cannot be read.
 */
export function legibilityFindings(yarns: readonly Yarn[], colourways: readonly Colourway[]): Finding[] {
  const findings: Finding[] = []
  const coloured: { yarn: Yarn; colour: Color }[] = []
  for (const yarn of yarns) {
    if (yarn.colour === undefined || yarn.colour === '') continue
    const colour = parse(yarn.colour)
    if (colour) coloured.push({ yarn, colour })
    else {
      const values = { yarn: label(yarn), received: yarn.colour }
      findings.push(finding('colours/unreadable', `yarn ${yarn.id}`, values, { yarn: yarn.id }))
    }
  }
  const { closeDifference, sameGrey } = COLOUR_CONSTANTS
  coloured.forEach((first, index) => {
    for (const second of coloured.slice(index + 1)) {
      const difference = colourDifference(first.colour, second.colour)
      const close = difference < closeDifference
      if (!close && greyDifference(first.colour, second.colour) >= sameGrey) continue
      const found = rivals(first.yarn, second.yarn, colourways)
      if (!found) continue
      const names = {
        first: label(first.yarn),
        second: label(second.yarn),
        colourways: found.map(code).join(' and '),
      }
      const where = `yarns ${first.yarn.id} and ${second.yarn.id}`
      const target = { yarn: first.yarn.id }
      findings.push(
        close
          ? finding(
              'colours/close',
              where,
              { ...names, difference: formatNumber(difference, 1), limit: closeDifference },
              target,
            )
          : finding('colours/same-grey', where, names, target),
      )
    }
  })
  return findings
}
