/**
 * One page of jsdom serves all files of a worker: what a test put there goes with it, and what jsdom lacks is there for
 * all of them. It paints nothing, lays nothing out and keeps no pictures.
 */
import { cleanup, configure } from '@testing-library/svelte'
import { afterAll, afterEach, vi } from 'vitest'
import { sayIn } from '../../src-renderer/state/say'

HTMLCanvasElement.prototype.getContext = (() => null) as typeof HTMLCanvasElement.prototype.getContext
globalThis.ResizeObserver = class {
  observe(): void {}
  unobserve(): void {}
  disconnect(): void {}
}
Element.prototype.scrollIntoView = () => undefined
URL.createObjectURL = () => 'blob:page'
URL.revokeObjectURL = () => undefined

// What is waited for comes or never does: how quick the machine is decides nothing.
configure({ asyncUtilTimeout: 60_000 })

afterEach(() => {
  cleanup()
  document.body.replaceChildren()
  globalThis.localStorage.clear()
  // As a window that opens anew.
  sayIn('US')
})

afterAll(() => void vi.unstubAllGlobals())
