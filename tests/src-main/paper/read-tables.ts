/**
 * Reads the tables of a PDF as somebody hears them who does not see it: from the tree of what is told, over all pages,
 * with the words that another library finds there.
 */
import { PDFArray, PDFDict, PDFDocument, PDFName, PDFNumber, PDFRef } from 'pdf-lib'
import type { PDFObject } from 'pdf-lib'
import { getDocument } from './pdfjs'

export interface ReadTable {
  /** What its heading row says of each column. */
  readonly heads: readonly string[]
  /** All rows below it, each with its cells. */
  readonly rows: readonly (readonly string[])[]
  /** How often a heading row is told. */
  readonly headRows: number
  /** Numbers of the pages that it stands on. */
  readonly pages: readonly number[]
}

type Item = { str: string } | { type: string; id?: string }

/** Words by the page object and the number of their marked content: "12R_mc3". */
async function textsOf(
  bytes: Uint8Array,
): Promise<{ texts: Map<string, string>; pages: Map<string, number> }> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0, useSystemFonts: false })
  const document = await task.promise
  const texts = new Map<string, string>()
  const pages = new Map<string, number>()
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number)
    const { items } = await page.getTextContent({ includeMarkedContent: true })
    const open: string[] = []
    for (const item of items as Item[]) {
      if ('str' in item) {
        const id = open.at(-1) ?? ''
        texts.set(id, `${texts.get(id) ?? ''}${item.str}`)
        pages.set(id, number)
      } else if (item.type === 'endMarkedContent') open.pop()
      else open.push(item.id ?? '')
    }
  }
  await task.destroy()
  return { texts, pages }
}

/** Every table of the file, in the order in which they are told. */
export async function readTables(bytes: Uint8Array): Promise<ReadTable[]> {
  const { texts, pages } = await textsOf(bytes)
  const file = await PDFDocument.load(bytes, { updateMetadata: false })
  const { context } = file
  const named = (dict: PDFDict, key: string): string => String(dict.lookup(PDFName.of(key)) ?? '')
  const kidsOf = (dict: PDFDict): PDFObject[] => {
    const kids = dict.lookup(PDFName.of('K'))
    return kids instanceof PDFArray ? kids.asArray() : kids ? [dict.get(PDFName.of('K'))!] : []
  }
  const elementsOf = (dict: PDFDict): PDFDict[] =>
    kidsOf(dict).flatMap((kid) => {
      const found = kid instanceof PDFRef ? context.lookup(kid) : kid
      return found instanceof PDFDict && found.has(PDFName.of('S')) ? [found] : []
    })
  const marks = (dict: PDFDict): string[] => {
    const own = dict.get(PDFName.of('Pg'))
    return kidsOf(dict).flatMap((kid) => {
      const found = kid instanceof PDFRef ? context.lookup(kid) : kid
      if (found instanceof PDFNumber && own instanceof PDFRef)
        return [`p${own.objectNumber}R_mc${found.asNumber()}`]
      if (!(found instanceof PDFDict)) return []
      if (found.has(PDFName.of('S'))) return marks(found)
      const page = found.get(PDFName.of('Pg')) as PDFRef
      return [`p${page.objectNumber}R_mc${found.lookup(PDFName.of('MCID'), PDFNumber).asNumber()}`]
    })
  }
  const isHead = (cell: PDFDict): boolean => {
    const attributes = cell.lookup(PDFName.of('A'))
    return attributes instanceof PDFDict && named(attributes, 'Scope') === '/Column'
  }
  const words = (cell: PDFDict): string =>
    marks(cell)
      .map((mark) => texts.get(mark) ?? '')
      .join(' ')
      .replace(/\s+/g, ' ')
      .trim()
  const tables: ReadTable[] = []
  const walk = (element: PDFDict): void => {
    if (named(element, 'S') !== '/Table') return void elementsOf(element).forEach(walk)
    const rows = elementsOf(element).map(elementsOf)
    const [head] = rows
    tables.push({
      heads: (head ?? []).map(words),
      headRows: rows.filter((row) => row.every(isHead)).length,
      rows: rows.slice(1).map((row) => row.map(words)),
      pages: [...new Set(marks(element).map((mark) => pages.get(mark) ?? 0))],
    })
  }
  const root = file.catalog.lookup(PDFName.of('StructTreeRoot'), PDFDict)
  elementsOf(root).forEach(walk)
  return tables
}
