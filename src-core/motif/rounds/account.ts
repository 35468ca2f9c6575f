/** A motif in written rounds (M4–M17) → its account: radii, outline, anchors, stitches, yarn, how it lies. */
import { workingSign } from '../anchors'
import { measuredOrAimed } from '../measured'
import type { Finding } from '../../../shared-types/finding'
import type { MeasuredRound, MotifAccount, Point } from '../../../shared-types/plan'
import type { Hand, RoundShape, RoundsMotif, Terms } from '../../../shared-types/project'
import type { WorkedRound } from '../../notation/worked'
import { finding } from '../../findings/finding'
import type { Outline } from '../../geometry/points'
import { remembered } from '../../memo'
import { resolveGauge, scaleGauge, sizeSpread } from '../../stitches/gauge'
import type { ResolvedGauge } from '../../stitches/gauge'
import { formatNumber } from '../../units/format'
import type { Millimetres, Radians } from '../../units/quantity'
import { MEASURED_SPREAD } from '../constants'
import { statedSpread } from '../stated'
import { checkRounds, flatnessOf, lieOf } from './checks'
import { MOST_SYMBOLS } from './constants'
import { drawingGauge } from './drawing'
import type { LocatedElement, LocatedRound } from './ground'
import { figureAccount } from './figure-account'
import { halfOf, isHalf } from './half'
import { heartAccount, heartOf } from './heart'
import { layersOf } from './layers'
import { leafAccount } from './leaf-account'
import { locateRound } from './locate'
import { firstPiece } from './pieces'
import { farthest } from './profile'
import { readMotif, slotOf } from './read-motif'
import type { ReadMotif } from './read-motif'
import { scaleRound } from './scale'
import { calibrateSize, shapeOf, shapesFor } from './shape'
import { spacesOf } from './spaces'
import { slotWork, tallest } from './stitch-counts'
import { firstWrong, ratioBefore, saidBefore, sizedBefore, wrongRounds } from './wrong'
import { usableRounds } from './usable'

export interface RoundsContext {
  readonly hand: Hand
  readonly terms: Terms
  readonly growth: number
}

export interface RoundsAccount {
  readonly account: MotifAccount | null
  readonly findings: readonly Finding[]
  /** The gauge as the motif's own measures calibrate it. */
  readonly gauge?: ResolvedGauge
  /** Where every stitch lies; empty where nothing could be located. */
  readonly located: readonly LocatedRound[]
  /** The same as a chart draws it, with room for every symbol; located when it is asked for, once. Null where there is no chart. */
  readonly drawing: () => Drawing | null
  /** What the located rounds stand on; null where there is no chart of them. */
  readonly beginning: Beginning | null
  /** The rounds as they were read. */
  readonly read: ReadMotif
}

/** Rounds in the places of their chart. */
export interface Drawing {
  readonly located: readonly LocatedRound[]
  readonly beginning: Beginning
  /** Numbers of rounds whose stitches do not work out, in their order: nobody knows where these lie, and none is drawn. */
  readonly left: readonly number[]
}

/** A drawing without the rounds that do not work out; null where nothing is left of it. */
function withoutWrong(drawing: Drawing | null, findings: readonly Finding[]): Drawing | null {
  const wrong = wrongRounds(findings)
  if (!drawing || wrong.size === 0) return drawing
  const located = drawing.located.filter(({ round }) => !wrong.has(round.number))
  const left = drawing.located.flatMap(({ round }) => (wrong.has(round.number) ? round.number : []))
  return located.length > 0 ? { ...drawing, located, left } : null
}

/** What a motif begins with, as the chart draws it. */
export interface Beginning {
  /** w of the located rounds, in mm. */
  readonly stitchWidth: Millimetres
  /** Chains of the ring; 0 for an adjustable one. */
  readonly ringChains: number
  /** The ring was bought, and is worked over. */
  readonly isBought?: true
  /** Middles of the chains of a foundation chain, in the order made; none of a ring. */
  readonly stem: readonly Point[]
  /** What the located rounds are turned by, clockwise, to lie as the outline does: a tip or corner 1 in its place. */
  readonly turn: Radians
}

const remember = remembered(
  (motif: RoundsMotif, ...[hand, terms, growth]: readonly [Hand, Terms, number]): RoundsAccount =>
    makeAccount(motif, { hand, terms, growth }),
)

/**
 * The account of a motif in written rounds; null with findings where the rounds give no outline. Its gauge is the one
 * that it is worked in. Rounds are read and located once for as long as nothing of it changes.
 */
export const roundsAccount = (motif: RoundsMotif, { hand, terms, growth }: RoundsContext): RoundsAccount =>
  remember(motif, hand, terms, growth)

function makeAccount(motif: RoundsMotif, context: RoundsContext): RoundsAccount {
  const told = accountFor(motif, context)
  const symbols = told.located.reduce(
    (sum, { elements, asides }) => sum + symbolsOf(elements) + asides.length,
    0,
  )
  if (symbols <= MOST_SYMBOLS) return told
  const values = { symbols: formatNumber(symbols), most: formatNumber(MOST_SYMBOLS) }
  const none = finding('motif/too-large-for-chart', `motif ${motif.id}`, values, { motif: motif.id })
  return { ...told, drawing: () => null, beginning: null, findings: [...told.findings, none] }
}

/** A chart shows every chain by itself. */
const symbolsOf = (elements: readonly LocatedElement[]): number =>
  elements.reduce((sum, { chain }) => sum + Math.max(1, chain.length), 0)

function accountFor(given: RoundsMotif, context: RoundsContext): RoundsAccount {
  if (given.shape) return accountAsSaid(given, given.shape, context)
  return accountOf(given, context, null)
}

/** Whether not a word of a motif's rounds is written yet. */
export const isBlank = ({ rounds = [] }: RoundsMotif): boolean =>
  rounds.every(({ work }) => work.trim() === '')

/** The account of a motif that is said to be of a shape; as its rounds say, where they cannot make that. */
function accountAsSaid(given: RoundsMotif, said: RoundShape, context: RoundsContext): RoundsAccount {
  const { shape: _, ...plain } = given
  const natural = accountOf(plain, context, null)
  if (!natural.account || natural.account.shapes?.includes(said)) return accountOf(given, context, natural)
  const [where, target] = [`motif ${given.id}`, { motif: given.id }]
  const values = { what: SAID_WORDS[said] }
  const findings = [...natural.findings, finding('motif/other-shape', where, values, target)]
  return { ...natural, account: { ...natural.account, findings }, findings }
}

const SAID_WORDS: Readonly<Record<RoundShape, string>> = {
  petals: 'a flower with petals',
  round: 'a circle',
  straight: 'a motif with straight sides',
}

/** `natural`: the account by the rounds alone, where the motif is said to be of another shape. */
function accountOf(given: RoundsMotif, context: RoundsContext, natural: RoundsAccount | null): RoundsAccount {
  const { motif } = usableRounds(given)
  // Read as it was given: what is refused of it is told.
  const whole = readMotif(given, context.terms)
  const { read, others } = firstPiece(whole)
  const where = `motif ${motif.id}`
  if (read.worked.length === 0) {
    const none = finding('motif/no-rounds', where, {}, { motif: motif.id })
    return {
      account: null,
      // Before a word is written there is no text to find fault with.
      findings: isBlank(given) ? [none] : [...read.findings, none],
      located: [],
      drawing: () => null,
      beginning: null,
      read: whole,
    }
  }
  const gauge = calibrated(motif, context, read)
  const told =
    read.stemChains > 0
      ? leafAccount(motif, context, read, gauge)
      : plainAccount(motif, context, read, gauge, natural)
  const apart = others.map((round) => otherPiece(motif, whole, round))
  const findings = [...told.findings, ...apart]
  let drawing: Drawing | null | undefined
  return {
    ...told,
    account: told.account && { ...told.account, findings },
    findings,
    drawing: () => (drawing === undefined ? (drawing = withoutWrong(told.drawing(), findings)) : drawing),
    read: whole,
  }
}

/** A piece that the motif's rounds go on to make after the motif itself. */
function otherPiece(motif: RoundsMotif, read: ReadMotif, round: WorkedRound): Finding {
  const entry = read.entries[read.worked.indexOf(round)]
  const target = { motif: motif.id, round: round.number, ...(entry !== undefined && { entry }) }
  const values = { round: round.part ? `Rnd ${round.number} of ${round.part}` : `Rnd ${round.number}` }
  return finding('motif/other-piece', `motif ${motif.id}, round ${round.number}`, values, target)
}

/** The account of a motif that begins on a ring. */
function plainAccount(
  motif: RoundsMotif,
  context: RoundsContext,
  read: ReadMotif,
  gauge: ResolvedGauge,
  natural: RoundsAccount | null,
): RoundsAccount {
  const located = locateAll(read, gauge, motif, motif.shape)
  const shape = shapeOf(located, gauge, context.hand, motif.shape)
  if (!motif.shape && isHalf(located)) {
    const doubled = { ...gauge, width: 2 * gauge.width }
    const { outline, width, height, form } = halfOf(locateAll(read, doubled, null, undefined))
    const outlineAt = (own: { readonly length: Millimetres; readonly width: Millimetres }): Outline =>
      outline.map(({ x, y }) => ({ x: (x * own.width) / width, y: (y * own.length) / height }))
    const lengths = located.map((round) => (height * round.radius) / located.at(-1)!.radius)
    const size = { length: height, width }
    const made = figureAccount(motif, context, read, gauge, { form, size, outlineAt, lengths, findings: [] })
    const beginning = beginningOf(read, gauge, shape.turn)
    const draw = drawingOf(motif, context, read, gauge, located, beginning, false)
    return { ...made, gauge, located, drawing: draw, beginning, read }
  }
  const first = firstWrong(read.findings)
  const checked = saidBefore(checkRounds(motif, read, located, gauge, context.terms), first)
  const heart = motif.shape ? null : heartOf(shape)
  if (heart) {
    const { turn, ...made } = heartAccount(heart, shape, motif, context, read, gauge, located, checked)
    const beginning = beginningOf(read, gauge, turn)
    const draw = drawingOf(motif, context, read, gauge, located, beginning, true)
    return { ...made, gauge, located, drawing: draw, beginning, read }
  }
  const shapes = natural?.account?.shapes ?? shapesFor(located, shape)
  const common = tallest(read.worked)
  const scaled = calibrateSize(motif, shape, context.growth, gauge, common, context.hand)
  const spread =
    scaled.ratio === null
      ? sizeSpread(gauge, common)
      : scaled.isStated
        ? statedSpread(gauge, common)
        : MEASURED_SPREAD
  const ratio = ratioBefore(scaled.ratio, first, gauge, common)
  const own = ratio === null ? gauge : scaleGauge(gauge, ratio)
  const work = slotWork(read.worked, (round) => slotOf(motif, read, round), own, {
    ring: read.ringChains,
  })
  const isMeasured = (motif.rounds ?? []).some(({ across = 0 }) => across > 0)
  const rounds = sizedBefore(measuredRounds(located, ratio ?? 1, scaled.shape, isMeasured), first)
  const findings = [
    ...read.findings,
    ...checked,
    ...(first === null ? scaled.findings : []).map((entry) => ({
      ...entry,
      where: `motif ${motif.id}`,
      target: { motif: motif.id },
    })),
  ]
  const spaces = scaled.shape.shape === 'round' ? spacesOf(located, context.hand) : null
  const account: MotifAccount = {
    id: motif.id,
    name: motif.name ?? motif.id,
    shape: scaled.shape.shape,
    ...(shapes.length > 1 && { shapes }),
    petals: scaled.shape.petals,
    overTips: scaled.shape.overTips,
    overValleys: scaled.shape.overValleys,
    ...(motif.measured?.ruler && { ruler: motif.measured.ruler }),
    range: { low: scaled.shape.overTips * (1 - spread), high: scaled.shape.overTips * (1 + spread) },
    provenance:
      scaled.ratio === null
        ? gauge.provenance
        : scaled.isStated
          ? 'stated'
          : measuredOrAimed(motif, context.terms),
    rounds,
    ...work,
    outline: scaled.shape.outline,
    anchors: scaled.shape.anchors,
    layers: layersOf(motif, read, located, scaled.shape, context.hand),
    ...sideOf(located, scaled.shape),
    ...(spaces && { spaces }),
    findings,
  }
  const beginning = beginningOf(read, gauge, shape.turn)
  const draw = drawingOf(motif, context, read, gauge, located, beginning, false)
  return { account, findings, gauge: own, located, drawing: draw, beginning, read }
}

/**
 * The rounds with room for every symbol, located when they are asked for; turned as their own shape says, but a heart
 * (`isHeart`), whose humps may be too much alike there, as it is by size.
 */
function drawingOf(
  motif: RoundsMotif,
  { hand }: RoundsContext,
  read: ReadMotif,
  gauge: ResolvedGauge,
  located: readonly LocatedRound[],
  beginning: Beginning,
  isHeart: boolean,
): () => Drawing {
  let drawing: Drawing | null = null
  const draw = (): Drawing => {
    const roomy = locateAll(read, drawingGauge(gauge, located), null, motif.shape)
    const shape = shapeOf(roomy, gauge, hand, motif.shape)
    const heart = heartOf(shape)
    const own = shape.turn + workingSign(hand) * (heart?.turn ?? 0)
    const turn = isHeart && !heart ? beginning.turn : own
    return { located: roomy, beginning: { ...beginning, turn }, left: [] }
  }
  return () => (drawing ??= draw())
}

const beginningOf = (read: ReadMotif, { width }: ResolvedGauge, turn: Radians): Beginning => ({
  ...{ stitchWidth: width, ringChains: read.ringChains, stem: [], turn },
  ...(read.ringAcross !== null && { isBought: true }),
})

/** What the last round counts along each side; nothing where it has no sides, or these differ. */
function sideOf(
  located: readonly LocatedRound[],
  { shape, petals, anchors }: Pick<MotifAccount, 'shape' | 'petals' | 'anchors'>,
): Pick<MotifAccount, 'side'> {
  const last = located.at(-1)
  const [one, two] = anchors.filter(({ kind }) => kind === 'corner').sort((a, b) => a.petal - b.petal)
  if (shape !== 'straight' || !last?.side || last.corners !== petals || !one || !two) return {}
  return { side: { ...last.side, length: Math.hypot(one.x - two.x, one.y - two.y) } }
}

/**
 * M3: "rounds 1–2 measure 63.5 mm" scales a rule-of-thumb gauge until those rounds come out right: from side to side
 * where they have straight sides, as patterns give it (common practice, no source), else at their widest.
 */
function calibrated(motif: RoundsMotif, context: RoundsContext, read: ReadMotif): ResolvedGauge {
  const plain = resolveGauge(motif.gauge, context.terms)
  const known = plain.roundsMeasure
  if (!known) return plain
  let gauge = scaleGauge(plain, 1)
  // Ring and loops do not grow in step with the stitches: a few rounds of scaling settle it.
  for (let i = 0; i < 6; i++) {
    const located = locateAll(read, gauge, null, motif.shape)
    const first = located.filter((entry) => entry.round.number <= known.rounds)
    const measured = first.length > 0 ? first : located
    const said = measured.length === located.length ? motif.shape : undefined
    const sides = read.stemChains > 0 ? null : shapeOf(measured, gauge, context.hand, said)
    const across = sides?.shape === 'straight' ? sides.overValleys : 2 * farthest(measured)
    if (!(across > 0)) return gauge
    gauge = scaleGauge(gauge, known.across / across)
  }
  return gauge
}

function locateAll(
  read: ReadMotif,
  gauge: ResolvedGauge,
  motif: RoundsMotif | null,
  said: RoundShape | undefined,
): LocatedRound[] {
  const located: LocatedRound[] = []
  const ring = { chains: read.ringChains, across: read.ringAcross }
  let own = gauge
  read.worked.forEach((round, i) => {
    located.push(locateRound(round, located, own, ring, said))
    const across = motif?.rounds?.[read.entries[i]!]?.across
    const lastOfEntry = read.entries[i + 1] !== read.entries[i]
    if (across && across > 0 && lastOfEntry) {
      const reach = farthest(located)
      if (reach > 0) {
        const factor = across / 2 / reach
        located.forEach((entry, k) => (located[k] = scaleRound(entry, factor)))
        own = scaleGauge(own, factor)
      }
    }
  })
  return located
}

/**
 * How far each round reaches. A straight corner reaches farther than the stitches drawn in it, by which the motif is as
 * large as it is: so do the corners of rounds within it, where nobody measured one.
 */
function measuredRounds(
  located: readonly LocatedRound[],
  ratio: number,
  { shape, overTips }: Pick<MotifAccount, 'shape' | 'overTips'>,
  isMeasured: boolean,
): MeasuredRound[] {
  const last = located.at(-1)
  const isStraight = shape === 'straight' && !isMeasured && last !== undefined && last.corners > 0
  const sharper = isStraight ? overTips / 2 / (farthest([last]) * ratio) : 1
  return located.map((entry) => ({
    number: entry.round.number,
    outerRadius: farthest([entry]) * ratio * (entry.corners > 0 ? sharper : 1),
    stitches: entry.round.stitches,
    flatness: flatnessOf(entry),
    lies: lieOf(entry),
  }))
}
