/**
 * Marks of made motifs as a short text, to be carried from one device to another: "1,1-14 2,1-9". Addresses are those
 * of the project file ("row,place"), neighbours in a row as a range; half motifs and fillers stand by themselves.
 * Marks that were taken away since stand behind them with a minus, and the version before all: "marks 2: 1,1-3 -2,4".
 * A text without removals is one of the first version, and has no heading.
 */
const VERSION = 2

const PLACE = /^(\d+),(\d+)$/
const RANGE = /^(\d+),(\d+)-(\d+)$/

/** The marks as a text, and those that were taken away. */
export function madeText(ids: readonly string[], removed: readonly string[] = []): string {
  const made = wordsOf(ids)
  if (removed.length === 0) return made.join(' ')
  return [`marks ${VERSION}:`, ...made, ...wordsOf(removed).map((word) => `-${word}`)].join(' ')
}

function wordsOf(ids: readonly string[]): string[] {
  const rows = new Map<number, number[]>()
  const others: string[] = []
  for (const id of ids) {
    const [, row, place] = PLACE.exec(id) ?? []
    if (row === undefined) others.push(id)
    else rows.set(Number(row), [...(rows.get(Number(row)) ?? []), Number(place)])
  }
  const parts = [...rows]
    .sort(([a], [b]) => a - b)
    .flatMap(([row, places]) => rangesOf(places).map((range) => `${row},${range}`))
  return [...parts, ...others.sort()]
}

function rangesOf(numbers: readonly number[]): string[] {
  const ranges: [from: number, to: number][] = []
  for (const number of [...new Set(numbers)].sort((a, b) => a - b)) {
    const last = ranges.at(-1)
    if (last && number === last[1] + 1) last[1] = number
    else ranges.push([number, number])
  }
  return ranges.map(([from, to]) => (from === to ? String(from) : `${from}-${to}`))
}

interface ReadMarks {
  /** Addresses that the project has, each once. */
  readonly ids: readonly string[]
  /** Those whose mark was taken away. */
  readonly removed: readonly string[]
  /** The text says that it is of a later version than this program reads. */
  readonly isNewer: boolean
  /** What is no address, or none of this project. */
  readonly unknown: readonly string[]
}

const HEADING = /^[^:]*:/
const TOLD_VERSION = /\bmarks\s+(\d+)\s*:$/i

/** Reads such a text, however it came: with line ends, commas behind the parts, or a heading before a colon. */
export function readMadeText(text: string, known: ReadonlySet<string>): ReadMarks {
  const ids = new Set<string>()
  const removed = new Set<string>()
  const unknown: string[] = []
  const taken = new Set<string>()
  const [heading = ''] = HEADING.exec(text) ?? []
  const version = Number(TOLD_VERSION.exec(heading.trim())?.[1] ?? 1)
  for (const part of text.slice(heading.length).split(/[\s;]+/)) {
    const word = part.replace(/,$/, '')
    if (word === '' || taken.has(word)) continue
    // A telephone may make a dash of a minus.
    const isRemoval = /^[-−–]/.test(word)
    const named = addressesOf(isRemoval ? word.slice(1) : word, known)
    if (named.length === 0) unknown.push(word)
    else taken.add(word)
    for (const id of named) (isRemoval ? removed : ids).add(id)
  }
  return {
    ids: [...ids],
    removed: [...removed].filter((id) => !ids.has(id)),
    isNewer: version > VERSION,
    unknown,
  }
}

/** What a word names; nothing where any of it is not known. No range is followed beyond that, however long it is. */
function addressesOf(word: string, known: ReadonlySet<string>): string[] {
  const [, row, from, to] = RANGE.exec(word) ?? []
  if (row === undefined) return known.has(word) ? [word] : []
  const named: string[] = []
  for (let place = Number(from); place <= Number(to); place++) {
    const id = `${row},${place}`
    if (!known.has(id)) return []
    named.push(id)
  }
  return named
}
