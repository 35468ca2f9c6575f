/** A project that kills the page while it opens is not tried a third time unasked. */
import { describe, expect, it } from 'vitest'
import { finding } from '../../../src-core/findings/finding'
import { memoryHost } from '../memory-bridge'
import { openingOf } from '../../../src-renderer/state/opening'
import { WindowState } from '../../../src-renderer/state/window.svelte'
import { SMALL } from '../projects'

function memoryStore() {
  const held = new Map<string, string>()
  return {
    held,
    getItem: (key: string) => held.get(key) ?? null,
    setItem: (key: string, value: string) => void held.set(key, value),
    removeItem: (key: string) => void held.delete(key),
  }
}

describe('opening', () => {
  it('offers the text after two starts that never showed the project, and tries again when asked', async () => {
    const store = memoryStore()
    const { bridge } = memoryHost(SMALL)
    for (let start = 0; start < 2; start++)
      expect(await WindowState.open(bridge, { store })).toMatchObject({ outcome: 'done' })
    expect(await WindowState.open(bridge, { store })).toMatchObject({
      outcome: 'stranded',
      problem: { code: 'app/not-opened-before' },
      change: { text: JSON.stringify(SMALL), revision: 1 },
    })
    const again = await WindowState.open(bridge, { store, again: true })
    if (again.outcome !== 'done') throw new Error(again.outcome)
    again.value.shown()
    expect(store.held.size).toBe(0)
    expect(await WindowState.open(bridge, { store })).toMatchObject({ outcome: 'done' })
  })

  it('opens another edit of it, and opens without a store', async () => {
    const store = memoryStore()
    for (let start = 0; start < 2; start++) openingOf(JSON.stringify(SMALL), store).begin()
    const { bridge } = memoryHost({ ...SMALL, title: 'Mended' })
    expect(await WindowState.open(bridge, { store })).toMatchObject({ outcome: 'done' })
    expect(await WindowState.open(memoryHost(SMALL).bridge, { store: null })).toMatchObject({
      outcome: 'done',
    })
  })

  it('offers the text of a project that the host could not read', async () => {
    const { bridge } = memoryHost(SMALL)
    const opened = await bridge.currentProject()
    if (opened.outcome !== 'done') throw new Error(opened.outcome)
    const unreadable = finding('app/failed', 'Window seat', { task: 'reading', reason: 'it came to harm' })
    const value = { ...opened.value, unreadable }
    const answer = await WindowState.open(
      { ...bridge, currentProject: async () => ({ ...opened, value }) },
      { store: null },
    )
    expect(answer).toMatchObject({ outcome: 'stranded', problem: unreadable, change: { text: value.text } })
  })

  it('offers the text of a project that falls over before there is a window', async () => {
    const { bridge } = memoryHost(SMALL)
    const opened = await bridge.currentProject()
    if (opened.outcome !== 'done') throw new Error(opened.outcome)
    const answer = await WindowState.open(
      { ...bridge, currentProject: async () => ({ ...opened, value: { ...opened.value, text: '{' } }) },
      { store: null },
    )
    expect(answer).toMatchObject({
      outcome: 'stranded',
      problem: { code: 'app/not-shown' },
      change: { text: '{' },
    })
  })

  it('hears of settings that change while the first plan is made', async () => {
    const { bridge } = memoryHost(SMALL, { settings: { units: 'imperial' } })
    const settings = async () => {
      const told = await bridge.settings()
      // Changed in another window, between being told and listening.
      await bridge.changeSettings({ units: 'metric' })
      return told
    }
    const answer = await WindowState.open({ ...bridge, settings }, { store: null })
    if (answer.outcome !== 'done') throw new Error(answer.outcome)
    expect(answer.value.settings.units).toBe('metric')
  })
})
