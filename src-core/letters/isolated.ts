/** A project as paper sets it: names written from right to left go their own way within sentences. */
import type { Project } from '../../shared-types/project'
import { isolated, RIGHT_TO_LEFT } from './breaking'

/** Texts that stand on lines of their own, letters of colourways, and what is a table of letters. */
const ALONE = new Set(
  'notes instructions special work rounds written care code cells ring address copyright'.split(' '),
)

function within(value: unknown, key: string): unknown {
  if (typeof value === 'string') return ALONE.has(key) ? value : isolated(value)
  if (Array.isArray(value)) return value.map((each) => within(each, key))
  if (typeof value !== 'object' || value === null) return value
  // What names refer to changes with them: the parts of motifs in the yarns of a colourway.
  return Object.fromEntries(Object.entries(value).map(([name, each]) => [isolated(name), within(each, name)]))
}

/** The project with its names isolated; itself where nothing in it is written from right to left. */
export const withIsolatedNames = (project: Project): Project =>
  RIGHT_TO_LEFT.test(JSON.stringify(project)) ? (within(project, '') as Project) : project

function gather(value: unknown, key: string, names: Set<string>): void {
  if (typeof value === 'string' && !ALONE.has(key) && RIGHT_TO_LEFT.test(value)) names.add(value.trim())
  else if (typeof value === 'object' && value !== null)
    for (const [name, each] of Object.entries(value)) {
      if (RIGHT_TO_LEFT.test(name)) names.add(name.trim())
      gather(each, Array.isArray(value) ? key : name, names)
    }
}

const escaped = (name: string): string => name.replace(/[$()*+.?[\\\]^{|}]/g, '\\$&')

/** Isolates the names of a project in any text of the window; null where none goes from right to left. */
export function nameIsolator(project: Project): ((text: string) => string) | null {
  const names = new Set<string>()
  gather(project, '', names)
  if (names.size === 0) return null
  // The longest first, and none within another word or where it is isolated already.
  const choice = [...names].sort((a, b) => b.length - a.length).map(escaped)
  const pattern = new RegExp(
    `(?<![\\p{L}\\p{N}\\u2066-\\u2068])(?:${choice.join('|')})(?![\\p{L}\\p{N}])`,
    'gu',
  )
  return (text) => (RIGHT_TO_LEFT.test(text) ? text.replace(pattern, isolated) : text)
}
