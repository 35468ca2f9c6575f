import { describe, expect, it } from 'vitest'
import { drawingTrouble } from '../../../src-core/geometry/drawing-cost'

const svg = (content: string, before = '', attributes = '') =>
  `${before}<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="9" height="9" ${attributes}>${content}</svg>`

/** Ten times ten times ten …: each group is the one before it ten times over. */
const doubled = (levels: number, use = '<use href="#u0"/>') =>
  '<g id="u0"><rect width="1" height="1"/></g>' +
  Array.from({ length: levels }, (_, i) => {
    const uses = use.replace('#u0', `#u${i}`).repeat(10)
    return `<g id="u${i + 1}">${uses}</g>`
  }).join('')

const PRIMITIVES = '<filter id="f"><feGaussianBlur stdDeviation="2"/><feOffset dx="1"/></filter>'
const RECT = '<rect width="5" height="5"/>'
const rects = (count: number, more: string) => RECT.replace('/>', ` ${more}/>`).repeat(count)

describe('a drawing is drawn', () => {
  it.each<[string, string]>([
    ['that is plain', svg('<path d="M0 0h9v9z" fill="#f00" style="opacity:.5"/>')],
    ['of some thousand shapes, half of them see-through', svg(rects(4_000, 'opacity=".5"'))],
    ['with parts that are used again', svg(doubled(2))],
    ['with a shadow on a few parts', svg(PRIMITIVES + rects(30, 'filter="url(#f)"'))],
    [
      'with colours that run on each of its parts',
      svg(
        `<style>.a{fill:url(#c)}</style><linearGradient id="c">${'<stop offset="0"/>'.repeat(50)}</linearGradient>` +
          rects(2_000, 'class="a"'),
      ),
    ],
    ['with a photo in it', svg(`<image href="data:image/png;base64,${'A'.repeat(4_500_000)}"/>`)],
    [
      'with names for addresses, as some programs write them',
      svg(
        RECT,
        '<!DOCTYPE svg [<!ENTITY ns_svg "http://www.w3.org/2000/svg">\n<!ENTITY a \'b\'>]>',
        'xmlns:a="&ns_svg;"',
      ),
    ],
    [
      'with stitching round it in dashes, as a logo may have',
      svg(
        `<g stroke-dasharray="6 4">${'<circle cx="500" cy="500" r="480"/><path d="M20 20H980V980H20z"/>'.repeat(20)}</g>`,
      ),
    ],
    [
      'with fine dashes that nothing is drawn in',
      svg(`<g stroke-dasharray=".001"/><g>${rects(2_000, '')}</g>`),
    ],
    [
      'with dashes that its parts take back',
      svg(`<g stroke-dasharray=".001">${rects(2_000, 'stroke-dasharray="none"')}</g>`),
    ],
    ['with part of it naming itself', svg('<g id="a"><use href="#a"/></g>')],
  ])('%s', (_name, text) => expect(drawingTrouble(text)).toBeNull())
})

describe('a drawing is refused', () => {
  it.each<[string, string, string]>([
    ['no-xml', 'that cannot be read to its end', '<svg><g>'],
    ['too-much', 'with each part ten times in the next', svg(doubled(12))],
    ['too-much', 'the same by its older name', svg(doubled(12, '<use xlink:href="#u0"/>'))],
    [
      'too-much',
      'the same by patterns in a style',
      svg(doubled(12, '<rect width="9" height="9" style="fill:url(#u0)"/>')),
    ],
    ['too-much', 'of more shapes than anybody sees', svg(RECT.repeat(30_000))],
    [
      'too-much',
      'with filters over filters',
      svg(`<filter id="f">${'<feFlood/>'.repeat(2_000)}</filter>${rects(2_000, 'filter="url(#f)"')}`),
    ],
    [
      'too-much',
      'the same by the classes of a style sheet',
      svg(
        `<style>.b{filter:url('#f')}</style><filter id="f">${'<feFlood/>'.repeat(100)}</filter>` +
          rects(200, 'class="a b"'),
      ),
    ],
    [
      'too-much',
      'the same by a style of every element',
      svg(
        `<style>rect{filter:url(#f)}</style><filter id="f">${'<feFlood/>'.repeat(100)}</filter>${rects(300, '')}`,
      ),
    ],
    [
      'too-much',
      'the same in capitals and escapes, one rule within another',
      svg(
        `<style>svg{F\\49LTER:\\75 rl(#f);.x{color:red}}</style><filter id="f">${'<feFlood/>'.repeat(100)}</filter>${rects(300, '')}`,
      ),
    ],
    [
      'too-much',
      'that becomes it in time',
      svg(doubled(12, '<use><set attributeName="href" to="#u0"/></use>')),
    ],
    [
      'too-much',
      'with much at each corner of a line',
      svg(
        `<marker id="m">${RECT.repeat(100)}</marker><path marker-mid="url(#m)" d="M${'1 1 '.repeat(1_000)}"/>`,
      ),
    ],
    ['too-much', 'with see-through groups side by side', svg(`<g opacity=".9">${RECT}</g>`.repeat(400))],
    ['too-much', 'of an endless line', svg(`<path d="M${'1 1 '.repeat(1_100_000)}"/>`)],
    ['too-much', 'of hair-fine dashes', svg(`<g stroke-dasharray=".0001">${rects(30, '')}</g>`)],
    [
      'too-much',
      'the same in one style',
      svg(`<style>rect{stroke-dasharray:1e-3 1e-3}</style>${rects(900, '')}`),
    ],
    [
      'too-much',
      'the same by a class of what is named',
      svg(
        `<style>.a{STROKE-DASHARRAY: .001px !important}</style><g id="u">${rects(30, '')}</g>` +
          '<g class="a"><use href="#u"/></g>'.repeat(10),
      ),
    ],
    [
      'too-much',
      'the same where the unit is a letter’s or the line tells a length of its own',
      svg(rects(3, 'font-size="1e-4" stroke-dasharray="1em" pathLength="1e9"')),
    ],
    ...[
      '<feTurbulence numOctaves="1000"/>',
      '<feTurbulence/>',
      '<feMorphology operator="dilate" radius="90"/>',
      '<feConvolveMatrix order="100" kernelMatrix="1"/>',
      '<svg:FEMorphology xmlns:svg="http://www.w3.org/2000/svg"/>',
    ].map((effect): [string, string, string] => [
      'effect',
      `with ${effect}`,
      svg(`<filter id="f">${effect}</filter>${rects(1, 'filter="url(#f)"')}`),
    ]),
    ['too-deep', 'of groups in groups', svg('<g>'.repeat(1_000) + '</g>'.repeat(1_000))],
    ['attributes', 'of an element that says too much', svg(`<g ${Array.from({ length: 9_000 }, (_, i) => `a${i}="1"`).join(' ')}/>`)], // prettier-ignore
    [
      'entities',
      'of words that stand for words',
      svg('<desc>&b;</desc>', '<!DOCTYPE svg [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;">]>'),
    ],
    [
      'entities',
      'of words that stand for elements',
      svg('&a;', '<!DOCTYPE svg [<!ENTITY a "<g><use/></g>">]>'),
    ],
    ['entities', 'with declarations from elsewhere', svg('&a;', '<!DOCTYPE svg [<!ENTITY a SYSTEM "x">]>')],
    [
      'web-page',
      'with a web page in it',
      svg('<foreignObject><div xmlns="http://www.w3.org/1999/xhtml"/></foreignObject>'),
    ],
    ['drawing-within', 'with a drawing as a picture', svg('<image href="data:image/svg+xml;base64,AAAA"/>')],
    [
      'drawing-within',
      'the same in a style',
      svg('<style>rect{mask:url("data:image/svg+xml,x")}</style>' + RECT),
    ],
  ])('%s: %s', (trouble, _name, text) => expect(drawingTrouble(text)).toBe(trouble))
})
