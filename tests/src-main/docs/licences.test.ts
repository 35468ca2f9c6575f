/** Whatever is shipped has a licence that allows it, and a place on the page. */
import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { notAllowed, shipped } from '../../../scripts/licences'

const root = new URL('../../../', import.meta.url)

it('every package that is shipped has a licence that allows it', () => {
  expect(notAllowed(shipped())).toEqual([])
  const strange = { name: 'x', version: '1', licence: 'MIT AND GPL-3.0-only' }
  expect(notAllowed([strange, { ...strange, licence: '' }])).toHaveLength(2)
})

it('every package that the program asks for is listed', () => {
  const { dependencies } = JSON.parse(readFileSync(new URL('package.json', root), 'utf8')) as {
    dependencies: Record<string, string>
  }
  const listed = new Set(shipped().map(({ name }) => name))
  for (const [name, version] of Object.entries(dependencies)) {
    const alias = /^npm:(.+)@/.exec(version)?.[1]
    expect([...listed], name).toContain(alias ?? name)
  }
  for (const name of ['electron', 'svelte']) expect([...listed]).toContain(name)
})
