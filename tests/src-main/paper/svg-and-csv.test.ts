// @vitest-environment jsdom
import { describe, expect, it } from 'vitest'
import { drawPath, drawText, useAt } from '../../../src-core/figures/figure'
import { circlePath, rectanglePath } from '../../../src-core/figures/path'
import { csvTable, orderCsv, yarnCsv } from '../../../src-main/paper/csv'
import { mapPages } from '../../../src-main/paper/index'
import { figureToSvg } from '../../../src-main/paper/svg'
import { DATE, flowers, planned } from './projects'
import { settled } from '../../../src-core/settled'

const { project, plan } = planned(flowers({ columns: 4, rows: 3 }))
const parse = (svg: string): Document => new DOMParser().parseFromString(svg, 'image/svg+xml')

describe('a figure as SVG', () => {
  it('is well-formed, measured in mm, with every symbol once and every use of it', () => {
    const svg = parse(figureToSvg(mapPages(plan, { date: DATE })[0]!.figure, 'Overview'))
    const root = svg.documentElement
    expect(root.getAttribute('width')).toBe('210mm')
    expect(root.getAttribute('viewBox')).toBe('0 0 210 297')
    expect(svg.querySelector('title')?.textContent).toBe('Overview')
    const uses = [...svg.querySelectorAll('use')]
    expect(uses.length).toBeGreaterThanOrEqual(12)
    for (const use of uses) expect(svg.getElementById(use.getAttribute('href')!.slice(1))).not.toBeNull()
    for (const clip of svg.querySelectorAll('[clip-path]')) {
      const id = /#(.+)\)/.exec(clip.getAttribute('clip-path')!)![1]!
      expect(svg.getElementById(id)).not.toBeNull()
    }
  })

  it('escapes text and drops what XML cannot hold', () => {
    const figure = { width: 10, height: 10, items: [drawText('<b>&"\u0001\u009b\u202e\ud800', 1, 2, 8)] }
    const svg = parse(figureToSvg(figure, '</title><script>'))
    expect(svg.querySelector('text')?.textContent).toBe('<b>&"\ufffd\ufffd\ufffd\ufffd')
    expect(svg.querySelector('script')).toBeNull()
  })

  it('keeps paint, dashes, caps, groups and clips', () => {
    const symbol = {
      id: 's',
      bounds: { x: -1, y: -1, width: 2, height: 2 },
      items: [drawPath(circlePath(0, 0, 1), { fill: '#112233' })],
    }
    const svg = figureToSvg({
      width: 10,
      height: 10,
      items: [
        useAt(symbol, 3, 4),
        useAt(symbol, 5, 6),
        {
          kind: 'group',
          matrix: [1, 0, 0, 1, 2, 0],
          clip: rectanglePath(0, 0, 5, 5),
          items: [
            drawPath(rectanglePath(0, 0, 9, 9), {
              stroke: '#000000',
              width: 0.2,
              dash: [1, 2],
              cap: 'round',
            }),
          ],
        },
      ],
    })
    expect(svg.match(/<g id="symbol-1">/g)).toHaveLength(1)
    expect(svg.match(/<use /g)).toHaveLength(2)
    expect(svg).toContain('stroke-dasharray="1 2"')
    expect(svg).toContain('stroke-linecap="round"')
    expect(svg).toContain('clip-path="url(#clip-1)"')
    expect(svg).toContain('transform="matrix(1 0 0 1 2 0)"')
  })
})

describe('lists as CSV', () => {
  it('has a line for each motif in the order of work, ended as RFC 4180 says', () => {
    const lines = orderCsv(plan).split('\r\n')
    expect(lines[0]).toBe('number,row,motif,colourway,name,how it is joined')
    expect(lines).toHaveLength(plan.order.length + 2)
    expect(lines.slice(1, -1).map((line) => line.split(',')[0])).toEqual(
      plan.order.map((_, i) => String(i + 1)),
    )
  })

  it('has a line for each yarn in both systems, with no more digits than mean something', () => {
    const [head, first] = yarnCsv(plan).split('\r\n')
    const cells = Object.fromEntries(head!.split(',').map((name, i) => [name, first!.split(',')[i]]))
    const need = plan.yarns[0]!
    expect(Number(cells.grams)).toBeCloseTo(need.grams.expected, 2)
    for (const cell of Object.values(cells)) expect(cell).not.toMatch(/\.\d{3}/)
    // 1 oz is 28.349523125 g exactly (international yard and pound agreement of 1959).
    expect(Number(cells.ounces)).toBeCloseTo(need.grams.expected / 28.349523125, 2)
    expect(cells.yarn).toBe('Brick')
  })

  it('quotes what needs it and lets no name run as a formula', () => {
    const named = {
      ...project,
      yarns: project.yarns!.map((yarn, i) => ({
        ...yarn,
        name: i === 0 ? '=HYPERLINK("x")' : 'Sea, "glass"',
      })),
    }
    const csv = yarnCsv({ ...plan, settled: settled(named) })
    expect(csv).toContain(`"'=HYPERLINK(""x"")"`)
    expect(csv).toContain('"Sea, ""glass"""')
  })

  it.each([
    '=1+1',
    '+1',
    '-1',
    '@a',
    '\t=1',
    '\r=1',
    '\n=1',
    ' =1',
    '\u00a0=1',
    '\ufeff=1',
    '\u0000=1',
    '\u0085=1',
    '\u202e=1',
    '＝1',
    '＋1',
    '－1',
    '＠a',
  ])('shows %j as text', (text) => {
    const shown = csvTable([[text]]).replace(/^"/, '')
    // Line breaks become blanks, what nobody sees is left out; a tab stays.
    const seen = text
      .replace(/[\r\n\u0085]/u, ' ')
      .replace('\u0000', '')
      .replace('\u202e', '')
    expect(shown.startsWith(`'${seen}`)).toBe(true)
  })

  it.each([
    ['a;=1', `"a;'=1"`],
    ['a; +1;b', `"a;' +1;b"`],
    ['a\t@b', `"a\t'@b"`],
    ['a; b', '"a; b"'],
  ])('keeps %j in one cell, and as text where its sign parts cells', (text, shown) => {
    expect(csvTable([[text]])).toBe(`${shown}\r\n`)
  })

  it.each(['\n', '\r\n', '\r', '\v', '\f', '\u0085', '\u2028', '\u2029', '\n\n', '\n\t', ';\n', '\t\n'])(
    'begins neither a line nor a cell with a formula behind %j',
    (between) => {
      for (const sign of ['=', '+', '-', '@', '\t', '\r', '＝']) {
        const csv = csvTable([['x', `Moss${between}${sign}1+1`]])
        expect(csv.match(/[\r\n\v\f\u0085\u2028\u2029]/g)).toEqual(['\r', '\n'])
        for (const part of csv.trimEnd().split(/[,;\t|]/)) expect(part).not.toMatch(/^"?\s*[=+\-@＝]/)
      }
    },
  )

  it('has nothing that a terminal would obey', () => {
    expect(csvTable([['a\u001b]0;x\u0007b\u009b\u007f\u202ec']])).toBe('"a]0;xbc"\r\n')
  })

  it.each(['a=1', '12 mm', 'A - B', ''])('leaves %j as it is', (text) => {
    expect(csvTable([[text]])).toBe(`${text}\r\n`)
  })
})
