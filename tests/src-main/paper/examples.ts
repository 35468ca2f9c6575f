/** The examples, each read once, and planned once, for all files of a worker. */
import type { Project } from '../../../shared-types/project'
import { remembered } from '../../../src-core/memo'
import { planProject } from '../../../src-core/plan'
import { listExamples } from '../../../src-main/documents'

export const EXAMPLES = listExamples().map(({ name, text }) => ({
  name,
  project: JSON.parse(text) as Project,
}))

export const example = (name: string): Project => EXAMPLES.find((each) => each.name === name)!.project

/** The plan of a project, as long as that is in use. */
export const planOf = remembered((project: Project) => planProject(project))
