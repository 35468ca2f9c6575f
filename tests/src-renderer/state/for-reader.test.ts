/** An example that is opened speaks as its reader does, from the first screen on, and stays the same piece of work. */
import { describe, expect, it } from 'vitest'
import { createPlanner } from '../../../src-core/plan'
import { EXAMPLES, examplePlan } from '../../../src-renderer/start/examples'
import { allFindings } from '../../../src-renderer/state/all-findings'
import { forReader } from '../../../src-renderer/state/for-reader'
import { WindowState } from '../../../src-renderer/state/window.svelte'
import { memoryHost } from '../memory-bridge'
import { example } from '../projects'

const BRITISH = { terms: 'UK', units: 'metric', hand: 'right', currency: 'GBP', paper: 'A4' } as const
const AMERICAN = { terms: 'US', units: 'imperial', hand: 'right', currency: 'USD', paper: 'Letter' } as const

describe.each([
  ['British', BRITISH],
  ['American', AMERICAN],
] as const)('on a %s machine', (_, settings) => {
  it.each(EXAMPLES.map((each) => [each.name, each] as const))(
    '%s is the same work, and greets with no warning',
    (__, given) => {
      const project = forReader(given.project, settings)
      const { paper, ...rest } = settings
      expect(project).toMatchObject(rest)
      // Where an example says nothing of its sheet, the settings hold as they are.
      if (given.project.sheet) expect(project.sheet).toMatchObject({ paper, terms: settings.terms })
      else expect(project.sheet).toBeUndefined()
      const planner = createPlanner()
      const [before, after] = [examplePlan(given), planner.plan(project)]
      expect(after.size).toEqual(before.size)
      expect(after.counts).toEqual(before.counts)
      expect(after.yarns.map(({ grams }) => grams)).toEqual(before.yarns.map(({ grams }) => grams))
      // A first look is not at an alarm: whoever made the example would have seen to it.
      const alarms = allFindings(planner, project, after, null, []).filter(
        ({ severity }) => severity !== 'note',
      )
      expect(alarms.map(({ message }) => message)).toEqual([])
    },
  )
})

const openedAs = async (origin: 'example' | 'file') => {
  const host = memoryHost(example('hedgerow-baby-throw'), { origin, settings: BRITISH })
  const opened = await WindowState.open(host.bridge)
  if (opened.outcome !== 'done') throw new Error('the window did not open')
  return { document: opened.value.document, host }
}

it('an example that greets is in the reader’s terms, and untouched', async () => {
  const { document, host } = await openedAs('example')
  expect(document.project).toMatchObject({ terms: 'UK', currency: 'GBP' })
  expect([document.isTheirs, document.undoLabel, host.kept]).toEqual([false, null, []])
})

it('a file stays in the terms of who wrote it', async () => {
  const { document } = await openedAs('file')
  expect(document.project).toEqual(example('hedgerow-baby-throw'))
})
