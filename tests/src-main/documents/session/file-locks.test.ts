/** Two runs of the program and one file: each in turn, and what a run left that is gone holds nobody up. */
import { readdir, readFile, rm, utimes, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { FilePlace } from '../../../../src-main/documents/session/file-place'
import { KeptProjects } from '../../../../src-main/documents/session/kept'
import { OwnFolder } from '../../../../src-main/documents/session/own-folder'
import { projectFiles, writeAtomically } from '../../../../src-main/documents/session/project-files'
import { eventually, NEVER, projectText, titleOf, World } from './world'

let world: World
let other: KeptProjects
beforeEach(async () => {
  world = await World.make()
  other = new KeptProjects(new OwnFolder(world.folder, { writeAtomically }), { now: Date.now })
  await other.start()
})
afterEach(async () => {
  await other.stop()
  await world.end()
})

const locks = () => readdir(join(world.folder, 'saving'))
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))

describe('a file that two runs save', () => {
  it('is saved by one of them at a time', async () => {
    let inside = 0
    let most = 0
    const save = async () => {
      most = Math.max(most, ++inside)
      await pause(20)
      inside -= 1
      return true
    }
    const saved = await Promise.all(
      [world.kept, other, world.kept, other].map((run) => run.alone('/a', save)),
    )
    expect([saved, most]).toEqual([[true, true, true, true], 1])
    expect(await locks()).toEqual([])
  })

  it('is no reason to wait for another file', async () => {
    let isDone = false
    await world.kept.alone('/a', async () => {
      await other.alone('/b', () => Promise.resolve((isDone = true)))
      return null
    })
    expect(isDone).toBe(true)
  })

  it('is saved by one of two in the same instant, and the other one hears of it', async () => {
    for (let round = 0; round < 10; round++) {
      const mine = await world.sessionOnFile('both.petalyard')
      const path = world.path('both.petalyard')
      const theirs = world.session(
        { id: 'two', origin: 'file', path, stamp: (await stampOfFile(path))! },
        NEVER,
        other,
      )
      const saved = await Promise.all([
        mine.save({ revision: 1, text: projectText('Mine') }),
        theirs.save({ revision: 1, text: projectText('Theirs') }),
      ])
      expect(saved.map(({ outcome }) => outcome).sort()).toEqual(['done', 'refused'])
      const winner = saved[0]!.outcome === 'done' ? 'Mine' : 'Theirs'
      expect(titleOf(await readFile(path, 'utf8'))).toBe(winner)
      const loser = winner === 'Mine' ? theirs : mine
      expect(loser.keeping.disk).toBe('changed')
      // What it had is not lost: it is in the own folder, and an answer saves it.
      expect(await loser.answerDisk({ answer: 'keep-mine', revision: 1, text: loser.text })).toMatchObject({
        outcome: 'done',
      })
      expect(titleOf(await readFile(`${path}~`, 'utf8'))).toBe(winner)
    }
  })

  it('waits no longer than a few seconds for a run that lives', async () => {
    let let_go = () => {}
    const held = world.kept.alone('/a', () => new Promise<void>((resolve) => (let_go = resolve)))
    while ((await locks()).length === 0) await pause(5)
    expect(await other.alone('/a', () => Promise.resolve('saved'))).toBeNull()
    let_go()
    await held
    expect(await other.alone('/a', () => Promise.resolve('saved'))).toBe('saved')
  }, 15_000)

  it('is not held by a run that is gone, which finds its lock lost when it comes back', async () => {
    let isStill: boolean | null = null
    await world.kept.alone('/a', async (isHeld) => {
      // It was stopped: its sign of life is old.
      await rm(join(world.folder, 'running', world.kept.run))
      expect(await other.alone('/a', () => Promise.resolve('saved'))).toBe('saved')
      isStill = await isHeld()
    })
    expect(isStill).toBe(false)
    expect(await locks()).toEqual([])
  })

  /** Takes the lock of `path` over from the first run, as if that were stopped; what lets it go again. */
  async function takeOver(path: string): Promise<() => Promise<void>> {
    await rm(join(world.folder, 'running', world.kept.run), { force: true })
    let letGo = () => {}
    const held = other.alone(path, () => new Promise<void>((resolve) => (letGo = resolve)))
    await eventually(async () => {
      const [lock = ''] = await locks()
      expect(await readFile(join(world.folder, 'saving', lock), 'utf8')).toContain(other.run)
    })
    return async () => {
      letGo()
      await held
    }
  }

  it('is left to the run that took it over, which holds it until it is done itself', async () => {
    let letGo = () => Promise.resolve()
    await world.kept.alone('/a', async () => {
      letGo = await takeOver('/a')
    })
    expect(await locks()).toHaveLength(1)
    await letGo()
    expect(await locks()).toEqual([])
  })

  it('is not replaced by a run that was stopped, while the one that took it over saves', async () => {
    const path = world.path('taken.petalyard')
    await projectFiles.write(path, projectText('On disk'), { backup: false })
    let letGo = () => Promise.resolve()
    const files: typeof projectFiles = {
      ...projectFiles,
      write: async (...words) => {
        letGo = await takeOver(path)
        return projectFiles.write(...words)
      },
    }
    const place = new FilePlace(path, await stampOfFile(path), { files, kept: world.kept })
    expect(await place.write(projectText('Too late'))).toMatchObject({ ok: false })
    expect(titleOf(await readFile(path, 'utf8'))).toBe('On disk')
    await letGo()
  })

  it('is waited for while a lock has no name yet, but not where its run was killed before it wrote one', async () => {
    await world.kept.alone('/a', async () => {
      const lock = join(world.folder, 'saving', (await locks())[0]!)
      await writeFile(lock, '')
      // Looks are counted, so a busy machine waits longer: the lock stays young as long as that takes.
      const young = new Date(Date.now() + 4_500)
      await utimes(lock, young, young)
      expect(await other.alone('/a', () => Promise.resolve('saved'))).toBeNull()
      const old = new Date(Date.now() - 6_000)
      await utimes(lock, old, old)
      expect(await other.alone('/a', () => Promise.resolve('saved'))).toBe('saved')
    })
  }, 15_000)

  it('has what a run left there taken away at the next start', async () => {
    await writeFile(join(world.folder, 'saving', 'a'), 'nobody 1')
    await other.start()
    expect(await locks()).toEqual([])
  })

  it('is saved where the own folder is gone', async () => {
    await rm(world.folder, { recursive: true })
    expect(await world.kept.alone('/a', () => Promise.resolve('saved'))).toBe('saved')
  })
})

async function stampOfFile(path: string) {
  const read = await projectFiles.open(path)
  return read.ok ? read.stamp : null
}
