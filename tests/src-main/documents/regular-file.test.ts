import { execFileSync } from 'node:child_process'
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { readRegularFile } from '../../../src-main/documents/regular-file'

let folder: string
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'petalyard-regular-'))
})
afterEach(() => rm(folder, { recursive: true }))

const codeOf = (path: string, largest = 1000) =>
  readRegularFile(path, largest).then(
    ({ bytes }) => `read ${bytes.length}`,
    (error: NodeJS.ErrnoException) => error.code,
  )

it('reads a file of just the size that is allowed, an empty one, and none that is larger', async () => {
  for (const size of [0, 1, 999, 1000]) {
    await writeFile(join(folder, 'a'), 'x'.repeat(size))
    expect(await codeOf(join(folder, 'a'))).toBe(`read ${size}`)
  }
  await writeFile(join(folder, 'a'), 'x'.repeat(1001))
  expect(await codeOf(join(folder, 'a'))).toBe('EFBIG')
})

it('looks at the size before it reads: a file that is too large is refused with its whole size', async () => {
  await writeFile(join(folder, 'a'), 'x'.repeat(5000))
  await expect(readRegularFile(join(folder, 'a'), 1000)).rejects.toMatchObject({ bytes: 5000 })
})

it('tells what is missing, and a folder', async () => {
  expect(await codeOf(join(folder, 'none'))).toBe('ENOENT')
  expect(await codeOf(folder)).toBe('EISDIR')
})

it.runIf(process.platform !== 'win32')(
  'never waits for a pipe or a socket, and reads no device',
  async () => {
    const pipe = join(folder, 'pipe')
    execFileSync('mkfifo', [pipe])
    expect(await codeOf(pipe)).toBe('ENOTREG')
    const socket = join(folder, 'socket')
    const server = createServer().listen(socket)
    await new Promise((resolve) => server.once('listening', resolve))
    expect(await codeOf(socket)).toBe('ENOTREG')
    await new Promise((resolve) => server.close(resolve))
    expect(await codeOf('/dev/zero')).toBe('ENOTREG')
  },
)

it.runIf(process.platform === 'linux')(
  'reads no further than allowed where the size that is told is none',
  async () => {
    // Files of the kernel tell a size of 0.
    expect(await codeOf('/proc/self/status', 100_000)).toMatch(/^read [1-9]/)
    expect(await codeOf('/proc/self/status', 10)).toBe('EFBIG')
  },
)
