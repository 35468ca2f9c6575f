import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { counted, numbered, plural } from '../../../src-core/figures/words'
import { finding, findingOf, toldTo } from '../../../src-core/findings/finding'
import type { Said } from '../../../src-core/findings/finding'
import { CATALOGUE } from '../../../src-core/findings/catalogue'
import { projectJsonSchema } from '../../../shared-types/project'
import { TERM_WORDS } from '../../../src-core/stitches/terms'

/**
 * Values that are never one: limits and what is beyond them, stitches for the room of one, ends that are worth a
 * note, petals from sixteen on, parts of a sequence that can be cut, colours that a weight is split over.
 */
const MANY = /^(most|symbols|received|crowding|ends|petals|size|slots|times|amount|fewer|legs|part)$/

/** Every count that a text asks for, each of them 1. */
const ones = (text: string): Record<string, string> =>
  Object.fromEntries(
    [...text.matchAll(/\{(\w+)[|}]/g)].flatMap(([, name = '']) =>
      Object.hasOwn(TERM_WORDS, name) ? [] : [[name, MANY.test(name) ? '20' : '1']],
    ),
  )

/** Words that end in s and are no plurals. */
const SINGULAR =
  /^(is|has|was|its|less|across|stays|stands|hangs|takes|makes|reaches|does|lies|this|as|closes|counts|goes|leaves|sticks|allows|lasts|comes)$/

/** "1 motifs", "1 more pairs": what is counted after a one. */
const wrongAfterOne = (text: string): string[] =>
  [...text.matchAll(/(?<![\d.,/'–-])\b1 (?:more |half |different |free )?([a-z]+s)\b/g)]
    .map(([, word = '']) => word)
    .filter((word) => !SINGULAR.test(word))

describe('words round a count', () => {
  it.each(Object.entries(CATALOGUE))('%s is right for one', (code, { message, mend }) => {
    const told = findingOf({ code, values: ones(`${message} ${mend}`) } as unknown as Said, 'somewhere')
    expect(wrongAfterOne(`${told.message} ${told.mend}`)).toEqual([])
    expect(`${told.message} ${told.mend}`).not.toMatch(/[{}|]/)
  })

  it('tell "1 motif hangs" and "2 motifs hang"', () => {
    const hanging = (count: string) => finding('joins/one-node', 'joins', { count, cells: '3' }).message
    expect(hanging('1')).toMatch(/^1 motif hangs on/)
    expect(hanging('2')).toMatch(/^2 motifs hang on/)
    expect(hanging('1,200')).toMatch(/^1,200 motifs hang on/)
    expect([counted(1, 'row'), counted(1200, 'row'), numbered(1, 'ring'), numbered(2, 'ring')]).toEqual([
      '1 row',
      '1,200 rows',
      'one ring',
      'two rings',
    ])
    expect([plural(1.5, 'row'), plural(0, 'row')]).toEqual(['rows', 'rows'])
  })

  it('come from one place: no source puts a plural behind a number by hand', () => {
    const root = join(import.meta.dirname, '../../..')
    const rooms = ['src-core', 'src-main', 'src-renderer']
    // Numbers that are never one: laps and letters beyond a limit, seconds, and names of sets of terms.
    const fine = /: `\$\{(count|last)\} (sts|times)`|between sts|count > 1/
    const byHand = rooms.flatMap((room) =>
      readdirSync(join(root, room), { recursive: true, encoding: 'utf8' })
        .filter((name) => /\.(ts|svelte)$/.test(name))
        .flatMap((name) =>
          readFileSync(join(root, room, name), 'utf8')
            .split('\n')
            .filter((line) =>
              /\{(?:formatNumber\([^{}]*\)|[\w.]*\.(?:length|count|sides)|count|times|numeral\([^{}]*\))\} (?:[a-z]+ )?(?:motifs|rows|rings|chains|openings|pairs|yarns|colourways|kits|ends|joins|spaces|sts|stitches|times|points|halves|half motifs|extras|labels|places|things|items|swags)\b/.test(
                line,
              ),
            )
            .filter((line) => !fine.test(line))
            .map((line) => `${room}/${name}: ${line.trim()}`),
        ),
    )
    expect(byHand).toEqual([])
  })
})

describe('words of the trade in findings', () => {
  it('are skeins in US terms and balls in UK terms, everywhere', () => {
    const bought = finding('yarn/dye-lot', 'yarns', { count: 1, yarns: 'one yarn' })
    const told = (terms: 'US' | 'UK') => toldTo({ terms }, [bought])[0]!
    expect(told('US').message).toBe(
      '1 skein to buy in one yarn: all of a yarn should have one dye lot, with those on hand.',
    )
    expect(told('UK').message).toBe(
      '1 ball to buy in one yarn: all of a yarn should have one dye lot, with those on hand.',
    )
    expect(told('UK')).not.toHaveProperty('values')
    for (const { message, mend } of Object.values(CATALOGUE))
      expect(`${message} ${mend}`).not.toMatch(/\b(balls?|skeins?)\b(?![|}])/)
  })

  it('never name a field of the file to people at the window', () => {
    const fields = new Set(
      [...JSON.stringify(projectJsonSchema()).matchAll(/"(\w+)":\{/g)].map(([, name = '']) => name),
    )
    expect(fields).toContain('allowed')
    for (const [code, { message, mend }] of Object.entries(CATALOGUE)) {
      const text = `${message} ${mend}`
      const quoted = [...text.matchAll(/['"‘“](\w+)['"’”]/g)].map(([, name = '']) => name)
      expect([code, quoted.filter((name) => fields.has(name))]).toEqual([code, []])
      expect(`${code}: ${text}`).not.toMatch(/\b[a-z]+[A-Z][a-z]+\b(?![|}])|"row,/)
    }
  })
})
