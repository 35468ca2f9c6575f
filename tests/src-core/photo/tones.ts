/**
 * What a phone's curve makes of light, 0 to 255: of millions of values, so the places where it steps are sought once and
 * looked up. The curve rises all the way; below 0 it is taken at 0, above 1 at 1.
 */
export function bytesOf(curve: (light: number) => number): (light: number) => number {
  const byteAt = (light: number) => Math.round(255 * Math.min(1, Math.max(0, curve(light))))
  // The least light that is shown as each byte, to the last bit.
  const steps = new Float64Array(257).fill(Infinity)
  const [first, last] = [byteAt(0), byteAt(1)]
  for (let byte = first + 1; byte <= last; byte++) {
    let [below, at] = [byte > first + 1 ? steps[byte - 1]! : 0, 1]
    if (byteAt(below) >= byte) at = below
    for (;;) {
      const middle = (below + at) / 2
      if (middle <= below || middle >= at) break
      if (byteAt(middle) >= byte) at = middle
      else below = middle
    }
    steps[byte] = at
  }
  const CELLS = 2048
  const begins = new Uint8Array(CELLS + 1)
  for (let cell = 0, byte = first; cell <= CELLS; cell++) {
    while (byte < last && steps[byte + 1]! <= cell / CELLS) byte++
    begins[cell] = byte
  }
  return (light) => {
    if (!(light > 0)) return first
    if (light >= 1) return last
    let byte = begins[Math.floor(light * CELLS)]!
    while (light >= steps[byte + 1]!) byte++
    return byte
  }
}
