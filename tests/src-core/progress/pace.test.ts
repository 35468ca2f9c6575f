import { describe, expect, it } from 'vitest'
import type { Progress } from '../../../shared-types/plan'
import { dayAfter, daysBetween } from '../../../src-core/progress/days'
import { doneOn, paceOf, paceWords } from '../../../src-core/progress/pace'
import { progressOf, project } from './project'

const told = (days: Progress['days'], motifs = 20, others = 0): Pick<Progress, 'days' | 'left'> => ({
  days,
  left: { ...progressOf(project()).left, motifs, others },
})

describe('days that are counted on', () => {
  it('agree with the calendar of the machine, over months, years and leap days', () => {
    const parse = (day: string) => Date.parse(`${day}T00:00:00Z`) / 86_400_000
    for (const from of ['2026-11-29', '2027-12-31', '2028-02-28', '2100-02-28', '1999-12-31'])
      for (const days of [0, 1, 2, 30, 59, 365, 366, 1461, 40_000]) {
        const to = new Date((parse(from) + days) * 86_400_000).toISOString().slice(0, 10)
        expect(dayAfter(from, days)).toBe(to)
        expect(daysBetween(from, to)).toBe(days)
      }
    expect(dayAfter('9999-12-31', 1)).toBe('')
  })
})

describe('the pace of a log', () => {
  it('counts days of rest, and only the latest four weeks', () => {
    const log = [
      { day: '', pieces: 40 },
      { day: '2026-09-01', pieces: 90 },
      { day: '2026-11-20', pieces: 6 },
      { day: '2026-11-29', pieces: 14 },
    ]
    // 20 in ten days.
    expect(paceOf(told(log))).toEqual({ each: 2, from: '2026-11-20', to: '2026-11-29' })
    expect(paceOf(told(log.slice(0, 2)))).toBeNull()
    expect(paceOf(told([]))).toBeNull()
    expect(paceWords(told(log, 19, 2), 'US')).toBe(
      'At 2 motifs a day, as from November 20, 2026 to November 29, 2026, the last one is made on December 10, 2026.',
    )
  })

  it('goes on from today where the log ends before it, and at any pace that is asked about', () => {
    const log = [
      { day: '2026-11-28', pieces: 1 },
      { day: '2026-11-29', pieces: 3 },
    ]
    expect(paceWords(told(log, 6), 'UK', { today: '2026-12-24' })).toBe(
      'At 2 motifs a day, as from 28 November 2026 to 29 November 2026, the last one is made on 27 December 2026.',
    )
    expect(paceWords(told([], 7), 'UK', { today: '2026-12-24', asked: 3 })).toBe(
      'At 3 motifs a day, the last one is made on 27 December 2026.',
    )
    expect(paceWords(told([], 7), 'US', { asked: 3 })).toBe('')
    expect(paceWords(told(log, 0), 'US')).toBe('')
    expect(doneOn(told([], 1), 0, '2026-12-24')).toBeNull()
  })
})
