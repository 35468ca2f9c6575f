/** The program's own colours on the drawing, read from the design tokens of the page. */
export interface Palette {
  /** What lies under the motifs. */
  readonly paper: string
  readonly ink: string
  readonly quiet: string
  /** Of marks that are told by dark and light: the same in every theme. */
  readonly markDark: string
  readonly markLight: string
  readonly hairline: string
  readonly accent: string
  readonly warning: string
  /** Motifs without a yarn. */
  readonly bare: string
  /** Font family of labels. */
  readonly face: string
}

const TOKENS = {
  paper: '--paper',
  ink: '--ink',
  quiet: '--quiet',
  markDark: '--mark-dark',
  markLight: '--mark-light',
  hairline: '--hairline',
  accent: '--accent',
  warning: '--warning',
  bare: '--hairline',
} as const

/** Reads the tokens where `element` stands; a page without them gets its text colour throughout. */
export function readPalette(element: Element): Palette {
  const style = getComputedStyle(element)
  const colour = (token: string) => style.getPropertyValue(token).trim() || style.color || 'black'
  return {
    paper: colour(TOKENS.paper),
    ink: colour(TOKENS.ink),
    quiet: colour(TOKENS.quiet),
    markDark: colour(TOKENS.markDark),
    markLight: colour(TOKENS.markLight),
    hairline: colour(TOKENS.hairline),
    accent: colour(TOKENS.accent),
    warning: colour(TOKENS.warning),
    bare: colour(TOKENS.bare),
    face: style.fontFamily || 'sans-serif',
  }
}

/** A colour of which so much shows, on whatever lies under it. */
export const faint = (colour: string, share: number): string =>
  `color-mix(in srgb, ${colour} ${share * 100}%, transparent)`
