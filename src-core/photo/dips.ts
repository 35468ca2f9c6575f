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
  /** Clefts that differ, where no law fits them: residue of the fits and spread of the dips, as shares. */
  stray: 0.09,
  spread: 0.028,
  /** Clefts that end so far outside the line, as a share, were not followed into: threads and fuzz hide what is within. */
  outside: 0.045,
  /** Clefts that differ by this much are not alike, whatever law fits each of them. */
  unlike: 0.12,
  /**
   * Thick petals seen at a slant hide the clefts that lie across it: dips that come and go twice in a turn by this share,
   * where that makes most of what they differ by, and where there are enough of them to tell.
   */
  slant: { by: 0.035, share: 0.5, clefts: 7 },
  /** Clefts that no law fits at all, as a share, are none: lace is open on both sides of the thread that closes it off. */
  lace: 0.17,
  /** What clefts make of it that may be shut or go on, as a share. */
  slits: 0.05,
} as const

/**
 * The dip from the fits of all clefts and from the line itself (`open`). The line is never too near the middle, and
 * all the nearer to the truth the wider a cleft opens; the fits go too deep where clefts are drawn out and where no law
 * fits. Weights after pictures of two renderers.
 */
export function heldDip(
  seen: readonly Valley[],
  fitted: number,
  open: number,
): { far: number; apart: number; growth: number; spread: number; stray: number; fits: boolean } {
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

/** The dip of a motif, in places. */
export interface Dip {
  readonly far: number
  /** The least it is, if every slit goes on that may. */
  readonly least: number
  readonly sure: boolean
}

/**
 * The mean dip of all clefts: `valleys` as they were fitted, null where none was made out, `lines` how near to the
 * middle the line itself comes between the same petals, `shallow` the dip where no cleft is seen at all. Clefts that
 * go on as slits count with the end of theirs, and where most dips are broad, the line is right.
 */
export function dipOfAll(
  valleys: readonly (Valley | null)[],
  lines: readonly OpenDip[],
  shallow: number,
): Dip {
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
  const isSure =
    (Math.abs(held.apart) <= DOUBT.agree ||
      !(few || (held.stray > DOUBT.stray && held.spread > DOUBT.spread))) &&
    held.spread <= DOUBT.unlike &&
    !areSlanted(valleys) &&
    held.apart >= -DOUBT.outside &&
    held.apart <=
      (held.fits ? DOUBT.apartFitted : held.growth > DOUBT.drawnOut ? DOUBT.apartDrawnOut : DOUBT.apart)
  const all = (each: (valley: Valley) => number) => meanOf([...open, ...closed.map(each)])
  const far = all(() => held.far)
  // Nothing opens like a cleft in front of the spaces of lace, which threads close off all round.
  const behind = ({ slit, space, stray }: Valley) => slit?.far ?? (stray > DOUBT.lace ? null : space)
  const least = all((each) => Math.min(held.far, behind(each) ?? held.far))
  return { far, least, sure: isSure && far - least <= DOUBT.slits * far }
}
