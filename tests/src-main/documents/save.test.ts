import { execFileSync } from 'node:child_process'
import { mkdtemp, readdir, readFile, stat, symlink, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import {
  explainWriteFailure,
  machineFiles,
  openProject,
  replaceFile,
  saveProject,
  WriteFailure,
} from '../../../src-main/documents'
import type { FilePort } from '../../../src-main/documents'

const project = (title: string): Project => ({ format: 'petalyard-project', version: 1, title })
const bytes = (text: string) => new TextEncoder().encode(text)
const fail = (code: string) => Object.assign(new Error(`${code}: made to fail`), { code })

let folder = ''
let path = ''
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'petalyard-save-'))
  path = join(folder, 'throw.petalyard')
})
const content = (name = path) => readFile(name, 'utf8')

describe('saving a project', () => {
  it('writes two-space JSON in the order of its keys and opens again', async () => {
    await saveProject(path, { zeta: 1, ...project('Harbour') } as Project)
    expect(await content()).toBe(
      '{\n  "zeta": 1,\n  "format": "petalyard-project",\n  "version": 1,\n  "title": "Harbour"\n}\n',
    )
    expect((await openProject(path)).kind).toBe('opened')
  })

  it('gives the same bytes for what was opened', async () => {
    await saveProject(path, project('Harbour'))
    const first = await content()
    const opened = await openProject(path)
    if (opened.kind !== 'opened') throw new Error(opened.kind)
    const { stamp } = await saveProject(path, opened.project)
    expect(await content()).toBe(first)
    expect(stamp).toEqual({ mtimeMs: (await stat(path)).mtimeMs, size: first.length })
  })

  it('keeps the former content in a backup, and nothing else behind', async () => {
    expect((await saveProject(path, project('One'))).backup).toBeNull()
    expect((await saveProject(path, project('Two'))).backup).toBe(`${path}~`)
    await saveProject(path, project('Three'))
    expect(await content()).toContain('Three')
    expect(await content(`${path}~`)).toContain('Two')
    expect((await readdir(folder)).sort()).toEqual(['throw.petalyard', 'throw.petalyard~'])
  })

  it('saves in turn when asked several times at once', async () => {
    await Promise.all(['One', 'Two', 'Three', 'Four'].map((title) => saveProject(path, project(title))))
    expect(await content()).toContain('Four')
    expect(await content(`${path}~`)).toContain('Three')
  })

  it('follows a link and keeps the mode of the file', async () => {
    await writeFile(path, 'old', { mode: 0o640 })
    const link = join(folder, 'link.petalyard')
    await symlink(path, link)
    await saveProject(link, project('Linked'))
    expect(await content()).toContain('Linked')
    expect((await stat(path)).mode & 0o777).toBe(0o640)
    expect((await readdir(folder)).sort()).toEqual(['link.petalyard', 'throw.petalyard', 'throw.petalyard~'])
  })

  it('never writes what could not be opened again', async () => {
    await saveProject(path, project('Good'))
    const spoilt = { ...project('Spoilt'), gauge: { rows: Number.NaN } }
    await expect(saveProject(path, spoilt)).rejects.toThrow('could not be opened again (gauge.rows)')
    expect(await content()).toContain('Good')
  })
})

describe('a step of saving that fails leaves the old content whole', () => {
  const failing: [string, Partial<FilePort>, string][] = [
    ['looking up the real path', { realPath: () => Promise.reject(fail('EIO')) }, 'look'],
    ['asking for the facts', { facts: () => Promise.reject(fail('EIO')) }, 'look'],
    ['being allowed to write', { demandWritable: () => Promise.reject(fail('EACCES')) }, 'look'],
    ['writing', { writeDurably: () => Promise.reject(fail('ENOSPC')) }, 'write'],
    [
      'writing all of it',
      { writeDurably: (to, data, like) => machineFiles.writeDurably(to, data.slice(0, 9), like) },
      'compare',
    ],
    ['reading back', { read: () => Promise.reject(fail('EIO')) }, 'compare'],
    ['reading back the same', { read: () => Promise.resolve(bytes('other')) }, 'compare'],
    [
      'reading back the same, of the same length',
      { read: async (from, most) => (await machineFiles.read(from, most)).map((byte) => byte ^ 1) },
      'compare',
    ],
    [
      'taking the place',
      {
        rename: (from, to) =>
          to.endsWith('~') ? machineFiles.rename(from, to) : Promise.reject(fail('EIO')),
      },
      'replace',
    ],
  ]

  it('says of a disk that took only a part that it is full', async () => {
    const writeDurably: FilePort['writeDurably'] = (to, data, like) =>
      machineFiles.writeDurably(to, data.slice(0, 9), like)
    const files = { ...machineFiles, writeDurably }
    const failure = await saveProject(path, project('New'), files).catch((error: unknown) => error)
    expect(explainWriteFailure(failure as WriteFailure, 'throw.petalyard')).toBe(
      'throw.petalyard could not be written: the disk is full.',
    )
  })

  it.each(failing)('%s', async (_, broken, step) => {
    await writeFile(path, 'old content')
    const files = { ...machineFiles, ...broken }
    const failure = await saveProject(path, project('New'), files).catch((error: unknown) => error)
    expect(failure).toBeInstanceOf(WriteFailure)
    expect(failure).toMatchObject({ step })
    expect(await content()).toBe('old content')
    const left = (await readdir(folder)).filter((name) => name !== basename(path) && !name.endsWith('~'))
    if (step === 'replace') {
      const kept = (failure as WriteFailure).keptAt ?? ''
      expect(await content(kept)).toContain('New')
      expect(explainWriteFailure(failure as WriteFailure, 'throw.petalyard')).toContain(kept)
    } else expect(left).toEqual([])
  })

  it.each([
    ['copying the old content', { copy: () => Promise.reject(fail('EACCES')) }],
    [
      'putting the backup in its place',
      {
        rename: (from: string, to: string) =>
          to.endsWith('~') ? Promise.reject(fail('EIO')) : machineFiles.rename(from, to),
      },
    ],
  ])('%s: the save goes on, says so, and keeps the former backup', async (_, broken) => {
    await writeFile(path, 'old content')
    await writeFile(`${path}~`, 'older content')
    const saved = await saveProject(path, project('New'), { ...machineFiles, ...broken })
    expect(saved.backup).toBeNull()
    expect(await content()).toContain('New')
    expect(await content(`${path}~`)).toBe('older content')
    expect(await readdir(folder)).toHaveLength(2)
  })

  it('a folder that cannot be synced is no failure', async () => {
    await saveProject(path, project('New'), {
      ...machineFiles,
      syncFolder: () => Promise.reject(fail('EINVAL')),
    })
    expect(await content()).toContain('New')
  })
})

describe('a file that another program holds', () => {
  it.each(['EPERM', 'EACCES', 'EBUSY'])('is tried again on %s, with growing pauses', async (code) => {
    await writeFile(path, 'old')
    const pauses: number[] = []
    let refusals = 4
    await replaceFile(path, bytes('new'), {
      backup: false,
      files: {
        ...machineFiles,
        rename: (from, to) => (refusals-- > 0 ? Promise.reject(fail(code)) : machineFiles.rename(from, to)),
        wait: (milliseconds) => Promise.resolve(void pauses.push(milliseconds)),
      },
    })
    expect(await content()).toBe('new')
    expect(pauses).toEqual([10, 20, 40, 80])
  })

  it('is given up after about two seconds, with the new content kept beside it', async () => {
    await writeFile(path, 'old')
    let waited = 0
    const held = {
      ...machineFiles,
      rename: () => Promise.reject(fail('EBUSY')),
      wait: (milliseconds: number) => Promise.resolve(void (waited += milliseconds)),
    }
    const failure = await replaceFile(path, bytes('new'), { backup: false, files: held }).catch(
      (error: unknown) => error,
    )
    expect(failure).toMatchObject({ step: 'replace', code: 'EBUSY' })
    expect(waited).toBeGreaterThan(1900)
    expect(waited).toBeLessThan(2500)
    expect(await content()).toBe('old')
    expect(await content((failure as WriteFailure).keptAt ?? '')).toBe('new')
  })
})

describe('places that cannot be written', () => {
  it('are told in words', async () => {
    const tell = async (to: string) => {
      const failure = await replaceFile(to, bytes('x'), { backup: false }).catch((error: unknown) => error)
      return failure instanceof WriteFailure ? explainWriteFailure(failure, 'x') : 'written'
    }
    expect(await tell(join(folder, 'no', 'such', 'x'))).toBe(
      'x could not be written: the folder does not exist.',
    )
    expect(await tell(folder)).toBe('x could not be written: a folder or device has this name.')
    await writeFile(path, '')
    expect(await tell(join(path, 'x'))).toBe('x could not be written: the folder does not exist.')
  })
})

describe('what stands beside a file', () => {
  it('is one staging file at most, however often its last step fails, and none once it works', async () => {
    await writeFile(path, 'old')
    const held = { ...machineFiles, rename: () => Promise.reject(fail('EIO')) }
    for (const content of ['one', 'two', 'three'])
      await replaceFile(path, bytes(content), { backup: false, files: held }).catch(() => undefined)
    const left = (await readdir(folder)).filter((name) => name !== basename(path))
    expect(left).toHaveLength(1)
    expect(await content(join(folder, left[0] ?? ''))).toBe('three')
    // One that cannot even be written leaves what is there.
    const full = { ...machineFiles, writeDurably: () => Promise.reject(fail('ENOSPC')) }
    await replaceFile(path, bytes('four'), { backup: false, files: full }).catch(() => undefined)
    expect(await content(join(folder, left[0] ?? ''))).toBe('three')
    // Nor does one that meets a file which somebody else writes.
    await replaceFile(path, bytes('four'), { backup: false, mayReplace: async () => false }).catch(
      () => undefined,
    )
    expect(await content(join(folder, left[0] ?? ''))).toBe('three')
    await replaceFile(path, bytes('five'), { backup: false })
    expect(await content()).toBe('five')
    expect(await readdir(folder)).toEqual(['throw.petalyard'])
  })

  it.runIf(process.platform !== 'win32')('stays where a pipe has the name of the backup copy', async () => {
    await writeFile(path, 'old')
    execFileSync('mkfifo', [`${path}~`])
    expect((await replaceFile(path, bytes('new'), { backup: true })).backup).toBeNull()
    expect(await content()).toBe('new')
    expect((await stat(`${path}~`)).isFIFO()).toBe(true)
  })
})

describe('long names', () => {
  // Names are as long as their bytes; a file system takes 255.
  it.each([
    ['245 letters', 'x'.repeat(245 - '.petalyard'.length)],
    ['78 Chinese characters, 244 bytes', '\u7dda'.repeat(78)],
    ['58 emoji, 242 bytes', '\u{1f9f6}'.repeat(58)],
  ])('%s: written, with a backup, and nothing left beside it', async (_, name) => {
    const long = join(folder, `${name}.petalyard`)
    await replaceFile(long, bytes('one'), { backup: true })
    await replaceFile(long, bytes('two'), { backup: true })
    expect(await content(long)).toBe('two')
    expect(await content(`${long}~`)).toBe('one')
    expect(await readdir(folder)).toHaveLength(2)
  })
})
