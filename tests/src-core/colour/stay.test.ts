import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { assignColourways } from '../../../src-core/colour/assign'
import { colourCells } from '../../../src-core/colour/cells'
import { holdColours, standingColours } from '../../../src-core/colour/hold'
import { seededRandom } from '../../../src-core/units/random'
import { offset, square } from './lattices'
import { runs } from '../../runs'

const ways = (count: number) =>
  Array.from({ length: count }, (_, index) => ({ id: `c${index}`, code: 'ABCDEFGHJK'[index] }))

const blanket = (layout: Partial<BlanketLayout>, count = 5): Project => ({
  format: 'petalyard-project',
  version: 1,
  colourways: ways(count),
  layout: {
    kind: 'blanket',
    arrangement: 'offset-rows',
    columns: 16,
    rows: 23,
    cells: { fill: { pattern: 'no-two-alike', colourways: ways(count).map(({ id }) => id), seed: 7 } },
    ...layout,
  },
})

type Patch = Partial<BlanketLayout>
const layoutOf = (project: Project) => project.layout as BlanketLayout
const change = (project: Project, patch: Patch): Project =>
  holdColours(project, { ...project, layout: { ...layoutOf(project), ...patch } })
const paint = (project: Project, painted: Record<string, string>): Project => {
  const { cells } = layoutOf(project)
  return change(project, { cells: { ...cells, painted: { ...cells?.painted, ...painted } } })
}
const wipe = (project: Project, ...keys: string[]): Project => {
  const { cells } = layoutOf(project)
  const left = Object.entries(cells?.painted ?? {}).filter(([key]) => !keys.includes(key))
  return change(project, { cells: { ...cells, painted: Object.fromEntries(left) } })
}

/** Colourway by where a motif stands: rows from the middle for rings, half pitches for shifted rows. */
function coloursOf(project: Project): Map<string, string> {
  const { arrangement, rings = 0 } = layoutOf(project)
  const found = standingColours(project)!
  return new Map(
    found.places.map(({ row, halves }, index) => {
      const [down, across] = arrangement === 'rings' ? [row - rings, halves - 2 * rings] : [row, halves]
      return [`${down},${across}`, found.assignment.colourways[index]!]
    }),
  )
}
const moved = (before: Project, after: Project): string[] => {
  const now = coloursOf(after)
  return [...coloursOf(before)].flatMap(([at, id]) => (now.has(at) && now.get(at) !== id ? [at] : []))
}
const codesOf = (project: Project) => standingColours(project)!.assignment.findings.map(({ code }) => code)
const alikeIn = (project: Project): number => {
  const { places, assignment } = standingColours(project)!
  const cells = colourCells(places, layoutOf(project).arrangement !== 'straight-rows')
  return cells.flatMap((cell, index) =>
    cell.neighbours.filter(
      (other) => other > index && assignment.colourways[other] === assignment.colourways[index],
    ),
  ).length
}
const countsOf = (project: Project) => {
  const ids = standingColours(project)!.assignment.colourways
  return (project.colourways ?? []).map(({ id }) => ids.filter((other) => other === id).length)
}
const gapOf = (project: Project) => Math.max(...countsOf(project)) - Math.min(...countsOf(project))

describe('painting under "no two alike"', () => {
  it('changes fewer than three others of 368 on average over 200 paints, and keeps counts even', () => {
    for (const [make, count] of [
      [offset, 5],
      [offset, 6],
      [square, 4],
      [square, 5],
    ] as const) {
      for (const seed of [1, 7]) {
        const cells = make(23, 16)
        const fill = { pattern: 'no-two-alike', seed } as const
        const before = assignColourways(cells, fill, {}, ways(count)).colourways
        const random = seededRandom(seed)
        let changed = 0
        for (let paints = 0; paints < 200; paints++) {
          const cell = random.below(cells.length)
          const others = ways(count).filter(({ id }) => id !== before[cell])
          const painted = { [cells[cell]!.id]: others[random.below(others.length)]!.id }
          const after = assignColourways(cells, fill, painted, ways(count)).colourways
          changed += after.filter((id, index) => index !== cell && id !== before[index]).length
          const counts = ways(count).map(({ id }) => after.filter((other) => other === id).length)
          expect(Math.max(...counts) - Math.min(...counts)).toBeLessThanOrEqual(1)
          const alike = cells.some((one, index) =>
            one.neighbours.some((other) => after[other] === after[index]),
          )
          expect(alike).toBe(false)
        }
        expect(changed / 200).toBeLessThan(3)
      }
    }
  })

  it('changes few others also one paint after another, in a file that remembers and in one that does not', () => {
    const random = seededRandom(3)
    let project = blanket({})
    let painted: Record<string, string> = {}
    let [held, bare, paints] = [0, 0, 0]
    for (let step = 0; step < 60; step++) {
      const key = `${1 + random.below(23)},${1 + random.below(16)}`
      if (painted[key]) continue
      paints++
      const before = blanket({ cells: { ...layoutOf(blanket({})).cells, painted } })
      painted = { ...painted, [key]: `c${random.below(5)}` }
      const after = blanket({ cells: { ...layoutOf(before).cells, painted } })
      bare += moved(before, after).length
      const next = paint(project, { [key]: painted[key]! })
      held += moved(project, next).length
      project = next
      expect(codesOf(project).filter((code) => code !== 'colours/painted-alike')).toEqual([])
    }
    expect(held / paints).toBeLessThan(4)
    expect(bare / paints).toBeLessThan(4)
  })

  it('keeps what is painted and everything apart through any edits, and what an undo restores is what was', () => {
    const edit = fc.record({
      kind: fc.constantFrom('paint', 'wipe', 'rows', 'columns'),
      row: fc.integer({ min: 1, max: 8 }),
      column: fc.integer({ min: 1, max: 6 }),
      way: fc.nat(4),
    })
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 12 }), fc.boolean(), (edits, isOffset) => {
        let project = blanket({
          arrangement: isOffset ? 'offset-rows' : 'straight-rows',
          columns: 6,
          rows: 8,
        })
        for (const { kind, row, column, way } of edits) {
          const before = project
          const shown = coloursOf(before)
          if (kind === 'paint') project = paint(project, { [`${row},${column}`]: `c${way}` })
          else if (kind === 'wipe') project = wipe(project, `${row},${column}`)
          else if (kind === 'rows') project = change(project, { rows: row })
          else project = change(project, { columns: column })
          for (const { id } of standingColours(project)!.places) {
            const byHand = layoutOf(project).cells?.painted?.[id]
            const { places, assignment } = standingColours(project)!
            if (byHand)
              expect(assignment.colourways[places.findIndex((place) => place.id === id)]).toBe(byHand)
          }
          const codes = codesOf(project)
          if (!codes.includes('colours/impossible') && !codes.includes('colours/painted-alike'))
            expect(alikeIn(project)).toBe(0)
          expect(coloursOf(before)).toEqual(shown)
          // The file alone says it all: read again, it gives the same colours.
          expect(coloursOf(JSON.parse(JSON.stringify(project)) as Project)).toEqual(coloursOf(project))
        }
      }),
      { numRuns: runs(60) },
    )
  })

  it('paints near: with enough colourways nothing further than a few steps away changes but to keep counts even', () => {
    const before = blanket({}, 8)
    const after = paint(before, { '12,8': coloursOf(before).get('12,16') === 'c0' ? 'c1' : 'c0' })
    const far = moved(before, after).filter((at) => {
      const [row = 0, halves = 0] = at.split(',').map(Number)
      return Math.abs(row - 12) > 4 || Math.abs(halves - 15) > 10
    })
    expect(far).toEqual([])
  })

  it('changes the two colours over where only these are possible, and says when nothing is', () => {
    // Offset rows take three colours in one way alone (§chromatic, from memory), straight rows two.
    const three = paint(blanket({}, 3), {
      '5,5': coloursOf(blanket({}, 3)).get('5,8') === 'c0' ? 'c1' : 'c0',
    })
    expect(alikeIn(three)).toBe(0)
    const stuck = paint(three, { '5,6': layoutOf(three).cells!.painted!['5,5']!, '9,9': 'c2', '9,10': 'c1' })
    expect(codesOf(stuck)).toContain('colours/painted-alike')
    const before = moved(stuck, paint(stuck, { '20,3': coloursOf(stuck).get('20,5')! }))
    expect(before).toEqual([])
  })

  it('gives a wiped motif back what it had before, where that may be', () => {
    const before = blanket({})
    const was = coloursOf(before).get('5,8')!
    const painted = paint(before, { '5,5': was === 'c0' ? 'c1' : 'c0' })
    const after = wipe(painted, '5,5')
    expect(alikeIn(after)).toBe(0)
    expect(moved(before, after).length).toBeLessThanOrEqual(moved(before, painted).length)
    expect(moved(painted, after).length).toBeLessThan(8)
  })
})

describe('a blanket that grows', () => {
  const sizes = (patch: Patch, next: Patch, count = 5) => {
    const before = blanket(patch, count)
    return [before, change(before, next)] as const
  }

  it('changes nothing that is there for a new row, column or ring, and comes out even', () => {
    for (const [patch, next] of [
      [{}, { rows: 24 }],
      [{}, { columns: 17 }],
      [{}, { rows: 30, columns: 20 }],
      [{ arrangement: 'straight-rows' }, { rows: 24 }],
      [{ arrangement: 'rings', rings: 6 }, { rings: 7 }],
      [{ alternateRows: 'same' }, { alternateRows: 'oneMore' }],
      [{ alternateRows: 'oneMore' }, { alternateRows: 'oneFewer' }],
    ] as const) {
      for (const pattern of ['no-two-alike', 'scatter'] as const) {
        const cells = { fill: { pattern, seed: 3 } }
        const [before, after] = sizes({ ...patch, cells }, next)
        expect(moved(before, after)).toEqual([])
        if (pattern === 'no-two-alike') expect(alikeIn(after)).toBe(0)
        if (!('alternateRows' in next)) expect(gapOf(after)).toBeLessThanOrEqual(1)
      }
    }
  })

  it('changes nothing that stays where a row, a column or a ring goes, nor when it comes back', () => {
    for (const [patch, less, back] of [
      [{}, { rows: 20 }, { rows: 23 }],
      [{}, { columns: 12 }, { columns: 16 }],
      [{ arrangement: 'rings', rings: 6 }, { rings: 4 }, { rings: 6 }],
    ] as const) {
      const [before, smaller] = sizes(patch, less)
      expect(moved(before, smaller)).toEqual([])
      const again = change(smaller, back)
      expect(moved(smaller, again)).toEqual([])
      expect(alikeIn(again)).toBe(0)
    }
  })

  it('works with as few colourways as the arrangement needs', () => {
    for (const [patch, next, count] of [
      [{}, { rows: 24 }, 3],
      [{ arrangement: 'straight-rows' }, { columns: 17 }, 2],
      [{ arrangement: 'rings', rings: 5 }, { rings: 6 }, 3],
    ] as const) {
      const [before, after] = sizes(patch, next, count)
      expect(moved(before, after)).toEqual([])
      expect(alikeIn(after)).toBe(0)
    }
  })

  it('takes the paint along where a ring moves every number', () => {
    const before = paint(blanket({ arrangement: 'rings', rings: 2 }), { '3,3': 'c4', '3,3+3,4+4,3': 'c1' })
    const after = change(before, { rings: 3 })
    expect(layoutOf(after).cells?.painted).toEqual({ '4,4': 'c4', '4,4+4,5+5,4': 'c1' })
    expect(moved(before, after)).toEqual([])
    expect(layoutOf(change(after, { rings: 2 })).cells?.painted).toEqual(layoutOf(before).cells?.painted)
  })

  it('keeps the colours of rows under paint and in a file that was changed by hand', () => {
    const before = paint(paint(blanket({}), { '3,3': 'c1' }), { '9,4': 'c2' })
    const after = { ...before, layout: { ...layoutOf(before), rows: 25 } }
    expect(moved(before, after)).toEqual([])
    expect(alikeIn(after)).toBe(0)
  })
})

describe('what is coloured anew', () => {
  it('another pattern, seed or arrangement starts afresh and forgets', () => {
    const held = paint(blanket({}), { '3,3': 'c1' })
    expect(layoutOf(held).cells?.kept).toBeDefined()
    const { cells } = layoutOf(held)
    for (const patch of [
      { cells: { ...cells, fill: { ...cells?.fill, seed: 8 } } },
      { cells: { ...cells, fill: { ...cells?.fill, pattern: 'rows' as const } } },
      { arrangement: 'straight-rows' as const },
    ])
      expect(layoutOf(change(held, patch)).cells?.kept).toBeUndefined()
  })

  it('a colourway that comes takes its share from the others, one that goes leaves the rest', () => {
    for (const pattern of ['no-two-alike', 'scatter'] as const) {
      const fill = { pattern, seed: 2, colourways: ['c0', 'c1', 'c2', 'c3', 'c4'] }
      const before = blanket({ cells: { fill } }, 6)
      const more = change(before, { cells: { fill: { ...fill, colourways: [...fill.colourways, 'c5'] } } })
      expect(gapOf(more)).toBeLessThanOrEqual(1)
      expect(moved(before, more).length).toBeLessThan(130)
      const fewer = change(more, { cells: { ...layoutOf(more).cells, fill } })
      const away = moved(more, fewer).filter((at) => coloursOf(more).get(at) !== 'c5')
      expect(away.length).toBeLessThan(pattern === 'scatter' ? 10 : 60)
      const left = countsOf(fewer).slice(0, 5)
      expect(Math.max(...left) - Math.min(...left)).toBeLessThanOrEqual(1)
    }
  })

  it('leaves files of before as they were coloured', () => {
    const colours = (name: string) => {
      const text = readFileSync(new URL(`../../../examples/${name}.petalyard`, import.meta.url), 'utf8')
      return standingColours(JSON.parse(text) as Project)!.assignment.colourways.join('')
    }
    // Printed by the version that knew nothing of what was kept.
    expect(colours('limekiln-cushion')).toBe('bcacabcabcabcabcbca')
    expect(colours('slate-roof-lap-blanket')).toBe(
      'acbacbacbbacbacbaacbacbacbbacbacbaacbacbacbbacbacbaacbacbacbbacbacbaacbacbacbbacbacbaacbacbacbbacbacbaacbacbacb',
    )
  })

  it('is not thrown by a memory that says nonsense', () => {
    const cells = layoutOf(paint(blanket({}), { '3,3': 'c1' })).cells
    for (const kept of [
      { ...cells?.kept, rows: [] },
      { ...cells?.kept, rows: ['0 0 0 0', '99 zz', ''] },
      { ...cells?.kept, colourways: ['gone'], under: { '3,3': 'gone', '1,1': 'c2', nonsense: 'c1' } },
      { pattern: 'no-two-alike', seed: 7, arrangement: 'offset-rows' },
      {},
    ]) {
      const found = blanket({ cells: { ...cells, kept } })
      expect(alikeIn(found)).toBe(0)
      expect([...coloursOf(found).values()].every((id) => id !== '')).toBe(true)
    }
  })
})
