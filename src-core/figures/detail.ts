/** Levels of detail: from which size on what of a motif is drawn, and how near a drawn line keeps to the true one. */

/** On screen, by the size of a motif in CSS pixels tip to tip (by eye): first dots of colour, then its layers, then all. */
export const DETAIL = {
  /** Far: under this a mark on a motif is a dot. */
  marks: 12,
  joins: 10,
  /** Middle: outline and layers are lined. */
  contour: 16,
  /** Near: petals, working numbers, rounds, the letters of colourways. */
  petals: 30,
  number: 30,
  rounds: 48,
  letter: 56,
} as const

/** Largest distances of a drawn line from the true one. */
export const TOLERANCE = {
  /** Device pixels. */
  screen: 0.2,
  /** mm: the finest level on screen; from there each level halves the points that can be seen. */
  finest: 0.02,
  /** Printed mm. */
  print: 0.015,
  /** mm, of the band of an edging on screen. */
  edging: 0.3,
} as const

/** The level of detail for a scale in device pixels per mm: 0 is the finest, each next one twice as coarse. */
export const levelAt = (scale: number): number =>
  Math.max(0, Math.floor(Math.log2(TOLERANCE.screen / scale / TOLERANCE.finest)))
