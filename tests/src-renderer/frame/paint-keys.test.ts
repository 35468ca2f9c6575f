import { expect, it } from 'vitest'
import { paintKeys } from '../../../src-renderer/frame/paint-keys'

it.each([
  [['A'], 'A paints'],
  [['A', 'B'], 'A and B paint'],
  [['A', 'B', 'C', 'D', 'E', 'F'], 'A–F paint'],
  [['H', 'M', 'G'], 'H, M and G paint'],
  [['H', 'M', 'G', 'A', 'B', 'C'], 'the letters of the colorways paint'],
])('the letters %j are told as %j', (letters, words) => {
  expect(paintKeys(letters)).toBe(words)
})
