/** Defaults of this room with unit and source. */
export const COLOUR_CONSTANTS = {
  /** ΔE00 under which two yarns are hard to tell apart on the map (from memory). */
  closeDifference: 10,
  /** ΔE00 between two greys under which they print alike (from memory). */
  sameGrey: 5,
  /** Width of the mixed zone between two bands of a shade, in bands (our choice). */
  shadeMixing: 0.8,
  /** Steps that the search for "no two alike" may take: a floor and so many per cell (our choice). */
  searchSteps: { floor: 100_000, perCell: 30 },
  /** Steps to make a colouring that cannot be perfect as good as can be: a floor and so many per cell (our choice). */
  repairSteps: { floor: 5000, perCell: 20 },
  /** Other cells that a painted one may change by exhaustive search, at most, and the steps of that search (our choice). */
  nearChanges: 9,
  nearSteps: 20_000,
  /**
   * Steps of the search for counts within limits, at most: single changes, branches of the integer program, and of
   * bringing its counts nearer to a wish, so many times (our choice).
   */
  countSteps: 20_000,
  countBranches: 4000,
  nearBranches: 300,
  nearRounds: 12,
  /** Steps of changing colours by chance until limits are kept, and how often one may lead away from them (our choice). */
  lightenSteps: { floor: 20_000, perCell: 100 },
  sideways: 0.01,
  /** Motifs apart from their likes whose least shortfall is sought, and the steps of that search, at most (our choice). */
  leastCells: 200,
  leastSteps: 60_000,
  /** Motifs of a group whose fewest neighbours alike are sought, where they cannot all be apart, at most (our choice). */
  fewestCells: 40,
  /** Rounds of evening out counts, at most (our choice). */
  balanceRounds: 400,
  /** Colours × yarns that one such step looks through: with more of them a step costs more (our choice). */
  looksPerStep: 600,
  /** Where the ranks of motifs that leave a pattern begin: few that change lie evenly in short rows too (our choice). */
  rankStart: 0.227,
  /** How often it is asked what of all that is painted or made stands otherwise than limits would have it (our choice). */
  handRounds: 24,
  /** Pairs of yarns that are told one by one; of the others their number is (our choice). */
  pairsTold: 12,
  /** Cells that a finding points at, at most. */
  cellsInFinding: 60,
} as const
