/** The project as a sentence whose parts can be edited, with what the keys on each part do. */
import type { Plan } from '../../shared-types/plan'
import type { JoinRule, Project } from '../../shared-types/project'
import { ARRANGEMENTS, JOIN_RULES } from '../../shared-types/project'
import type { SentenceField } from '../../src-core/figures/sentence'
import { projectSentence } from '../../src-core/figures/sentence'
import { numeral } from '../../src-core/figures/words'
import type { Edit } from './document.svelte'
import { blanketOf, patchBlanket, patchEdging, patchJoining, setArrangement } from './edits/layout'
import { MEASURES, mainMotif, measureOf, setMeasure } from './edits/motif'
import type { MeasureKey } from './edits/motif'

export type Field = SentenceField | 'colours'

export interface Part {
  readonly text: string
  readonly field?: Field
}

/** What a part is about, for its label. */
export const FIELD_NAMES: Readonly<Record<Field, string>> = {
  count: 'number of motifs',
  motif: 'motif',
  'motif-size': 'size of the motif',
  arrangement: 'arrangement',
  columns: 'motifs in a row',
  rings: 'rings',
  joining: 'way of joining',
  gaps: 'fillers and half motifs',
  colours: 'colours',
  size: 'size',
  'size-with-edging': 'edging',
}

const PATTERN_WORDS = {
  one: '',
  repeat: ' one after the other',
  rows: ' row by row',
  'no-two-alike': ' with no two alike touching',
  shade: ' shading over',
  scatter: ' scattered',
} as const

function colourWords(project: Project, plan: Plan): string {
  const used = Object.values(plan.counts.byColourway).filter((count) => count > 0).length
  if (used === 0) return 'no colours yet'
  if (used === 1) return 'one colourway'
  const pattern = blanketOf(project)?.cells?.fill?.pattern
  return `${numeral(used)} colourways${pattern ? PATTERN_WORDS[pattern] : ''}`
}

/** The sentence in parts; those with a field can be edited. */
export function sentenceParts(project: Project, plan: Plan): Part[] {
  // In the window the units can be switched, so that one of them is enough.
  const parts: Part[] = projectSentence(project, plan).map((part) =>
    part.field === 'size' ? { ...part, text: part.text.replace(/ \(.*\)$/, '') } : part,
  )
  const joined = parts.findIndex((part) => part.field === 'joining')
  if (joined >= 0)
    parts.splice(joined + 1, 0, { text: ', in ' }, { text: colourWords(project, plan), field: 'colours' })
  return parts
}

/** Where the leading measure of the project's motif is kept; null where it has none. */
export function leadingKey(project: Project): { id: string; key: MeasureKey; value: number } | null {
  const motif = mainMotif(project)
  if (!motif) return null
  const keys: readonly MeasureKey[] =
    motif.kind === 'measured' ? MEASURES[motif.outline] : ['overTips', 'across', 'sideToSide']
  for (const key of keys) {
    const value = measureOf(motif, key)
    if (value !== undefined) return { id: motif.id, key, value }
  }
  return null
}

const cycled = <Value>(values: readonly Value[], value: Value, steps: number): Value =>
  values[(values.indexOf(value) + steps + values.length * Math.abs(steps)) % values.length]!

/** Rules that can be cycled through without saying more. */
const PLAIN_RULES: readonly JoinRule[] = JOIN_RULES.filter((rule) => rule !== 'apart')

/** One more or fewer, never below one. */
const stepped = (value: number | undefined, steps: number): number => Math.max(1, (value ?? 1) + steps)

/** What an arrow key does on a part: `steps` up or right (more), or down and left. Null where it does nothing. */
export function nudgeField(
  field: Field,
  steps: number,
  isSideways: boolean,
): { label: string; edit: Edit } | null {
  switch (field) {
    case 'columns':
    case 'count':
    case 'rings':
    case 'size':
      return {
        label: 'change the number of motifs',
        edit: (project) => {
          const blanket = blanketOf(project)
          if (!blanket) return project
          if (blanket.arrangement === 'rings')
            return patchBlanket(project, { rings: stepped(blanket.rings, steps) })
          return field === 'columns' || isSideways
            ? patchBlanket(project, { columns: stepped(blanket.columns, steps) })
            : patchBlanket(project, { rows: stepped(blanket.rows, steps) })
        },
      }
    case 'motif-size':
      return {
        label: 'change the size of the motif',
        edit: (project) => {
          const lead = leadingKey(project)
          return lead ? setMeasure(project, lead.id, lead.key, Math.max(1, lead.value + steps)) : project
        },
      }
    case 'arrangement':
      return {
        label: 'change the arrangement',
        edit: (project) =>
          setArrangement(
            project,
            cycled(ARRANGEMENTS, blanketOf(project)?.arrangement ?? 'straight-rows', steps),
          ),
      }
    case 'joining':
      return {
        label: 'change the way of joining',
        edit: (project) =>
          patchJoining(project, { rule: cycled(PLAIN_RULES, project.joining?.rule ?? 'tips', steps) }),
      }
    case 'size-with-edging':
      return {
        label: 'change the edging',
        edit: (project) => {
          const rounds = blanketOf(project)?.edging?.rounds ?? []
          const next = steps > 0 ? [...rounds, rounds.at(-1) ?? 'sc'] : rounds.slice(0, -1)
          return patchEdging(project, { rounds: next })
        },
      }
    default:
      return null
  }
}
