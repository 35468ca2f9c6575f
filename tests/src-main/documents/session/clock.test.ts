/** A clock that is set back while the program runs: nothing waits until it is as late again. */
import { utimes } from 'node:fs/promises'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { KeptProjects } from '../../../../src-main/documents/session/kept'
import { SaveTimer } from '../../../../src-main/documents/session/save-timer'
import { projectText, World } from './world'

const HOUR = 3_600_000

let world: World
beforeEach(async () => {
  world = await World.make()
})
afterEach(() => world.end())

describe('a clock that is set back', () => {
  it('puts off no save beyond the time that it may take at most', () => {
    vi.useFakeTimers()
    try {
      let now = Date.now()
      const timer = new SaveTimer({ saveAfter: 50, saveAtMost: 200, saveAgain: 50 }, () => now)
      let saves = 0
      // A stream of changes, each before the time after the last one is over; the clock goes back after the first.
      for (let at = 0; at <= 300; at += 20) {
        timer.start(false, () => saves++)
        vi.advanceTimersByTime(20)
        now += at === 0 ? -HOUR : 20
      }
      expect(saves).toBeGreaterThan(0)
      timer.stop()
    } finally {
      vi.useRealTimers()
    }
  })

  it('keeps nobody waiting for another run that saves', async () => {
    // By less than a sign of life is believed, right after it began to wait.
    let back = 0
    const now = () => Date.now() - (back++ === 0 ? 0 : 15_000)
    const other = new KeptProjects(world.own, { now })
    let letGo = () => {}
    const held = world.kept.alone('/a', () => new Promise<void>((resolve) => (letGo = resolve)))
    await vi.waitFor(async () => expect(await world.own.names('saving')).toHaveLength(1))
    expect(await other.alone('/a', () => Promise.resolve('saved'))).toBeNull()
    letGo()
    await held
  }, 10_000)

  it('leaves no project with a run that showed life before it, even if its number is somebody’s now', async () => {
    const entry = { id: 'one', path: null, stamp: null, title: 'Throw', revision: 1, savedRevision: 1 }
    await world.kept.put({
      ...{ ...entry, changedAt: '2026-01-02T03:04:05.000Z', text: projectText('Throw') },
      holder: world.kept.run,
    })
    const other = new KeptProjects(world.own, { now: Date.now, isProcessAlive: () => true })
    expect(await other.interrupted()).toEqual([])
    const later = new Date(Date.now() + HOUR)
    await utimes(join(world.folder, 'running', world.kept.run), later, later)
    expect(await other.interrupted()).toHaveLength(1)
  })
})
