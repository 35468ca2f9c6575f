import { fireEvent, render, screen } from '@testing-library/svelte'
import { tick } from 'svelte'
import { expect, it, vi } from 'vitest'
import Select from '../../../src-renderer/parts/Select.svelte'

const OPTIONS = [
  { value: '', label: 'choose' },
  { value: 'leaf', label: 'Leaf' },
  { value: 'bead', label: 'a bead' },
]

it('shows “choose” again once something is added, so that the same can be added once more', async () => {
  const onchoose = vi.fn()
  render(Select, { label: 'Add behind it', options: OPTIONS, value: '', onchoose })
  const list = screen.getByRole('combobox', { name: 'Add behind it' }) as HTMLSelectElement
  for (const times of [1, 2]) {
    await fireEvent.change(list, { target: { value: 'leaf' } })
    await tick()
    expect(list.value).toBe('')
    expect(onchoose).toHaveBeenCalledTimes(times)
    expect(onchoose).toHaveBeenLastCalledWith('leaf')
  }
})

it('keeps what is chosen where the value follows', async () => {
  let value = 'bead'
  const onchoose = (chosen: string): void => {
    value = chosen
    void rerender({ value })
  }
  const { rerender } = render(Select, { label: 'What', options: OPTIONS, value, onchoose })
  const list = screen.getByRole('combobox', { name: 'What' }) as HTMLSelectElement
  await fireEvent.change(list, { target: { value: 'leaf' } })
  await tick()
  expect(list.value).toBe('leaf')
})
