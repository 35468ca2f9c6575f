/** A colour that its pattern calls by a letter alone: "color A". */
export const LETTERED = /^colou?r ([A-Z])$/i

/** Names of colours in patterns, each with a colour for the screen (ours: any other one is chosen by hand). */
const NAMES: Readonly<Record<string, string>> = {
  ...{ white: '#f7f5ef', cream: '#f3e7cb', ivory: '#f4ecd8', ecru: '#e4d8bd', natural: '#e8dcc3' },
  ...{ yellow: '#f2c84b', gold: '#d9a532', mustard: '#c99a2e', lemon: '#f4e06d', orange: '#e58a3a' },
  ...{ peach: '#f2b892', apricot: '#efb07f', coral: '#ea7f6b', red: '#c8383a', burgundy: '#7c2438' },
  ...{ pink: '#eb9db3', rose: '#d97f96', magenta: '#b8397f', purple: '#78468f', plum: '#6c3558' },
  ...{ violet: '#7d5aa6', lilac: '#bfa3d1', lavender: '#b7a6d6', blue: '#3f6fae', navy: '#263a5e' },
  ...{ turquoise: '#3fb0ac', teal: '#2c7a7b', aqua: '#7cc8c6', green: '#4f8f54', mint: '#a9d6b8' },
  ...{ olive: '#7c7d3c', sage: '#9aad89', lime: '#a9c64a', brown: '#7a5238', tan: '#c6a37a' },
  ...{ beige: '#dcc8a8', taupe: '#9b8778', grey: '#8f9295', gray: '#8f9295', silver: '#c3c6c8' },
  ...{ moss: '#74803f', fern: '#5f8a4a', oat: '#ddcfae', sand: '#d6bf95', saffron: '#eeb33b' },
  ...{ claret: '#7a2038', wine: '#6e2236', brick: '#a94a37', rust: '#b3562c', ice: '#cfe4ec' },
  ...{ sky: '#8fbfe0', denim: '#4a6484', stone: '#b3aa9b', chocolate: '#573a2a', honey: '#dba646' },
  ...{ black: '#2b2b2d', charcoal: '#4b4e52' },
  // As CSS has them (CSS Color Module Level 4, named colors); "slate" is its slategray.
  ...{ crimson: '#dc143c', maroon: '#800000', indigo: '#4b0082', khaki: '#f0e68c', orchid: '#da70d6' },
  ...{ salmon: '#fa8072', tomato: '#ff6347', sienna: '#a0522d', wheat: '#f5deb3', linen: '#faf0e6' },
  ...{ thistle: '#d8bfd8', aquamarine: '#7fffd4', chartreuse: '#7fff00', fuchsia: '#ff00ff' },
  ...{ cyan: '#00ffff', seashell: '#fff5ee', slate: '#708090', bisque: '#ffe4c4', azure: '#f0ffff' },
}

const COLOURS = new Map(Object.entries(NAMES))
const SHADES: readonly (readonly [RegExp, string])[] = [
  [/\b(light|pale|baby)\b/, '#ffffff'],
  [/\b(dark|deep)\b/, '#000000'],
]

/** A third of the way to another colour. */
function mixed(colour: string, to: string): string {
  const part = (of: string, at: number) => parseInt(of.slice(at, at + 2), 16)
  return `#${[1, 3, 5]
    .map((at) => Math.round(part(colour, at) * 0.67 + part(to, at) * 0.33))
    .map((value) => value.toString(16).padStart(2, '0'))
    .join('')}`
}

/** The colour for a screen of a name ("dusty pink", "dark green"); null where no word of it is one. */
export function colourNamed(name: string): string | null {
  const words = name.toLowerCase()
  const colour = (words.match(/\p{L}+/gu) ?? []).findLast((word) => COLOURS.has(word))
  if (colour === undefined) return null
  return shaded(words, COLOURS.get(colour)!)
}

/**
 * The colour that a pattern names a part of its motif by ("pink"; files have "color pink" too); null for what is named by
 * its place ("rose petals") or by a letter.
 */
export function patternColour(slot: string): string | null {
  const word = slot.replace(/^colou?r /i, '')
  return colourNamed(word.match(/\p{L}+$/u)?.[0] ?? '') === null ? null : word.toLowerCase()
}

/** A colour as light or dark as the words beside its name say. */
export function shaded(words: string, colour: string): string {
  const shade = SHADES.find(([sign]) => sign.test(words))
  return shade ? mixed(colour, shade[1]) : colour
}
