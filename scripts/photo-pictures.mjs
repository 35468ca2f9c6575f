/** `npm run pictures:photo`: the drawing of docs/photo.md, how a motif is laid and lit for its photo. */
import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const INK = '#1d1b18'
const QUIET = '#6d675e'
const PAPER = '#fffdf8'
const GROUND = '#f4efe6'
const TABLE = '#cdb698'
const DARK = '#34373d'
const ACCENT = '#1d5a54'
const WARNING = '#96430f'
const ROSE = '#9c3f55'
const CREAM = '#f2e6c9'

const [WIDE, TALL, GAP] = [360, 300, 20]
const points = (list) => list.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')

/** A flower of eight petals. */
function flower(x, y, tip, fill) {
  const line = Array.from({ length: 160 }, (_, at) => {
    const angle = (2 * Math.PI * at) / 160
    const far = tip * (0.66 + 0.34 * Math.abs(Math.cos(4 * angle)) ** 0.7)
    return [x + far * Math.sin(angle), y - far * Math.cos(angle)]
  })
  const rounds = [0.24, 0.46].map((share) =>
    circle(x, y, share * tip, `fill="none" stroke="${INK}" stroke-opacity=".35"`),
  )
  return `<path d="M${points(line)}Z" fill="${fill}" stroke="${INK}"/>${rounds.join('')}`
}
const box = (x, y, width, height, more) =>
  `<rect x="${x}" y="${y}" width="${width}" height="${height}" ${more}/>`
const circle = (x, y, r, more) =>
  `<circle cx="${x.toFixed(1)}" cy="${y.toFixed(1)}" r="${r.toFixed(1)}" ${more}/>`
const line = (from, to, more = `stroke="${INK}"`) => `<path d="M${points([from, to])}" fill="none" ${more}/>`
const text = (x, y, words, more = '') => `<text x="${x}" y="${y}" ${more}>${words}</text>`
const MIDDLE = 'text-anchor="middle"'
/** Right or wrong, told by its shape and not by its colour alone. */
const verdict = (x, y, isRight) =>
  isRight
    ? `<path d="M${points([
        [x - 8, y],
        [x - 2, y + 7],
        [x + 9, y - 8],
      ])}" fill="none" stroke="${ACCENT}" stroke-width="3"/>`
    : `<path d="M${x - 7} ${y - 7}l14 14m0 -14l-14 14" stroke="${WARNING}" stroke-width="3"/>`

const CORNERS = [
  [0, 0, 1, 1],
  [1, 0, -1, 1],
  [0, 1, 1, -1],
  [1, 1, -1, -1],
]

/** The whole sheet, in the middle of the picture. */
function sheetInPicture() {
  const frame = CORNERS.map(([u, v, a, b]) => {
    const [x, y] = [104 + 152 * u, 42 + 202 * v]
    return `<path d="M${x + 16 * a} ${y}H${x}V${y + 16 * b}" fill="none" stroke="${ACCENT}" stroke-width="3"/>`
  })
  return [
    box(40, 30, 280, 226, `fill="${TABLE}"`),
    box(122, 58, 120, 170, `fill="${PAPER}" stroke="${INK}"`),
    flower(182, 142, 44, ROSE),
    ...frame,
    text(180, 282, 'One whole sheet, all four corners in the picture', MIDDLE),
  ]
}

/** Light yarn on a dark sheet. */
function grounds() {
  const pair = (x, paper, yarn, isRight) => [
    box(x, 44, 84, 119, `fill="${paper}" stroke="${INK}"`),
    flower(x + 42, 103, 32, yarn),
    verdict(x + 42, 190, isRight),
  ]
  return [
    box(20, 30, 320, 147, `fill="${TABLE}"`),
    ...pair(34, PAPER, ROSE, true),
    ...pair(138, DARK, CREAM, true),
    ...pair(242, PAPER, CREAM, false),
    text(180, 240, 'Dark yarn on a white sheet,', MIDDLE),
    text(180, 262, 'light yarn on a dark one', MIDDLE),
  ]
}

const table = (x, wide) => box(x, 214, wide, 8, `fill="${TABLE}" stroke="${INK}"`)
const thick = (x) => box(x - 26, 204, 52, 10, `rx="4" fill="${ROSE}" stroke="${INK}"`)

/** The lamp high above. */
function lamps() {
  const lamp = (x, y, towards) => {
    const [dx, dy] = [towards[0] - x, towards[1] - y]
    const far = Math.hypot(dx, dy)
    const rays = [-0.22, 0, 0.22].map((turn) => {
      const [c, s] = [Math.cos(turn), Math.sin(turn)]
      const [u, v] = [(dx * c - dy * s) / far, (dx * s + dy * c) / far]
      return line(
        [x + 20 * u, y + 20 * v],
        [x + 62 * u, y + 62 * v],
        `stroke="${QUIET}" stroke-dasharray="5 4"`,
      )
    })
    return circle(x, y, 13, `fill="${CREAM}" stroke="${INK}"`) + rays.join('')
  }
  return [
    table(16, 150),
    thick(91),
    lamp(91, 50, [91, 204]),
    verdict(91, 242, true),
    table(194, 150),
    `<path d="M292 214L340 214L292 206Z" fill="${INK}" fill-opacity=".45"/>`,
    thick(270),
    lamp(206, 168, [270, 204]),
    verdict(270, 242, false),
    text(91, 278, 'Lamp high above', MIDDLE),
    text(270, 278, 'Low beside it: shadows', MIDDLE),
  ]
}

/** The camera right above. */
function cameras() {
  const phone = (x, y, turn) =>
    `<g transform="translate(${x} ${y}) rotate(${turn})">${box(-32, -6, 64, 12, `rx="5" fill="${DARK}"`)}` +
    `${line([-4, 8], [-40, 118], `stroke="${QUIET}" stroke-dasharray="5 4"`)}` +
    `${line([4, 8], [40, 118], `stroke="${QUIET}" stroke-dasharray="5 4"`)}</g>`
  return [
    table(16, 150),
    thick(91),
    phone(91, 76, 0),
    verdict(91, 242, true),
    table(194, 150),
    thick(286),
    phone(222, 104, -31),
    verdict(270, 242, false),
    text(91, 278, 'Camera right above', MIDDLE),
    text(270, 278, 'Not at a slant', MIDDLE),
  ]
}

const panels = [sheetInPicture(), grounds(), lamps(), cameras()].map((parts, at) => {
  const [x, y] = [GAP + (at % 2) * (WIDE + GAP), GAP + Math.floor(at / 2) * (TALL + GAP)]
  return `<g transform="translate(${x} ${y})">${box(0, 0, WIDE, TALL, `rx="6" fill="${PAPER}" stroke="${QUIET}" stroke-opacity=".5"`)}${text(14, 22, at + 1, `font-weight="600" fill="${ACCENT}"`)}${parts.join('')}</g>`
})
const [width, height] = [2 * WIDE + 3 * GAP, 2 * TALL + 3 * GAP]
const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" font-family="'Source Sans 3', 'Source Sans Pro', sans-serif" font-size="15" fill="${INK}"><rect width="${width}" height="${height}" fill="${GROUND}"/>${panels.join('\n')}</svg>\n`
const file = fileURLToPath(new URL('../docs/pictures/photo-how.svg', import.meta.url))
writeFileSync(file, svg)
console.log(`wrote docs/pictures/photo-how.svg, ${svg.length} bytes`)
