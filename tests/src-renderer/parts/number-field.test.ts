import { cleanup, fireEvent, render, screen } from '@testing-library/svelte'
import { describe, expect, it, vi } from 'vitest'
import NumberField from '../../../src-renderer/parts/NumberField.svelte'
import { nudged, writeQuantity } from '../../../src-core/units/written'
import { readField } from '../../../src-renderer/parts/reading'

function field(props: Partial<Parameters<typeof render<typeof NumberField>>[1]> = {}) {
  const heard = { onpreview: vi.fn(), oncommit: vi.fn(), oncancel: vi.fn() }
  render(NumberField, {
    label: 'Tip to tip',
    value: 78,
    kind: 'length',
    units: 'metric',
    least: 1,
    most: 2000,
    ...heard,
    ...props,
  })
  const input = screen.getByRole('textbox', { name: 'Tip to tip' }) as HTMLInputElement
  return { ...heard, input }
}

it('writes amounts of money with both decimals, whole ones with none', () => {
  const texts = [4.2, 4.25, 1310, 0].map((amount) => writeQuantity(amount, 'money', 'metric'))
  expect(texts).toEqual(['4.20', '4.25', '1,310', '0'])
})

describe('a number field', () => {
  it.each([
    ['9,5 cm', 95],
    ['3 in', 76.2],
    ['12 1/2"', 317.5],
    ['12*9.5', 114],
    ['80', 80],
  ])('reads %s', async (text, value) => {
    const { input, onpreview, oncommit } = field()
    await fireEvent.input(input, { target: { value: text } })
    expect(onpreview).toHaveBeenLastCalledWith(expect.closeTo(value, 9))
    await fireEvent.keyDown(input, { key: 'Enter' })
    expect(oncommit).toHaveBeenCalledExactlyOnceWith(expect.closeTo(value, 9))
  })

  it('says what a small bare number was taken for, and how centimeters are written', async () => {
    const words = () => screen.queryByRole('status')?.textContent ?? ''
    const { input } = field({ value: 78 })
    await fireEvent.input(input, { target: { value: '8' } })
    expect(words()).toBe('Read as 8 mm. If you mean centimeters, write 8 cm.')
    for (const plain of ['8 cm', '8 mm', '80', '3 in']) {
      await fireEvent.input(input, { target: { value: plain } })
      expect(words()).toBe('')
    }
    await fireEvent.input(input, { target: { value: '9.5' } })
    expect(words()).toBe('Read as 9.5 mm. If you mean centimeters, write 9.5 cm.')
    await fireEvent.keyDown(input, { key: 'Escape' })
    expect(words()).toBe('')
  })

  it('says nothing of it where a bare number is inches, centimeters or no length', async () => {
    for (const props of [
      { units: 'imperial', value: 78 },
      { kind: 'span', value: 78 },
      { kind: 'mass', value: 78 },
      { value: 850 },
    ] as const) {
      const { input } = field(props)
      await fireEvent.focus(input)
      await fireEvent.input(input, { target: { value: '8' } })
      expect(screen.queryByRole('status')).toBeNull()
      cleanup()
    }
  })

  it('reads a bare number in the unit that it shows', async () => {
    const { input, oncommit } = field({ value: 850 })
    expect(input.value).toBe('85 cm')
    await fireEvent.focus(input)
    for (const [text, value] of [
      ['9.5', 95],
      ['90', 900],
      ['90 mm', 90],
    ] as const) {
      await fireEvent.input(input, { target: { value: text } })
      await fireEvent.keyDown(input, { key: 'Enter' })
      expect(oncommit).toHaveBeenLastCalledWith(value)
    }
    // One that shows mm, or nothing, reads mm.
    expect(readField('9.5', { kind: 'length', units: 'metric', shown: '82 mm' })).toEqual({ value: 9.5 })
    expect(readField('9.5', { kind: 'length', units: 'metric' })).toEqual({ value: 9.5 })
  })

  it('reads a weight of yarn in whole balls where one ball is known', () => {
    const rules = { kind: 'mass', units: 'metric', ball: 50 } as const
    expect(readField('3 balls', rules)).toEqual({ value: 150 })
    expect(readField('2 1/2 skeins', rules)).toEqual({ value: 125 })
    expect(readField('120 g', rules)).toEqual({ value: 120 })
    expect(readField('3 balls', { ...rules, most: 100 })).toEqual({ problem: 'It can be at most 100 g.' })
    expect(readField('3 balls', { kind: 'mass', units: 'metric' })).toHaveProperty('problem')
  })

  it('shows a value that comes another way in the place of what could not be read, and only then', async () => {
    const props = { label: 'Petals', kind: 'count', units: 'metric', oncommit: vi.fn() } as const
    const { rerender } = render(NumberField, { ...props, value: 6 })
    const input = screen.getByRole('textbox', { name: 'Petals' }) as HTMLInputElement
    input.focus()
    await fireEvent.input(input, { target: { value: '6.5' } })
    await rerender({ ...props, value: 7 })
    expect(screen.getByRole('alert').textContent).toContain('6.5 is not a whole number.')
    input.blur()
    await rerender({ ...props, value: 7 })
    expect(input.value).toBe('6.5')
    await rerender({ ...props, value: 8 })
    expect(screen.queryByRole('alert')).toBeNull()
    expect(input.value).toBe('8')
  })

  it('does not say that a number is kept where none was there before', async () => {
    const props = { label: 'Share', kind: 'percent', units: 'metric', optional: true } as const
    const { rerender } = render(NumberField, { ...props, value: undefined, oncommit: vi.fn() })
    const input = screen.getByRole('textbox', { name: 'Share' })
    await fireEvent.focus(input)
    await fireEvent.input(input, { target: { value: '1.5' } })
    // What is typed is tried: the project has it until it is left.
    await rerender({ ...props, value: 1.5 })
    await fireEvent.input(input, { target: { value: '1.5 g' } })
    expect(screen.getByRole('alert').textContent).toMatch(/is the unit of/)
    expect(screen.getByRole('alert').textContent).not.toContain('kept')
  })

  it('reads what is counted with its noun, and asks a field without a unit for a number', () => {
    const rules = { kind: 'number', units: 'metric' } as const
    for (const text of ['6', '6 skeins', '6 Balls', '6skein'])
      expect(readField(text, rules)).toEqual({ value: 6 })
    expect(readField('12 petals', { ...rules, kind: 'count' })).toEqual({ value: 12 })
    expect(readField('6 G', rules)).toEqual({
      problem: expect.stringContaining('a number is expected') as string,
    })
  })

  it('says whether something waits in it that was not kept yet: until then undoing is its own', async () => {
    const { input } = field()
    expect(input.dataset.kept).toBe('')
    await fireEvent.input(input, { target: { value: '82' } })
    expect(input.dataset.kept).toBeUndefined()
    await fireEvent.keyDown(input, { key: 'Enter' })
    expect(input.dataset.kept).toBe('')
  })

  it('has room for what stands in it while it is empty', () => {
    const { input } = field({ value: undefined, optional: true, placeholder: 'by the tension' })
    expect(input.style.minWidth).toContain('15ch')
  })

  it('says beside it what cannot be read, and keeps the last good value in force', async () => {
    const { input, onpreview, oncommit } = field()
    await fireEvent.focus(input)
    await fireEvent.input(input, { target: { value: 'twelve' } })
    expect(screen.getByRole('alert').textContent).toContain('78 mm is kept')
    expect(input.getAttribute('aria-invalid')).toBe('true')
    expect(input.getAttribute('aria-describedby')).toContain(screen.getByRole('alert').id)
    await fireEvent.blur(input)
    expect(onpreview).not.toHaveBeenCalled()
    expect(oncommit).not.toHaveBeenCalled()
    expect(input.value).toBe('twelve')
    await fireEvent.input(input, { target: { value: '79' } })
    expect(screen.queryByRole('alert')).toBeNull()
  })

  it('takes back what it tried when the text becomes unreadable, or with Escape', async () => {
    const { input, oncancel, oncommit } = field()
    await fireEvent.input(input, { target: { value: '90' } })
    await fireEvent.input(input, { target: { value: '90 apples' } })
    expect(oncancel).toHaveBeenCalledTimes(1)
    await fireEvent.input(input, { target: { value: '91' } })
    await fireEvent.keyDown(input, { key: 'Escape' })
    expect(oncancel).toHaveBeenCalledTimes(2)
    expect(input.value).toBe('78 mm')
    expect(oncommit).not.toHaveBeenCalled()
  })

  it('is nudged by arrow keys, ten times as far with Shift, within its bounds', async () => {
    const { input, onpreview, oncommit } = field({ most: 90 })
    await fireEvent.keyDown(input, { key: 'ArrowUp' })
    await fireEvent.keyDown(input, { key: 'ArrowUp' })
    expect(onpreview).toHaveBeenLastCalledWith(80)
    await fireEvent.keyDown(input, { key: 'ArrowUp', shiftKey: true })
    await fireEvent.keyDown(input, { key: 'ArrowUp' })
    expect(onpreview).toHaveBeenLastCalledWith(90)
    await fireEvent.blur(input)
    expect(oncommit).toHaveBeenCalledExactlyOnceWith(90)
  })

  it('commits nothing when it was only looked at', async () => {
    const { input, oncommit } = field({ units: 'imperial' })
    await fireEvent.focus(input)
    await fireEvent.blur(input)
    expect(oncommit).not.toHaveBeenCalled()
  })

  it('may be emptied where that means something', async () => {
    const { input, oncommit } = field({ optional: true })
    await fireEvent.input(input, { target: { value: '' } })
    await fireEvent.blur(input)
    expect(oncommit).toHaveBeenCalledExactlyOnceWith(undefined)
  })

  it('says between which bounds a number may lie, in the units of the person', () => {
    const rules = { kind: 'length', units: 'imperial', least: 25.4, most: 254 } as const
    expect(readField('20 in', rules)).toEqual({ problem: 'It can be from 1 in to 10 in.' })
    expect(readField('0', { kind: 'count', units: 'metric', least: 1 })).toEqual({
      problem: 'It can be at least 1.',
    })
  })

  it('reads what it writes, for every kind', () => {
    const kinds = [
      'length',
      'span',
      'mass',
      'yarn-length',
      'count',
      'number',
      'percent',
      'degrees',
      'minutes',
      'money',
    ] as const
    for (const kind of kinds)
      for (const units of ['metric', 'imperial'] as const) {
        const text = writeQuantity(150, kind, units)
        const read = readField(text, { kind, units })
        expect(
          'value' in read && Math.abs((read.value ?? 0) / 150 - 1),
          `${kind} ${units} ${text}`,
        ).toBeLessThan(0.02)
      }
  })

  it('nudges by what a hand would: mm, eighths of an inch, tenths of a gram', () => {
    expect(nudged(78, 1, 'length', 'metric')).toBe(79)
    expect(nudged(25.4, 1, 'length', 'imperial')).toBeCloseTo(28.575, 9)
    expect(nudged(4.2, -1, 'mass', 'metric')).toBe(4.1)
    expect(nudged(1000, 1, 'span', 'metric')).toBe(1010)
  })
})
