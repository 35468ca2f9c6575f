/** docs/model.md and docs/sources.md: what code and tests name is there, and constants are the code's. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../..', import.meta.url))
const page = (name: string): string => readFileSync(join(root, 'docs', name), 'utf8')
const [model, sources] = [page('model.md'), page('sources.md')]
const code = ['src-core', 'tests'].flatMap((room) =>
  readdirSync(join(root, room), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => readFileSync(join(root, room, name), 'utf8')),
)

const named = (pattern: RegExp, texts: readonly string[]): string[] => [
  ...new Set(texts.flatMap((text) => [...text.matchAll(pattern)].map((match) => match[1] ?? ''))),
]

describe('docs/model.md', () => {
  it('has every rule that code and tests name', () => {
    const rules = named(/^### (M\d+) /gm, [model])
    // "M10 20" and "M0,0H40" are drawn paths.
    const told = named(/(?<![\w/])(M[1-9]\d?)(?=[^\w\d]|$)(?![ ,]?-?[\d.]*\d)/gm, code)
    expect(told).toContain('M30')
    expect(told.filter((rule) => !rules.includes(rule))).toEqual([])
  })

  it('has the constants of the code', async () => {
    const rows = [...model.matchAll(/^\| `([\w/-]+):([^`]+)` +\| +([\d.]+) /gm)]
    expect(rows.length).toBeGreaterThan(60)
    for (const [, file = '', path = '', told = ''] of rows) {
      const module: unknown = await import(/* @vite-ignore */ join(root, `src-core/${file}.ts`))
      const value = path.split('.').reduce((held, key) => (held as Record<string, unknown>)[key], module)
      expect(String(Number((value as number).toFixed(4))), `${file}: ${path}`).toBe(told)
    }
  })
})

describe('docs/sources.md', () => {
  const keys = named(/^### §([a-z][\w-]*)$/gm, [sources])

  it('has every source that code, tests and pages name', () => {
    const told = named(/§([a-z][\w-]*)/g, [...code, model, sources]).filter((key) => key !== 'key')
    expect(told.filter((key) => !keys.includes(key))).toEqual([])
  })

  it('has none that nothing is checked against', () => {
    const told = named(/§([a-z][\w-]*)/g, [...code, model])
    expect(keys.filter((key) => !told.includes(key))).toEqual([])
  })
})
