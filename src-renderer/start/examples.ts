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

const KINDS = ['blanket', 'garland', 'applique']
const kindOf = ({ project }: Example): string => project.layout?.kind ?? 'blanket'

const FILES = import.meta.glob<string>('../../examples/*.petalyard', {
  query: '?raw',
  import: 'default',
  eager: true,
})

/** The examples by name, those of one kind beside each other: blankets first. */
export const EXAMPLES: readonly Example[] = Object.entries(FILES)
  .map(([path, text]): Example => {
    const project = projectSchema.parse(JSON.parse(text))
    const words = /^.*?[.!?](?=\s|$)/s.exec(project.notes ?? '')?.[0] ?? project.notes ?? ''
    return { name: path.replace(/^.*\//, '').replace(/\.petalyard$/, ''), project, words }
  })
  .sort((a, b) => KINDS.indexOf(kindOf(a)) - KINDS.indexOf(kindOf(b)) || (a.name < b.name ? -1 : 1))

const GROUP_NAMES = {
  blanket: 'Joined to blankets, throws and cloths',
  garland: 'Hung on a cord: garlands and their kits',
  applique: 'Laid on a panel: appliqué',
} as const

/** The examples in groups by what the motifs are made into, each with its name. */
export const EXAMPLE_GROUPS = (['blanket', 'garland', 'applique'] as const).map((kind) => ({
  kind,
  name: GROUP_NAMES[kind],
  examples: EXAMPLES.filter((example) => kindOf(example) === kind),
}))

const plans = new Map<string, Plan>()

/** The plan of an example; it is made once. */
export function examplePlan(example: Example): Plan {
  const known = plans.get(example.name) ?? planProject(example.project)
  plans.set(example.name, known)
  return known
}
