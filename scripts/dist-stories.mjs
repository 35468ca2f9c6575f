/**
 * `npm run dist:stories`: the stories of the desktop, told by the packed program. What drives them attaches by
 * `--inspect`, so they run on a copy whose fuse for that is on and that is the shipped program in all else; the one
 * that needs no such copy (`packed.package.test.ts`) runs on what is shipped. Words go on to vitest.
 */
import { spawnSync } from 'node:child_process'
import { chmodSync, copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { FUSE_FOR_STORIES, setFuses } from '../packing/fuses.mjs'
import { findVirtualDisplay, hasDisplay } from './capabilities.mjs'
import { copyPacked, packedProgram } from './dist-program.mjs'
import { fusesModule } from './dist-tools.mjs'
import { root } from './fresh-build.mjs'

/** Tells of `npm start`, not of a packed program. */
const OF_THE_SOURCES = '**/start.desktop.test.ts'

const packed = spawnSync(process.execPath, [join(root, 'scripts', 'dist.mjs'), 'folder'], {
  stdio: 'inherit',
})
if (packed.status !== 0) process.exit(packed.status ?? 1)

const folder = mkdtempSync(join(tmpdir(), 'petalyard-packed-'))
try {
  process.exitCode = await tellStories(join(folder, 'program'), process.argv.slice(2))
} finally {
  rmSync(folder, { recursive: true, force: true })
}

async function tellStories(home, words) {
  const program = copyPacked(home)
  // A file of its own: under its second name it would still be what is shipped.
  rmSync(program)
  copyFileSync(packedProgram(), program)
  chmodSync(program, 0o755)
  await setFuses(fusesModule(), program, { [FUSE_FOR_STORIES]: true })
  console.log(`The stories run on a copy of what is shipped, with one fuse more: ${FUSE_FOR_STORIES}`)

  const vitest = [join(root, 'node_modules', '.bin', 'vitest'), 'run', '--project', 'stories']
  const files = words.length > 0 ? words : ['.desktop.test.ts', '.package.test.ts']
  const virtual = hasDisplay() ? [] : [findVirtualDisplay(), '-a', '-s', '-screen 0 1920x1080x24']
  const [first, ...rest] = [...virtual, ...vitest, '--exclude', OF_THE_SOURCES, ...files]
  const told = spawnSync(first, rest, {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, PETALYARD_PACKED: program },
  })
  return told.status ?? 1
}
