/** Motifs of our own for the chart's tests. */
import type { RoundsMotif } from '../../../shared-types/project'
import type { Hand } from '../../../shared-types/project'
import { roundsAccount } from '../../../src-core/motif/rounds/account'
import type { Beginning } from '../../../src-core/motif/rounds/account'
import type { LocatedRound } from '../../../src-core/motif/rounds/ground'

const GAUGE = { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 3.5 }
const motif = (id: string, foundation: RoundsMotif['foundation'], ...rounds: string[]): RoundsMotif => ({
  id,
  kind: 'rounds',
  gauge: GAUGE,
  foundation,
  rounds: rounds.map((work) => ({ work })),
})

export const FIVE = motif(
  'five',
  { ring: 'adjustable' },
  'ch 1, 10 sc in ring, join with sl st in first sc',
  'ch 1, sc in same st as joining, *ch 4, sk next sc, sc in next sc; rep from * 3 more times, ch 4, sk next sc, join with sl st in first sc',
  'sl st in first ch-4 sp, ch 1, (sc, hdc, dc, tr, ch 2, tr, dc, hdc, sc) in same sp and in each ch-4 sp around, join with sl st in first sc',
)

/** Whole petals out of spaces of one chain. */
export const FANNED = motif(
  'fanned',
  { ring: 'adjustable' },
  'ch 1, 12 sc in ring, join with sl st in first sc',
  'ch 3 (counts as dc), dc in same st, ch 1, sk next sc, *2 dc in next sc, ch 1, sk next sc; rep from * 4 more times, join with sl st in top of beg ch-3',
  '(sc, hdc, 3 dc, hdc, sc) in each ch-1 sp around, join with sl st in first sc',
)

export const LAYERED = motif(
  'layered',
  { ring: 'chain', chains: 6 },
  'ch 1, 12 sc in ring, join with sl st in first sc',
  'ch 1, sc in same st as joining, *ch 3, sk next sc, sc in next sc; rep from * 4 more times, ch 3, sk next sc, join with sl st in first sc',
  '(sc, hdc, 2 dc, hdc, sc) in each ch-3 sp around, join with sl st in first sc',
  'ch 1, working behind petals, *BPsc around next sc of Rnd 2, ch 5; rep from * 5 more times, join with sl st in first BPsc',
  '(sc, hdc, dc, tr, ch 2, tr, dc, hdc, sc) in each ch-5 sp around, join with sl st in first sc',
)

export const PICOTS = motif(
  'picots',
  { ring: 'chain', chains: 8 },
  'ch 3 (counts as dc), 15 dc in ring, join with sl st in top of beg ch-3',
  'ch 1, sc in same st as joining, *ch 5, sk next dc, sc in next dc; rep from * 6 more times, ch 5, sk next dc, join with sl st in first sc',
  '(sc, hdc, 2 dc, ch 3, 2 dc, hdc, sc) in each ch-5 sp around, join with sl st in first sc',
  '*(2 sc, picot-3, 2 sc) in next ch-3 sp, ch 6; rep from * 7 more times, join with sl st in first sc',
)

export const HEXAGON = motif(
  'hexagon',
  { ring: 'adjustable' },
  'ch 3 (counts as dc), 11 dc in ring, join with sl st in top of beg ch-3',
  'ch 3 (counts as dc), dc in same st, (dc, ch 1, dc) in next dc, *2 dc in next dc, (dc, ch 1, dc) in next dc; rep from * 4 more times, join with sl st in top of beg ch-3',
  'ch 3 (counts as dc), dc in next 2 dc, (dc, ch 1, dc) in next ch-1 sp, *dc in next 4 dc, (dc, ch 1, dc) in next ch-1 sp; rep from * 4 more times, dc in next dc, join with sl st in top of beg ch-3',
  'ch 1, sc in same st as joining, sc in next 3 dc, 2 sc in next ch-1 sp, *sc in next 6 dc, 2 sc in next ch-1 sp; rep from * 4 more times, sc in next 2 dc, join with sl st in first sc',
)

export const LEAF = motif(
  'leaf',
  { chain: 12 },
  'sc in 2nd ch from hook, hdc in next ch, dc in next 2 ch, tr in next 3 ch, dc in next 2 ch, hdc in next ch, (sc, ch 2, sc) in last ch, working along opposite side of chain, hdc in next ch, dc in next 2 ch, tr in next 3 ch, dc in next 2 ch, hdc in next ch, sc in next ch, join with sl st in first sc',
)

const STAR = motif(
  'star',
  { ring: 'adjustable' },
  'ch 1, 6 sc in ring, join with sl st in first sc',
  '*ch 9, sl st in 2nd ch from hook, sc in next ch, hdc in next 5 chs, sc in next ch, sl st in next sc; rep from * around',
)

const RAYS = motif(
  'rays',
  { ring: 'chain', chains: 6 },
  '*ch 8, sc in 2nd ch from hook, hdc in next 5 chs, sc in next ch, sl st in ring; rep from * 7 more times',
)

const RING_PETALS = motif('ring petals', { ring: 'adjustable' }, '(ch 3, 3 dc, ch 3, sl st) 5 times in ring')

const RING_LOOPS = motif('ring loops', { ring: 'adjustable' }, '(ch 6, sl st in ring) 6 times')

const ONE_CHAIN = motif(
  'one chain',
  undefined,
  'ch 4, 11 dc in 4th ch from hook (3 skipped chs count as first dc), join with sl st in top of beg ch',
  'ch 3 (counts as dc), dc in same st, 2 dc in each dc around, join with sl st in top of beg ch-3',
)

export const POSTS = motif(
  'posts',
  { ring: 'chain', chains: 5 },
  'ch 3 (counts as dc), 11 dc in ring, join with sl st in top of beg ch-3',
  'ch 2 (does not count), *FPdc around next dc, dc in same dc; rep from * around, join with sl st in first FPdc',
  'ch 1, BPsc around each st around, join with sl st in first BPsc',
  'ch 1, *sc in next st, 2 sc in next st; rep from * around, join with sl st in first sc',
)

/** Every kind of symbol there is. */
export const SAMPLER = motif(
  'sampler',
  { ring: 'chain', chains: 6 },
  'ch 3 (counts as dc), 15 dc in ring, join with sl st in top of beg ch-3',
  'ch 4 (counts as dc and ch 1), *dc3tog in next dc, ch 2; rep from * 14 more times, join with sl st in 3rd ch of beg ch-4',
  'ch 1, *2 sc in next ch sp, sc in next st; rep from * around, join with sl st in first sc',
  'ch 1, BLO sc in each sc around, join with sl st in first sc',
  'ch 3 (does not count), *FPdc around next sc, sc2tog over next 2 sc; rep from * around, join with sl st in first FPdc',
  'ch 1, *popcorn in next st, puff in next st, ch 1, 2 tr in next 2 st; rep from * 7 more times, join with sl st in first popcorn',
  'ch 1, reverse sc in each st around, join with sl st in first sc',
)

export const CHARTED = [
  FIVE,
  LAYERED,
  PICOTS,
  HEXAGON,
  LEAF,
  STAR,
  RAYS,
  RING_PETALS,
  RING_LOOPS,
  ONE_CHAIN,
  POSTS,
]

/** A motif's rounds where its chart has them. */
export function locate(
  motif: RoundsMotif,
  hand: Hand = 'right',
): { located: readonly LocatedRound[]; beginning: Beginning } {
  const drawing = roundsAccount(motif, { hand, terms: 'US', growth: 0 }).drawing()
  if (!drawing) throw new Error(`${motif.id} has no rounds`)
  return drawing
}
