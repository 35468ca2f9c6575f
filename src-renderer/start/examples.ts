/// <reference types="vite/client" />
/** The example projects with their plans, for the pictures of the first start. */
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { projectSchema } from '../../shared-types/project'
import { planProject } from '../../src-core/plan'

export interface Example {
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

/** The examples that the window can draw and change, by name: garlands and panels are for the command line. */
export const EXAMPLES: readonly Example[] = Object.entries(FILES)
  .map(([path, text]) => {
    const project = projectSchema.parse(JSON.parse(text))
    const words = /^.*?[.!?](?=\s|$)/s.exec(project.notes ?? '')?.[0] ?? project.notes ?? ''
    return { name: path.replace(/^.*\//, '').replace(/\.petalyard$/, ''), project, words }
  })
  .filter(({ project }) => project.layout?.kind === 'blanket')
  .sort((a, b) => (a.name < b.name ? -1 : 1))

const plans = new Map<string, Plan>()

/** The plan of an example; it is made once. */
export function examplePlan(example: Example): Plan {
  const known = plans.get(example.name) ?? planProject(example.project)
  plans.set(example.name, known)
  return known
}
