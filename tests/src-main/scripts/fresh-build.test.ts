import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { mkdtemp, rm, utimes, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'

const script = new URL('../../../scripts/fresh-build.mjs', import.meta.url).href
const { byOne } = (await import(script)) as {
  byOne: (claim: string, isDone: () => boolean, work: () => Promise<void>) => Promise<void>
}

let folder: string
let claim: string
let done: number
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'petalyard-claim-'))
  claim = join(folder, 'claim')
  done = 0
})
afterEach(() => rm(folder, { recursive: true }))

const build = () =>
  byOne(
    claim,
    () => done > 0,
    async () => {
      await new Promise((resolve) => setTimeout(resolve, 120))
      done++
    },
  )

describe('work that one of several does', () => {
  it('is done once, and all wait for it', async () => {
    await Promise.all([build(), build(), build(), build()])
    expect(done).toBe(1)
    expect(existsSync(claim)).toBe(false)
  })

  it('is taken over from a program that ended on the way', async () => {
    const { pid } = spawnSync(process.execPath, ['--version'])
    await writeFile(claim, String(pid))
    await build()
    expect(done).toBe(1)
  })

  it('is taken over after two minutes, whoever has the number now', async () => {
    await writeFile(claim, String(process.pid))
    const then = new Date(Date.now() - 121_000)
    await utimes(claim, then, then)
    await build()
    expect(done).toBe(1)
  })

  it('is left to the next where it fails', async () => {
    const failing = byOne(
      claim,
      () => done > 0,
      () => Promise.reject(new Error('no room')),
    )
    await expect(Promise.all([failing, build()])).rejects.toThrow('no room')
    await build()
    expect(done).toBe(1)
  })

  it('is tried without a claim where nothing can be written', async () => {
    claim = join(folder, 'nowhere', 'claim')
    await build()
    expect(done).toBe(1)
  })
})
