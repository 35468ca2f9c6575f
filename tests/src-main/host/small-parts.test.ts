import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { Keeping } from '../../../shared-types/bridge'
import { writeAtomically } from '../../../src-main/documents/session/project-files'
import { programFolder } from '../../../src-main/host/data-folder'
import { fileNameFor, freePath } from '../../../src-main/host/file-names'
import { defaultSettings, SettingsStore } from '../../../src-main/host/settings'
import { windowTitle } from '../../../src-main/host/title'

/** One emoji to whoever looks: 25 bytes. */
const FAMILY = '\u{1f468}\u200d\u{1f469}\u200d\u{1f467}\u200d\u{1f466}'

describe('file names', () => {
  it.each([
    ['Harbour window throw', 'Harbour window throw'],
    ['Überwurf für Anaïs', 'Überwurf für Anaïs'],
    ['../../etc/passwd', 'etc passwd'],
    ['a/b\\c:d*e?f"g<h>i|j', 'a b c d e f g h i j'],
    ['  spaces \n and\tlines  ', 'spaces and lines'],
    ['ends with dots...', 'ends with dots'],
    ['throw\u202efdp.exe', 'throw fdp.exe'],
    ['.hidden', 'hidden'],
    ['CON', 'Untitled CON'],
    ['com¹', 'Untitled com¹'],
    ['LPT³.old', 'Untitled LPT³.old'],
    ['nul .txt', 'Untitled nul .txt'],
    ['CONOUT$', 'Untitled CONOUT$'],
    ['Console', 'Console'],
    ['lpt1.petalyard', 'Untitled lpt1.petalyard'],
    ['', 'Untitled'],
    ['???', 'Untitled'],
  ])('%j becomes %j', (name, expected) => {
    expect(fileNameFor(name)).toBe(expected)
  })

  it.each([
    ['100 Chinese characters', '\u7dda'.repeat(100), '\u7dda'.repeat(66)],
    ['60 emoji', '\u{1f9f6}'.repeat(60), '\u{1f9f6}'.repeat(50)],
    ['families of seven characters, never cut in two', FAMILY.repeat(20), FAMILY.repeat(8)],
    ['245 letters', 'x'.repeat(245), 'x'.repeat(200)],
    ['one letter under a hundred marks', `a${'\u0301'.repeat(150)}`, `a${'\u0301'.repeat(99)}`],
    ['half a pair', 'Throw \ud83e', 'Throw'],
    ['the other half', '\uddf6Throw', 'Throw'],
  ])('%s: shortened by bytes, between letters', async (_, name, expected) => {
    expect(fileNameFor(name)).toBe(expected)
    const folder = await mkdtemp(join(tmpdir(), 'petalyard-names-'))
    await writeFile(await freePath(folder, name, '.petalyard'), '')
    await writeFile(`${await freePath(folder, name, '.petalyard')}~`, '')
    await rm(folder, { recursive: true })
  })

  it('find a place that nothing has, whatever the case', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'petalyard-names-'))
    expect(await freePath(folder, 'Throw', '.petalyard')).toBe(join(folder, 'Throw.petalyard'))
    await writeFile(join(folder, 'THROW.petalyard'), '')
    await writeFile(join(folder, 'throw 2.petalyard'), '')
    expect(await freePath(folder, 'Throw', '.petalyard')).toBe(join(folder, 'Throw 3.petalyard'))
    await rm(folder, { recursive: true })
  })
})

describe('settings', () => {
  it('begin with what a place uses', () => {
    expect(defaultSettings('en-US')).toMatchObject({ units: 'imperial', terms: 'US', paper: 'Letter' })
    expect(defaultSettings('en-GB')).toMatchObject({
      units: 'metric',
      terms: 'UK',
      paper: 'A4',
      currency: 'GBP',
    })
    expect(defaultSettings('de')).toMatchObject({
      units: 'metric',
      terms: 'US',
      paper: 'A4',
      currency: 'EUR',
    })
  })

  it('survive a restart, a damaged file and a value of another version', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'petalyard-settings-'))
    const store = new SettingsStore(folder, 'de', writeAtomically)
    await store.load()
    expect(store.isFirstStart).toBe(true)
    await store.change({ theme: 'dark', units: 'imperial' })
    const again = new SettingsStore(folder, 'de', writeAtomically)
    await again.load()
    expect(again.isFirstStart).toBe(false)
    expect(again.current).toMatchObject({ theme: 'dark', units: 'imperial' })
    await writeFile(join(folder, 'settings.json'), '{"theme":"sepia","units":"imperial","later":1}')
    await again.load()
    expect(again.current).toMatchObject({ theme: 'dark', units: 'imperial' })
    // A house style of a version before has less, and one bad field costs no other.
    const house = { name: 'Larkspur', address: '', accent: 'green', logo: '', titlePage: true }
    await writeFile(join(folder, 'settings.json'), JSON.stringify({ theme: 'dark', house }))
    await again.load()
    expect(again.current.house).toEqual({ ...house, accent: '', leaveOut: [] })
    await again.change({ house: { leaveOut: ['progress'] } })
    expect(again.current.house).toMatchObject({ name: 'Larkspur', leaveOut: ['progress'] })
    await writeFile(join(folder, 'settings.json'), '{{{')
    const third = new SettingsStore(folder, 'de', writeAtomically)
    await third.load()
    expect(third.current).toEqual(defaultSettings('de'))
    await rm(folder, { recursive: true })
  })
})

describe('the data folder', () => {
  it.each([
    ['linux', {}, '/home/a/.config/Petalyard'],
    ['linux', { XDG_CONFIG_HOME: '/x' }, '/x/Petalyard'],
    ['linux', { XDG_CONFIG_HOME: 'x' }, '/home/a/.config/Petalyard'],
    ['darwin', {}, '/home/a/Library/Application Support/Petalyard'],
    ['linux', { PETALYARD_DATA: '/elsewhere' }, '/elsewhere'],
  ] as const)('on %s with %j is %s', (platform, env, expected) => {
    expect(programFolder({ platform, env, home: '/home/a' })).toBe(expected)
  })
})

describe('the title', () => {
  const keeping: Keeping = {
    name: 'Throw',
    place: 'file',
    where: 'Throw.petalyard in Documents',
    revision: 2,
    savedRevision: 2,
    savedAt: '2026-05-06T07:08:09',
    problem: null,
    folderProblem: null,
    disk: 'same',
  }
  it.each([
    [{}, 'Throw – saved at 07:08'],
    [{ place: 'app' }, 'Throw – kept in Petalyard at 07:08'],
    [{ place: 'nowhere', savedAt: null, revision: 0, savedRevision: 0 }, 'Throw – Petalyard'],
    [{ savedAt: null }, 'Throw – as it was opened'],
    [{ savedAt: null, revision: 3 }, 'Throw – saving soon'],
    [{ disk: 'changed' }, 'Throw – changed on disk by another program'],
    [{ disk: 'missing' }, 'Throw – no longer where it was'],
  ] as const)('with %j is %j', (more, expected) => {
    expect(windowTitle({ ...keeping, ...more }, 'en-GB')).toBe(expected)
  })

  it('does without a locale that the machine does not know', () => {
    expect(windowTitle(keeping, 'C.UTF-8')).toContain('saved at')
  })
})
