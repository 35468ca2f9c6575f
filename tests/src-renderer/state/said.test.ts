/** What is said to screen readers goes when the project has moved on. */
import { afterEach, describe, expect, it, vi } from 'vitest'
import { WindowState } from '../../../src-renderer/state/window.svelte'
import { memoryHost } from '../memory-bridge'
import { SMALL } from '../projects'

afterEach(() => {
  vi.useRealTimers()
})

async function open(): Promise<WindowState> {
  const opened = await WindowState.open(memoryHost(SMALL).bridge)
  if (opened.outcome !== 'done') throw new Error('the window did not open')
  vi.useFakeTimers()
  return opened.value
}
const rename = (app: WindowState, title: string) =>
  app.document.change('rename', (project) => ({ ...project, title }))

describe('what is said', () => {
  it('stays for as long as nothing changes, and goes with the next change', async () => {
    const app = await open()
    app.say('Rnd 5: makes 54 dc')
    vi.advanceTimersByTime(60_000)
    expect(app.said).toBe('Rnd 5: makes 54 dc')
    rename(app, 'Shawl')
    // It may be read out still.
    expect(app.said).toBe('Rnd 5: makes 54 dc')
    vi.advanceTimersByTime(1000)
    expect(app.said).toBe('')
    app.stop()
  })

  it('of a change itself outlives that change, and so does what undo says', async () => {
    const app = await open()
    app.say('Painted 1 motif.')
    rename(app, 'Shawl')
    app.say('Renamed.')
    vi.advanceTimersByTime(5000)
    expect(app.said).toBe('Renamed.')
    app.undo()
    vi.advanceTimersByTime(5000)
    expect(app.said).toBe('Undone: rename')
    app.stop()
  })
})
