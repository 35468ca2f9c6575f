/** Yarn that is the paper darker: by its colour alone it would pass for a shadow. */
import { describe, expect, it } from 'vitest'
import { measurePhoto } from '../../../src-core/photo/photo'
import { photograph } from './camera'
import type { Colour } from './camera'
import { desk } from './desk'
import { chance, flower } from './flowers'
import { BOUNDS, trialOf } from './rates'
import { trial } from './scenes'

const PAPER: Colour = [0.78, 0.78, 0.76]
const RED: Colour = [0.35, 0.05, 0.07]
const gray = (light: number): Colour => [PAPER[0] * light, PAPER[1] * light, PAPER[2] * light]
const motif = flower('rounded', 6, 110, 0.65, 0.1, 0, chance(3))

/** Six petals on a white sheet, their shadow a millimetre or two to one side. */
function measured(yarns: readonly Colour[], shadow = 0.1) {
  const picture = photograph({
    ...trial(7).scene,
    ...{ shape: motif, sheet: { width: 210, height: 297 }, at: { x: 5, y: -8 }, turn: 4, tilt: 14 },
    ...{
      picture: { width: 540, height: 720 },
      filling: 0.72,
      paper: PAPER,
      table: [0.25, 0.13, 0.06],
      yarns,
    },
    ...{ blur: 0.6, noise: 0.005, relief: 0.15, shadow, shadowBy: { x: 1.5, y: 1 } },
  })
  const answer = measurePhoto(picture, { sheet: 'A4' })
  return {
    trial: trialOf({ name: 'gray', motif }, answer),
    codes: answer.findings.map(({ code }) => code),
  }
}

describe('yarn as gray as a shadow', () => {
  // Were it taken for one, the motif would be its red middle: half as wide, round, and sure.
  it.each([0.85, 0.7, 0.55])('edges a red middle, %s as light as the paper: it is the motif’s', (light) => {
    const { trial, codes } = measured([RED, gray(light)])
    expect(trial.petalsRight).toBe(true)
    expect(Math.abs(trial.tips)).toBeLessThan(BOUNDS.tips.rms)
    expect(Math.abs(trial.dips)).toBeLessThan(BOUNDS.dips.most)
    expect(codes).toContain('photo/like-paper')
  })

  it.each([0.7, 0.45])('is all of the motif, %s as light as the paper: it is found', (light) => {
    const { trial, codes } = measured([gray(light)])
    expect(trial.petalsRight).toBe(true)
    expect(Math.abs(trial.tips)).toBeLessThan(BOUNDS.tips.rms)
    expect(Math.abs(trial.dips)).toBeLessThan(BOUNDS.dips.most)
    expect(codes).toContain('photo/like-paper')
  })

  it('edges a red middle with its own shadow beside it: how far it goes is not sure', () => {
    const { trial, codes } = measured([RED, gray(0.7)], 0.3)
    expect(trial.petalsRight).toBe(true)
    expect(Math.abs(trial.tips)).toBeLessThan(BOUNDS.tips.most)
    expect(codes).toContain('photo/like-paper')
  })

  it('edges a black middle in a picture that is not sharp: where they meet is no shadow that lightens', () => {
    const { scene, sheet } = trial(5034, 600)
    const yarns: readonly Colour[] = [
      [0.03, 0.03, 0.03],
      [0.58, 0.58, 0.57],
    ]
    const picture = photograph({ ...scene, ...{ paper: PAPER, table: [0.25, 0.13, 0.06], yarns } })
    const answer = measurePhoto(picture, { sheet })
    const trialled = trialOf({ name: 'gray', motif: scene.shape }, answer)
    expect(trialled.petalsRight).toBe(true)
    expect(Math.abs(trialled.tips)).toBeLessThan(BOUNDS.tips.rms)
    expect(answer.findings.map(({ code }) => code)).toContain('photo/like-paper')
  })

  it('is brown on a brown table, and the shadow of a phone lies beside it', () => {
    const { picture, sheet, ...drawn } = desk(1234011, 600)
    const answer = measurePhoto(picture, { sheet })
    const trial = trialOf(drawn, answer)
    expect(trial.petalsRight).toBe(true)
    expect(Math.abs(trial.tips)).toBeLessThan(BOUNDS.tips.rms)
    expect(answer.findings.map(({ code }) => code)).toEqual(['photo/like-paper'])
  })

  it('is none: the shadow of a motif is no part of it, and sure', () => {
    const { trial, codes } = measured([RED], 0.5)
    expect(trial.petalsRight).toBe(true)
    expect(Math.abs(trial.tips)).toBeLessThan(BOUNDS.tips.rms)
    expect(codes).toEqual([])
  })
})
