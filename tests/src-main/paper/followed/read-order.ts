/** The order of work as somebody reads it who has nothing but its pages: ways, then one box after the other. */
import type { ReadPage, ReadText } from '../read-pdf'

export interface ReadWay {
  /** Letter of each neighbour, and where it lies. */
  readonly neighbours: ReadonlyMap<string, string>
  readonly words: string
}

export interface ReadBox {
  readonly label: string
  readonly code: string
  /** What stands with it besides: "row 3, motif 1", "5, 6, 8". */
  readonly where: string
  /** The row under whose heading it stands; null where there are no rows. */
  readonly row: number | null
  /** The way in which it is joined, or the words that are its own. */
  readonly way: number | null
  readonly words: string
}

export interface ReadOrder {
  readonly ways: ReadonlyMap<number, ReadWay>
  readonly boxes: readonly ReadBox[]
  /** What the rows are made of, a kind each. */
  readonly kinds: readonly string[]
}

const HEADING = 9.5
const LARGEST_LIST = 8.5
const SMALLEST_LIST = 8
/** mm from the foot of a page down to which its columns run. */
const FOOT = 20

/** From this size on words at a page's top are its title, and below that the title of what begins there. */
const TITLE = 15
/** mm. */
const TOP = 30

/** How far down the page the order of work goes. */
const endOf = ({ texts, height }: ReadPage): number =>
  Math.min(height - FOOT, ...texts.flatMap(({ size, y }) => (size > TITLE && y > TOP ? [y - size / 2] : [])))

/** The lines of the columns of a page, each as the texts that stand side by side in it. */
function linesOf(page: ReadPage): ReadText[][] {
  const end = endOf(page)
  const texts = page.texts.filter(
    ({ text, size, y }) =>
      // Drawings number their petals.
      !/^[\d ]+$/.test(text) &&
      ((size <= LARGEST_LIST + 0.01 && size >= SMALLEST_LIST - 0.01) || Math.abs(size - HEADING) < 0.01) &&
      y < end,
  )
  const right = (x: number): boolean => x > page.width / 2
  const lines: ReadText[][] = []
  for (const column of [texts.filter(({ x }) => !right(x)), texts.filter(({ x }) => right(x))]) {
    const sorted = [...column].sort((a, b) => a.y - b.y || a.x - b.x)
    let open: ReadText[] = []
    for (const text of sorted) {
      if (open.length > 0 && Math.abs(text.y - open[0]!.y) > 0.8) {
        lines.push(open)
        open = []
      }
      open.push(text)
    }
    if (open.length > 0) lines.push(open)
  }
  return lines.map((line) => line.sort((a, b) => a.x - b.x))
}

/** Reads the pages whose foot calls them the order of work. */
export function readOrder(pages: readonly ReadPage[]): ReadOrder {
  const own = pages.filter(({ texts, height }) =>
    texts.some(({ text, y }) => y > height - FOOT && text.startsWith('Order of work')),
  )
  const ways = new Map<number, string[]>()
  const boxes: (ReadBox & { words: string })[] = []
  const kinds: string[] = []
  let mode: 'none' | 'ways' | 'kinds' | 'list' = 'none'
  let row: number | null = null
  let way: number | null = null
  let card: string[] = []
  let told: (ReadBox & { words: string }) | null = null
  for (const line of own.flatMap(linesOf)) {
    const [first] = line as [ReadText]
    const text = line.map((each) => each.text.trim()).join(' ')
    if (text.endsWith('continued:') || /, continued; way \d+:$/.test(text)) {
      const named = /way (\d+):$/.exec(text)
      // What is said again at the head of a column is what holds there.
      if (named && Number(named[1]) !== way) throw new Error(`${text} comes after way ${way}`)
      continue
    }
    if (Math.abs(first.size - HEADING) < 0.01) {
      told = null
      way = null
      if (text === 'Ways to join') mode = 'ways'
      else if (text === 'What the rows are made of') mode = 'kinds'
      // Once all motifs are joined.
      else if (/^☐ Close the (bottom|mouth)$/.test(text)) mode = 'none'
      else if (/^Row \d/.test(text)) [mode, row] = ['list', Number(/^Row (\d+)/.exec(text)![1])]
      else if (/^(Tick list|Ring|The middle|[A-Z] ·)/.test(text)) mode = 'list'
      continue
    }
    if (mode === 'ways') {
      const begun = /^Way (\d+) · /.exec(text)
      if (begun) ways.set(Number(begun[1]), (card = []))
      else card.push(text)
    } else if (mode === 'kinds') {
      if (/^(Rows|Row|Every)\b/.test(text)) kinds.push(text)
      else kinds[kinds.length - 1] += ` ${text}`
    } else if (mode === 'list') {
      const lead =
        /^(?:Way (\d+) · |)(?:F|f|Half|half)[a-z ]+(?:, (?:each )?between the motifs named)?:$/.exec(text)
      if (lead) {
        told = null
        way = lead[1] ? Number(lead[1]) : null
      } else if (first.text.startsWith('☐') || /^(Way|Row) \d+$/.test(first.text.trim())) {
        told = null
        for (const { text: cell } of line) {
          // Under the name of a colourway its motifs go on row by row.
          const inRow = /^Row (\d+)$/.exec(cell.trim())
          if (inRow) {
            row = Number(inRow[1])
            continue
          }
          const named = /^Way (\d+)$/.exec(cell.trim())
          if (named) {
            way = Number(named[1])
            continue
          }
          const [, label, rest] = /^☐ ([\d,]+)(.*)$/.exec(cell.trim())!
          const parts = rest!
            .split(' · ')
            .map((part) => part.trim())
            .filter(Boolean)
          const own = /^way (\d+)$/.exec(parts.at(-1) ?? '')
          if (own) parts.pop()
          const code = /^[A-Z]$/.test(parts.at(-1) ?? '') ? parts.pop()! : ''
          const where = parts.join(' · ')
          const isAlone = /motif/.test(where)
          const box = {
            label: label!,
            code,
            where,
            row,
            way: own ? Number(own[1]) : isAlone ? null : way,
            words: '',
          }
          boxes.push(box)
          told = box.way === null ? box : null
        }
      } else if (told) told.words = `${told.words} ${text}`.trim()
      else throw new Error(`nobody knows what this line is about: ${text}`)
    }
  }
  return {
    ways: new Map([...ways].map(([number, lines]) => [number, readWay(lines.join(' '))])),
    boxes,
    kinds,
  }
}

/** "P left; R upper left Work petals 1–3 …": the neighbours, then the words. */
function readWay(text: string): ReadWay {
  const [, named = '', words = ''] = /^((?:[A-Z]{1,2} [a-z0-9 ,]+(?:; |(?= )))*) ?(.*)$/.exec(text)!
  const neighbours = named.split('; ').flatMap((each): [string, string][] => {
    const parts = /^([A-Z]{1,2}) (.+)$/.exec(each.trim())
    return parts ? [[parts[1]!, parts[2]!.trim()]] : []
  })
  return { neighbours: new Map(neighbours), words }
}
