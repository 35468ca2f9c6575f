/** Whether a round that was put in words, read again, is the round that was meant, joined where it was meant. */
import type { WorkedElement, WorkedPlace } from '../notation/worked'
import { partedBy } from './joined-steps'
import type { JoinWords } from './joined-steps'

const JOIN = 'join to a neighbour'

const isJoin = ({ role, into }: WorkedElement): boolean =>
  role === 'travel' && into[0]?.kind === 'unknown' && into[0].round === -2

const placeOf = (own: number, { kind, round, index, cell, loop, post }: WorkedPlace): string =>
  // Places of this very round are counted anew once joins stand among its stitches.
  round === own || kind === 'chain' ? `${kind} ${cell}` : `${kind} ${round} ${index} ${loop} ${post ?? ''}`

/** What an element is and where it goes into, as one text. */
function tokenOf(own: number, element: WorkedElement, count = element.count): string {
  const { role, form, stitch, legs, into, countsAs, standing } = element
  // However the round is closed, it is closed.
  if (role === 'join') return role
  const places = into.map((place) => placeOf(own, place)).join(' + ')
  return [role, form, stitch, count, legs, countsAs ?? '', standing, places].join(' | ')
}

/** The round with its joins, as it is meant; `index` is that of the round. */
export function meant(
  index: number,
  elements: readonly WorkedElement[],
  joins: ReadonlyMap<number, JoinWords>,
  closed: ReadonlySet<number>,
): string[] {
  return elements.flatMap((element) => {
    const join = joins.get(element.index)
    if (!join) return [tokenOf(index, element)]
    const { chains, stays, picot } = partedBy(element, join, closed.has(element.index))
    if (picot) return [tokenOf(index, element, 2 * chains), JOIN]
    const chain = chains > 0 ? [tokenOf(index, { ...asChain(element), count: chains })] : []
    return [...(stays ? [tokenOf(index, element)] : []), ...chain, JOIN, ...chain]
  })
}

/** Chains beside a join. */
const asChain = (element: WorkedElement): WorkedElement => ({
  ...element,
  ...{ role: 'space', form: 'plain', stitch: 'ch', legs: 1, into: [], countsAs: null, standing: false },
})

/** The round as it was read. */
export const read = (index: number, elements: readonly WorkedElement[]): string[] =>
  elements.map((element) => (isJoin(element) ? JOIN : tokenOf(index, element)))

export const agrees = (one: readonly string[], other: readonly string[]): boolean =>
  one.length === other.length && one.every((token, i) => token === other[i])
