/** Places: "in next 5 sts", "in each ch-6 sp around", "in sp between next 2 dc", "around post of next tr of Rnd 1". */
import { passAsThere, passAsideBefore } from './as-there'
import { passOfThisPart, readElsewhere } from './elsewhere'
import { readGap } from './gap-nouns'
import { readExtent, sweepsAhead } from './extents'
import { passMissedOne } from './missed'
import { readLoop, readNoun, readRound, sizeAhead, sizedSpaceAhead } from './nouns'
import { atBase, readOwn } from './own-places'
import { opensBare, plainPlace, readAcross } from './plain-place'
import {
  passOfThese,
  passWorkedInto,
  readBegunLoop,
  readFacing,
  readLoopOf,
  readPetal,
  readSingled,
  readTipOf,
  readWithin,
} from './within'
import {
  belowAhead,
  endsPlace,
  passBehind,
  passBelow,
  passFreeSide,
  passFromLast,
  passHolds,
  passLikeness,
  passRear,
  passSameAs,
  passTopOfSame,
  passWhere,
  passWhereJoined,
  passWhichMissed,
  readBetween,
  POST_FOLLOWS,
  goesRoundStitch,
  opensPhrase,
  stitchesAhead,
  passTopOf,
} from './where'
import type { Reader } from './reader'
import { readRowEnds } from './row-ends'
import type { Noun, Place, PlacePart } from './tree'
import { readStitch } from './vocabulary'
import { ALL, FIRST_ONE, NEXT_ONE, readNounAfter, readWhich } from './which-words'
import type { Draft } from './which-words'

/** "At each corner", "at the corners": whether that stands at the cursor. */
const atCorner = (reader: Reader): boolean =>
  reader.sees('at') &&
  [1, 2, 3].some((ahead) => reader.key(ahead) === 'corner' && !reader.isA('stitch', ahead + 1))

/** A chain that is told by where it lies. */
const WHICH_GROUP = /\b(next|each|every|any|first|last|following|same)\b/i
const CHAINS_TOLD = /\b(bottom|base|foundation|lower|tip|point)\b/i

/** One part of a place, without its "in". `leading`: whether "in" stood before it. */
export function readPart(reader: Reader, around: boolean, inherited: Draft | null): PlacePart | null {
  const start = reader.at
  return reader.attempt(() => {
    passTopOfSame(reader)
    passFreeSide(reader)
    let loop = readLoop(reader)
    const rear = around && passRear(reader)
    const post = reader.skipAll('back', 'of') || around
    if (around) {
      reader.attempt(() => {
        reader.skip('the')
        if (!reader.skip('post', 'stem', 'bar', 'upright')) return null
        if (!reader.skip('of')) reader.skipAll('made', 'by')
        return true
      })
    }
    let asBeginning = false
    let nounStart = start
    const finish = (
      draft: Draft,
      noun: Noun,
      round: PlacePart['round'] = null,
      unworked = false,
    ): PlacePart => {
      const nounSpan = reader.span(Math.min(nounStart, reader.at - 1))
      const extent = draft.which === 'each' || draft.which === 'every' ? readExtent(reader) : null
      return {
        ...draft,
        noun,
        extent,
        loop,
        around: post,
        round,
        unworked,
        asBeginning,
        nounSpan,
        ...(rear && { behind: true }),
        ...reader.span(start),
      }
    }
    if (loop && !around && sweepsAhead(reader)) return finish(ALL, { kind: 'stitch', name: null })
    const own = readOwn(reader)
    // "Around post of beg ch-3 of Rnd 1": the stitch for which it stands there.
    const stands = around && own?.noun.kind === 'own' && !own.round ? readRound(reader) : null
    if (stands)
      return finish({ which: 'first', count: 1, each: false }, { kind: 'stitch', name: null }, stands)
    if (own) return finish({ which: own.base ? 'same' : 'first', count: 1, each: false }, own.noun, own.round)
    passTopOf(reader)
    const begun = readBegunLoop(reader)
    if (begun) {
      asBeginning = true
      return finish({ which: 'same', count: 1, each: false }, begun)
    }
    if (passMissedOne(reader)) return finish(NEXT_ONE, { kind: 'stitch', name: null }, null, true)
    const after = readNounAfter(reader)
    if (after) return finish(NEXT_ONE, after)
    const gapAlone = readGap(reader)
    if (gapAlone) return finish({ ...NEXT_ONE, ...gapAlone }, gapAlone.noun, readRound(reader))
    const facing = readFacing(reader)
    if (facing) return finish(NEXT_ONE, facing.noun, facing.round)
    const other = readElsewhere(reader)
    if (other) return finish({ which: 'elsewhere', count: 1, each: false }, other)
    let draft = readWhich(reader)
    if (draft) passLikeness(reader)
    // "1 d.c. round the next upright tr."
    if (around) reader.skip('upright')
    const compact = reader.sees('r') && reader.peek(1)?.kind === 'number'
    let named = reader.isA('round') || compact ? readRound(reader) : null
    let unworked = false
    while (reader.skip('skipped', 'skip', 'unworked')) unworked = true
    loop ??= readLoop(reader)
    if (reader.skip('center')) {
      // "center of next ch-7 lp": the loop itself.
      const loop = reader.attempt(() => {
        if (!reader.skip('of')) return null
        const into = readWhich(reader) ?? draft
        const space = readNoun(reader)
        // "Center of next shell" is where the next shell is worked into.
        const form = space?.kind === 'stitch' ? space.name?.form : null
        const whole = form === 'shell' || form === 'v-stitch'
        return space && (space.kind === 'space' || space.kind === 'ring' || whole) ? { into, space } : null
      })
      if (loop) return finish(loop.into ?? { which: 'next', count: 1, each: false }, loop.space)
      // "In each of center 3 dc of petal".
      const run = reader.peek()?.hyphen || sizeAhead(reader) ? 1 : (reader.number() ?? 1)
      const what = readNoun(reader)
      // "In that center sc": the one where the hook stands.
      if (what?.kind === 'stitch' && draft?.which === 'same') return finish(draft, what)
      if (what?.kind === 'chain') {
        const along = readLoopOf(reader)
        return along && finish({ which: along.which, count: 1, each: along.each }, along.noun)
      }
      // "center of the 7 dc", "middle one of next petal", "center of any petal".
      if (!what) reader.skip('one')
      const tip = what ? null : readTipOf(reader)
      if (tip) return finish(tip, { kind: 'landmark', name: 'tip' })
      const group = readWithin(reader)
      if (!what && !group) return null
      if (what?.kind === 'ring') return finish(draft ?? NEXT_ONE, what)
      if (what && what.kind !== 'stitch' && what.kind !== 'space') return null
      // "center st of next ch-5 loop".
      const looped = what?.kind === 'stitch' && !what.name && !group ? readLoopOf(reader) : null
      if (looped) return finish({ which: looped.which, count: 1, each: looped.each }, looped.noun)
      const name = what?.kind === 'stitch' ? what.name : (group?.name ?? null)
      const size = group?.size
      const within: Noun = { kind: 'within', what: what?.kind ?? 'stitch', nth: 'center', run, name, size }
      const several = run > 1 ? { which: 'next' as const, count: 1, each: true } : draft
      const drawn = several ?? { which: group?.each ? 'each' : 'next', count: 1, each: false }
      // "Center tr of 3-tr group of Rnd 1".
      return finish(drawn, within, group && readRound(reader))
    }
    nounStart = reader.at
    if (passOfThese(reader, draft?.which ?? null)) return finish(draft ?? FIRST_ONE, { kind: 'chain' })
    const plain = readNoun(reader) ?? (reader.key(-1) === 'in' ? null : readPetal(reader))
    const single = plain ? null : readSingled(reader)
    const noun = plain ?? single
    if (single) draft ??= NEXT_ONE
    if (noun?.kind === 'landmark') draft ??= readTipOf(reader)
    // "3rd ch of next loop": the loop itself.
    const along = noun?.kind === 'chain' && draft?.which === 'nth' ? readLoopOf(reader) : null
    if (along) return finish({ which: along.which, count: 1, each: along.each }, along.noun)
    // "ch of next V-st".
    const inside = noun?.kind === 'chain' && !draft ? readWithin(reader) : null
    if (inside) return finish(NEXT_ONE, { kind: 'within', what: 'space', nth: 'center', name: null })
    if (!noun) {
      // "4th of 7 dc", "the first of each group".
      const group = draft?.which === 'nth' || draft?.which === 'first' ? readWithin(reader) : null
      if (draft && group) {
        const nth = draft.which === 'nth' ? draft.count : 1
        const { name, size } = group
        return finish(NEXT_ONE, { kind: 'within', what: 'stitch', nth, name, size })
      }
      if (loop && (named || reader.isA('round'))) draft ??= NEXT_ONE // "In a front lp of Rnd 2".
      // "hdc in next", "2 dc in same", "in each": the word for a stitch is left out.
      if (!draft || draft.which === 'nth' || (draft.which === 'any' && !loop)) return null
      if (reader.sees('place')) reader.at++
      if (draft.which === 'same') asBeginning = passSameAs(reader)
      return finish(draft, { kind: 'stitch', name: null }, named ?? readRound(reader), unworked)
    }
    // "In the st you missed".
    unworked ||= noun.kind === 'stitch' && passWhichMissed(reader)
    if (noun.kind === 'chain' && draft?.which === 'nth' && reader.skip('from')) {
      reader.skip('the', 'your')
      if (!reader.skip('hook')) return null
      return finish({ which: 'from-hook', count: draft.count, each: false }, noun)
    }
    // "1 dc into next ss between two petals": where those meet.
    const slip = noun.kind === 'stitch' && noun.name?.stitch === 'sl st'
    const two = reader.sees('between') && /^(any|two|2)$/.test(reader.spelled(1))
    const meeting = slip && two ? readGap(reader) : null
    if (meeting)
      return finish({ ...(draft ?? NEXT_ONE), which: meeting.which ?? draft?.which ?? 'next' }, meeting.noun)
    if (noun.kind === 'gap' && !draft) draft = { which: 'next', count: 1, each: false }
    if (noun.kind === 'stitch' || (noun.kind === 'space' && draft?.which !== 'each')) {
      const whole = noun.kind === 'stitch' && noun.name?.form === 'v-stitch'
      const group = readWithin(reader)
      const each = draft?.which === 'each'
      // "in the V of next V-st".
      if (group && whole && !each) return finish(NEXT_ONE, noun)
      // "In each of next 7 dc of petal", "in next tr of fan": where those lie that come next.
      const other = WHICH_GROUP.test(reader.words(reader.span(nounStart)))
      const oneMore = noun.kind === 'stitch' && noun.name !== null && !other
      if (group && draft?.which === 'next' && (draft.count > 1 || oneMore)) return finish(draft, noun)
      // "Each dc of petals" are those of all.
      const all = each && (group?.each || /s$/.test(reader.spelled(-1)))
      if (group && !all) {
        const which = draft?.which
        const nth =
          which === 'nth' ? draft!.count : which === 'last' ? 'last' : which === 'first' ? 1 : 'center'
        const run = each ? 'all' : which === 'last' || which === 'first' ? draft!.count : 1
        const name = noun.kind === 'stitch' ? noun.name : null
        const within: Noun = { kind: 'within', what: noun.kind, nth, run, name, size: group.size }
        const many = group.many ?? 1
        return finish({ which: 'next', count: many, each: many > 1 || (draft?.each ?? false) }, within)
      }
    }
    // "in the bottom ch", "in ch at tip".
    const told = noun.kind === 'chain' && CHAINS_TOLD.test(reader.words(reader.span(nounStart)))
    if (told) draft ??= NEXT_ONE
    if (noun.kind === 'chain' && (!draft || draft.which === 'same') && passHolds(reader)) {
      asBeginning = true
      return finish({ which: 'same', count: 1, each: false }, noun)
    }
    // "in the st where you joined".
    if (!draft && noun.kind === 'stitch' && passWhereJoined(reader)) {
      asBeginning = true
      return finish({ which: 'same', count: 1, each: false }, noun)
    }
    // "sl st in sl st between petals": there is one between each two.
    if (noun.kind === 'stitch' && readBetween(reader)) draft ??= { which: 'next', count: 1, each: false }
    const made = reader.attempt(() =>
      (reader.skip('just') || draft?.which === 'last') && reader.skip('made', 'worked') ? true : null,
    )
    if (made) draft = { which: 'made', count: 1, each: false }
    else if (reader.skipAll('made', 'by')) {
      draft = { which: 'made', count: 1, each: false }
      while (reader.skip('last', 'the', 'joining', 'prev')) continue
      readStitch(reader)
    }
    // "In 4th st from last", "in 2nd dc from there".
    if (draft?.which === 'nth' && noun.kind === 'stitch') passFromLast(reader)
    if (draft?.which === 'same') asBeginning = passSameAs(reader)
    else if (noun.kind === 'stitch' && passWorkedInto(reader)) draft ??= NEXT_ONE
    const bare =
      noun.kind === 'ring' ||
      noun.kind === 'corner' ||
      noun.kind === 'landmark' ||
      (noun.kind === 'space' && noun.corner)
    draft ??= inherited ?? null
    if (!draft && noun.kind === 'stitch') named ??= readRound(reader)
    const where = passWhere(reader) || (noun.kind === 'stitch' && belowAhead(reader))
    if (!draft) {
      const plural = /s$/.test(reader.spelled(-1))
      const entered = reader.tokens[start - 1]?.kinds.has('into')
      if ((around || unworked || named || where) && noun.kind === 'stitch')
        draft = { which: 'next', count: 1, each: false }
      // "5 dc in next loop, 1 dc in dtr, …": the next one of that name.
      else if (noun.kind === 'stitch' && noun.name && !plural && entered && endsPlace(reader))
        draft = { which: 'next', count: 1, each: false }
      else if (noun.kind === 'space' || bare || loop)
        draft =
          plural && (loop || noun.kind === 'corner')
            ? { which: 'each', count: 1, each: noun.kind === 'corner' }
            : NEXT_ONE
      else return null
    }
    if (draft.which === 'nth' && noun.kind !== 'stitch' && noun.kind !== 'chain' && noun.kind !== 'space')
      return null
    const ofThis = reader.attempt(() => {
      if (passOfThisPart(reader)) return true
      if (!reader.skip('of', 'on')) return null
      if (!reader.skip('current', 'this', 'present', 'same')) return null
      return reader.skipA('motif') || null
    })
    // "first ch of picot".
    reader.attempt(
      () =>
        (noun.kind === 'chain' && reader.skip('of') && (reader.skip('the'), reader.skipA('picot'))) || null,
    )
    passAsideBefore(reader)
    const said = ofThis ? null : (named ?? readRound(reader))
    const below = noun.kind === 'stitch' && passBelow(reader)
    // "FPdc around sc below next sc": of the round before the last.
    const round = said ?? (below && around ? { below: 2 } : null)
    // "the dc of the 2nd round lying between this petal and the next".
    if (round) reader.attempt(() => (reader.skip(','), passWhere(reader) || null))
    const behind = around && passBehind(reader)
    return {
      ...finish(draft, noun, round, unworked),
      ...(behind && { behind }),
      ...(below && { beneath: !said }),
    }
  })
}

/** A place with its "in", "around", "over"; conjunctions "and in next 3 sts" belong to it. Null: no place here. */
export function readPlace(reader: Reader, bare = false): Place | null {
  const start = reader.at
  return reader.attempt(() => {
    const ends = readRowEnds(reader)
    if (ends) return ends
    // "Sl st to corner sp and work (3 dc, ch 2, 3 dc) there", "Sl st to the corner sp. Into it work 3 ch, 2 dc".
    const isThere = reader.sees('there') && /^[,;.)]?$/.test(reader.key(1)) && ++reader.at > 0
    const isInIt = reader.isA('into') && reader.key(1) === 'it' && reader.isA('verb', 2)
    if (isThere || isInIt) {
      if (isInIt) reader.at += 2
      const noun = { kind: 'stitch', name: null } as const
      return plainPlace({ which: 'same', each: false, noun, extent: null }, reader.span(start))
    }
    // "1 long dc down into the gap".
    if (reader.skip('down') && !reader.isA('into')) return null
    let over = false
    let around = false
    if (reader.isA('into')) {
      // "dc across to turning ch", "sc to last 2 sts" go over all of them.
      const at = reader.at
      const sweeps = (reader.key() === 'to' || reader.key(1) === 'to') && readExtent(reader)?.to === 'last'
      reader.at = at
      if (sweeps) return null
      // "sl st across to next ch-2 sp": the way there.
      if (['over', 'across', 'along'].includes(reader.key()) && reader.key(1) === 'to') reader.at++
      over = reader.key() === 'over' || reader.key() === 'across'
      around = reader.key() === 'around'
      // "between next 2 dc" is a place of its own.
      if (!reader.sees('between')) reader.at++
    } else if (reader.sees('round') && (POST_FOLLOWS.test(reader.key(1)) || goesRoundStitch(reader))) {
      // "1 dc round stem of next tr", "1 rtrf round ftr of Round 3" as the UK says it.
      around = true
      reader.at++
    } else if (reader.sees('per') && (reader.isA('stitch', 1) || reader.isA('space', 1))) around = false
    else if (atBase(reader) || atCorner(reader)) reader.at++
    else if (!bare && !opensBare(reader)) return null
    const first = readPart(reader, around, null)
    if (!first) return null
    const parts = [first]
    for (;;) {
      const more = reader.attempt(() => {
        reader.skip(',')
        if (!reader.skip('and') && !(reader.isA('into', 1) && reader.skip('+'))) return null
        // "in this sp and again in next sp".
        if (reader.isA('into', 1)) reader.skip('again')
        const before = parts[parts.length - 1]!
        const swept = before.which === 'from-hook' ? readAcross(reader) : null
        if (swept) return swept
        const again = reader.isA('into')
        if (again) around = reader.key() === 'around'
        if (again && !reader.sees('between')) reader.at++
        if (!again && reader.sees('the', 'next')) reader.at++
        if (
          !again &&
          !reader.sees('each') &&
          !reader.sees('next') &&
          !reader.sees('last') &&
          before.which !== 'each' &&
          !(before.which === 'next' && sizedSpaceAhead(reader))
        )
          return null
        // "1 tr in each tr and a corner in each sp": another thing that is worked.
        if (!again && reader.sees('a')) return null
        const counted = reader.peek()?.kind === 'number' || reader.isA('number')
        if (!again && counted && !sizeAhead(reader)) return null
        const inherited =
          !again && before.which === 'each' ? { which: 'each' as const, count: 1, each: true } : null
        const part = readPart(reader, around, inherited)
        // "Dc in each dc and corners as in Rnd 2": told by that round.
        if (part?.noun.kind === 'corner' && passAsThere(reader)) return null
        // "… and a corner in each ch-2 sp": worked there.
        if (!again && part?.noun.kind === 'corner' && reader.isA('into')) return null
        // "dc in every dc, and in each corner work 2 dc, ch 2, 2 dc": a place of what follows.
        if (again && (reader.sees('work') || stitchesAhead(reader)) && !opensPhrase(reader, start))
          return null
        // "2 dc in each dc and FPdc around each FPdc": another stitch, with a place of its own.
        const other = inherited !== null && part?.noun.kind === 'stitch' && part.noun.name !== null
        return other && reader.attempt(() => readPlace(reader)) ? null : part
      })
      if (!more) break
      parts.push(more)
    }
    return { parts, over, ...reader.span(start) }
  })
}
