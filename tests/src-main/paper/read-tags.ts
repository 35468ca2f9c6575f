/** Reads what a PDF tells somebody who does not see it, with another library than the one that wrote it. */
import { getDocument, OPS } from './pdfjs'

/** An element of the tree with its words: of a figure those that are read in its place. */
export interface ReadElement {
  readonly role: string
  readonly alt?: string
  readonly text: string
  readonly children: readonly ReadElement[]
}

export interface TaggedPage {
  readonly elements: readonly ReadElement[]
  /** Words of the page's furniture and of all else that is not told. */
  readonly artifacts: readonly string[]
  /** What is wrong: painted outside of any marked content, or marked and in no element. */
  readonly strays: readonly string[]
}

export interface Tagged {
  readonly marked: boolean
  readonly metadata: string
  readonly pages: readonly TaggedPage[]
}

interface Node {
  readonly role?: string
  readonly alt?: string
  readonly type?: string
  readonly id?: string
  readonly children?: readonly Node[]
}

type Item = { str: string } | { type: string; id?: string; tag?: string }

const PAINTS: ReadonlySet<number> = new Set([
  OPS.constructPath,
  OPS.showText,
  OPS.paintFormXObjectBegin,
  OPS.paintImageXObject,
])

/** Texts by the marked content that they stand in; those of artifacts stand under ''. */
function textsOf(items: readonly Item[]): Map<string, string> {
  const texts = new Map<string, string>()
  const open: string[] = []
  for (const item of items) {
    if ('str' in item) {
      const key = open.at(-1) ?? 'outside'
      texts.set(key, `${texts.get(key) ?? ''} ${item.str}`)
    } else if (item.type === 'endMarkedContent') open.pop()
    else open.push(item.tag === 'Artifact' ? '' : (item.id ?? open.at(-1) ?? 'outside'))
  }
  return new Map([...texts].map(([key, text]) => [key, text.replace(/\s+/g, ' ').trim()]))
}

function elementOf(node: Node, texts: ReadonlyMap<string, string>, seen: Set<string>): ReadElement {
  const words: string[] = []
  const children: ReadElement[] = []
  for (const child of node.children ?? []) {
    if (child.type === 'content') {
      seen.add(child.id!)
      words.push(texts.get(child.id!) ?? '')
    } else {
      const element = elementOf(child, texts, seen)
      children.push(element)
      words.push(element.text)
    }
  }
  const { role = '', alt } = node
  const text = alt ?? words.filter(Boolean).join(' ')
  return { role, text, children, ...(alt !== undefined && { alt }) }
}

/** The whole file. */
export async function readTags(bytes: Uint8Array): Promise<Tagged> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0, useSystemFonts: false })
  const document = await task.promise
  const pages: TaggedPage[] = []
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number)
    const tree = (await page.getStructTree()) as Node | null
    const { items } = await page.getTextContent({ includeMarkedContent: true })
    const texts = textsOf(items as Item[])
    const seen = new Set<string>()
    const elements = (tree?.children ?? []).map((child) => elementOf(child, texts, seen))
    const strays = [...texts].flatMap(([key, text]) =>
      key === '' || seen.has(key) || text === '' ? [] : [`in no element: ${text}`],
    )
    const { fnArray } = await page.getOperatorList()
    let depth = 0
    fnArray.forEach((operator, i) => {
      if (operator === OPS.beginMarkedContent || operator === OPS.beginMarkedContentProps) depth++
      else if (operator === OPS.endMarkedContent) depth--
      else if (depth === 0 && PAINTS.has(operator)) strays.push(`painted outside: operator ${i}`)
    })
    if (depth !== 0) strays.push('marked content without an end')
    pages.push({ elements, artifacts: [texts.get('') ?? ''], strays })
  }
  const read: Tagged = {
    marked: (await document.getMarkInfo())?.Marked === true,
    metadata: (await document.getMetadata()).metadata?.getRaw() ?? '',
    pages,
  }
  await task.destroy()
  return read
}

/** All elements, each before those within it. */
export const elementsIn = (elements: readonly ReadElement[]): ReadElement[] =>
  elements.flatMap((element) => [element, ...elementsIn(element.children)])
