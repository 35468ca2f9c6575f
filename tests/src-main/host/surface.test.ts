import { describe, expect, it } from 'vitest'
import type { ExportDone, ExportRequest, Outcome, Progress } from '../../../shared-types/bridge'
import { makeBridge } from '../../../src-main/host/surface'

/** A bridge whose exports tell these steps and end so. */
const bridgeThat = (steps: readonly number[], outcome: Outcome<ExportDone>) =>
  makeBridge({
    invoke: () => Promise.reject(new Error('not asked')),
    listen: () => () => undefined,
    onBeforeClose: () => () => undefined,
    runExport: (_, onProgress) => {
      for (const done of steps) onProgress({ done, total: 100, words: 'Writing the pages' })
      return { finished: Promise.resolve(outcome), cancel: () => undefined }
    },
  })
const REQUEST: ExportRequest = { kind: 'map', text: '{}' }
const DONE: Outcome<ExportDone> = {
  outcome: 'done',
  value: { where: 'map.pdf in Documents', bytes: 9, pages: 1 },
}

describe('an export', () => {
  it.each([
    ['the last step was not heard before the answer', [0, 14], [0, 14, 100]],
    ['no step was heard', [], [100]],
    ['all were heard', [0, 100], [0, 100]],
  ] as const)('is told to its end where %s', async (_, steps, wanted) => {
    const told: Progress[] = []
    await bridgeThat(steps, DONE).exportProject(REQUEST, (progress) => told.push(progress)).finished
    expect(told.map(({ done }) => done)).toEqual(wanted)
  })

  it('that was cancelled is not told as done', async () => {
    const told: number[] = []
    const job = bridgeThat([0, 14], { outcome: 'cancelled' }).exportProject(REQUEST, ({ done }) =>
      told.push(done),
    )
    expect(await job.finished).toEqual({ outcome: 'cancelled' })
    expect(told).toEqual([0, 14])
  })
})
