/** What is mutated: every example, and every written round of the fixtures. */
import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { Json } from './mutate'

const root = fileURLToPath(new URL('../../', import.meta.url))

export const EXAMPLES: readonly Json[] = readdirSync(`${root}examples`)
  .filter((name) => name.endsWith('.petalyard'))
  .map((name) => JSON.parse(readFileSync(`${root}examples/${name}`, 'utf8')) as Json)

const textsOf = (name: string): string[] =>
  readFileSync(`${root}tests/fixtures/${name}.jsonl`, 'utf8')
    .split('\n')
    .filter((line) => line.trim() !== '')
    .map((line) => (JSON.parse(line) as { text: string }).text)

export const roundTexts: readonly string[] = [
  'rounds',
  'rounds-own',
  'rounds-broken',
  'patterns',
  'patterns-own',
].flatMap(textsOf)
