/** A round in hand, forked: the same condition, worked on by itself, to see what a part of the text takes. */
import type { Source } from './source'
import type { RoundState } from './state'
import { spendLooking } from './work'
import type { Target, Work } from './work'

/** A copy of everything that working changes; what it makes and uses stays with it. */
export function forkWork(work: Work): Work {
  // It costs its size, so that no text makes more of them than it may have steps.
  let size = work.elements.length + 1
  for (const { places } of work.sources.values()) size += places.length
  spendLooking(work, size, work.node)
  const sources = new Map<RoundState, Source>()
  for (const [state, source] of work.sources) sources.set(state, source.fork())
  const moved = (target: Target): Target =>
    target.source ? { ...target, source: sources.get(target.source.state) ?? null } : target
  const target = (from: Target | null): Target | null => from && moved(from)
  return {
    ...work,
    sources,
    elements: work.elements.map((element) => ({ ...element })),
    groups: new Map(work.groups),
    findings: [...work.findings],
    reported: new Set(work.reported),
    scope: { ...work.scope },
    repeats: new Map(work.repeats),
    here: target(work.here),
    last: target(work.last),
    first: target(work.first),
    joinedAt: target(work.joinedAt),
    leg: work.leg && { ...work.leg, target: target(work.leg.target) },
    described: work.described && { ...work.described, target: target(work.described.target) },
    spaceCells: work.spaceCells && { ...work.spaceCells, target: moved(work.spaceCells.target) },
    chain: work.chain && { ...work.chain },
    flex: [...work.flex],
    chainCells: new Set(work.chainCells),
    loopMarks: [...work.loopMarks],
  }
}
