/** What of others is in a build is found, and may be shipped. */
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { bundledPackages, isAllowed, licencesOf, packageFolderOf } from '../../../scripts/bundled.mjs'

const root = fileURLToPath(new URL('../../..', import.meta.url))

let folder: string
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'petalyard-bundled-'))
})
afterEach(() => rm(folder, { recursive: true }))

/** A package of nobody. */
async function packageWith(facts: object, files: Readonly<Record<string, string>> = {}): Promise<string> {
  const path = join(folder, 'one')
  await mkdir(path, { recursive: true })
  await writeFile(join(path, 'package.json'), JSON.stringify({ name: 'one', version: '1.2.3', ...facts }))
  for (const [name, text] of Object.entries(files)) await writeFile(join(path, name), text)
  return path
}

it('a build notes the packages of which something is in it, and no others', async () => {
  const entry = join(folder, 'entry.js')
  const from = (name: string) => JSON.stringify(join(root, 'node_modules', name))
  await writeFile(
    entry,
    `import polylabel from ${from('polylabel/polylabel.js')}
     import Flatbush from ${from('flatbush/index.js')}
     console.log(polylabel)`,
  )
  const found = new Set<string>()
  await build({
    configFile: false,
    logLevel: 'silent',
    root: folder,
    plugins: [bundledPackages(found)],
    build: { write: false, rolldownOptions: { input: entry } },
  })
  const names = licencesOf(found).map(({ name }) => name)
  expect(names).toEqual(expect.arrayContaining(['polylabel', 'tinyqueue']))
  expect(names).not.toContain('flatbush')
})

it.each([
  ['a plain module', '/home/x/node_modules/konva/lib/index.js', 'node_modules/konva'],
  ['what a bundler makes of one', '\0/home/x/node_modules/@a/b/c.js?commonjs-module', 'node_modules/@a/b'],
  ['a package in a package', '/home/x/node_modules/a/node_modules/b/c.js', 'node_modules/a/node_modules/b'],
  ['what the bundler adds', '\0vite/preload-helper.js', 'node_modules/vite'],
  ['our own', '/home/x/src-core/plan.ts', null],
])('%s has its folder', (_, id, place) => {
  expect(packageFolderOf(id)).toBe(place === null ? null : join(root, place))
})

it.each([
  ['MIT', true],
  ['MIT AND OFL-1.1', true],
  ['(MIT OR GPL-3.0-only)', true],
  ['MIT AND GPL-3.0-only', false],
  ['GPL-3.0-only', false],
  ['', false],
])('a licence of %j is allowed: %s', (licence, allowed) => {
  expect(isAllowed(licence)).toBe(allowed)
})

describe('a package that is shipped', () => {
  it('is listed with its texts', async () => {
    const path = await packageWith({ license: 'MIT' }, { 'LICENSE.md': 'Permission\r\n', NOTICE: 'By one.' })
    expect(licencesOf([path])).toEqual([
      { name: 'one', version: '1.2.3', licence: 'MIT', text: 'Permission\n\nBy one.' },
    ])
  })

  it('fails the build where its licence is not allowed, or told', async () => {
    const strange = await packageWith({ license: 'GPL-3.0-only' }, { LICENSE: 'text' })
    expect(() => licencesOf([strange])).toThrow('one is under GPL-3.0-only, which is not allowed')
    const silent = await packageWith({}, { LICENSE: 'text' })
    expect(() => licencesOf([silent])).toThrow('one is under no licence that it tells')
  })

  it('fails the build where it brings no text', async () => {
    const bare = await packageWith({ license: 'MIT' })
    expect(() => licencesOf([bare])).toThrow('one brings no text of its licence')
  })
})
