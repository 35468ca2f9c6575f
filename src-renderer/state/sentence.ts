/** The project as a sentence whose parts can be edited, with what the keys on each part do. */
import { say, spelled } from './say'
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import type { SentenceField } from '../../src-core/figures/sentence'
import { projectSentence } from '../../src-core/figures/sentence'
import { counted, numbered } from '../../src-core/figures/words'
import { formatMoney } from '../../src-core/units/format'
import type { Nudge } from '../kinds/kind'
import { kindOf } from '../kinds/kinds'
import { stepped } from './steps'
import { kitOf, patchKit } from './edits/kit'
import { blanketOf } from './edits/layout'
import { accountOf } from '../../src-core/accounts'
import { leading } from '../../src-core/motif/ruling'
import { mainMotif, measureOf, setMeasure } from './edits/motif'
import type { MeasureKey } from './edits/motif'
import { settled } from '../../src-core/settled'

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
  'by-stash': ' as the stash goes',
} as const

function colourWords(project: Project, plan: Plan): string {
  const used = Object.values(plan.counts.byColourway).filter((count) => count > 0).length
  if (used === 0) return say`no colours yet`
  if (used === 1) return say`one colourway`
  const fill = blanketOf(project)?.cells?.fill
  const pattern = fill?.pattern
  // A repeat whose colours are limited skips those that are used up.
  const limits = [fill?.most, fill?.mostGrams].flatMap((most) => Object.keys(most ?? {}))
  const isLimited = pattern === 'repeat' && (fill?.withinStash === true || limits.length > 0)
  const words = pattern ? `${PATTERN_WORDS[pattern]}${isLimited ? ', as far as they go' : ''}` : ''
  return `${spelled(numbered(used, 'colourway'))}${words}`
}

/** " (27 in)" and " (97.5 × 68.6 cm)" behind a length. */
const OTHER_UNITS = / \((?=[\d⅛¼⅜½⅝¾⅞])[^()]* (?:in|cm|mm)\)/

/** The sentence in parts; those with a field can be edited. */
export function sentenceParts(project: Project, plan: Plan): Part[] {
  // In the window the units can be switched, so that one of them is enough.
  const parts: Part[] = projectSentence(plan).map((part) => {
    const text = part.text.replace(OTHER_UNITS, '')
    return text === part.text ? part : { ...part, text }
  })
  const { kit } = plan
  if (kit && parts.at(-1)?.text.endsWith('.')) {
    const last = parts.pop()!
    const price = kit.asked ? ` at ${formatMoney(kit.asked.withTax, settled(project).currency)}` : ''
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
  const key = leading(motif, accountOf(project, motif).account?.shape)
  const value = key ? measureOf(motif, key) : undefined
  return key && value !== undefined ? { id: motif.id, key, value } : null
}

/** What an arrow key does on a part; `steps` up or right (more), or down and left. Null where it does nothing. */
export function nudgeField(
  field: Field,
  steps: number,
  isSideways: boolean,
  plan: Plan,
  project: Project,
): Nudge | null {
  switch (field) {
    case 'kit':
      return {
        label: 'change the number of kits',
        edit: (project) => patchKit(project, { count: stepped(kitOf(project)?.count, steps) }),
      }
    case 'motif-size':
      return {
        label: 'change the size of the motif',
        edit: (project) => {
          const lead = leadingKey(project)
          return lead ? setMeasure(project, lead.id, lead.key, Math.max(1, lead.value + steps)) : project
        },
      }
    default:
      return kindOf(project).nudge(field, steps, isSideways, plan)
  }
}
