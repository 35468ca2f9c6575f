import { readFile, writeFile } from 'node:fs/promises'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { projectText, titleOf, World } from './world'

let world: World
beforeEach(async () => {
  world = await World.make()
})
afterEach(() => world.end())

const read = (path: string) => readFile(path, 'utf8')

describe('a file that was changed elsewhere', () => {
  it('says when it was changed and in which numbers it differs from what is here', async () => {
    const blanket = (rows: number) => ({ layout: { kind: 'blanket', arrangement: 'straight-rows', rows } })
    const session = await world.sessionOnFile('throw.petalyard')
    await writeFile(world.path('throw.petalyard'), projectText('Theirs', blanket(9)))
    await session.keep({ revision: 1, text: projectText('Mine', blanket(14)) })
    await session.checkDisk()
    const { theirs } = session.keeping
    expect(theirs).toMatchObject({ differs: ['Rows: 14 here, 9 in the file'], more: 0 })
    expect(Date.parse(theirs?.changedAt ?? '')).toBeGreaterThan(0)
    await session.keep({ revision: 2, text: projectText('Mine', blanket(9)) })
    expect(session.keeping.theirs?.differs).toEqual([])
    await session.answerDisk({ revision: 2, text: session.text, answer: 'take-theirs' })
    expect(session.keeping.theirs).toBeUndefined()
    // What is kept again after Undo leaves theirs beside it.
    await session.save({ revision: 4, text: projectText('Mine', blanket(14)) })
    expect(titleOf(await read(`${world.path('throw.petalyard')}~`))).toBe('Theirs')
  })
})
