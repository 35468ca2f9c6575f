import type { Project } from '../../../shared-types/project'
import { describe, expect, it } from 'vitest'
import { unpricedWords } from '../../../src-core/figures/yarn-words'
import { planProject } from '../../../src-core/plan'
import { blanketOf, patchBlanket } from '../../../src-renderer/state/edits/layout'
import { ledgerOf, yarnName } from '../../../src-renderer/state/ledger'
import { nudgeField, sentenceParts } from '../../../src-renderer/state/sentence'
import { placeSummary } from '../../../src-renderer/state/summaries'
import { EXAMPLES } from '../../../src-renderer/start/examples'
import { writtenOut } from '../../written-out'
import { example, SMALL } from '../projects'

const plan = planProject(SMALL)

describe('the ledger', () => {
  it('says nothing of differences while nothing is tried', () => {
    const { figures, yarns } = ledgerOf(SMALL, plan, null)
    expect(figures.map((figure) => figure.change).join('')).toBe('')
    expect(yarns.map((yarn) => yarn.change).join('')).toBe('')
  })

  it('tells by how much a change would move everything', () => {
    const more = patchBlanket(SMALL, { rows: 6 })
    const { figures, yarns } = ledgerOf(more, planProject(more), plan)
    expect(figures.find((figure) => figure.name === 'Motifs')?.change).toBe('+10')
    expect(figures.find((figure) => figure.name === 'Size')?.change).toMatch(/^0 × \+/)
    expect(yarns[0]?.change).toMatch(/^\+/)
    const fewer = ledgerOf(SMALL, plan, planProject(more))
    expect(fewer.figures.find((figure) => figure.name === 'Motifs')?.change).toBe('−10')
  })

  it('tells no size of nothing, but the way from nothing to something', () => {
    const empty = { ...SMALL, motifs: [], layout: undefined }
    const none = planProject(empty)
    const size = (figures: ReturnType<typeof ledgerOf>['figures']) =>
      figures.find(({ name }) => name === 'Size')!
    expect(size(ledgerOf(empty, none, null).figures)).toMatchObject({ value: '–', unit: '' })
    expect(size(ledgerOf(SMALL, plan, none).figures).change).toMatch(/^\+.+ × \+/)
    const asked = patchBlanket(SMALL, { target: { width: 1200, height: 1500 } })
    expect(placeSummary('arrangement', asked, none).lines).toEqual([
      'nothing arranged yet',
      'target 120 × 150 cm',
    ])
  })

  it('lets bars stand for the high end of the range', () => {
    const need = plan.yarns[0]!
    expect(ledgerOf(SMALL, plan, null).yarns[0]).toMatchObject({ need: need.grams.high, onHand: 20 })
  })

  it('says what the yarn of the whole costs once some of it is made', () => {
    const sums = (project: Project) =>
      Object.fromEntries(
        ledgerOf(project, planProject(project), null).figures.map(({ name, value }) => [name, value]),
      )
    const bought = { ...SMALL, yarns: SMALL.yarns!.map((yarn) => ({ ...yarn, onHandGrams: 0, price: 4 })) }
    const { balls } = planProject(bought).yarns.reduce((all, need) => ({ balls: all.balls + need.balls! }), {
      balls: 0,
    })
    expect(sums(bought)).not.toHaveProperty('Yarn in all')
    expect(sums(bought)['To buy']).toContain(`${balls * 4}.00`)
    // Made before: nothing of it is to buy any more.
    const made = Object.fromEntries(planProject(bought).motifs.map(({ id }) => [id, '']))
    const all = sums({ ...bought, made })
    expect(all['To buy']).toContain('0.00')
    expect(all['Yarn in all']).toContain(`${balls * 4}.00`)
  })

  it('says how many yarns the sum to buy leaves out, and their names where there is room', () => {
    const yarns = SMALL.yarns!.map((yarn, at) =>
      at === 0 ? { ...yarn, price: 4.2, onHandGrams: 0 } : { ...yarn, price: undefined, onHandGrams: 0 },
    )
    const part = { ...SMALL, yarns }
    const planned = planProject(part)
    const figure = ledgerOf(part, planned, null).figures.find(({ name }) => name === 'To buy')!
    const missing = planned.yarns.filter(({ toBuy, cost }) => toBuy && cost === null)
    const names = missing.map(({ id }) => yarns.find((yarn) => yarn.id === id)!.name!)
    expect(names.length).toBeGreaterThan(0)
    expect(figure.unit).toMatch(new RegExp(`^(\\(assumed\\) )?and ${names.length} unpriced$`))
    const told = unpricedWords(planned.yarns, (id) => yarnName(part, id))
    expect(told).toMatch(/, whose prices? (is|are) not known$/)
    for (const name of names) expect(told).toContain(name)
    // Where all have one, or none has, nothing is left out.
    for (const price of [3, undefined]) {
      const all = { ...SMALL, yarns: yarns.map((yarn) => ({ ...yarn, price })) }
      const told = ledgerOf(all, planProject(all), null).figures.find(({ name }) => name === 'To buy')!
      expect(told.unit).not.toContain('unpriced')
      // Without a price "–" would look like nothing to buy: the skeins are told.
      const skeins = planProject(all).yarns.reduce((sum, { toBuy }) => sum + (toBuy ?? 0), 0)
      if (price === undefined)
        expect([told.value.replace('*', ''), told.unit]).toEqual([
          String(skeins),
          skeins === 1 ? 'skein' : 'skeins',
        ])
    }
  })

  it.each(EXAMPLES.map(({ name }) => ({ name })))(
    'and the sentence say the same of a project with its defaults written out: $name',
    ({ name }) => {
      const left = example(name)
      const written = writtenOut(left)
      const [planned, same] = [planProject(left), planProject(written)]
      expect(ledgerOf(written, same, null)).toEqual(ledgerOf(left, planned, null))
      expect(sentenceParts(written, same)).toEqual(sentenceParts(left, planned))
    },
  )
})

describe('the sentence', () => {
  it('tells the project, with every part that can be changed', () => {
    const parts = sentenceParts(SMALL, plan)
    expect(parts.map((part) => part.text).join('')).toMatch(
      /^20 six-petal flowers of 80 mm in offset rows of 5, joined at their tips, in two colorways one after the other: .* cm\.$/,
    )
    expect(parts.flatMap((part) => part.field ?? [])).toEqual([
      'count',
      'motif',
      'motif-size',
      'arrangement',
      'columns',
      'joining',
      'colours',
      'size',
    ])
  })

  it.each([
    [{ most: { [SMALL.colourways![0]!.id]: 3 } }, true],
    [{ withinStash: true }, true],
    [{ withinStash: false, most: {} }, false],
  ])('says that colours of a repeat have limits: %j', (limit, isSaid) => {
    const layout = blanketOf(SMALL)!
    const cells = { fill: { ...layout.cells?.fill, pattern: 'repeat' as const, ...limit } }
    const limited = { ...SMALL, layout: { ...layout, cells } }
    const said = sentenceParts(limited, planProject(limited)).map(({ text }) => text)
    expect(said.join('').includes('one after the other, as far as they go')).toBe(isSaid)
  })

  it('is nudged part by part', () => {
    const after = (field: Parameters<typeof nudgeField>[0], steps: number, sideways = false) =>
      nudgeField(field, steps, sideways, plan, SMALL)!.edit(SMALL)
    expect(after('columns', 2).layout).toMatchObject({ columns: 7, rows: 4 })
    expect(after('count', -9).layout).toMatchObject({ columns: 5, rows: 1 })
    expect(after('size', 1, true).layout).toMatchObject({ columns: 6 })
    expect(after('arrangement', 1).layout).toMatchObject({ arrangement: 'rings' })
    expect(after('arrangement', -1).layout).toMatchObject({ arrangement: 'straight-rows' })
    expect(after('joining', 1).joining?.rule).toBe('edges')
    expect(after('motif-size', 3).motifs![0]).toMatchObject({ overTips: 83 })
    expect(nudgeField('colours', 1, false, plan, SMALL)).toBeNull()
  })
})

const GATE = example('orchard-gate-garland')
const gate = planProject(GATE)

describe('a garland kit', () => {
  it('is a sentence open to the hand, with one kind of units', () => {
    const parts = sentenceParts(GATE, gate)
    expect(parts.map((part) => part.text).join('')).toBe(
      '15 leaves, 8 six-petal flowers and 6 five-petal flowers, 34 mm apart, on a cord of chains, 223.2 cm long, hung in 3 swags of 70 cm, 110 mm deep: 210 cm of wall, sold as 25 kits at €19.55.',
    )
    expect(new Set(parts.flatMap((part) => part.field ?? []))).toEqual(
      new Set(['count', 'sequence', 'spacing', 'cord', 'swags', 'kit']),
    )
  })

  it('is nudged: count, spacing, cord, swags, kits', () => {
    const after = (field: Parameters<typeof nudgeField>[0], steps: number) =>
      nudgeField(field, steps, false, gate, GATE)!.edit(GATE).layout
    expect(after('count', 2)).toMatchObject({
      spacing: { between: 'edges', count: gate.garland!.items.length + 2 },
    })
    expect(after('spacing', -4)).toMatchObject({ spacing: { mm: 30 } })
    expect(after('cord', 2)).toMatchObject({ swags: { span: 720 } })
    expect(after('swags', -9)).toMatchObject({ swags: { count: 1 } })
    expect(after('kit', 5)).toMatchObject({ kit: { count: 30 } })
  })

  it('tells cord, wall, chains, run and price in the ledger', () => {
    const { figures } = ledgerOf(GATE, gate, null)
    const told = Object.fromEntries(figures.map(({ name, value, unit }) => [name, `${value} ${unit}`.trim()]))
    expect(told).toMatchObject({
      Cord: '223.2 cm',
      Wall: '210 cm',
      'On it': '29',
      Chains: '680',
      'Batch of 25': '€210.35',
      'Kit, with tax': '€19.55',
    })
    const [moss] = ledgerOf(GATE, gate, null).yarns
    expect(moss).toMatchObject({ name: 'Moss', words: '31 g in each · 1 × 1,000 g', short: '' })
    const more = { ...GATE, layout: nudgeField('kit', 5, false, gate, GATE)!.edit(GATE).layout }
    const change = ledgerOf(more, planProject(more), gate).figures.find(({ name }) => name === 'Batch of 30')
    expect(change?.change).toMatch(/^\+€/)
  })

  it('is summed up place by place', () => {
    const lines = (place: Parameters<typeof placeSummary>[0]) => placeSummary(place, GATE, gate).lines
    expect(lines('motif')).toEqual(['Six-petal bloom of 68 mm', 'and 2 others'])
    expect(lines('arrangement')).toEqual(['29 items, 34 mm apart', '3 swags of 70 cm'])
    expect(lines('joins')).toEqual(['two petals, 7 chains between', 'hanging straight down'])
    expect(lines('kit')).toEqual(['25 kits at €19.55 with tax', 'the batch costs €210.35'])
    // 5 motifs in each of 4 rows, of which a triangle leaves fewer.
    const cut = patchBlanket(SMALL, { outlineShape: { kind: 'triangle', size: 420, height: 300 } })
    const shawl = planProject(cut)
    const rows = new Set(shawl.motifs.map(({ row }) => row))
    const longest = Math.max(...[...rows].map((of) => shawl.motifs.filter(({ row }) => row === of).length))
    expect(rows.size).toBeGreaterThan(1)
    expect(placeSummary('arrangement', cut, shawl).lines[0]).toBe(
      `${rows.size} offset rows of up to ${longest}`,
    )
    expect(placeSummary('kit', SMALL, plan).lines).toEqual(['not sold as a kit'])
  })
})

describe('an appliqué', () => {
  const WREATH = example('quince-wreath-cushion')
  const laid = planProject(WREATH)

  it('is a sentence open to the hand too', () => {
    const parts = sentenceParts(WREATH, laid)
    expect(parts.flatMap((part) => part.field ?? [])).toEqual(['items', 'items', 'panel', 'clearance'])
    expect(parts.map((part) => part.text).join('')).not.toContain(' in)')
    expect(nudgeField('clearance', 2, false, laid, WREATH)!.edit(WREATH).layout).toMatchObject({
      clearance: expect.any(Number) as number,
    })
  })

  it('tells its items, the closest two and the thread', () => {
    const names = ledgerOf(WREATH, laid, null).figures.map(({ name }) => name)
    expect(names).toEqual(['Size', 'Items', 'Closest', 'Thread', 'Hours', 'To buy'])
    expect(placeSummary('joins', WREATH, laid).lines[0]).toBe('sewn down')
  })
})

describe('the list of places', () => {
  it('is a summary with its warnings', () => {
    const summary = placeSummary('yarn', SMALL, plan)
    expect(summary.lines[0]).toMatch(/ g in 2 yarns$/)
    // A yarn that nothing uses is not counted.
    const unused = { id: 'y3', name: 'Spare', colour: SMALL.yarns![1]!.colour! }
    const idle = { id: 'c3', motif: 'm1', yarns: { centre: 'y1', petals: 'y3' } }
    const spare = {
      ...SMALL,
      yarns: [...SMALL.yarns!, unused],
      colourways: [...SMALL.colourways!, idle],
    }
    const planned = planProject(spare)
    expect(placeSummary('yarn', spare, planned).lines[0]).toBe(summary.lines[0])
    expect([planned.yarns, planned.findings]).toEqual([plan.yarns, plan.findings])
    // What there is none of does not run short, but is to be bought as well.
    expect(plan.yarns.map(({ toBuy }) => (toBuy ?? 0) > 0)).toEqual([true, true])
    expect(summary.warning).toBe('Brick runs short, 1 other to buy')
    const one = {
      ...SMALL,
      yarns: SMALL.yarns!.map((yarn, at) => (at === 0 ? yarn : { ...yarn, onHandGrams: 5000 })),
    }
    expect(placeSummary('yarn', one, planProject(one)).warning).toBe('Brick runs short')
    expect(placeSummary('motif', SMALL, plan).lines).toEqual(['80 mm tip to tip, measured', '4 g · 15 min'])
    expect(placeSummary('arrangement', SMALL, plan).lines[0]).toBe('offset rows, 5 × 4')
    expect(placeSummary('colours', SMALL, plan).lines).toEqual(['A 10 · B 10'])
  })

  it('says what is amiss in one sentence, whatever the number of those that follow', () => {
    const note = (message: string) =>
      placeSummary('colours', SMALL, plan, [
        {
          code: 'colours/limits-impossible',
          severity: 'warning',
          where: 'layout',
          message,
          mend: '',
          target: {},
        },
      ]).warning
    expect(note('the colours do not fit. This is as close as they come: 1.5 g missing.')).toBe(
      'The colours do not fit',
    )
    expect(note('one petal is 1.5 mm too long.')).toBe('One petal is 1.5 mm too long')
    expect(note('12.5 g of No. 5 are missing')).toBe('12.5 g of No. 5 are missing')
  })

  it('teaches where there is nothing yet', () => {
    const blank = { format: 'petalyard-project', version: 1 } as const
    const empty = planProject(blank)
    expect(placeSummary('motif', blank, empty).lines).toEqual(['none yet'])
    expect(placeSummary('yarn', blank, empty).lines).toEqual(['no yarn yet'])
    expect(placeSummary('colours', blank, empty).lines).toEqual(['no colorways yet'])
  })
})

describe('the examples', () => {
  it('all have a title and a sentence about them, and are those that come with the program', () => {
    expect(EXAMPLES.length).toBeGreaterThanOrEqual(3)
    for (const entry of EXAMPLES) {
      expect(entry.project.title, entry.name).toBeTruthy()
      expect(entry.words, entry.name).toMatch(/[.!?]$/)
      expect(example(entry.name).title).toBe(entry.project.title)
    }
  })
})
