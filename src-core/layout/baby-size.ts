/** Whether a blanket has the size of one for a baby: then it is asked whether it is for one. */
import { BABY_SIZE } from './constants'

interface Size {
  readonly width: number
  readonly height: number
}

/** Sizes in mm, whichever side is the longer one. */
export function isBabySize({ width, height }: Size): boolean {
  const [short, long] = [Math.min(width, height), Math.max(width, height)]
  return short >= BABY_SIZE.least && short <= BABY_SIZE.width && long <= BABY_SIZE.height
}
