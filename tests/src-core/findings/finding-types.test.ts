/** What a text needs is known when it is compiled: the compiler is the check, and a line without its error fails it. */
import { expect, it } from 'vitest'
import { finding, findingOf, said } from '../../../src-core/findings/finding'

it('a finding without the values of its texts does not compile', () => {
  // @ts-expect-error: {message} `a target size of {received} cannot be fitted.`
  finding('layout/target', 'layout.target')
  // @ts-expect-error: {count|one|many} is a place too
  finding('joins/one-node', 'joins', { cells: '3' })
  // @ts-expect-error: a name that the text does not have stands for none that it has
  said('layout/target', { recieved: '3 m' })
  const eitherCode = 'layout/gap' as 'layout/gap' | 'layout/target'
  // @ts-expect-error: of two codes, the values of both are needed
  finding(eitherCode, 'layout', { received: '3 m' })
  // Words of the trade fill themselves; what has no places needs no values; both may have a target.
  finding('garland/swags-open', 'layout.swags')
  finding('applique/no-motif', 'layout.items[0]', {}, { cells: ['1,1'] })
  expect(findingOf(said('layout/target', { received: '3 m' }), 'layout.target').message).toBe(
    'a target size of 3 m cannot be fitted.',
  )
})
