/** Rows of a half in the words of a pattern: with turning chains, repeats and counts. */
import { ordinal, plural } from '../figures/words'
import { fold, phrasesOf } from '../joining-round/fold'
import type { Step, StitchStep } from '../joining-round/steps'
import type { Terms } from '../../shared-types/project'
import { capital } from '../notation/restyle'
import { STITCHES } from '../stitches/table'
import type { StitchKey } from '../stitches/table'
import { chainSpace, stitchAbbreviation } from '../stitches/terms'
import { formatNumber } from '../units/format'
import type { HalfRow } from './rows'
import { RING } from './rings'
import type { Top } from './rings'

const chainsOf = (stitch: StitchKey): number => Math.max(1, STITCHES[stitch].beginningChains)
/** The turning chain of tall stitches counts as the first of them. */
const isCounted = (stitch: StitchKey): boolean => stitch !== 'sc'

/** How a row begins, for who ends the next one on top of it. */
interface Beginning {
  readonly stitch: StitchKey
  /** All its chains, those of a space beside it too. */
  readonly chains: number
}

const beginningOf = ({ tops: [first, second], hasEdge }: HalfRow): Beginning => {
  const stitch = first?.kind === 'stitch' ? first.stitch : 'sc'
  const space = hasEdge && second?.kind === 'space' && isCounted(stitch) ? second.chains : 0
  return { stitch, chains: chainsOf(stitch) + space }
}

const words = (text: string, attached = false): Step => ({
  type: 'words',
  words: text,
  attached,
  elements: [],
})
const chain = (count: number): Step => ({ type: 'chain', count, elements: [] })

class RowWriter {
  #steps: Step[] = []
  /** The place of the row before that was worked into last. */
  #at = -1

  constructor(
    private readonly row: HalfRow,
    private readonly before: HalfRow | null,
    private readonly terms: Terms,
  ) {}

  steps(): readonly Step[] {
    const { tops } = this.row
    let index = this.#begin()
    while (index < tops.length) index = this.#next(index)
    return this.#steps
  }

  #name = (stitch: StitchKey): string => stitchAbbreviation(stitch, this.terms)

  /** The turning chain and what it stands for; returns how many tops that are. */
  #begin(): number {
    const { stitch, chains } = beginningOf(this.row)
    this.#steps.push(chain(chains))
    if (!isCounted(stitch)) return 0
    const space = chains - chainsOf(stitch)
    const apart = space > 0 ? ` and ch ${formatNumber(space)}` : ''
    this.#steps.push(words(`(counts as ${this.#name(stitch)}${apart})`, true))
    this.#at = 0
    return space > 0 ? 2 : 1
  }

  /** What goes into one place, or the chains before it; returns the index behind it. */
  #next(index: number): number {
    const { tops } = this.row
    const top = tops[index]!
    if (top.kind === 'space') {
      this.#steps.push(chain(top.chains))
      return index + 1
    }
    let end = index + 1
    // Chains lie in the place where what stands on both sides of them goes into it; in a ring they are told by themselves.
    for (let at = end; at < tops.length; at++) {
      const other = tops[at]!
      if (other.kind === 'space' ? top.into === RING : other.into !== top.into) break
      if (other.kind === 'stitch') end = at + 1
    }
    this.#put(tops.slice(index, end), top.into)
    return end
  }

  #put(made: readonly Top[], into: number): void {
    const place = this.#placeOf(into)
    const inPlace = made.map((top): Step =>
      top.kind === 'space' ? chain(top.chains) : this.#stitch(top.stitch, 1, null),
    )
    const [only] = made
    const isOne = made.every(
      (top) => top.kind === 'stitch' && only?.kind === 'stitch' && top.stitch === only.stitch,
    )
    if (isOne && only?.kind === 'stitch') this.#steps.push(this.#stitch(only.stitch, made.length, place))
    else this.#steps.push({ type: 'group', place, steps: inPlace })
  }

  #stitch = (stitch: StitchKey, count: number, place: StitchStep['place']): StitchStep => ({
    ...{ type: 'stitch', count, place, whole: false, elements: [] },
    name: this.#name(stitch),
  })

  /** Passes what lies before a place, and names it. */
  #placeOf(into: number): { words: string; next: string | null } {
    if (into === RING || !this.before) return { words: 'in ring', next: null }
    const { tops } = this.before
    const from = this.#at
    this.#at = into
    const target = tops[into]!
    if (from < 0 && into === 0) return { words: 'in first st', next: null }
    if (into === from) return { words: target.kind === 'space' ? 'in same sp' : 'in same st', next: null }
    const passed = tops.slice(from + 1, into)
    const kind = passed.filter((top) => top.kind === target.kind)
    if (kind.length > 0) this.#skip(kind)
    if (target.kind === 'space') {
      const noun = chainSpace(target.chains, this.terms)
      return { words: `in next ${noun}`, next: noun }
    }
    if (into < tops.length - 1) return { words: 'in next st', next: 'st' }
    return { words: this.#endWords(beginningOf(this.before)), next: null }
  }

  #skip(passed: readonly Top[]): void {
    const skip = this.terms === 'UK' ? 'miss' : 'sk'
    const [first] = passed
    if (first?.kind === 'stitch') {
      const many = passed.length > 1 ? `${formatNumber(passed.length)} ` : ''
      this.#steps.push(words(`${skip} next ${many}${plural(passed.length, 'st')}`))
      return
    }
    for (const top of passed)
      if (top.kind === 'space') this.#steps.push(words(`${skip} next ${chainSpace(top.chains, this.terms)}`))
  }

  /** The end of a row is worked on top of what the row before began with. */
  #endWords({ stitch, chains }: Beginning): string {
    if (!isCounted(stitch)) return 'in last st'
    const own = chainsOf(stitch)
    return chains > own ? `in ${ordinal(own)} ch of beg ch-${chains}` : `in top of beg ch-${chains}`
  }
}

/** "(13 dc)", "(4 sc, 6 dc)". */
function countWords({ tops }: HalfRow, terms: Terms): string {
  const counts = new Map<StitchKey, number>()
  for (const top of tops) if (top.kind === 'stitch') counts.set(top.stitch, (counts.get(top.stitch) ?? 0) + 1)
  return `(${[...counts].map(([stitch, count]) => `${count} ${stitchAbbreviation(stitch, terms)}`).join(', ')})`
}

/** The rows in words, as lines of a pattern. */
export function rowTexts(rows: readonly HalfRow[], terms: Terms): string[] {
  return rows.map((row, i) => {
    const steps = new RowWriter(row, rows[i - 1] ?? null, terms).steps()
    const body = fold(phrasesOf(steps, { isBehind: false, isSpaceBehind: terms === 'UK' }), false)
    const end = i < rows.length - 1 ? 'turn' : 'fasten off'
    return `Row ${i + 1}: ${capital(body)}; ${end}. ${countWords(row, terms)}`
  })
}

/** What the rows begin with: the ring of the rounds. */
export function ringWords(chains: number, terms: Terms): string {
  const slip = stitchAbbreviation('sl st', terms)
  return chains > 0 ? `Ch ${chains}, join with ${slip} to form a ring.` : 'Make an adjustable ring.'
}
