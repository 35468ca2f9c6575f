import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { fetchElectron, PATIENCE_MS } from '../../../scripts/electron-fetch.mjs'

let folder: string
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'petalyard-fetch-'))
})
afterEach(() => rm(folder, { recursive: true }))

/** An installer that does as it is told here. */
async function installer(code: string): Promise<string> {
  const path = join(folder, 'install.mjs')
  await writeFile(path, code)
  return path
}

it('is patient for 20 s without a byte', () => {
  expect(PATIENCE_MS).toBe(20_000)
})

it('ends well when the installer does, telling how much came', async () => {
  const told: string[] = []
  const script = await installer(`
    import { writeFileSync } from 'node:fs'
    import { tmpdir } from 'node:os'
    import { join } from 'node:path'
    writeFileSync(join(tmpdir(), 'part'), Buffer.alloc(3_000_000))
    setTimeout(() => undefined, 1_300)`)
  expect(await fetchElectron((line) => told.push(line), { installer: script })).toBeNull()
  expect(told.at(-1)).toMatch(/^Fetching Electron: \d+ MB so far$/)
})

it('gives up on a silent server', async () => {
  const script = await installer('setTimeout(() => undefined, 60_000)')
  const started = Date.now()
  expect(await fetchElectron(() => undefined, { installer: script, patience: 1_000 })).toBe(
    'nothing came for 1 s',
  )
  expect(Date.now() - started).toBeLessThan(10_000)
})

it('tells why the installer failed, in a few words', async () => {
  const refused = await installer('console.error("TypeError: fetch failed\\n    at x"); process.exit(1)')
  expect(await fetchElectron(() => undefined, { installer: refused })).toBe('its download cannot be reached')
  const missing = await installer('console.error("HTTPError: Response code 404"); process.exit(1)')
  expect(await fetchElectron(() => undefined, { installer: missing })).toBe('Response code 404')
  const nowhere = join(folder, 'no-such-file.js')
  expect(await fetchElectron(() => undefined, { installer: nowhere })).toContain('run npm ci')
})
