import { describe, expect, it } from 'vitest'
import { yarnLike } from '../../../src-core/photo/yarns'

const YARNS = [
  { id: 'rose', name: 'Old rose', colour: '#b05a6a' },
  { id: 'wine', colour: '#6a1024' },
  { id: 'plain' },
  { id: 'odd', colour: 'no colour' },
]

describe('a colour of a photo', () => {
  it('is that of the nearest yarn, by ΔE00', () => {
    expect(yarnLike('#b45e6c', YARNS)).toMatchObject({ yarn: { id: 'rose' } })
    expect(yarnLike('#6a1024', YARNS)).toEqual({ yarn: YARNS[1], difference: 0 })
  })

  it('is that of none where none is near', () => {
    expect(yarnLike('#2050c0', YARNS)).toBeNull()
    expect(yarnLike('#b45e6c', [])).toBeNull()
  })
})
