/** The layout of a blanket as the host keeps it. */
import type { Page } from 'playwright-core'
import type { BlanketLayout, Project } from '../../shared-types/project'

export async function keptBlanket(page: Page): Promise<BlanketLayout> {
  const opened = await page.evaluate(() => window.petalyard.currentProject())
  if (opened.outcome !== 'done') throw new Error('there is no project')
  const project = JSON.parse(opened.value.text) as Project
  if (project.layout?.kind !== 'blanket') throw new Error('there is no blanket')
  return project.layout
}
