/** Limits of a project file. Both are our own choice, far above any real project; no standard stands behind them. */

/** Bytes. A blanket of 40,000 motifs painted one by one takes about 1 MB. */
export const SIZE_LIMIT = 32 * 2 ** 20
/** Bytes. Settings, the list of projects, a window's place: a few kB each. */
export const SMALL_FILE = 2 ** 20
/** Brackets within brackets. A project uses eight; the rest is room for unknown fields. */
export const DEPTH_LIMIT = 100
/** Invalid values told one by one; what is beyond is counted. */
export const INVALID_VALUES_TOLD = 50
/** Invalid values that are looked for: whoever has more has one cause for them, and noting millions takes minutes. */
export const INVALID_VALUES_COUNTED = 1050
