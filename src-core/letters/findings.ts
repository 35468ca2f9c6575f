/** Texts that paper cannot print as they are written, told before anything is printed. */
import type { CodePointRanges } from '../../shared-types/fonts'
import type { Finding } from '../../shared-types/finding'
import type { Project } from '../../shared-types/project'
import { finding, spelledValue } from '../findings/finding'
import { listOf } from '../joins/words'
import { memoised } from '../memo'
import { unprintable } from './printable'
import { scriptsOf } from './scripts'
import { printedTexts } from './texts'
import type { TextSources } from './texts'

/** Characters that a finding names; more are counted. */
const NAMED = 8

/** "ש, ל, ו and ם (Hebrew)". */
function characterWords(characters: readonly string[]): string {
  const rest = characters.length - NAMED
  const named = rest > 1 ? [...characters.slice(0, NAMED), `${rest} more`] : characters
  const scripts = scriptsOf(characters)
  return listOf(named) + (scripts.length > 0 ? ` (${listOf(scripts)})` : '')
}

function letterFindings(sources: TextSources, fonts: readonly CodePointRanges[]): Finding[] {
  const told = new Set<string>()
  return printedTexts(sources).flatMap(({ where, what, text, isCode, target }) => {
    const characters = unprintable(text, fonts)
    // The same bead hangs many times.
    const key = `${what} ${text}`
    if (characters.length === 0 || told.has(key)) return []
    told.add(key)
    const values = { what: spelledValue(what), characters: characterWords(characters) }
    return [finding(isCode ? 'letters/code' : 'letters/missing', where, values, target)]
  })
}

/**
 * The findings on the texts of a project, printed with `fonts` for other scripts; worked out again only where one of its
 * texts or the fonts may have changed.
 */
export function createLetterFindings(): (
  project: Project,
  fonts?: readonly CodePointRanges[],
) => readonly Finding[] {
  const check = memoised((fonts: readonly CodePointRanges[], ...parts: readonly unknown[]) =>
    letterFindings(
      Object.fromEntries(SOURCES.map((name, i) => [name, parts[i]])) as unknown as TextSources,
      fonts,
    ),
  )
  return (project, fonts = NO_FONTS) => {
    const laid: Partial<TextSources> = project.layout ?? {}
    const { items, edging, kit } = laid
    const parts: TextSources = { ...pick(project), items, edging, kit }
    return check(fonts, ...SOURCES.map((name) => parts[name]))
  }
}

const NO_FONTS: readonly CodePointRanges[] = []

const SOURCES = [
  'title', 'designer', 'notes', 'pattern', 'currency', 'gauge', 'yarns', 'motifs', 'colourways', 'items', 'edging', 'kit',
] as const satisfies readonly (keyof TextSources)[] // prettier-ignore

const pick = ({ title, designer, notes, pattern, currency, gauge, yarns, motifs, colourways }: Project) => ({
  ...{ title, designer, notes, pattern, currency, gauge, yarns, motifs, colourways },
})
