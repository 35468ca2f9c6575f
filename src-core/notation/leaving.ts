/** What a worked round leaves for the next one: its stitches, the spaces between them, its corners. */
import type { LeftPlace, WorkedElement } from './worked'

/** Places in order. Chains that follow each other, with a picot between or not, are one space. */
export function leavePlaces(elements: readonly WorkedElement[]): {
  places: LeftPlace[]
  endsInSpace: boolean
} {
  const places: { -readonly [Key in keyof LeftPlace]: LeftPlace[Key] }[] = []
  let chains = 0
  let element = -1
  let endsInSpace = false
  const flush = () => {
    if (chains > 0)
      places.push({ kind: 'space', element, stitch: null, form: 'plain', chains, corner: false, group: -1 })
    chains = 0
    element = -1
  }
  for (const item of elements) {
    switch (item.role) {
      case 'space':
        chains += item.count
        if (element < 0) element = item.index
        break
      case 'closing':
        chains += item.count
        if (element < 0) element = item.index
        flush()
        endsInSpace = true
        break
      case 'stitch':
      case 'slip':
        flush()
        places.push({
          kind: item.role,
          element: item.index,
          stitch: item.stitch,
          form: item.form,
          chains: 0,
          corner: false,
          group: item.group,
          ...(item.into[0]?.post && { post: item.into[0].post }),
        })
        break
      case 'beginning':
      case 'stem':
        if (!item.standing) break
        flush()
        places.push({
          kind: 'stitch',
          element: item.index,
          stitch: item.countsAs,
          form: item.form,
          chains: 0,
          corner: false,
          group: item.group,
        })
        break
      case 'join':
        flush()
        break
      default:
        break
    }
  }
  flush()
  markCorners(places)
  return { places, endsInSpace }
}

/** A space between two stitches of one group is a corner; else the middle of an odd group of stitches. */
function markCorners(places: { -readonly [Key in keyof LeftPlace]: LeftPlace[Key] }[]): void {
  const count = places.length
  const at = (index: number) => places[(index + count) % count]!
  places.forEach((place, index) => {
    if (place.kind !== 'space' || count < 3) return
    const before = at(index - 1)
    const after = at(index + 1)
    if (before.kind === 'space' || after.kind === 'space' || before.group < 0 || before.group !== after.group)
      return
    place.corner = true
    place.group = before.group
  })
  // Where corners are spaces, groups of three stitches are sides.
  if (places.some((place) => place.corner)) return
  for (let index = 0; index < count;) {
    let end = index
    while (end < count && places[end]!.kind === 'stitch' && places[end]!.group === places[index]!.group) end++
    const size = end - index
    if (size >= 3 && size % 2 === 1 && size < count && places[index]!.group >= 0)
      places[index + (size >> 1)]!.corner = true
    index = Math.max(end, index + 1)
  }
}
