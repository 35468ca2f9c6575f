/**
 * Oklab, a uniform colour space: B. Ottosson, "A perceptual color space for image processing" (2020), with its
 * published matrices. Light s times as strong has the coordinates times the cube root of s, so that paper in the
 * shadow lies on the line from paper to black. (culori has the same numbers for single colours; this one is for
 * millions of pixels, and a test compares the two.)
 */
export function toOklab(red: number, green: number, blue: number, into: Float64Array): void {
  const l = Math.cbrt(0.4122214708 * red + 0.5363325363 * green + 0.0514459929 * blue)
  const m = Math.cbrt(0.2119034982 * red + 0.6806995451 * green + 0.1073969566 * blue)
  const s = Math.cbrt(0.0883024619 * red + 0.2817188376 * green + 0.6299787005 * blue)
  into[0] = 0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s
  into[1] = 1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s
  into[2] = 0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s
}
