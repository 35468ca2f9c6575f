/** What is told of a picture that is measured all the same, but not surely; each has a picture that shows it. */
import { describe, expect, it } from 'vitest'
import { measurePhoto } from '../../../src-core/photo/photo'
import { photograph } from './camera'
import { disc } from './flowers'
import { trial } from './scenes'

/** A round motif of red yarn on a sheet, as sharp and as large as is enough, but for `more`. */
const told = (more: object = {}) => {
  const picture = photograph({
    ...trial(7).scene,
    ...{ shape: disc(90), sheet: { width: 210, height: 297 }, at: { x: 5, y: -8 }, turn: 4, tilt: 14 },
    ...{ picture: { width: 540, height: 720 }, filling: 0.72, paper: [0.78, 0.78, 0.76], table: [0.25, 0.13, 0.06] }, // prettier-ignore
    ...{ yarns: [[0.35, 0.05, 0.07]], blur: 0.6, noise: 0.005, relief: 0.1 },
    ...more,
  })
  const { sure, measures, findings } = measurePhoto(picture, { sheet: 'A4' })
  expect(measures).not.toBeNull()
  return { sure, codes: findings.map(({ code }) => code) }
}
const small = { picture: { width: 420, height: 560 } }

describe('a picture that leaves doubt', () => {
  it('is told from one that leaves none', () => {
    expect(told()).toEqual({ sure: true, codes: [] })
  })

  it('shows too few pixels for a millimetre', () => {
    expect(told(small)).toEqual({ sure: false, codes: ['photo/few-pixels'] })
  })

  it('shows yarn that is too like the paper', () => {
    const pale = told({ ...small, yarns: [[0.74, 0.66, 0.5]], relief: 0, shadow: 0, noise: 0.015 })
    expect(pale.sure).toBe(false)
    expect(pale.codes).toContain('photo/like-paper')
  })

  it('shows a sheet of another shape than any that is known', () => {
    const cut = told({ ...small, sheet: { width: 180, height: 297 } })
    expect(cut.sure).toBe(false)
    expect(cut.codes).toContain('photo/sheet-shape')
  })
})
