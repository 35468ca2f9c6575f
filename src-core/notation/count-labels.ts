/** What stands before the counts of a round: "Stitch count:", "we have now", "this round has", "count every row:". */
import type { Reader } from './reader'

/** "That makes 6 sc", "this gives 12 sts": passes all before the figure. */
const passThatMakes = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('that', 'this', 'which')) return null
    if (!/^(makes|gives|leaves|brings|is)$/.test(reader.spelled())) return null
    reader.at++
    reader.skip('you', 'us')
    return reader.peek()?.kind === 'number' || reader.isA('number') || null
  }) === true

/** "(Count) every row:", "each round (has)", "(count) each time:": before the figure; passes it. */
const passOfRounds = (reader: Reader): boolean =>
  reader.attempt(() => {
    const told = reader.isA('tells', -1)
    while (told && reader.skip('at', 'for', 'in', 'after', 'the', 'end', 'of')) continue
    if (!reader.skip('each', 'every')) return null
    if (!reader.skipA('round') && !(told && reader.skip('times'))) return null
    return told || reader.isA('tells') || null
  }) === true

/** "Count them:", "count your stitches:", "count again -": asked of the maker before the figure. */
const passAsked = (reader: Reader): boolean =>
  reader.attempt(() => {
    while (reader.skip('now', 'then', 'please')) continue
    if (!/^(count|counting|check|recount)$/.test(reader.spelled())) return null
    reader.at++
    reader.skip('up')
    const named = reader.attempt(() => {
      reader.skip('your', 'the', 'all')
      return reader.skip('st') || reader.skip('work') || null
    })
    if (!named && !reader.skip('them', 'again', 'now', 'carefully') && !reader.sees(':')) return null
    while (reader.skip('again', 'now', 'carefully', 'here')) continue
    while (reader.skip(':', '-', '–', '—', ',')) continue
    return true
  }) === true

/** "Stitch count:", "you should have", "total =" before the counts of a round; passes it. */
export function passCountLabel(reader: Reader): void {
  while (
    passThatMakes(reader) ||
    passAsked(reader) ||
    passTotal(reader) ||
    passOfRounds(reader) ||
    reader.skipA('tells') ||
    reader.skip('=', ':', 'of') ||
    (reader.isA('stitch') && (reader.isA('tells', 1) || reader.key(1) === ':') && reader.skip('st'))
  )
    continue
}

/** Who has the stitches, or what comes to them. */
const WHO = new Set(
  'we you i it this that these so now then here in total all result round rnd row the'.split(' '),
)
const COMES =
  /^(get|got|gets|gives|give|makes|have|has|count|are|is|brings|leaves|obtain|obtained|end|ends|reach|comes|remain)$/
const AFTER = new Set('up with to now us you at a total of in all altogether exactly still'.split(' '))
const LONGEST = 5

/** "In all, 24 tr", "altogether 24 sc", "thus 24 sc": says without a verb that all are counted; passes it. */
const passAltogether = (reader: Reader): boolean =>
  reader.attempt(() => {
    const words =
      reader.skipAll('in', 'all') ||
      reader.skipAll('all', 'in', 'all') ||
      reader.skipAll('all', 'told') ||
      reader.skipAll('in', 'total') ||
      reader.skip('altogether', 'total', 'totally', 'tog', 'thus', 'therefore', 'hence')
    if (words) reader.skip(',', ':')
    return (words && (reader.peek()?.kind === 'number' || reader.isA('number'))) || null
  }) === true

/** "We get 16 dc", "in total there are 24 sc", "the result is 25 sc", "you end up with 25 sc": all before the figure. */
const passTotal = (reader: Reader): boolean =>
  reader.attempt(() => {
    const start = reader.at
    // "We've 16 dc", "now it's 30 dc".
    const isShort = (ahead: number) => /^(we|you|i|it)['’](ve|ll|s)$/i.test(reader.peek(ahead)?.text ?? '')
    if (isShort(1)) reader.skip('now', 'so', 'then')
    const short = isShort(0) && ++reader.at > start
    if (passAltogether(reader)) return true
    const opens = short || reader.seesAny(WHO)
    while (reader.at - start < LONGEST && reader.seesAny(WHO)) reader.at++
    reader.skip('there')
    while (reader.skip('should', 'will', 'must', 'now', 'still')) continue
    const comes = opens && COMES.test(reader.spelled()) && ++reader.at > start
    if (!comes && !short) return null
    while (reader.seesAny(AFTER)) reader.at++
    return reader.peek()?.kind === 'number' || reader.isA('number') || null
  }) === true

/** Whether the words at the cursor open a count in that way; passes nothing. */
export function totalAhead(reader: Reader): boolean {
  const { at } = reader
  const found = passTotal(reader) || passOfRounds(reader) || passAsked(reader)
  reader.at = at
  return found
}

/** Whether the maker is asked to count at the cursor, or a sentence counts all: "Together: 24 sc"; passes nothing. */
export function askedAhead(reader: Reader): boolean {
  const { at } = reader
  const opens = /^[.!?)\]]$/.test(reader.key(-1)) || reader.peek()?.first === true
  const found = passAsked(reader) || (opens && passAltogether(reader))
  reader.at = at
  return found
}

/** "per side", "on each side", "between corners", "at each corner", "at either end": passes it; what each of them is. */
export function passPer(reader: Reader, end: number): 'side' | 'each' | null {
  return reader.attempt(() => {
    // "7 tr, one more at either side".
    const more = reader.skip('more', 'extra', 'fewer', 'less')
    // "11 each side", "14 for each side", "six to a side".
    const before = reader.key()
    if (!reader.skip(...BEFORE_EACH) && !reader.sees('each')) return null
    const from = reader.at
    while (reader.skip('of', 'a', 'each', 'every', 'the', 'all', 'both', 'either', 'these', 'those')) continue
    const several = reader.at > from || before === 'per' || before === 'between' || before === 'a'
    const counted = reader.number() !== null
    if (reader.at >= end) return null
    if (!several && !counted && !/s$/.test(reader.spelled())) return null
    if (reader.skip('side', 'sides', 'edge', 'edges')) return more ? 'each' : 'side'
    const corner = reader.sees('corner')
    const part = corner || PARTS.has(reader.spelled())
    if (!part || ++reader.at > end) return null
    // "In each corner sp" is a place.
    if (reader.isA('space') || reader.isA('stitch')) return null
    return corner && before === 'between' ? 'side' : 'each'
  })
}
const BEFORE_EACH = ['per', 'on', 'along', 'between', 'a', 'for', 'to', 'at', 'in', 'down', 'across']
const PARTS = new Set(
  'petal petals section sections rep repeat end ends point points half tip tips'.split(' '),
)

/** "(6 petals, 7 sts) in each", "each", "for each one": at the end of a count; passes it. */
export const passInEach = (reader: Reader, end: number): boolean =>
  reader.attempt(() => {
    reader.skip('in', 'on', 'for', 'to', 'of')
    if (!reader.skip('each', 'every') || reader.at > end) return null
    reader.skip('one')
    return reader.at === end || null
  }) === true

/** "(13 sts: 6 dtr) on the two tops", "down the sides", "at the point": where some of them stand; passes it. */
export const passWhere = (reader: Reader, end: number): boolean =>
  reader.attempt(() => {
    // "12 shells with 12 sc between (them)".
    if (reader.skip('between')) {
      while (reader.skip('them', 'these', 'those', 'each', 'all')) continue
      return reader.at >= end || /^(,|and|&|;|\+|plus|\()$/.test(reader.key()) || null
    }
    if (!reader.skip('on', 'down', 'up', 'along', 'at', 'for', 'across', 'over', 'from', 'behind'))
      return null
    if (!reader.skip('the', 'its', 'your', 'top', 'bottom', 'both', 'either')) return null
    const start = reader.at
    while (reader.at < end && !/^(,|and|&|;|\+|plus)$/.test(reader.key())) {
      if (reader.peek()!.kind !== 'word' || reader.at - start > LONGEST) return null
      reader.at++
    }
    return true
  }) === true
