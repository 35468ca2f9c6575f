import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { CONTENT_SECURITY_POLICY, locate, readStatic } from '../../../src-main/host/static-files'

let folder: string
let root: string
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'petalyard-static-'))
  root = join(folder, 'renderer')
  await mkdir(join(root, 'assets'), { recursive: true })
  await writeFile(join(root, 'index.html'), '<!doctype html>')
  await writeFile(join(root, 'assets', 'a b.js'), 'x')
  await writeFile(join(root, 'notes.txt'), 'x')
  await writeFile(join(folder, 'secret.js'), 'secret')
  await mkdir(join(folder, 'renderer-other'))
  await writeFile(join(folder, 'renderer-other', 'secret.js'), 'secret')
})
afterAll(() => rm(folder, { recursive: true }))

describe('the files of the window', () => {
  it('are found by their path, with the type that a browser wants', async () => {
    expect((await readStatic(root, '/'))?.type).toBe('text/html; charset=utf-8')
    expect((await readStatic(root, '/index.html'))?.type).toBe('text/html; charset=utf-8')
    expect((await readStatic(root, '/assets/a%20b.js'))?.type).toBe('text/javascript; charset=utf-8')
  })

  it.each([
    '/../secret.js',
    '/..%2fsecret.js',
    '/%2e%2e/secret.js',
    '/%2e%2e%2fsecret.js',
    '/assets/..%2f..%2fsecret.js',
    '/..%5csecret.js',
    '/..\\secret.js',
    '/..%2frenderer-other/secret.js',
    '/%2fetc/passwd',
    '//etc/passwd',
    '/C:%5cwindows%5cx.js',
    '/c:/x.js',
    '/index.html%00.js',
    '/%',
    '/%ff',
    '/assets',
    '/notes.txt',
    '/.built-from',
    '/missing.js',
  ])('are not left by %s', async (path) => {
    expect(await readStatic(root, path)).toBeNull()
  })

  it('stay in their folder for whatever path', () => {
    for (const path of ['/a/../../renderer', '/..', '/%2e%2e', '/a/../..%2frenderer-other'])
      expect(locate(root, path)).toBeNull()
  })
})

it('the policy allows no script or style in the page, and nothing from elsewhere', () => {
  expect(CONTENT_SECURITY_POLICY).not.toMatch(/unsafe|http|\*/)
  expect(CONTENT_SECURITY_POLICY).toContain("default-src 'none'")
})
