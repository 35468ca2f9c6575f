/** Random scenes within what a kitchen table offers. */
import { SHEET_SIZES } from '../../../src-core/photo/sheet-sizes'
import type { SheetName } from '../../../src-core/photo/sheet-sizes'
import type { Colour, Scene } from './camera'
import { chance, flower } from './flowers'
import type { Family } from './flowers'

const DARK_YARNS: readonly Colour[] = [
  [0.35, 0.05, 0.07],
  [0.05, 0.15, 0.4],
  [0.08, 0.3, 0.12],
  [0.45, 0.25, 0.03],
  [0.04, 0.04, 0.05],
  [0.3, 0.08, 0.3],
]
const LIGHT_YARNS: readonly Colour[] = [
  [0.8, 0.78, 0.72],
  [0.75, 0.6, 0.2],
  [0.7, 0.4, 0.45],
  [0.45, 0.65, 0.75],
]
const TABLES: readonly Colour[] = [
  [0.25, 0.13, 0.06],
  [0.4, 0.28, 0.16],
  [0.1, 0.1, 0.11],
  [0.15, 0.22, 0.3],
]
const FAMILIES: readonly Family[] = ['rounded', 'overlapping', 'keyhole']

export interface Trial {
  readonly scene: Scene
  readonly sheet: SheetName
  readonly family: Family
}

/** The trial of a number: the same each time. `wide` pixels across the picture. */
export function trial(number: number, wide = 720): Trial {
  const random = chance(7919 * number + 13)
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!
  const between = (least: number, most: number) => least + (most - least) * random()
  const petals = 3 + (number % 22)
  const sheet = pick<SheetName>(['A4', 'A4', 'Letter', 'A5'])
  const family = pick(FAMILIES)
  const size = SHEET_SIZES[sheet]
  const largest = Math.min(150, size.width - 24)
  // Many petals need room: a petal under 4 mm across is none.
  const overTips = between(Math.max(40, Math.min(largest - 5, petals * 3.6)), largest)
  const shape = flower(
    family,
    petals,
    overTips,
    between(0.5, 0.8),
    between(0, 6.28),
    pick([0, 0.02, 0.04]),
    random,
  )
  const darkSheet = random() < 0.35
  const yarns = darkSheet ? LIGHT_YARNS : DARK_YARNS
  const room = { x: (size.width - 2 * shape.most) / 2 - 8, y: (size.height - 2 * shape.most) / 2 - 8 }
  const first = pick(yarns)
  return {
    sheet,
    family,
    scene: {
      shape,
      at: { x: between(-room.x, room.x) * 0.8, y: between(-room.y, room.y) * 0.8 },
      sheet: size,
      turn: between(-12, 12) + pick([0, 90]),
      tilt: between(0, 35),
      tiltTowards: between(0, 360),
      picture: { width: wide, height: Math.round((wide * 4) / 3) },
      filling: between(0.62, 0.78),
      paper: darkSheet ? [0.05, 0.055, 0.07] : [0.78, 0.78, 0.76],
      table: darkSheet ? pick(TABLES.slice(1, 2)) : pick(TABLES),
      grain: between(0, 0.25),
      yarns: random() < 0.5 ? [first] : [pick(yarns), first],
      fall: between(0, 0.35),
      fallTowards: between(0, 360),
      lamp: pick<Colour>([
        [1, 1, 1],
        [1, 0.9, 0.75],
        [0.9, 0.96, 1],
      ]),
      shadow: between(0, 0.4),
      shadowBy: { x: between(-2.5, 2.5), y: between(-2.5, 2.5) },
      stitch: between(2.5, 5),
      relief: between(0, 0.25),
      blur: between(0.5, 1.2),
      noise: between(0.002, 0.012),
      seed: number,
    },
  }
}
