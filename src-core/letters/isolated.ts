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
