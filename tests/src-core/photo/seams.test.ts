/** Two colours of a motif whose mixture is grey: the line between them is no paper in shadow. */
import { describe, expect, it } from 'vitest'
import { measurePhoto } from '../../../src-core/photo/photo'
import { photograph } from './camera'
import type { Colour } from './camera'
import { chance, flower } from './flowers'
import { trialOf } from './rates'
import { trial } from './scenes'

const [RED, OCHRE, BLUE, ORANGE, BEIGE, BLACK]: readonly Colour[] = [
  [0.35, 0.05, 0.07],
  [0.75, 0.6, 0.2],
  [0.05, 0.15, 0.4],
  [0.75, 0.3, 0.05],
  [0.62, 0.54, 0.42],
  [0.03, 0.03, 0.03],
]

describe('a seam between two colours of a motif', () => {
  // Were it taken for paper, the motif would be its middle: a disc of 70 mm.
  it('parts no motif in two: blue petals round ochre and red', () => {
    const motif = flower('rounded', 8, 104, 0.66, 0.4, 0.02, chance(11))
    const picture = photograph({
      ...trial(7).scene,
      ...{ shape: motif, sheet: { width: 210, height: 297 }, at: { x: 4, y: -6 }, turn: 5, tilt: 16 },
      ...{ picture: { width: 600, height: 800 }, filling: 0.72, paper: [0.78, 0.78, 0.76] },
      ...{ table: [0.25, 0.13, 0.06], yarns: [RED!, OCHRE!, BLUE!], blur: 0.7, noise: 0.005, relief: 0.12 },
    })
    const answer = measurePhoto(picture, { sheet: 'A4' })
    const { petalsRight, tips } = trialOf({ name: 'seam', motif }, answer)
    expect(petalsRight).toBe(true)
    expect(Math.abs(tips)).toBeLessThan(0.015)
    expect(answer.findings.map(({ code }) => code)).not.toContain('photo/like-paper')
  })
})

describe('a motif of which some stands out far more than the rest', () => {
  // Were what is dark the measure of it, two petals would be the motif, parted from the others by their pale middle.
  it('is found with its pale middle: black petals round beige', () => {
    const { scene, sheet } = trial(5007, 600)
    const picture = photograph({
      ...scene,
      ...{ paper: [0.78, 0.78, 0.76], table: [0.25, 0.13, 0.06], yarns: [ORANGE!, BEIGE!, BLACK!] },
    })
    const answer = measurePhoto(picture, { sheet })
    const { petalsRight, tips } = trialOf({ name: 'pale', motif: scene.shape }, answer)
    expect(petalsRight).toBe(true)
    expect(Math.abs(tips)).toBeLessThan(0.015)
  })
})
