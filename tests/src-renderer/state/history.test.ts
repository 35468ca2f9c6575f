import { createHash } from 'node:crypto'
import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { EMPTY } from '../../../src-core/plan'
import { seededRandom } from '../../../src-core/units/random'
import type { Random } from '../../../src-core/units/random'
import type { Background } from '../../../src-renderer/state/background'
import { sameThreadBackground } from '../../../src-renderer/state/background'
import { appliedTo, difference } from '../../../src-renderer/state/difference'
import { DocumentState } from '../../../src-renderer/state/document.svelte'
import { History } from '../../../src-renderer/state/history'
import { patchBlanket } from '../../../src-renderer/state/edits/layout'
import { SMALL } from '../projects'

const EDITS = 10_000
/** Bytes that memory may have grown by once everything is taken back. */
const GROWN_AT_MOST = 20e6

/** Plans nothing: what is tried here is what is kept of a project, and thousands of plans would take minutes. */
const planless: Background = {
  ...sameThreadBackground(),
  isBeside: true,
  plan: () => Promise.resolve(EMPTY),
}

type Cells = NonNullable<BlanketLayout['cells']>

function patchCells(project: Project, change: (cells: Cells) => Cells): Project {
  const { layout } = project
  if (layout?.kind !== 'blanket') throw new Error('it is a blanket')
  return { ...project, layout: { ...layout, cells: change(layout.cells ?? {}) } }
}

/** Any edit: a motif painted, what was painted taken away, lists longer, shorter or turned round, words, numbers. */
function edit(project: Project, random: Random): Project {
  const cell = `${1 + random.below(20)},${1 + random.below(20)}`
  switch (random.below(8)) {
    case 0:
    case 1:
    case 2:
      return patchCells(project, (cells) => ({
        ...cells,
        painted: { ...cells.painted, [cell]: `c${random.below(9)}` },
      }))
    case 3:
      return patchCells(project, (cells) => {
        const names = Object.keys(cells.painted ?? {})
        const { [names[random.below(Math.max(1, names.length))] ?? '']: _, ...painted } = cells.painted ?? {}
        return { ...cells, painted }
      })
    case 4:
      return { ...project, title: `Throw ${random.below(1000)}` }
    case 5: {
      const yarns = [...(project.yarns ?? [])]
      if (yarns.length > 20) yarns.splice(random.below(yarns.length), 1 + random.below(5))
      else yarns.splice(random.below(yarns.length + 1), 0, { id: `y${random.below(1e6)}`, name: 'Moss' })
      return { ...project, yarns }
    }
    case 6:
      return { ...project, yarns: [...(project.yarns ?? [])].reverse() }
    default:
      return patchBlanket(project, { rows: 1 + random.below(200) })
  }
}

const hashOf = (project: Project) => createHash('sha256').update(JSON.stringify(project)).digest('base64')

/** Bytes in use after everything that nobody holds is let go. */
function memory(): number {
  setFlagsFromString('--expose-gc')
  const collect = runInNewContext('gc') as () => void
  for (let times = 0; times < 3; times++) collect()
  return process.memoryUsage().heapUsed
}

describe('undo', () => {
  it(`takes ${EDITS} edits back to the byte, does them again, and gives the memory back`, () => {
    const random = seededRandom(5)
    const start = SMALL
    const before = memory()
    const hashes = [hashOf(start)]
    let [past, future, current] = [History.empty, History.empty, start]
    for (let count = 0; count < EDITS; count++) {
      past = past.with({ label: `edit ${count}`, key: null }, current)
      current = edit(current, random)
      hashes.push(hashOf(current))
    }
    // As many whole records would be 10,000 of some two hundred painted motifs.
    expect(memory() - before).toBeLessThan(3 * GROWN_AT_MOST)
    const step = (from: History, onto: History): [History, History] => {
      const { step: taken, project, rest } = from.back(current)!
      const given = onto.with(taken, current)
      current = project
      return [rest, given]
    }
    for (let count = EDITS - 1; count >= 0; count--) {
      expect(past.last?.label).toBe(`edit ${count}`)
      ;[past, future] = step(past, future)
      expect(hashOf(current) === hashes[count], `back before edit ${count}`).toBe(true)
    }
    expect(past.last).toBeNull()
    for (let count = 0; count < EDITS; count++) {
      ;[future, past] = step(future, past)
      expect(hashOf(current) === hashes[count + 1], `on to edit ${count}`).toBe(true)
    }
    while (past.last) [past, future] = step(past, future)
    expect(memory() - before).toBeLessThan(4 * GROWN_AT_MOST)
    // One edit more lets go of what could be done again.
    ;[past, future] = [past.with({ label: 'the last', key: null }, current), History.empty]
    expect(memory() - before).toBeLessThan(GROWN_AT_MOST)
    expect([past.last?.label, future.last]).toEqual(['the last', null])
  })

  it('goes back to the beginning, however long ago', () => {
    const document = new DocumentState(SMALL, planless)
    for (let count = 1; count <= 600; count++)
      document.change(`edit ${count}`, (project) => ({ ...project, title: `Throw ${count}` }))
    for (let count = 600; count >= 1; count--) {
      expect(document.undoLabel).toBe(`edit ${count}`)
      document.undo()
    }
    expect(document.undoLabel).toBeNull()
    expect(JSON.stringify(document.committed)).toBe(JSON.stringify(SMALL))
    for (let count = 1; count <= 600; count++) document.redo()
    expect(document.committed.title).toBe('Throw 600')
  })

  it('keeps the latest steps by identity', () => {
    const document = new DocumentState(SMALL, planless)
    document.change('change the rows', (project) => patchBlanket(project, { rows: 7 }))
    document.undo()
    expect(document.committed).toBe(SMALL)
  })
})

describe('a difference', () => {
  const pairs: [string, unknown, unknown][] = [
    ['nothing', { a: 1 }, { a: 1 }],
    ['a field that comes in the middle', { a: 1, c: 3 }, { a: 1, b: 2, c: 3 }],
    ['a field that goes', { a: 1, b: 2, c: 3 }, { a: 1, c: 3 }],
    ['fields in another order', { a: 1, b: 2 }, { b: 2, a: 1 }],
    ['a field that comes back last', { a: 1, b: { c: [1, 2] } }, { b: { c: [1, 2, 3] }, a: 1 }],
    ['a field that is null, or false, or absent', { a: null, b: false }, { a: false }],
    ['a list that grows at both ends', [1, 2, 3], [0, 1, 2, 3, 4]],
    ['a list of the same twice', [1, 1, 1], [1, 1]],
    ['a list that turns into fields', { a: [1] }, { a: { 0: 1 } }],
    ['a name of the language', JSON.parse('{"a":1}'), JSON.parse('{"__proto__":{"x":1},"constructor":2}')],
    ['a number below nothing', { a: 0 }, { a: -0 }],
    ['an empty list', [], [[]]],
  ]

  it.each(pairs)('leads to the same bytes both ways: %s', (_, before, after) => {
    for (const [from, to] of [
      [before, after],
      [after, before],
    ]) {
      const there = appliedTo(from, difference(from, to))
      expect(JSON.stringify(there)).toBe(JSON.stringify(to))
      expect(Object.getPrototypeOf(there)).toBe(Object.getPrototypeOf(to))
    }
  })

  it('shares what is the same', () => {
    const same = { big: [1, 2, 3] }
    const there = appliedTo({ same, a: 1 }, difference({ same, a: 1 }, { same, a: 2 })) as { same: unknown }
    expect(there.same).toBe(same)
  })
})
