import { execFileSync } from 'node:child_process'
import { mkdir, readFile, rm, stat, writeFile } from 'node:fs/promises'
import { existsSync } from 'node:fs'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { eventually, NEVER, projectText, QUICK, titleOf, World } from './world'

let world: World
beforeEach(async () => {
  world = await World.make()
})
afterEach(() => world.end())

const change = (revision: number, title: string) => ({ revision, text: projectText(title) })
const read = (path: string) => readFile(path, 'utf8')

describe('a project without a file', () => {
  it('is an example until something of it is changed, then somebody’s own', async () => {
    const session = world.session({ origin: 'example' })
    expect(session.opened().origin).toBe('example')
    await session.keep(change(1, 'Mine'))
    expect(session.opened().origin).toBe('kept')
    await session.saveTo(world.path('mine.petalyard'), change(2, 'Mine'))
    expect(session.opened().origin).toBe('file')
  })

  it('leaves no trace while nothing was changed', async () => {
    const session = world.session()
    expect(session.keeping.place).toBe('nowhere')
    await session.close()
    expect(await world.kept.list()).toEqual([])
  })

  it('is in the own folder when keep answers, and counts as saved', async () => {
    const session = world.session()
    const kept = await session.keep(change(1, 'First'))
    expect(kept).toMatchObject({ outcome: 'done', value: { place: 'app', revision: 1, savedRevision: 1 } })
    const [entry] = await world.kept.list()
    expect(entry).toMatchObject({
      id: 'one',
      path: null,
      title: 'First',
      revision: 1,
      holder: world.kept.run,
    })
    expect(titleOf(entry?.text ?? '')).toBe('First')
  })

  it('stays in the own folder after closing, held by nobody', async () => {
    const session = world.session()
    await session.keep(change(1, 'First'))
    expect(await session.close()).toBeNull()
    expect(await world.kept.list()).toMatchObject([{ id: 'one', holder: null }])
  })

  it('tells when the own folder cannot be written, and recovers', async () => {
    const session = world.session()
    world.ownFault = 'the disk is full'
    const refused = await session.keep(change(1, 'First'))
    expect(refused).toMatchObject({ outcome: 'refused', problem: { code: 'app/cannot-keep' } })
    world.ownFault = null
    expect(await session.keep(change(2, 'Second'))).toMatchObject({
      outcome: 'done',
      value: { problem: null },
    })
  })

  it('tries the own folder again by itself', async () => {
    const session = world.session({}, QUICK)
    world.ownFault = 'the disk is full'
    await session.keep(change(1, 'First'))
    world.ownFault = null
    await eventually(() => expect(session.keeping).toMatchObject({ problem: null, savedRevision: 1 }))
    expect(await world.kept.list()).toMatchObject([{ title: 'First' }])
  })

  it('does not close in silence while the own folder cannot be written', async () => {
    const session = world.session()
    world.ownFault = 'the disk is full'
    await session.keep(change(1, 'First'))
    expect(await session.settle()).toMatchObject({ code: 'app/cannot-keep' })
    expect(await session.close()).toMatchObject({ code: 'app/cannot-keep' })
  })

  it('keeps the last of many changes that arrive at once', async () => {
    const session = world.session()
    await Promise.all(
      Array.from({ length: 40 }, (_, index) => session.keep(change(index + 1, `T${index + 1}`))),
    )
    expect(await world.kept.list()).toMatchObject([{ revision: 40, title: 'T40' }])
  })

  it('keeps unknown fields and the order of keys', async () => {
    const session = world.session()
    const text = projectText('First', { zebra: { b: 1, a: [2] }, apple: true })
    await session.keep({ revision: 1, text })
    const [entry] = await world.kept.list()
    expect(JSON.stringify(JSON.parse(entry?.text ?? ''))).toBe(text)
  })
})

describe('what a window hands over', () => {
  it('is refused when it is no project, and nothing changes', async () => {
    const session = world.session()
    await session.keep(change(1, 'First'))
    for (const text of ['', '{', '[]', '{"format":"petalyard-project","version":1,"title":7}']) {
      const refused = await session.keep({ revision: 2, text })
      expect(refused).toMatchObject({ outcome: 'refused', problem: { code: 'app/cannot-open' } })
    }
    expect(titleOf(session.text)).toBe('First')
    expect(session.revision).toBe(1)
  })

  it('is refused when it is older than what is held', async () => {
    const session = world.session()
    await session.keep(change(5, 'Fifth'))
    const refused = await session.keep(change(4, 'Fourth'))
    expect(refused).toMatchObject({ outcome: 'refused', problem: { code: 'app/old-revision' } })
    expect(titleOf(session.text)).toBe('Fifth')
  })
})

const MOTIFS = [{ id: 'm1', kind: 'measured', outline: 'round', across: 80 }]
const LAYOUT = { kind: 'blanket', arrangement: 'straight-rows', columns: 2, rows: 2 }

describe('a project with a file', () => {
  it('saves itself soon after the last change, with one backup of what was there', async () => {
    const session = await world.sessionOnFile('throw.petalyard', QUICK)
    const path = world.path('throw.petalyard')
    await session.keep(change(1, 'First'))
    await eventually(async () => expect(titleOf(await read(path))).toBe('First'))
    await session.keep(change(2, 'Second'))
    await eventually(async () => expect(titleOf(await read(path))).toBe('Second'))
    expect(world.writes.map((write) => write.backup)).toEqual([true, false])
    expect(titleOf(await read(`${path}~`))).toBe('On disk')
    await eventually(() =>
      expect(session.keeping).toMatchObject({ revision: 2, savedRevision: 2, problem: null }),
    )
    await session.close()
  })

  it.each([
    ['its motifs', { layout: LAYOUT }],
    ['its layout', { motifs: MOTIFS }],
    ['everything', {}],
  ])('keeps a copy of what it was before a save that loses %s', async (_lost, left) => {
    const session = await world.sessionOnFile('throw.petalyard')
    const path = world.path('throw.petalyard')
    const work = { motifs: MOTIFS, layout: LAYOUT }
    const save = async (revision: number, title: string, kept: object) =>
      expect(await session.save({ revision, text: projectText(title, kept) })).toMatchObject({
        outcome: 'done',
      })
    await save(1, 'Begun', work)
    await save(2, 'Whole', work)
    await save(3, 'Undone', left)
    await save(4, 'Undone again', left)
    expect(titleOf(await read(path))).toBe('Undone again')
    expect(titleOf(await read(`${path}~`))).toBe('Whole')
    expect(world.writes.map((write) => write.backup)).toEqual([true, false, true, false])
  })

  it('is saved during a stream of changes too', async () => {
    const session = await world.sessionOnFile('throw.petalyard', { ...QUICK, saveAfter: 60, saveAtMost: 120 })
    for (let revision = 1; revision <= 30; revision++) {
      await session.keep(change(revision, `T${revision}`))
      await new Promise((resolve) => setTimeout(resolve, 10))
    }
    expect(world.writes.length).toBeGreaterThanOrEqual(1)
    await session.close()
    expect(titleOf(await read(world.path('throw.petalyard')))).toBe('T30')
  })

  it('is kept in the own folder at once, before the file is written', async () => {
    const session = await world.sessionOnFile('throw.petalyard')
    await session.keep(change(1, 'First'))
    expect(titleOf(await read(world.path('throw.petalyard')))).toBe('On disk')
    expect(await world.kept.list()).toMatchObject([{ revision: 1, savedRevision: 0, title: 'First' }])
  })

  it('says that no copy of the former file could be kept', async () => {
    const session = await world.sessionOnFile('a.petalyard')
    await mkdir(world.path('a.petalyard~'))
    expect(await session.save(change(1, 'First'))).toMatchObject({
      outcome: 'done',
      value: {
        problem: null,
        savedRevision: 1,
        remark: {
          code: 'app/no-backup',
          message:
            "'a' was saved, but no copy of what it held before could be kept beside it: a folder or device has its name.",
        },
      },
    })
    expect(titleOf(await read(world.path('a.petalyard')))).toBe('First')
  })

  it('says that another window took it over while this one was stopped', async () => {
    const session = world.session()
    await session.keep(change(1, 'First'))
    vi.spyOn(world.kept, 'isBeside').mockReturnValue(true)
    await session.keep(change(2, 'Second'))
    expect(session.keeping.remark).toMatchObject({ code: 'app/taken-over' })
  })

  it('is saved at closing and leaves the own folder', async () => {
    const session = await world.sessionOnFile('throw.petalyard')
    await session.keep(change(1, 'First'))
    expect(await session.close()).toBeNull()
    expect(titleOf(await read(world.path('throw.petalyard')))).toBe('First')
    expect(await world.kept.list()).toEqual([])
  })

  it('stays whole in the own folder when its file cannot be written at closing', async () => {
    const session = await world.sessionOnFile('throw.petalyard')
    await session.keep(change(1, 'First'))
    world.fileFault = 'the disk is full'
    expect(await session.close()).toMatchObject({ code: 'app/saving-waits' })
    expect(titleOf(await read(world.path('throw.petalyard')))).toBe('On disk')
    expect(await world.kept.list()).toMatchObject([{ title: 'First', savedRevision: 0, holder: null }])
  })

  it('tries again after a failed save, and tells both', async () => {
    const session = await world.sessionOnFile('throw.petalyard', QUICK)
    world.fileFault = 'another program holds the file'
    await session.keep(change(1, 'First'))
    await eventually(() => expect(session.keeping.problem?.code).toBe('app/saving-waits'))
    world.fileFault = null
    await eventually(() => expect(session.keeping).toMatchObject({ problem: null, savedRevision: 1 }))
    expect(world.told.some((keeping) => keeping.problem !== null)).toBe(true)
    await session.close()
  })

  it('is saved even while the own folder cannot be written', async () => {
    const session = await world.sessionOnFile('throw.petalyard', QUICK)
    world.ownFault = 'the disk is full'
    expect(await session.keep(change(1, 'First'))).toMatchObject({
      outcome: 'done',
      value: { problem: null, savedRevision: 1, folderProblem: { code: 'app/own-folder' } },
    })
    expect(titleOf(await read(world.path('throw.petalyard')))).toBe('First')
    expect(await session.close()).toBeNull()
  })

  it('claims nothing about the own folder when neither can be written', async () => {
    const session = await world.sessionOnFile('throw.petalyard')
    world.ownFault = 'the disk is full'
    world.fileFault = 'the disk is full'
    await session.keep(change(1, 'First'))
    expect(await session.settle()).toMatchObject({ code: 'app/cannot-keep' })
    world.ownFault = null
    await session.close()
  })

  it('is not touched by opening and closing', async () => {
    const session = await world.sessionOnFile('throw.petalyard')
    await session.close()
    expect(world.writes).toEqual([])
  })

  it('moves to another file with Save As, and saves there from then on', async () => {
    const session = await world.sessionOnFile('throw.petalyard')
    const other = world.path('other.petalyard')
    const saved = await session.saveTo(other, change(1, 'First'))
    expect(saved).toMatchObject({
      outcome: 'done',
      value: { name: 'other', place: 'file', savedRevision: 1 },
    })
    await session.save(change(2, 'Second'))
    expect(titleOf(await read(other))).toBe('Second')
    expect(titleOf(await read(world.path('throw.petalyard')))).toBe('On disk')
  })

  it('stays where it was when Save As fails', async () => {
    const session = await world.sessionOnFile('throw.petalyard')
    world.fileFault = 'this place can only be read'
    const refused = await session.saveTo(world.path('other.petalyard'), change(1, 'First'))
    expect(refused).toMatchObject({ outcome: 'refused', problem: { code: 'app/cannot-write' } })
    expect(session.path).toBe(world.path('throw.petalyard'))
  })
})

describe('a file that somebody else changed', () => {
  it('is not written over by the timer, by Save, or at closing', async () => {
    const session = await world.sessionOnFile('throw.petalyard', QUICK)
    const path = world.path('throw.petalyard')
    await writeFile(path, projectText('Theirs'))
    await session.keep(change(1, 'Mine'))
    await eventually(() => expect(session.keeping.disk).toBe('changed'))
    const refused = await session.save(change(2, 'Mine 2'))
    expect(refused).toMatchObject({ outcome: 'refused', problem: { code: 'app/changed-on-disk' } })
    expect(await session.close()).toMatchObject({ code: 'app/changed-on-disk' })
    expect(titleOf(await read(path))).toBe('Theirs')
    expect(await world.kept.list()).toMatchObject([{ title: 'Mine 2', holder: null }])
  })

  it('is noticed without any change of ours', async () => {
    const session = await world.sessionOnFile('throw.petalyard')
    expect(await session.checkDisk()).toBe('same')
    await writeFile(world.path('throw.petalyard'), projectText('Theirs'))
    expect(await session.checkDisk()).toBe('changed')
    expect(world.told.at(-1)?.disk).toBe('changed')
  })

  it('is found where it was written between our write and our look at it', async () => {
    const session = await world.sessionOnFile('throw.petalyard')
    world.behindWrite = (path) => writeFile(path, projectText('Theirs'))
    await session.save(change(1, 'Mine'))
    world.behindWrite = null
    expect(await session.checkDisk()).toBe('changed')
    const refused = await session.save(change(2, 'Mine 2'))
    expect(refused).toMatchObject({ outcome: 'refused', problem: { code: 'app/changed-on-disk' } })
    expect(titleOf(await read(world.path('throw.petalyard')))).toBe('Theirs')
  })

  it('is the same when only its time changed', async () => {
    const session = await world.sessionOnFile('throw.petalyard')
    await writeFile(world.path('throw.petalyard'), await read(world.path('throw.petalyard')))
    expect(await session.checkDisk()).toBe('same')
  })

  it('keep-mine writes ours and leaves theirs as the backup', async () => {
    const session = await world.sessionOnFile('throw.petalyard')
    const path = world.path('throw.petalyard')
    await writeFile(path, projectText('Theirs'))
    await session.checkDisk()
    const answered = await session.answerDisk({ ...change(1, 'Mine'), answer: 'keep-mine' })
    expect(answered).toMatchObject({
      outcome: 'done',
      value: { keeping: { disk: 'same', savedRevision: 1 } },
    })
    expect(titleOf(await read(path))).toBe('Mine')
    expect(titleOf(await read(`${path}~`))).toBe('Theirs')
    // Again, although the copy from the opening is made.
    await writeFile(path, projectText('Theirs again'))
    await session.answerDisk({ ...change(2, 'Mine'), answer: 'keep-mine' })
    expect(titleOf(await read(`${path}~`))).toBe('Theirs again')
  })

  it('take-theirs hands theirs over as a further revision', async () => {
    const session = await world.sessionOnFile('throw.petalyard')
    await writeFile(world.path('throw.petalyard'), projectText('Theirs'))
    const answered = await session.answerDisk({ ...change(3, 'Mine'), answer: 'take-theirs' })
    expect(answered).toMatchObject({ outcome: 'done', value: { nextRevision: 5, keeping: { disk: 'same' } } })
    expect(titleOf(session.text)).toBe('Theirs')
    expect(session.isUnsaved).toBe(false)
  })

  it('take-theirs of a damaged file changes nothing', async () => {
    const session = await world.sessionOnFile('throw.petalyard')
    await writeFile(world.path('throw.petalyard'), '{"format":')
    const refused = await session.answerDisk({ ...change(1, 'Mine'), answer: 'take-theirs' })
    expect(refused).toMatchObject({ outcome: 'refused', problem: { code: 'app/cannot-open' } })
    expect(titleOf(session.text)).toBe('Mine')
  })

  it('that is gone is not made anew by the timer, but by Save', async () => {
    const session = await world.sessionOnFile('throw.petalyard', QUICK)
    const path = world.path('throw.petalyard')
    await rm(path)
    await session.keep(change(1, 'Mine'))
    await eventually(() => expect(session.keeping.disk).toBe('missing'))
    expect(existsSync(path)).toBe(false)
    expect(await session.save(change(2, 'Mine'))).toMatchObject({ outcome: 'done', value: { disk: 'same' } })
    expect(titleOf(await read(path))).toBe('Mine')
    await session.close()
  })

  it('take-theirs of a file that is gone says so', async () => {
    const session = await world.sessionOnFile('throw.petalyard', NEVER)
    await rm(world.path('throw.petalyard'))
    const refused = await session.answerDisk({ ...change(1, 'Mine'), answer: 'take-theirs' })
    expect(refused).toMatchObject({ outcome: 'refused', problem: { code: 'app/nothing-on-disk' } })
  })
})

describe.runIf(process.platform !== 'win32')('a pipe in the place of the file', () => {
  it('keeps neither saving nor closing waiting, and is left as it is', async () => {
    const session = await world.sessionOnFile('throw.petalyard', QUICK)
    const path = world.path('throw.petalyard')
    await rm(path)
    execFileSync('mkfifo', [path])
    expect(await session.checkDisk()).toBe('missing')
    expect(await session.keep(change(1, 'First'))).toMatchObject({ outcome: 'done' })
    expect(await session.save(change(2, 'Second'))).toMatchObject({
      problem: { code: 'app/saving-waits' },
    })
    expect(await session.answerDisk({ ...change(2, 'Second'), answer: 'take-theirs' })).toMatchObject({
      outcome: 'refused',
    })
    expect(await session.close()).toMatchObject({ code: 'app/gone-from-disk' })
    expect((await stat(path)).isFIFO()).toBe(true)
    expect(await world.kept.list()).toMatchObject([{ title: 'Second' }])
  })
})
