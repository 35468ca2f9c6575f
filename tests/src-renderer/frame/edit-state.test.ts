import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import type { EditState } from '../../../shared-types/bridge'
import { editStateTeller } from '../../../src-renderer/frame/edit-state'

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

const state = (undo: string | null, more: Partial<EditState> = {}): EditState => ({
  undo,
  redo: null,
  terms: 'US',
  ...more,
})

it('tells the menu at once whether anything can be undone, and its words when the hand rests', () => {
  const told: EditState[] = []
  const tell = editStateTeller((each) => told.push(each))
  // As an effect does: what it began is taken back before it runs again.
  let takeBack = (): void => undefined
  const change = (next: EditState): void => {
    takeBack()
    takeBack = tell(next)
  }
  change(state(null))
  change(state('rows'))
  expect(told).toEqual([state(null), state('rows')])
  for (let i = 1; i <= 20; i++) {
    change(state(`rows ${i}`))
    vi.advanceTimersByTime(33)
  }
  expect(told).toHaveLength(2)
  vi.advanceTimersByTime(1_000)
  expect(told.slice(2)).toEqual([state('rows 20')])
  change(state('rows 20', { terms: 'UK' }))
  change(state('rows 19', { redo: 'rows 20', terms: 'UK' }))
  expect(told.slice(3)).toEqual([
    state('rows 20', { terms: 'UK' }),
    state('rows 19', { redo: 'rows 20', terms: 'UK' }),
  ])
})

it('says nothing twice', () => {
  const told: EditState[] = []
  const tell = editStateTeller((each) => told.push(each))
  tell(state('rows'))
  tell(state('rows'))
  vi.advanceTimersByTime(1_000)
  expect(told).toHaveLength(1)
})
