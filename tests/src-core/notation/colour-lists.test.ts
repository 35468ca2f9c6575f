/** Letters of colours in the materials, and yarn that is joined without standing there. Common practice, no source. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

const ROUNDS = `
Rnd 1: With A, magic ring, ch 1, 6 sc in ring; join. Fasten off A. (6 sc)
Rnd 2: Join C in any sc, ch 1, 2 sc in each sc around; join. Fasten off. (12 sc)`
const told = (materials: string, rounds = ROUNDS) =>
  readRounds(`${materials}\n${rounds}`, { terms: 'US' })
    .findings.filter(({ severity }) => severity !== 'note')
    .map(({ message }) => message)

describe('yarn that is joined', () => {
  it.each([
    'Materials\nWorsted weight yarn: A = cream, B = rose\nHook: US G-6',
    'Yarn: 50 g each of Cream (A) and Rose (B)',
    'MATERIALS\nDK yarn: 20 g in color A, 15 g in color B\nHook H-8',
    'Colors: A (cream), B (rose)',
  ])('and is not in the list: %s', (materials) => {
    expect(told(materials)).toEqual(['color C is not in the materials (A, B).'])
  })

  it('MC and CC are colors too', () => {
    const rounds = ROUNDS.replace('With A', 'With MC')
    expect(told('MATERIALS\nDK yarn, MC (white) and CC (pink)', rounds)).toEqual([
      'color C is not in the materials (MC, CC).',
    ])
  })

  it.each([
    ['hooks and sizes are no colors', 'Materials\nWorsted weight yarn, 20 g\nSize G-6 hook, or F (3.75 mm)'],
    ['one letter is no list', 'Materials\nYarn (A), 20 g'],
    ['all of them', 'Materials\nYarn in cream (A), rose (B) and sage (C)'],
  ])('%s', (_, materials) => {
    expect(told(materials)).toEqual([])
  })

  it('by a name stands in no list of letters', () => {
    const rounds = ROUNDS.replace('Join C', 'Join Plum')
    expect(told('Yarn: 50 g each of Cream (A) and Rose (B)', rounds)).toEqual([])
  })
})
