/** The pages on faults and security name tests by file and title: each of them is there. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

const root = new URL('../../../', import.meta.url)
const text = (path: string) => readFileSync(new URL(path, root), 'utf8')

describe.each(['docs/faults.md', 'docs/security.md'])('%s', (page) => {
  const named = [...text(page).matchAll(/`(tests\/[^`]+)` › “([^”]+)”/g)].map(([, file, title]) => [
    file!,
    title!,
  ])

  it.each(named)('%s has the test “%s”', (file, title) => {
    expect(text(file)).toContain(title)
  })

  it('has a test in each row, or says that it is open', () => {
    const rows = text(page)
      .split('\n')
      .filter((line) => line.startsWith('| ') && !/^\| (fault|point) |^\| -/.test(line))
    expect(rows.length).toBeGreaterThan(20)
    for (const row of rows) expect(row).toMatch(/`tests\/[^`]+` › “|\*\*open\*\*|the stories run/)
  })

  it('names places that are there', () => {
    for (const [, path] of text(page).matchAll(/`((?:src-\w+|scripts|packing)\/[^`]+)`/g))
      expect(text(path!)).not.toBe('')
  })
})
