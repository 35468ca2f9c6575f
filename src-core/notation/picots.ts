/** Picots: closed loops of chains. */
import type { StitchName } from './stitch-name'
import type { Span } from './tokens'
import type { Definition } from './tree'
import { push } from './work'
import type { Work } from './work'

/** Chains of a picot: as named, as explained, else three. */
export function picotSize(name: StitchName, definition: Definition | null): number {
  if (name.size > 0) return name.size
  const chain = definition?.items.find((item) => item.type === 'chain')
  return chain?.type === 'chain' ? chain.count : 3
}

/** A closed loop of chains on the stitch below it. */
export function makePicot(work: Work, chains: number, span: Span): void {
  push(work, 'picot', 'ch', span, { count: chains, form: 'picot', group: work.last?.group ?? -1 })
}

/** Turns the chains just made into a picot, where a slip stitch closes them; chains before it stay chains. */
export function closePicot(work: Work, chains: number, span: Span): void {
  const last = work.elements[work.elements.length - 1]
  if (!last || last.role !== 'space') return
  // "ch 1, sl st in picot of neighbor, ch 1, sl st in first ch": joined in its middle, it is one picot.
  const joined = work.elements[work.elements.length - 2]
  const before = work.elements[work.elements.length - 3]
  if (last.count === chains && joined?.role === 'travel' && before?.role === 'space') {
    work.elements.pop()
    before.count += last.count
    before.role = 'picot'
    before.form = 'picot'
    return
  }
  if (last.count > chains) {
    last.count -= chains
    makePicot(work, chains, span)
    return
  }
  last.role = 'picot'
  last.form = 'picot'
}
