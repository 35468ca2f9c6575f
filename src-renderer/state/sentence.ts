/** The project as a sentence whose parts can be edited, with what the keys on each part do. */
import type { Plan } from '../../shared-types/plan'
import type { JoinRule, Project } from '../../shared-types/project'
import { ARRANGEMENTS, JOIN_RULES } from '../../shared-types/project'
import type { SentenceField } from '../../src-core/figures/sentence'
import { projectSentence } from '../../src-core/figures/sentence'
import { counted, numbered } from '../../src-core/figures/words'
import { formatMoney } from '../../src-core/units/format'
import type { Edit } from './document.svelte'
import { garlandOf, isSwagged, patchCord, patchGarland, patchSwags, spacingFollows } from './edits/garland'
import { kitOf, patchKit } from './edits/kit'
import { patchApplique } from './edits/applique'
import { blanketOf, patchBlanket, patchEdging, patchJoining, setArrangement } from './edits/layout'
import { MEASURES, mainMotif, measureOf, setMeasure } from './edits/motif'
import type { MeasureKey } from './edits/motif'

export type Field = SentenceField | 'colours' | 'kit'

interface Part {
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
  sequence: 'sequence on the cord',
  spacing: 'spacing',
  cord: 'cord',
  swags: 'way it hangs',
  panel: 'panel',
  items: 'composition',
  clearance: 'minimum gap',
  kit: 'kit',
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
  return `${numbered(used, 'colourway')}${pattern ? PATTERN_WORDS[pattern] : ''}`
}

/** " (27 in)" and " (97.5 × 68.6 cm)" behind a length. */
const OTHER_UNITS = / \((?=[\d⅛¼⅜½⅝¾⅞])[^()]* (?:in|cm|mm)\)/

/** The sentence in parts; those with a field can be edited. */
export function sentenceParts(project: Project, plan: Plan): Part[] {
  // In the window the units can be switched, so that one of them is enough.
  const parts: Part[] = projectSentence(project, plan).map((part) => {
    const text = part.text.replace(OTHER_UNITS, '')
    return text === part.text ? part : { ...part, text }
  })
  const { kit } = plan
  if (kit && parts.at(-1)?.text.endsWith('.')) {
    const last = parts.pop()!
    const price = kit.asked ? ` at ${formatMoney(kit.asked.withTax, project.currency ?? 'EUR')}` : ''
    parts.push(
      { ...last, text: last.text.slice(0, -1) },
      { text: ', sold as ' },
      { text: `${counted(kit.count, 'kit')}${price}`, field: 'kit' },
      { text: '.' },
    )
  }
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

const nudgeBlanketCount = (field: Field, steps: number, isSideways: boolean) => ({
  label: 'change the number of motifs',
  edit: (project: Project) => {
    const blanket = blanketOf(project)
    if (!blanket) return project
    if (blanket.arrangement === 'rings')
      return patchBlanket(project, { rings: stepped(blanket.rings, steps) })
    return field === 'columns' || isSideways
      ? patchBlanket(project, { columns: stepped(blanket.columns, steps) })
      : patchBlanket(project, { rows: stepped(blanket.rows, steps) })
  },
})

/** mm. How far one press moves the length of a cord, or a span. */
const CORD_STEP = 10

/** What an arrow key does to a garland; `plan` is the one before anything was tried. */
function nudgeGarland(field: Field, steps: number, plan: Plan): { label: string; edit: Edit } {
  switch (field) {
    case 'count':
      return {
        label: 'change how many hang on the cord',
        edit: (project) => {
          const garland = garlandOf(project)
          if (!garland) return project
          const { between, mm } = garland.spacing ?? {}
          // Where the length follows, the distance stays; else it follows from the count.
          const kept = spacingFollows(garland) === 'length' ? { mm } : {}
          const count = Math.max(1, (plan.items?.length ?? 1) + steps)
          return patchGarland(project, { spacing: { ...(between ? { between } : {}), ...kept, count } })
        },
      }
    case 'spacing':
      return {
        label: 'change the spacing',
        edit: (project) => {
          const garland = garlandOf(project)
          if (!garland) return project
          const { between, count } = garland.spacing ?? {}
          const kept = spacingFollows(garland) === 'length' ? { count } : {}
          const least = between === 'centres' ? 1 : 0
          const mm = Math.max(least, Math.round(plan.garland?.spacing ?? 0) + steps)
          return patchGarland(project, { spacing: { ...(between ? { between } : {}), ...kept, mm } })
        },
      }
    case 'cord':
      return {
        label: 'change the length of the cord',
        edit: (project) => {
          const garland = garlandOf(project)
          const length = garland?.cord?.length
          // A cord that follows is lengthened where it follows from.
          if (length !== undefined)
            return patchCord(project, { length: Math.max(CORD_STEP, length + steps * CORD_STEP) })
          const span = garland?.swags?.span
          return span === undefined
            ? project
            : patchSwags(project, { span: Math.max(CORD_STEP, span + steps * CORD_STEP) })
        },
      }
    default:
      return {
        label: 'change the swags',
        edit: (project) => {
          const garland = garlandOf(project)
          return garland && isSwagged(garland)
            ? patchSwags(project, { count: stepped(garland.swags?.count, steps) })
            : project
        },
      }
  }
}

/** What an arrow key does on a part: `steps` up or right (more), or down and left. Null where it does nothing. */
export function nudgeField(
  field: Field,
  steps: number,
  isSideways: boolean,
  plan: Plan,
): { label: string; edit: Edit } | null {
  switch (field) {
    case 'columns':
    case 'count':
      if (plan.garland) return nudgeGarland(field, steps, plan)
      return nudgeBlanketCount(field, steps, isSideways)
    case 'spacing':
    case 'cord':
    case 'swags':
      return nudgeGarland(field, steps, plan)
    case 'kit':
      return {
        label: 'change the number of kits',
        edit: (project) => patchKit(project, { count: stepped(kitOf(project)?.count, steps) }),
      }
    case 'clearance':
      return {
        label: 'change the minimum gap',
        edit: (project) => {
          const now = project.layout?.kind === 'applique' ? (project.layout.clearance ?? 0) : 0
          return patchApplique(project, { clearance: Math.max(0, now + steps) })
        },
      }
    case 'rings':
    case 'size':
      return nudgeBlanketCount(field, steps, isSideways)
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
