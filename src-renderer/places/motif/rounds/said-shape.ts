/** What a motif in written rounds is said to be, and the outline of one that is shown by measures. Measures in mm. */
import type { MotifAccount } from '../../../../shared-types/plan'
import type {
  MeasuredOutline,
  MeasuredSizes,
  Project,
  RoundShape,
  RoundsMotif,
} from '../../../../shared-types/project'
import { accountOf } from '../../../../src-core/accounts'
import { CIRCLES, ruling } from '../../../../src-core/motif/ruling'
import { findMotif, setOutline, updateMotif } from '../../../state/edits/motif'
import { toMeasured, toRounds } from './basis'

type Shape = MotifAccount['shape']

const PARTS = ['tips', 'dips'] as const

/** What was measured by one shape, as another shape is measured: what lay across the tips lies across the tips. */
function asMeasuredBy(measured: MeasuredSizes, from: Shape, to: Shape): MeasuredSizes {
  const sizes: MeasuredSizes = { ...measured }
  const given = PARTS.map((circle) => ruling(measured, from, circle))
  const values = given.map((key) => key && measured[key])
  for (const key of given) if (key) delete sizes[key]
  PARTS.forEach((circle, i) => {
    const key = CIRCLES[to][circle]
    // A circle has one measure, whichever was taken.
    const value = to === 'round' ? (values[0] ?? values[1]) : values[i]
    if (key && value !== undefined) sizes[key] = value
  })
  return sizes
}

const shapeOf = (project: Project, id: string): Shape | undefined => {
  const motif = findMotif(project, id)
  return motif && accountOf(project, motif).account?.shape
}

/** Says what a motif in written rounds is; undefined: as its rounds say. What was measured of it stays. */
export function setShape(project: Project, id: string, shape: RoundShape | undefined): Project {
  const from = shapeOf(project, id)
  const said = updateMotif(project, id, (motif) => {
    if (motif.kind !== 'rounds') return motif
    const { shape: _, ...plain } = motif
    return { ...plain, ...(shape && { shape }) } as RoundsMotif
  })
  const to = shapeOf(said, id)
  if (!from || !to || from === to) return said
  return updateMotif(said, id, (motif) =>
    motif.kind === 'rounds' && motif.measured
      ? { ...motif, measured: asMeasuredBy(motif.measured, from, to) }
      : motif,
  )
}

const SHAPES: Partial<Readonly<Record<MeasuredOutline, RoundShape>>> = {
  ...{ petals: 'petals', round: 'round' },
  ...{ square: 'straight', hexagon: 'straight', octagon: 'straight' },
}

/**
 * Makes a measured motif another kind. Where its sizes stand as written rounds give them, they are those of the rounds
 * worked to that kind, if they can be.
 */
export function chooseOutline(project: Project, id: string, outline: MeasuredOutline): Project {
  const motif = findMotif(project, id)
  if (motif?.kind !== 'measured' || motif.outline === outline) return project
  if (motif.fromRounds) {
    const said = setShape(toRounds(project, id), id, SHAPES[outline])
    const written = findMotif(said, id)
    const account = written && accountOf(said, written).account
    const next = account ? toMeasured(said, id, account) : project
    const made = findMotif(next, id)
    if (made?.kind === 'measured' && made.outline === outline) return next
  }
  return setOutline(project, id, outline)
}
