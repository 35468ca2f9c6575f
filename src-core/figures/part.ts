/**
 * What things on a page are to somebody who does not see it: headings, paragraphs, tables, lists, figures. The page
 * says it while it is set, and in the order in which it is to be read; whatever writes the page only follows.
 */
import type { Bounds } from './figure'

/** Roles by their names in PDF (ISO 32000-1, 14.8.4), so that nothing has to be translated. */
export type Role =
  'H1' | 'H2' | 'H3' | 'P' | 'L' | 'LI' | 'Lbl' | 'LBody' | 'Table' | 'TR' | 'TH' | 'TD' | 'Figure'

/** A part of what is told. One that goes on over columns and pages is the same object on each of them. */
export interface Part {
  readonly role: Role
  /** What it belongs to; null where it stands by itself. */
  readonly parent: Part | null
  /** Of figures: what is read aloud in their place. */
  readonly alt?: string
  /** Of figures: where they stand on their page, in mm from its top left. */
  readonly box?: Bounds
  /** Of header cells: what they are the head of. */
  readonly scope?: 'Column' | 'Row'
  /** Of lists whose labels count. */
  readonly counted?: boolean
}

/** What is printed on every page, or once more, and is not read: the same words are told elsewhere. */
export interface Furniture {
  readonly role: 'Artifact'
  readonly at: 'Header' | 'Footer'
}

export const FOOTER_FURNITURE: Furniture = { role: 'Artifact', at: 'Footer' }
/** Says at the head of a column or page what goes on there. */
export const HEADER_FURNITURE: Furniture = { role: 'Artifact', at: 'Header' }

/** A new part. */
export const partOf = (
  role: Role,
  parent: Part | null = null,
  more: Omit<Part, 'role' | 'parent'> = {},
): Part => ({ role, parent, ...more })

/** What words are that are put into a part without a role of their own; null where they are the part itself. */
export function roleWithin(part: Part | null): Role | null {
  switch (part?.role) {
    case undefined:
      return 'P'
    case 'LI':
      return 'LBody'
    case 'TR':
      return 'TD'
    case 'L':
    case 'Table':
      throw new Error(`words stand in ${part?.role} without an item of it`)
    default:
      return null
  }
}
