import { expect, it } from 'vitest'
import { openCommand } from '../../../src-main/browser/open-address'

it('the address is opened the way of each system', () => {
  const url = 'http://127.0.0.1:1/enter?token=a&b'
  expect(openCommand('linux', url)).toEqual(['xdg-open', [url]])
  expect(openCommand('darwin', url)).toEqual(['open', [url]])
  expect(openCommand('win32', url)[1].at(-1)).toBe('http://127.0.0.1:1/enter?token=a^&b')
})
