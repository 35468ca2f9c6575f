/**
 * Printing: the pages as pictures, laid out in the window for print alone, one to a sheet and as large as they
 * are, and then the print dialog. They are the pages of the PDF, drawn by the same code.
 */
import type { HostBridge, Job, Outcome, PagePreview, PageRequest, Progress } from '../../shared-types/bridge'
import { CANCELLED, done, refused } from '../../shared-types/bridge'
import { PAPERS } from '../../shared-types/project'
import { finding } from '../../src-core/findings/finding'

export interface PrintDone {
  /** Pages that were sent to print. */
  readonly printed: number
}

type PrintRequest = Omit<PageRequest, 'page' | 'purpose'>

/** Steps of the work that are left when all pages are there: the dialog. */
const DIALOG = 1
/** A sheet that is this much shorter than the paper never runs over to the next one (mm); nothing is inked there. */
const SPARE = 0.2

/** Prints pages; `cancel` ends it before the dialog, or takes the sheets out of the window. */
export function printJob(
  bridge: HostBridge,
  request: PrintRequest,
  onProgress: (progress: Progress) => void,
): Job<PrintDone> {
  const control = new AbortController()
  const cancelled = new Promise<typeof CANCELLED>((resolve) => {
    control.signal.addEventListener('abort', () => resolve(CANCELLED))
  })
  const run = print(bridge, request, onProgress, control.signal).catch((error: unknown) =>
    refused(finding('app/cannot-print', 'the pages', { reason: reasonOf(error) })),
  )
  return { finished: Promise.race([run, cancelled]), cancel: () => control.abort() }
}

async function print(
  bridge: HostBridge,
  request: PrintRequest,
  onProgress: (progress: Progress) => void,
  signal: AbortSignal,
): Promise<Outcome<PrintDone>> {
  const pages: PagePreview[] = []
  let count = 1
  while (pages.length < count) {
    const answer = await bridge.previewPage({ ...request, page: pages.length + 1, purpose: 'print' })
    if (answer.outcome !== 'done') return answer
    if (signal.aborted) return CANCELLED
    pages.push(answer.value)
    count = answer.value.pageCount
    onProgress({ done: pages.length, total: count + DIALOG, words: 'Drawing the pages' })
  }
  const sheets = layOut(pages)
  signal.addEventListener('abort', sheets.remove)
  try {
    await sheets.isReady
    if (signal.aborted) return CANCELLED
    onProgress({ done: count, total: count + DIALOG, words: 'In the print dialog' })
    const printed = await bridge.printSheets({ paper: request.paper ?? PAPERS[0] })
    return printed.outcome === 'done' ? done({ printed: count }) : printed
  } finally {
    sheets.remove()
  }
}

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error))

/** Puts the pages into the document, where print alone shows them. */
function layOut(pages: readonly PagePreview[]) {
  const [first] = pages
  // Sheets are upright; what lies across is turned, as a printer would.
  const short = Math.min(first?.width ?? 0, first?.height ?? 0)
  const long = Math.max(first?.width ?? 0, first?.height ?? 0)
  const style = new CSSStyleSheet()
  style.replaceSync(`@page { size: ${short}mm ${long}mm; margin: 0 }`)
  const holder = document.createElement('div')
  holder.className = 'print-sheets'
  holder.ariaHidden = 'true'
  const addresses: string[] = []
  const images = pages.map(({ svg, width, height }) => {
    const sheet = document.createElement('div')
    sheet.style.width = `${short}mm`
    sheet.style.height = `${long - SPARE}mm`
    const image = document.createElement('img')
    image.style.width = `${width}mm`
    image.style.height = `${height}mm`
    if (width > height) image.style.transform = `translateX(${short}mm) rotate(90deg)`
    image.src = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }))
    addresses.push(image.src)
    sheet.append(image)
    holder.append(sheet)
    return image
  })
  document.body.append(holder)
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, style]
  return {
    isReady: Promise.all(images.map((image) => image.decode())),
    remove: (): void => {
      holder.remove()
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((other) => other !== style)
      for (const address of addresses) URL.revokeObjectURL(address)
    },
  }
}
