/** Texts from files where they leave our own pages: on a terminal, in the information of a PDF, in SVG and HTML. */

// Control characters could move the cursor of a terminal, directional overrides could disguise a name.
// eslint-disable-next-line no-control-regex
const UNSAFE = /[\u0000-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069]+/g

const MARKS = /[\u200e\u200f\u061c\u2066-\u2069]/g

// Line ends and tabs may stand in what has several lines.
const UNSAFE_IN_LINES = /[^\P{Cc}\t\n\r]|\r(?!\n)|[\u2028-\u202e\u2066-\u2069]/gu

/** Text without marks of direction, for where it stands alone and not on paper. */
export const unmarked = (text: string): string => text.replace(MARKS, '')

/** Text as it may stand in one line anywhere, with a space for what could move or disguise something. */
export const oneLine = (text: string): string => text.replace(UNSAFE, ' ')

/** Text of several lines as a terminal may have it: every output of the command line goes through here, whatever it quotes. */
export const forTerminal = (text: string): string => text.replace(UNSAFE_IN_LINES, ' ')

/** JSON with what a terminal would obey as `\u` and four digits; `JSON.stringify` does so for U+0000 to U+001F alone. */
export const jsonForTerminal = (json: string): string =>
  json.replace(UNSAFE_IN_LINES, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`)
