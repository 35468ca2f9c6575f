/**
 * The tree of what is told, as a reader without eyes goes through it (ISO 32000-1, 14.7 and 14.8): parts become
 * elements in the order in which they are first drawn, and know the marked content that shows them.
 */
import { PDFHexString, PDFName } from 'pdf-lib'
import type { PDFContext, PDFDict, PDFObject, PDFRef } from 'pdf-lib'
import type { Furniture, Part, Role } from '../../../src-core/figures/part'
import { MM_PER_POINT } from '../../../src-core/figures/figure'

/** A piece of marked content: its number among those of its page. */
interface Marked {
  readonly page: number
  readonly id: number
}

interface Element {
  readonly role: Role | 'Document' | 'Sect'
  readonly part: Part | null
  /** The page on which it is first drawn. */
  readonly page: number
  readonly kids: (Element | Marked)[]
}

const isElement = (kid: Element | Marked): kid is Element => 'kids' in kid

const HEADINGS: readonly string[] = ['H1', 'H2', 'H3']

const points = (mm: number): number => Math.round((mm / MM_PER_POINT) * 1000) / 1000

/** Begins content that is seen and not told. */
const ARTIFACT = '/Artifact BMC'
const FURNITURE: Readonly<Record<Furniture['at'], string>> = {
  Header: '/Artifact <</Type/Pagination/Subtype/Header/Attached[/Top]>> BDC',
  Footer: '/Artifact <</Type/Pagination/Subtype/Footer/Attached[/Bottom]>> BDC',
}

export class Structure {
  private readonly document: Element = { role: 'Document', part: null, page: 0, kids: [] }
  private readonly elements = new Map<Part, Element>()
  /** Elements by page and number of their marked content. */
  private readonly marked: Element[][] = []
  private section: { readonly name: string; readonly element: Element } | null = null
  private untold = 0

  /** `bare`: the words of a part as they stand in the tree. */
  constructor(private readonly bare: (text: string) => string = (text) => text) {}

  /** Begins a page; pages of one section that follow each other stand in one element. */
  page(section: string): void {
    this.marked.push([])
    if (this.section?.name === section) return
    const element: Element = { role: 'Sect', part: null, page: this.marked.length - 1, kids: [] }
    this.document.kids.push(element)
    this.section = { name: section, element }
  }

  private get number(): number {
    return this.marked.length - 1
  }

  /** Makes sure that a part has its element, also where nothing shows it: an empty cell. */
  element(part: Part): Element {
    const known = this.elements.get(part)
    if (known) return known
    const parent = part.parent ? this.element(part.parent) : this.section!.element
    const element: Element = { role: part.role, part, page: this.number, kids: [] }
    parent.kids.push(element)
    this.elements.set(part, element)
    return element
  }

  /** The operator that begins marked content of a part; of none, of what is only seen. */
  begin(part: Part | Furniture | null): string {
    if (part === null) return ARTIFACT
    if (part.role === 'Artifact') return FURNITURE[part.at]
    const element = this.element(part)
    const here = this.marked.at(-1)!
    element.kids.push({ page: this.number, id: here.length })
    here.push(element)
    return `/${part.role} <</MCID ${here.length - 1}>> BDC`
  }

  /** Words were drawn that no part tells. */
  leaveUntold(): void {
    this.untold++
  }

  /** Whether all that PDF/UA asks of the tree holds (ISO 14289-1, 7.1, 7.3, 7.4 and 7.5). */
  get holds(): boolean {
    const isTold = [...this.elements.keys()].every(
      ({ role, alt, box }) => role !== 'Figure' || ((alt ?? '').trim() !== '' && box !== undefined),
    )
    return this.untold === 0 && isTold && this.elements.size > 0
  }

  /**
   * Writes the tree; returns its root. Headings never leave out a level: where some pages are printed alone, the
   * first heading is of the first level.
   */
  write(context: PDFContext, pages: readonly { readonly ref: PDFRef; readonly height: number }[]): PDFRef {
    const root = context.nextRef()
    const attributes = new Attributes(context)
    const refs = new Map<Element, PDFRef>()
    let level = 0
    const write = (element: Element, parent: PDFRef): PDFRef => {
      const ref = context.nextRef()
      refs.set(element, ref)
      let role: string = element.role
      if (HEADINGS.includes(role)) {
        level = Math.min(HEADINGS.indexOf(role) + 1, level + 1)
        role = `H${level}`
      }
      const kids = element.kids.map((kid): PDFObject => {
        if (isElement(kid)) return write(kid, ref)
        if (kid.page === element.page) return context.obj(kid.id)
        return context.obj({ Type: 'MCR', Pg: pages[kid.page]!.ref, MCID: kid.id })
      })
      const dict: PDFDict = context.obj({ S: role, P: parent })
      if (kids.some((_, i) => !isElement(element.kids[i]!)))
        dict.set(PDFName.of('Pg'), pages[element.page]!.ref)
      if (kids.length > 0) dict.set(PDFName.of('K'), kids.length === 1 ? kids[0]! : context.obj(kids))
      const { part } = element
      if (part?.alt !== undefined) dict.set(PDFName.of('Alt'), PDFHexString.fromText(this.bare(part.alt)))
      const attribute = part && attributes.of(part, pages[element.page]!.height)
      if (attribute) dict.set(PDFName.of('A'), attribute)
      context.assign(ref, dict)
      return ref
    }
    const document = write(this.document, root)
    const numbers = this.marked.flatMap((elements, page) => [
      context.obj(page),
      context.register(context.obj(elements.map((element) => refs.get(element)!))),
    ])
    const parents = context.register(context.obj({ Nums: numbers }))
    context.assign(
      root,
      context.obj({
        Type: 'StructTreeRoot',
        K: [document],
        ParentTree: parents,
        ParentTreeNextKey: this.marked.length,
      }),
    )
    return root
  }
}

/** Attributes of elements, equal ones once. */
class Attributes {
  private readonly known = new Map<string, PDFRef>()

  constructor(private readonly context: PDFContext) {}

  private shared(key: string, entries: Record<string, string>): PDFRef {
    const known = this.known.get(key) ?? this.context.register(this.context.obj(entries))
    this.known.set(key, known)
    return known
  }

  /** Of header cells, lists that count and figures; null for all others. `height` is that of the page, in points. */
  of({ role, scope, counted, box }: Part, height: number): PDFObject | null {
    if (scope) return this.shared(scope, { O: 'Table', Scope: scope })
    if (role === 'L' && counted) return this.shared('Decimal', { O: 'List', ListNumbering: 'Decimal' })
    if (!box) return null
    const [left, top] = [points(box.x), height - points(box.y)]
    const corners = [left, top - points(box.height), left + points(box.width), top]
    return this.context.obj({
      O: 'Layout',
      Placement: 'Block',
      BBox: corners.map((value) => Math.round(value * 100) / 100),
    })
  }
}
