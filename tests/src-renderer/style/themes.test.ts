/** The dark theme is the light one in other colours: whatever is found of one holds for the other, but for colours. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'

const TOKENS = readFileSync('src-renderer/style/tokens.css', 'utf8')

/** The declarations of a block of the tokens. */
function declarationsOf(selector: string): Map<string, string> {
  const from = TOKENS.indexOf(`${selector} {`)
  const block = TOKENS.slice(TOKENS.indexOf('{', from) + 1, TOKENS.indexOf('}', from))
  return new Map([...block.matchAll(/([\w-]+):\s*([^;]+);/g)].map(([, name, value]) => [name!, value!]))
}

it('the dark theme gives other values to colours of the light one, and to nothing else', () => {
  const [light, dark] = [':root', ":root[data-theme='dark']"].map(declarationsOf) as [
    Map<string, string>,
    Map<string, string>,
  ]
  expect(dark.size).toBeGreaterThan(10)
  for (const [name, value] of dark) {
    expect(light.has(name), name).toBe(true)
    expect(value, name).toMatch(name === 'color-scheme' ? /^dark$/ : /^(#[0-9a-f]{6}|rgb\([\d ./]+\))$/)
  }
})

it('no other style asks for the theme', () => {
  const files = readdirSync('src-renderer', { recursive: true, encoding: 'utf8' })
  const asking = files.filter(
    (name) =>
      /\.(svelte|css)$/.test(name) &&
      /\[data-theme|@media[^{]*prefers-color-scheme|light-dark\(/.test(
        readFileSync(join('src-renderer', name), 'utf8'),
      ),
  )
  expect(asking).toEqual([join('style', 'tokens.css')])
})
