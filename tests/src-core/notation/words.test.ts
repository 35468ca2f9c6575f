/** The one table of words: each under its first spelling, which is the one that the grammar asks for. */
import { readFileSync, readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { wordOf } from '../../../src-core/notation/words'

const ROOM = new URL('../../../src-core/notation/', import.meta.url)

/** What the grammar asks the reader for: `skip('next', 'last')`, `sees('from')`, `isA('space')`. */
function* asked(call: RegExp): Generator<string> {
  for (const file of readdirSync(ROOM)) {
    const source = readFileSync(new URL(file, ROOM), 'utf8')
    for (const [, words = ''] of source.matchAll(call))
      for (const [, word = ''] of words.matchAll(/'([^']+)'/g)) yield word
  }
}

describe('the table of words', () => {
  it('is asked for words under their first spelling alone', () => {
    const others = [...asked(/reader\.(?:skip|skipAll|sees)\(([^()]*)\)/g)].filter(
      (word) => wordOf(word).is !== word,
    )
    expect(others).toEqual([])
  })

  it('is asked for kinds that it has', () => {
    const source = readFileSync(new URL('words.ts', ROOM), 'utf8')
    for (const kind of asked(/reader\.(?:isA|skipA|valueOf)\(([^()]*)\)/g)) expect(source).toMatch(kind)
  })

  it('knows both sides of a hyphen', () => {
    expect(wordOf('chain-loops').is).toBe('ch-lp')
    expect(wordOf('half-double').is).toBe('half-double')
  })

  it.each([
    'ch-3 sp',
    'ch-3-sp',
    'ch3 sp',
    'ch 3 loop',
    '3-ch sp',
    '3 ch sp',
    '3ch-sp',
    '3ch-lp',
    'chain-3 space',
    'ch.-3 arch',
  ])('spells one space as %s', (space) => {
    const { rounds, findings } = readRounds(
      `Rnd 1: Magic ring, ch 1, (sc in ring, ch 3) 6 times; join. (6 sc)\nRnd 2: Ch 1, 5 sc in each ${space} around; join. (30 sc)`,
    )
    expect(findings).toEqual([])
    expect(rounds[1]!.made).toBe(30)
  })
})

it('no spelling stands in the table twice', () => {
  const source = readFileSync(new URL('words.ts', ROOM), 'utf8')
  const [, table = ''] = /const TABLE = `\n([^`]*)`/.exec(source) ?? []
  const spellings = table.split('\n').flatMap((line) =>
    line
      .split('|')[0]!
      .split(/\s+/)
      .filter((word) => word && word !== '+'),
  )
  expect(spellings.length).toBeGreaterThan(300)
  expect(spellings.filter((word, at) => spellings.indexOf(word) !== at)).toEqual([])
})
