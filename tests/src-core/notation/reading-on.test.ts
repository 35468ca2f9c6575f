/** Reading on from a change gives what reading the whole text anew gives. */
import { describe, expect, it } from 'vitest'
import { forgetCourses } from '../../../src-core/notation/continued'
import { readRounds } from '../../../src-core/notation/read'
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
