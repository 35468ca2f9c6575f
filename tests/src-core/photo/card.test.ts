/** A bank card on the table: ISO/IEC 7810 ID-1, 85.6 × 53.98 mm, its magnetic stripe 5.5 mm from a long edge (from memory). */
import { describe, expect, it } from 'vitest'
import type { Picture } from '../../../src-core/photo/picture'
import { findSheet } from '../../../src-core/photo/sheet'
import { fineCorners } from '../../../src-core/photo/sheet-edges'
import { SHEET_SIZES } from '../../../src-core/photo/sheet-sizes'

const [WIDTH, HEIGHT] = [900, 680]
const TABLE = [34, 34, 38]
const CARD = [96, 178, 196]
const YARN = [216, 206, 178]
/** Pixels to a millimetre, and the card's middle. */
const SCALE = 3.2
const MIDDLE = { x: 650, y: 330 }

/** A card turned by so many degrees, with a stripe or none, beside a round motif with scalloped edge. */
function drawn(degrees: number, stripe: readonly number[] | null): Picture {
  const data = new Uint8Array(4 * WIDTH * HEIGHT).fill(255)
  const turn = (degrees * Math.PI) / 180
  for (let y = 0; y < HEIGHT; y++)
    for (let x = 0; x < WIDTH; x++) {
      const [dx, dy] = [(x - MIDDLE.x) / SCALE, (y - MIDDLE.y) / SCALE]
      const along = dx * Math.cos(turn) + dy * Math.sin(turn)
      const across = -dx * Math.sin(turn) + dy * Math.cos(turn)
      const onCard = Math.abs(along) < 85.6 / 2 && Math.abs(across) < 53.98 / 2
      const fromEdge = across + 53.98 / 2
      const onStripe = stripe !== null && onCard && fromEdge > 5.5 && fromEdge < 18
      const far = Math.hypot(x - 230, y - 340)
      const reach = 150 + 22 * Math.abs(Math.sin(4 * Math.atan2(y - 340, x - 230)))
      const colour = onStripe ? stripe : onCard ? CARD : far < reach ? YARN : TABLE
      const grain = ((x * 7 + y * 13) % 5) - 2
      for (let c = 0; c < 3; c++) data[4 * (y * WIDTH + x) + c] = colour[c]! + grain
    }
  return { width: WIDTH, height: HEIGHT, data }
}

const sides = ({ corners }: { readonly corners: readonly { readonly x: number; readonly y: number }[] }) =>
  corners
    .map(({ x, y }, at) => Math.hypot(corners[(at + 1) % 4]!.x - x, corners[(at + 1) % 4]!.y - y) / SCALE)
    .sort((a, b) => a - b)

describe('a card', () => {
  it.each([
    ['plain', 0, null],
    ['with a stripe as black as the table', 0, TABLE],
    ['the same, turned', 14, TABLE],
    ['the same, upside down', 187, TABLE],
  ] as const)('is found whole: %s', (_, degrees, stripe) => {
    const picture = drawn(degrees, stripe)
    const found = findSheet(picture, SHEET_SIZES.card)
    expect(found).not.toBeNull()
    const [a, b, c, d] = sides(fineCorners(picture, found!.corners)!)
    for (const short of [a, b]) expect(Math.abs(short! - 53.98)).toBeLessThan(0.5)
    for (const long of [c, d]) expect(Math.abs(long! - 85.6)).toBeLessThan(0.5)
  })
})
