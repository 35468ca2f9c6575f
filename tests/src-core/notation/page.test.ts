/** The page around the rounds: titles and marks, notes for all rounds, beginnings in words, counts among prose. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

const read = (text: string, terms: 'US' | 'UK' = 'US') => readRounds(text, { terms })
const slips = (text: string, terms: 'US' | 'UK' = 'US') =>
  read(text, terms).findings.flatMap(({ code, severity }) => (severity === 'note' ? [] : [code]))
const made = (text: string, terms: 'US' | 'UK' = 'US') => {
  expect(slips(text, terms)).toEqual([])
  return read(text, terms).rounds.map((round) => [round.part, round.made])
}

const RING = 'In magic ring, ch 1, 8 sc, sl st in first sc.'
const INCREASE = 'Ch 3 (counts as dc), dc in same st, 2 dc in each sc around, sl st in top of ch-3.'

describe('Headings with marks around them', () => {
  it.each([
    ['asterisks', `** CENTER **\nRnd 1: ${RING}\n** EDGE **\nRnd 2: ${INCREASE}`],
    ['waves and dots', `~ CENTER ~\n• Rnd 1: ${RING}\n~ EDGE ~\n• Rnd 2: ${INCREASE}`],
    ['hyphens', `--- CENTER ---\n- Rnd 1: ${RING}\n--- EDGE ---\n- Rnd 2: ${INCREASE}`],
    ['bold type', `CENTER\n**Rnd 1:** ${RING}\n\nEDGE\n**Rnd 2:** ${INCREASE}`],
    ['colors', `CENTER (yellow)\nRnd 1: ${RING}\nEDGE (dusty pink)\nRnd 2: ${INCREASE}`],
  ])('are headings: %s', (_, text) => {
    expect(made(text)).toEqual([
      ['CENTER', 8],
      ['EDGE', 16],
    ])
  })

  it('are none where an asterisk begins a repeat', () => {
    const text = `Rnd 1: ${RING}\nRnd 2:\n* Sc in next st, 2 sc in next st; rep from * around, join. (12 sc)`
    expect(made(text).map(([, count]) => count)).toEqual([8, 12])
  })
})

describe('What a page explains', () => {
  it('is no other stitch where the name is known anyway', () => {
    const text = `Abbreviations\nsc = single crochet\ndc: double crochet\n\nRnd 1: ${RING} (8 sc)\nRnd 2: ${INCREASE} (16 dc)`
    expect(made(text).map(([, count]) => count)).toEqual([8, 16])
  })

  it('may be two stitches in one line', () => {
    const text = `Wheel\n\nTr2tog/tr3tog: holding back last lp of each st on hook, tr in each of next 2 (3) tr, yo and through all lps on hook.\n\nCh 6, join to form ring.\nRnd 1: Ch 4 (counts as tr), 23 tr in ring, join in top of ch-4.\nRnd 2: Ch 4, tr2tog over next 2 tr (counts as tr3tog), ch 4, *tr3tog over next 3 tr, ch 4; rep from * around, join in top of first cluster.`
    expect(made(text).map(([, count]) => count)).toEqual([24, 8])
  })

  it('may be a name of figures and letters, however it is spelled', () => {
    const told = 'work 2 tr in same place, leaving last loop of each on hook, yrh, pull through all loops'
    for (const name of ['2-tr cl', '2trcl', '2 tr cl']) {
      const text = `Special stitches: 2trcl = ${told}\n\nRound 1: Magic ring, 1 ch, 8 dc, ss to first dc.\nRound 2: 1 ch, ${name} in each dc round, ss to first st.`
      expect(read(text, 'UK').rounds[1]!.made).toBe(8)
    }
  })
})

describe('Where everything begins', () => {
  it.each([
    'Begin with 8 ch, join with ss into a ring.',
    'Start by making 8 ch; ss in first ch to form a ring.',
    'Starting with 8 ch, join with a ss.',
    'Commence with 8 ch, join in a ring with ss.',
    'Foundation ring: 8 ch, join with a ss.',
    'Special stitches\nfan: 5 tr in one place.\n\nFoundation ring: 8 ch, join with a ss.',
    'Make a ring of 8 ch.',
  ])('is a ring of eight chains: %s', (text) => {
    const rounds = (count: number) =>
      `${text}\n\nRound 1: 3 ch (counts as 1 tr), ${count} tr into ring, ss to top of 3 ch.`
    expect(made(rounds(23), 'UK').map(([, count]) => count)).toEqual([24])
    expect(slips(rounds(47), 'UK')).toEqual(['rounds/ring-crowded'])
  })

  it('closes no round with "close the hole"', () => {
    const text = `Rnd 1: ${RING} Fasten off, and close the hole with the tail.`
    expect(read(text).rounds[0]!.stitches['sl st']).toBe(1)
  })
})

describe('What a sentence says of all rounds', () => {
  it.each([
    'All ch-3s count as the first dc.',
    'Ch 3 = 1 dc at beg of each rnd.',
    'The first three chains of a round stand for 1 dc.',
    'The beginning chain counts as a dc.',
  ])('is known without a heading: %s', (note) => {
    const text = `Mat\n${note}\n\nRnd 1: In magic ring, ch 3, 12 dc, join. (12 dc)`
    const [found] = read(text).findings
    expect(found).toMatchObject({ code: 'rounds/wrong-end-count', severity: 'error' })
    expect(read(text).rounds[0]!.made).toBe(13)
  })

  it('does not make a stitch of the single chain that brings the hook up', () => {
    const note = 'The beginning chain counts as first stitch.'
    const text = `Mat\n${note}\n\nRnd 1: In magic ring, ch 3, 11 dc, join. (12 dc)\nRnd 2: Ch 1, sc in each dc around, join. (12 sc)`
    expect(made(text).map(([, count]) => count)).toEqual([12, 12])
  })

  it('is told at the stitches where the chain was not taken off their number', () => {
    const text = 'Rnd 1: Ch 3 (counts as dc), 12 dc in magic ring, join in top of ch-3. (12 dc)'
    const [found] = read(text).findings
    expect(text.slice(found!.target!.column! - 1).slice(0, found!.target!.length)).toBe('12 dc in magic ring')
  })
})

describe('A count among prose', () => {
  it.each([
    'Fasten off yellow. 8 sc.\n\nNow for the fun part!',
    '8 sc. Close up the hole in the middle.',
    'Total: 8 sc.\n\nIt might ruffle a tiny bit here.',
  ])('is a count, no more to work: %s', (behind) => {
    const text = `Rnd 1: ${RING} ${behind}\n\nRnd 2: ${INCREASE} 16 dc`
    expect(made(text).map(([, count]) => count)).toEqual([8, 16])
  })
})

describe('Stitches between two loops', () => {
  it('are passed without a word', () => {
    const text =
      'Rnd 1: In magic ring, ch 1, 12 sc, join.\nRnd 2: Ch 1, sc in first sc, *ch 3, sk 1 sc, sc in next sc, ch 3, sk 1 sc, dc in next 2 sc; rep from * once more, ch 3, sk 1 sc, sc in next sc, ch 3, sk 1 sc, join.\nRnd 3: Ch 1, sc in first sc, *2 sc in next 2 sps, sc in next 2 dc; rep from * once more, 2 sc in next 2 sps, join.'
    expect(slips(text)).not.toContain('rounds/stitches-passed')
  })
})

describe('Sections of a page', () => {
  it.each([
    'FINISHED DIMENSIONS\n4" square',
    'Crochet Hook: 5 mm',
    'SKILL\nEasy',
    'Supplies: worsted yarn, scissors',
    'Tips: sc tightly.',
  ])('hold no round and name no part: %s', (section) => {
    const text = `${section}\n\nCENTER\nRnd 1: ${RING}\nEDGE\nRnd 2: ${INCREASE}`
    expect(made(text)).toEqual([
      ['CENTER', 8],
      ['EDGE', 16],
    ])
  })
})

describe('A gauge', () => {
  it.each([
    '17 dc = 4 in.',
    'GAUGE\nRnds 1 and 2 = 2" [5 cm] across',
    '16 dc and 8 rows = 10 cm',
    'Rnd 1 = 2½" across',
  ])('is no stitch that the text explains: %s', (gauge) => {
    const text = `${gauge}\n\nRnd 1: ${RING}\nRnd 2: ${INCREASE}`
    expect(read(text).tree.definitions).toEqual([])
    expect(made(text).map(([, count]) => count)).toEqual([8, 16])
  })
})

describe('A name for the adjustable ring', () => {
  it.each([
    'mc = magic circle\n\nRnd 1: mc, ch 1, 6 sc, join. (6 sc)',
    'ML: magic loop\n\nRnd 1: 6 sc in ML, join. (6 sc)',
    'Rnd 1: 6 sc in MC (6)',
    'R1: MC, 6 sc (6)',
  ])('is read as the text explains it, or as is usual: %s', (text) => {
    expect(made(text).map(([, count]) => count)).toEqual([6])
  })

  it('is the main color where the text joins that', () => {
    const text =
      'Rnd 1: With MC, ch 4, join to form ring, ch 3 (counts as dc), 11 dc in ring, join. (12 dc)\nRnd 2: MC, ch 1, sc in each st, join. (12 sc)'
    expect(made(text).map(([, count]) => count)).toEqual([12, 12])
  })
})
