/** The border in words, as the page for it on paper has them: whoever works from the phone finishes with it. */
import type { Plan } from '../../shared-types/plan'
import type { Terms } from '../../shared-types/project'
import { edgingSteps } from '../paper/edging-steps'
import type { EdgingJob } from '../paper/edging-steps'
import { escaped } from '../paper/svg'
import { edgingAbout, edgingTitle } from '../paper/words-edging'
import { freePlaces } from '../paper/words-joining'
import { edgingWords } from '../paper/words-materials'

/** The part of the page; '' where there is no border. */
export function borderPart(plan: Plan, terms: Terms): string {
  const { edging, settled } = plan
  if (!edging) return ''
  const job: EdgingJob = { plan, settled, terms, units: settled.units }
  const steps = edgingSteps(job)
  const free = freePlaces(plan)
  const list = (entries: readonly (readonly [string, string])[]): string[] =>
    entries.length === 0
      ? []
      : [
          `<dl>\n${entries.map(([label, words]) => `<dt>${escaped(label)}</dt><dd>${escaped(words)}</dd>`).join('\n')}\n</dl>`,
        ]
  const body = steps
    ? [
        `<p>${escaped(edgingAbout(edging, job))}</p>`,
        ...(free === '' ? [] : [`<p>${escaped(free)}</p>`]),
        ...list(steps.steps),
        ...steps.lines.flatMap(({ heading, steps: own }) => [
          ...(heading === '' ? [] : [`<h3>${escaped(heading)}</h3>`]),
          ...list(own),
        ]),
        `<p>${escaped(steps.end)}</p>`,
      ]
    : [`<p>${escaped(edgingWords(edging, job) ?? '')}</p>`]
  return `<section>\n<h2>${escaped(edgingTitle(terms))}</h2>\n${body.join('\n')}\n</section>\n`
}
