/** Colours of a page that stand on lines of their own, by the letters of the pattern. Common practice, no source. */
import { describe, expect, it } from 'vitest'
import { readPage } from '../../../src-core/page/read-page'

const ROUNDS = `

Rnd 1: With A, magic ring, ch 3 (counts as dc), 11 dc in ring; join with sl st in top of ch 3. (12 dc)
Rnd 2: Join B in any st, ch 3 (counts as dc), dc in same st, 2 dc in each dc around; join with sl st in top of ch 3. (24 dc)`

const yarnsOf = (head: string) =>
  readPage(`Harbour Hexagon\n\n${head}${ROUNDS}`, 'US').flatMap((fact) =>
    fact.kind === 'yarn' ? [[fact.role, fact.yarn.name, fact.yarn.fibre]] : [],
  )

describe('colours on lines of their own', () => {
  it.each([
    ['Materials\nDK cotton, 50 g balls\nA: cream\nB: Sunflower yellow\n4 mm hook'],
    ['Materials\n- DK cotton, 3 balls\n- Color A: cream\n- Color B: Sunflower yellow\n- 4 mm hook'],
    ['You will need\nDK cotton\nA – cream\nB – Sunflower yellow'],
    ['You will need\nDK cotton\nA = cream\nB = Sunflower yellow'],
    ['Yarn: DK cotton\nColors:\nA: cream\nB: Sunflower yellow'],
  ])('are the one yarn that stands before them: %j', (head) => {
    expect(yarnsOf(head)).toEqual([
      ['A', 'DK cotton, cream', 'cotton'],
      ['B', 'DK cotton, Sunflower yellow', 'cotton'],
    ])
  })

  it.each([
    ['Yarn A: cream\nYarn B: Sunflower yellow\nHook: 4 mm'],
    ['Colors\nA: cream\nB: Sunflower yellow'],
  ])('are yarns by themselves where no yarn is named: %j', (head) => {
    expect(yarnsOf(head)).toEqual([
      ['A', 'Cream', undefined],
      ['B', 'Sunflower yellow', undefined],
    ])
  })

  it('are not every line that begins with a letter', () => {
    expect(yarnsOf('Materials\nDK cotton\nG: 4 mm hook\nF: 3.75 mm')).toEqual([[null, 'DK cotton', 'cotton']])
  })
})
