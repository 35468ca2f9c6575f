/** Reading on from a change gives what reading the whole text anew gives. */
import { describe, expect, it } from 'vitest'
import { forgetCourses } from '../../../src-core/notation/continued'
import { readRounds } from '../../../src-core/notation/read'
import { tokenize } from '../../../src-core/notation/tokens'
import { loadPatterns } from '../../outside/whole-patterns'

const anew = (text: string, terms: 'US' | 'UK') => {
  forgetCourses()
  const { rounds, worked, findings, tree } = readRounds(text, { terms })
  return { rounds, worked, findings, repeats: [...tree.repeats.values()], items: tree.rounds }
}

const readingOn = (before: readonly string[], text: string, terms: 'US' | 'UK') => {
  forgetCourses()
  for (const each of before) readRounds(each, { terms })
  const { rounds, worked, findings, tree } = readRounds(text, { terms })
  return { rounds, worked, findings, repeats: [...tree.repeats.values()], items: tree.rounds }
}

/** Edits that hands make: a character taken out, put in, a word changed, a line taken out; spread over the text. */
function edits(text: string): string[] {
  const at = (share: number) => Math.floor(text.length * share)
  const lines = text.split('\n')
  return [
    text.slice(0, at(0.95)) + text.slice(at(0.95) + 1),
    text.slice(0, at(0.5)) + ' ' + text.slice(at(0.5)),
    text.slice(0, at(0.7)) + '2' + text.slice(at(0.7)),
    text.replace(/in next (\w+)(?![^]*in next \w)/, 'in each $1'),
    lines.slice(0, -2).join('\n'),
    text + '\nRnd 9: Ch 1, sc in each st around; join. Fasten off.',
    text.slice(0, at(0.3)),
  ]
}

describe('reading on', () => {
  const some = loadPatterns('patterns').filter((_, at) => at % 4 === 0)
  it.each(some.map((pattern) => [pattern.id, pattern] as const))(
    '%s: is the same as reading the whole anew, whatever is edited',
    (_, { text, terms }) => {
      for (const edited of edits(text)) {
        const fresh = anew(edited, terms)
        expect(readingOn([text], edited, terms)).toEqual(fresh)
        // And back again: what was worked into the rounds before is taken back.
        expect(readingOn([text, edited, text], edited, terms)).toEqual(fresh)
      }
    },
  )

  it('keeps the rounds before the change, as the same objects', () => {
    forgetCourses()
    const text = 'Rnd 1: Magic ring, ch 1, 6 sc in ring; join.\nRnd 2: Ch 1, 2 sc in each sc around; join.'
    const before = readRounds(text, { terms: 'US' })
    const after = readRounds(`${text} Turn.`, { terms: 'US' })
    expect(after.worked[0]).toBe(before.worked[0])
    expect(after.worked[1]).not.toBe(before.worked[1])
  })
})

describe('reading on behind a change that leaves what there was', () => {
  const RNDS = 40
  const STITCHES = 9
  const mandala = (third = ''): string =>
    Array.from({ length: RNDS }, (_, at) => {
      const lap = at > 1 ? `sc in next ${at - 1} sts, 2 sc in next st` : '2 sc in next st'
      const round = at === 0 ? `magic ring, ${STITCHES} sc in ring` : `ch 1, *${lap}; rep from * around`
      return `Rnd ${at + 1}: ${round}; join. (${STITCHES * (at + 1)} sc)${at === 2 ? third : ''}`
    }).join('\n')

  /** How many rounds were worked again: one that is taken over leaves the same places. */
  const workedAgain = (before: string, after: string, terms: 'US' | 'UK' = 'US'): number => {
    forgetCourses()
    const old = new Set(readRounds(before, { terms }).worked.map(({ places }) => places))
    return readRounds(after, { terms }).worked.filter(({ places }) => !old.has(places)).length
  }

  it('works that round again and no other, whatever the length of the rest', () => {
    expect(workedAgain(mandala(), mandala(' Mark the first st.'))).toBe(1)
    expect(workedAgain(mandala(' Mark the first st.'), mandala())).toBe(1)
    expect(workedAgain(mandala(), mandala().replace('*sc in next 1 sts, ', '*sc in next st, '))).toBe(1)
    // Two rounds later a line more stands before the rest.
    expect(workedAgain(mandala(' Mark it.'), mandala(' Mark\nit.'))).toBe(1)
  })

  it('works all again that stands on what it makes otherwise', () => {
    expect(workedAgain(mandala(), mandala().replace('sc in next 1 sts', 'sc in next 2 sts'))).toBe(RNDS - 2)
    const repeated = (word: string) => `${mandala(word)}\nRnd 41: Rep Rnd 3; join.`
    expect(workedAgain(repeated(''), repeated(' Turn.'))).toBe(RNDS - 1)
  })

  const PUT_IN = [' ', '2', 'x', ' and', '', ', ch 1', ' (pm)', '\n', ' Mark the first st.']
  const all = ['patterns', 'patterns-own'].flatMap((name) => loadPatterns(name))
  it.each(all.filter((_, at) => at % 19 === 0).map((pattern) => [pattern.id, pattern] as const))(
    '%s: is the same as reading the whole anew, wherever words are put in, and back again',
    (_, { text, terms }) => {
      const fresh = anew(text, terms)
      for (const [index, word] of PUT_IN.entries())
        for (let at = 7 * index; at < text.length; at += Math.ceil(text.length / 4)) {
          const edited = text.slice(0, at) + word + text.slice(index % 3 ? at : at + 1)
          expect(readingOn([text], edited, terms)).toEqual(anew(edited, terms))
          expect(readingOn([text, edited], text, terms)).toEqual(fresh)
        }
    },
  )

  it('takes rounds over in the middle of patterns, too', () => {
    let [rounds, again] = [0, 0]
    for (const { text, terms } of all.filter((_, at) => at % 3 === 0)) {
      const lines = text.split('\n')
      const line = lines.findIndex((each) => /^(rnd|round) \d/i.test(each))
      if (line < 0) continue
      const edited = lines.map((each, at) => (at === line ? `${each} ` : each)).join('\n')
      rounds += anew(text, terms).worked.length
      again += workedAgain(text, edited, terms)
    }
    expect(rounds).toBeGreaterThan(150)
    expect(again / rounds).toBeLessThan(0.6)
  })
})

describe('taking a text apart from the line that changed', () => {
  const PUT_IN = ['', ' ', '.', 's', '(', ' made)', '\n', '\n\n', '3']

  it.each(
    loadPatterns('patterns')
      .filter((_, at) => at % 9 === 0)
      .map(({ id, text }) => [id, text] as const),
  )('%s: gives the tokens of the whole, wherever something is put in or taken out', (_, text) => {
    const tokens = tokenize(text)
    for (let at = 0; at < text.length; at += 7)
      for (const [index, word] of PUT_IN.entries()) {
        const edited = text.slice(0, at) + word + text.slice(index % 2 ? at : at + 1)
        let common = at
        while (common < edited.length && edited[common] === text[common]) common++
        expect(tokenize(edited, { tokens, common })).toEqual(tokenize(edited))
      }
  })

  it('sees from a stop as far as the next lines tell whether it ends a sentence', () => {
    const lines = ['3 s.c.', 'and 2 d.c.', '(cluster now and then', 'made) in each tr.', 'x.', '']
    const text = `${lines.join('\n').repeat(12)}Turn.`
    const tokens = tokenize(text)
    for (let at = 0; at < text.length; at++) {
      const edited = `${text.slice(0, at)};${text.slice(at + 1)}`
      let common = at
      while (common < text.length && edited[common] === text[common]) common++
      expect(tokenize(edited, { tokens, common })).toEqual(tokenize(edited))
    }
  })

  it('keeps what stands before as the same objects', () => {
    const lines = Array.from({ length: 20 }, (_, at) => `Rnd ${at + 1}: Ch 1, sc in each st around; join.`)
    const text = lines.join('\n')
    const tokens = tokenize(text)
    const again = tokenize(`${text} Turn.`, { tokens, common: text.length })
    expect(tokens.findIndex((token, at) => token !== again[at])).toBeGreaterThan(tokens.length * 0.7)
  })
})
