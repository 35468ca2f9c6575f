/** M7, M8: over the whole corpus a round is about as high as its stitches, unless petals, loops or corners say why not. */
import { describe, expect, it } from 'vitest'
import { isUpright, mean } from '../../../src-core/motif/rounds/ground'
import type { LocatedRound } from '../../../src-core/motif/rounds/ground'
import { roundsAccount } from '../../../src-core/motif/rounds/account'
import { resolveGauge } from '../../../src-core/stitches/gauge'
import { corpus } from '../figures/chart-corpus'

/** Stitches alone, on stitches alone, of one round below with the same corners. */
function isLevel(own: LocatedRound, below: LocatedRound): boolean {
  const plain = ({ round, petals }: LocatedRound) =>
    petals.length === 0 &&
    round.elements.every(
      ({ role, into }) => role !== 'space' && role !== 'picot' && into.every(({ post }) => !post),
    )
  const onOne = own.round.elements.every(({ into }) => into.every(({ round }) => round === below.round.index))
  return plain(own) && plain(below) && own.corners === below.corners && onOne
}

describe('the height of rounds', () => {
  it('lies between 0.6 and 1.5 of their stitches’ over the whole corpus', () => {
    let checked = 0
    const odd = corpus().flatMap((motif) => {
      const { located, gauge, beginning } = roundsAccount(motif, { hand: 'right', terms: 'US', growth: 0 })
      if (!beginning || beginning.stem.length > 0) return []
      const own = gauge ?? resolveGauge(motif.gauge, 'US')
      return located.flatMap((round) => {
        const below = located.find((entry) => entry.round.index === round.round.onto)
        const upright = round.round.elements.filter(isUpright)
        if (!below || upright.length === 0 || !isLevel(round, below)) return []
        checked++
        const height = mean(upright.map((each) => own.height(each.countsAs ?? each.stitch)))
        const ratio = (round.radius - below.radius) / height
        const fits = ratio >= 0.6 && ratio <= 1.5
        return fits ? [] : [`${motif.id} round ${round.round.number}: ${ratio.toFixed(2)}`]
      })
    })
    expect(odd).toEqual([])
    expect(checked).toBeGreaterThan(35)
  })
})
