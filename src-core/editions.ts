/** Editions of a map: the same sheets in other terms, for the other hand, on other paper, in colour and in ink. */
import type { Hand, Paper, SheetStyle, Terms } from '../shared-types/project'
import type { Settled } from '../shared-types/settled'

/** One edition; `name` tells it from the others: "us-right-a4-colour". */
export interface Edition {
  readonly name: string
  readonly terms: Terms
  readonly hand: Hand
  readonly paper: Paper
  readonly style: SheetStyle
}

/** What an edition is called by, in the order in which names have them. */
const AXES = {
  terms: { us: 'US', uk: 'UK' },
  hand: { right: 'right', left: 'left' },
  paper: { a4: 'A4', letter: 'Letter' },
  style: { colour: 'colour', ink: 'ink' },
} as const satisfies {
  terms: Record<string, Terms>
  hand: Record<string, Hand>
  paper: Record<string, Paper>
  style: Record<string, SheetStyle>
}
type Axis = keyof typeof AXES

/** What can stand in a list of editions; `all` is every one of them. */
export const EDITION_NAMES: readonly string[] = Object.values(AXES).flatMap((axis) => Object.keys(axis))

/** Every edition of the names crossed; what none of them says is as in the project. */
export function editionsOf(names: readonly string[], { hand, sheet }: Settled): Edition[] {
  const own = { terms: sheet.terms, hand, paper: sheet.paper, style: sheet.style }
  const wanted = (axis: Axis): [name: string, value: string][] => {
    const all = Object.entries(AXES[axis])
    const asked = all.filter(([name]) => names.includes(name))
    return asked.length > 0 ? asked : all.filter(([, value]) => value === own[axis])
  }
  let editions: { names: string[]; values: Record<string, string> }[] = [{ names: [], values: {} }]
  for (const axis of Object.keys(AXES) as Axis[])
    editions = editions.flatMap((edition) =>
      wanted(axis).map(([name, value]) => ({
        names: [...edition.names, name],
        values: { ...edition.values, [axis]: value },
      })),
    )
  return editions.map(
    (edition) => ({ ...edition.values, name: edition.names.join('-') }) as unknown as Edition,
  )
}
