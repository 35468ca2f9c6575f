/** How far something goes: "around", "to end", "across to next corner", "until 2 sts are left". */
import { readNoun } from './nouns'
import type { Reader } from './reader'
import type { Extent, Noun } from './tree'
import { readStitch } from './vocabulary'

/** "center sc", "centre dc of next corner", "middle st of the 3-sc group": the stitch that is a corner; passes it. */
const passCenterStitch = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('center')) return null
    const named = reader.skipA('stitch') || readStitch(reader) !== null
    const ofGroup = reader.attempt(() => {
      if (!reader.skip('of', 'in', 'at', 'on')) return null
      while (reader.skip('the', 'next', 'each')) continue
      reader.number()
      readStitch(reader)
      return reader.skip('corner') || reader.skipA('group') || null
    })
    return named || ofGroup
  }) === true

/** "until one is left", "until there are 2 sts left", "till 3 sts remain", "except the last st": how many are left; passes it. */
const readLeft = (reader: Reader): number | null =>
  reader.attempt(() => {
    const but = reader.skip('except', 'but', 'excepting')
    if (!but && !reader.skip('until', 'till')) return null
    while (reader.skip('there', 'you', 'have', 'is', 'are', 'only', 'for', 'just')) continue
    const last = reader.skip('the') && reader.skip('last')
    const count = reader.number() ?? (last || (!but && reader.skip('a')) ? 1 : null)
    if (count === null || (but && !last)) return null
    reader.attempt(() => readNoun(reader))
    reader.skip('one')
    if (but || last) return but ? count : null
    while (reader.skip('is', 'are', 'has', 'have')) continue
    return reader.skip('left', 'rem', 'remain', 'remains', 'unworked') ? count : null
  })

/** "(to within) 2 sts of the end": how many are left; passes it. */
const readWithinEnd = (reader: Reader): number | null =>
  reader.attempt(() => {
    const count = reader.number()
    if (count === null || !readNoun(reader) || !reader.skip('of', 'from')) return null
    reader.skip('the')
    return reader.skip('end') ? count : null
  })

/** "1 st before (the corner)", "st before", "the last 2 sts before": how many are left to it; passes it. */
const readShort = (reader: Reader): number | null =>
  reader.attempt(() => {
    reader.skip('the')
    reader.skip('last')
    const count = reader.number() ?? 1
    return (reader.skipA('stitch') || readStitch(reader) !== null) && reader.skip('before') ? count : null
  })

/** "the dc3tog of the row below", "last sc3tog", "next dec": a stitch of that name; passes it. */
const readNamed = (reader: Reader): Noun | null =>
  reader.attempt(() => {
    while (reader.skip('the', 'next', 'last', 'prev')) continue
    const noun = readNoun(reader)
    if (noun?.kind !== 'stitch' || !noun.name) return null
    reader.attempt(() => {
      if (!reader.skip('of', 'in', 'on', 'from')) return null
      while (reader.skip('the', 'last', 'prev')) continue
      return reader.skipA('round') && (reader.skip('below', 'before') || true) ? true : null
    })
    return noun
  })

/** "(Sc in each sc to last), 2 sc in last": whether the last one is worked by itself behind the comma. */
const lastFollows = (reader: Reader): boolean => {
  if (!reader.sees(',')) return false
  for (let ahead = 1; ahead <= 6 && !/^[,.;:]?$/.test(reader.key(ahead)); ahead++)
    if (reader.key(ahead) === 'last') return true
  return false
}

/** "(Along) each side", "(across) all four sides", "(along) the sides": passes it. */
const passSides = (reader: Reader): boolean =>
  reader.attempt(() => {
    reader.skip('the')
    const all = reader.skip('each', 'every', 'all', 'both')
    while (reader.skip('of', 'the')) continue
    const told = reader.number() !== null || all
    return reader.skip('sides', 'edges') || (told && reader.skip('side', 'edge')) || null
  }) === true

/** "around", "to end", "across to next corner", "to last 2 sts", "to tip of petal". */
export function readExtent(reader: Reader): Extent | null {
  return reader.attempt((): Extent | null => {
    if (reader.skip('all') && reader.skip('the')) reader.skip('way')
    const swept = reader.skip('around', 'round', 'across', 'along')
    if (swept) {
      if (!passSides(reader)) reader.skip('side', 'edge')
      if (!reader.sees('to')) {
        while (reader.skip('the', 'entire', 'whole', 'rem')) continue
        reader.skip('rnd', 'round', 'ring')
        return { to: 'end' }
      }
    }
    if (reader.skip('evenly')) return null
    const left = readLeft(reader)
    if (left !== null) return { to: 'last', count: left }
    if (!reader.skip('to', 'until', 'up')) return null
    reader.skip('to', 'within')
    const within = reader.key(-1) === 'within' ? readWithinEnd(reader) : null
    if (within !== null) return { to: 'last', count: within }
    const short = readShort(reader)
    if (short !== null) {
      const to = readPoint(reader)
      if (to) return to.to === 'corner' ? { ...to, short } : to
      const noun = readNamed(reader)
      return noun ? { to: 'named', noun, short } : null
    }
    reader.skip('the')
    if (reader.skip('end')) {
      if (reader.skip('of')) {
        reader.skip('the')
        reader.skipA('round')
      }
      return { to: 'end' }
    }
    if (reader.skip('last')) {
      const told = reader.number()
      const count = told ?? 1
      // "Sc in each st to last 2, sc2tog".
      if ((told !== null && /^[,;]$/.test(reader.key())) || lastFollows(reader)) return { to: 'last', count }
      return readNoun(reader) || reader.key(-1) === 'one' ? { to: 'last', count } : null
    }
    // "to turning ch": the last stitch of the row, which is left.
    const edge = reader.skip('turning') ? reader.skipA('chain') : reader.skipA('own-chain')
    if (edge) return { to: 'last', count: 1 }
    reader.skip('next')
    return readPoint(reader)
  })
}

/** "center st", "next corner sp", "tip of petal" as what something goes up to. */
function readPoint(reader: Reader): Extent | null {
  return reader.attempt((): Extent | null => {
    while (reader.skip('the', 'next')) continue
    if (passCenterStitch(reader)) return { to: 'corner', center: true }
    if (reader.skip('tip', 'point')) {
      if (reader.skip('of')) {
        reader.skip('the', 'next', 'each')
        reader.skip('petal', 'leaf')
      }
      return { to: 'landmark', name: 'tip' }
    }
    if (reader.skip('valley')) {
      reader.skip('st', 'sc', 'between')
      return { to: 'landmark', name: 'valley' }
    }
    const noun = readNoun(reader)
    if (noun && (noun.kind === 'corner' || (noun.kind === 'space' && noun.corner))) return { to: 'corner' }
    if (noun && noun.kind === 'space') return { to: 'corner' }
    return null
  })
}

/** "(Sc in BLO) around", "across", "all around": whether nothing but that stands at the cursor. */
export const sweepsAhead = (reader: Reader): boolean => {
  const { at } = reader
  const extent = readExtent(reader)
  const ends = extent?.to === 'end' && /^([,;.:([{)\]]|and|then|)$/.test(reader.key())
  const opens = reader.peek()?.first ?? false
  reader.at = at
  return ends || (extent?.to === 'end' && opens)
}
