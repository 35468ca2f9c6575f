import { spawnSync } from 'node:child_process'
import {
  chown,
  mkdir,
  mkdtemp,
  readdir,
  readFile,
  rm,
  stat,
  symlink,
  utimes,
  writeFile,
} from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { OpeningPage } from '../../../src-main/browser/opening-page'

const ADDRESS = 'http://127.0.0.1:1/enter#token=secret'

let folder: string
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'petalyard-opening-'))
})
afterEach(() => rm(folder, { recursive: true }))

describe('the page that the launcher is given', () => {
  it('can be read by its owner alone, and its own address says nothing', async () => {
    const page = new OpeningPage(join(folder, 'Petalyard'))
    const given = (await page.write(ADDRESS)) ?? ''
    expect(given).not.toContain('secret')
    const file = fileURLToPath(given)
    expect(await readFile(file, 'utf8')).toContain(`content="0; url=${ADDRESS}"`)
    expect((await stat(file)).mode & 0o777).toBe(0o600)
    expect((await stat(dirname(file))).mode & 0o777).toBe(0o700)
    // The next one ends the one before.
    await page.write(`${ADDRESS}2`)
    expect(await stat(file).catch(() => null)).toBeNull()
    await page.remove()
    expect(await readdir(join(folder, 'Petalyard'))).toEqual([])
  })

  it('takes away what an earlier run left, and nothing else', async () => {
    for (const name of ['.opening-old', '.opening-young', 'old']) await mkdir(join(folder, name))
    for (const name of ['.opening-old', 'old']) await utimes(join(folder, name), 1, 1)
    const page = new OpeningPage(folder)
    await page.write(ADDRESS)
    await page.remove()
    expect((await readdir(folder)).sort()).toEqual(['.opening-young', 'old'])
  })

  it('takes away at once what was left by a run that was killed, and not what another run just made', async () => {
    const ended = spawnSync(process.execPath, ['--version']).pid
    const [left, another] = [`.opening-${ended}-abc`, `.opening-${process.ppid}-abc`]
    for (const name of [left, another]) await mkdir(join(folder, name))
    const page = new OpeningPage(folder)
    await page.write(ADDRESS)
    await page.remove()
    expect(await readdir(folder)).toEqual([another])
  })

  it('is written beside a link to nothing that has the name of one', async () => {
    await symlink(join(folder, 'nothing'), join(folder, '.opening-x'))
    const page = new OpeningPage(folder)
    expect(await page.write(ADDRESS)).not.toBeNull()
    await page.remove()
    expect(await readdir(folder)).toEqual(['.opening-x'])
  })

  // Only root can give a folder to somebody else; whoever is not root asks for one that is root's.
  it.runIf(process.platform !== 'win32')('is none in a folder of somebody else', async () => {
    const isRoot = process.geteuid?.() === 0
    const theirs = isRoot ? join(folder, 'theirs') : '/'
    if (isRoot) await mkdir(theirs)
    if (isRoot) await chown(theirs, 65534, 65534)
    const before = await readdir(theirs)
    const page = new OpeningPage(theirs)
    expect(await page.write(ADDRESS)).toBeNull()
    expect(await readdir(theirs)).toEqual(before)
  })

  it('is none where nothing can be written', async () => {
    await writeFile(join(folder, 'file'), '')
    expect(await new OpeningPage(join(folder, 'file', 'in it')).write(ADDRESS)).toBeNull()
  })
})
