/** What stands where a command is to write: replaced only where that is what its owner expects. */
import {
  chmod,
  copyFile,
  mkdir,
  readdir,
  readFile,
  rm,
  rmdir,
  stat,
  symlink,
  truncate,
  writeFile,
} from 'node:fs/promises'
import { join } from 'node:path'
import { encode } from 'fast-png'
import { describe, expect, it } from 'vitest'
import { photograph } from '../../src-core/photo/camera'
import { trial } from '../../src-core/photo/scenes'
import { newFolder, petalyard, SAMPLE, writeProject } from './sample'

describe('a file of another kind', () => {
  it.each(['map', 'page'])(
    'stays where %s would be written, larger than anything that is read',
    async (command) => {
      const out = join(await newFolder(), 'disk.img')
      await writeFile(out, '')
      // A hole: it takes no room on the disk.
      await truncate(out, 1100 * 2 ** 20)
      const ran = await petalyard(command, await writeProject(SAMPLE), '--out', out)
      expect(ran).toMatchObject({ code: 4, out: '' })
      expect(ran.err).toContain('it was left as it is. Choose another name.')
      expect((await stat(out)).size).toBe(1100 * 2 ** 20)
    },
  )

  it.runIf(process.platform !== 'win32').each(['map', 'page'])(
    'stays where %s would be written, and cannot be read',
    async (command) => {
      const folder = await newFolder()
      const project = await writeProject(SAMPLE)
      const out = join(folder, 'diary')
      await writeFile(out, 'my own notes')
      await chmod(out, 0o222)
      for (const path of [folder, join(project, '..')]) await chmod(path, 0o777)
      // Root may read what nobody may.
      const isRoot = process.geteuid?.() === 0
      if (isRoot) process.seteuid?.(65534)
      const ran = await petalyard(command, project, '--out', out).finally(
        () => isRoot && process.seteuid?.(0),
      )
      expect(ran).toMatchObject({ code: 4, out: '' })
      expect(ran.err).toContain('what is there cannot be read (you may not read it).')
      await chmod(out, 0o644)
      expect(await readFile(out, 'utf8')).toBe('my own notes')
    },
  )
})

describe('a link to what a command reads', () => {
  it.each([
    ['map', 'wall.pdf'],
    ['page', 'wall.html'],
    ['picture', 'wall.png'],
    ['picture', 'wall.svg'],
    ['chart', 'wall.svg'],
    ['chart', 'wall.pdf'],
  ])('is that project itself: %s --out %s', async (command, name) => {
    const project = await writeProject(SAMPLE)
    const before = await readFile(project, 'utf8')
    const out = join(project, '..', name)
    await symlink(project, out)
    expect(await petalyard(command, project, '--out', out)).toEqual({
      ...{ code: 2, out: '' },
      err: `petalyard: --out ${out} would replace the project itself.\n`,
    })
    // The other way round, too.
    expect(await petalyard(command, out, '--out', out)).toMatchObject({ code: 2 })
    expect(await readFile(project, 'utf8')).toBe(before)
  })

  it.each([
    ['read', 'text', 'round.txt'],
    ['photo', 'picture', 'rose.png'],
  ])('is what %s is given itself, the %s, also with --force', async (command, what, name) => {
    const folder = await newFolder()
    const file = join(folder, name)
    await writeFile(file, 'Rnd 1: 6 sc in ring. (6)\n')
    const out = join(folder, 'flower.petalyard')
    await symlink(file, out)
    expect(await petalyard(command, file, '--force', '--out', out)).toEqual({
      ...{ code: 2, out: '' },
      err: `petalyard: --out ${out} would replace the ${what} itself.\n`,
    })
    expect(await readdir(folder)).toHaveLength(2)
  })
})

describe('a project', () => {
  it.each([
    ['map', 'wall.pdf'],
    ['page', 'wall.html'],
    ['picture', 'wall.png'],
    ['picture', 'wall.svg'],
    ['chart', 'flower.svg'],
    ['chart', 'flower.pdf'],
  ])('is never replaced, whatever it is called: %s --out %s', async (command, name) => {
    const project = 'examples/orchard-wall-throw.petalyard'
    const words = [command, project, ...(name === 'flower.svg' ? ['--motif', 'leaf'] : [])]
    const out = join(await newFolder(), name)
    const other = JSON.stringify(SAMPLE, null, 2)
    await writeFile(out, other)
    const ran = await petalyard(...words, '--out', out)
    expect(ran).toMatchObject({ code: 4, out: '' })
    expect(ran.err).toContain('it was left as it is. Choose another name.')
    expect(await readFile(out, 'utf8')).toBe(other)
    // One like it is replaced, time and again.
    await rm(out)
    for (let again = 0; again < 2; again++)
      expect((await petalyard(...words, '--out', out)).out).toContain(`Wrote ${out}`)
  })
})

describe('--force', () => {
  const taken = trial(5, 540)
  const text = 'Rnd 1: ch 2, 6 sc in 2nd ch from hook. (6)\nRnd 2: 2 sc in each st around. (12)\n'
  const wordsOf: Readonly<Record<string, (folder: string) => Promise<string[]>>> = {
    example: async () => ['example', 'market-stall-throw'],
    read: async (folder) => {
      await writeFile(join(folder, 'round.txt'), text)
      return ['read', join(folder, 'round.txt')]
    },
    arrange: async (folder) => {
      const panel = join(folder, 'panel.petalyard')
      await copyFile('examples/quince-wreath-cushion.petalyard', panel)
      return ['arrange', panel, '--wreath']
    },
    photo: async (folder) => {
      const { width, height, data } = photograph(taken.scene)
      const png = encode({ width, height, data: new Uint8Array(data), channels: 4, depth: 8 })
      await writeFile(join(folder, 'rose.png'), png)
      return ['photo', join(folder, 'rose.png'), '--sheet', taken.sheet]
    },
  }

  it.each(Object.keys(wordsOf))('of %s replaces nothing where no copy of it can be kept', async (command) => {
    const folder = await newFolder()
    const out = join(folder, 'out.petalyard')
    await writeFile(out, 'precious')
    await mkdir(`${out}~`)
    const words = await wordsOf[command]!(folder)
    const before = await readdir(folder)
    const ran = await petalyard(...words, '--force', '--out', out)
    expect(ran.code).toBe(4)
    expect(ran.err).toContain(
      `${out} was left as it is: no copy of it can be kept at ${out}~: a folder or device has its name.`,
    )
    expect(await readFile(out, 'utf8')).toBe('precious')
    expect(await readdir(folder)).toEqual(before)
    // With room for the copy it goes through.
    await rmdir(`${out}~`)
    expect((await petalyard(...words, '--force', '--out', out)).code).toBeLessThan(2)
    expect(await readFile(`${out}~`, 'utf8')).toBe('precious')
  })
})
