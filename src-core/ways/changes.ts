/**
 * What can be changed so that a blanket comes out at another size, apart from its counts. Steps are whole things: a
 * round, a chain, half a hook size. Slides can be set as finely as the size asks for: a gauge, a gap, blocking.
 */
import { knownSize } from '../motif/ruler'
import type { BlanketLayout, Project } from '../../shared-types/project'
import type { WayKind, WishedSize } from '../../shared-types/ways'
import { plainRounds, writtenRounds } from '../edging/written'
import { JOINING } from '../fields/joining'
import { isWithin } from '../fields/field'
import { tidyAddress } from '../layout/addresses'
import type { Tryout } from '../layout/trials'
import { blanketOf } from '../plans/layouts'
import type { Planner } from '../plans/planner'
import { withOutlineStaying } from '../progress/outline-stays'
import { isBegun } from '../progress/progress'
import { settled } from '../settled'
import { GAUGE_CONSTANTS } from '../stitches/gauge'
import { WAYS } from './constants'
import { withOutlineBy } from './outline-by'
import { withRound } from './rounds'
import { backToMeasured, scaledProject, withMeasured } from './scale'
import type { Size } from './size'
import { SIDES, offBy } from './size'
import * as words from './words'

export interface Change extends words.FabricChange {
  readonly kind: WayKind
  readonly words: string
  readonly edit: (project: Project) => Project
}

/** A change that is found for a size; `size` in mm is what it leads to. */
export interface Found {
  readonly change: Change
  readonly size: Size
}

/** For one count after another: the change that takes a size nearest to the wish, null where none is sensible. */
export type Slide = (counts: Tryout['counts']) => Found | null

const speechOf = (project: Project): words.Speech => settled(project)

const withBlanket = (project: Project, fields: Partial<BlanketLayout>): Project => ({
  ...project,
  layout: { ...blanketOf(project)!, ...fields },
})

/** All whole steps of a project towards a size. What is made already keeps its motif, its hook and its joins. */
export const stepsOf = (project: Project, tryout: Tryout, wish: WishedSize, planner: Planner): Change[] => [
  ...edgingSteps(project, roundsTowards(project, tryout, wish, planner)),
  ...(isBegun(project) ? [] : [...chainSteps(project), ...hookSteps(project), ...roundSteps(project)]),
]

/** How many rounds of edging more are tried: the first few, and those that come to the size with the present motifs. */
function roundsTowards(project: Project, tryout: Tryout, wish: WishedSize, planner: Planner): number[] {
  const rounds = new Set(Array.from({ length: WAYS.edgingSteps }, (_, i) => 1 + i))
  const one = edgingSteps(project, [1]).find(({ more }) => more === 1)
  const wider = one && planner.tryout(one.edit(project))
  for (const side of wider ? SIDES : []) {
    const [wished, now] = [wish[side], tryout.size(tryout.counts)[side]]
    const each = wider!.size(tryout.counts)[side] - now
    if (wished === undefined || each < LEAST_GROWTH) continue
    const wanted = Math.floor((wished - now) / each)
    for (const count of [wanted, wanted + 1]) if (count >= 1 && count <= WAYS.edgingRounds) rounds.add(count)
  }
  return [...rounds].sort((a, b) => a - b)
}

function edgingSteps(project: Project, more: readonly number[]): (Change & { readonly more: number })[] {
  const edging = blanketOf(project)?.edging
  const speech = speechOf(project)
  const rounds = plainRounds(edging, speech.terms)
  // Written rounds are worked into the last of them.
  const least = writtenRounds(edging).length > 0 ? 1 : 0
  const stitch = rounds.at(-1) ?? (speech.terms === 'US' ? 'sc' : 'dc')
  const yarn = edging?.yarn ?? project.joining?.yarn
  // As many more as come to the size, if that is no border without end; as many fewer as there are.
  const steps = [...Array.from({ length: rounds.length }, (_, i) => -1 - i), ...more]
  const written = edging?.written ?? []
  const isFirst = rounds.length === 0
  // What is joined in the round and has no edging yet gets one round its open end: a bag is closed at its bottom.
  const atMouth = isFirst && edging?.ends === undefined && (blanketOf(project)?.inTheRound ?? false)
  /** Written rounds are left out from the outside, and last of all the round that they are worked into. */
  const without = (kept: number, plain: readonly string[]) => ({
    kind: 'edging' as const,
    more: 0,
    words: words.edgingWay(
      plain.length - rounds.length - writtenRounds(edging).filter(({ entry }) => entry >= kept).length,
      stitch,
      speech,
    ),
    edit: (before: Project) =>
      withBlanket(before, {
        edging: { ...edging, rounds: [...plain], written: written.slice(0, kept) },
      }),
  })
  const outer = written.map((_, kept) => without(kept, rounds))
  const none = written.length > 0 ? [without(0, [])] : []
  const plain = steps
    .filter((step) => rounds.length + step >= least)
    .map((step) => ({
      kind: 'edging' as const,
      more: step,
      words: words.edgingWay(step, stitch, speech, { isFirst, atMouth }),
      edit: (before: Project) =>
        withBlanket(before, {
          edging: {
            ...edging,
            ...(yarn !== undefined && { yarn }),
            ...(atMouth && { ends: 'mouth' as const }),
            rounds: step > 0 ? [...rounds, ...Array<string>(step).fill(stitch)] : rounds.slice(0, step),
          },
        }),
    }))
  return [...plain, ...outer, ...none]
}

/** Joining chains of other lengths, and instead of a join tip to tip; how long they are follows from a gauge. */
function chainSteps(project: Project): Change[] {
  const { joining, motifs } = settled(project)
  const isGauged = motifs.some(({ id, gauge }) => id === blanketOf(project)?.motif && gauge?.stitches)
  if (!isGauged || (joining.rule !== 'bridge' && joining.rule !== 'tips')) return []
  const now = joining.rule === 'bridge' ? joining.bridgeChains : 0
  return Array.from({ length: WAYS.chains + 1 }, (_, chains) => chains)
    .filter((chains) => chains !== now)
    .map((bridgeChains) => ({
      kind: 'joining',
      words: words.chainsWay(bridgeChains),
      fabric: bridgeChains > now ? 'open' : 'closer',
      edit: (before) => ({ ...before, joining: { ...before.joining, rule: 'bridge', bridgeChains } }),
    }))
}

/** A whole project by a factor, with the outline that it is cut out in: the same motifs stay. */
const scaledAll = (project: Project, factor: number, hook?: number): Project =>
  withOutlineBy(scaledProject(project, factor, hook), factor)

/** The project as its motifs were measured, before a way that takes another gauge; null where it is that. */
export function asMeasured(project: Project): Project | null {
  const back = backToMeasured(project)
  if (!back) return null
  const scaled = scaledAll(project, back.factor, back.hook)
  return { ...scaled, motifs: scaled.motifs?.map(withMeasured) }
}

/** The hook that the motif is worked with. */
function hookOf(project: Project): number | undefined {
  const { motifs } = settled(project)
  return motifs.find(({ id }) => id === blanketOf(project)?.motif)?.gauge?.hook
}

/** Half a size up and down: stitches are as much larger as the hook is (common practice, no source). */
function hookSteps(project: Project): Change[] {
  const hook = hookOf(project)
  if (hook === undefined || !isWithin(hook, GAUGE_CONSTANTS.hooks)) return []
  const step = hook < GAUGE_CONSTANTS.threadHook ? WAYS.threadHookStep : WAYS.hookStep
  return [hook - step, hook + step]
    .filter((other) => other >= step && isWithin(other, GAUGE_CONSTANTS.hooks))
    .map((other) => ({
      kind: 'hook',
      words: words.hookWay(other, hook),
      factor: other / hook,
      edit: (before) => scaledAll(before, other / hook, other),
    }))
}

function roundSteps(project: Project): Change[] {
  return [true, false].flatMap((more) => {
    const id = blanketOf(project)?.motif
    const changed = withRound(project, id, more)
    const motif = project.motifs?.find((each) => each.id === id)
    const change: Change = {
      kind: 'round',
      words: words.roundWay(more),
      // What was measured was another motif.
      ...(motif?.kind === 'rounds' && motif.measured && { fabric: 'other-rounds' as const }),
      edit: (before) => ({ ...before, motifs: changed?.motifs }),
    }
    return changed ? [change] : []
  })
}

/** All slides of a project towards a size; `after`: what was changed of it before. */
export function slidesOf(
  project: Project,
  tryout: Tryout,
  wish: WishedSize,
  planner: Planner,
  after?: WayKind,
): Slide[] {
  const slides = [blockingSlide(project, tryout, wish)]
  if (isBegun(project)) return slides
  slides.push(gaugeSlide(project, tryout, wish, planner, after))
  if (settled(project).joining.rule === 'apart') slides.push(gapSlide(project, tryout, wish, planner))
  return slides
}

/** Blocking a little wider and longer: each side by itself, and exactly. */
function blockingSlide(project: Project, tryout: Tryout, wish: WishedSize): Slide {
  const blocking = blanketOf(project)?.blocking
  const now = { width: blocking?.width ?? 1, height: blocking?.height ?? 1 }
  return (counts) => {
    const size = tryout.size(counts)
    const factors = { ...now }
    for (const side of SIDES) {
      const wished = wish[side]
      if (wished !== undefined) factors[side] = rounded((now[side] * wished) / size[side], 1e5)
    }
    const changes = SIDES.filter((side) => factors[side] !== now[side])
    const most = { least: 1, most: 1 + WAYS.blocking }
    if (changes.length === 0 || !changes.every((side) => isWithin(factors[side], most))) return null
    const told: Size = {
      width: (size.width * factors.width) / now.width,
      height: (size.height * factors.height) / now.height,
    }
    return {
      size: told,
      change: {
        kind: 'blocking',
        words: words.blockingWay(factors.width, factors.height),
        fabric: 'blocked',
        edit: (before) => withBlanket(before, { blocking: { ...blocking, ...factors } }),
      },
    }
  }
}

const rounded = (value: number, parts: number): number => Math.round(value * parts) / parts

/** How far a gauge is moved to see what it does: sizes follow it in a straight line. */
const TRIED = { gauge: 0.02, gap: 10 } as const

function gaugeSlide(
  project: Project,
  tryout: Tryout,
  wish: WishedSize,
  planner: Planner,
  after: WayKind | undefined,
): Slide {
  const motif = knownSize(tryout.trials.ground.account)
  return straight(tryout, planner.tryout(scaledAll(project, 1 + TRIED.gauge)), TRIED.gauge, wish, (by) => {
    if (Math.abs(by) > WAYS.gauge) return null
    const factor = rounded(1 + by, 1e5)
    return {
      kind: 'gauge',
      words: words.gaugeWay(factor, motif * factor, speechOf(project), after),
      factor,
      edit: (before) => scaledAll(before, factor),
    }
  })
}

function gapSlide(project: Project, tryout: Tryout, wish: WishedSize, planner: Planner): Slide {
  const now = settled(project).joining.gap
  const withGap = (gap: number) => (before: Project) => ({ ...before, joining: { ...before.joining, gap } })
  const most = Math.min(JOINING.gap.most, tryout.trials.ground.account.overTips / 2)
  return straight(tryout, planner.tryout(withGap(now + TRIED.gap)(project)), TRIED.gap, wish, (by) => {
    const gap = rounded(now + by, 100)
    if (gap < 0 || gap > most) return null
    return {
      kind: 'joining',
      words: words.gapWay(gap, speechOf(project)),
      fabric: gap > now ? 'open' : 'closer',
      edit: withGap(gap),
    }
  })
}

/** A slide along which both sides grow in a straight line, known at its start and after one `step`. */
function straight(
  start: Tryout,
  end: Tryout | null,
  step: number,
  wish: WishedSize,
  changeBy: (amount: number) => Change | null,
): Slide {
  return (counts) => {
    if (!end) return null
    const [from, to] = [start.size(counts), end.size(counts)]
    const at = (amount: number): Size => ({
      width: from.width + ((to.width - from.width) * amount) / step,
      height: from.height + ((to.height - from.height) * amount) / step,
    })
    const exact = SIDES.flatMap((side) => {
      const [wished, growth] = [wish[side], (to[side] - from[side]) / step]
      return wished !== undefined && Math.abs(growth) > LEAST_GROWTH ? [(wished - from[side]) / growth] : []
    })
    if (exact.length === 0) return null
    const middle = exact.reduce((sum, amount) => sum + amount, 0) / exact.length
    const best = [...exact, middle].reduce((a, b) => (offBy(at(b), wish) < offBy(at(a), wish) ? b : a))
    const change = Math.abs(best) > LEAST_GROWTH ? changeBy(best) : null
    return change && { change, size: at(best) }
  }
}

/** Less is no growth: the size does not hang on it. */
const LEAST_GROWTH = 1e-6

/**
 * A blanket's counts, and nothing else of its layout, where they are others: an outline stays where it lies, unless it
 * was put in the middle of them.
 */
export function withCounts(
  project: Project,
  now: Tryout['counts'],
  counts: Tryout['counts'],
  isInMiddle = false,
): Project {
  const { arrangement, columns, rows, rings } = counts
  if (arrangement === 'rings') return rings === now.rings ? project : withBlanket(project, { rings })
  if (columns === now.columns && rows === now.rows) return project
  const counted = withBlanket(project, { columns, rows })
  return isInMiddle ? counted : withOutlineStaying(project, counted)
}

/** Whether counts may stand instead of others: nothing that is made or joined disappears. */
export function keepsMade(project: Project, now: Tryout['counts'], counts: Tryout['counts']): boolean {
  if (!isBegun(project)) return true
  if (counts.rings < now.rings) return false
  if (counts.columns >= now.columns && counts.rows >= now.rows) return true
  if (blanketOf(project)?.outlineShape) return false
  const made = [...Object.keys(project.made ?? {}), ...Object.keys(project.joined ?? {})]
  return made
    .flatMap((id) => tidyAddress(id).split('+'))
    .every((id) => {
      const [row = 0, place = 0] = id.split(',').map(Number)
      return row <= counts.rows && (Number.isNaN(place) || place <= counts.columns)
    })
}
