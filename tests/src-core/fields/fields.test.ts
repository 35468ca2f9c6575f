import { describe, expect, it } from 'vitest'
import { projectJsonSchema } from '../../../shared-types/project'
import type { Project } from '../../../shared-types/project'
import { FIELDS } from '../../../src-core/fields/all'
import { placesOf, shownAs, storedAs, valueOf, withValue } from '../../../src-core/fields/field'
import type { Field } from '../../../src-core/fields/field'
import { GARLAND, PART } from '../../../src-core/fields/garland'
import { KIT } from '../../../src-core/fields/kit'
import { MOTIF, WEIGHT } from '../../../src-core/fields/motif'
import { fieldText } from '../../../src-core/fields/words'
import { blanketCounts } from '../../../src-core/layout/blanket'
import { checkProject } from '../../../src-core/plan'
import { placeFor, projectFor } from './projects'

const named = FIELDS.map(
  (field) => [`${field.path}${field.layout ? ` (${field.layout})` : ''}`, field] as const,
)
const bounded = named.filter(([, { least, most }]) => least !== undefined || most !== undefined)

/** Codes of findings about bounds where the field has this value. */
function codesWith(field: Field, value: number): string[] {
  const project = withValue(projectFor(field, value), field, value, placeFor(field))
  expect(valueOf(project, field, placeFor(field)), 'it is kept').toBe(value)
  // A plan of 180 rings is long in coming; how many there are is read first of all.
  const findings =
    field.code === 'layout/count' && project.layout?.kind === 'blanket'
      ? blanketCounts(project.layout).findings
      : checkProject(project)
  return findings.map(({ code }) => code).filter((code) => codesOf(field).includes(code))
}

/** A margin under 0 is told by itself, one that leaves nothing together with the fees. */
const codesOf = ({ code }: Field): string[] =>
  code === 'kit/margin' ? ['kit/margin', 'kit/value'] : [code ?? 'file/out-of-bounds']

/** A little beyond a bound. */
const beyond = (bound: number, side: 1 | -1, { kind }: Field): number =>
  kind === 'count' && bound >= 1 ? bound + side : bound + side * (Math.abs(bound) * 0.01 || 1)

describe('every declared field', () => {
  it.each(bounded)('%s: its bounds are what the engine accepts, and no more', (_, field) => {
    const { least, most } = field as { least: number; most: number }
    // The least that can be counted in a file that has counts and no halves.
    const first = field.kind === 'count' ? Math.ceil(least) : least
    expect(codesWith(field, first), `least ${first}`).toEqual([])
    expect(codesWith(field, most), `most ${most}`).toEqual([])
    const under = beyond(least, -1, field)
    if (!(field.zeroIsNone && under === 0)) expect(codesWith(field, under), `${under}`).not.toEqual([])
    const over = beyond(most, 1, field)
    expect(codesWith(field, over), `${over}`).not.toEqual([])
  })

  it.each(named)('%s: stands in the schema', (_, { path }) => {
    expect(schemasAt(projectJsonSchema(), path.split('.')).flatMap(({ type }) => type)).toContain('number')
  })

  it('has a label of at most four words and a change that undo can call by its name', () => {
    for (const { path, label, change, code, least, what } of FIELDS) {
      if (!code && least !== undefined) expect(what, `${path} has a name in its finding`).toMatch(/^the /)
      const words = label.replace(/\{\w+\}|\(.*\)/g, 'x').split(' ').length
      expect(words, `${path}: ${label}`).toBeLessThanOrEqual(7)
      expect(change, path).toMatch(/^(change|move|rotate) /)
    }
  })
})

interface JsonSchema {
  readonly type?: string | readonly string[]
  readonly properties?: Readonly<Record<string, JsonSchema>>
  readonly items?: JsonSchema
  readonly additionalProperties?: JsonSchema | boolean
  readonly anyOf?: readonly JsonSchema[]
  readonly oneOf?: readonly JsonSchema[]
}

function schemasAt(schema: JsonSchema, [part, ...rest]: readonly string[]): JsonSchema[] {
  const ways = [schema, ...(schema.anyOf ?? []), ...(schema.oneOf ?? [])]
  if (part === undefined) return ways
  const own = ways.flatMap(({ properties }) => properties?.[part.replace('[]', '')] ?? [])
  if (!part.endsWith('[]')) return own.flatMap((one) => schemasAt(one, rest))
  return own
    .flatMap(({ items, additionalProperties }) => items ?? additionalProperties ?? [])
    .flatMap((one) => (typeof one === 'object' ? schemasAt(one, rest) : []))
}

describe('the place of a field', () => {
  const bare: Project = { format: 'petalyard-project', version: 1 }
  const hung: Project = {
    ...bare,
    layout: { kind: 'garland', cord: { length: 900 }, items: [{ gap: 5 }, { bead: 'wood', size: 12 }] },
  }

  it('is made where there is none yet, and given up when nothing is left to say', () => {
    const swagged = withValue(hung, GARLAND.drop, 120)
    expect(swagged.layout).toEqual({ ...hung.layout, swags: { drop: 120 } })
    expect(withValue(swagged, GARLAND.drop, undefined).layout).toEqual({ ...hung.layout, swags: {} })
  })

  it('is the right one of a list, by number, by id or by name', () => {
    expect(withValue(hung, PART.size, 14, [1]).layout).toMatchObject({ items: [{ gap: 5 }, { size: 14 }] })
    const motifs: Project = {
      ...bare,
      motifs: [
        { id: 'a', kind: 'measured', outline: 'round' },
        { id: 'b', kind: 'measured', outline: 'round', slots: [{ slot: 'edge' }] },
      ],
    }
    expect(valueOf(withValue(motifs, MOTIF.minutes, 20, ['b']), MOTIF.minutes, [1])).toBe(20)
    expect(valueOf(withValue(motifs, WEIGHT.slot, 2, ['b', 'edge']), WEIGHT.slot, [1, 0])).toBe(2)
    expect(withValue(motifs, WEIGHT.share, 0.4, ['a', 'edge']).motifs![0]!.weighed).toEqual({
      shares: { edge: 0.4 },
    })
  })

  it('is nowhere in another layout; what is not touched stays the same object', () => {
    expect(withValue({ ...bare, layout: { kind: 'applique' } }, GARLAND.drop, 120).layout).toEqual({
      kind: 'applique',
    })
    const next = withValue(hung, GARLAND.length, 700)
    expect(next.layout).toMatchObject({ cord: { length: 700 } })
    expect((next.layout as { items: unknown }).items).toBe((hung.layout as { items: unknown }).items)
    expect(placesOf(hung, PART.room)).toEqual([{ where: 'layout.items[0].gap', at: [0], value: 5 }])
  })
})

it('shows a factor as what it adds, and texts in the terms and the currency of the project', () => {
  const growth = { shown: { times: 100, plus: -100 } }
  expect(shownAs(growth, 1.05)).toBeCloseTo(5, 9)
  expect(storedAs(growth, 5)).toBe(1.05)
  const project: Project = { format: 'petalyard-project', version: 1, terms: 'UK', currency: 'GBP' }
  expect(fieldText(KIT.packaging.label, project)).toBe('Packaging per kit (GBP)')
  expect(fieldText('change the {gauge} of {name}', project, { name: 'Oat' })).toBe(
    'change the tension of Oat',
  )
})
