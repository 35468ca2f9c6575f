/** Steps as the words of a round: what is alike is told once, with its repeats. */
import { times } from '../notation/restyle'
import { elementsOf } from './steps'
import type { Step, StitchStep } from './steps'

const PLURALS = /(sp|lp|st|ch|corner|picot|space|loop|shell|group|petal|cluster|cl|popcorn|puff)$/
const several = (noun: string): string => (PLURALS.test(noun) ? `${noun}s` : noun)

/** How the designer writes chains: "5 ch", "5-ch sp", or "ch 5", "ch-5 sp". */
export interface ChainStyle {
  readonly isBehind: boolean
  /** Spaces of chains alone: "ch 1, ss in 2-ch sp" is usual too. */
  readonly isSpaceBehind: boolean
}

const chainWords = (count: number, { isBehind }: ChainStyle): string =>
  isBehind ? `${count} ch` : `ch ${count}`

const stitchWords = ({ count, name }: StitchStep): string =>
  count > 1 || name === '' ? `${count} ${name}`.trim() : name

/** Phrases of the steps, what goes on alike drawn together: "dc in next 7 dc", "(…) in each of next 4 ch-6 sps". */
export function phrasesOf(steps: readonly Step[], style: ChainStyle): string[] {
  const phrases: string[] = []
  for (let at = 0; at < steps.length; at++) {
    const step = steps[at]!
    if (step.type === 'words') {
      if (step.attached && phrases.length > 0) phrases.push(`${phrases.pop()} ${step.words}`)
      else phrases.push(step.words)
      continue
    }
    if (step.type === 'chain') {
      phrases.push(chainWords(step.count, style))
      continue
    }
    if (step.type === 'stitch' && !step.place) {
      let count = step.count
      while (!step.whole && isSameStitch(step, steps[at + 1])) count += (steps[++at] as StitchStep).count
      phrases.push(stitchWords({ ...step, count }))
      continue
    }
    const inner = step.type === 'group' ? `(${fold(phrasesOf(step.steps, style), false)})` : stitchWords(step)
    const { next, words } = step.place!
    let places = 1
    while (next !== null && isSame(step, steps[at + 1], style)) {
      places++
      at++
    }
    const each = step.type === 'group' || step.count > 1 || step.whole
    if (places === 1) phrases.push(`${inner} ${words}`)
    else phrases.push(`${inner} in ${each ? 'each of ' : ''}next ${places} ${several(next!)}`)
  }
  return phrases
}

const isSameStitch = (step: StitchStep, next: Step | undefined): boolean =>
  next?.type === 'stitch' && !next.place && !next.whole && next.name === step.name

/** Whether the same goes into the next place of the same kind. */
function isSame(step: Step, next: Step | undefined, style: ChainStyle): boolean {
  if (next?.type !== step.type || next.type === 'words' || next.type === 'chain') return false
  if (step.type === 'words' || step.type === 'chain' || step.place?.next !== next.place?.next) return false
  if (elementsOf(step).some(({ role }) => role === 'beginning')) return false
  return phrasesOf([step], style)[0] === phrasesOf([next], style)[0]
}

interface Repeat {
  readonly from: number
  readonly length: number
  readonly times: number
}

/** The repeat that saves the most phrases; the first of those that save as many. */
function bestRepeat(phrases: readonly string[]): Repeat | null {
  let best: Repeat | null = null
  let saved = 0
  for (let length = 1; length <= phrases.length / 2; length++) {
    let run = 0
    for (let at = phrases.length - 1 - length; at >= 0; at--) {
      run = phrases[at] === phrases[at + length] ? run + 1 : 0
      const laps = Math.floor(run / length) + 1
      const saves = (laps - 1) * length
      if (laps < 2 || saves < saved || (saves === saved && best && length > best.length)) continue
      best = { from: at, length, times: laps }
      saved = saves
    }
  }
  return best
}

/** Phrases as one text with repeats; the first with an asterisk, those inside and behind it in brackets. */
export function fold(phrases: readonly string[], isStarred: boolean): string {
  return punctuated(folded(phrases, { star: isStarred }))
}

function folded(phrases: readonly string[], left: { star: boolean }): string[] {
  const repeat = bestRepeat(phrases)
  if (!repeat) return [...phrases]
  const { from, length, times: laps } = repeat
  const { star } = left
  left.star = false
  const body = folded(phrases.slice(from, from + length), { star: false }).join(', ')
  const told = star
    ? `*${body}; rep from * ${laps === 2 ? 'once more' : `${laps - 1} more times`}`
    : `[${body}] ${times(laps)}`
  return [...folded(phrases.slice(0, from), left), told, ...folded(phrases.slice(from + laps * length), left)]
}

/** Every step by itself. */
export const written = (phrases: readonly string[]): string => punctuated(phrases)

/** Commas between phrases, semicolons around repeats and before the joining of the round. */
function punctuated(phrases: readonly string[]): string {
  return phrases.reduce((text, phrase, index) => {
    if (index === 0) return phrase
    const strong = phrase.startsWith('join') || phrases[index - 1]!.includes('; rep from')
    return `${text}${strong ? '; ' : ', '}${phrase}`
  }, '')
}
