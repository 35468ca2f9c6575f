/** Tables of rounds, lines that are only numbered, terse joins, rings within sentences, stitches that a list explains. */
import { describe, expect, it } from 'vitest'
import { withoutDress } from '../../../src-core/notation/dress'
import { made, told } from './telling'

describe('A table of rounds', () => {
  const plain = `Round | Instructions | Count
------+--------------+------
1     | 6 sc in magic ring | 6
2     | 2 sc in each st | 12
3-4   | sc in each st | 12`

  it.each([
    [plain],
    [
      '| Rnd | Work | Stitches |\n|:---|---|---:|\n| 1 | 6 sc in magic ring | 6 |\n| 2 | 2 sc in each sc | 12 |\n| 3–4 | sc in each sc | 12 |',
    ],
    [
      'Rnd | Work | Total\nRnd 1 (RS) | 6 sc in magic ring | 6\nRnd 2 | 2 sc in each sc | 12\nRnds 3-4 | sc in each sc | 12',
    ],
  ])('is read by its rows: %j', (text) => {
    expect([made(text), told(text)]).toEqual([[6, 12, 12, 12], []])
    expect(withoutDress(text)).toHaveLength(text.length)
  })

  it('has its counts checked', () => {
    expect(told(`${plain.slice(0, -2)}13`)).toEqual([expect.stringContaining('13')])
  })
})

describe('Lines that are only numbered', () => {
  it.each(['3-4: ', '3 & 4: ', '3 and 4. '])('may stand for several rounds: "%s"', (label) => {
    const text = `1: 6 sc in magic ring (6)\n2: 2 sc in each sc (12)\n${label}sc in each sc (12)\n5: sc in each sc (12)`
    expect([made(text), told(text)]).toEqual([[6, 12, 12, 12, 12], []])
  })
})

describe('A join without "in"', () => {
  const closed = (join: string, count: number) =>
    `Rnd 1: Magic ring, ch 3 (counts as dc), 15 dc in ring, join top ch 3. (16 dc)\nRnd 2: Ch 1, sc in each dc, ${join}. (${count} sc)`

  it.each(['join first sc', 'join 1st sc', 'sl st first sc', 'join in first sc'])(
    'closes the round: %s',
    (join) => {
      expect([made(closed(join, 16)), told(closed(join, 16))]).toEqual([[16, 16], []])
      expect(told(closed(join, 17))).toHaveLength(1)
    },
  )

  it('closes it in the chain that it begins with', () => {
    const text =
      'Rnd 1: Magic ring, 8 sc, join first sc.\nRnd 2: Ch 4 (counts as dc, ch 1), (dc in next sc, ch 1) 7 times, join 3rd ch of ch 4. (8 dc)'
    expect([made(text), told(text)]).toEqual([[8, 8], []])
  })
})

describe('A ring', () => {
  it.each([
    ['Materials: 4-ply cotton. Hook 3 mm. Make a magic ring.'],
    ['Materials: 4-ply cotton. Hook 3 mm. Ch 4, join with sl st to form a ring.'],
    ['Begin with pale pink and a slip ring.'],
    ['Start with blue and an adjustable ring.'],
    ['Using A, begin in a magic ring.'],
  ])('is found where a sentence makes it: %s', (line) => {
    const text = `${line}\nRnd 1: Ch 1, 10 sc in ring, sl st in first sc. (10 sc)`
    expect([made(text), told(text)]).toEqual([[10], []])
  })

  it('is missed where nothing makes it', () => {
    expect(told('Materials: a ring for keys.\nRnd 1: Ch 1, 10 sc in ring, sl st in first sc.')).toHaveLength(
      1,
    )
  })
})

describe('Stitches between asterisks', () => {
  it('go into the place that is named behind them', () => {
    const text = 'Rnd 1: 8 sc in a magic ring.\nRnd 2: *1 sc, ch 2, 1 dc, 1 sc* in each st around. (24 sts)'
    expect([made(text), told(text)]).toEqual([[8, 24], []])
  })
})

describe('A stitch that the text explains', () => {
  it.each([
    [
      'Notes\n• spike = sc worked one round lower than usual, around the stitch of the round before\n• join = sl st in first st',
    ],
    ['Spike: sc worked over the edge of Rnd 1, down into the ring; draw the loop up to full height.'],
  ])('is known without a heading of special stitches: %j', (page) => {
    const text = (spikes: number) =>
      `${page}\n\nRnd 1: 8 sc in magic ring; join with sl st in first sc. (8)\nRnd 2: Ch 1, *2 sc in next st, spike in next st; rep from * around. (8 sc, ${spikes} spikes)`
    expect([made(text(4)), told(text(4))]).toEqual([[8, 12], []])
    expect(told(text(5))).not.toEqual([])
  })

  it('by a shell goes into shells alone', () => {
    const text = `Shell: (2 dc, ch 2, 2 dc) in place indicated.
Beginning Shell (beg Shell): ch 3 (counts as dc), (dc, ch 2, 2 dc) in place indicated.
Rnd 1: 24 sc in magic ring; join with sl st in first sc. (24 sc)
Rnd 2: Beg Shell in same st as joining, ch 3, sk 2 sc, (dc, ch 5, dc) in next sc, ch 3, sk 2 sc, *Shell in next sc, ch 3, sk 2 sc, (dc, ch 5, dc) in next sc, ch 3, sk 2 sc; rep from * twice more; join.
Rnd 3: Sl st in next dc and in ch-2 sp, beg Shell in same sp, ch 2, 9 tr in next ch-5 sp, ch 2, *Shell in Shell, ch 2, 9 tr in next ch-5 sp, ch 2; rep from * twice more; join.
Rnd 4: Sl st in next dc and in ch-2 sp, beg Shell in same sp, ch 3, sc in each of next 9 tr, ch 3, *Shell in next Shell, ch 3, sc in each of next 9 tr, ch 3; rep from * twice more; join.`
    expect([made(text), told(text)]).toEqual([[24, 24, 52, 52], []])
  })
})

describe('The other side of a chain', () => {
  it.each([
    ['turn the chain over and sc in each of the 5 ch along the other side'],
    ['turn your chain and work 1 sc in each ch on the other side'],
    ['flip the chain over, sc in each of the 5 free loops along the other side'],
  ])('begins in the last chain where one stitch alone stands: %s', (way) => {
    const text = `Ch 6.\nRnd 1: Sc in 2nd ch from hook and in each ch to the end (5 sc), ${way}. (10 sc)`
    expect([made(text), told(text)]).toEqual([[10], []])
  })

  it('has a count of its own before it, which is checked', () => {
    const text =
      'Ch 6.\nRnd 1: Sc in 2nd ch from hook and in each ch to the end (6 sc), turn the chain over and sc in each of the 5 ch along the other side. (10 sc)'
    expect(told(text)).toHaveLength(1)
  })
})

describe('A figure alone behind the last stop', () => {
  it('is what the round comes to', () => {
    const text = (count: number) => `Rnd 1: 6 sc in magic ring. 6\nRnd 2: 2 sc in each sc, join. ${count}`
    expect([made(text(12)), told(text(12))]).toEqual([[6, 12], []])
    expect(told(text(13))).toEqual([expect.stringContaining('13')])
  })

  it.each([
    'Rnd 2: 2 sc in each sc with hook No. 3.',
    'Rnd 2: 2 sc in each sc.\n\n14',
    'Rnd 2: Ch. 5, 12 s.c. in ring, join with sl. st. in 5th ch. of ch. 5',
  ])('is none in "%s"', (round) => {
    expect(told(`Rnd 1: 6 sc in magic ring.\n${round}`).join()).not.toMatch(/says (3|14|5)\b/)
  })
})

describe('Counts and places in talk', () => {
  it('name corners by their chains', () => {
    const text = (corners: number) =>
      `Rnd 1: Ch 4, join to form ring, ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * twice more, join. 12 dc, ${corners} corners of ch 2.`
    expect([made(text(4)), told(text(4))]).toEqual([[12], []])
  })

  it('mean all stitches before chains by "in that space"', () => {
    const text = `Rnd 1: Ch 4, sl st to make a ring. Ch 3 (counts as dc), 1 dc in the ring, ch 1, (2 dc, ch 1) five times in the ring. Sl st to top of ch 3.
Rnd 2: Sl st in next dc and in ch-1 sp. Ch 3, 2 dc, ch 1 in that space, (3 dc, ch 1) in each of next 5 sps. Sl st to top of ch 3.`
    expect([made(text), told(text)]).toEqual([[12, 18], []])
  })

  it('mean loops of another round by "work only in"', () => {
    const text =
      'Rnd 1: 8 sc in a magic ring.\nRnd 2: In BL only: 2 sc in each st. (16)\nRnd 3: In FL only: 2 sc in each st. (32)\nRnd 4: Work only in BL of Rnd 2: sc in each st. (16)'
    expect(made(text)).toEqual([8, 16, 32, 16])
  })

  it('pass over as many before a corner as were skipped in words', () => {
    const text = (
      skip: number,
    ) => `Rnd 1: Ch 5, join to form ring. Ch 3 (counts as dc), 4 dc in ring, ch 3, (5 dc, ch 3) twice in ring, join in top of ch 3. (15 dc)
Rnd 2: Sl st along to ch-3 sp, (ch 3, 2 dc, ch 3, 3 dc) in sp, ch 1, sk ${skip} dc, 3 dc in next dc, ch 1, *(3 dc, ch 3, 3 dc) in next ch-3 sp, ch 1, sk ${skip} dc, 3 dc in next dc, ch 1; rep from * once more, join.
Rnd 3: Sl st along to ch-3 sp, (ch 3, 2 dc, ch 3, 3 dc) in sp, ch 1, (3 dc in next ch-1 sp, ch 1) twice, *(3 dc, ch 3, 3 dc) in next ch-3 sp, ch 1, (3 dc in next ch-1 sp, ch 1) twice; rep from * once more, join.`
    expect([made(text(2)), told(text(2))]).toEqual([[15, 27, 36], []])
    expect(told(text(1))).toHaveLength(1)
  })

  it('hang a motif by a loop of thread that is none of the round', () => {
    const text =
      '6 sc in a magic ring. (6)\nRnd 2: 2 sc in each sc. (12)\n\nFasten off, add a loop of thread to one point.'
    expect([made(`Rnd 1: ${text}`), told(`Rnd 1: ${text}`)]).toEqual([[6, 12], []])
  })
})
