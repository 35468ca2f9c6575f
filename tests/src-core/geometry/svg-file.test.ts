import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  MOST_DEPTH,
  MOST_ELEMENTS,
  MOST_FILE_CHARACTERS,
  MOST_LINES,
  pathInMillimetres,
  PIXEL,
  readSvgFile,
} from '../../../src-core/geometry/svg-file'
import { readPath } from '../../../src-core/geometry/svg-path'
import { boxOf } from '../../../src-core/geometry/points'
import { processorTime } from '../../processor-time'

const svg = (inside: string, attributes = 'width="300mm" height="200mm" viewBox="0 0 600 400"') =>
  `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${inside}</svg>`
const PANEL = '<path id="front" d="M 20 20 H 580 V 380 H 20 Z"/>'

function drawing(text: string) {
  const read = readSvgFile(text)
  if ('trouble' in read) throw new Error(JSON.stringify(read.trouble))
  return read.drawing
}
const trouble = (text: string) => {
  const read = readSvgFile(text)
  return 'trouble' in read ? read.trouble : null
}
/** Corners of the box of a line in mm. */
function boxInMillimetres(text: string, index = 0) {
  const { lines, unit } = drawing(text)
  const read = readPath(pathInMillimetres(lines[index]!, unit ?? 1))
  if ('trouble' in read) throw new Error('no path')
  const { left, top, right, bottom } = boxOf(read.subPaths[0]!.points)
  return [left, top, right, bottom].map((value) => Math.round(value * 100) / 100)
}

describe('an SVG file', () => {
  it('has its size from width and viewBox', () => {
    const read = drawing(svg(PANEL))
    expect(read.unit).toBeCloseTo(0.5, 12)
    expect(read.lines).toMatchObject([{ name: 'front', closed: true, width: 560, height: 360 }])
    expect(boxInMillimetres(svg(PANEL))).toEqual([10, 10, 290, 190])
  })

  it.each([
    ['width="10cm" viewBox="0 0 200 100"', 0.5],
    ['height="4in" viewBox="0 0 254 254"', 0.4],
    ['width="72pt" height="72pt" viewBox="0 0 72 72"', 25.4 / 72],
    ['width="6pc" viewBox="0,0,1,1"', 25.4],
    ['width="400Q" viewBox="0 0 100 100"', 1],
    // Sheets of other proportions: the whole drawing fits in (SVG 1.1, 7.8: xMidYMid meet).
    ['width="300mm" height="100mm" viewBox="0 0 100 100"', 1],
    ['width="300mm" height="100mm" viewBox="0 0 100 100" preserveAspectRatio="none"', null],
    // Without a viewBox a unit is a pixel: 96 to the inch.
    ['width="300mm" height="100mm"', PIXEL],
    ['width="300px" height="100px" viewBox="0 0 300 100"', null],
    ['width="300" viewBox="0 0 300 100"', null],
    ['width="100%" viewBox="0 0 300 100"', null],
    ['width="1e9mm" viewBox="0 0 300 100"', null],
    ['width="30mm" viewBox="0 0 0 0"', null],
    ['', null],
  ])('%s: a unit is %s mm', (attributes, unit) => {
    const read = drawing(svg(PANEL, attributes)).unit
    if (unit === null) expect(read).toBeNull()
    else expect(read).toBeCloseTo(unit, 9)
  })

  it('gives every line of it, the largest first, with what moves, turns and scales it', () => {
    const read = drawing(
      svg(`<g transform="translate(100 50)"><g transform="scale(2)">
        <rect x="10" y="20" width="30" height="40"/></g></g>
        <circle cx="300" cy="200" r="100"/><ellipse cx="0" cy="0" rx="4" ry="2"/>
        <polygon points="0,0 10,0 10,10"/><polyline points="0 0 50 5"/><line x1="1" y1="2" x2="30" y2="4"/>
        <rect x="0" y="0" width="40" height="20" rx="5"/><path d="M0 0h9v9z m 20 0 h5v5z l 3 -9 h 3 z"/>
        <path id="gone" d=""/><rect width="0" height="9"/><text>M 0 0 H 9</text>
        <defs><path id="hidden" d="M0 0H999V999Z"/></defs>
        <g style="display: none"><path d="M0 0H998V998Z"/></g>
        <svg viewBox="0 0 1 1"><path d="M0 0H997V997Z"/></svg>`),
    )
    expect(
      read.lines.map(({ name, width, height }) => [name, Math.round(width), Math.round(height)]),
    ).toEqual([
      ['circle', 200, 200],
      ['rectangle', 60, 80],
      ['rectangle', 40, 20],
      ['polygon', 10, 10],
      ['path', 9, 9],
      ['ellipse', 8, 4],
      ['path', 6, 9],
      ['path', 5, 5],
      ['line', 50, 5],
      ['line', 29, 2],
    ])
    const moved = svg(
      '<g transform="translate(100 50)"><rect transform="scale(2)" x="10" y="20" width="30" height="40"/></g>',
    )
    expect(boxInMillimetres(moved)).toEqual([60, 45, 90, 85])
    const turned = svg('<rect transform="rotate(90)" x="10" y="-60" width="30" height="40"/>')
    expect(boxInMillimetres(turned)).toEqual([10, 5, 30, 20])
  })

  it('may have a prefix, a document type without declarations, comments and styles', () => {
    const text = `<?xml version="1.0"?><!-- drawn by hand -->
      <!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">
      <s:svg xmlns:s="http://www.w3.org/2000/svg" width="60mm" viewBox="0 0 60 60">
      <s:style>path { fill: url(http://example.org/x) }</s:style><s:path d="M0 0H60V60Z"/></s:svg>`
    expect(drawing(text)).toMatchObject({ unit: 1, lines: [{ width: 60 }] })
  })

  it.each([
    ['script', svg(`<script>alert(1)</script>${PANEL}`)],
    ['script', svg(`<s:script xmlns:s="x" href="http://example.org/a.js"/>${PANEL}`)],
    ['script', svg(PANEL, 'onload="alert(1)" viewBox="0 0 9 9"')],
    ['script', svg(`<g onClick="alert(1)">${PANEL}</g>`)],
    ['script', svg(`<a xlink:href=" javascript:alert(1)">${PANEL}</a>`)],
    ['script', svg(`<defs><g><script/></g></defs>${PANEL}`)],
    ['entities', `<!DOCTYPE svg [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]>${svg(PANEL).slice(39)}`],
    ['entities', '<!DOCTYPE svg SYSTEM "x" [<!ENTITY e SYSTEM "file:///etc/hosts">]><svg/>'],
    ['no-xml', svg(`<text>&e;</text>${PANEL}`)],
    ['no-xml', svg('<path d="&lol;"/>')],
    ['no-xml', svg(PANEL).slice(0, -6)],
    ['no-xml', svg('<path d="M0 0H9V9Z>')],
    ['no-xml', 'M 0 0 H 300 V 200 Z'],
    ['no-xml', ''],
    ['no-xml', '\u0000\u0001'],
    ['no-svg', '<html><body><svg><path d="M0 0H9V9Z"/></svg></body></html>'],
    ['no-lines', svg('<text>nothing</text>')],
    ['file-too-long', svg(' '.repeat(MOST_FILE_CHARACTERS))],
    ['too-full', svg('<g/>'.repeat(MOST_ELEMENTS))],
    ['too-full', svg('<g>'.repeat(MOST_DEPTH) + PANEL + '</g>'.repeat(MOST_DEPTH))],
    ['too-full', svg(PANEL.replace(' id="front"', '').repeat(MOST_LINES + 1))],
    ['in-element', svg('<path id="wild" d="M 0 0 L 1e999 0"/>')],
    ['in-element', svg('<path d="M 0 0 L NaN 0"/>')],
    ['in-element', svg(`<path d="M0 0${'l1 1'.repeat(6000)}"/>`)],
    ['in-element', svg(`<path d="${'M0 0 '.repeat(30_000)}"/>`)],
    [
      'in-element',
      svg('<path d="M0 0A90000 90000 0 1 1 1 1A90000 90000 0 1 0 0 0"/>'.repeat(1) + '<path d="url(#a)"/>'),
    ],
    ['in-element', svg('<circle cx="a" cy="0" r="9"/>')],
    ['in-element', svg('<polygon points="0,0 9,9 9"/>')],
    ['in-element', svg(`<g transform="scale(1e300)"><g transform="scale(1e300)">${PANEL}</g></g>`)],
    ['in-element', svg(`<g transform="scale(&quot;)">${PANEL}</g>`)],
    ['in-element', svg(`<g transform="scale(1e5)">${PANEL}</g>`)],
  ])('is refused: %s %#', (kind, text) => {
    const began = processorTime()
    expect(trouble(text)?.kind).toBe(kind)
    expect(processorTime() - began).toBeLessThan(3000)
  })

  it('names the element and what is wrong in it', () => {
    expect(trouble(svg('<path id="wild" d="M 0 0 L 1e999 0"/>'))).toEqual({
      kind: 'in-element',
      element: "path 'wild'",
      trouble: { kind: 'number' },
    })
    expect(trouble(svg('<g onload="x"/>'))).toEqual({ kind: 'script', what: 'onload' })
    expect(trouble('<svg>\n  <path d=></svg>')).toMatchObject({ kind: 'no-xml', line: 2 })
  })

  it('of any text at all is answered, quickly', () => {
    const parts = fc.constantFrom(
      ...[
        '<svg viewBox="0 0 9 9">',
        '</svg>',
        '<g transform="rotate(',
        ')">',
        '<path d="M0 0 ',
        'L9 9',
        '"/>',
      ],
      ...['<rect width="', '9', '" height="8"/>', '&amp;', '&x;', '<![CDATA[', ']]>', '<!--', '-->', '1e400'],
    )
    const began = processorTime()
    fc.assert(
      fc.property(fc.array(parts, { maxLength: 30 }), (list) => {
        const read = readSvgFile(list.join(''))
        if ('trouble' in read) return
        for (const { width, height, area } of read.drawing.lines)
          expect([width, height, area].every(Number.isFinite)).toBe(true)
      }),
      { numRuns: 2000 },
    )
    expect(processorTime() - began).toBeLessThan(30_000)
  })
})
