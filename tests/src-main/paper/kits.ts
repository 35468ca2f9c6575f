/** A kit of each kind of layout, and its sheets, for the tests of what goes into kits. */
import type { GarlandLayout, Kit, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { mapPages, renderMap } from '../../../src-main/paper'
import { example } from './examples'
import { DATE, flowers, VERSION } from './projects'
import { readPdf } from './read-pdf'

export const GATE = example('orchard-gate-garland') as Project & { layout: GarlandLayout }
export const KIT: Kit = {
  count: 12,
  marginPercent: 40,
  extras: [{ name: 'crochet hook', price: 2, grams: 9 }],
}
export const withKit = (project: Project, kit: Kit = KIT): Project => ({
  ...project,
  layout: { ...project.layout!, kit },
})
export const pagesOf = (project: Project, options = {}) =>
  mapPages(planProject(project), { date: DATE, ...options })
export const read = async (project: Project, options = {}) =>
  readPdf(await renderMap(planProject(project), { date: DATE, version: VERSION, ...options }))
export const KINDS = [
  ['a garland', GATE],
  ['a blanket', withKit(flowers())],
  ['an appliqué', withKit(example('quince-wreath-cushion'))],
] as const
