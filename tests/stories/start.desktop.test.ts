/** `npm start` where Electron and a display can be had: the desktop window. */
import { spawn } from 'node:child_process'
import { chmod, mkdir, readdir, writeFile } from 'node:fs/promises'
import { createServer } from 'node:net'
import type { AddressInfo } from 'node:net'
import { basename, join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { findElectron } from '../../scripts/capabilities.mjs'
import { makeFolder, projectRoot } from './desktop'

let folder: Awaited<ReturnType<typeof makeFolder>>
beforeEach(async () => {
  folder = await makeFolder()
})
afterEach(() => folder.forget())

async function freePort(): Promise<number> {
  const server = createServer()
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const { port } = server.address() as AddressInfo
  await new Promise((resolve) => server.close(resolve))
  return port
}

/** A folder whose Electron is the real one, with a port on which the test may look at the window. */
async function watchedElectron(port: number): Promise<string> {
  const electron = findElectron() ?? ''
  const watched = join(folder.path, 'runtime')
  await mkdir(watched)
  const script = join(watched, basename(electron))
  const words = `'${electron}' "$@" --no-sandbox --remote-debugging-port=${port}`
  await writeFile(script, `#!/bin/sh\nexec ${words}\n`)
  await chmod(script, 0o755)
  return watched
}

it('opens the window with an example ready to touch, and ends with it', async () => {
  const port = await freePort()
  const env = {
    ...process.env,
    PETALYARD_DATA: folder.path,
    ELECTRON_OVERRIDE_DIST_PATH: await watchedElectron(port),
  }
  const child = spawn(process.execPath, [join(projectRoot, 'scripts', 'start.mjs')], {
    cwd: projectRoot,
    env,
  })
  let said = ''
  child.stdout.on('data', (data: Buffer) => (said += data.toString()))
  const ended = new Promise<number | null>((resolve) => child.once('exit', resolve))
  const url = await windowUrl(port)
  expect(url, said).toBe('app://petalyard/index.html')
  expect(said).not.toContain('browser instead')
  expect(said).toContain(`Projects are kept in ${join(folder.path, 'projects')}`)
  // An example that nobody touched leaves nothing behind.
  child.kill('SIGTERM')
  expect(await ended).toBe(0)
  expect(await readdir(join(folder.path, 'projects', 'running'))).toEqual([])
  expect(await readdir(join(folder.path, 'projects', 'kept'))).toEqual([])
})

/** The address of the first window that the inspector's list shows. */
async function windowUrl(port: number): Promise<string> {
  for (let tries = 0; tries < 150; tries++) {
    try {
      const listed = (await (await fetch(`http://127.0.0.1:${port}/json`)).json()) as { url: string }[]
      if (listed[0]?.url) return listed[0].url
    } catch {
      // Not there yet.
    }
    await new Promise((resolve) => setTimeout(resolve, 100))
  }
  throw new Error('no window was opened')
}
