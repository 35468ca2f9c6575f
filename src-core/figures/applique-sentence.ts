/** An appliqué as a sentence: "Five daisies …" would want plurals of any name, so motifs are told as "5 × Daisy". */
import type { PanelAccount, Plan } from '../../shared-types/plan'
import type { UnitSystem } from '../../shared-types/project'
import { formatLength, formatSize } from '../units/format'
import type { SentencePart } from './sentence'
import { counted, listed } from './words'

/** "a circle of 30 cm", "a rectangle of 45 × 45 cm (17¾ × 17¾ in)". */
function panelWords({ shape }: PanelAccount, size: Plan['size'], units: UnitSystem): string {
  const other = units === 'metric' ? 'imperial' : 'metric'
  const told = (system: UnitSystem): string =>
    shape === 'circle' ? formatLength(size.width, system) : formatSize(size.width, size.height, system)
  const article = shape === 'ellipse' ? 'an ellipse' : shape === 'outline' ? 'a panel' : `a ${shape}`
  return `${article} of ${told(units)} (${told(other)})`
}

/** The sentence, in parts. */
export function appliqueSentence(plan: Plan, panel: PanelAccount): SentencePart[] {
  const { settled } = plan
  const units = settled.units
  const { motifs, size } = plan
  const ground: SentencePart = { text: panelWords(panel, size, units), field: 'panel' }
  if (motifs.length === 0)
    return [{ text: 'nothing is placed yet', field: 'items' }, { text: ' on ' }, ground, { text: '.' }]
  const counts = new Map<string, number>()
  for (const { motif = '' } of motifs) counts.set(motif, (counts.get(motif) ?? 0) + 1)
  const kinds = plan.accounts.map(({ id, name }) => `${counts.get(id) ?? 0} × ${name}`)
  const parts: SentencePart[] = [
    { text: counted(motifs.length, 'item'), field: 'items' },
    { text: ' (' },
    { text: listed(kinds), field: 'items' },
    { text: ') on ' },
    ground,
  ]
  const { items = null } = plan.clearances ?? {}
  if (items === null) return [...parts, { text: '.' }]
  const apart = items > 0 ? `${formatLength(items, units)} apart at the closest` : 'some of them on others'
  return [...parts, { text: ', ' }, { text: apart, field: 'clearance' }, { text: '.' }]
}
