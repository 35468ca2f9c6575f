/** Pictures that were spoilt: cut off, scrambled, with lengths and sizes that lie, pieces twice or of another picture. */
import { chance } from '../src-core/photo/flowers'

/** Numbers that break what counts with them. */
const EXTREMES = [0, 1, 0x7f, 0x80, 0xff, 0x7fff, 0xffff, 0x7fffffff, 0xffffffff]

/** A picture spoilt in a way of its own for each seed, the same each time; `other` is where foreign pieces come from. */
export function spoiltPicture(bytes: Uint8Array, other: Uint8Array, seed: number): Uint8Array {
  const random = chance(7919 * seed + 5)
  const below = (most: number): number => Math.floor(random() * most)
  let spoilt = Buffer.from(bytes)
  const piece = (of: Uint8Array): Buffer => {
    const from = below(of.length)
    return Buffer.from(of.subarray(from, from + 1 + below(64)))
  }
  const ways: (() => void)[] = [
    () => (spoilt[below(spoilt.length)] = below(256)),
    () => {
      // Headers are where sizes and lengths stand.
      const at = 2 + below(Math.min(90, spoilt.length - 6))
      spoilt.writeUIntBE(EXTREMES[below(EXTREMES.length)]! % 0x100000000, at, 4)
    },
    () => (spoilt = spoilt.subarray(0, 4 + below(spoilt.length - 4))),
    () => {
      const at = 4 + below(spoilt.length - 4)
      spoilt = Buffer.concat([spoilt.subarray(0, at), piece(spoilt), spoilt.subarray(at)])
    },
    () => {
      const at = 4 + below(spoilt.length - 4)
      spoilt = Buffer.concat([spoilt.subarray(0, at), piece(other), spoilt.subarray(at + below(40))])
    },
  ]
  for (let round = 1 + below(4); round > 0 && spoilt.length > 12; round--) ways[below(ways.length)]!()
  return new Uint8Array(spoilt)
}
