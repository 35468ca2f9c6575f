/** Titles and short words of joining rounds of motifs whose spaces are counted. */
import { expect, it } from 'vitest'
import type { MotifAccount } from '../../../shared-types/plan'
import { matchingPlaces, situationTitle } from '../../../src-core/joining-round/words'
import type { SituationJoin } from '../../../src-core/joining-round/situations'

const account = { shape: 'round', spaces: { count: 6, at: 0, way: 1 } } as MotifAccount
const join = (number: number, next: number | null, isAcross = next !== null): SituationJoin =>
  ({ space: { number, next }, ...(isAcross && { isAcross }) }) as SituationJoin

it.each([
  [[join(4, null), join(6, null)], 'Joined at spaces 4 and 6'],
  [[join(2, 3)], 'Joined between spaces 2 and 3'],
  [[join(5, 6), join(4, null)], 'Joined at space 4 and between spaces 5 and 6'],
  [[join(1, null, true)], 'Joined at space 1 with a joining chain'],
])('names the spaces, and stands at none where it lies between two (%#)', (joins, title) => {
  expect(situationTitle({ account, joins })).toBe(title)
  const where = title.replace('Joined ', '')
  expect(matchingPlaces({ account, joins })).toBe(`${where}, sl st in the matching place of the neighbour`)
})
