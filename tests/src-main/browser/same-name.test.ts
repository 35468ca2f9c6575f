/** Projects of one title that are saved in the same instant. */
import { mkdtemp, readdir, readFile, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { browserCaller } from '../../../src-main/browser/caller'
import { machineFiles, replaceFile } from '../../../src-main/documents'
import { renameToFree } from '../../../src-main/documents/file-port'
import type { Caller } from '../../../src-main/host/ports'
import { answer } from '../../../src-main/host/operations'
import { makeHost } from '../host/host-world'

let folder = ''
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'petalyard-same-'))
})

const textOf = (notes: string) =>
  JSON.stringify({ format: 'petalyard-project', version: 1, title: 'Same', notes })
const notesIn = async (name: string): Promise<unknown> =>
  (JSON.parse(await readFile(join(folder, name), 'utf8')) as { notes: unknown }).notes

/** Lets everybody through when so many have come. */
function barrier(count: number): () => Promise<void> {
  let open: () => void = () => undefined
  const all = new Promise<void>((resolve) => (open = resolve))
  return () => {
    if (--count === 0) open()
    return all
  }
}

describe('two tabs that save one title in the same instant', () => {
  it('get a file each, with what each of them has', async () => {
    const world = await makeHost()
    const bothHaveAPlace = barrier(2)
    const tab = (): Caller => {
      const own = browserCaller(world.host.openBlank(), {
        ...{ folder, upload: null, isUntouched: () => false, offer: () => '', onErrand: () => undefined },
      })
      let isFirst = true
      const placeToSave: Caller['placeToSave'] = async (name, taken) => {
        const place = await own.placeToSave(name, taken)
        if (isFirst) await bothHaveAPlace()
        isFirst = false
        return place
      }
      return { ...own, placeToSave }
    }
    const saved = await Promise.all(
      ['AAAA', 'BBBB'].map((notes) =>
        answer(world.host, tab(), 'saveProject', { revision: 1, text: textOf(notes) }),
      ),
    )
    expect(saved.map(({ outcome }) => outcome)).toEqual(['done', 'done'])
    expect((await readdir(folder)).sort()).toEqual(['Same 2.petalyard', 'Same.petalyard'])
    expect([await notesIn('Same.petalyard'), await notesIn('Same 2.petalyard')].sort()).toEqual([
      'AAAA',
      'BBBB',
    ])
    const paths = world.host.openIds.map((id) => world.host.session(id)?.path)
    expect(new Set(paths).size).toBe(2)
  })
})

describe('a name that is chosen for nobody to have it', () => {
  const write = (files = machineFiles) =>
    replaceFile(join(folder, 'a'), new TextEncoder().encode('new'), {
      ...{ backup: true, onlyIfFree: true, files },
    })

  it('is given up where somebody takes it while the file is written', async () => {
    const late = {
      ...machineFiles,
      writeDurably: async (...given: Parameters<typeof machineFiles.writeDurably>) => {
        await machineFiles.writeDurably(...given)
        await writeFile(join(folder, 'a'), 'precious')
      },
    }
    await expect(write(late)).rejects.toMatchObject({ code: 'ETAKEN' })
    await expect(write()).rejects.toMatchObject({ code: 'ETAKEN' })
    expect(await readdir(folder)).toEqual(['a'])
    expect(await readFile(join(folder, 'a'), 'utf8')).toBe('precious')
  })

  it('is taken by a rename that replaces nothing', async () => {
    await writeFile(join(folder, 'a'), 'precious')
    await writeFile(join(folder, 'b'), 'mine')
    await expect(renameToFree(join(folder, 'b'), join(folder, 'a'))).rejects.toMatchObject({ code: 'EEXIST' })
    await renameToFree(join(folder, 'b'), join(folder, 'c'))
    expect((await readdir(folder)).sort()).toEqual(['a', 'c'])
    expect(await readFile(join(folder, 'a'), 'utf8')).toBe('precious')
    expect(await readFile(join(folder, 'c'), 'utf8')).toBe('mine')
  })
})
