/** What is told about the sources without running them: types, lint, format; and how programs are run for it. */
import { spawn } from 'node:child_process'
import { createRequire } from 'node:module'
import { constants, setPriority } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = fileURLToPath(new URL('..', import.meta.url))
const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm'

/** A program that a dependency brought. */
export const bin = (name) => join(root, 'node_modules', '.bin', name)

/**
 * Runs a program; resolves with its exit code and, unless shown at once, what it said. What runs aside takes what
 * processor time others leave.
 */
export function run(program, args, { shown = false, aside = false } = {}) {
  return new Promise((resolve) => {
    const child = spawn(program, args, { cwd: root, stdio: shown ? 'inherit' : 'pipe' })
    if (aside && child.pid !== undefined) stepAside(child.pid)
    let said = ''
    child.stdout?.on('data', (data) => (said += data))
    child.stderr?.on('data', (data) => (said += data))
    child.on('error', (error) => resolve({ code: 1, said: String(error) }))
    child.on('close', (code) => resolve({ code: code ?? 1, said }))
  })
}

function stepAside(pid) {
  try {
    setPriority(pid, constants.priority.PRIORITY_BELOW_NORMAL)
  } catch {
    // It has ended already, or the system refuses: then it runs as everything else.
  }
}

/** How a file is to look hangs on this plugin too, and the tool's own memory does not ask for it. */
const { version } = createRequire(import.meta.url)('prettier-plugin-svelte/package.json')

/** Words with which lint and format look again only at what changed. */
export const remembered = (name) => [
  '--cache',
  '--cache-strategy',
  'content',
  '--cache-location',
  `node_modules/.cache/petalyard-${name}-${version}`,
]

/** Runs these scripts of the package side by side, each with its words; what failed is told. */
export async function checkSources(scripts, { aside = false } = {}) {
  const results = await Promise.all(
    scripts.map(([name, ...words]) => run(npm, ['run', '--silent', name, '--', ...words], { aside })),
  )
  for (const [index, { code, said }] of results.entries()) {
    const [name] = scripts[index]
    console.log(code === 0 ? `✓ ${name}` : `✗ ${name}\n${said}`)
  }
  const failures = scripts.filter((_, index) => results[index].code !== 0).map(([name]) => name)
  return { passed: scripts.length - failures.length, failed: failures.length, failures }
}
