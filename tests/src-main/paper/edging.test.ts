/** The page on an edging with written rounds: what it says, read back, is what the plan counts. */
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { pickUps } from '../../../src-core/edging/pick-up'
import { readRounds } from '../../../src-core/notation/read'
import { planProject } from '../../../src-core/plan'
import { listExamples } from '../../../src-main/documents'
import { mapPages } from '../../../src-main/paper/index'
import { motifWords } from '../../../src-main/paper/words-edging'
import { hexagons, ofKind, squares } from '../../src-core/edging/helpers'
import { record } from '../../src-core/figures/recorder'
import { DATE } from './projects'

function wordsOf(project: Parameters<typeof planProject>[0], terms?: 'US' | 'UK') {
  const plan = planProject(project)
  // What the order of work leaves of its last page is not looked at here.
  const pages = mapPages(plan, { date: DATE, leaveOut: ['order'], ...(terms && { terms }) })
  const page = pages.find(({ section }) => section === 'edging')
  const texts = page ? record(page.figure).texts.map(({ text }) => text) : []
  return { plan, page, words: texts.join(' ') }
}

describe('the page on an edging', () => {
  // With the right side facing, right-handers work an edge from right to left, left-handers from left to right.
  it.each([
    ['right', 'counterclockwise', 'left side', 'right side'],
    ['left', 'clockwise', 'right side', 'left side'],
  ] as const)('tells a %s-hander side by side how many stitches to pick up', (hand, way, second, last) => {
    const { plan, words, page } = wordsOf({ ...squares(8, 5, ofKind('shell')), hand })
    expect(page?.bookmarks).toEqual(['Border'])
    const [loop] = plan.edging!.loops!
    const [a, b, c, d] = loop!.stretches
    expect(words).toContain(
      `Right side facing, join the yarn at corner 1. Going ${way}, work ${loop!.stitches} sc along the edge`,
    )
    expect(words).toContain(
      `counted from the corner stitch at corner 1: ${a} along the top (corner 1 to 2), ${b} along the ${second} (corner 2 to 3), ${c} along the bottom (corner 3 to 4) and ${d} along the ${last} (corner 4 to 1)`,
    )
    expect(words).toContain('multiple of 6 sts')
    expect(words).toMatch(
      /\d+(–\d+)? sts from each of 18 motifs along the sides, and .* from each of 4 motifs at the corners/,
    )
    const picked = pickUps(plan, loop!)
    expect(picked).toHaveLength(22)
    expect(picked.reduce((sum, { stitches }) => sum + stitches, 0)).toBe(loop!.stitches)
  })

  it.each([
    [
      '3 dc in corner, *dc in next 3 sts, ch 1, sk 1; rep from * around, join.',
      'names corners, tips or dips',
    ],
    ['*sc in next 2 sts, ch 3, sk 4, blob in next st; rep from * around; join.', "'blob' is not a known"],
    ['Ch 1, sc in each st around; join. (7 sc)', 'the text says 7 sc'],
  ])('prints a round that does not work out as it was written, and what is wrong: "%s"', (work, wrong) => {
    const { plan, words } = wordsOf(squares(8, 5, { rounds: ['sc'], written: [{ work }] }))
    const [loop] = plan.edging!.loops!
    expect(words).toContain(`work ${loop!.stitches} sc along the edge`)
    expect(words).toContain(work.replace(/\.?$/, '.'))
    expect(words).toContain('Does not work out yet: ')
    expect(words).toContain(wrong)
    const materials = mapPages(plan, { date: DATE }).flatMap(({ figure }) => record(figure).texts)
    const told = materials.map(({ text }) => text).join(' ')
    expect(told).toContain('Round 2 in words: see')
    expect(told).not.toMatch(/evenly into the round before: 0/)
  })

  it('tells both ends of a round by themselves where they differ, in words and in plain rounds', () => {
    // Two squares are left out at the mouth: it runs round a notch, the bottom does not.
    const base = squares(8, 5, ofKind('shell'))
    const bag = (edging: object): Project => ({
      ...base,
      layout: {
        ...(base.layout as BlanketLayout),
        inTheRound: true,
        cells: { motifs: { '1,2': null, '1,3': null } },
        edging: { style: 'follow', yarn: 'y1', ...edging },
      },
    })
    const { plan, words } = wordsOf(bag(ofKind('shell')))
    const [mouth, bottom] = plan.edging!.loops!
    expect(mouth!.stitches).toBeGreaterThan(bottom!.stitches)
    const [atMouth, atBottom] = words.split('The bottom: the last row')
    expect(atMouth).toContain('The mouth: row 1, along the top of the map')
    expect(atMouth).toContain(`work ${mouth!.stitches} sc along the edge`)
    expect(atMouth).toContain(`(${mouth!.made[0]} sts, ${mouth!.repeats[0]} repeats)`)
    expect(atBottom).toContain(`work ${bottom!.stitches} sc along the edge`)
    expect(atBottom).toContain(`(${bottom!.made[0]} sts, ${bottom!.repeats[0]} repeats)`)
    const plain = planProject(bag({ rounds: ['sc'] }))
    const { byLine, stitches } = plain.edging!.rounds[0]!
    expect(byLine!.reduce((sum, each) => sum + each, 0)).toBe(stitches)
    // Eight squares of 60 mm at 5 mm a stitch, and down and up one of them at the notch.
    expect(byLine![1]).toBe(8 * 12)
    expect(Math.abs(byLine![0]! - (8 * 12 + 2 * 12))).toBeLessThanOrEqual(1)
    const materials = mapPages(plain, { date: DATE }).flatMap(({ figure }) => record(figure).texts)
    const told = materials.map(({ text }) => text).join(' ')
    expect(told).toContain(`(${byLine![0]} at the mouth and ${byLine![1]} at the bottom)`)
  })

  it('draws the edge with its corners as on the map, and beside it the stitches between them', () => {
    const project = squares(8, 5, ofKind('shell'))
    const { plan, words } = wordsOf(project)
    const pages = mapPages(plan, { date: DATE })
    const map = pages.find(({ section }) => section === 'overview')
    const onMap = record(map!.figure).texts.map(({ text }) => text)
    for (const count of plan.edging!.loops![0]!.stretches) {
      expect(words).toContain(`${count} sts`)
      // There the counts would cover the border.
      expect(onMap).not.toContain(`${count} sts`)
    }
    for (const corner of ['1', '2', '3', '4']) expect(onMap).toContain(corner)
    for (const told of [words, onMap.join(' ')])
      expect(told).toContain('A number in a square along the edge is a corner of the border')
    const plain = planProject(squares(8, 5, { rounds: ['sc'] }))
    const without = mapPages(plain, { date: DATE }).flatMap(({ figure }) => record(figure).texts)
    expect(without.map(({ text }) => text).join(' ')).not.toContain('number in a square')
  })

  it('draws the edge as high as the page has room for, up to 120 mm, and puts nothing into the footer', () => {
    for (const [columns, rows] of [
      [8, 5],
      [5, 8],
    ] as const) {
      const { page } = wordsOf(squares(columns, rows, ofKind('shell')))
      const { texts } = record(page!.figure)
      const corners = texts.filter(({ text }) => /^[1-4]$/.test(text))
      expect(corners).toHaveLength(4)
      const ys = corners.map(({ y }) => y)
      const high = Math.max(...ys) - Math.min(...ys)
      expect(high).toBeGreaterThan(80)
      expect(high).toBeLessThanOrEqual(120)
      const body = texts.filter(({ text }) => !/^page \d+ of \d+$|^Border$| by |version of/.test(text))
      expect(Math.max(...body.map(({ y }) => y))).toBeLessThan(page!.figure.height - 16)
    }
  })

  it('begins below the last rows of the order of work where these would leave a page nearly empty', () => {
    const found = [4, 5, 6, 7, 8, 9, 10, 11, 12].flatMap((rows) => {
      const plan = planProject(squares(8, rows, ofKind('shell')))
      const pages = mapPages(plan, { date: DATE })
      const page = pages.find(({ sections }) => sections.includes('edging'))!
      // It is on one page, whole.
      expect(pages.filter(({ sections }) => sections.includes('edging'))).toHaveLength(1)
      const words = record(page.figure).texts.map(({ text }) => text)
      expect(words).toContain('Border')
      expect(words.join(' ')).toContain('Fasten off after the last round')
      return page.section === 'order' ? [rows] : []
    })
    expect(found.length).toBeGreaterThan(0)
    expect(found.length).toBeLessThan(9)
  })

  it('explains the stitches of its own before its rounds', () => {
    const { words } = wordsOf(
      squares(8, 5, {
        ...{ rounds: ['sc'], special: 'Fan: 5 dc in same st.' },
        written: [{ work: '*fan in next st, sk 2 sts, sc in next st, sk 2 sts; rep from * around.' }],
      }),
      'UK',
    )
    expect(words).toContain('Fan: 5 tr in same st.')
  })

  it('tells what most motifs give where slanting sides have much of one and little of the next', () => {
    const whole = squares(14, 8, ofKind('shell'))
    const outlineShape = { kind: 'triangle', size: 1300, height: 780, points: 'down' } as const
    const { plan, words } = wordsOf({
      ...whole,
      layout: { ...whole.layout, outlineShape } as typeof whole.layout,
    })
    const picked = pickUps(plan, plan.edging!.loops![0]!)
    const counts = picked.map(({ stitches }) => stitches).sort((a, b) => a - b)
    expect(counts.at(-1)! / counts[0]!).toBeGreaterThanOrEqual(2)
    const usual = counts[Math.floor(counts.length / 2)]!
    expect(words).toContain(`about ${usual} sts from most motifs at the edge`)
    expect(words).toContain(`${counts.length} motifs in all`)
    expect(words).not.toContain('at the corners')
  })

  it.each([
    ['US', 'US'],
    ['US', 'UK'],
    ['UK', 'US'],
  ] as const)(
    'has rounds that read back to the counts behind them, written in %s, printed in %s',
    (own, printed) => {
      for (const kind of ['plain', 'shell', 'ripple'] as const) {
        const setUp = [own === 'US' ? 'sc' : 'dc']
        const { plan, words } = wordsOf(hexagons(2, ofKind(kind, own, setUp), own), printed)
        const [loop] = plan.edging!.loops!
        const [, text = '', count = ''] = /Round 2 (.*?)\.? \((\d+) sts?[,)]/.exec(words) ?? []
        expect(Number(count)).toBe(loop!.made[0])
        const read = readRounds(`Rnd 2: ${text}`, { terms: printed, after: { stitches: loop!.stitches } })
        expect(read.findings.filter(({ severity }) => severity === 'error')).toEqual([])
        expect(read.rounds[0]?.made).toBe(Number(count))
      }
    },
  )

  it('tells of each kind what it gives where several motifs alternate', () => {
    const at = (motif: string, stitches: number) => ({ motif: { motif } as never, isHalf: false, stitches })
    const names: Record<string, string> = { a: 'Rose', b: 'Bud' }
    const nameOf = (motif: string | undefined): string => names[motif ?? ''] ?? ''
    const picked = [at('a', 28), at('b', 12), at('a', 30), at('b', 13), at('a', 28)]
    expect(motifWords(picked, 0, nameOf)).toBe(
      ' That is 28–30 sts from each of 3 × Rose and 12–13 sts from each of 2 × Bud.',
    )
    const slanting = [...picked, at('a', 9), at('b', 12)]
    expect(motifWords(slanting, 0, nameOf)).toContain('about 28 sts from most of 4 × Rose (9–30 by how much')
  })

  it('tells hexagons apart by the sides that are free, where a range would be of no use', () => {
    const at = (free: number, stitches: number) => ({ motif: {} as never, isHalf: false, stitches, free })
    const picked = [at(1, 13), at(2, 26), at(3, 39), at(4, 52), at(2, 27), at(3, 40)]
    expect(motifWords(picked, 4)).toBe(
      ' That is 13 sts from one motif with 1 free side, 26–27 sts from each of 2 motifs with 2 free sides, 39–40 sts from each of 2 motifs with 3 free sides, and 52 sts from one motif with 4 free sides.',
    )
    // Squares along straight sides and at corners are told by where they stand.
    expect(motifWords([at(1, 12), at(1, 12), at(2, 24)], 1)).not.toContain('free')
  })

  it('tells the counts of both ends together where a band is edged at both, and finds no tips on rounds', () => {
    const said = (name: string): string => {
      const { text } = listExamples().find((each) => each.name === name)!
      const plan = planProject(JSON.parse(text) as Parameters<typeof planProject>[0])
      return mapPages(plan, { date: DATE })
        .flatMap(({ figure }) => record(figure).texts.map((each) => each.text))
        .join(' ')
    }
    expect(said('saltmarsh-bag')).toContain(
      'It is worked at both ends; the counts are those of both together.',
    )
    expect(said('orangery-cloth')).toContain(
      'sc in every free place, 12 to a whole circle, between two places of one motif ch 6; from one motif to the next ch 3: 202 sc',
    )
    expect(said('estuary-dusk-shawl')).toContain(
      'dc in every free tip, between two tips of one motif 8 ch; from one motif to the next 15 ch in 36 gaps and 18 ch in 8, more where the tips stand farther apart: 58 dc',
    )
  })

  // Eight sc more in a round lie flat at four corners (common practice for squares): two more at each. At the tips of
  // hexagons, by 60°, a sc takes one more and a dc two, in the dips between them as many fewer; three rings of them have
  // 6 · 3 + 6 tips at the edge and 6 · 3 dips.
  it.each([
    [
      'hexagons',
      'sc',
      'Work 2 in one place at each of 24 outer tips and 2 together at each of 18 dips, so that it lies flat. The corner',
    ],
    [
      'hexagons',
      'dc',
      'Work 3 in one place at each of 24 outer tips and 3 together at each of 18 dips, so that it lies flat. The corner',
    ],
    ['squares', 'sc', 'Work 3 into one place at each corner, so that it lies flat; the middle one is the'],
    ['squares', 'dc', 'Work 5 into one place at each corner, so that it lies flat; the 3rd of them is the'],
  ] as const)('says what lying flat takes at the corners of %s in %s', (of, stitch, told) => {
    const edging = ofKind('shell', 'US', [stitch])
    const { words } = wordsOf(of === 'squares' ? squares(8, 5, edging) : hexagons(3, edging))
    expect(words).toContain(told)
  })

  it('picks stitches up once: a second plain round is worked into the first, and says the same number everywhere', () => {
    for (const project of [
      squares(8, 5, ofKind('shell', 'US', ['sc', 'sc'])),
      hexagons(3, ofKind('shell', 'US', ['sc', 'sc'])),
    ]) {
      const { words, plan } = wordsOf(project)
      const [first, second] = plan.edging!.rounds
      expect(words.match(/work \d+ sc along the edge/g)).toHaveLength(1)
      expect(words).toMatch(
        new RegExp(
          `Round 1 Right side facing, join the yarn at corner 1. Going counterclockwise, work ${first!.stitches} sc along the edge, counted`,
        ),
      )
      expect(words).toMatch(
        new RegExp(`Round 2 sc in each stitch, [^:]*: ${second!.stitches} sc, counted from the corner`),
      )
      expect(words.match(/ That is /g)).toHaveLength(1)
      const materials = mapPages(plan, { date: DATE })
        .filter(({ section }) => section === 'materials')
        .flatMap(({ figure }) => record(figure).texts.map(({ text }) => text))
        .join(' ')
      expect(materials).toContain(`: ${first!.stitches} sc. Round 2: sc in each stitch`)
      expect(materials).toContain(`: ${second!.stitches} sc. Round 3 in words`)
    }
  })

  it('names the yarn of each round where there are several, and all ends', () => {
    const shell = ofKind('shell')
    const { words } = wordsOf(squares(8, 5, { ...shell, written: [{ ...shell.written![0], yarn: 'y2' }] }))
    expect(words).toContain('in Cream and Moss')
    expect(words).toContain('Round 2 in Moss: ch 1, *sc')
    expect(words).toContain('weave in 4 ends')
  })

  it('is not there without a border', () => {
    expect(wordsOf(squares(8, 5, { rounds: [] })).page).toBeUndefined()
  })
})
