/**
 * Builds that are made anew only when their sources changed, in a folder of their own that is then renamed: of several
 * starts at once one builds and the others wait for it, and nobody ever runs half a build.
 */
import { createHash, randomBytes } from 'node:crypto'
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { basename, dirname, join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = fileURLToPath(new URL('..', import.meta.url))

function* filesUnder(path) {
  const facts = statSync(path, { throwIfNoEntry: false })
  if (!facts) return
  if (!facts.isDirectory()) {
    yield path
    return
  }
  for (const name of readdirSync(path).sort()) yield* filesUnder(join(path, name))
}

/** A name for the present state of these files and folders (named from the root). */
export function fingerprintOf(sources) {
  const hash = createHash('sha256')
  for (const source of sources)
    for (const file of filesUnder(join(root, source)))
      hash.update(relative(root, file)).update('\0').update(readFileSync(file)).update('\0')
  return hash.digest('hex').slice(0, 16)
}

/** Nobody builds for longer: who claimed it then is gone, whatever goes by its number now. */
const PATIENCE_MS = 120_000

/**
 * Does `work` unless it is done or somebody else is at it, who is waited for. `claim` is a file that is there while
 * somebody works; who dies on the way, or fails, leaves the work to the next.
 */
export async function byOne(claim, isDone, work) {
  while (!isDone()) {
    if (!takes(claim)) {
      await new Promise((resolve) => setTimeout(resolve, 50))
      continue
    }
    try {
      if (!isDone()) await work()
      return
    } finally {
      rmSync(claim, { force: true })
    }
  }
}

function takes(claim) {
  try {
    writeFileSync(claim, String(process.pid), { flag: 'wx' })
    return true
  } catch (error) {
    // Where nothing can be written, the work itself says so.
    if (error.code !== 'EEXIST') return true
  }
  try {
    const isLate = Date.now() - statSync(claim).mtimeMs > PATIENCE_MS
    if (isLate || !isAlive(Number(readFileSync(claim, 'utf8')))) rmSync(claim, { force: true })
  } catch {
    // It was given back in the meantime.
  }
  return false
}

/** 0 where the number is not written yet: by somebody who is alive. */
function isAlive(pid) {
  try {
    return pid === 0 || process.kill(pid, 0)
  } catch (error) {
    return error.code === 'EPERM'
  }
}

const MARK = '.built-from'

/**
 * Brings `folder` up to the present sources: `make(workshop)` builds into a folder beside it, which then takes
 * its place. True where something was built.
 */
export async function refresh(folder, sources, make) {
  const fingerprint = fingerprintOf(sources)
  let isMade = false
  mkdirSync(dirname(folder), { recursive: true })
  await byOne(
    join(dirname(folder), `.${basename(folder)}.claim`),
    () => isBuiltFrom(folder, fingerprint),
    async () => {
      isMade = await replace(folder, fingerprint, make)
    },
  )
  return isMade
}

async function replace(folder, fingerprint, make) {
  const beside = (word) =>
    join(dirname(folder), `.${basename(folder)}.${word}.${randomBytes(4).toString('hex')}`)
  const [workshop, former] = [beside('new'), beside('old')]
  try {
    await make(workshop)
    writeFileSync(join(workshop, MARK), fingerprint)
    if (isBuiltFrom(folder, fingerprint)) return false
    if (existsSync(folder)) renameSync(folder, former)
    renameSync(workshop, folder)
  } catch (error) {
    // Somebody else's build of the same sources may have taken the place in the same moment.
    if (!isBuiltFrom(folder, fingerprint)) throw error
  } finally {
    rmSync(workshop, { recursive: true, force: true })
    rmSync(former, { recursive: true, force: true })
  }
  return true
}

function isBuiltFrom(folder, fingerprint) {
  try {
    return readFileSync(join(folder, MARK), 'utf8') === fingerprint
  } catch {
    return false
  }
}
