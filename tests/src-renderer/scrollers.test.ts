/** What is for ears alone is placed absolutely: it scrolls with a box that is positioned, else with the whole window. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'

const window = 'src-renderer'

it('every box that scrolls is positioned', () => {
  const files = readdirSync(window, { recursive: true, encoding: 'utf8' }).filter((name) =>
    /\.(svelte|css)$/.test(name),
  )
  const rules = files.flatMap((name) =>
    [
      ...readFileSync(join(window, name), 'utf8').matchAll(
        /([^{}]+)\{([^{}]*overflow(?:-y)?: (?:auto|scroll)[^{}]*)\}/g,
      ),
    ].map(([, selector = '', body = '']) => ({
      where: `${name}: ${selector.trim().split('\n').at(-1)!.trim()}`,
      body,
    })),
  )
  expect(rules.length).toBeGreaterThan(10)
  expect(
    rules
      .filter(({ body }) => !/position: (?:relative|absolute|sticky|fixed)/.test(body))
      .map(({ where }) => where),
  ).toEqual([])
})
