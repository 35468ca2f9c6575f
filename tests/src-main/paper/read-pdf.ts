/** Reads a PDF back with another library than the one that wrote it. */
import { getDocument } from './pdfjs'

export interface ReadText {
  readonly text: string
  /** Left end of the baseline from the top left of the page, in mm. */
  readonly x: number
  readonly y: number
  readonly width: number
  /** Type size in points. */
  readonly size: number
}

export interface ReadPage {
  readonly width: number
  readonly height: number
  readonly texts: readonly ReadText[]
  /** All text, runs of white space as one space. */
  readonly words: string
}

export interface ReadPdf {
  readonly pages: readonly ReadPage[]
  readonly labels: readonly string[] | null
  /** Title and page (from 1) of each bookmark. */
  readonly bookmarks: readonly (readonly [string, number])[]
  readonly information: Readonly<Record<string, unknown>>
  readonly viewerPreferences: Readonly<Record<string, unknown>> | null
  readonly pageMode: string
}

const MM = 25.4 / 72

/** The whole file. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0, useSystemFonts: false })
  const document = await task.promise
  const pages: ReadPage[] = []
  for (let i = 1; i <= document.numPages; i++) {
    const page = await document.getPage(i)
    const [, , width, height] = page.view as [number, number, number, number]
    const content = await page.getTextContent()
    const texts = content.items.flatMap((item): ReadText[] => {
      if (!('str' in item) || item.str.trim() === '') return []
      const [, , c, d, e, f] = item.transform as number[] as [number, number, number, number, number, number]
      return [
        { text: item.str, x: e * MM, y: (height - f) * MM, width: item.width * MM, size: Math.hypot(c, d) },
      ]
    })
    const words = content.items
      .map((item) => ('str' in item ? item.str + (item.hasEOL ? ' ' : '') : ''))
      .join(' ')
    pages.push({ width: width * MM, height: height * MM, texts, words: words.replace(/\s+/g, ' ') })
  }
  const outline = (await document.getOutline()) ?? []
  const bookmarks: (readonly [string, number])[] = []
  for (const { title, dest } of outline) {
    const target = Array.isArray(dest) ? dest[0] : null
    bookmarks.push([title, (await document.getPageIndex(target)) + 1])
  }
  const { info } = await document.getMetadata()
  const read = {
    pages,
    labels: await document.getPageLabels(),
    bookmarks,
    information: info as Record<string, unknown>,
    viewerPreferences: (await document.getViewerPreferences()) as Record<string, unknown> | null,
    pageMode: await document.getPageMode(),
  }
  await task.destroy()
  return read
}
