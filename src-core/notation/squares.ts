/** Spaces and blocks of filet, as hands work them: over chains, over a space, over a block. */
import { STITCHES } from '../stitches/table'
import { findBeginning } from './beginning'
import type { Filet, Square } from './filet'
import { plainPlace } from './plain-place'
import { NO_NAME } from './stitch-name'
import type { ItemRunner } from './stitching'
import { spanOf } from './tokens'
import type { Span } from './tokens'
import type { Item, Noun, Place, WorkItem } from './tree'
import { baseSource, hasBody, spend } from './work'
import type { Work } from './work'

const STITCH: Noun = { kind: 'stitch', name: null }
const CHAIN: Noun = { kind: 'chain' }

const nextPlace = (span: Span, noun: Noun, count = 1, which: 'next' | 'from-hook' = 'next'): Place => {
  const place = plainPlace({ which, each: which === 'next' && count > 1, noun, extent: null }, span)
  return { ...place, parts: [{ ...place.parts[0]!, count }] }
}

/** The chains of a space that lies ahead of the next stitch; 0 where a stitch comes first. */
function spaceAhead(work: Work): number {
  const source = baseSource(work)
  if (!source?.state.ordered || source.state.unknown) return 0
  const space = source.find('space', '', () => true)
  const stitch = source.find('stitch', '', () => true)
  const first = space >= 0 && (stitch < 0 || source.distance(space) < source.distance(stitch))
  return first ? source.places[space]!.chains : 0
}

/** One square in the words of plain crochet. `made`: the chains of a space that the row has begun with already. */
function stepsOf(work: Work, square: Square, { chains, stitch }: Filet, span: Span, made: boolean): Item[] {
  const name = { ...NO_NAME, stitch, name: stitch, ...span }
  const works = (count: number, place: Place): Item => ({ type: 'work', count, stitch: name, place, ...span })
  const along = work.base.kind === 'chain'
  const noun = along ? CHAIN : STITCH
  const below = along ? 0 : spaceAhead(work)
  if (square === 'block') {
    if (below === 0) return [works(1, nextPlace(span, noun, chains + 1))]
    const space: Noun = { kind: 'space', chains: below, corner: false }
    return [works(chains, nextPlace(span, space)), works(1, nextPlace(span, noun))]
  }
  const over: Item[] =
    below > 0 ? [] : [{ type: 'skip', place: nextPlace(span, noun, chains), unworked: false, ...span }]
  const chain: Item[] = made ? [] : [{ type: 'chain', count: chains, ...span }]
  return [...chain, ...over, works(1, nextPlace(span, noun))]
}

/** The chains that a row begins with, where it does not say them, and its first square. */
function firstSteps(work: Work, square: Square, filet: Filet, span: Span): readonly Item[] {
  const { chains, stitch } = filet
  const rise = Math.max(1, STITCHES[stitch].beginningChains)
  const name = { ...NO_NAME, stitch, name: stitch, ...span }
  if (work.base.kind === 'chain') {
    const from = rise + 1 + (square === 'space' ? 2 * chains : 0)
    const hook: Item = {
      ...{ type: 'work', count: 1, stitch: name, place: nextPlace(span, CHAIN, from, 'from-hook') },
      ...span,
    }
    const rest: Item = {
      ...{ type: 'work', count: 1, stitch: name, place: nextPlace(span, CHAIN, chains) },
      ...span,
    }
    return square === 'space' ? [hook] : [hook, rest]
  }
  const extra = square === 'space' ? chains : 0
  const begins: Item[] = [
    { type: 'chain', count: rise + extra, ...span },
    { type: 'statement', says: 'counts', stitch, cluster: false, chains: extra, ...span },
  ]
  const next: Item = { type: 'work', count: 1, stitch: name, place: nextPlace(span, STITCH), ...span }
  work.beginning = findBeginning([...begins, next], false)
  return begins
}

/** Works so many spaces or blocks, one behind the other. */
export function runSquares(work: Work, item: WorkItem, run: ItemRunner): boolean {
  const { filet } = work.tree
  const { square, count } = item
  if (!square || !filet) return false
  const span = spanOf(item, item)
  for (let at = 0; at < (count ?? 1); at++) {
    spend(work, span)
    const fresh = !hasBody(work) && work.beginning === null && !work.here
    const alongBegins = work.base.kind === 'chain' && !work.chain && fresh
    if (alongBegins) {
      run(work, firstSteps(work, square, filet, span))
      continue
    }
    if (fresh && work.base.kind === 'round') run(work, firstSteps(work, square, filet, span))
    const last = work.elements.at(-1)
    const made = square === 'space' && last?.role === 'space' && work.elements.at(-2)?.role === 'beginning'
    run(work, stepsOf(work, square, filet, span, made))
  }
  return true
}
