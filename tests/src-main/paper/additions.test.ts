/** M27, M28 on paper: fillers and half motifs on the map, in its key and in the order of work. */
import { describe, expect, it } from 'vitest'
import { chooseJoinDetail, joinDetailFigure } from '../../../src-core/figures/join-detail'
import { MapPainter } from '../../../src-core/figures/map'
import { keyMarks, mapGround } from '../../../src-core/figures/map-ground'
import { overviewMap } from '../../../src-core/figures/overview-map'
import { ownPoints, pieceAt } from '../../../src-core/layout/placed'
import { planProject } from '../../../src-core/plan'
import { orderCsv } from '../../../src-main/paper/csv'
import { mapPages } from '../../../src-main/paper/index'
import { keyCount } from '../../../src-main/paper/words'
import { blanket, ROUND } from '../../src-core/layout/additions'
import { record } from '../../src-core/figures/recorder'
import { settled } from '../../../src-core/settled'

const project = blanket(
  ROUND,
  { name: 'Knot', outline: 'petals', petals: 3, overTips: 12, overValleys: 8 },
  { arrangement: 'offset-rows', columns: 6, rows: 5, halves: true, fillers: { motif: 'f' } },
)
const plan = planProject(project)
const ground = mapGround(plan, 'ink')

describe('fillers and half motifs on the map', () => {
  const { figure, scale } = overviewMap(ground, 186, 170)
  const drawn = record(figure)
  const uses = drawn.uses.filter(({ symbol }) => !symbol.id.startsWith('meeting-point'))
  const first = uses[0]!
  const origin = { x: first.x - plan.motifs[0]!.x * scale, y: first.y - plan.motifs[0]!.y * scale }
  const at = (x: number, y: number) =>
    uses.filter((use) => Math.hypot(use.x - origin.x - x * scale, use.y - origin.y - y * scale) < 1e-6)

  const numbersIn = ({ texts }: ReturnType<typeof record>) =>
    texts.filter(({ text, weight }) => /^\d+$/.test(text) && weight === 'bold').map(({ text }) => text)

  it('M27 draws every filler in its place, small; numbers stand where they have room', () => {
    expect(plan.fillers).toHaveLength(40)
    for (const filler of plan.fillers) {
      const [use] = at(filler.x, filler.y)
      expect(use!.symbol.bounds.width).toBeLessThan(14 * scale)
    }
    expect(uses).toHaveLength(plan.motifs.length + plan.fillers.length + plan.halves.length)
    const labels = (pieces: readonly { label: string }[]) => pieces.map(({ label }) => label)
    const small = [...labels(plan.motifs), ...labels(plan.halves)]
    expect(numbersIn(drawn).sort()).toEqual(small.sort())
    // In life size the fillers of 12 mm have room for theirs, too, and for their letter.
    const large = new MapPainter(ground, 1).window({ x: 0, y: 0, ...plan.size })
    const seen = record({ items: large })
    expect(numbersIn(seen).sort()).toEqual([...small, ...labels(plan.fillers)].sort())
    expect(seen.texts.filter(({ text }) => text === 'B')).toHaveLength(40)
  })

  it('M28 draws each half on the inner side of its cut', () => {
    expect(plan.halves).toHaveLength(5)
    for (const half of plan.halves) {
      const { bounds } = at(half.x, half.y)[0]!.symbol
      expect(bounds.width).toBeCloseTo(40 * scale, 0)
      expect(bounds.x + bounds.width / 2 > 0).toBe(half.side === 'left')
    }
  })

  it('counts both in the key, fillers in a texture of their own', () => {
    const [motifs, fillers] = keyMarks(ground)
    expect(motifs).toMatchObject({ id: 'a', count: 30, halves: 5, fillers: 0 })
    expect(fillers).toMatchObject({ id: 'b', count: 0, halves: 0, fillers: 40 })
    expect(fillers!.texture).not.toBe(motifs!.texture)
    expect([motifs!, fillers!].map(keyCount)).toEqual(['× 30 and 5 halves', '× 40 fillers'])
    const own = mapGround({ ...plan, fillers: plan.fillers.map((f) => ({ ...f, colourway: '' })) }, 'ink')
    expect(own.fillerMarks).toMatchObject([{ id: '', code: '', fillers: 40 }])
  })

  it('colours halves that no whole motif is like, and counts them in the key', () => {
    const other = { ...plan, halves: plan.halves.map((half) => ({ ...half, colourway: 'c' })) }
    const marks = mapGround(other, 'colour').marks
    expect(marks.find(({ id }) => id === 'c')).toMatchObject({ count: 0, halves: 5 })
    expect(keyCount(marks.find(({ id }) => id === 'c')!)).toBe('× 5 halves')
  })
})

describe('fillers and half motifs on the pages', () => {
  const pages = mapPages(plan, { date: new Date('2026-11-24T10:00:00Z') })
  const textOf = (section: string) =>
    pages
      .filter((page) => page.section === section)
      .flatMap((page) => record(page.figure).texts.map((text) => text.text))

  it('lists every filler and half motif once in the order of work, with a box to tick', () => {
    const boxes = textOf('order').filter((text) => text.startsWith('☐'))
    expect(
      textOf('order').filter((text) => /^Fillers, each between the motifs named:$/.test(text)),
    ).toHaveLength(4)
    const fillers = boxes.filter((text) => /^☐ \d+ · \d+, \d+, \d+ · B · way \d+$/.test(text))
    expect(fillers).toHaveLength(40)
    for (const text of fillers) {
      const [own, ...round] = text.match(/\d+/g)!.slice(0, 4)
      const filler = plan.fillers.find(({ label }) => label === own)!
      const labels = filler.motifs.map((id) => pieceAt(plan, id)!.label)
      expect(labels.sort()).toEqual(round.sort())
    }
    expect(boxes.filter((text) => / · half motif, row \d, (left|right) · A$/.test(text))).toHaveLength(5)
    const numbers = boxes.map((text) => parseInt(text.slice(2)))
    expect([...numbers].sort((a, b) => a - b)).toEqual(Array.from({ length: 75 }, (_, i) => i + 1))
    expect(textOf('order').join(' ')).toContain('Numbers from 31 on are half motifs and fillers')
  })

  it('draws the fillers round the motif of the join detail, with their numbers and join points', () => {
    const choice = chooseJoinDetail(plan)!
    const round = choice.additions!
    expect(round.length).toBeGreaterThan(3)
    for (const piece of round)
      expect(piece.kind === 'half' || piece.round!.includes(choice.focus.id)).toBe(true)
    const look = { marks: keyMarks(ground), hand: 'right', hosts: true, told: true } as const
    const box = { width: 186, height: 150 }
    const { uses } = record(joinDetailFigure(plan, choice, look, box))
    expect(uses).toHaveLength(choice.shown.length + round.length)
    // Fillers of 33 mm among circles of 80 mm have room for their numbers.
    const wide = planProject(
      blanket(ROUND, { outline: 'round', across: 33 }, { columns: 4, rows: 4, fillers: { motif: 'f' } }),
    )
    const own = chooseJoinDetail(wide)!
    const { texts } = record(joinDetailFigure(wide, own, look, box))
    expect(own.additions!.length).toBeGreaterThan(1)
    expect(texts.map(({ text }) => text)).toEqual(
      expect.arrayContaining(own.additions!.map(({ label }) => label)),
    )
  })

  it('names the letter of fillers in the key', () => {
    const ways = project.colourways!.map((way) => (way.id === 'b' ? { ...way, name: 'Moth' } : way))
    const [overview] = mapPages(
      { ...plan, settled: settled({ ...project, colourways: ways }) },
      { date: new Date(0), style: 'ink' },
    )
    expect(record(overview!.figure).texts.map(({ text }) => text)).toContain('B · Moth')
  })

  it('tells both among the materials', () => {
    // They may begin below the last of the order.
    const all = pages.flatMap((page) => record(page.figure).texts.map(({ text }) => text))
    const words = all.slice(all.indexOf('Materials')).join(' ')
    expect(words).toContain('40 × Knot in openings of 12.4 mm, joined 120 times in all')
    expect(words).toContain('5 half motifs at the ends of rows')
    expect(words).toContain('(about 55 %)')
  })

  it('tells where places told by the clock are, when fillers come, and how often they are joined', () => {
    const overview = textOf('overview').join(' ')
    expect(overview).toContain(
      'Their numbers come after those of all motifs, but each is joined as soon as all the motifs beside it are there',
    )
    expect(overview).toContain('but each is joined as soon as all the motifs round it are there')
    expect(overview).not.toContain('after all others')
    expect(overview).toContain('12 at the top of the map')
    expect(textOf('joins').join(' ')).toContain(
      `Fillers are joined at ${ownPoints(plan.fillers)} points more.`,
    )
  })

  it('puts fillers and half motifs into the order of the spreadsheet', () => {
    const lines = orderCsv(plan).trim().split('\r\n').slice(1)
    expect(lines.map((line) => parseInt(line))).toEqual(
      plan.order.map(({ motif }) => Number(pieceAt(plan, motif)!.label)),
    )
    const made = new Set<number>()
    let fillers = 0
    for (const line of lines) {
      const round = /filler between ([\d, and]+): petal 1/.exec(line)?.[1]
      for (const label of round?.split(/\D+/) ?? []) expect(made.has(Number(label)), line).toBe(true)
      if (round) fillers++
      made.add(parseInt(line))
    }
    expect(fillers).toBe(40)
    expect(
      lines.filter((line) => /^\d+,\d+,,A,[^,]*,"?half motif, row \d, (left|right): /.test(line)),
    ).toHaveLength(5)
  })
})
