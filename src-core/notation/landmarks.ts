/** Stretches of a petal that are told by where they lead to: up to its tip, down to the valley. */
import { counted } from '../figures/words'
import { forkWork } from './fork'
import { amountWords, landmarksIn, lapOf } from './laps'
import { bodySpan } from './repeat-endings'
import type { ItemRunner } from './stitching'
import type { StarItem } from './tree'
import { baseSource, report } from './work'
import type { Work } from './work'

/** Stretches to tip and valley share what a petal has beside its named stitches, the first one the larger half. */
export function shareLandmarks(work: Work, star: StarItem, times: number, run: ItemRunner): number[] | null {
  const landmarks = landmarksIn(star.items)
  const source = baseSource(work)
  if (landmarks === 0 || !source || source.state.unknown) return null
  const plain = forkWork(work)
  plain.flex = Array.from({ length: landmarks }, () => 0)
  const lap = lapOf(plain, star.items, run)
  const free = source.free('stitch')
  const share = free / times - lap.stitches
  if (!Number.isInteger(share) || share < 0) {
    const whole = Math.floor(free / times)
    const words = {
      unit: 'the same part of the round',
      available: amountWords(free, 'st'),
      times: `${counted(times, 'time')} ${whole}`,
      over: amountWords(free - whole * times, 'st'),
    }
    report(work, 'rounds/repeat-does-not-fit', bodySpan(star), words)
    work.open = true
    return null
  }
  let left = share
  return Array.from({ length: landmarks }, (_, at) => {
    const part = Math.ceil(left / (landmarks - at))
    left -= part
    return part
  })
}
