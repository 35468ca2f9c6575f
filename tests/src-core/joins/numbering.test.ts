import { describe, expect, it } from 'vitest'
import { joinDetailFigure } from '../../../src-core/figures/join-detail'
import { numberedPlaces, placeName } from '../../../src-core/motif/numbering'
import { record } from '../figures/recorder'
import { sampleMotif } from '../figures/sample'
import {
  apart,
  BLANKETS,
  directionTo,
  HANDS,
  hourIn,
  inEveryOrder,
  joinsSeen,
  numberDrawn,
  numberIn,
  petalDirection,
} from './petal-numbers'
import type { Planned } from './petal-numbers'

const BOX = { width: 180, height: 180 }
const PETAL_TYPE = 8.5

/** Joins that words and the printed detail of the motif number differently. */
function differing({ project, plan }: Planned): string[] {
  const account = plan.motif!
  const drawn = new Map<string, ReturnType<typeof numbersOf>>()
  const numbersOf = (motif: (typeof plan.motifs)[number]) => {
    const look = { marks: [], hand: project.hand ?? 'right', hosts: true, told: false } as const
    const figure = joinDetailFigure(plan, { focus: motif, shown: [motif], nodes: [] }, look, BOX)
    const { texts } = record(figure)
    return texts.filter(({ size }) => size === PETAL_TYPE)
  }
  return joinsSeen(plan).flatMap((seen) => {
    const { motif, join, node } = seen
    const told = numberIn(join.words)
    const there = directionTo({ x: node.x - motif.x, y: node.y - motif.y })
    if (account.shape === 'round' && !account.spaces) {
      const hour = hourIn(join.words)
      return hour !== null && apart(hour, there) < 9 ? [] : [`${motif.id}: ${join.words}`]
    }
    let picture = drawn.get(motif.id)
    if (!picture) drawn.set(motif.id, (picture = numbersOf(motif)))
    // Marks round a circle lie towards what it meets.
    const direction = account.spaces ? there : petalDirection(account, motif, join.anchor)
    const shown = numberDrawn(picture, centreOf(picture), direction)
    return told !== null && told === shown ? [] : [`${motif.id}: ${join.words}, drawn ${shown}`]
  })
}

/** Numbers stand evenly round the middle of their motif. */
const centreOf = (numbers: readonly { x: number; y: number }[]) => ({
  x: numbers.reduce((sum, { x }) => sum + x, 0) / numbers.length,
  y: numbers.reduce((sum, { y }) => sum + y, 0) / numbers.length,
})

describe.each(BLANKETS)('M33 one numbering: %s', (name) => {
  it.each(HANDS)(
    'words and the printed join detail agree on every join in every order, %s-handed',
    (hand) => {
      for (const planned of inEveryOrder(name, hand)) {
        expect(planned.plan.order.length, planned.title).toBeGreaterThan(0)
        expect(differing(planned).slice(0, 5), planned.title).toEqual([])
      }
    },
  )

  it.each(HANDS)(
    'petal 1 is worked first: free ones first, then on in working direction, %s-handed',
    (hand) => {
      for (const { title, plan } of inEveryOrder(name, hand)) {
        if (plan.motif!.shape !== 'petals') continue
        const count = plan.motif!.petals
        for (const step of plan.order.filter(({ kind }) => kind === 'motif')) {
          const placed = plan.motifs.find(({ id }) => id === step.motif)!
          const numbers = new Map(
            numberedPlaces(plan.motif!, placed).map(({ anchor, number }) => [anchor.id, number]),
          )
          const joined = step.joins.map(({ anchor }) => numbers.get(anchor)!)
          const free = step.free.map((anchor) => numbers.get(anchor)!)
          expect(
            [...joined, ...free].sort((a, b) => a - b),
            title,
          ).toEqual(Array.from({ length: count }, (_, i) => i + 1))
          if (free.length > 0) expect(free[0], title).toBe(1)
          // Words follow the hand: numbers come in the order in which they are worked.
          const told = [...step.words.matchAll(/(?:work petals? |; petal |^petal )(\d+)/g)].map(
            ([, number]) => Number(number),
          )
          expect(told, step.words).toEqual([...told].sort((a, b) => a - b))
        }
      }
    },
  )
})

describe('the numbering', () => {
  it('counts a motif by itself from 12 o’clock, a placed one from the petal that is worked first', () => {
    const six = sampleMotif()
    const numbers = (firstPetal?: number) =>
      numberedPlaces(six, firstPetal ? { firstPetal } : {}).map(
        ({ anchor, number }) => `${number} ${anchor.id}`,
      )
    expect(numbers()[0]).toBe('1 tip-1')
    expect(numbers(5)).toEqual(['1 tip-5', '2 tip-6', '3 tip-1', '4 tip-2', '5 tip-3', '6 tip-4'])
  })

  it('counts both petals of a dip, and sides with their corners', () => {
    const petals = { shape: 'petals', petals: 6 } as const
    const own = sampleMotif().anchors[0]!
    const lie = { turn: 0, firstPetal: 5 }
    const valley = { ...own, id: 'valley-4', kind: 'valley', petal: 4 } as const
    expect(placeName(petals, valley, lie)).toBe('between petals 6 and 1')
    const shoulder = { ...own, id: 'shoulder-6-1', kind: 'shoulder', petal: 6 } as const
    expect(placeName(petals, shoulder, lie)).toBe('first shoulder of petal 2')
    const square = { shape: 'straight', petals: 4 } as const
    const side = { ...own, id: 'side-1-3', kind: 'side', petal: 1 } as const
    expect(placeName(square, side, { turn: 45, firstPetal: 2 })).toBe('place 3 of side 4')
  })
})
