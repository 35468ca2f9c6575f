/** Tips and dips along a closed line, from how far each of its points reaches. */
import type { Millimetres } from '../units/quantity'

export interface Extremes {
  /** Places in the list; the dip that follows each tip has its place in `dips`. */
  readonly tips: readonly number[]
  readonly dips: readonly number[]
}

/** Tips with the dips between them: each stands out by more than `least` from both of its dips. */
export function extremesOf(reach: ArrayLike<Millimetres>, least: Millimetres): Extremes {
  const count = reach.length
  let start = 0
  for (let i = 1; i < count; i++) if (reach[i]! < reach[start]!) start = i
  const tips: number[] = []
  const dips: number[] = []
  let rising = true
  let best = start
  for (let k = 1; k <= count; k++) {
    const at = (start + k) % count
    const [own, held] = [reach[at]!, reach[best]!]
    if (rising) {
      if (own > held) best = at
      else if (held - own > least && held - reach[dips.at(-1) ?? start]! > least) {
        tips.push(best)
        best = at
        rising = false
      }
    } else if (own < held) best = at
    else if (own - held > least) {
      dips.push(best)
      best = at
      rising = true
    }
  }
  // The last dip is where the search began.
  if (dips.length < tips.length) dips.push(start)
  return { tips, dips }
}
