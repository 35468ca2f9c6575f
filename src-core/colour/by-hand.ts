/**
 * Motifs that are painted or made, where limits change a pattern. What stands by hand as the limits would have it
 * anyway is no reason to change others: only what stands otherwise is taken as given. So whoever marks a motif as made,
 * or keeps its colour, changes nothing.
 */
import { tidyAddress } from '../layout/addresses'
import type { ColourAssignment } from './assign'
import { assignParts } from './by-motif'
import { COLOUR_CONSTANTS } from './constants'
import { isByChance } from './kept'

type Task = Parameters<typeof assignParts>
type Texts = Readonly<Record<string, string>>

const tidied = (texts: Texts | undefined): Map<string, string> =>
  new Map(Object.entries(texts ?? {}).map(([key, id]) => [tidyAddress(key), id]))

/** The colourways of all cells, as `assignParts`; made motifs are `held`, whatever is painted over them. */
export function assignByMotif(...task: Task): ColourAssignment {
  const all = assignParts(...task)
  const [cells, fill, painted, ways, kept, arrangement, motifs, stash = [], held] = task
  const isLimited = stash.length > 0 || Object.keys(fill?.most ?? {}).length > 0
  if (!isLimited || isByChance(fill)) return all
  const made = tidied(held)
  const byHand = new Map([...tidied(painted), ...made])
  const marked = cells.flatMap(({ id }, cell) => (byHand.has(id) ? [cell] : []))
  if (marked.length === 0) return all
  const wayOf = (cell: number): string => byHand.get(cells[cell]!.id) ?? ''
  const given = new Set<number>()
  let rounds = 0
  // Motifs were painted before they were made.
  for (const among of [marked.filter((cell) => !made.has(cells[cell]!.id)), marked])
    while (rounds++ < COLOUR_CONSTANTS.handRounds) {
      const taken = Object.fromEntries([...given].map((cell) => [cells[cell]!.id, wayOf(cell)]))
      const found = assignParts(cells, fill, taken, ways, kept, arrangement, motifs, stash)
      const otherwise = among.filter((cell) => !given.has(cell) && found.colourways[cell] !== wayOf(cell))
      for (const cell of otherwise) given.add(cell)
      if (otherwise.length > 0) continue
      if (among !== marked) break
      const isOfFile = ({ code }: { code: string }): boolean => code.startsWith('file/')
      return {
        ...found,
        findings: [...all.findings.filter(isOfFile), ...found.findings.filter((each) => !isOfFile(each))],
      }
    }
  return all
}

/**
 * The colourways that a pattern gives without its limits, and without what was made: what is not to hang on either
 * follows from these.
 */
export function patternAlone(...task: Parameters<typeof assignParts>): readonly string[] {
  const [cells, fill, painted, ways, kept, arrangement, motifs] = task
  const { most: _, ...plain } = fill ?? {}
  return assignParts(cells, fill && plain, painted, ways, kept, arrangement, motifs).colourways
}
