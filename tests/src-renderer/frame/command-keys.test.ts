/** Who hears a shortcut: the window, the menu of the desktop, or the field that is written in. */
import { describe, expect, it } from 'vitest'
import { wayOfKey } from '../../../src-renderer/frame/command-keys'

const made = (tag: string, more: Readonly<Record<string, string>> = {}): HTMLElement => {
  const element = document.createElement(tag)
  for (const [name, value] of Object.entries(more)) element.setAttribute(name, value)
  return element
}
const MENU = { hasMenu: true, inDialog: false }
const NO_MENU = { hasMenu: false, inDialog: false }

describe('undo and redo by key', () => {
  it.each([
    ['a button', made('button')],
    ['the map', made('div', { tabindex: '0' })],
    ['a choice', made('input', { type: 'radio' })],
    ['a list', made('select')],
    ['a field with nothing to keep', made('input', { 'data-kept': '' })],
  ])('from %s are the last step of the project, with a menu too', (_what, target) => {
    // The engine of the window would take back what was typed in another field.
    for (const id of ['undo', 'redo'] as const)
      for (const host of [MENU, NO_MENU]) expect(wayOfKey(id, target, host)).toBe('run')
  })

  it('in a field that is written in are its own', () => {
    for (const target of [made('input'), made('textarea')])
      for (const host of [MENU, NO_MENU]) expect(wayOfKey('undo', target, host)).toBe('leave')
  })

  it('over a dialog take nothing back behind it', () => {
    expect(wayOfKey('undo', made('button'), { ...MENU, inDialog: true })).toBe('nothing')
    expect(wayOfKey('undo', made('input'), { ...MENU, inDialog: true })).toBe('leave')
  })
})

describe('other shortcuts', () => {
  it('are heard by a menu where there is one', () => {
    expect(wayOfKey('save', made('button'), MENU)).toBe('leave')
    expect(wayOfKey('save', made('button'), NO_MENU)).toBe('run')
    expect(wayOfKey('save', made('button'), { ...NO_MENU, inDialog: true })).toBe('leave')
  })

  it('leave a text to be selected where it is written', () => {
    expect(wayOfKey('select-all', made('input'), NO_MENU)).toBe('leave')
    expect(wayOfKey('select-all', made('div'), NO_MENU)).toBe('run')
  })
})
