/** What keeps somebody out of a page, as far as a machine can tell (axe). */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { AxeResults, RunOptions } from 'axe-core'
import type { Page } from 'playwright-core'

/** Rules of WCAG 2.2 A and AA. */
export const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] as const
/** The same, and the good practice that axe adds where it is about the whole page. */
export const GOOD_PRACTICE = [...WCAG, 'best-practice'] as const

/** The rules of the version that comes with axe for Playwright. */
const SOURCE = readFileSync(
  createRequire(createRequire(import.meta.url).resolve('@axe-core/playwright')).resolve(
    'axe-core/axe.min.js',
  ),
  'utf8',
)

/**
 * One line for each place that breaks a rule: one of these rules, or with one of these tags; else any of axe's. Asked in the page itself, which has no
 * frames of others, put there once, and told of violations alone: naming all that is well takes longer than finding
 * what is not. No rule of these reads style sheets, which axe would fetch and parse anew each time.
 */
export async function violationsOf(page: Page, only?: readonly string[]): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(SOURCE)
  const options: RunOptions = { resultTypes: ['violations'], preload: { assets: ['media'] } }
  const { violations } = await page.evaluate(
    (wished) =>
      (globalThis as unknown as { axe: { run(how: RunOptions): Promise<AxeResults> } }).axe.run(wished),
    only ? { ...options, runOnly: [...only] } : options,
  )
  return violations.flatMap(({ id, impact, nodes }) =>
    nodes.map(
      ({ target, html, failureSummary = '' }) =>
        `${impact} ${id}: ${target.join(' ')}: ${html}: ${failureSummary}`,
    ),
  )
}

/** The rules that look at colours. */
const OF_COLOURS: readonly string[] = ['color-contrast', 'link-in-text-block']

/**
 * What keeps somebody out of a page in the light theme, and in the dark one: the same page in other colours (which its
 * style sheet is held to), so that the second look is for the rules of colours alone.
 */
export async function violationsInThemes(page: Page, tags: readonly string[]): Promise<string[]> {
  const lines: string[] = []
  for (const theme of ['light', 'dark'] as const) {
    await page.evaluate((wished) => window.petalyard.changeSettings({ theme: wished }), theme)
    await page.locator(`html[data-theme=${theme}]`).waitFor({ state: 'attached' })
    const only = theme === 'light' ? tags : OF_COLOURS
    lines.push(...(await violationsOf(page, only)).map((line) => `${theme}: ${line}`))
  }
  return lines
}
