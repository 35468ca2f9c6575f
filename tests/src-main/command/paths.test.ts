/** Whatever stands at a path that a command is given: one clear line, without a word of the system's own. */
import { execFileSync } from 'node:child_process'
import { chmod, copyFile, mkdir, readdir, readFile, symlink, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { newFolder, petalyard, SAMPLE } from './sample'

let folder = ''
let project = ''
let panel = ''
beforeAll(async () => {
  folder = await newFolder()
  project = join(folder, 'throw.petalyard')
  panel = join(folder, 'panel.petalyard')
  await writeFile(project, JSON.stringify(SAMPLE))
  await copyFile('examples/quince-wreath-cushion.petalyard', panel)
  await writeFile(join(folder, 'file'), 'a text')
  await mkdir(join(folder, 'folder.png'))
  await writeFile(join(folder, 'folder.png', 'something'), '')
  await symlink(join(folder, 'circle.png'), join(folder, 'circle.png'))
  await symlink('/dev/zero', join(folder, 'device.png'))
  execFileSync('mkfifo', [join(folder, 'pipe.png')])
  await mkdir(join(folder, 'closed'))
  await writeFile(join(folder, 'closed', 'file'), 'a text')
  await chmod(join(folder, 'closed'), 0)
  for (const path of [folder, project, panel]) await chmod(path, 0o755)
})

/** What may stand there; a name, as the table tells it, with its path. */
const PLACES: Readonly<Record<string, () => string>> = {
  'a folder': () => join(folder, 'folder.png'),
  'a file in place of a folder': () => join(folder, 'file', 'in it.png'),
  nothing: () => join(folder, 'none', 'at all.png'),
  'a name with a zero byte': () => join(folder, 'a\0b.png'),
  'a name that is too long': () => join(folder, `${'x'.repeat(400)}.png`),
  'links in a circle': () => join(folder, 'circle.png'),
  'a device': () => join(folder, 'device.png'),
  'a pipe': () => join(folder, 'pipe.png'),
}

/** Of these root may read everything, so the test is somebody else; and there nobody may write. */
const CLOSED = { toRead: () => join(folder, 'closed', 'file'), toWrite: () => '/sys/never.png' }

const house = async (more: object): Promise<string> => {
  const path = join(await newFolder(), 'house.json')
  await chmod(join(path, '..'), 0o755)
  await writeFile(path, JSON.stringify(more))
  return path
}
const pdf = () => join(folder, 'never.pdf')

/** Every word of a command line that names a file to read; the command must not write anything. */
const READ: Readonly<Record<string, (path: string) => string[] | Promise<string[]>>> = {
  'check FILE': (path) => ['check', path],
  'measure FILE': (path) => ['measure', path],
  'photo FILE': (path) => ['photo', path],
  'photo --yarns': (path) => ['photo', project, '--yarns', path],
  'read FILE': (path) => ['read', path],
  'plan FILE': (path) => ['plan', path],
  'fit FILE': (path) => ['fit', path, '--width', '1300', '--height', '1600'],
  'arrange FILE': (path) => ['arrange', path, '--wreath', '--out', pdf()],
  'arrange --panel': (path) => ['arrange', panel, '--panel', path, '--out', pdf()],
  'map FILE': (path) => ['map', path, '--out', pdf()],
  'map --house': (path) => ['map', project, '--house', path, '--out', pdf()],
  'map --font': (path) => ['map', project, '--font', path, '--out', pdf()],
  'page FILE': (path) => ['page', path, '--out', pdf()],
  'picture FILE': (path) => ['picture', path, '--out', join(folder, 'never.png')],
  'chart FILE': (path) => ['chart', path, '--out', join(folder, 'never.svg')],
  'the logo of a house style': async (path) => [
    'map',
    project,
    '--house',
    await house({ logo: `../../../../../..${path}` }),
    '--out',
    pdf(),
  ],
  'a font of a house style': async (path) => [
    'map',
    project,
    '--house',
    await house({ fonts: [path] }),
    '--out',
    pdf(),
  ],
}

/** And every one that names what is to be written. */
const WRITTEN: Readonly<Record<string, (path: string) => string[]>> = {
  'map --out': (path) => ['map', project, '--out', path],
  'map --editions --out': (path) => ['map', project, '--editions', 'us', '--out', path],
  'page --out': (path) => ['page', project, '--out', path],
  'picture --out': (path) => ['picture', project, '--out', path],
  'arrange --out': (path) => ['arrange', panel, '--wreath', '--out', path],
  'example --out': (path) => ['example', 'market-stall-throw', '--out', path],
}

/** Runs a command as somebody who is not allowed everything: root, in a container, may read what nobody may. */
async function asAnybody(words: readonly string[]) {
  const isRoot = process.geteuid?.() === 0
  if (isRoot) process.seteuid?.(65534)
  try {
    return await petalyard(...words)
  } finally {
    if (isRoot) process.seteuid?.(0)
  }
}

const clear = (err: string): void => {
  // Beside what is to be said of the project itself, a line each.
  expect(err.replace(/^(error|warning|note) .*\n/gm, '')).toMatch(/^petalyard: [^\n]+\n$/)
  expect(err).not.toMatch(/\bE[A-Z]{3,}|ERR_|syscall|fault of the program|undefined|\[object|errno/)
}

describe('a path to read', () => {
  for (const [place, path] of Object.entries({ ...PLACES, 'what is closed': CLOSED.toRead }))
    it.each(Object.keys(READ))(`${place}: %s`, async (command) => {
      const words = await READ[command]!(path())
      const before = await readdir(folder)
      const ran = path === CLOSED.toRead ? await asAnybody(words) : await petalyard(...words)
      expect(ran).toMatchObject({ code: 3, out: '' })
      clear(ran.err)
      expect(await readdir(folder)).toEqual(before)
    })
})

/** A folder for PDFs may be there, and is made where it is not. */
const WELCOME: Readonly<Record<string, readonly string[]>> = {
  'map --editions --out': ['a folder', 'nothing'],
}

describe('a path to write to', () => {
  for (const [place, path] of Object.entries({ ...PLACES, 'what is closed': CLOSED.toWrite }))
    it.each(Object.keys(WRITTEN).filter((name) => !WELCOME[name]?.includes(place)))(
      `${place}: %s`,
      async (command) => {
        const before = await readdir(folder)
        const ran = await petalyard(...WRITTEN[command]!(path()))
        expect(ran).toMatchObject({ code: 4, out: '' })
        clear(ran.err)
        expect(await readdir(folder)).toEqual(before)
        expect(await readFile(join(folder, 'file'), 'utf8')).toBe('a text')
      },
    )
})

describe('- instead of a name', () => {
  it.each(Object.keys(WRITTEN))('is no file to write to: %s', async (command) => {
    const ran = await petalyard(...WRITTEN[command]!('-'))
    expect(ran).toMatchObject({ code: 2, out: '' })
    expect(ran.err).toContain('nothing is written to standard output')
    expect(await readdir('.')).not.toContain('-')
  })
})
