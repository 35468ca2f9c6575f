/**
 * Which order of symmetry a spectrum of the outline shows, by what stands out from its neighbours and not by size: the
 * narrow dips of petals that all but close a circle are a row of low spikes, one at each multiple of the order, and
 * hearts of equal lobes differ from twice as many petals in spikes of the odd multiples alone.
 */

/** Orders on both sides that say how high the spectrum is without a spike, and the highest spike that is looked at. */
const NEIGHBOURS = 5
const HIGHEST_SPIKE = 60
/** Where all spikes of a finer order say nearly as much, the coarser ones add nothing but chance. */
const NEARLY_ALL = 0.8
/** What no line in a photo is true to, as a share of the mean reach: a hundredth of a millimetre. */
const TRUE_TO = 3e-4

/** Mean squares of what the reach holds of each order, and the mean reach. */
export interface Spectrum {
  readonly powers: readonly number[]
  readonly mean: number
}

/**
 * How much likelier one spike is of a strength of its own than of that of its neighbours: the logarithm of the ratio
 * of likelihoods where powers are exponentially distributed, as those of noise are.
 */
function gain({ powers, mean }: Spectrum, at: number, order: number): number {
  let sum = 0
  let count = 0
  for (let k = Math.max(2, at - NEIGHBOURS); k <= Math.min(powers.length - 1, at + NEIGHBOURS); k++)
    if (k % order !== 0) {
      sum += powers[k]!
      count++
    }
  const level = Math.max(sum / count, (TRUE_TO * mean) ** 2)
  const times = powers[at]! / level
  return times <= 1 ? 0 : (count + 1) * Math.log((times + count) / (count + 1)) - Math.log(times)
}

/** How clearly all multiples of an order together stand out: chance reaches 10, petals 15 to some hundreds. */
export function standing(spectrum: Spectrum, order: number): number {
  let sum = 0
  for (let k = order; k <= Math.min(HIGHEST_SPIKE, spectrum.powers.length - 1); k += order)
    sum += gain(spectrum, k, order)
  return sum
}

/** The order that stands out most; of its multiples the finest that says nearly as much. */
export function clearestOrder(
  spectrum: Spectrum,
  orders: readonly number[],
): { readonly order: number; readonly standing: number } {
  const all = orders.map((order) => ({ order, standing: standing(spectrum, order) }))
  const best = all.reduce((most, each) => (each.standing > most.standing ? each : most))
  return all.reduce(
    (finest, each) =>
      each.order % best.order === 0 && each.standing >= NEARLY_ALL * best.standing ? each : finest,
    best,
  )
}
