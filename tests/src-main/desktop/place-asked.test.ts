import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { placeAsked } from '../../../src-main/desktop/place-asked'

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'petalyard-place-'))
})

/** A person who types these names and answers so whether a file may be replaced; what was asked, in its order. */
async function answered(names: readonly (string | null)[], replaces: readonly boolean[] = []) {
  const asked: string[] = []
  const [typed, answers] = [[...names], [...replaces]]
  const path = await placeAsked(join(folder, 'throw.csv'), '.csv', {
    place: async (suggested) => {
      asked.push(`place ${suggested.slice(folder.length + 1)}`)
      const name = typed.shift() ?? null
      return name === null ? null : join(folder, name)
    },
    mayReplace: async (whole) => {
      asked.push(`replace ${whole.slice(folder.length + 1)}`)
      return answers.shift() ?? false
    },
  })
  return { path: path?.slice(folder.length + 1) ?? null, asked }
}

describe('a name without its ending', () => {
  it.each(['foo', 'v1.2', 'foo.pdf'])(
    '%s gets it, and nothing is asked where nothing is there',
    async (name) => {
      expect(await answered([name])).toEqual({ path: `${name}.csv`, asked: ['place throw.csv'] })
    },
  )

  it.each(['foo', 'v1.2'])('%s is asked for again where that file is there', async (name) => {
    writeFileSync(join(folder, `${name}.csv`), 'precious')
    expect(await answered([name], [true])).toEqual({
      path: `${name}.csv`,
      asked: ['place throw.csv', `replace ${name}.csv`],
    })
    expect(await answered([name, 'other'], [false])).toEqual({
      path: 'other.csv',
      asked: ['place throw.csv', `replace ${name}.csv`, `place ${name}.csv`],
    })
    expect(await answered([name, null], [false])).toMatchObject({ path: null })
  })
})

it('a name with its ending was asked for by the dialog itself', async () => {
  writeFileSync(join(folder, 'foo.CSV'), 'precious')
  expect(await answered(['foo.CSV'])).toEqual({ path: 'foo.CSV', asked: ['place throw.csv'] })
  expect(await answered([null])).toEqual({ path: null, asked: ['place throw.csv'] })
})
