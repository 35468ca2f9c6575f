/**
 * How many characters a font says that it has, counted before fontkit lists them one by one: a group of twelve bytes
 * can say four thousand million, and a list of these ends the whole program, which no worker and no `catch` prevents.
 * Reads the table `cmap` as OpenType has it; throws where it is damaged.
 */

/** Code points of Unicode: no table says more of them, each once. */
const CODE_POINTS = 0x110000

class TooMany extends Error {}

/** Throws where a font (of a collection the one of this index) says more characters than there are. */
export function demandCountable(bytes: Uint8Array, index: number): void {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const isCollection = view.getUint32(0) === 0x74746366 // ttcf
  // Which fonts there are is told elsewhere.
  if (isCollection && index >= view.getUint32(8)) return
  const directory = isCollection ? view.getUint32(12 + 4 * index) : 0
  const seen = new Set<number>()
  let left = CODE_POINTS
  for (let table = 0; table < view.getUint16(directory + 4); table++) {
    const record = directory + 12 + 16 * table
    if (view.getUint32(record) !== 0x636d6170) continue // cmap
    const begin = view.getUint32(record + 8)
    for (let entry = 0; entry < view.getUint16(begin + 2); entry++) {
      const at = begin + view.getUint32(begin + 4 + 8 * entry + 4)
      if (seen.has(at)) continue
      seen.add(at)
      // What there is to look at is limited for all of them together.
      left -= demandFew(view, at)
      if (left < 0) throw new TooMany('groups')
    }
  }
}

/** Throws where a subtable says too many characters; answers with how many groups were looked at. */
function demandFew(view: DataView, at: number): number {
  const format = view.getUint16(at)
  let said = 0
  const count = (first: number, last: number): void => {
    if (last >= CODE_POINTS) throw new TooMany('no character')
    // Some tell the ends of a group the wrong way round, and are listed backwards then.
    said += Math.abs(last - first) + 1
    if (said > CODE_POINTS) throw new TooMany('characters')
  }
  if (format === 4) {
    const groups = view.getUint16(at + 6) >> 1
    for (let i = 0; i < groups; i++)
      count(view.getUint16(at + 16 + 2 * groups + 2 * i), view.getUint16(at + 14 + 2 * i))
    return groups
  }
  if (format === 10) count(view.getUint32(at + 12), view.getUint32(at + 12) + view.getUint32(at + 16))
  if (format !== 12 && format !== 13) return 1
  const groups = view.getUint32(at + 12)
  for (let i = 0; i < groups; i++) count(view.getUint32(at + 16 + 12 * i), view.getUint32(at + 20 + 12 * i))
  return groups
}
