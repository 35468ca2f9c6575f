/** The phone of the attic: cast, fringes, noise, curve and JPEG. */
import { decode, encode } from 'jpeg-js'

type Rgb = readonly [number, number, number]

/** What a poor phone makes of the light. */
export function printed(
  light: Float32Array,
  wide: number,
  tall: number,
  { between, pick, roll, fringe }: { between: (least: number, most: number) => number; pick: <T>(list: readonly T[]) => T; roll: () => number; fringe: number }, // prettier-ignore
) {
  const cast = pick<Rgb>([[1, 1, 1], [1.12, 1, 0.72], [0.86, 1, 1.14], [1.02, 1.05, 0.86]]) // prettier-ignore
  const exposure = between(0.8, 1.1)
  const [hiss, blotch] = [between(0.002, 0.014), between(0, 0.02)]
  const blur = between(0.5, 1.1)
  const reach = 3
  const bell = Array.from({ length: 2 * reach + 1 }, (_, at) => 1 / (1 + ((at - reach) / blur) ** 4))
  const sum = bell.reduce((all, each) => all + each, 0)
  const inside = (value: number, most: number) => Math.min(most - 1, Math.max(0, value))
  const across = new Float32Array(light.length)
  for (let row = 0; row < tall; row++)
    for (let column = 0; column < wide; column++)
      for (let c = 0; c < 3; c++) {
        // Red and blue are drawn a little larger or smaller than green.
        const off = Math.round((column - wide / 2) * (c - 1) * fringe)
        let all = 0
        for (let at = -reach; at <= reach; at++) all += bell[at + reach]! * light[3 * (row * wide + inside(column + at + off, wide)) + c]! // prettier-ignore
        across[3 * (row * wide + column) + c] = all / sum
      }
  // Blotches: colour noise as coarse as eight pixels.
  const [bw, bh] = [Math.ceil(wide / 8) + 2, Math.ceil(tall / 8) + 2]
  const coarse = Float32Array.from({ length: 3 * bw * bh }, () => (roll() + roll() - 1) * blotch)
  const data = new Uint8Array(4 * wide * tall)
  const film = (value: number) => {
    const held = Math.min(1, Math.max(0, value))
    const curve = held < 0.0031308 ? 12.92 * held : 1.055 * held ** (1 / 2.4) - 0.055
    return 0.75 * curve + 0.25 * curve * curve * (3 - 2 * curve)
  }
  for (let row = 0; row < tall; row++)
    for (let column = 0; column < wide; column++) {
      const bell3 = (roll() + roll() + roll() - 1.5) * 2 * hiss
      for (let c = 0; c < 3; c++) {
        const off = Math.round((row - tall / 2) * (c - 1) * fringe)
        let all = 0
        for (let at = -reach; at <= reach; at++) all += bell[at + reach]! * across[3 * (inside(row + at + off, tall) * wide + column) + c]! // prettier-ignore
        const value = (exposure * cast[c]! * all) / sum
        const [i, j] = [column >> 3, row >> 3]
        const [u, v] = [(column & 7) / 8, (row & 7) / 8]
        const at = 3 * (j * bw + i) + c
        const stain = (coarse[at]! * (1 - u) + coarse[at + 3]! * u) * (1 - v) + (coarse[at + 3 * bw]! * (1 - u) + coarse[at + 3 * bw + 3]! * u) * v // prettier-ignore
        data[4 * (row * wide + column) + c] = Math.round(
          255 * film(value + (bell3 + stain) * Math.sqrt(0.04 + value)),
        )
      }
      data[4 * (row * wide + column) + 3] = 255
    }
  // Colours at half the size: what a square of four strays from its own lightness is one for all of it.
  for (let row = 0; row + 1 < tall; row += 2)
    for (let column = 0; column + 1 < wide; column += 2) {
      const four = [0, 1, wide, wide + 1].map((by) => 4 * (row * wide + column + by))
      const luma = four.map((at) => 0.299 * data[at]! + 0.587 * data[at + 1]! + 0.114 * data[at + 2]!)
      const mean = luma.reduce((all, each) => all + each, 0) / 4
      for (let c = 0; c < 3; c++) {
        const off = four.reduce((all, at) => all + data[at + c]!, 0) / 4 - mean
        four.forEach((at, k) => (data[at + c] = Math.min(255, Math.max(0, Math.round(luma[k]! + off)))))
      }
    }
  const { data: again } = decode(encode({ width: wide, height: tall, data }, 60).data, { useTArray: true })
  return { width: wide, height: tall, data: again }
}
