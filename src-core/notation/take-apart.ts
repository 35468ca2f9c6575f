/**
 * A pasted block of rounds, taken apart: what it begins with, its special stitches, and each round's own words
 * without the heading. Rounds written once for several ("Rnds 4–6") become that many.
 */
import type { RoundsMotif, Terms } from '../../shared-types/project'
import { isBesideMotif } from './borders'
import { foundationMade, isFoundationOnly } from './first'
import { partName } from './part-names'
import { readRounds } from './read'
import { endOfWork } from './talk'
import { translateText } from './translate'
import type { Item, RoundNode } from './tree'

export interface TakenRound {
  readonly work: string
  /** The colour that the text names for it ("MC", "B"), or null where it says nothing. */
  readonly colour: string | null
}

export interface TakenApart {
  readonly rounds: readonly TakenRound[]
  /** What stands before round 1; undefined where round 1 makes its own beginning or nothing is said. */
  readonly foundation: RoundsMotif['foundation']
  /** Special stitches, one a line; '' where none are explained. */
  readonly special: string
  /** The whole block as it was pasted: it may say more than its rounds. */
  readonly text: string
  /** Terms that the block was read in, and whether its words leave them open. */
  readonly terms: Terms
  readonly termsUnclear: boolean
}

/** More rounds than this under one heading are kept as they are written. */
const MOST_REPEATS = 50

const oneLine = (text: string): string => text.replace(/\s*\n\s*/g, ' ').trim()

/**
 * Takes a block apart. `terms` are what its words are read in where they do not tell; `asked` overrules its words.
 * The answer is in the terms `into`.
 */
export function takeApart(text: string, into: Terms, asked?: Terms): TakenApart {
  const free = readRounds(text, asked ? { terms: asked } : {})
  const termsUnclear = !asked && free.findings.some((entry) => entry.code === 'rounds/terms-unclear')
  const terms = asked ?? (termsUnclear ? into : free.terms)
  const read = terms === free.terms ? free : readRounds(text, { terms })
  const inTerms = (words: string) => translateText(oneLine(words), terms, into)
  let foundation: RoundsMotif['foundation']
  const rounds: TakenRound[] = []
  const firstLine = (node: RoundNode) =>
    read.worked.filter((_, i) => read.rounds[i]?.span.start === node.start)
  const bodyOf = (node: RoundNode) => text.slice(node.heading?.end ?? node.start, endOfWork(node, text))
  let begun = ''
  let last = 0
  // "With A, ch 5, join": the first round of its piece goes on with it.
  let first: string | null = null
  for (const node of read.tree.rounds) {
    // The border of the whole and a joining round are none of the motif: their words stay with the instructions.
    if (isBesideMotif(read.tree, node)) continue
    if (
      node.label === 'foundation' ||
      (isFoundationOnly(node) && (rounds.length === 0 || node.part !== null))
    ) {
      // What a later piece begins on goes with its first round.
      if (rounds.length > 0)
        begun = `${bodyOf(node)
          .trim()
          .replace(/[.,;]?$/, '.')} `
      else foundation = foundationOf(node) ?? foundation
      first = colourNamed(node.items) ?? COLOURED.exec(bodyOf(node))?.[1] ?? first
      continue
    }
    const worked = firstLine(node)[0]?.elements.find((element) => element.colour)?.colour ?? null
    const colour = worked ?? first
    first = null
    const [from, to] = node.numbers ?? [0, 0]
    // A later piece counts its rounds from the beginning: a number of their own tells it.
    const anew = from > 0 && from <= last && node.part !== null
    last = Math.max(to, from)
    const other = read.tree.rounds.filter((each) => isOtherPart(node, each))
    if (anew && other.length > 0) {
      for (let number = from; number <= to; number++) {
        const same = other.find(({ numbers }) => numbers![0] <= number && number <= numbers![1])
        if (same) rounds.push({ work: inTerms(`Rnd ${number}: ${bodyOf(same).trim()}`), colour })
      }
      continue
    }
    const body = bodyOf(node)
    const repeats = node.items.some((item) => item.type === 'repeat-round')
    if (to > from && (repeats || to - from >= MOST_REPEATS)) {
      rounds.push({ work: inTerms(text.slice(node.start, endOfWork(node, text))), colour })
      continue
    }
    for (let number = from; number <= to; number++) {
      const heading = anew && number === from ? `Rnd ${number}: ` : ''
      rounds.push({ work: inTerms(`${heading}${begun}${body.trim()}`), colour })
      begun = ''
    }
  }
  const special = read.tree.definitions
    .map(
      (entry) =>
        `${inTerms(text.slice(entry.start, entry.end))} ${inTerms(text.slice(entry.description.start, entry.description.end))}`,
    )
    .join('\n')
  return { rounds, foundation, special, text, terms, termsUnclear }
}

/** Whether a round is the one of another part that `node` is worked as: "Rnd 1: Same as Motif 1". */
function isOtherPart(node: RoundNode, each: RoundNode): boolean {
  const [item] = node.items
  if (item?.type !== 'repeat-round' || item.part === null || !each.numbers) return false
  return each.part !== null && each.part !== node.part && partName(each.part) === item.part
}

/** "Make a magic ring in colour A." */
const COLOURED = /\b(?:[Ii]n|[Ww]ith|[Uu]sing) (?:(?:colou?r|yarn|shade) )?([A-Z]|MC|CC\d?)\b(?!-)/

const colourNamed = (items: readonly Item[]): string | null =>
  items.flatMap((item) => (item.type === 'colour' && item.colour ? [item.colour] : []))[0] ?? null

function foundationOf(node: RoundNode): RoundsMotif['foundation'] {
  const made = foundationMade(node)
  if (made?.kind === 'ring')
    return made.chains > 0 ? { ring: 'chain', chains: made.chains } : { ring: 'adjustable' }
  if (made?.kind !== 'chain') return undefined
  return made.chains > 1 ? { chain: made.chains } : { ring: 'stitch' }
}
