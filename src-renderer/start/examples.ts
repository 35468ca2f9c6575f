/// <reference types="vite/client" />
/** The example projects with their plans, for the pictures of the first start. */
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { projectSchema } from '../../shared-types/project'
import { planProject } from '../../src-core/plan'
import { KINDS } from '../kinds/kinds'
import { LAYOUT_KINDS, layoutKindOf } from '../state/edits/layout-kind'

interface Example {
  readonly name: string
  readonly project: Project
  /** The first sentence of its notes. */
  readonly words: string
}

const FILES = import.meta.glob<string>('../../examples/*.petalyard', {
  query: '?raw',
  import: 'default',
  eager: true,
})

const BY_NAME = Object.entries(FILES)
  .map(([path, text]): Example => {
    const project = projectSchema.parse(JSON.parse(text))
    const words = /^.*?[.!?](?=\s|$)/s.exec(project.notes ?? '')?.[0] ?? project.notes ?? ''
    return { name: path.replace(/^.*\//, '').replace(/\.petalyard$/, ''), project, words }
  })
  .sort((a, b) => (a.name < b.name ? -1 : 1))

/**
 * The examples in groups by what the motifs are made into, each with its name. The few of a kind come before the many:
 * all kinds are to be seen at a glance.
 */
export const EXAMPLE_GROUPS = LAYOUT_KINDS.map((kind) => ({
  kind,
  name: KINDS[kind].start.examples,
  examples: BY_NAME.filter(({ project }) => layoutKindOf(project) === kind),
})).sort((a, b) => a.examples.length - b.examples.length)

export const EXAMPLES: readonly Example[] = EXAMPLE_GROUPS.flatMap(({ examples }) => examples)

const plans = new Map<string, Plan>()

/** The plan of an example; it is made once. */
export function examplePlan(example: Example): Plan {
  const known = plans.get(example.name) ?? planProject(example.project)
  plans.set(example.name, known)
  return known
}
