/** Texts from files where they leave our own pages: on a terminal, in the information of a PDF, in SVG and HTML. */

// Control characters could move the cursor of a terminal, directional overrides could disguise a name.
// eslint-disable-next-line no-control-regex
const UNSAFE = /[\u0000-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069]+/g

const MARKS = /[\u200e\u200f\u061c\u2066-\u2069]/g

/** Text without marks of direction, for where it stands alone and not on paper. */
export const unmarked = (text: string): string => text.replace(MARKS, '')

/** Text as it may stand in one line anywhere, with a space for what could move or disguise something. */
export const oneLine = (text: string): string => text.replace(UNSAFE, ' ')
