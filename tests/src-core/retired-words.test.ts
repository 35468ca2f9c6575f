/** One thing, one word: words that were given up stand in no text for people. Comments are for us. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../..', import.meta.url))

/** What is not said, and what is said in its place. */
const RETIRED: readonly (readonly [RegExp, string])[] = [
  [/meeting points?\b/i, 'join point'],
  [
    /\bwished (size|width|height)|\bwish a (width|height)|\bwished was\b|\bwished for\b/i,
    'target size; you asked for',
  ],
  [/Known by/, 'Based on'],
  [/\bleast distance\b/i, 'minimum gap'],
  [/\bgap to bridge\b/i, 'gap at the join'],
  [/Items on each other/, 'Overlaps'],
  [/\bby turns\b/i, 'alternating'],
  [/\bis to be \{/, 'what was entered'],
]

const withoutComments = (text: string): string =>
  text
    .replace(/<!--[\s\S]*?-->/g, '')
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/(^|\s)\/\/ .*$/gm, '')

function* sources(folder: string): Generator<string> {
  for (const entry of readdirSync(join(root, folder), { withFileTypes: true })) {
    const path = `${folder}/${entry.name}`
    if (entry.isDirectory()) yield* sources(path)
    // The list of words is where they stand beside what is said in their place.
    else if (/\.(ts|svelte|md)$/.test(entry.name) && path !== 'docs/words.md') yield path
  }
}

describe('words that were given up', () => {
  it.each(['src-core', 'src-renderer', 'src-main', 'shared-types', 'docs'])(
    'stand nowhere in %s',
    (folder) => {
      const found = [...sources(folder)].flatMap((path) => {
        const text = withoutComments(readFileSync(join(root, path), 'utf8'))
        return RETIRED.filter(([word]) => word.test(text)).map(([, say]) => `${path}: say "${say}"`)
      })
      expect(found).toEqual([])
    },
  )
})
