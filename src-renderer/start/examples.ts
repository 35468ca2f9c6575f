/// <reference types="vite/client" />
/** The example projects with their plans, for the pictures of the first start. */
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { projectSchema } from '../../shared-types/project'
import { planProject } from '../../src-core/plan'
import { KINDS } from '../kinds/kinds'
import { layoutKindOf } from '../state/edits/layout-kind'

interface Example {
  readonly name: string
  readonly project: Project
  /** The first sentence of its notes. */
  readonly words: string
}

/** The few of a kind before the many: all kinds are to be seen at a glance. */
const ORDER = ['garland', 'applique', 'blanket'] as const
const kindOf = ({ project }: Example) => layoutKindOf(project)

const FILES = import.meta.glob<string>('../../examples/*.petalyard', {
  query: '?raw',
  import: 'default',
  eager: true,
})

/** The examples by name, those of one kind beside each other. */
export const EXAMPLES: readonly Example[] = Object.entries(FILES)
  .map(([path, text]): Example => {
    const project = projectSchema.parse(JSON.parse(text))
    const words = /^.*?[.!?](?=\s|$)/s.exec(project.notes ?? '')?.[0] ?? project.notes ?? ''
    return { name: path.replace(/^.*\//, '').replace(/\.petalyard$/, ''), project, words }
  })
  .sort((a, b) => ORDER.indexOf(kindOf(a)) - ORDER.indexOf(kindOf(b)) || (a.name < b.name ? -1 : 1))

/** The examples in groups by what the motifs are made into, each with its name. */
export const EXAMPLE_GROUPS = ORDER.map((kind) => ({
  kind,
  name: KINDS[kind].start.examples,
  examples: EXAMPLES.filter((example) => kindOf(example) === kind),
}))

const plans = new Map<string, Plan>()

/** The plan of an example; it is made once. */
export function examplePlan(example: Example): Plan {
  const known = plans.get(example.name) ?? planProject(example.project)
  plans.set(example.name, known)
  return known
}
