/** An edition is spelled as its terms say, whichever terms the rounds were written in. */
import { describe, expect, it } from 'vitest'
import type { Terms } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { isSpelledTwoWays } from '../../../src-core/stitches/spelling'
import { listExamples } from '../../../src-main/documents'
import { renderMap } from '../../../src-main/paper/index'
import { DATE, VERSION } from './projects'
import { readPdf } from './read-pdf'

const AMERICAN =
  /counterclockwise|\b(?:cancel(?:ed|ing)|center|color|fiber|gray|neighbor|toward)\b|(?:centi|milli|kilo)?meters?\b/i

/** Every word that the maker wrote, names and notes alike. */
function ownWords(value: unknown): string[] {
  if (typeof value === 'string') return value.toLowerCase().split(/[^\p{L}]+/u)
  if (value !== null && typeof value === 'object') return Object.values(value).flatMap(ownWords)
  return []
}

/** Joined and sewn, along a cord with a kit, on a panel. */
const NAMES = ['dovecote-runner', 'limekiln-cushion', 'orchard-gate-garland', 'pond-edge-bag']
const EXAMPLES = listExamples()
  .filter(({ name }) => NAMES.includes(name))
  .map(({ name, text }) => [name, JSON.parse(text)] as const)

describe.each(EXAMPLES)('%s', (_, project) => {
  const own = new Set(ownWords(project))
  const written = async (terms: Terms, from: Terms): Promise<string[]> => {
    const plan = planProject({ ...project, terms: from })
    const sheets = plan.kit
      ? (['title', 'map', 'card', 'packing', 'labels'] as const)
      : (['title', 'map'] as const)
    const { pages } = await readPdf(await renderMap(plan, { terms, sheets, date: DATE, version: VERSION }))
    return pages
      .flatMap(({ words }) => words.split(/[^\p{L}]+/u))
      .filter((word) => word !== '' && !own.has(word.toLowerCase()))
  }

  it.each(['US', 'UK'] as const)(
    'says nothing in the other spelling when it is written in %s terms',
    async (from) => {
      const american = await written('US', from)
      expect(american.filter(isSpelledTwoWays)).toEqual([])
      const british = await written('UK', from)
      expect(british.filter((word) => AMERICAN.test(word))).toEqual([])
    },
  )
})
