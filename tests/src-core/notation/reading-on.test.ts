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
