/** Modules that need each other while they load: which is there first would depend on who asks first. */
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../..', import.meta.url))
const files = ['shared-types', 'src-core', 'src-main', 'src-renderer'].flatMap((room) =>
  readdirSync(join(root, room), { recursive: true, encoding: 'utf8' })
    .map((name) => join(room, name))
    .filter((name) => /\.(ts|svelte)$/.test(name)),
)
const known = new Set(files)

/** What a module imports when it runs; types leave nothing behind. A component may show itself within itself. */
function importsOf(file: string): string[] {
  const text = readFileSync(join(root, file), 'utf8')
  const statements = text.matchAll(
    /^\s*(?:import|export)\s(?!type\s)(?:[^'"]*?\sfrom\s+)?['"](\.[^'"]+)['"]/gm,
  )
  return [...statements].flatMap(([, to = '']) => {
    const path = join(dirname(file), to)
    return [path, `${path}.ts`, `${path}/index.ts`].filter((name) => name !== file && known.has(name))
  })
}

/** Follows imports depth first; the way back to a module that is still open is a circle. */
function circlesOf(importsOf: (file: string) => readonly string[], files: readonly string[]): string[] {
  const done = new Set<string>()
  const open: string[] = []
  const circles: string[] = []
  const visit = (file: string): void => {
    if (open.includes(file)) return void circles.push([...open.slice(open.indexOf(file)), file].join(' → '))
    if (done.has(file)) return
    done.add(file)
    open.push(file)
    importsOf(file).forEach(visit)
    open.pop()
  }
  files.forEach(visit)
  return circles
}

describe('imports', () => {
  it('go in no circle while the program runs', () => {
    expect(circlesOf(importsOf, files)).toEqual([])
  })

  it('are followed: every module but the entries is reached, and a circle is told with its way', () => {
    const reached = new Set(files.flatMap(importsOf))
    expect(reached.size).toBeGreaterThan(files.length * 0.8)
    const made: Record<string, string[]> = { a: ['b'], b: ['c'], c: ['b'] }
    expect(circlesOf((file) => made[file]!, ['a'])).toEqual(['b → c → b'])
  })
})
