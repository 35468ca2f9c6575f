/** How each colourway is marked on paper: its letter, its ink texture, its yarns. */
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'

export interface SlotMark {
  readonly slot: string
  readonly yarnName: string
  /** "#rrggbb", whatever the file holds. */
  readonly colour: string
}

export interface ColourwayMark {
  /** Id of the colourway, '' for motifs that have none. */
  readonly id: string
  readonly code: string
  readonly name: string
  /** Number of the ink texture, from 0. */
  readonly texture: number
  readonly slots: readonly SlotMark[]
  readonly count: number
}

/** Colourway letters leave out I and O, which look like figures. */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ'

/** Letters are printed in the motifs: more than so many characters have no room there. */
const LONGEST_CODE = 3

/** What stands for a yarn without a readable colour. */
export const UNKNOWN_COLOUR = '#d9d5cc'

/** "#rgb" and "#rrggbb" as "#rrggbb" in lower case; anything else becomes the unknown colour. */
export function paperColour(colour: string | undefined): string {
  const text = (colour ?? '').trim().toLowerCase()
  if (/^#[0-9a-f]{6}$/.test(text)) return text
  if (/^#[0-9a-f]{3}$/.test(text)) return '#' + [...text.slice(1)].map((c) => c + c).join('')
  return UNKNOWN_COLOUR
}

/** Relative luminance of "#rrggbb", 0 to 1 (WCAG 2.2, "relative luminance"). */
export function luminance(colour: string): number {
  const channel = (from: number): number => {
    const value = parseInt(colour.slice(from, from + 2), 16) / 255
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4
  }
  return 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5)
}

/** The colourways that the plan places, in the file's order; motifs without one come last. */
export function colourwayMarks(project: Project, plan: Plan): ColourwayMark[] {
  const yarns = new Map((project.yarns ?? []).map((yarn) => [yarn.id, yarn]))
  const counts = new Map<string, number>()
  for (const motif of plan.motifs) counts.set(motif.colourway, (counts.get(motif.colourway) ?? 0) + 1)
  const marks: ColourwayMark[] = []
  ;(project.colourways ?? []).forEach((colourway, index) => {
    const count = counts.get(colourway.id)
    if (count === undefined) return
    counts.delete(colourway.id)
    const slots = Object.entries(colourway.yarns ?? {}).map(([slot, id]) => ({
      slot,
      yarnName: yarns.get(id)?.name || id,
      colour: paperColour(yarns.get(id)?.colour),
    }))
    const written = [...(colourway.code ?? '').trim()].slice(0, LONGEST_CODE).join('')
    const code = written || LETTERS[index % LETTERS.length]!
    marks.push({
      id: colourway.id,
      code,
      name: colourway.name?.trim() ?? '',
      texture: marks.length,
      slots,
      count,
    })
  })
  const rest = [...counts.values()].reduce((sum, count) => sum + count, 0)
  if (rest > 0) marks.push({ id: '', code: '', name: '', texture: 2, slots: [], count: rest })
  return marks
}
