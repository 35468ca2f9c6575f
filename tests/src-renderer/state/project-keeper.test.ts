import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import type { ProjectChange } from '../../../shared-types/bridge'
import { done, refused } from '../../../shared-types/bridge'
import type { Project } from '../../../shared-types/project'
import { finding } from '../../../src-core/findings/finding'
import { ProjectKeeper } from '../../../src-renderer/state/project-keeper'

const project = (title: string): Project => ({ format: 'petalyard-project', version: 1, title })
const titles = (sent: readonly ProjectChange[]) =>
  sent.map((each) => (JSON.parse(each.text) as Project).title)

let sent: ProjectChange[]
let beforeClose: (() => Promise<void>) | null
let fails: boolean
const problems: string[] = []

function makeKeeper(): ProjectKeeper {
  return new ProjectKeeper(
    {
      keepProject: async (change) => {
        sent.push(change)
        return fails ? refused(finding('app/host-gone', 'Petalyard')) : done({} as never)
      },
      onBeforeClose: (listener) => {
        beforeClose = listener
        return () => (beforeClose = null)
      },
    },
    4,
    (problem) => problems.push(problem.code),
  )
}

beforeEach(() => {
  vi.useFakeTimers()
  sent = []
  beforeClose = null
  fails = false
  problems.length = 0
})
afterEach(() => {
  vi.useRealTimers()
})

it('hands over once the hand rests, the last project alone', async () => {
  const keeper = makeKeeper()
  keeper.changed(project('a'))
  keeper.changed(project('b'))
  await vi.advanceTimersByTimeAsync(290)
  expect(sent).toEqual([])
  await vi.advanceTimersByTimeAsync(20)
  expect(titles(sent)).toEqual(['b'])
  expect(sent[0]?.revision).toBe(4)
})

it('hands over at least once a second while the hand does not rest', async () => {
  const keeper = makeKeeper()
  for (let step = 0; step < 35; step++) {
    keeper.changed(project(String(step)))
    await vi.advanceTimersByTimeAsync(100)
  }
  expect(sent.length).toBe(3)
  expect(sent.map((each) => each.revision)).toEqual([4, 5, 6])
})

it('hands over what waits before the window closes', async () => {
  const keeper = makeKeeper()
  keeper.changed(project('last'))
  await beforeClose?.()
  expect(titles(sent)).toEqual(['last'])
  await vi.advanceTimersByTimeAsync(2_000)
  expect(sent).toHaveLength(1)
  keeper.stop()
  expect(beforeClose).toBeNull()
})

it('gives a save the newest project, and does not hand it over twice', async () => {
  const keeper = makeKeeper()
  keeper.changed(project('a'))
  const change = keeper.change(project('a'))
  expect(change.revision).toBe(4)
  await vi.advanceTimersByTimeAsync(2_000)
  expect(sent).toEqual([])
  expect(keeper.change(project('a'))).toBe(change)
  keeper.changed(project('b'))
  expect(keeper.change(project('b')).revision).toBe(5)
})

it('tells what the host refuses', async () => {
  const keeper = makeKeeper()
  fails = true
  keeper.changed(project('a'))
  await vi.advanceTimersByTimeAsync(400)
  expect(problems).toEqual(['app/host-gone'])
})

it('goes on counting from what the host says', async () => {
  const keeper = makeKeeper()
  keeper.changed(project('mine'))
  keeper.continueFrom(9)
  await vi.advanceTimersByTimeAsync(2_000)
  expect(sent).toEqual([])
  keeper.changed(project('next'))
  await keeper.flush()
  expect(sent[0]?.revision).toBe(9)
})
