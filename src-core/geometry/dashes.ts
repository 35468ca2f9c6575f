/**
 * Dashes of a line in an SVG drawing. Each is drawn by itself, so that one line of hair-fine ones takes as long as a
 * drawing of thousands of parts (W3C SVG 2, 13.5.6: the list repeats along the whole line).
 */

/** What says how long a line is; numbers in anything else are no lengths. */
const MEASURES = new Set('d points x y x1 x2 y1 y2 cx cy r rx ry width height pathlength'.split(' '))
/** An arc is at most so many times as long as the numbers that tell it; anything straight is at most twice. */
const LONGEST = 7
/** Of the units that are larger than a pixel the largest: an inch (CSS Values 4, 6.2). */
const PIXELS_OF_UNIT = 96
/** Dashes of one line at most; what has more is drawn without them by what draws here (tiny-skia), so it is no more. */
const MOST = 1_000_000

const NUMBER = /[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/gi

/** How long the line of an element can be at most, from all that it says; in its own units. */
export function longestLine(attributes: Readonly<Record<string, string>>, percent: number): number {
  let sum = 0
  for (const [key, value] of Object.entries(attributes)) {
    if (!MEASURES.has(key.toLowerCase())) continue
    const unit =
      key === 'd' ? 1 : /%\s*$/.test(value) ? percent : /[a-z]\s*$/i.test(value) ? PIXELS_OF_UNIT : 1
    for (const [number] of value.matchAll(NUMBER)) sum += Math.abs(Number(number)) * unit
  }
  return LONGEST * sum
}

/** Largest number of what a drawing says of its size, a hundredth of which a per cent is. */
export function percentOf(attributes: Readonly<Record<string, string>>): number {
  const told = [attributes.viewBox ?? '', attributes.width ?? '', attributes.height ?? ''].join(' ')
  return Math.max(100, ...[...told.matchAll(NUMBER)].map(([number]) => Math.abs(Number(number)))) / 100
}

/**
 * The smallest length in which a list of dashes comes again, of all lists that attributes and styles tell; 0 where its
 * unit hangs on the size of letters, null where they tell none, `'none'` where they only take dashes away.
 */
export function dashesOf(looks: string): number | 'none' | null {
  const periods: (number | 'none')[] = []
  for (const [, list = ''] of looks.matchAll(/stroke-dasharray\s*[:=]\s*([^;{}]*)/gi)) {
    if (/[a-z]/i.test(list.replace(/px|inherit|!important/gi, '').replace(NUMBER, '')))
      periods.push(/none|initial/i.test(list) ? 'none' : 0)
    else {
      const period = [...list.matchAll(NUMBER)].reduce((sum, [number]) => sum + Math.abs(Number(number)), 0)
      if (period > 0) periods.push(period)
    }
  }
  const numbers = periods.filter((period) => period !== 'none')
  if (numbers.length > 0) return Math.min(...numbers)
  return periods.length > 0 ? 'none' : null
}

/** Dashes of a line at most. */
export const dashesAlong = (length: number, period: number): number =>
  Math.min(MOST, period > 0 ? length / period : MOST)
