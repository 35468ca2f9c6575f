/** Fonts for other scripts in the worker of paper. */
import { readFileSync } from 'node:fs'
import type { CodePointRanges, FontPlace, FontRead } from '../../shared-types/fonts'
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { textOfRanges } from '../../src-core/letters/coverage'
import { withIsolatedNames } from '../../src-core/letters/isolated'
import type { Planner } from '../../src-core/plan'
import { ChosenFont } from '../paper/pdf/fonts/chosen'

/** What a font is; of a collection without a number, which fonts it holds. */
export function readFont(bytes: Uint8Array, face: number | null): FontRead {
  if (face === null) {
    const names = ChosenFont.namesIn(bytes)
    if (names.length > 1) return { choose: names }
  }
  const font = ChosenFont.read(bytes, face)
  const { name, scripts, covers } = font
  return { name: name.slice(0, 200), face: face ?? 1, scripts, covers: textOfRanges(covers) }
}

const known = new Map<string, ChosenFont>()

/** The fonts at these places, each read once. */
export function fontsAt(places: readonly FontPlace[] = []): readonly ChosenFont[] {
  const keys = places.map(({ path, face }) => `${path}#${face}`)
  for (const key of known.keys()) if (!keys.includes(key)) known.delete(key)
  return places.map(({ name, path, face }, i) => {
    const font = known.get(keys[i]!) ?? read(name, path, face)
    known.set(keys[i]!, font)
    return font
  })
}

function read(name: string, path: string, face: number): ChosenFont {
  try {
    return ChosenFont.read(readFileSync(path), face)
  } catch {
    throw new Error(`the font ${name} cannot be read any more: remove it in the settings and choose it again`)
  }
}

/** The plan of a project as paper sets it with these fonts. */
export function planWith(
  planner: Pick<Planner, 'plan'>,
  project: Project,
  fonts: readonly ChosenFont[],
): Plan {
  if (fonts.length === 0) return planner.plan(project)
  const covers: readonly CodePointRanges[] = fonts.map((font) => font.covers)
  return planner.plan(withIsolatedNames(project), covers)
}
