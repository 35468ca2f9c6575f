/** Can the yarns be told apart, in colour and printed in black and white? */
import { differenceCiede2000, filterGrayscale, parse } from 'culori'
import type { Color } from 'culori'
import type { Finding } from '../../shared-types/finding'
import type { Colourway, Yarn } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { listOf } from '../joins/words'
import { formatNumber } from '../units/format'
import { COLOUR_CONSTANTS } from './constants'
import { patternLetters } from './letters'

const ciede2000 = differenceCiede2000()
const grey = filterGrayscale(1)

/** ΔE00 between two colours (CIEDE2000, Sharma, Wu and Dalal 2005). */
export const colourDifference = (first: Color, second: Color): number => ciede2000(first, second)

/** ΔE00 between the greys that two colours print to. */
export const greyDifference = (first: Color, second: Color): number => ciede2000(grey(first), grey(second))

const label = (yarn: Yarn): string => yarn.name ?? yarn.id
const code = (colourway: Colourway): string => colourway.code ?? colourway.name ?? colourway.id

/**
 * Colourways of one motif that have two yarns in the same place: what the map must tell apart. They are sorted once,
 * so that asking for each pair of hundreds of yarns costs little.
 */
function rivalsAmong(colourways: readonly Colourway[]) {
  /** By yarn, then by motif and place. */
  const uses = new Map<string, Map<string, Colourway[]>>()
  for (const way of colourways)
    for (const [slot, id] of Object.entries(way.yarns ?? {})) {
      const places = uses.get(id) ?? new Map<string, Colourway[]>()
      uses.set(id, places)
      const place = JSON.stringify([way.motif ?? null, slot])
      const ways = places.get(place) ?? []
      places.set(place, ways)
      ways.push(way)
    }
  const rank = new Map(colourways.map((way, at) => [way, at]))
  return (first: Yarn, second: Yarn): [Colourway, Colourway] | null => {
    let best: [Colourway, Colourway] | null = null
    const before = (one: Colourway, other: Colourway): boolean => rank.get(one)! < rank.get(other)!
    const others = uses.get(second.id)
    if (!others) return null
    for (const [place, ways] of uses.get(first.id) ?? []) {
      for (const one of ways.slice(0, 1)) {
        const other = others.get(place)?.find((way) => way !== one)
        if (!other) continue
        if (best && (before(best[0], one) || (best[0] === one && before(best[1], other)))) continue
        best = [one, other]
      }
    }
    return best
  }
}

/**
 * Yarns under ΔE00 10 of each other, or printing to the same grey, where two of the colourways in use differ
 * by them; and colours that cannot be read.
 */
export function legibilityFindings(yarns: readonly Yarn[], colourways: readonly Colourway[]): Finding[] {
  const findings: Finding[] = []
  const coloured: { yarn: Yarn; colour: Color; grey: Color }[] = []
  for (const yarn of yarns) {
    if (yarn.colour === undefined || yarn.colour === '') continue
    const colour = parse(yarn.colour)
    if (colour) coloured.push({ yarn, colour, grey: grey(colour) })
    else {
      const values = { yarn: label(yarn), received: yarn.colour }
      findings.push(finding('colours/unreadable', `yarn ${yarn.id}`, values, { yarn: yarn.id }))
    }
  }
  const { closeDifference, sameGrey, pairsTold } = COLOUR_CONSTANTS
  const rivals = rivalsAmong(colourways)
  let told = 0
  coloured.forEach((first, index) => {
    for (const second of coloured.slice(index + 1)) {
      const difference = colourDifference(first.colour, second.colour)
      const close = difference < closeDifference
      if (!close && ciede2000(first.grey, second.grey) >= sameGrey) continue
      const found = rivals(first.yarn, second.yarn)
      if (!found) continue
      if (++told > pairsTold) continue
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
  if (told > pairsTold)
    findings.push(finding('colours/more-alike', 'yarns', { pairs: formatNumber(told - pairsTold) }))
  return findings
}

/** Colourways that have the letters of yarns in the words of their pattern: "Join B" would mean either. */
export function letterFindings(colourways: readonly Colourway[]): Finding[] {
  const letters = new Set(patternLetters(colourways.flatMap(({ yarns }) => Object.keys(yarns ?? {}))))
  const both = colourways.flatMap(({ code: letter }) => (letter && letters.has(letter) ? [letter] : []))
  if (colourways.length < 2 || both.length === 0) return []
  const values = { letters: listOf([...new Set(both)]), letter: both[0]! }
  return [finding('colours/letters-meet', 'colourways', values)]
}
