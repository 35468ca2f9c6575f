/** Writes pages of draw lists as one PDF file: symbols once, text as text, the same bytes for the same input. */
import { deflateSync } from 'node:zlib'
import { PDFDocument, PDFHexString, PDFName, PDFString, PrintScaling } from 'pdf-lib'
import type { PDFContext, PDFDict, PDFPage, PDFRef } from 'pdf-lib'
import { oneLine, unmarked } from '../../../src-core/letters/one-line'
import type { Figure, FigureItem, FigureSymbol, ImageItem } from '../../../src-core/figures/figure'
import { MM_PER_POINT } from '../../../src-core/figures/figure'
import { Content } from './content'
import type { Faces } from './faces'
import { xmpOf } from './metadata'
import { Structure } from './structure'

interface PdfPage {
  /** Drawn from the top left; its size is the page's. */
  readonly figure: Figure
  /** The page's own number in a viewer: "Overview", "Order 3". */
  readonly label: string
  /** Bookmarks that lead here. */
  readonly bookmarks: readonly string[]
  /** Pages of one section are told as one; without it they all are. */
  readonly section?: string
}

export interface PdfInformation {
  readonly title: string
  readonly author: string
  readonly subject: string
  /** Language tag of the words: "en-US". */
  readonly language: string
  readonly date: Date
  readonly producer: string
}

interface PdfOptions {
  readonly faces: Faces
  readonly onPage?: (done: number, of: number) => void
  readonly signal?: AbortSignal
  /** Draws every use of a symbol anew: only for measuring what symbols save. */
  readonly drawnAnew?: boolean
}

const points = (mm: number): number => mm / MM_PER_POINT

/** What stands beside the pages: marks of direction are for these alone. */
const bareIn =
  ({ others }: Faces) =>
  (text: string): string =>
    others.length > 0 ? unmarked(text) : text

class PdfWriter {
  private readonly context: PDFContext
  private readonly forms = new Map<FigureSymbol, { name: string; ref: PDFRef }>()
  private readonly fonts: PDFRef
  private readonly fontDict: PDFDict
  private readonly images = new Map<string, { name: string; ref: PDFRef }>()
  private used = new Set<FigureSymbol | ImageItem>()
  private readonly bare: (text: string) => string
  private readonly structure: Structure

  constructor(
    private readonly document: PDFDocument,
    private readonly options: PdfOptions,
  ) {
    this.context = document.context
    this.bare = bareIn(options.faces)
    this.structure = new Structure(this.bare)
    this.fontDict = this.context.obj({})
    this.fonts = this.context.register(this.fontDict)
  }

  private stream(operators: string, dict: Parameters<PDFContext['stream']>[1] = {}) {
    return this.context.stream(deflateSync(Buffer.from(operators, 'latin1')), {
      ...dict,
      Filter: 'FlateDecode',
    })
  }

  private content(): Content {
    const { faces, drawnAnew } = this.options
    return new Content({
      faces,
      nameOf: drawnAnew ? null : (symbol) => this.form(symbol),
      imageName: (item) => {
        this.used.add(item)
        return this.images.get(item.png)!.name
      },
    })
  }

  /** Collects the forms that `draw` uses and gives their resources. */
  private resources(draw: () => void) {
    const outer = this.used
    this.used = new Set()
    draw()
    const entries = [...this.used].map((item) => {
      const { name, ref } = 'png' in item ? this.images.get(item.png)! : this.forms.get(item)!
      return [name, ref] as const
    })
    this.used = outer
    return this.context.obj({ Font: this.fonts, XObject: Object.fromEntries(entries) })
  }

  private form(symbol: FigureSymbol): string {
    this.used.add(symbol)
    const known = this.forms.get(symbol)
    if (known) return known.name
    const { x, y, width, height } = symbol.bounds
    const content = this.content()
    const resources = this.resources(() => content.items(symbol.items))
    const stream = this.stream(content.operators, {
      Type: 'XObject',
      Subtype: 'Form',
      BBox: [x, y, x + width, y + height].map((value) => Math.round(value * 1000) / 1000),
      Resources: resources,
    })
    const name = `M${this.forms.size}`
    this.forms.set(symbol, { name, ref: this.context.register(stream) })
    return name
  }

  /** Takes the pictures of a page in, each once. */
  async takeImages(items: readonly FigureItem[]): Promise<void> {
    for (const item of items) {
      if (item.kind === 'group') await this.takeImages(item.items)
      if (item.kind !== 'image' || this.images.has(item.png)) continue
      const { ref } = await this.document.embedPng(Buffer.from(item.png, 'base64'))
      this.images.set(item.png, { name: `I${this.images.size}`, ref })
    }
  }

  page({ figure, section }: PdfPage): PDFPage {
    this.structure.page(section ?? '')
    const width = points(figure.width)
    const height = points(figure.height)
    const page = this.document.addPage([round(width), round(height)])
    const content = this.content()
    const scale = Math.round(1e6 / MM_PER_POINT) / 1e6
    content.raw(`${scale} 0 0 -${scale} 0 ${round(height)} cm 1 j`)
    const resources = this.resources(() => content.told(figure.items, this.structure))
    const stream = this.stream(content.operators)
    page.node.set(PDFName.of('Contents'), this.context.register(stream))
    page.node.set(PDFName.of('Resources'), resources)
    page.node.set(PDFName.of('StructParents'), this.context.obj(this.document.getPageCount() - 1))
    page.node.set(PDFName.of('Tabs'), PDFName.of('S'))
    return page
  }

  faces(): void {
    const { regular, bold, others } = this.options.faces
    for (const face of [regular.embedded, bold.embedded, ...others]) {
      if (face.used) this.fontDict.set(PDFName.of(face.resource), face.embed(this.context))
    }
  }

  /** The tree of what is told, and what the file says of itself; only where it holds does it name PDF/UA. */
  told(pages: readonly PDFPage[], information: PdfInformation): void {
    const { catalog } = this.document
    const sizes = pages.map((page) => ({ ref: page.ref, height: page.getHeight() }))
    catalog.set(PDFName.of('StructTreeRoot'), this.structure.write(this.context, sizes))
    catalog.set(PDFName.of('MarkInfo'), this.context.obj({ Marked: true }))
    const holds = this.structure.holds && information.title.trim() !== ''
    // Not compressed, so that programs find it that read nothing else of the file.
    const packet = this.context.stream(Buffer.from(xmpOf(information, holds), 'utf8'), {
      Type: 'Metadata',
      Subtype: 'XML',
    })
    catalog.set(PDFName.of('Metadata'), this.context.register(packet))
  }

  bookmarks(pages: readonly (readonly [PDFPage, PdfPage])[]): void {
    const entries = pages.flatMap(([page, { bookmarks }]) =>
      bookmarks.map((title) => ({ page, title: this.bare(title) })),
    )
    if (entries.length === 0) return
    const root = this.context.nextRef()
    const refs = entries.map(() => this.context.nextRef())
    entries.forEach(({ page, title }, i) => {
      const item = this.context.obj({
        Title: PDFHexString.fromText(title),
        Parent: root,
        Dest: [page.ref, 'XYZ', null, null, null],
      })
      if (i > 0) item.set(PDFName.of('Prev'), refs[i - 1]!)
      if (i < refs.length - 1) item.set(PDFName.of('Next'), refs[i + 1]!)
      this.context.assign(refs[i]!, item)
    })
    const outlines = { Type: 'Outlines', First: refs[0]!, Last: refs.at(-1)!, Count: refs.length }
    this.context.assign(root, this.context.obj(outlines))
    this.document.catalog.set(PDFName.of('Outlines'), root)
    this.document.catalog.set(PDFName.of('PageMode'), PDFName.of('UseOutlines'))
  }

  labels(pages: readonly PdfPage[]): void {
    const numbers = pages.flatMap(({ label }, i) => [
      i,
      this.context.obj({ P: PDFHexString.fromText(this.bare(label)) }),
    ])
    this.document.catalog.set(PDFName.of('PageLabels'), this.context.obj({ Nums: numbers }))
  }
}

const round = (value: number): number => Math.round(value * 1000) / 1000

/** Lets the machine do something else, such as cancel. */
const breathe = (): Promise<void> => new Promise((resolve) => setImmediate(resolve))

/** Writes the file. Throws the signal's reason when it is cancelled. */
export async function writePdf(
  pages: readonly PdfPage[],
  given: PdfInformation,
  options: PdfOptions,
): Promise<Uint8Array> {
  const bare = bareIn(options.faces)
  const line = (text: string): string => oneLine(bare(text))
  const { title, author, subject } = given
  const information = { ...given, title: line(title), author: line(author), subject: line(subject) }
  const document = await PDFDocument.create({ updateMetadata: false })
  const writer = new PdfWriter(document, options)
  const written: (readonly [PDFPage, PdfPage])[] = []
  for (const page of pages) {
    await breathe()
    options.signal?.throwIfAborted()
    await writer.takeImages(page.figure.items)
    written.push([writer.page(page), page])
    options.onPage?.(written.length, pages.length)
  }
  writer.faces()
  writer.told(
    written.map(([page]) => page),
    information,
  )
  writer.bookmarks(written)
  writer.labels(pages)
  document.setTitle(information.title, { showInWindowTitleBar: true })
  if (information.author !== '') document.setAuthor(information.author)
  document.setSubject(information.subject)
  document.setLanguage(information.language)
  document.setCreator(information.producer)
  document.setProducer(information.producer)
  document.setCreationDate(information.date)
  document.setModificationDate(information.date)
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None)
  document.catalog.set(PDFName.of('Lang'), PDFString.of(information.language))
  return document.save({ useObjectStreams: true, addDefaultPage: false, updateFieldAppearances: false })
}
