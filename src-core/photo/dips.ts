/** The dip of all petals together, from the fits of all clefts and from the line round the motif. */
import { meanOf, middleMean, spreadOf } from './tips'
import type { OpenDip } from './tips'
import type { Valley } from './valleys'

/** Where dips stop being sure. */
const DOUBT = {
  /** Share of them that were found, and how far what the line says may be from what the clefts say. */
  found: 0.6,
  /** Few clefts, or clefts that differ, will do where line and clefts say the same: the line is never too near the middle, clefts hardly too far. */
  agree: 0.02,
  apart: 0.08,
  /** From this growth on nobody sees where a cleft ends; then they are to be nearer to each other: the dip held lies halfway. */
  drawnOut: 1.9,
  apartDrawnOut: 0.06,
  /** The same where one law fits all clefts. */
  apartFitted: 0.12,
  /** And where they differ by no more than this, and none may go on as a slit. */
  apartAlike: { most: 0.1, spread: 0.045 },
  /** Clefts that differ, where no law fits them: residue of the fits and spread of the dips, as shares. */
  stray: 0.09,
  spread: 0.028,
  /** Clefts that end so far outside the line, as a share, were not followed into: threads and fuzz hide what is within. */
  outside: 0.045,
  /**
   * But where no law fits them at all (residue of the fits, as a share) while the line comes equally near between all
   * petals (spread, as a share), it ends on a thread that closes each of them off, as that of lace does. From a residue
   * of `lace` on the spaces behind are those of lace.
   */
  onThreads: { outside: 0.07, stray: 0.06, line: 0.012, lace: 0.125 },
  /** Clefts so thin at their ends, as a share, that stitches decide where each ends, and of which the line tells some and not others: spread of what it is off their fits by. */
  thin: { by: 0.06, line: 0.022 },
  /** But where the line comes equally near between all petals (spread, as a share), and no farther out than this, wherever a cleft ends is near to both. */
  even: { line: 0.02, apart: 0.065 },
  /** Clefts that differ by this much are not alike, whatever law fits each of them. */
  unlike: 0.12,
  /**
   * Thick petals seen at a slant hide the clefts that lie across it: dips that come and go twice in a turn by this share,
   * where that makes most of what they differ by, and where there are enough of them to tell.
   */
  slant: { by: 0.035, share: 0.5, clefts: 7 },
  /** Clefts that no law fits at all, as a share, are none: lace is open on both sides of the thread that closes it off. */
  lace: 0.17,
  /** A fit that is off by more than this share of what it was fitted to has found no cleft. */
  none: 0.5,
  /** What clefts make of it that may be shut or go on, as a share. */
  slits: 0.05,
} as const

interface Held {
  readonly far: number
  /** How much farther out the line lies than the clefts were fitted to end, as a share. */
  readonly apart: number
  readonly growth: number
  readonly spread: number
  readonly stray: number
  /** One law fits all clefts. */
  readonly fits: boolean
}

/**
 * The dip from the fits of all clefts and from the line itself (`open`). The line is never too near the middle, and
 * all the nearer to the truth the wider a cleft opens; the fits go too deep where clefts are drawn out and where no law
 * fits. Weights after pictures of two renderers.
 */
export function heldDip(seen: readonly Valley[], fitted: number, open: number): Held {
  const spread = spreadOf(seen.map(({ far }) => far)) / fitted
  const stray = meanOf(seen.map((each) => each.stray))
  if (fitted >= open || seen.length === 0)
    return { far: open, apart: open / fitted - 1, growth: 0, spread, stray, fits: false }
  const apart = open / fitted - 1
  const growth = meanOf(seen.map((each) => each.growth))
  // A law that fits all clefts alike is taken at its word.
  const fits = stray < 0.03 && spread < 0.03
  let line = fits ? 0 : Math.min(0.5, Math.max(0.05, 0.05 + 0.5 * (growth - 1.1)))
  if (stray > 0.15) line = 0.75
  // A line that lies this far out has not entered the clefts at all.
  if (apart > 0.08) line = Math.min(line, 0.1)
  return { far: fitted + line * (open - fitted), apart, growth, spread, stray, fits }
}

/** How far what a fit and its own line say may be from what they say of the others, for both to be believed. */
const ALIKE = 0.03
/** How far outside its own line a fit may end: further, it was not of this cleft (a hard shadow lies in it). */
const WITHIN = 1.035

/**
 * The mean of the fits of all clefts that do not go on. A fit that says something else than the others does not count,
 * unless the line agrees that its cleft is deeper: petals that lie over each other part in very unlike places.
 */
function fittedMean(valleys: readonly (Valley | null)[], lines: readonly OpenDip[]): number {
  const both = valleys.flatMap((valley, at) =>
    valley && valley.slit?.open !== true ? [{ fit: valley.far, line: lines[at]!.far }] : [],
  )
  const within = both.filter(({ fit, line }) => fit <= WITHIN * line)
  // Where most end outside, the line has entered farther than they were followed.
  if (within.length < both.length / 2) return middleMean(both.map(({ fit }) => fit))
  const usual = middleMean(within.map(({ fit, line }) => fit / line))
  const isBelieved = (fit: number, line: number) =>
    fit <= WITHIN * line && Math.abs(fit / line / usual - 1) <= ALIKE
  return meanOf(both.map(({ fit, line }) => (isBelieved(fit, line) ? fit : usual * line)))
}

/** A line so many times as far out as the others has not entered its cleft, where the fit is within this share of the others. */
const BRIDGED = { line: 1.15, fit: 0.08 } as const

/** The lines, those that a thread, fuzz or a shadow led across the mouth of their cleft by what it is fitted to be. */
function entered(valleys: readonly (Valley | null)[], lines: readonly OpenDip[]): readonly OpenDip[] {
  const both = valleys.flatMap((valley, at) => (valley ? [{ fit: valley.far, line: lines[at]!.far }] : []))
  const fit = middleMean(both.map((each) => each.fit))
  const line = middleMean(lines.map(({ far }) => far))
  const isBridged = (at: number) =>
    valleys[at] !== null &&
    lines[at]!.far > BRIDGED.line * line &&
    Math.abs(valleys[at]!.far / fit - 1) < BRIDGED.fit
  return lines.map((own, at) =>
    isBridged(at) ? { far: (valleys[at]!.far * line) / fit, broad: false } : own,
  )
}

/** Whether dips come and go twice in a turn: then some are hidden behind petals that a slant shows from the side. */
function areSlanted(valleys: readonly (Valley | null)[]): boolean {
  const seen = valleys.flatMap((valley, at) => (valley && valley.slit?.open !== true ? [{ far: valley.far, at }] : [])) // prettier-ignore
  if (seen.length < DOUBT.slant.clefts) return false
  const mean = meanOf(seen.map(({ far }) => far))
  const [cosine, sine] = [Math.cos, Math.sin].map(
    (of) => 2 * meanOf(seen.map(({ far, at }) => (far / mean - 1) * of((4 * Math.PI * at) / valleys.length))),
  ) as [number, number]
  const spread = spreadOf(seen.map(({ far }) => far)) / mean
  const by = Math.hypot(cosine, sine)
  return by > DOUBT.slant.by && by * by > 2 * DOUBT.slant.share * spread * spread
}

/** How far apart clefts and line may be. */
function mostApart({ fits, growth, spread }: Held, closed: readonly Valley[]): number {
  if (fits) return DOUBT.apartFitted
  if (growth > DOUBT.drawnOut) return DOUBT.apartDrawnOut
  const areAlike = spread <= DOUBT.apartAlike.spread && closed.every(({ slit }) => !slit)
  return areAlike ? DOUBT.apartAlike.most : DOUBT.apart
}

/** Whether all clefts end on threads that close them off, where the line ends too. */
const areOnThreads = ({ apart, stray, far }: Held, lines: readonly OpenDip[]): boolean =>
  apart <= 0 &&
  stray >= DOUBT.onThreads.stray &&
  spreadOf(lines.map((line) => line.far)) <= DOUBT.onThreads.line * far

/** Whether clefts run out so thinly that stitches decide where they end, which the line says too: it follows some of them farther than others. */
function areThin(valleys: readonly (Valley | null)[], lines: readonly OpenDip[]): boolean {
  const closed = valleys.flatMap((valley, at) =>
    valley && valley.slit?.open !== true ? [{ ...valley, off: lines[at]!.far / valley.far }] : [],
  )
  const thin = meanOf(closed.map(({ thin, far }) => thin / far))
  return thin > DOUBT.thin.by && spreadOf(closed.map(({ off }) => off)) > DOUBT.thin.line
}

/** The dip of a motif, in places. */
export interface Dip {
  readonly far: number
  /** The least it is, if every slit goes on that may. */
  readonly least: number
  readonly sure: boolean
}

/**
 * The mean dip of all clefts: `fits` of each, null where none was made out, `own` how near to the
 * middle the line itself comes between the same petals, `shallow` the dip where no cleft is seen at all. Clefts that
 * go on as slits count with the end of theirs, and where most dips are broad, the line is right.
 */
export function dipOfAll(fits: readonly (Valley | null)[], own: readonly OpenDip[], shallow: number): Dip {
  const valleys = fits.map((valley) => (valley && valley.stray <= DOUBT.none ? valley : null))
  const lines = entered(valleys, own)
  const seen = valleys.filter((valley) => valley !== null)
  if (seen.length === 0) return { far: shallow, least: shallow, sure: false }
  // A line that has entered clefts as broad as these is right; one that shuts their mouths lies far out of the fits.
  const broad = lines.filter(({ broad }, at) => broad && valleys[at]?.slit?.open !== true)
  const onLine = middleMean(broad.map((line) => line.far))
  const apart = onLine / middleMean(seen.map(({ far }) => far)) - 1
  if (broad.length > DOUBT.found * lines.length && apart <= DOUBT.apart)
    return { far: onLine, least: onLine, sure: true }
  const isOpen = (valley: Valley | null) => valley?.slit?.open === true
  const closed = seen.filter((valley) => !isOpen(valley))
  const open = seen.filter(isOpen).map(({ slit }) => slit!.far)
  const few = seen.length < DOUBT.found * valleys.length
  if (closed.length === 0) {
    const far = meanOf(open)
    return { far, least: far, sure: !few }
  }
  const fitted = fittedMean(valleys, lines)
  const held = heldDip(
    closed,
    fitted,
    meanOf(lines.filter((_, at) => valleys[at] && !isOpen(valleys[at])).map((line) => line.far)),
  )
  const isLace = areOnThreads(held, lines)
  const isEven =
    held.apart <= DOUBT.even.apart && spreadOf(lines.map((line) => line.far)) <= DOUBT.even.line * held.far
  const isSure =
    (Math.abs(held.apart) <= DOUBT.agree ||
      !(few || (held.stray > DOUBT.stray && held.spread > DOUBT.spread))) &&
    held.spread <= DOUBT.unlike &&
    !areSlanted(valleys) &&
    held.apart >= -(isLace ? DOUBT.onThreads.outside : DOUBT.outside) &&
    held.apart <= mostApart(held, closed) &&
    (isEven || !areThin(valleys, lines))
  const all = (each: (valley: Valley) => number) => meanOf([...open, ...closed.map(each)])
  const far = all(() => held.far)
  // Nothing opens like a cleft in front of the spaces of lace, which threads close off all round.
  const behind = ({ slit, space, stray }: Valley) =>
    slit?.far ?? (stray > (isLace ? DOUBT.onThreads.lace : DOUBT.lace) ? null : space)
  const least = all((each) => Math.min(held.far, behind(each) ?? held.far))
  return { far, least, sure: isSure && far - least <= DOUBT.slits * far }
}
