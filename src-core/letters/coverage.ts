/** What fonts cover, as short texts: ranges of code points in hexadecimal, "590-5f4 fb1d-fb4f". */
import type { CodePointRanges } from '../../shared-types/fonts'

export const textOfRanges = (ranges: CodePointRanges): string =>
  ranges
    .map(([first, last]) =>
      first === last ? first.toString(16) : `${first.toString(16)}-${last.toString(16)}`,
    )
    .join(' ')

/** Reads it back; what is no range is left out. */
export const rangesOfText = (text: string): CodePointRanges =>
  text.split(' ').flatMap((part): [number, number][] => {
    const [first = NaN, last = first] = part.split('-').map((each) => parseInt(each, 16))
    return first <= last ? [[first, last]] : []
  })
