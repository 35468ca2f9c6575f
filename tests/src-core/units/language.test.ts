/** Plurals and numbers: what the platform knows of the language, asked in one place. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { formatMoney, formatNumber } from '../../../src-core/units/format'
import { plural } from '../../../src-core/units/language'

const root = fileURLToPath(new URL('../../..', import.meta.url))
const HOME = 'src-core/units/language.ts'
const files = ['shared-types', 'src-core', 'src-main', 'src-renderer', 'scripts']
  .flatMap((room) =>
    readdirSync(join(root, room), { recursive: true, encoding: 'utf8' }).map((name) => join(room, name)),
  )
  .filter((name) => /\.(ts|mjs|svelte)$/.test(name) && name !== HOME)

const linesWith = (pattern: RegExp): string[] =>
  files.flatMap((name) =>
    readFileSync(join(root, name), 'utf8')
      .split('\n')
      .flatMap((line, i) => (pattern.test(line) ? [`${name}:${i + 1}: ${line.trim()}`] : [])),
  )

describe('numbers and plurals', () => {
  it('are formed nowhere but at home', () => {
    expect(files.length).toBeGreaterThan(500)
    expect(linesWith(/\bIntl\.(?:NumberFormat|PluralRules)\b|\.toLocaleString\(/)).toEqual([])
  })

  it('put no s behind a word by hand', () => {
    const byHand = linesWith(
      /count\w* (?:===|!==|>) 1 \? '(?:s)?' : '(?:s)?'|[cC]ount\w* (?:===|!==|>) 1 \? '(\w+)' : '\1s'/,
    )
    // The plural of stitches is that of written rounds, where it belongs to the notation.
    expect(byHand.filter((line) => !line.startsWith('src-core/notation/'))).toEqual([])
  })

  it('group and count as both Englishes do', () => {
    for (const language of ['en-US', 'en-GB']) {
      const [numbers, rules] = [new Intl.NumberFormat(language), new Intl.PluralRules(language)]
      for (const count of [0, 1, 1.5, 2, 11, 21, 101, 1200, 1_234_567]) {
        expect(formatNumber(count, 1)).toBe(numbers.format(count))
        expect(plural(count, 'row')).toBe(rules.select(count) === 'one' ? 'row' : 'rows')
      }
    }
  })

  it('tells an amount in a currency that has no code as it stands', () => {
    expect(formatMoney(31.2, 'EUR')).toBe('€31.20')
    expect(formatMoney(31.2, 'shells')).toBe('31.2 shells')
    expect(formatMoney(31.2, 'shells')).toBe('31.2 shells')
  })
})
