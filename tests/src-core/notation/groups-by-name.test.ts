/** Groups that a text names, counts and begins in words of its own. Common practice, no source; counts by hand. */
import { describe, expect, it } from 'vitest'
import { made, told } from './telling'

const both = (text: string, terms: 'US' | 'UK' = 'US') => [told(text, terms), made(text, terms)]

describe('a group that the text explains', () => {
  const square = (count: string) => `A "group" in this pattern means 3 trebles worked into the same place.
Round 1: 5ch, ss to form a ring. 3 ch, 2 tr into ring, 3 ch. *Work a group into the ring, make 3 chain; repeat from * two more times. Join with a slip stitch to the top of the 3 chain.
Round 2: Slip stitch along to the first corner space. Into this corner space work 3 chain (your first treble), 2 trebles, 3 chain, 1 group. *Into the next corner space work 1 group, 3 chain, 1 group; repeat from * two more times. Join as before. You have ${count}.
Round 3: Slip stitch along to the first corner space. Into it work 3 chain (your first treble), 2 trebles, 3 chain, 1 group. *Work a group into the gap between the two groups on the side; then into the next corner space work 1 group, 3 chain, 1 group; repeat from * two more times, and work a last group into the last gap. Join as before.`

  it('is counted with the one that its chains begin', () => {
    expect(both(square('eight groups'), 'UK')).toEqual([[], [12, 24, 36]])
  })

  it('is held against a wrong number of them', () => {
    expect(told(square('nine groups'), 'UK').map((line) => line.split(' ')[0])).toEqual([
      'rounds/wrong-end-count',
    ])
  })

  it('is a group of plain stitches where nothing draws them together, though it is called a cluster', () => {
    const text = (how: string) => `Special stitch: cluster = ${how}
Rnd 1: Ch 4, slip to make a ring. Ch 3 + 2 dc (first cluster), ch 2, [cluster, ch 2] x 3 into ring. Slip to top of ch 3.`
    expect(both(text('3 dc in one space, nothing fancy'))).toEqual([[], [12]])
    expect(
      made(text('3 dc in one space, leaving the last loop of each on the hook, draw through all')),
    ).toEqual([6])
  })
})

describe('the end of a round', () => {
  const ring = 'R1: Magic ring, 3ch, 15tr into the ring, ss to the top of the 3ch. 16 trebles.\n'

  it.each([
    "repeat from * until you've been all the way round",
    'repeat from * until you have gone around',
    'repeat from * until you are back at the beginning',
  ])('is meant by "%s"', (words) => {
    const text = `${ring}R2: 4ch (a treble and a 1ch space), *1tr in the next tr, 1ch; ${words}, ss to the 3rd of those 4ch. 16 trebles with 16 little windows.`
    expect(both(text, 'UK')).toEqual([[], [16, 16]])
  })

  it('may lie in the stitch of the joining, which nothing else was worked in', () => {
    const heart = (last: string) => `R1. Magic ring, 1ch, 12dc in the ring, ss in first dc.
R2. 3ch (doesn't count as a st), 3dtr in next dc, 3tr in next dc, 2tr in next dc, 1htr in each of next 2dc, (1tr, 1dtr, 1tr) in next dc, 1htr in each of next 2dc, 2tr in next dc, 3tr in next dc, 3dtr in last dc, 3ch, ${last}.`
    expect(both(heart('ss in same dc as the joining ss of R1'), 'UK')).toEqual([[], [12, 23]])
    expect(told(heart('ss in same dc as last dtr'), 'UK')).toHaveLength(1)
  })
})
