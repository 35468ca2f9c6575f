/** The renderer of pictures may be begun but once in a process, however often this module is read. */
import { afterAll, expect, it, vi } from 'vitest'

const SQUARE =
  '<svg xmlns="http://www.w3.org/2000/svg" width="4" height="4"><rect width="4" height="4"/></svg>'

afterAll(() => {
  vi.resetModules()
})

it('draws again where its module was read anew', async () => {
  for (let i = 0; i < 2; i++) {
    vi.resetModules()
    const { svgToPng } = await import('../../../src-main/paper/png')
    expect([...(await svgToPng(SQUARE, 4)).subarray(1, 4)]).toEqual([...Buffer.from('PNG')])
  }
})
