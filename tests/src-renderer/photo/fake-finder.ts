/** A finder that measures what it is told to, when it is told to. */
import { encode } from 'jpeg-js'
import type { Corners } from '../../../src-core/photo/homography'
import type { PhotoAnswer, PhotoMeasures } from '../../../src-core/photo/photo'
import { PictureError } from '../../../src-core/photo/picture-file'
import { finding } from '../../../src-core/findings/finding'
import type { Asked } from '../../../src-core/photo/scale'
import type { PhotoFinder } from '../../../src-renderer/photo/finder'
import { FinderStopped } from '../../../src-renderer/photo/finder'

/** The flower of a test as a photo shows it: petals as a cosine, a little uneven. */
export function measuresOf(petals: number, overTips: number, overValleys: number): PhotoMeasures {
  const outline = Array.from({ length: 720 }, (_, i) => {
    const angle = (2 * Math.PI * i) / 720
    const [tip, dip] = [overTips / 2, overValleys / 2]
    const far = (tip + dip) / 2 + ((tip - dip) / 2) * Math.cos(petals * (angle - 0.2))
    return [far * Math.sin(angle), -far * Math.cos(angle)] as const
  })
  const even = Array.from({ length: 24 * petals }, (_, i) => {
    const angle = (2 * Math.PI * i) / (24 * petals)
    const far = (overTips + overValleys) / 4 + ((overTips - overValleys) / 4) * Math.cos(petals * angle)
    return [far * Math.sin(angle), -far * Math.cos(angle)] as const
  })
  return {
    ...{ kind: 'petals', petals, symmetry: petals, overTips, overValleys, unevenness: 0.01, turn: 11 },
    ...{ outline, evenOutline: even, middle: { x: 105, y: 148 } },
    colours: [{ colour: '#7fb5a8', share: 1, far: 0.5 }],
    range: { low: overTips * 0.98, high: overTips * 1.02 },
    rangeOverValleys: { low: overValleys * 0.9, high: overValleys * 1.08 },
  }
}

const CORNERS: Corners = [
  { x: 100, y: 80 },
  { x: 900, y: 80 },
  { x: 900, y: 1200 },
  { x: 100, y: 1200 },
]

export const answerOf = (
  measures: PhotoMeasures | null,
  ...codes: readonly ('photo/dips-hidden' | 'photo/no-motif')[]
): PhotoAnswer => ({
  measures,
  sure: codes.length === 0,
  sheet: 'A4',
  corners: CORNERS,
  findings: codes.map((code) => finding(code, 'photo')),
})

/** A picture as a project keeps it: a JPEG of 8 × 6 pixels. */
export const KEPT_JPEG = `data:image/jpeg;base64,${encode({ width: 8, height: 6, data: new Uint8Array(192).fill(200) }, 80).data.toString('base64')}`

/** What was asked, and the way to answer it. */
export function fakeFinder(answers: PhotoAnswer[], refused?: string) {
  const asked: Asked[] = []
  const held: (() => void)[] = []
  const state = { stops: 0, holds: false, kept: [] as string[], isSmallEnough: true }
  let fail: ((error: Error) => void) | null = null
  const shown = { width: 100, height: 133, close: () => undefined } as unknown as ImageBitmap
  const finder: PhotoFinder = {
    open: () =>
      refused
        ? Promise.reject(new PictureError(refused))
        : Promise.resolve({ width: 1000, height: 1333, shown }),
    measure: (choice) =>
      new Promise((resolve, reject) => {
        asked.push(choice)
        fail = reject
        const answer = answers[Math.min(asked.length, answers.length) - 1]!
        if (state.holds) held.push(() => resolve(answer))
        else resolve(answer)
      }),
    keep: (sheet) => {
      state.kept.push(sheet)
      return Promise.resolve(state.isSmallEnough ? { picture: KEPT_JPEG, sheet } : null)
    },
    stop: () => {
      state.stops++
      fail?.(new FinderStopped())
    },
  }
  return { finder, asked, held, state }
}

export const aFile = (name = 'rose.jpg'): File => new File([new Uint8Array(4)], name, { type: 'image/jpeg' })
