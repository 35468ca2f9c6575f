/** M29: what becomes of the fabric, whatever goes together: hook and gauge make one factor of every stitch. */
import { expect, it } from 'vitest'
import { expectKept } from './expect-kept'
import { SQUARES } from './squares'

/** Sizes that no hook alone comes to. */
const SIZES = [930, 945, 960, 1050, 1075, 1140, 1160] as const

it('says once what becomes of the fabric: hook, gauge and blocking together are not denser and looser at a time', () => {
  const told = SIZES.flatMap((width) => expectKept(SQUARES, { width, height: 1.21 * width }))
  const pairs = told.filter(({ kinds }) => kinds.includes('hook') && kinds.length > 1)
  expect(pairs.map(({ kinds }) => kinds.at(-1))).toEqual(expect.arrayContaining(['gauge', 'blocking']))
  for (const { change, fabric = '' } of pairs) {
    const hook = Number(/([\d.]+) mm hook/i.exec(change)![1]) / 4
    const by = /([\d.]+) % (looser|tighter) with it/.exec(change)
    const gauge = by ? 1 + (Number(by[1]) / 100) * (by[2] === 'looser' ? 1 : -1) : 1
    expect(fabric.match(/looser|denser|drape/gi)!.length, fabric).toBeLessThanOrEqual(2)
    expect(fabric, change).toMatch(hook * gauge > 1 ? /^Looser, more open/ : /^Denser, firmer/)
    expect(fabric.match(/more open/g) ?? [], change).toHaveLength(hook * gauge > 1 ? 1 : 0)
  }
})
