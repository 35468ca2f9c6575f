/** A picture of a motif on a sheet of known size → its measures. Pixels in, millimetres out; nothing else is asked. */
import type { Finding } from '../../shared-types/finding'
import { findingOf, said } from '../findings/finding'
import type { Millimetres } from '../units/quantity'
import { coloursOf } from './colours'
import { standing } from './comb'
import type { PhotoColour } from './colours'
import { contourOf, onPicture } from './contour'
import { dipOfAll } from './dips'
import { smaller } from './homography'
import type { Corners } from './homography'
import { evenOutline } from './even'
import { kindOf } from './kind'
import type { PhotoKind } from './kind'
import { findFirst } from './first'
import { evenLight } from './light'
import type { Evened } from './light'
import { inTurns, lengthsBy, petalled, spreadWithin } from './lobes'
import type { Petalled } from './lobes'
import { boxOf, findAgain, isHalfSeen, openAlong, threadedThrough } from './motif-mask'
import type { FoundMotif } from './motif-mask'
import { notched } from './notches'
import type { Notched } from './notches'
import { halved, reduced } from './picture'
import type { Picture, Spot } from './picture'
import { rectify, rectifyPart } from './rectify'
import type { Plane } from './rectify'
import { findScale } from './scale'
import type { Asked, Tell } from './scale'
import { blurRound } from './sheet-edges'
import type { SheetChoice } from './sheet-sizes'
import { findSymmetry, ORDER } from './symmetry'
import type { Symmetry } from './symmetry'
import { withoutTails } from './thread-tails'
import { hollowsOf, meanOf, openDips, tipsOf } from './tips'
import { valleysOf } from './valleys'

/** Where a picture stops being good enough to be sure. */
const DOUBT = {
  /** Pixels for a millimetre. */
  density: 1.5,
  /** Standard deviation of the blur as a share of the motif's radius. */
  blur: 0.028,
  /** Multiples of the paper's own straying by which the motif stands out. */
  contrast: 9,
  /** Share of the outline's unevenness that its repeat explains, and the most of an order that is no multiple of it. */
  repeat: 0.55,
  rival: 0.6,
  /** A repeat that stands out this clearly (chance reaches 10) is one, however uneven the rest. */
  clear: 25,
  /** Unevenness of a round outline, rms, from which it may be shells: round ones of the tests' renderers come to half. */
  round: 0.006,
  /** Uneven petals look like fewer: the most of a multiple of the order, where that stands out by this share of it. */
  finer: 0.45,
  standing: 0.3,
  /**
   * The same of an outline that is nearly round, and that no order explains by far: its petals may make pairs by chance.
   * Under `within` none are told apart within a repeat: stitches make as much.
   */
  shallow: { depth: 0.02, repeat: 0.75, finer: 0.2, within: 0.01 },
} as const

/** What measures from a good picture may be off by, and what each doubt adds, as shares. */
const SPREAD = 0.02
const DOUBT_SPREAD = 0.03
/** What dips between petals may be off by besides, and where they are not sure. */
const DIP_SPREAD = { sure: 0.03, unsure: 0.08 }

export interface PhotoMeasures {
  readonly kind: PhotoKind
  /** Petals or sides; 0 where the motif is round or has no repeat. */
  readonly petals: number
  /** How often the outline repeats: fewer times than there are petals where kinds of them take turns. */
  readonly symmetry: number
  /** Diameters of the circles through tips and dips (corners and sides of straight-sided motifs). */
  readonly overTips: Millimetres
  readonly overValleys: Millimetres
  /** How much the tips differ, rms as a share of the mean. */
  readonly unevenness: number
  /** The line round the motif about its middle: as it lies, and evened out with a tip at 12 o'clock. */
  readonly outline: readonly (readonly [Millimetres, Millimetres])[]
  readonly evenOutline: readonly (readonly [Millimetres, Millimetres])[]
  /** Direction of the first tip in the picture, in degrees clockwise from the top of the sheet. */
  readonly turn: number
  /** Its middle on the sheet, from the sheet's top left corner. */
  readonly middle: Spot
  readonly colours: readonly PhotoColour[]
  /** Between what the size over the tips lies. */
  readonly range: SizeRange
  /** The same of the dips, which are all the less sure where petals hide them. */
  readonly rangeOverValleys: SizeRange
}

interface SizeRange {
  readonly low: Millimetres
  readonly high: Millimetres
}

export interface PhotoAnswer {
  /** Null where the picture cannot be measured; the findings say why. */
  readonly measures: PhotoMeasures | null
  /** Whether there is no doubt: no error and no warning. */
  readonly sure: boolean
  /** What gave the millimetres: another sheet than was asked for where only that has its shape. */
  readonly sheet: SheetChoice
  /** The sheet's corners in the picture, where they were found or given; by a ruler, those of the whole picture. */
  readonly corners: Corners | null
  readonly findings: readonly Finding[]
}

export interface PhotoOptions extends Asked {
  /** Told as it goes on: what is at work, and the share that is done. */
  readonly progress?: ((stage: PhotoStage, share: number) => void) | undefined
}

export type PhotoStage = 'sheet' | 'light' | 'motif' | 'outline' | 'dips'

/** Pixels in which sheet and motif are found; room round the motif in which it is measured, in mm. */
const MOST_FOUND_IN = 1_300_000
const ROOM: Millimetres = 6

/** Measures the motif in a picture. */
export function measurePhoto(picture: Picture, { progress, ...asked }: PhotoOptions): PhotoAnswer {
  const findings: Finding[] = []
  const tell: Tell = (code, ...values) => {
    findings.push(findingOf(said(code, ...values), 'photo'))
  }
  const half = halved(picture, MOST_FOUND_IN)
  const small = reduced(half ?? picture, MOST_FOUND_IN)
  progress?.('sheet', 0.1)
  const { name, corners: stands, plane: sheet } = findScale(picture, small, asked, tell)
  const answer = (measures: PhotoMeasures | null): PhotoAnswer => ({
    measures,
    sure: measures !== null && findings.every(({ severity }) => severity === 'note'),
    sheet: name,
    corners: stands,
    findings,
  })
  if (!sheet) return answer(null)
  const { size, corners } = sheet

  progress?.('light', 0.3)
  const coarse = rectify(small, smaller(corners, small), size)
  progress?.('motif', 0.5)
  const { first, light } = findFirst(small, coarse, size, asked)
  if (first?.overEdge) {
    tell('photo/motif-over-edge')
    return answer(null)
  }
  // Measured only where the motif lies, in as many pixels as its plane shows.
  const plane = first && rectifyPart(picture, half, corners, size, boxOf(first.mask, coarse, ROOM))
  const evened = plane && evenLight(plane, light)
  const seen = first && evened && findAgain(plane, evened, first, coarse)
  progress?.('outline', 0.7)
  if (!seen) {
    tell(size.whole ? 'photo/no-motif-by-ruler' : 'photo/no-motif')
    return answer(null)
  }
  const tails = withoutTails(plane, seen)
  const found = tails?.found ?? seen
  if (plane.density < DOUBT.density) tell('photo/few-pixels')
  const across = sheet.blur ?? blurRound(picture, onPicture(found.mask, plane, size, corners))
  const blur = Math.max(0.5, (across / plane.density) * plane.scale)
  const asSeen = outlined(plane, evened, found, blur)
  // Chains as thin as a pixel leave gaps in the line: where it shows no repeat, they are looked for.
  const threaded = asSeen.symmetry.order === 0 ? threadedThrough(plane, seen) : null
  const closed = threaded && outlined(plane, evened, threaded, blur)
  const { outline, symmetry: counted, mask } = closed?.symmetry.stands ? closed : asSeen
  if (tails && mask === found.mask) tell('photo/thread-tails', { count: tails.count })
  if (blur > DOUBT.blur * counted.mean) tell('photo/blurred')
  if (found.contrast < DOUBT.contrast || found.likePaper || isHalfSeen(plane, { ...found, mask }))
    tell('photo/like-paper')
  const kind = kindOf(counted, mask)
  const symmetry = kind === 'petals' ? inTurns(counted, blur) : counted
  const order = kind === 'round' || kind === 'other' ? 0 : symmetry.order
  if (kind === 'other') tell('photo/no-repeat')
  else if (kind === 'round' && (symmetry.order > 0 || symmetry.rest > DOUBT.round)) tell('photo/nearly-round')
  else if (order > 0 && (mayBeOthers(symmetry) || symmetry.repeat > counted.repeat))
    tell('photo/petals-unsure', { petals: order })

  const tips = order > 0 ? tipsOf(symmetry, blur) : []
  const reached = tips.map(({ far }) => far)
  const lengths = lengthsBy(reached, order > 0 ? order / symmetry.repeat : 0)
  let tip = order > 0 ? Math.max(...lengths) : symmetry.mean
  if (kind === 'petals' && lengths.length > 1) tell('photo/petals-take-turns', { petals: order })
  let dip = symmetry.mean
  let least: number | null = null
  let dipSpread = 0
  if (kind === 'other') {
    tip = Math.max(...symmetry.reach)
    dip = Math.min(...symmetry.reach)
  } else if (kind === 'petals') {
    progress?.('dips', 0.85)
    const lines = openDips(symmetry, tips, blur)
    const valleys = valleysOf(
      plane,
      evened,
      symmetry,
      tips.map(({ at, seen }) => ({ at, far: seen })),
      lines,
      blur,
    )
    const measured = dipOfAll(valleys, lines, meanOf(hollowsOf(symmetry)))
    dip = measured.far
    least = measured.least
    dipSpread = measured.sure ? DIP_SPREAD.sure : DIP_SPREAD.unsure
    if (!measured.sure || symmetry.astride) tell('photo/dips-hidden')
  } else if (order > 0) dip = meanOf(hollowsOf(symmetry))

  const warned = findings.filter(({ severity }) => severity === 'warning').length
  const spread = SPREAD + DOUBT_SPREAD * warned
  const overTips = (2 * tip) / plane.scale
  return answer({
    kind,
    petals: order,
    symmetry: order > 0 ? symmetry.repeat : 0,
    overTips,
    overValleys: (2 * dip) / plane.scale,
    unevenness: order > 0 ? spreadWithin(reached, lengths) / tip : symmetry.rest,
    outline: outline.map(({ x, y }) => [
      (x - symmetry.middle.x) / plane.scale,
      (y - symmetry.middle.y) / plane.scale,
    ]),
    evenOutline: order > 0 ? evenOutline(symmetry, tip, dip, plane.scale) : [],
    turn: order > 0 ? ((((symmetry.turn * 180) / Math.PI) % (360 / order)) + 360 / order) % (360 / order) : 0,
    middle: {
      x: plane.left + symmetry.middle.x / plane.scale,
      y: plane.top + symmetry.middle.y / plane.scale,
    },
    colours: coloursOf(plane, evened, found, symmetry.middle),
    range: { low: overTips * (1 - spread), high: overTips * (1 + spread) },
    rangeOverValleys: {
      low: ((2 * (least ?? dip)) / plane.scale) * (1 - spread - dipSpread),
      high: ((2 * dip) / plane.scale) * (1 + spread + dipSpread),
    },
  })
}

/** The line round a motif, and how often it repeats. */
function outlined(plane: Plane, evened: Evened, found: FoundMotif, blur: number) {
  const outline = contourOf(plane, evened, found, blur)
  const open = (middle: Spot, reach: Float64Array) => openAlong(plane, found, middle, reach)
  const symmetry = notched(petalled(findSymmetry(outline, centroid(outline), open)))
  return { outline, symmetry, mask: found.mask }
}

/** Whether there may be another number of petals. */
export function mayBeOthers(symmetry: Petalled & Partial<Notched>): boolean {
  const { hidden, share, rival, finer, within, doubtful, repeat, depth, spectrum, parted } = symmetry
  const own = standing(spectrum, repeat)
  if (hidden || doubtful) return true
  // Cuts and repeat say the same: how unlike petals are, and how the whole is bent, is in no doubt about their number.
  if (parted && !within) return false
  if (rival > DOUBT.rival || (share < DOUBT.repeat && own < DOUBT.clear)) return true
  if (within) return depth < DOUBT.shallow.within
  // Deep dips have strong multiples of their own, but between those that are no multiples of a finer repeat.
  const multiples = Array.from({ length: Math.floor(ORDER.most / repeat) - 1 }, (_, at) => (at + 2) * repeat)
  const finest = Math.max(0, ...multiples.map((each) => standing(spectrum, each)))
  return (finer > DOUBT.finer && finest > DOUBT.standing * own) || isShallow(symmetry)
}

const isShallow = ({ depth, share, finer }: Symmetry): boolean =>
  depth < DOUBT.shallow.depth && share < DOUBT.shallow.repeat && finer > DOUBT.shallow.finer

/** The centroid of the area inside a closed line. */
function centroid(points: readonly Spot[]): Spot {
  let area = 0
  let x = 0
  let y = 0
  points.forEach((from, at) => {
    const to = points[(at + 1) % points.length]!
    const cross = from.x * to.y - to.x * from.y
    area += cross
    x += (from.x + to.x) * cross
    y += (from.y + to.y) * cross
  })
  return { x: x / (3 * area), y: y / (3 * area) }
}
