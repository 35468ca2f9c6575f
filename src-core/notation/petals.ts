/** Within petals, shells and groups: the nth stitch or space, the middle, the tip. */
import { landmarksIn } from './laps'
import { tipTargets } from './tips'
import { TRAVELLED } from './source'
import type { PlaceTest, Source } from './source'
import { missing, noSuchStitch, nowhere, roundWords, sourceFor, takeAt } from './taking'
import type { Taking } from './taking'
import { checkChainsTold } from './told-chains'
import type { Item, Noun, PlacePart } from './tree'
import type { StitchName } from './stitch-name'
import { definedKey } from './vocabulary'
import { hasBody, report, spend, targetAt } from './work'
import type { Target, Work } from './work'

type Within = Extract<Noun, { readonly kind: 'within' }>

/** Which of the members of a petal or run are meant; none where it has not so many. */
const pick = (members: readonly number[], { nth, run = 1 }: Within): readonly number[] => {
  if (run === 'all') return members
  const over = members.length - run
  const from = nth === 'center' ? over >> 1 : nth === 'last' ? over : nth - 1
  return from < 0 || from > over ? [] : members.slice(from, from + run)
}

const isLike = (source: Source, name: StitchName | null, at: number): boolean =>
  source.places[at]!.kind === 'stitch' && (!name || source.places[at]!.stitch === name.stitch)

/** Runs of like stitches, from one space or stitch of another kind to the next. */
function runsOf(source: Source, name: StitchName | null): number[][] {
  const runs: number[][] = [[]]
  source.places.forEach((_, at) => {
    if (isLike(source, name, at)) runs.at(-1)!.push(at)
    else if (runs.at(-1)!.length > 0) runs.push([])
  })
  // The last run goes on in the first one where nothing lies between them.
  if (runs.length > 1 && isLike(source, name, 0)) runs[0]!.unshift(...runs.pop()!)
  return runs.filter(({ length }) => length > 0)
}

/** Runs of spaces, from where two stitches stand side by side to the next such place: "first ch-1 sp of next fan". */
function spaceRunsOf({ places }: Source): number[][] {
  const runs: number[][] = [[]]
  places.forEach(({ kind }, at) => {
    if (kind === 'space') runs.at(-1)!.push(at)
    else if (places[at - 1]?.kind === 'stitch' && runs.at(-1)!.length > 0) runs.push([])
  })
  const closes = places[0]?.kind === 'stitch' && places.at(-1)?.kind === 'stitch'
  if (runs.length > 1 && !closes) runs[0]!.unshift(...runs.pop()!)
  return runs.filter(({ length }) => length > 0)
}

/** "Next 3-dc group": those of that size, where there are such; else all. */
function ofSize(lists: readonly (readonly number[])[], size: number | undefined) {
  const meant = lists.filter(({ length }) => length === size)
  return meant.length > 0 ? meant : lists
}

/** Where no stitches share a place, a petal is a run of like stitches. */
function inRun(work: Work, source: Source, part: PlacePart, noun: Within, taking: Taking): Target[] {
  const { name, size } = noun
  const found = noun.what === 'space' ? spaceRunsOf(source) : ofSize(runsOf(source, name), size)
  const runs = found.map((run) => pick(freeFor(source, noun, run), noun))
  if (noun.what === 'space' && found.length > 1) {
    const firsts = new Map(runs.map((run) => [run[0], run] as const))
    const next = source.find('space', 'run', (_, at) => firsts.has(at))
    if (next >= 0) return firsts.get(next)!.map((at) => takeAt(work, source, at, part, taking))
  }
  const meant = new Map(runs.map((run) => [run[0], run] as const))
  const next = source.find('stitch', 'run', (_, at) => meant.has(at))
  const index = next >= 0 ? next : source.find('stitch', 'like', (_, at) => isLike(source, name, at))
  if (index < 0) return [missing(work, source, 'stitch', part)]
  return (meant.get(index) ?? [index]).map((at) => takeAt(work, source, at, part, taking))
}

/** Of "each dc of petal" what is worked already is none. */
const freeFor = (source: Source, { run }: Within, members: readonly number[]): readonly number[] =>
  run === 'all' ? members.filter((at) => source.used[at]! <= TRAVELLED) : members

/** "3 sc in center sc of each corner" in a sweep: the stitch that is picked of each group. */
export function withinTest(source: Source, noun: Noun): { name: string; test: PlaceTest } | null {
  if (noun.kind !== 'within' || noun.what !== 'stitch') return null
  const groups = [...new Set(source.places.map(({ group }) => group))].filter((group) =>
    source.isGroup(group),
  )
  const like = groups.map((group) => source.membersOf(group).filter((at) => isLike(source, noun.name, at)))
  const picked = new Set(ofSize(like, noun.size).flatMap((members) => pick(members, noun)))
  return { name: `within ${noun.nth} ${noun.run} ${noun.size}`, test: (_, index) => picked.has(index) }
}

/** "Sc in each rem sc of same group": where each run between two spaces has more in it than one place holds, that is a group. */
function groupsAreRuns(work: Work, source: Source, { start, end, noun }: PlacePart): boolean {
  if (
    noun.kind !== 'within' ||
    noun.size !== undefined ||
    !/\bgroup\b/i.test(work.tree.text.slice(start, end))
  )
    return false
  const known = longRuns.get(source) ?? hasLongRuns(source)
  longRuns.set(source, known)
  return known
}

const longRuns = new WeakMap<Source, boolean>()
function hasLongRuns(source: Source): boolean {
  const runs = runsOf(source, null)
  return (
    runs.length > 2 &&
    runs.every((run) => {
      const groups = run.map((at) => source.places[at]!.group).filter((group) => source.isGroup(group))
      return new Set(groups).size === 1 && groups.length < run.length
    })
  )
}

/** The nth stitch or space of the next petal, shell or group. */
export function withinTargets(work: Work, part: PlacePart, taking: Taking): Target[] {
  spend(work, part)
  const source = sourceFor(work, part)
  if (!source || part.noun.kind !== 'within') return [nowhere(work, part)]
  const { noun } = part
  const { what, nth, name, run = 1 } = noun
  // Where all of a group is worked, nothing is left out on purpose.
  work.picked ||= run !== 'all'
  const kind = what === 'space' ? 'space' : 'stitch'
  if (!source.state.ordered) {
    if (run === 'all') report(work, 'rounds/not-countable', part, { what: 'how large it is' }, 'once')
    work.open ||= run === 'all'
    return Array.from({ length: run === 'all' ? 1 : run }, () => {
      const index = source.find(kind, '', () => true)
      return index >= 0 ? takeAt(work, source, index, part, taking) : missing(work, source, kind, part)
    })
  }
  // "Center tr of petal" of petals without one: the middle stitch is taken, and that is said.
  const isNamed = name?.form === 'plain' && name.stitch !== null && name.stitch !== 'ch'
  const plain = kind === 'stitch' && isNamed ? name : null
  const isPlain: PlaceTest = ({ stitch }) => stitch === null || stitch === plain?.stitch
  const there = plain === null || source.has('stitch', `within ${plain.stitch}`, isPlain)
  if (!there && source.has('stitch', '', () => true)) noSuchStitch(work, source, plain, part)
  // Each place of a group asks for them: of a group of thousands they are looked for once.
  const likes = new Map<number, readonly number[]>()
  const likeIn = (group: number): readonly number[] => {
    const known = likes.get(group) ?? likesOf(group)
    likes.set(group, known)
    return known
  }
  const likesOf = (group: number): readonly number[] => {
    const members = source.membersOf(group).filter((index) => source.places[index]!.kind === kind)
    // "First dc of next petal" counts the dc alone.
    const named = members.filter((index) => kind === 'space' || isLike(source, name, index))
    return named.length > 0 ? named : members
  }
  const picks = new Map<number, readonly number[]>()
  const membersOf = (group: number): readonly number[] => {
    const picked = picks.get(group) ?? pick(freeFor(source, noun, likeIn(group)), noun)
    picks.set(group, picked)
    return picked
  }
  const sized =
    noun.size !== undefined &&
    source.has(
      'stitch',
      `group of ${noun.size} ${name?.stitch}`,
      ({ group }) => source.isGroup(group) && likeIn(group).length === noun.size,
    )
  if (noun.size !== undefined && !sized) noSuchSize(work, source, part, likeIn, noun.size)
  // A group of which that stitch is worked already is behind.
  const inGroup: PlaceTest = ({ group }) => {
    if (!source.isGroup(group) || (sized && likeIn(group).length !== noun.size)) return false
    const [member] = membersOf(group)
    if (member === undefined || source.used[member]! > TRAVELLED) return false
    // "First tr of fan" behind a shell of which the space was worked: the half of it that is ahead is no fan.
    const last = source.membersOf(group).at(-1)!
    return nth !== 1 || source.distance(member) <= source.distance(last)
  }
  const first = source.find('stitch', 'in group', inGroup)
  const start = first >= 0 ? first : source.find('space', 'in group', inGroup)
  const grouped = source.has('stitch', 'grouped', ({ group }) => source.isGroup(group))
  if (groupsAreRuns(work, source, part)) return inRun(work, source, part, noun, taking)
  if (start < 0 && !grouped) return inRun(work, source, part, noun, taking)
  if (start < 0) {
    const sizes = source.places.map(({ group }) => (source.isGroup(group) ? likeIn(group).length : 0))
    const most = sizes.reduce((large, size) => Math.max(large, size), 0)
    if (run === 'all' || (typeof nth === 'number' ? nth + run - 1 : run) <= most)
      return [missing(work, source, kind, part)]
    report(
      work,
      'rounds/group-too-small',
      part,
      { nth: typeof nth === 'number' ? nth + run - 1 : run, most },
      'once',
    )
    return [targetAt(work, source, { kind: 'unknown', round: source.state.index, index: -1 })]
  }
  const group = source.places[start]!.group
  const members = membersOf(group)
  const [member = start] = members
  if (kind === 'space') checkChainsTold(work, source, part, member)
  // What only leads there passes nothing; what lies behind the stitch may still be worked.
  // Slip stitches may have led to that stitch already: then it lies behind the hook.
  const led = source.used[member] === TRAVELLED && work.last?.place.index === member
  // "Standing sc in second dc of any pair": the round begins there, and comes back to what lies before it.
  const begins = !hasBody(work) && /\bany\b/i.test(work.tree.text.slice(part.start, part.end))
  if (taking.as > TRAVELLED && !led && !begins) source.passTo(member)
  return members.map((at) => takeAt(work, source, at, part, taking))
}

/** "Center dc of next 7-dc shell" where all shells are of five. */
function noSuchSize(
  work: Work,
  source: Source,
  part: PlacePart,
  likeIn: (group: number) => readonly number[],
  asked: number,
): void {
  const groups = new Set(source.places.map(({ group }) => group).filter((group) => source.isGroup(group)))
  const sizes = new Set([...groups].map((group) => likeIn(group).length))
  const [size = 0, ...others] = sizes
  if (size < 2 || others.length > 0) return
  const round = roundWords(work, source)
  const values = { have: `groups of ${size}`, wanted: `group of ${asked}`, round }
  report(work, 'rounds/no-such-stitch', part, values, `group of ${asked}`)
}

/** "(sc, ch 2, sc) in tip": where no way leads up to it in words, the middle of a petal is meant. */
const isTip = (work: Work, { noun, round }: PlacePart): boolean =>
  noun.kind === 'landmark' && noun.name === 'tip' && !round && work.flex.length === 0 && !leadsToTips(work)

const leading = new WeakMap<readonly Item[], boolean>()
function leadsToTips({ node: { items } }: Work): boolean {
  const known = leading.get(items) ?? landmarksIn(items) > 0
  leading.set(items, known)
  return known
}

/** Whether the shell that is named has chains in it: beside groups that have none, it is told by its space. */
function hasChain(work: Work, { noun }: PlacePart): boolean {
  const name = noun.kind === 'stitch' ? noun.name : null
  if (name?.form === 'v-stitch') return true
  const key = definedKey(name?.name ?? '')
  const said = work.tree.definitions.find(({ keys }) =>
    keys.some((given) => [key, `${key}s`].includes(given)),
  )
  const chained = (items: readonly Item[]): boolean =>
    items.some((item) => item.type === 'chain' || ('items' in item && chained(item.items)))
  return chained(said?.items ?? [])
}

/** How many chains the shell has in it, as it is explained; 0 where it has none. */
const chainsOf = (items: readonly Item[]): number => {
  for (const item of items) {
    const chains = item.type === 'chain' ? item.count : 'items' in item ? chainsOf(item.items) : 0
    if (chains > 0) return chains
  }
  return 0
}

/** The chains within what has one place, "ch 1, 2 dc, ch 2 and 2 dc in ring": 2; 0 where there are none, or others. */
function chainsWithin(items: readonly Item[]): number {
  const found = new Set<number>()
  const look = (list: readonly Item[], placed: boolean): void => {
    list.forEach((item, at) => {
      if ('items' in item) return look(item.items, item.type === 'group' && item.place !== null)
      const [before, behind] = [list[at - 1], list[at + 1]]
      if (item.type !== 'chain' || before?.type !== 'work' || behind?.type !== 'work') return
      if (placed || (before.place === null && behind.place !== null)) found.add(item.count)
    })
  }
  look(items, false)
  return found.size === 1 ? [...found][0]! : 0
}

/** What the text says of the round of that number, of those that stand before this one. */
const itemsOf = ({ node, tree: { rounds } }: Work, number: number): readonly Item[] =>
  rounds
    .slice(0, rounds.indexOf(node))
    .findLast(({ numbers }) => numbers !== null && numbers[0] <= number && number <= numbers[1])?.items ?? []

/** "Shell over shell" above shells that were all worked in one ring: in the space of those chains. Null where shells stand in places of their own. */
export function shellSpace(work: Work, part: PlacePart): PlacePart | null {
  const { noun, start, end } = part
  const name = noun.kind === 'stitch' ? noun.name : null
  const whole = name?.form === 'shell' || name?.form === 'v-stitch'
  if (!whole && !(noun.kind === 'within' && noun.what === 'space' && noun.nth === 'center')) return null
  const source = sourceFor(work, part)
  if (!source?.state.ordered || source.state.unknown || source.total('space') === 0) return null
  const hasSpace = (group: number) =>
    source.membersOf(group).some((at) => source.places[at]!.kind === 'space')
  if (source.has('stitch', 'grouped', ({ group }) => source.isGroup(group) && hasSpace(group))) return null
  const [, told = '0'] = /\bch-?(\d+)\b/i.exec(work.tree.text.slice(start, end)) ?? []
  const named = work.tree.definitions.find(({ form, keys }) =>
    name ? keys.includes(definedKey(name.name)) : form === 'shell' || form === 'v-stitch',
  )
  const chains =
    Number(told) || (named ? chainsOf(named.items) : chainsWithin(itemsOf(work, source.state.number)))
  const there = chains > 0 && source.has('space', `in shells ${chains}`, (place) => place.chains === chains)
  return there ? { ...part, noun: { kind: 'space', chains, corner: false } } : null
}

/** "in next shell", "in each V-st", "in the point": its space in the middle, or else its middle stitch. Null where no shell is meant. */
export function shellTargets(work: Work, part: PlacePart, taking: Taking): Target[] | null {
  const form = part.noun.kind === 'stitch' ? part.noun.name?.form : null
  const tips = isTip(work, part) ? tipTargets(work, part, taking) : null
  if (tips) return tips
  if (form !== 'shell' && form !== 'v-stitch' && !isTip(work, part)) return null
  const source = sourceFor(work, part)
  if (!source?.state.ordered || source.state.unknown) return null
  const groups = new Set(source.places.map(({ group }) => group).filter((group) => source.isGroup(group)))
  if (groups.size === 0) return null
  const hasSpace = (group: number) =>
    source.membersOf(group).some((at) => source.places[at]!.kind === 'space')
  const spaced = [...groups].filter(hasSpace).length
  const what = spaced === groups.size || (spaced > 0 && hasChain(work, part)) ? 'space' : 'stitch'
  const within = { ...part, noun: { kind: 'within', what, nth: 'center', name: null } } as const
  const isFree = (group: number) => source.membersOf(group).every((at) => source.used[at]! <= TRAVELLED)
  const count = part.which === 'each' ? [...groups].filter(isFree).length : Math.max(1, part.count)
  return Array.from({ length: count }, () => withinTargets(work, within, taking)).flat()
}
