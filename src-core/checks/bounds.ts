/** Numbers that lie outside the bounds of their field, where no stage reads them with a finding of its own. */
import type { Finding, FindingTarget } from '../../shared-types/finding'
import type { Project, StitchGauge, Terms } from '../../shared-types/project'
import { FIELDS } from '../fields/all'
import { isWithin, placesOf } from '../fields/field'
import type { Field } from '../fields/field'
import { finding } from '../findings/finding'
import { quantityValues } from '../findings/quantities'
import { DEFAULTS } from '../settled'
import { inSpelling } from '../stitches/spelling'
import { formatNumber } from '../units/format'
import { resolveGauge } from '../stitches/gauge'
import { gaugeFindings, otherHookFindings } from '../stitches/gauge-findings'

/** Places behind the point that a wrong count is told with. */
const MOST_PLACES = 6

/** Whether a count is no whole number. */
const isPart = (value: number, { kind }: Field): boolean => kind === 'count' && !Number.isInteger(value)

const CHECKED = FIELDS.filter(({ code, least, most }) => !code && (least !== undefined || most !== undefined))

/** A finding for each of them, and for what of a gauge cannot be used; places are paths into the file. */
export const checkBounds = (project: Project): Finding[] => [...fieldBounds(project), ...gauges(project)]

function gauges({ gauge, motifs = [], terms = 'US' }: Project): Finding[] {
  const own = motifs.flatMap((motif, i) =>
    motif.gauge === gauge ? [] : told(motif.gauge, terms, `motifs[${i}].gauge`, { motif: motif.id }),
  )
  return [...told(gauge, terms, 'gauge'), ...own]
}

const told = (
  gauge: StitchGauge | undefined,
  terms: Terms,
  where: string,
  target?: FindingTarget,
): Finding[] => [
  ...gaugeFindings(resolveGauge(gauge, terms), where, target),
  ...otherHookFindings(gauge, where, target),
]

const fieldBounds = (project: Project): Finding[] =>
  CHECKED.flatMap((field) =>
    placesOf(project, field)
      .filter(({ value }) => !isWithin(value, field))
      .map(({ where, at, value }) =>
        finding(
          isPart(value, field) ? 'file/not-whole' : 'file/out-of-bounds',
          where,
          {
            ...{ what: inSpelling(field.what ?? field.label, project.terms ?? DEFAULTS.terms) },
            ...quantityValues(value, field),
            // A count is written without what it has beyond whole ones.
            ...(isPart(value, field) && { received: formatNumber(value, MOST_PLACES) }),
          },
          targetOf(project, field, at[0]),
        ),
      ),
  )

function targetOf(project: Project, { path }: Field, entry: unknown): FindingTarget | undefined {
  if (typeof entry !== 'number') return undefined
  const motif = path.startsWith('motifs[]') ? project.motifs?.[entry]?.id : undefined
  return motif === undefined ? undefined : { motif }
}
