/** The account of a round: what it makes, uses and leaves, and the checks of a tech editor (M5, M6). */
import { checkChain } from './chain-targets'
import {
  BUNCHES,
  clusterCounts,
  comesTo,
  groupCounts,
  groupsOf,
  largestGroup,
  sidesOf,
  spaceCounts,
} from './group-counts'
import { MANNER, makingsOf, picotsNamed, specialOf } from './own-counts'
import { SKIPPED } from './source'
import type { Source } from './source'
import { spaceKey } from './state'
import type { Span } from './tokens'
import type { CountEntry, CountItem } from './tree'
import type { StitchName } from './stitch-name'
import { countItems } from './told-counts'
import { checkRing } from './rings'
import { comesTogether, isMidway } from './part-counts'
import { STANDING_KEY, checkLoops, checkUse } from './use'
import { baseSource, report } from './work'
import type { Work } from './work'
import { stitchesOf } from './worked'
import type { LeftPlace, WorkedElement } from './worked'

export interface RoundAccount {
  readonly number: number
  readonly label: string | null
  /** The part of the pattern ("Leaf"), where the text has parts. */
  readonly part?: string
  /** Stitches standing at the round's end; null where the text leaves it open. */
  readonly made: number | null
  /** Worked in or skipped, of the round it is worked in. */
  readonly consumed: { readonly stitches: number; readonly spaces: number } | null
  /** Left for the next round: "ch-3" → 4. */
  readonly spaces: Readonly<Record<string, number>>
  /** Of the round before, passed over without being worked in or skipped. */
  readonly passed: { readonly stitches: number; readonly spaces: number }
  /** Between stitches rather than in them. */
  readonly gaps: number
  /** Single chains worked along. */
  readonly chains: number
  readonly picots: number
  /** Places that take two stitches or more, or stitches worked back along their own chain. */
  readonly groups: number
  readonly corners: number
  /** The round that it is worked in, by its number; null for a ring or chain. */
  readonly source: number | null
  readonly loops: 'front' | 'back' | 'both' | 'posts'
  /** US key → stitches, chains (single ones), slip stitches: everything worked, for yarn and totals. */
  readonly stitches: Readonly<Record<string, number>>
  readonly joined: boolean
  readonly span: Span
}

export interface Tally {
  readonly made: number
  readonly spaces: Record<string, number>
  readonly picots: number
  readonly groups: number
  readonly corners: number
  /** Stitches that stand in corners. */
  readonly inCorners: number
  readonly slips: number
}

function tally(work: Work, places: readonly LeftPlace[]): Tally {
  const spaces: Record<string, number> = {}
  for (const place of places) {
    if (place.kind !== 'space') continue
    const key = spaceKey(place.chains)
    spaces[key] = (spaces[key] ?? 0) + 1
  }
  const members = new Map<number, { stitches: number; split: boolean; open: boolean }>()
  let made = 0
  let picots = 0
  let slips = 0
  let previous = -1
  for (const element of work.elements) {
    if (element.standing) made++
    if (element.role === 'picot') picots++
    if (element.role === 'slip') slips++
    const inRing = element.into[0]?.kind === 'ring' || element.into[0]?.kind === 'unknown'
    if (element.standing && !inRing && element.into[0]?.kind !== 'chain') {
      const group = members.get(element.group) ?? { stitches: 0, split: false, open: false }
      group.stitches++
      if (group.open) group.split = true
      members.set(element.group, group)
      previous = element.group
    }
    if (element.role === 'space') {
      const group = members.get(previous)
      if (group) group.open = true
    } else if (element.role === 'slip' || element.standing) {
      const group = members.get(previous)
      if (group) group.open = false
    }
  }
  let groups = 0
  let corners = 0
  let inCorners = 0
  for (const group of members.values()) {
    if (group.stitches > 1) groups++
    if (!group.split) continue
    corners++
    inCorners += group.stitches
  }
  return { made, spaces, picots, groups: groups + work.spokes, corners, inCorners, slips }
}

/** Everything worked, by US key; chains one by one. */
function totals(elements: readonly WorkedElement[]): Record<string, number> {
  const sum: Record<string, number> = {}
  for (const element of elements)
    for (const [stitch, count] of stitchesOf(element)) sum[stitch] = (sum[stitch] ?? 0) + count
  return sum
}

/** The round that most is worked in: the base, or the one older round that the text names. */
function mainSource(work: Work): Source | null {
  const base = baseSource(work)
  let best: Source | null = base
  let most = base ? usedOf(base) : 0
  for (const source of work.sources.values()) {
    const used = usedOf(source)
    if (used > most && (base === null || usedOf(base) === 0)) {
      best = source
      most = used
    }
  }
  return best
}

const usedOf = (source: Source): number =>
  (['stitch', 'space', 'slip'] as const).reduce((sum, kind) => sum + source.count(kind), source.gapsTaken) +
  source.overStitches +
  source.overSpaces

const onPost = ({ into }: WorkedElement, post: 'front' | 'back'): boolean =>
  into.some((place) => place.post === post)

/** "12 FPdc, 12 dc": those around posts are counted by themselves, or are dc like the others. */
function countPlain(
  standing: readonly WorkedElement[],
  name: StitchName,
  bunches: boolean,
  special: number,
  mannered: (element: WorkedElement) => boolean,
  posts: boolean,
): number | readonly number[] {
  const like = standing.filter(
    (element) =>
      STANDING_KEY(element) === name.stitch && !(bunches && BUNCHES.has(element.form)) && !mannered(element),
  )
  const { post } = name
  if (post) return like.filter((element) => onPost(element, post)).length
  // "8 sc, 8 long sc": a stitch that the text explains has a count of its own.
  if (special > 0) return [Math.max(0, like.length - special), like.length]
  const plain = like.filter((element) => !onPost(element, 'front') && !onPost(element, 'back'))
  // "40 dc, 4 FPdc": those have a count of their own.
  return plain.length === like.length || posts ? plain.length : [like.length, plain.length]
}

/** "48 sc, 8 long sc": those that are worked in a manner with a count of its own are none of the others. */
function inManner(work: Work, entry: CountEntry, all: CountItem): (element: WorkedElement) => boolean {
  const apart = all.entries.some(({ words }) => MANNER.test(words))
  if (!apart) return () => false
  const own = MANNER.test(entry.words)
  const { text, definitions } = work.tree
  const words = ({ start, end }: Span) =>
    definitions.find(({ description: at }) => at.start <= start && end <= at.end)?.names[0] ??
    text.slice(start, end)
  return ({ span }) => MANNER.test(words(span)) !== own
}

/** How many of what an end count names the round really has; null where that cannot be told. */
function countOf(
  work: Work,
  entry: CountEntry,
  all: CountItem,
  sums: Tally,
): number | readonly number[] | null {
  const { noun } = entry
  const standing = work.elements.filter((element) => element.standing)
  if (noun.kind === 'space') return spaceCounts(entry, noun, all, sums)
  if (noun.kind === 'corner') return sums.corners > 0 ? sums.corners : null
  if (noun.kind === 'own' && noun.words === 'side') return sidesOf(sums)
  if (noun.kind === 'own')
    return /^petals?$|^groups?$|^spokes?$|^points?$|^scallops?$|^corners?$/.test(noun.words)
      ? groupCounts(work, noun.words, sums, standing)
      : null
  if (noun.kind !== 'stitch') return null
  const { name } = noun
  // Slip stitches of a leaf are stitches too, where the count means them.
  if (!name) {
    // "(24 sts)" of 12 dc with a chain behind each: chains by themselves are counted as stitches, too.
    const single = sums.spaces[spaceKey(1)] ?? 0
    const ways = [
      sums.made,
      sums.made + sums.slips,
      ...(all.entries.length === 1 ? [sums.made + single] : []),
    ]
    return [...new Set(ways)]
  }
  switch (name.form) {
    case 'plain':
      if (name.stitch === 'sl st') return sums.slips
      // "24 dc, 4 pc": what has a count of its own is not among the others.
      return countPlain(
        standing,
        name,
        all.entries.some(({ noun: other }) => other.kind === 'stitch' && BUNCHES.has(other.name?.form ?? '')),
        specialOf(work, all, name),
        inManner(work, entry, all),
        all.entries.some(({ noun: other }) => other.kind === 'stitch' && other.name?.post != null),
      )
    case 'picot': {
      const named = picotsNamed(work, name)
      if (named !== null) return named
      // "(1 dc, 3 ch, 1 dc) in next tr (9 picots)": small loops of chains may be meant.
      return sums.picots > 0
        ? sums.picots
        : [0, ...[3, 4, 5].map((chains) => sums.spaces[spaceKey(chains)] ?? 0)]
    }
    case 'shell':
    case 'v-stitch': {
      // "6 corners, 6 V-sts": corners that are counted by themselves.
      const others = all.entries.reduce(
        (sum, { noun: other, count }) =>
          sum +
          (other.kind === 'corner' || (other.kind === 'own' && /^(corners?|half)/.test(other.words))
            ? count
            : 0),
        0,
      )
      const pairs = name.form === 'v-stitch' ? [groupsOf(standing, 2)] : []
      // "4 Shells, 8 dc": a pair of dc between two shells is none of them.
      const largest = groupsOf(standing, largestGroup(standing))
      const own = makingsOf(work, name)
      // "8 fans" of single stitches side by side: what a fan is nobody knows.
      if (!own && sums.groups === 0 && largestGroup(standing) < 2) return null
      return [
        ...(own ? [own.times] : []),
        sums.groups,
        groupsOf(standing),
        ...pairs,
        sums.groups - others,
        largest,
      ]
    }
    case 'increase':
      return sums.groups
    case 'decrease':
    case 'together':
      return standing.filter((element) => element.form === 'together').length
    case 'cluster':
      return clusterCounts(work, entry, sums, standing)
    case 'puff':
    case 'popcorn':
    case 'bobble':
      return standing.filter((element) => BUNCHES.has(element.form)).length
    case 'special':
      // "12 spike sc" that the text explains.
      return name.stitch !== null && MANNER.test(entry.words)
        ? countPlain(standing, name, false, 0, inManner(work, entry, all), false)
        : (makingsOf(work, name)?.times ?? null)
  }
}

/** "Ch 3 (counts as dc), 12 dc in ring. (12 dc)": the chain was not taken off, and the slip stands there. */
function oneTooMany(work: Work, made: number, wanted: number): Span | null {
  if (made !== wanted + 1 || work.beginning?.as !== 'counts') return null
  const spans = new Set(work.elements.filter(({ role }) => role === 'stitch').map(({ span }) => span))
  const [span] = spans
  const inRing = work.elements.some(({ into }) => into[0]?.kind === 'ring')
  return spans.size === 1 && inRing ? span! : null
}

function checkEndCounts(work: Work, counts: readonly CountItem[], sums: Tally): void {
  for (const count of counts) {
    for (const entry of count.entries) {
      if ((entry.round ?? work.number) !== work.number) continue
      const have = countOf(work, entry, count, sums)
      if (have === null) continue
      const wanted = entry.inTurn?.[work.number - (work.node.numbers?.[0] ?? work.number)] ?? entry.count
      const ways = typeof have === 'number' ? [have] : have
      const fits = ways.some((made) => comesTo(entry, made, wanted))
      if (fits || isMidway(work, count, wanted) || comesTogether(counts, entry, ways)) continue
      const made = typeof have === 'number' ? have : (have.find((count) => count > 0) ?? 0)
      // "20 s.c." in today's spelling, so that no sentence ends within a sentence.
      const said = entry.words.replace(/\.[ \t]?(?=\p{L}(?!\p{L}))|\./gu, '')
      const unit = said.replace(entry.inTurn ? /^(?:[\d\s,/&→[\]()]|and|then)+/ : /^\S+\s*/, '') || 'sts'
      report(work, 'rounds/wrong-end-count', oneTooMany(work, made, wanted) ?? entry, {
        said,
        made: `${made} ${unit}`,
      })
    }
  }
}

/** "*ch 9, sl st in same st, sl st in next st; rep from * around": the very last slip stitch is the joining. */
function closeByOverlap(work: Work, source: Source | null): void {
  const last = work.elements[work.elements.length - 1]
  if (!source || source.overStitches !== 1 || last?.role !== 'slip' || last.into[0]?.kind !== 'unknown')
    return
  if (work.elements.length < 2 || source.count('stitch') !== source.total('stitch')) return
  last.role = 'join'
  source.overStitches = 0
  work.joined = true
}

/** "Ch 27. Row 1: … (7 V-sts, 2 dc)": where the count comes to what is told, it is the chain that is too long. */
function blameFoundation({ base, findings, node }: Work): void {
  if (base.kind !== 'chain' || !base.span || [...countItems(node.items)].length === 0) return
  if (findings.some(({ code }) => code === 'rounds/wrong-end-count')) return
  for (const [at, found] of findings.entries())
    if (found.code === 'rounds/chains-left') findings[at] = { ...found, span: base.span }
}

interface Finished {
  readonly account: RoundAccount
  readonly onto: Source | null
}

/** Sums up a round that has been worked, with its checks. */
export function finishRound(work: Work, places: readonly LeftPlace[], allWorked: boolean): Finished {
  const source = mainSource(work)
  closeByOverlap(work, source)
  const sums = tally(work, places)
  const sourceKnown = source !== null && !source.state.unknown
  if (!work.open && sourceKnown) {
    if (source) checkUse(work, source, allWorked)
    if (source) checkLoops(work, source)
    const base = baseSource(work)
    if (base && base !== source && (base.overStitches > 0 || base.overSpaces > 0)) checkUse(work, base, false)
  }
  checkChain(work, work.elements.findLast(({ role }) => role !== 'join')?.span ?? null)
  if (!work.open && !work.overReported) {
    checkEndCounts(work, [...countItems(work.node.items)], sums)
    blameFoundation(work)
    checkRing(work)
  }
  const stitchesUsed = source ? source.count('stitch') + source.overStitches : 0
  const spacesUsed = source ? source.count('space') + source.overSpaces : 0
  const base = baseSource(work)
  const passed = {
    stitches: base && base === source ? Math.max(0, base.total('stitch') - base.count('stitch')) : 0,
    spaces: base && base === source ? Math.max(0, base.total('space') - base.count('space')) : 0,
  }
  const posts = work.elements.some((element) => element.into.some((place) => place.post !== null))
  const loop =
    work.elements.find((element) => element.standing || element.role === 'slip')?.into[0]?.loop ?? 'both'
  const account: RoundAccount = {
    number: work.number,
    label: work.node.label,
    ...(work.node.part !== null && { part: work.node.part }),
    made: work.open ? null : sums.made,
    consumed: work.open ? null : { stitches: stitchesUsed, spaces: spacesUsed },
    spaces: work.open ? {} : sums.spaces,
    passed: work.open ? { stitches: 0, spaces: 0 } : passed,
    gaps: source?.gapsTaken ?? 0,
    chains: work.chainCells.size,
    picots: sums.picots,
    groups: sums.groups,
    corners: sums.corners,
    source: source?.state.number ?? null,
    loops: posts ? 'posts' : loop,
    stitches: totals(work.elements),
    joined: work.joined,
    span: { start: work.node.start, end: work.node.end, line: work.node.line, column: work.node.column },
  }
  return { account, onto: source }
}

/** Marks in the rounds worked into what is used now: loops held, stitches worked or skipped. */
export function settleSources(work: Work): void {
  for (const { state, index, mark } of work.loopMarks) {
    state.loops[index] = (state.loops[index] ?? 0) | mark
    state.loopsBy = work.number
  }
  for (const source of work.sources.values()) {
    source.used.forEach((used, index) => {
      if (used >= SKIPPED) source.state.touched[index] = Math.max(source.state.touched[index] ?? 0, used)
    })
  }
}
