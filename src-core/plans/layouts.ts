/**
 * The layout of a project as the kind that it is: whoever needs the fields of one kind asks here, and nobody compares
 * `kind` for it. This knows types alone, so that every room may ask.
 */
import type { Plan } from '../../shared-types/plan'
import type { BlanketLayout, Layout, Project } from '../../shared-types/project'

export type LayoutKind = Layout['kind']

type LaidOut = { readonly layout?: Layout | undefined }
type LaidAs<Made extends LaidOut, Kind extends LayoutKind> = Extract<Made['layout'], { kind: Kind }>

const laidAs =
  <Kind extends LayoutKind>(kind: Kind) =>
  <Made extends LaidOut>({ layout }: Made): LaidAs<Made, Kind> | null =>
    layout?.kind === kind ? (layout as LaidAs<Made, Kind>) : null

/** What a project is made into; one without a layout is a blanket. */
export const layoutKindOf = ({ layout }: { layout?: Pick<Layout, 'kind'> | undefined }): LayoutKind =>
  layout?.kind ?? 'blanket'

/** The garland of a project; null where it is made into something else. */
export const garlandOf = laidAs('garland')

/** The appliqué of a project; null where it is made into something else. */
export const appliqueOf = laidAs('applique')

/** The blanket that a project lays out; null without a layout and where it is made into something else. */
export const laidBlanketOf = laidAs('blanket')

/** The blanket of a project, null where it is made into something else; one without a layout gets one of its first motif. */
export const blanketOf = (project: Pick<Project, 'layout' | 'motifs'>): BlanketLayout | null =>
  project.layout ? laidBlanketOf(project) : { kind: 'blanket', motif: project.motifs?.[0]?.id }

/** An answer for each kind of plan, from a plan of that kind; a kind without one does not compile. */
type Answers<Answer> = {
  readonly [Kind in Plan['kind']]: (plan: Extract<Plan, { kind: Kind }>) => Answer
}

/** What holds of a plan by its kind. */
export const byKind = <Answer>(plan: Plan, answers: Answers<Answer>): Answer =>
  (answers[plan.kind] as (plan: Plan) => Answer)(plan)
