/** What keeps somebody out of a page, as far as a machine can tell (axe). */
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'

/** Rules of WCAG 2.2 A and AA. */
export const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] as const
/** The same, and the good practice that axe adds where it is about the whole page. */
export const GOOD_PRACTICE = [...WCAG, 'best-practice'] as const

/**
 * One line for each place that breaks a rule; without tags all of axe's rules. Asked in the page itself, which has no
 * frames of others, and told of violations alone: naming all that is well takes longer than finding what is not.
 */
export async function violationsOf(page: Page, tags?: readonly string[]): Promise<string[]> {
  const builder = new AxeBuilder({ page }).options({ resultTypes: ['violations'] }).setLegacyMode()
  const { violations } = await (tags ? builder.withTags([...tags]) : builder).analyze()
  return violations.flatMap(({ id, impact, nodes }) =>
    nodes.map(
      ({ target, html, failureSummary = '' }) =>
        `${impact} ${id}: ${target.join(' ')}: ${html}: ${failureSummary}`,
    ),
  )
}
