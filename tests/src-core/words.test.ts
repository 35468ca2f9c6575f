/** One thing, one word: the list of docs/words.md holds in every text for people. */
import { describe, expect, it } from 'vitest'
import { pageText, textsForPeople } from '../texts-for-people'

const page = pageText('docs/words.md')
const [list = '', exceptions = ''] = page.split('## Where a word means something else')

const phrasesIn = (cell: string): string[] =>
  [...cell.matchAll(/`([^`]+)`/g)].map(([, phrase = '']) => phrase)

const rowsOf = (table: string): string[][] =>
  table
    .split('\n')
    .filter((line) => line.startsWith('|'))
    .map((line) => line.split('|').map((cell) => cell.trim()))

/** What is not said, as an expression, and what is said in its place. */
const GIVEN_UP = rowsOf(list).flatMap(([, say = '', not = '']) =>
  phrasesIn(not).map((phrase) => ({ phrase, say, pattern: patternOf(phrase) })),
)

const EXCEPTIONS = rowsOf(exceptions).flatMap(([, word = '', within = '']) =>
  phrasesIn(word).map((phrase) => ({ phrase, within: phrasesIn(within)[0] ?? '' })),
)

function patternOf(phrase: string): RegExp {
  const escaped = phrase.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/\s+/g, '\\s+')
  const [before, after] = [/^\w/, /\w$/].map((edge) => (edge.test(phrase) ? '\\b' : ''))
  return new RegExp(`${before}${escaped}${after}`, /[A-Z]/.test(phrase) ? '' : 'i')
}

/** What of the list a text says all the same. */
const saidIn = (text: string) =>
  GIVEN_UP.filter(
    ({ phrase, pattern }) =>
      pattern.test(text) &&
      !EXCEPTIONS.some((exception) => exception.phrase === phrase && text.includes(exception.within)),
  )

describe('words that were given up', () => {
  it('are known to the test', () => {
    expect(GIVEN_UP.length).toBeGreaterThan(50)
    expect(saidIn('Two meeting points').map(({ say }) => say)).toEqual(['join point'])
    expect(saidIn('known by its letter')).toEqual([])
  })

  it('stand in no text for people', () => {
    const found = textsForPeople().flatMap(({ path, line, text }) =>
      saidIn(text).map(({ phrase, say }) => `${path}:${line}: "${phrase}"; say "${say}"`),
    )
    expect(found).toEqual([])
  })
})
