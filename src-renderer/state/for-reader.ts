/** An example as its reader would have begun it: in the terms, units, currency and paper of the settings. */
import type { Settings } from '../../shared-types/bridge'
import type { Project } from '../../shared-types/project'
import { setTerms } from './edits/terms'

/** Prices of an example are made up: they keep their numbers in another currency. */
export function forReader(
  project: Project,
  { terms, units, hand, currency, paper }: Pick<Settings, 'terms' | 'units' | 'hand' | 'currency' | 'paper'>,
): Project {
  const next = setTerms(project, terms)
  const sheet = next.sheet && { ...next.sheet, paper, terms }
  return { ...next, units, hand, currency, ...(sheet && { sheet }) }
}
