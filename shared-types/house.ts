/** How a shop or a designer shows itself on paper, the same on all projects: kept with the settings. */
import { z } from 'zod'
import { OPTIONAL_PAGES } from './sheets'

/** Characters of a name and of an address, and of the logo's picture as text (about 300 kB): our own choice. */
export const HOUSE_LIMITS = { name: 200, address: 600, logo: 400_000 } as const
/** Pixels along the longer side of a logo: 600 dots per inch over 40 mm. */
export const LOGO_PIXELS = 1000

const LOGO = /^data:image\/png;base64,[A-Za-z0-9+/]+=*$/

export const houseSchema = z.strictObject({
  name: z.string().max(HOUSE_LIMITS.name),
  /** Lines below the name: where to write, a page on the web. */
  address: z.string().max(HOUSE_LIMITS.address),
  /** Of titles and rules on paper in colour: "#2f5d50"; '' for black. */
  accent: z.string().regex(/^(?:#[0-9a-f]{6})?$/i),
  /** A PNG as a data URL; '' for none. */
  logo: z
    .string()
    .max(HOUSE_LIMITS.logo)
    .refine((text) => text === '' || LOGO.test(text)),
  /** Whether a title page is printed where the project does not say. */
  titlePage: z.boolean(),
  /** Pages that are not printed. */
  leaveOut: z.array(z.enum(OPTIONAL_PAGES)).max(OPTIONAL_PAGES.length).readonly(),
})

export type House = z.infer<typeof houseSchema>

export const NO_HOUSE: House = { name: '', address: '', accent: '', logo: '', titlePage: false, leaveOut: [] }
