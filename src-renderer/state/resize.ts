/** From a size that a hand or a typed number asks for to the counts that come nearest to it. Lengths in mm. */
import type { Plan } from '../../shared-types/plan'
import { measuredMotifSchema } from '../../shared-types/project'
import type { AlternateRows, Project } from '../../shared-types/project'
import { PANEL } from '../../src-core/fields/applique'
import { holds } from '../../src-core/joins/holding'
import { byHolding, layoutOf, missOf, nearest } from '../../src-core/layout/candidates'
import type { Candidate } from '../../src-core/layout/candidates'
import type { Tryout } from '../../src-core/layout/trials'
import { createPlanner, proposeProject } from '../../src-core/plan'
import { isLaidAs } from '../../src-core/layout/taken'
import { isBlank } from '../../src-core/motif/rounds/account'
import { isBegun } from '../../src-core/progress/progress'
import { settled } from '../../src-core/settled'
import { MM_PER_INCH } from '../../src-core/units/quantity'
import { keepsMade } from '../../src-core/ways/changes'
import { hasOwnHeight, outlineGrown, outlineToward } from '../../src-core/ways/outline'
import { appliqueOf, patchPanel } from './edits/applique'
import { blanketOf, patchBlanket } from './edits/layout'
import { findMotif, updateMotif } from './edits/motif'

export interface Wish {
  readonly width: number
  readonly height: number
}

/** The count that makes `now` mm (with `count` of them) come nearest to `wished`, each adding `pitch`. */
const countFor = (count: number, now: number, wished: number, pitch: number, least: number): number =>
  pitch > 0 ? Math.max(least, Math.round(count + (wished - now) / pitch)) : count

/** What is cut out of a blanket can be cut out larger, as long as nothing of it is made. */
const isCutOut = (project: Project): boolean =>
  blanketOf(project)?.outlineShape !== undefined && !isBegun(project)

/** The project with the counts that come nearest to `wish`, in the arrangement that it has. */
export function resized(project: Project, plan: Plan, wish: Wish): Project {
  const blanket = blanketOf(project)
  if (!blanket || plan.motifs.length === 0) return project
  const { pitch, size } = plan
  if (isCutOut(project)) {
    const asked = inProportion(project, plan, wish)
    return outlineGrown(project, asked.width - size.width, asked.height - size.height, createPlanner())
  }
  if (blanket.arrangement === 'rings') {
    // A ring more lies on both sides: two columns across, two rows down.
    const across = (wish.width - size.width) / (2 * pitch.column)
    const down = (wish.height - size.height) / (2 * pitch.row)
    const more = Math.abs(across) > Math.abs(down) ? across : down
    const rings = Math.max(0, Math.round((blanket.rings ?? 0) + more))
    return rings === blanket.rings ? project : patchBlanket(project, { rings })
  }
  const isShort = blanket.arrangement === 'offset-rows' && blanket.alternateRows === 'oneFewer'
  const columns = countFor(blanket.columns ?? 1, size.width, wish.width, pitch.column, isShort ? 2 : 1)
  const rows = countFor(blanket.rows ?? 1, size.height, wish.height, pitch.row, 1)
  if (columns === blanket.columns && rows === blanket.rows) return project
  return patchBlanket(project, { columns, rows })
}

/**
 * The same, and the wish is remembered as what the blanket is to be. What holds goes before what comes nearest: where
 * the blanket would fall apart as it is rotated, it takes the best rotation with the counts that then come nearest.
 */
export function fitted(project: Project, plan: Plan, asked: Wish): Project {
  const wish = inProportion(project, plan, asked)
  const before = blanketOf(project)?.target ?? {}
  // The side that nobody changed is still to be what it was to be.
  const sideOf = (side: 'width' | 'height') =>
    wish[side] === plan.size[side] ? (before[side] ?? wish[side]) : wish[side]
  const target = { width: sideOf('width'), height: sideOf('height') }
  if (isCutOut(project)) return patchBlanket(outlineToward(project, wish, createPlanner()), { target })
  return patchBlanket(held(resized(project, plan, wish), wish), { target })
}

/** A circle, a hexagon and a drawn shape keep their proportions: the side that changes more rules the other. */
function inProportion(project: Project, { size }: Plan, wish: Wish): Wish {
  const shape = blanketOf(project)?.outlineShape
  if (!shape || hasOwnHeight(shape) || !isCutOut(project)) return wish
  const [across, down] = [wish.width / size.width, wish.height / size.height]
  const factor = Math.abs(across - 1) > Math.abs(down - 1) ? across : down
  return { width: size.width * factor, height: size.height * factor }
}

/** How much farther from the wish (|Δw|/W + |Δh|/H) a blanket may end so that it holds. */
const HOLDING_MISS = 0.15

function held(project: Project, wish: Wish): Project {
  if (project.joining?.rule === 'apart') return project
  const tryout = createPlanner().tryout(project)
  if (!tryout || holds(tryout.trials.of(tryout.counts))) return project
  const best = tryout.trials.bestOfAll(tryout.counts)
  const [first] = nearest(tryout, tryout.counts, best, wish).sort(byHolding)
  if (!first?.holds || first.miss > missOf(tryout.size(tryout.counts), wish) + HOLDING_MISS) return project
  return patchBlanket(project, layoutOf(first.counts))
}

/** The project in the first of the arrangements that are proposed for its target size; as it was without one. */
export function laidAsProposed(project: Project): Project {
  const { width, height } = blanketOf(project)?.target ?? {}
  if (!width || !height) return project
  return proposeProject(project, { width, height }).proposals[0]?.project ?? project
}

/**
 * A project whose motif has changed, in the arrangement that is proposed for it now, where it stood in the one that was
 * proposed before, or nothing could be laid out. What a hand chose, put in or made stays as it is.
 */
export const laidAnew = (before: Project, after: Project): Project =>
  isAsProposed(before) ? laidAsProposed(after) : after

function isAsProposed(project: Project): boolean {
  const blanket = blanketOf(project)
  const { width, height } = blanket?.target ?? {}
  if (!blanket || !width || !height || isBegun(project)) return false
  const byHand = [blanket.cells?.motifs, blanket.cells?.painted]
  if (byHand.some((own) => Object.keys(own ?? {}).length > 0)) return false
  if (createPlanner().plan(project).motifs.length === 0) {
    const measured = asMeasured(project, blanket.motif)
    return measured === null || isAsProposed(measured)
  }
  const [first] = proposeProject(project, { width, height }).proposals
  return first !== undefined && first.rule === settled(project).joining.rule && isLaidAs(project, first.fit)
}

/** A project whose motif goes by rounds that nobody has written yet, as it was laid out by its measures; null where it was not. */
function asMeasured(project: Project, id: string | undefined): Project | null {
  const motif = findMotif(project, id)
  if (motif?.kind !== 'rounds' || !isBlank(motif)) return null
  const read = measuredMotifSchema.safeParse({ ...motif, ...motif.measured, kind: 'measured' })
  return read.success ? updateMotif(project, motif.id, () => read.data) : null
}

/** A blanket brought nearer to its target size. */
export interface Toward {
  readonly project: Project
  readonly size: Wish
  /** How rows alternate in number, where that is changed too. */
  readonly alternate?: AlternateRows
}

/**
 * A blanket as near to its target size as counts bring it in the arrangement that it has (cut out: as an outline does),
 * whatever a hand has changed; null where that is no nearer. What holds now still holds, and a round still closes evenly.
 */
export function towardTarget(project: Project, { size }: Pick<Plan, 'size'>): Toward | null {
  const { width, height } = blanketOf(project)?.target ?? {}
  if (!width || !height) return null
  const wish = { width, height }
  const planner = createPlanner()
  const next = isCutOut(project) ? outlineToward(project, wish, planner) : counted(project, wish)
  const found = planner.size(next)
  if (!found || missOf(found, wish) >= missOf(size, wish) - 1e-6) return null
  const [before, after] = [project, next].map((each) => blanketOf(each)?.alternateRows ?? 'same')
  return { project: next, size: found, ...(after !== before && { alternate: after! }) }
}

/** Offset rows may be as long as each other or not, where that comes nearer and neither halves nor a hand fill their ends. */
function otherRows(project: Project, tryout: Tryout, wish: Wish): Candidate[] {
  const { counts } = tryout
  const { turn, alternateTurn } = counts
  const blanket = blanketOf(project)
  const isFree = counts.arrangement === 'offset-rows' && !blanket?.halves && !blanket?.alternate
  if (!isFree || isBegun(project) || Object.keys(blanket?.cells?.motifs ?? {}).length > 0) return []
  return (['same', 'oneFewer'] as const)
    .filter((alternateRows) => alternateRows !== counts.alternateRows)
    .flatMap((alternateRows) => nearest(tryout, { ...counts, alternateRows }, { turn, alternateTurn }, wish))
}

function counted(project: Project, wish: Wish): Project {
  const tryout = createPlanner().tryout(project)
  // What is made keeps its place, as in “Find ways”.
  const [first] = tryout
    ? nearest(tryout, tryout.counts, tryout.counts, wish)
        .concat(otherRows(project, tryout, wish))
        .filter(({ counts }) => keepsMade(project, tryout.counts, counts))
        .sort(byHolding)
    : []
  return first ? held(patchBlanket(project, layoutOf(first.counts)), wish) : project
}

/** The project with a panel of the wished size, in whole mm or eighths of an inch; a circle stays one. */
export function panelResized(project: Project, plan: Plan, wish: Wish): Project {
  const shape = appliqueOf(project)?.panel?.shape ?? 'rectangle'
  const step = project.units === 'imperial' ? MM_PER_INCH / 8 : 1
  const { least, most } = PANEL.width
  const rounded = (mm: number) => Math.min(most, Math.max(least, Math.round(mm / step) * step))
  if (shape === 'circle') {
    const wider = wish.width - plan.size.width
    const higher = wish.height - plan.size.height
    const more = Math.abs(wider) > Math.abs(higher) ? wider : higher
    return patchPanel(project, { diameter: rounded(plan.size.width + more) })
  }
  if (shape === 'outline') return project
  const change = {
    ...(wish.width !== plan.size.width && { width: rounded(wish.width) }),
    ...(wish.height !== plan.size.height && { height: rounded(wish.height) }),
  }
  return Object.keys(change).length > 0 ? patchPanel(project, change) : project
}
