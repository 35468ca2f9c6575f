/** Wrong values are found as zod finds them, and no further than they are asked for. */
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { projectSchema } from '../../../shared-types/project'
import { issuesOf } from '../../../src-main/documents/issues'
import { INVALID_VALUES_COUNTED } from '../../../src-main/documents/limits'
import { validateProject } from '../../../src-main/documents/validate'
import { seededRandom } from '../../../src-core/units/random'
import type { Json } from '../../fuzz/mutate'
import { mutated, oneOf } from '../../fuzz/mutate'
import { runs } from '../../runs'

const examplesAt = new URL('../../../examples/', import.meta.url)
const EXAMPLES = readdirSync(examplesAt)
  .filter((name) => name.endsWith('.petalyard'))
  .map((name) => JSON.parse(readFileSync(new URL(name, examplesAt), 'utf8')) as Json)

/** A value of another kind in the place of one that stands anywhere. */
function spoiled(value: Json, random: ReturnType<typeof seededRandom>, left = 6): Json {
  if (left === 0 || value === null || typeof value !== 'object' || random.below(9) === 0)
    return oneOf<Json>([null, true, 5, '', 'x', [], {}, [1], { id: 1 }], random)
  if (Array.isArray(value)) {
    const at = random.below(value.length + 1)
    return [
      ...value.slice(0, at),
      spoiled((value as Json[])[at] ?? {}, random, left - 1),
      ...value.slice(at + 1),
    ]
  }
  const entries = Object.entries(value)
  if (entries.length === 0) return 7
  const [key, inner] = oneOf(entries, random)
  return { ...value, [key]: spoiled(inner as Json, random, left - 1) }
}

/** What matters of issues: their words are our own. */
const plain = (issues: readonly object[]): unknown =>
  JSON.parse(
    JSON.stringify(issues, (key, value: unknown) =>
      key === 'message' || key === 'input' ? undefined : value,
    ),
  )

/** A list of so many of one value that tells how often it was read. */
function endless(length: number, value: unknown) {
  const list = { read: 0, items: [] as unknown[] }
  list.items = new Proxy([] as unknown[], {
    get: (target, key) => {
      if (key === 'length') return length
      if (typeof key !== 'string' || !/^\d+$/.test(key)) return Reflect.get(target, key) as unknown
      list.read++
      return value
    },
  })
  return list
}

const PROJECT = { format: 'petalyard-project', version: 1 }

describe('issues of a document', () => {
  it('are those of zod, in their order, whatever is spoiled', () => {
    let wrong = 0
    for (let seed = 0; seed < runs(900); seed++) {
      const random = seededRandom(seed)
      let document = random.below(2) === 0 ? mutated(EXAMPLES, random) : oneOf(EXAMPLES, random)
      for (let times = random.below(4); times > 0; times--) document = spoiled(document, random)
      const all = projectSchema.safeParse(document).error?.issues ?? []
      if (all.length > 0) wrong++
      expect(plain(issuesOf(projectSchema, document, 1e6)), `seed ${seed}`).toEqual(plain(all))
      expect(plain(issuesOf(projectSchema, document, 2)), `seed ${seed}`).toEqual(plain(all.slice(0, 2)))
    }
    expect(wrong).toBeGreaterThan(runs(900) / 3)
  })

  it.each([
    ['yarns', (items: unknown[]) => ({ yarns: items })],
    ['order', (items: unknown[]) => ({ order: items })],
    ['points', (items: unknown[]) => ({ layout: { kind: 'applique', panel: { points: items } } })],
    ['rounds of a motif', (items: unknown[]) => ({ motifs: [{ id: 'm', kind: 'rounds', rounds: items }] })],
  ])('are looked for no further than they are counted: a billion wrong values in %s', (_, put) => {
    const list = endless(1e9, 5)
    const checked = validateProject({ ...PROJECT, ...put(list.items) })
    expect(list.read).toBeLessThan(2 * INVALID_VALUES_COUNTED)
    expect('findings' in checked && checked.findings).toHaveLength(51)
    expect('findings' in checked && checked.findings.at(-1)!.message).toBe(
      'more than 1000 more values cannot be right.',
    )
  })

  it('cost nothing where fields are none of ours', () => {
    const list = endless(1e9, 5)
    expect(
      'project' in validateProject({ ...PROJECT, twist: list.items, yarns: [{ id: 'y', more: list.items }] }),
    ).toBe(true)
    expect(list.read).toBe(0)
  })
})
