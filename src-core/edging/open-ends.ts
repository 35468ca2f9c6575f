/** Of what is joined in the round, the first lines of its edge are open: those along its two ends, before its holes. */
export const OPEN_ENDS = 2
