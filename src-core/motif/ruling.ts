/**
 * By which measures a motif is known: those that its fields show. A measure of another shape stays in the file for as
 * long as that shape may come back, and rules nothing beside one of the motif's own.
 */
import type { MotifAccount } from '../../shared-types/plan'
import type { MeasuredOutline, MeasuredSizes, Motif } from '../../shared-types/project'

type Shape = MotifAccount['shape']

/** The measures that a ruler may show of a motif. */
export type MeasureName =
  'overTips' | 'overValleys' | 'across' | 'sideToSide' | 'pointToPoint' | 'length' | 'width'

/** The measures that a kind of outline is known by, the leading one first. */
export const MEASURES: Readonly<Record<MeasuredOutline, readonly MeasureName[]>> = {
  petals: ['overTips', 'overValleys'],
  round: ['across'],
  square: ['sideToSide', 'pointToPoint'],
  hexagon: ['sideToSide', 'pointToPoint'],
  octagon: ['sideToSide', 'pointToPoint'],
  leaf: ['length', 'width'],
  traced: ['overTips', 'overValleys'],
}

export type Circle = 'tips' | 'dips'

/** By which measures the circles through the tips (corners) and through the dips (sides) of written rounds are known. */
export const CIRCLES: Readonly<Record<Shape, Readonly<Partial<Record<Circle, MeasureName>>>>> = {
  petals: { tips: 'overTips', dips: 'overValleys' },
  straight: { tips: 'pointToPoint', dips: 'sideToSide' },
  round: { tips: 'across' },
  leaf: { tips: 'length', dips: 'width' },
}

/** Measures of other shapes that tell a size where none of the motif's own does, the nearest first. */
const OTHERS: Readonly<Record<Shape, Readonly<Record<Circle, readonly MeasureName[]>>>> = {
  petals: { tips: ['pointToPoint'], dips: ['sideToSide'] },
  straight: { tips: ['overTips'], dips: ['overValleys'] },
  round: { tips: ['overTips', 'pointToPoint', 'overValleys', 'sideToSide'], dips: [] },
  leaf: { tips: ['overTips'], dips: ['overValleys'] },
}

const isGiven = (sizes: MeasuredSizes, name: MeasureName): boolean => (sizes[name] ?? 0) > 0

/** Which measure tells a circle of written rounds of a shape; undefined: none, and the rounds do. */
export function ruling(sizes: MeasuredSizes, shape: Shape, circle: Circle): MeasureName | undefined {
  const own = Object.values(CIRCLES[shape])
  if (own.some((name) => isGiven(sizes, name))) {
    const name = CIRCLES[shape][circle]
    return name && isGiven(sizes, name) ? name : undefined
  }
  return OTHERS[shape][circle].find((name) => isGiven(sizes, name))
}

/** Every measure that tells a circle of written rounds, whatever shape they are taken for. */
export function alike(name: MeasureName): readonly MeasureName[] {
  const circle: Circle = ['overValleys', 'sideToSide', 'width'].includes(name) ? 'dips' : 'tips'
  const whole = name === 'across' ? OTHERS.round.tips : []
  return [...new Set([...Object.values(CIRCLES).flatMap((each) => each[circle] ?? []), ...whole])]
}

/** What was measured by whatever shape, as written rounds of a shape are measured: what lay across the tips lies across the tips. */
export function measuredAs<Sizes extends MeasuredSizes>(sizes: Sizes, shape: Shape): Sizes {
  const own = Object.values(CIRCLES[shape])
  if (own.some((name) => isGiven(sizes, name))) return sizes
  const next: Sizes = { ...sizes }
  for (const [circle, name] of Object.entries(CIRCLES[shape]) as [Circle, MeasureName][]) {
    const other =
      ruling(sizes, shape, circle) ??
      alike(name).find((each) => isGiven(sizes, each) && next[each] !== undefined)
    if (other === undefined) continue
    const value = sizes[other]
    delete next[other]
    next[name] = value as Sizes[MeasureName]
  }
  return next
}

/** What stands in the field of a measure of written rounds: the measure that rules there. */
export function shownIn(sizes: MeasuredSizes, shape: Shape, name: MeasureName): MeasureName {
  const circle = (Object.entries(CIRCLES[shape]) as [Circle, MeasureName][]).find(
    ([, own]) => own === name,
  )?.[0]
  return (circle && ruling(sizes, shape, circle)) ?? name
}

/** The measure that leads: the one that a motif is resized by. Null where nothing was measured. */
export function leading(motif: Motif, shape: Shape | undefined): MeasureName | null {
  if (motif.kind === 'measured')
    return MEASURES[motif.outline].find((name) => motif[name] !== undefined) ?? null
  const sizes = motif.measured ?? {}
  const by = (circle: Circle) => (shape ? ruling(sizes, shape, circle) : undefined)
  return (shape === 'straight' ? (by('dips') ?? by('tips')) : (by('tips') ?? by('dips'))) ?? null
}
