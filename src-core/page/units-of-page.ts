/** The units that a page is written in. */
import type { UnitSystem } from '../../shared-types/project'
import type { PageFact } from './read-page'

const UNITS_IN: ReadonlySet<PageFact['kind']> = new Set(['swatch', 'rounds-gauge', 'size', 'piece'])

interface Told {
  readonly kind: PageFact['kind']
  readonly at: { readonly words: string }
}

/** Units of the first measure that a page tells of its own motif; undefined where it tells none. */
export function unitsOf(told: readonly Told[]): UnitSystem | undefined {
  const words = told.filter(({ kind }) => UNITS_IN.has(kind)).map(({ at }) => at.words)
  const [first] = words.flatMap(
    (text) => /\d\s*-?(?:(cm|mm|centi|milli)|(in\b|inch|["″”]|''|′′))/i.exec(text) ?? [],
  )
  return first === undefined ? undefined : /[cm]m$|centi$|milli$/i.test(first) ? 'metric' : 'imperial'
}
