/** What works out as it is written and is hardly meant so: a tech editor asks. Common practice, no source. */
import { amountWords } from './laps'
import { spaceKey } from './state'
import { isSlip } from './stitch-name'
import type { Span } from './tokens'
import { statedStitches } from './told-counts'
import { placeParts } from './tree'
import type { Item, RoundNode, WorkItem } from './tree'
import { baseSource, report } from './work'
import type { Work } from './work'

const isPlain = (item: Item | undefined): item is WorkItem =>
  item?.type === 'work' &&
  item.place === null &&
  item.stitch.form === 'plain' &&
  item.stitch.loop === null &&
  item.stitch.post === null

/** "(2 dc, 2 dc) in next ch-2 sp": twice the same with nothing between, where one number would do. */
function askForChain(work: Work, items: readonly Item[]): void {
  for (const item of items) {
    if ('items' in item) askForChain(work, item.items)
    if (item.type !== 'group' || item.place === null || (item.times ?? 1) > 1) continue
    item.items.forEach((one, at) => {
      const other = item.items[at + 1]
      if (!isPlain(one) || !isPlain(other) || one.stitch.stitch !== other.stitch.stitch) return
      report(work, 'rounds/chain-forgotten', item, {})
    })
  }
}

/** "Tr3tog, ch 5, [tr4tog over next 4 tr] 7 times, join": the chain is told once, before what is repeated. */
function askForChains(work: Work, items: readonly Item[]): void {
  items.forEach((item, at) => {
    const chain = items[at - 1]
    if ((item.type !== 'group' && item.type !== 'star') || chain?.type !== 'chain' || chain.count < 2) return
    const times = item.type === 'group' ? item.times : (item.repeat?.amount ?? null)
    const closes = items.slice(at + 1).find(({ type }) => type !== 'note' && type !== 'count')
    const joins = closes?.type === 'join' || (closes?.type === 'work' && isSlip(closes.stitch))
    const begins = items.slice(0, at - 1).filter(({ type }) => type === 'work' || type === 'group')
    if (times === null || times < 3 || !joins || begins.length === 0 || hasChains(item.items)) return
    report(work, 'rounds/chain-not-repeated', item, { chains: chain.count })
  })
}

const hasChains = (items: readonly Item[]): boolean =>
  items.some((item) => item.type === 'chain' || ('items' in item && hasChains(item.items)))

/** "Sl st in next 3 dc and in ch-2 sp", where the space stands behind the second: so many would be meant. */
function askForSpace(work: Work): void {
  const source = baseSource(work)
  if (!source || source.state.unknown || !source.state.ordered) return
  const { places } = source
  const steps = work.elements.filter(({ into: [place] }) => place?.round === source.state.index)
  const at = (step: number): number => steps[step]!.into[0]!.index
  const isStitch = (step: number): boolean => steps[step]?.into[0]!.kind === 'stitch'
  const worked = new Set<number>()
  let before = 0
  steps.forEach(({ span }, step) => {
    if (!isStitch(step)) worked.add(at(step))
    const goesOn = isStitch(step) && isStitch(step - 1) && steps[step - 1]!.span === span
    before = goesOn ? before + (at(step) > at(step - 1) ? 1 : 0) : isStitch(step) ? 1 : 0
    const next = steps[step + 1]?.into[0]
    if (!goesOn || before < 2 || next?.kind !== 'space') return
    const { chains } = places[next.index]!
    for (let passed = at(step - 1) + 1; passed < at(step); passed++) {
      if (places[passed]!.kind !== 'space' || places[passed]!.chains !== chains) continue
      // What is only passed on the way to the first place is not worked later either.
      if (worked.has(passed) || (passed !== next.index && steps[step]!.role !== 'travel')) continue
      const values = { space: `${spaceKey(chains)} sp`, before: before - 1 }
      report(work, 'rounds/space-run-over', span, values, 'once')
    }
  })
}

/** "3 dc in centre dc of corner, dc in next 17 dc; rep from *": on one way to a corner a stitch is left, on another none. */
function askForSides(work: Work): void {
  const source = baseSource(work)
  if (!source || source.state.unknown || !source.state.ordered || !source.state.joined) return
  const centres = new Set(
    [...placeParts(work.node.items)].flatMap(({ noun, which, end }) =>
      noun.kind === 'within' && noun.nth === 'center' && which === 'next' ? [end] : [],
    ),
  )
  if (centres.size === 0) return
  const steps = work.elements.filter(({ into: [place] }) => place?.round === source.state.index)
  const arrivals = steps.flatMap((step, at) => {
    const before = steps[at - 1]
    if (!centres.has(step.span.end) || !before || before.span === step.span || before.role === 'travel')
      return []
    const passed = step.into[0]!.index - before.into[0]!.index - 1
    return [{ passed, span: before.span }]
  })
  const short = arrivals.filter(({ passed }) => passed === 1)
  if (short.length === 0 || !arrivals.every(({ passed }) => passed === 0 || passed === 1)) return
  if (short.length === arrivals.length) return
  report(work, 'rounds/stitches-passed', short[0]!.span, { passed: amountWords(1, 'st') }, 'passed')
}

/** Stitches in one place after the other, in the ring between its spaces. */
function sizesOfGroups({ elements }: Work): readonly number[] {
  const sizes: number[] = []
  let group: number | null = null
  for (const element of elements) {
    if (element.role === 'space') group = null
    if (!element.standing) continue
    if (element.group === group) sizes[sizes.length - 1]!++
    else sizes.push(1)
    group = element.group
  }
  return sizes
}

/** "Ch 3 (does not count), 2 dc in same sp, ch 2, *3 dc in next sp, ch 2*": the chains stand there for a stitch after all. */
function checkFirstGroup(work: Work, items: readonly Item[]): void {
  const { beginning } = work
  if (!beginning?.told || beginning.as !== 'turning' || beginning.item.count < 2) return
  if (work.open || statedStitches(items) !== null) return
  const [first = 0, others = 0, ...more] = sizesOfGroups(work)
  if (others < 2 || first !== others - 1 || more.length === 0 || more.some((size) => size !== others)) return
  const values = { chains: beginning.item.count, first, others }
  report(work, 'rounds/first-group-short', beginning.item, values)
}

/** The words that fasten off at the end of a round, where nothing is told behind them; null where it goes on. */
function fastensOff(work: Work, { items }: RoundNode): string | null {
  const at = items.findLastIndex((item) => item.type === 'note' && item.effect === 'fasten-off')
  const last = at >= 0 && items.slice(at + 1).every(({ type }) => type === 'note' || type === 'count')
  return last ? wordsOf(work, items[at]!) : null
}

/** "Continuing with B": with the yarn that is there. */
const GOES_ON = /^(still|keep|continu|with (the )?same)/i
const wordsOf = (work: Work, { start, end }: Span): string => work.tree.text.slice(start, end)

/** "… Fasten off." and then "Rnd 3: Ch 1, sc in same st": there is no yarn on the hook. */
function askForYarn(work: Work, items: readonly Item[]): void {
  const { rounds } = work.tree
  const before = rounds[rounds.indexOf(work.node) - 1]
  const [begins, second] = items
  const goesOn = begins?.type === 'note' && GOES_ON.test(wordsOf(work, begins))
  const first = goesOn ? second : begins
  if (work.base.kind !== 'round' || first?.type !== 'chain' || !before || before.part !== work.node.part)
    return
  if (before.numbers === null || work.node.numbers === null) return
  if (work.node.numbers[0] !== before.numbers[1] + 1) return
  // "Fasten off yellow", "join and cut green": another color may be meant without a word.
  const words = fastensOff(work, before)
  if (words === null || (!goesOn && !/^fasten(ing)? off$/i.test(words.trim()))) return
  report(work, 'rounds/yarn-not-joined', first, {})
}

/** Asks for what a round hardly means, where it goes round. */
export function askForDoubts(work: Work, items: readonly Item[]): void {
  checkFirstGroup(work, items)
  askForChain(work, items)
  askForChains(work, items)
  askForYarn(work, items)
  if (work.open) return
  askForSpace(work)
  askForSides(work)
}
