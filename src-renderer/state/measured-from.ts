/** What the next plan is held against, where the motif of a work that is under way is measured or weighed again. */
import type { PlanNumbers } from '../../shared-types/plan'
import type { BlanketLayout, Layout, Motif, Project } from '../../shared-types/project'
import { hasBegun } from '../../src-core/progress/words'
import type { Renewed } from '../../src-core/progress/words'

export interface MeasuredFrom {
  /** The plan before the first of several measures in a row. */
  readonly plan: PlanNumbers
  /** What was entered since. */
  readonly what: readonly Renewed[]
}

/** Fields of a motif that are something else than its measures; of its name and the like nothing follows. */
const PARTS: Readonly<Record<string, Renewed | null>> = {
  weighed: 'weight',
  slots: 'weight',
  unravelled: 'weight',
  gauge: 'gauge',
  foundation: 'rounds',
  rounds: 'rounds',
  name: null,
  minutes: null,
  instructions: null,
}

/** The plan before the first of several measures in a row; null where something else changes. */
export function measuredFrom(
  committed: Project,
  next: Project,
  before: PlanNumbers,
  now: MeasuredFrom | null,
): MeasuredFrom | null {
  const { layout } = committed
  const isWeighed = isYarnWeighed(committed, next)
  const isMeasure = next.motifs !== committed.motifs || next.gauge !== committed.gauge || isWeighed
  if (!isMeasure) return isSameBut(next.layout, layout, KEPT) ? now : null
  if (!isSameBut(next.layout, layout, HELD)) return null
  const what = new Set([
    ...(now?.what ?? []),
    ...renewed(committed, next),
    ...(isWeighed ? (['yarn'] as const) : []),
  ])
  if (!hasBegun(before.progress) || what.size === 0) return now
  return { plan: now?.plan ?? before, what: [...what] }
}

/** Whether yarn was weighed or counted again: colours of what is still to be made may follow it. */
function isYarnWeighed(before: Project, after: Project): boolean {
  if (before.yarns === after.yarns) return false
  const left = ({ yarns }: Project): string =>
    JSON.stringify(yarns?.map((yarn) => [yarn.id, yarn.left ?? null]))
  return left(before) !== left(after)
}

/** What of the motifs was entered anew. */
function renewed(before: Project, after: Project): Renewed[] {
  const known = new Map(before.motifs?.map((motif) => [motif.id, motif]))
  const found = (after.motifs ?? []).flatMap((motif) => {
    const was = known.get(motif.id)
    return was && was !== motif ? changedParts(was, motif) : []
  })
  return before.gauge === after.gauge ? found : [...found, 'gauge']
}

function changedParts(before: Motif, after: Motif): Renewed[] {
  const [was, is] = [before, after].map((motif) => new Map<string, unknown>(Object.entries(motif)))
  const names = [...new Set([...was!.keys(), ...is!.keys()])]
  const changed = names.filter((name) => JSON.stringify(was!.get(name)) !== JSON.stringify(is!.get(name)))
  return changed.flatMap((name) => (name in PARTS ? (PARTS[name] ?? []) : 'measures'))
}

type Cells = NonNullable<BlanketLayout['cells']>

/** What follows from limits that hang on the yarn: it is worked out anew by itself. */
const KEPT = ['kept'] as const
/** The colours that are held for made motifs, too: an edit of measures may fix those. */
const HELD = [...KEPT, 'held', 'painted'] as const

/** Whether two layouts are one, but for some of what their cells say. */
function isSameBut(
  next: Project['layout'],
  before: Project['layout'],
  but: readonly (keyof Cells)[],
): boolean {
  if (next === before) return true
  if (!next || !before) return false
  const bare = (layout: Layout) => {
    const { cells = {}, ...rest } = layout as BlanketLayout
    const told = Object.entries(cells).filter(([name]) => !but.includes(name as keyof Cells))
    return [...Object.entries(rest), ...told]
  }
  const known = new Map(bare(before))
  const now = bare(next)
  return now.length === known.size && now.every(([name, value]) => known.get(name) === value)
}
