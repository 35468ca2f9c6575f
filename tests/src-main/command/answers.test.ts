/** What the commands answer: the fields that other programs rely on, and tables that people read. */
import { readFile } from 'node:fs/promises'
import stringWidth from 'string-width'
import { describe, expect, it } from 'vitest'
import type { SizeWay } from '../../../shared-types/ways'
import type { FitArrangement, Plan } from '../../../shared-types/plan'
import { joiningRounds } from '../../../src-core/joining-round/joining-round'
import { wholeCost } from '../../../src-core/materials/whole-cost'
import { planProject } from '../../../src-core/plan'
import { petalyard, SAMPLE, writeProject } from './sample'

async function json(...args: string[]): Promise<Record<string, unknown>> {
  const ran = await petalyard(...args, '--json')
  expect(ran.err).toBe('')
  return JSON.parse(ran.out) as Record<string, unknown>
}

/** Every number and every null of a document. */
function leaves(value: unknown): unknown[] {
  return value !== null && typeof value === 'object' ? Object.values(value).flatMap(leaves) : [value]
}

describe('check', () => {
  it('prints nothing and ends with 0 where there is nothing to mend', async () => {
    const { order: _, ...rest } = { ...SAMPLE, order: undefined }
    const file = await writeProject({ ...rest, layout: undefined, joining: undefined })
    const ran = await petalyard('check', file)
    expect(ran.code).toBe(0)
    expect(ran.out.split('\n').filter((line) => /^(error|warning)/.test(line))).toEqual([])
  })

  it('prints a finding a line: severity, code, place, words; errors first', async () => {
    const file = await writeProject({
      ...SAMPLE,
      colourways: [{ id: 'c1', motif: 'm1', yarns: { centre: 'y9', petals: 'y1', leaf: 'y1' } }],
    })
    const ran = await petalyard('check', file)
    expect(ran.code).toBe(1)
    expect(ran.out).toMatch(
      /^error {4}file\/unknown-yarn +colourways\[0\]\.yarns\.centre: there is no yarn 'y9'\. Add the yarn, or name one that is in the list\.$/m,
    )
    expect(ran.out).toMatch(/^warning {2}file\/unknown-slot +colourways\[0\]\.yarns\.leaf: /m)
    const ranks = ran.out
      .trimEnd()
      .split('\n')
      .map((line) => ['error', 'warning', 'note'].indexOf(line.split(' ')[0] ?? ''))
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b))
    expect(ran.err).toMatch(/: \d+ errors?, \d+ warnings?/)
  })

  it('gives the same findings as JSON', async () => {
    const file = await writeProject({ ...SAMPLE, yarns: [] })
    const { findings } = (await json('check', file)) as { findings: Record<string, unknown>[] }
    const ran = await petalyard('check', file)
    expect(findings).toHaveLength(ran.out.trimEnd().split('\n').length)
    for (const finding of findings)
      expect(finding).toMatchObject({
        code: expect.stringMatching(/^[a-z-]+\/[a-z-]+$/) as unknown,
        severity: expect.stringMatching(/^(error|warning|note)$/) as unknown,
        where: expect.any(String) as unknown,
        message: expect.any(String) as unknown,
        mend: expect.any(String) as unknown,
      })
  })
})

describe('measure', () => {
  it('gives each motif with the fields of the contract', async () => {
    const { motifs } = (await json('measure', await writeProject(SAMPLE))) as {
      motifs: Record<string, never>[]
    }
    expect(motifs).toHaveLength(1)
    const motif = motifs[0] as unknown as {
      id: string
      overTips: number
      overValleys: number
      range: { low: number; high: number }
      outline: [number, number][]
      anchors: Record<string, unknown>[]
    }
    expect(motif).toMatchObject({
      id: 'm1',
      overTips: 78,
      overValleys: 52,
      rounds: [],
      stitches: {},
      metres: {},
    })
    expect(motif.range.low).toBeLessThan(78)
    expect(motif.range.high).toBeGreaterThan(78)
    expect(motif.outline.length).toBeGreaterThan(30)
    expect(motif.outline.every((point) => Array.isArray(point) && point.length === 2)).toBe(true)
    expect(Math.max(...motif.outline.map(([x, y]) => Math.hypot(x, y)))).toBeCloseTo(39, 6)
    for (const anchor of motif.anchors)
      expect(Object.keys(anchor)).toEqual(expect.arrayContaining(['id', 'kind', 'petal', 'x', 'y']))
  })

  it('tells people the sizes in their own units', async () => {
    expect((await petalyard('measure', await writeProject(SAMPLE))).out).toContain('Tip to tip     78 mm')
    const imperial = await petalyard('measure', await writeProject({ ...SAMPLE, units: 'imperial' }))
    expect(imperial.out).toContain('Tip to tip     3⅛ in')
  })
})

describe('the joining round of plan', () => {
  const FLOWER = {
    ...SAMPLE,
    terms: 'US',
    motifs: [
      {
        ...{ id: 'm1', name: 'Flower', kind: 'rounds', foundation: { ring: 'chain', chains: 6 } },
        rounds: [
          'ch 1, 8 sc in ring, join with sl st in first sc',
          'ch 1, *sc in next sc, ch 5, sk next sc; rep from * 3 more times, join with sl st in first sc',
          '(sc, hdc, 2 dc, ch 3, 2 dc, hdc, sc) in each ch-5 sp around, join with sl st in first sc',
        ].map((work) => ({ slot: 'petals', work })),
      },
    ],
    layout: { kind: 'blanket', arrangement: 'straight-rows', motif: 'm1', columns: 3, rows: 1 },
  }

  it('is told for each way in which motifs are joined, as JSON and for people', async () => {
    const file = await writeProject({ ...FLOWER, joining: { rule: 'tips' } })
    const { joiningRounds } = await json('plan', file)
    const words =
      'Rnd 3: (Sc, hdc, 2 dc, ch 3, 2 dc, hdc, sc) in each of next 3 ch-5 sps, ' +
      '(sc, hdc, 2 dc, ch 1, sl st in corresponding ch-3 sp of neighbor, ch 1, 2 dc, hdc, sc) in next ch-5 sp; ' +
      'join with sl st in first sc.'
    expect(joiningRounds).toEqual([
      {
        ...{ motif: 'm1', name: 'Flower', kind: 'motif', title: 'Not joined to a neighbor yet' },
        ...{ labels: ['1'], joins: 0, round: 3, words: 'Work Rnd 3 as written.', inFull: true },
      },
      {
        ...{ motif: 'm1', name: 'Flower', kind: 'motif', title: 'Joined at petal 4', labels: ['2', '3'] },
        ...{ joins: 1, round: 3, words, inFull: true },
      },
    ])
    const { out } = await petalyard('plan', file)
    expect(out.replace(/\s+/g, ' ')).toContain(
      `Joining round Not joined to a neighbor yet: motif 1 Work Rnd 3 as written. Joined at petal 4: 2 motifs: 2 and 3 ${words}`,
    )
    const sewn = await writeProject({ ...FLOWER, joining: { rule: 'seam' } })
    expect((await json('plan', sewn)).joiningRounds).toEqual([])
    expect((await petalyard('plan', sewn)).out).not.toContain('Joining round')
  })
})

describe('plan', () => {
  it('gives the fields of the contract, unrounded, without −0 or NaN', async () => {
    const file = await writeProject(SAMPLE)
    const ran = await petalyard('plan', file, '--json')
    const plan = JSON.parse(ran.out) as Plan
    const {
      settled,
      motif: _motif,
      fillerMotifs: _fillers,
      accounts: _accounts,
      ...rest
    } = planProject(SAMPLE)
    // One number for each of these, its range beside it.
    const inNumbers = ({ yarns, minutes }: Pick<Plan['progress']['left'], 'yarns' | 'minutes'>) => ({
      yarns: yarns.map((yarn) => ({ ...yarn, metres: yarn.metres!.expected, metresRange: yarn.metres })),
      minutes: minutes!.expected,
      minutesRange: minutes,
    })
    const { progress } = rest
    const told = {
      ...rest,
      // Nothing is left out of it: each stands where the lattice has it.
      motifs: rest.motifs.map((motif) => ({ ...motif, place: motif.column })),
      ...inNumbers(rest),
      joiningRounds: joiningRounds(planProject(SAMPLE), 'US'),
      wholeCost: wholeCost(rest.yarns, settled.yarns),
      progress: { ...progress, left: { ...progress.left, ...inNumbers(progress.left) } },
    }
    expect(plan).toEqual(JSON.parse(JSON.stringify(told)))
    expect(Object.keys(plan)).toEqual(
      expect.arrayContaining([
        ...['size', 'counts', 'pitch', 'motifs', 'joins', 'order', 'yarns', 'ends', 'minutes', 'findings'],
      ]),
    )
    expect(plan.counts).toMatchObject({ motifs: 30, byColourway: { c1: 15, c2: 15 } })
    expect(plan.motifs).toHaveLength(30)
    expect(plan.order).toHaveLength(30)
    expect(plan.pitch.rows).toHaveLength(2)
    expect(plan.size.height).toBe(planProject(SAMPLE).size.height)
    expect(ran.out).not.toMatch(/-0[,\s]|NaN|Infinity/)
    for (const leaf of leaves(plan.motifs)) expect(leaf).not.toBeNull()
  })

  it('fits into 80 columns, names its units and has no colours', async () => {
    const names = {
      ...SAMPLE,
      yarns: SAMPLE.yarns?.map((yarn) => ({ ...yarn, name: `${yarn.name} ${'毛糸 '.repeat(20)}` })),
    }
    for (const project of [SAMPLE, { ...SAMPLE, units: 'imperial' as const }, names]) {
      const ran = await petalyard('plan', await writeProject(project))
      for (const line of ran.out.split('\n')) expect(stringWidth(line), line).toBeLessThanOrEqual(80)
      // eslint-disable-next-line no-control-regex
      expect(ran.out).not.toMatch(/\u001b/)
    }
  })

  it('tells size, motifs, joins and the first steps; --order tells all of them', async () => {
    const file = await writeProject(SAMPLE)
    const short = (await petalyard('plan', file)).out
    expect(short).toMatch(/^Harbour window throw\n\nSize {5}\d/)
    expect(short).toContain('30 in offset rows: A 15, B 15')
    expect(short).toContain('… and 27 more')
    const whole = (await petalyard('plan', file, '--order')).out
    expect(whole).toMatch(/^30 {2}row 5, motif \d:/m)
    expect(whole).not.toContain('more: --order')
  })

  it('tells the findings alone where nothing can be arranged', async () => {
    const ran = await petalyard(
      'plan',
      await writeProject({ ...SAMPLE, layout: { kind: 'blanket', motif: 'm9' } }),
    )
    expect(ran.code).toBe(1)
    expect(ran.out).toMatch(/^Harbour window throw\n\nerror {4}/)
    expect(ran.out).not.toContain('Size')
  })
})

describe('fit', () => {
  it('gives the arrangements nearest the wish, what holds first', async () => {
    const file = await writeProject(SAMPLE)
    const found = await json('fit', file, '--width', '1300', '--height', '1600')
    const arrangements = found.arrangements as FitArrangement[]
    expect(arrangements.length).toBeGreaterThan(2)
    const errors = arrangements.map((fit) => {
      const { width, height } = fit.error
      return Math.abs(width) / 1300 + Math.abs(height) / 1600
    })
    expect(errors).toEqual([...errors].sort((a, b) => a - b))
    for (const fit of arrangements) expect(fit).toMatchObject({ pieces: 1, single: 0 })
    for (const fit of arrangements)
      expect(Object.keys(fit)).toEqual(
        expect.arrayContaining([
          'arrangement',
          'columns',
          'rows',
          'rings',
          'turn',
          'alternateTurn',
          'pieces',
          'single',
          'size',
          'error',
          'motifs',
          'yarns',
        ]),
      )
  })

  it('and `plan` say in words and numbers how it holds', async () => {
    const petals = { id: 'm1', kind: 'measured', outline: 'petals', petals: 7, overTips: 82, overValleys: 60 }
    const file = await writeProject({
      format: 'petalyard-project',
      version: 1,
      motifs: [petals],
      layout: { kind: 'blanket', motif: 'm1', arrangement: 'offset-rows', columns: 16, rows: 24 },
    })
    expect(await json('plan', file)).toMatchObject({ pieces: 24, single: 48 })
    expect((await petalyard('plan', file)).out).toMatch(/^Holds +falls into 24 pieces, and 48 motifs hang/m)
    const told = (await petalyard('fit', file, '--width', '1300', '--height', '1600')).out
    expect(told.slice(0, told.indexOf('Falls') + 1 || undefined)).toMatch(
      /offset rows, \d+ × \d+, rotated [\d.]+°, every other row 25.7° more\n.*\n {2}Holds in one piece\./,
    )
  })

  it('tells for a child how wide openings stay, and begins with those that no hand fits through', async () => {
    const octagon = { id: 'm', kind: 'measured', outline: 'octagon', sideToSide: 100 }
    const layout = { kind: 'blanket', motif: 'm', arrangement: 'straight-rows', columns: 8, rows: 8 }
    const of = {
      format: 'petalyard-project',
      version: 1,
      joining: { rule: 'edges' },
      motifs: [octagon],
      layout,
    }
    const asked = ['--width', '900', '--height', '1100']
    const told = (await petalyard('fit', await writeProject({ ...of, forChild: true }), ...asked)).out
    expect(told).toMatch(/For a child, what has no openings of 25 mm or more comes first: small hands/)
    const wide = [...told.matchAll(/Leaves openings of about ([\d.]+) mm/g)].map(([, mm]) => Number(mm) >= 25)
    expect(wide[0]).toBe(false)
    expect(wide.at(-1)).toBe(true)
    const plain = (await petalyard('fit', await writeProject(of), ...asked)).out
    // For nobody small their rows decide; squares of their sides, 100 / (1 + √2) mm, stay open between them.
    expect(plain).not.toMatch(/small hands/)
    expect(plain).toMatch(
      /^\nstraight rows[^\n]*\n(?: {2}.*\n)*? {2}Leaves openings of about 41\.4 mm between motifs\./m,
    )
  })

  it('takes the size wished for in the project where none is given', async () => {
    const target = { width: 900, height: 700 }
    const file = await writeProject({ ...SAMPLE, layout: { ...SAMPLE.layout, target } })
    expect((await petalyard('fit', file)).out).toContain('Closest fit to 90 × 70 cm')
    expect((await petalyard('fit', file, '--width', '1000')).out).toContain('Closest fit to 100 × 70 cm')
  })

  it.each([
    ['1300', 'Closest fit to 130 × 160 cm'],
    ['1300.0 mm', 'Closest fit to 130 × 160 cm'],
    ['130cm', 'Closest fit to 130 × 160 cm'],
    ['1.3 m', 'Closest fit to 130 × 160 cm'],
    ['51 in', 'Closest fit to 129.5 × 160 cm'],
  ])('takes a width of %j', async (width, told) => {
    const file = await writeProject({ ...SAMPLE, yarns: [], colourways: [] })
    expect((await petalyard('fit', file, '--width', width, '--height', '160cm')).out).toContain(told)
  })

  it('tells what so many motifs and the yarn on hand make', async () => {
    const file = await writeProject(SAMPLE)
    const found = await json('fit', file, '--motifs', '120')
    for (const { motifs, left } of found.arrangements as FitArrangement[]) expect(motifs + left!).toBe(120)
    const told = await petalyard('fit', file, '--motifs', '120')
    expect(told.out).toMatch(/^From 120 motifs\n/)
    expect(told.out).toContain('left over')
    const rich = { ...SAMPLE, yarns: SAMPLE.yarns!.map((yarn) => ({ ...yarn, onHandGrams: 500 })) }
    const stash = await petalyard('fit', await writeProject(rich), '--stash')
    expect(stash.out).toMatch(/^The largest from the yarn on hand\n/)
    for (const options of [
      ['--stash', '--motifs', '3'],
      ['--stash', '--width', '900'],
      ['--motifs', '0'],
      ['--count', '61', '--motifs', '3'],
      ['--count', '0'],
    ])
      expect((await petalyard('fit', file, ...options)).code).toBe(2)
  })

  it('tells arrangements with so many motifs, in the shape that is cut out, and what they are off', async () => {
    const outlineShape = { kind: 'hexagon', size: 600 }
    const file = await writeProject({ ...SAMPLE, layout: { ...SAMPLE.layout, outlineShape } as never })
    const found = (await json('fit', file, '--count', '61')).arrangements as FitArrangement[]
    expect(found.length).toBeGreaterThan(0)
    for (const { motifs, more } of found) expect(motifs).toBe(61 + more!)
    expect(found.some(({ more }) => more === 0)).toBe(true)
    const told = await petalyard('fit', file, '--count', '61')
    expect(told.out).toMatch(/^With 61 motifs, or the nearest number\n/)
    expect(told.out).toContain('61 motifs, as asked')
  })

  it('keeps what there is to the proportions that are asked for', async () => {
    const file = await writeProject(SAMPLE)
    const strip = (await json('fit', file, '--motifs', '48', '--width', '1500', '--height', '200'))
      .arrangements as FitArrangement[]
    const square = (await json('fit', file, '--motifs', '48', '--width', '500', '--height', '500'))
      .arrangements as FitArrangement[]
    const ratio = ({ size }: FitArrangement) => size.width / size.height
    expect(ratio(strip[0]!)).toBeGreaterThan(3)
    expect(ratio(square[0]!)).toBeLessThan(2)
  })

  it('--exactly tells ways to the size, one side of which may be left open', async () => {
    const target = { width: 900, height: 700 }
    const file = await writeProject({ ...SAMPLE, layout: { ...SAMPLE.layout, target } as never })
    const found = await json('fit', file, '--exactly', '--width', '1000')
    const ways = found.ways as SizeWay[]
    expect(ways.length).toBeGreaterThan(2)
    for (const way of ways) {
      expect(Object.keys(way)).toEqual(expect.arrayContaining(['change', 'size', 'yarns', 'edit']))
      expect(way.error).toEqual({ width: way.size.width - 1000 })
    }
    const told = (await petalyard('fit', file, '--exactly', '--width', '1000')).out
    expect(told).toMatch(/^Ways to 100 cm wide\n\n/)
    expect(told).toContain(ways[0]!.change.slice(0, 20))
    expect((await petalyard('fit', file, '--exactly')).out).toContain('Ways to 90 × 70 cm')
    const { arrangements } = await json('fit', file, '--exactly')
    expect(arrangements).toEqual((await json('fit', file)).arrangements)
    expect((await petalyard('fit', file, '--exactly', '--stash')).code).toBe(2)
    expect((await petalyard('fit', await writeProject(SAMPLE), '--exactly')).err).toContain('which size?')
  })

  it('asks for a size where there is none', async () => {
    const ran = await petalyard('fit', await writeProject(SAMPLE))
    expect(ran).toMatchObject({ code: 2, out: '' })
    expect(ran.err).toContain('which size?')
    for (const width of ['wide', '0', '-5', '', 'NaN', 'Infinity'])
      expect((await petalyard('fit', 'x', '--width', width)).code).toBe(2)
  })
})

describe('a project is only read', () => {
  it('by every command', async () => {
    const file = await writeProject(SAMPLE)
    const before = await readFile(file, 'utf8')
    for (const args of [['check'], ['measure'], ['plan'], ['fit', '--width', '900', '--height', '900']])
      await petalyard(args[0] ?? '', file, ...args.slice(1))
    expect(await readFile(file, 'utf8')).toBe(before)
  })
})
