import { execFileSync } from 'node:child_process'
import { mkdtemp, stat, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'
import { makePath } from '../../../src-main/documents/make-path'

const fresh = () => mkdtemp(join(tmpdir(), 'petalyard-path-'))

it('makes what is missing on the way, for its owner alone where that is asked, and leaves what is there', async () => {
  const folder = join(await fresh(), 'a', 'b', 'c')
  await makePath(folder, 0o700)
  await makePath(folder)
  expect((await stat(folder)).mode & 0o777).toBe(0o700)
})

it('says so where a file has the name', async () => {
  const file = join(await fresh(), 'a')
  await writeFile(file, '')
  await expect(makePath(file)).rejects.toMatchObject({ code: 'EEXIST' })
  await expect(makePath(join(file, 'b'))).rejects.toMatchObject({ code: 'ENOTDIR' })
})

// In a process of its own: one that asks again for ever can only be ended from without.
it.runIf(process.platform === 'linux')('ends below a folder that takes none', () => {
  const module = fileURLToPath(new URL('../../../src-main/documents/make-path.ts', import.meta.url))
  const code = `import { makePath } from ${JSON.stringify(module)}
makePath('/proc/petalyard/kept').then(() => console.log('made'), (error) => console.log(error.code))`
  const told = execFileSync(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', code], {
    encoding: 'utf8',
    timeout: 60_000,
  })
  expect(told.trim()).toBe('ENOENT')
})
