/** Places that are passed over: "sk next 2 sts", "sk next (ch-1 sp, dc, ch-1 sp)", "miss the dc behind it". */
import { readNoun, readRound, sizeAhead } from './nouns'
import { plainPlace } from './plain-place'
import { readPlace } from './places'
import { BOUNDARY } from './prose'
import type { Reader } from './reader'
import { readBareRowEnds } from './row-ends'
import { isSlip } from './stitch-name'
import type { NoteItem, Place, PlacePart, SkipItem } from './tree'
import { readStitch, sizesStitch } from './vocabulary'

/** "sk next (ch-1 sp, dc, ch-1 sp)": what is passed, one after the other. */
const readListed = (reader: Reader): Place | null => {
  const start = reader.at
  return reader.attempt(() => {
    reader.skip('the')
    reader.skip('next', 'last')
    if (!reader.skip('(', '[')) return null
    const parts: PlacePart[] = []
    while (!reader.skip(')', ']')) {
      while (reader.skip(',', 'and', 'next')) continue
      const from = reader.at
      const count = sizesStitch(reader) || sizeAhead(reader) ? 1 : (reader.number() ?? 1)
      const noun = readNoun(reader)
      if (!noun) return null
      const said = { which: 'next', each: false, noun, extent: null } as const
      const [part] = plainPlace(said, reader.span(from)).parts
      parts.push({ ...part!, count })
    }
    return parts.length > 1 ? { parts, over: false, ...reader.span(start) } : null
  })
}

/** "sk next ch-2, sc and ch-2,": the same without a bracket; nothing is worked in any of them. */
const readList = (reader: Reader): Place | null => {
  const start = reader.at
  return reader.attempt(() => {
    reader.skip('the')
    reader.skip('next', 'last', 'first')
    const parts: PlacePart[] = []
    for (let ends = false; ;) {
      const from = reader.at
      const count = sizesStitch(reader) || sizeAhead(reader) ? 1 : (reader.number() ?? 1)
      const chains =
        reader.peek()?.kind === 'chains' && /^([,;.]|and)$/.test(reader.key(1)) ? reader.peek()!.value : 0
      if (chains > 0) reader.at++
      const noun = chains > 0 ? ({ kind: 'space', chains, corner: false } as const) : readNoun(reader)
      if (noun?.kind !== 'space' && noun?.kind !== 'stitch') return null
      const said = { which: 'next', each: false, noun, extent: null } as const
      parts.push({ ...plainPlace(said, reader.span(from)).parts[0]!, count })
      if (ends) break
      reader.skip(',')
      ends = reader.skip('and')
      if (!ends && reader.key(-1) !== ',') return null
      reader.skip('next')
    }
    const kinds = new Set(parts.map(({ noun }) => noun.kind))
    return parts.length > 2 && kinds.size > 1 && /^[,;.]$/.test(reader.key())
      ? { parts, over: false, ...reader.span(start) }
      : null
  })
}

/** "(The Rnd 4 st) behind the dc", "behind it", "(hidden behind FPtr)": which one is passed. */
function passBehindIt(reader: Reader): void {
  const bracketed = reader.attempt(() => {
    if (!reader.skip('(', '[')) return null
    if (reader.spelled() === 'hidden') reader.at++
    if (!/^(behind|beneath|underneath|under)$/.test(reader.spelled())) return null
    while (reader.peek() && !/^[([)\]*]$/.test(reader.key())) reader.at++
    return reader.skip(')', ']') || null
  })
  if (bracketed) return
  if (reader.sees('behind')) while (reader.peek() && !reader.seesAny(BOUNDARY)) reader.at++
}

function readSkipped(reader: Reader): Place | null {
  reader.skip('over', 'out')
  // "Miss these two tr.".
  if (reader.sees('these') || reader.sees('those')) reader.at++
  const start = reader.at
  // "One stitch is left: skip it".
  const left = [-3, -4].some((ahead) => /^(left|remains?|remaining)$/.test(reader.spelled(ahead + 1)))
  if (left && reader.skip('it')) {
    const noun = { kind: 'stitch', name: null } as const
    return plainPlace({ which: 'next', each: false, noun, extent: null }, reader.span(start))
  }
  const place = readBareRowEnds(reader) ?? readListed(reader) ?? readList(reader) ?? readPlace(reader, true)
  if (place) return (passBehindIt(reader), place)
  return reader.attempt(() => {
    const named = reader.skip('the')
    reader.skip('a', 'an')
    // "The Rnd 4 st behind the dc".
    if (reader.isA('round')) readRound(reader)
    const space = reader.skipA('space')
    const stitch = space || reader.skipA('stitch') ? null : readStitch(reader)
    if (!space && !stitch && reader.key(-1) !== 'st') return null
    // "Skip the sl st" between two points.
    if (stitch && isSlip(stitch) && !reader.sees('behind')) {
      const slip = { kind: 'stitch', name: stitch } as const
      return plainPlace({ which: 'next', each: false, noun: slip, extent: null }, reader.span(start))
    }
    // "Miss the dc behind it", "sk st behind FPdc": the one that a post stitch stands before.
    // "Skipping the sc" alone passes those that are passed anyway.
    if (named && !reader.sees('behind')) {
      // "*…, 1 sc in each of next 3 dc, skip the sc*", "*Skip the sc. Work …": it stands between two that are worked.
      const ends = reader.sees('.') ? /^(skip|miss|sk)$/.test(reader.spelled(start - 1 - reader.at)) : true
      if (!stitch || !/^[*,;.]?$/.test(reader.key()) || !ends) return null
      const only = { kind: 'stitch', name: stitch } as const
      return plainPlace({ which: 'next', each: false, noun: only, extent: null }, reader.span(start))
    }
    passBehindIt(reader)
    const span = reader.span(start)
    const noun = space
      ? ({ kind: 'space', chains: null, corner: false } as const)
      : ({ kind: 'stitch', name: null } as const)
    return plainPlace({ which: 'next', each: false, noun, extent: null }, span)
  })
}

/** Whether a stitch in the next place follows: what is left lies between two of them. */
export const goesOnBehind = (reader: Reader): boolean => {
  const at = reader.at
  if (!reader.skip(',')) return false
  reader.number()
  const part = readStitch(reader) ? readPlace(reader)?.parts[0] : undefined
  reader.at = at
  return part?.which === 'next'
}

/** "…, skipping the ch-3 corners", "ignoring all ch-1 sps": whatever of them there is is passed as it is anyway. */
export function readPassedOver(reader: Reader): NoteItem | null {
  const start = reader.at
  return reader.attempt(() => {
    if (!/^(skipping|missing|omitting|ignoring)$/.test(reader.spelled())) return null
    reader.at++
    const all = reader.skip('all', 'each', 'every')
    if (!reader.skip('the') && !all) return null
    const noun = readNoun(reader)
    const many = all || /s$/.test(reader.spelled(-1))
    const spaces = noun?.kind === 'space' || noun?.kind === 'corner'
    if (!spaces || !many || (reader.peek() && !reader.seesAny(BOUNDARY))) return null
    return { type: 'note', effect: null, ...reader.span(start) }
  })
}

/** "Sk next 2 sts", "miss the dc behind it". */
export function readSkip(reader: Reader): SkipItem | null {
  const start = reader.at
  return reader.attempt(() => {
    // "*5 ch, leave 1 tr, 1 dc in next tr".
    const leaves = reader.sees('leave') && reader.peek(1)?.kind === 'number' && !reader.peek(1)!.hyphen
    if (leaves) reader.at++
    if (!leaves && !reader.skipA('skip') && !reader.skipAll('leave', 'out')) return null
    const place = readSkipped(reader)
    if (place?.parts[0]!.noun.kind === 'chain') passOfTurning(reader)
    if (!place || (leaves && (reader.key() !== ',' || !goesOnBehind(reader)))) return null
    return { type: 'skip', place, unworked: false, ...reader.span(start) }
  })
}

/** "Skip 2 ch of turning ch, dc in next ch": those that the row before began with; passes it. */
const passOfTurning = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('of', 'on')) return null
    reader.skip('the')
    if (reader.skipA('own-chain')) return true
    return reader.skip('turning', 'starting', 'beg') && reader.skipA('chain') ? true : null
  }) === true
