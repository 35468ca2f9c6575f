/** What stands where a command is to write: replaced only where that is what its owner expects. */
import { chmod, readFile, stat, truncate, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { newFolder, petalyard, SAMPLE, writeProject } from './sample'

describe('a file of another kind', () => {
  it.each(['map', 'page'])(
    'stays where %s would be written, larger than anything that is read',
    async (command) => {
      const out = join(await newFolder(), 'disk.img')
      await writeFile(out, '')
      // A hole: it takes no room on the disk.
      await truncate(out, 1100 * 2 ** 20)
      const ran = await petalyard(command, await writeProject(SAMPLE), '--out', out)
      expect(ran).toMatchObject({ code: 4, out: '' })
      expect(ran.err).toContain('it was left as it is. Choose another name.')
      expect((await stat(out)).size).toBe(1100 * 2 ** 20)
    },
  )

  it.runIf(process.platform !== 'win32').each(['map', 'page'])(
    'stays where %s would be written, and cannot be read',
    async (command) => {
      const folder = await newFolder()
      const project = await writeProject(SAMPLE)
      const out = join(folder, 'diary')
      await writeFile(out, 'my own notes')
      await chmod(out, 0o222)
      for (const path of [folder, join(project, '..')]) await chmod(path, 0o777)
      // Root may read what nobody may.
      const isRoot = process.geteuid?.() === 0
      if (isRoot) process.seteuid?.(65534)
      const ran = await petalyard(command, project, '--out', out).finally(
        () => isRoot && process.seteuid?.(0),
      )
      expect(ran).toMatchObject({ code: 4, out: '' })
      expect(ran.err).toContain('what is there cannot be read (you may not read it).')
      await chmod(out, 0o644)
      expect(await readFile(out, 'utf8')).toBe('my own notes')
    },
  )
})
