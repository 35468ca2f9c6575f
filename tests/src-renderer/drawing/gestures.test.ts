import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Point } from '../../../shared-types/plan'
import { Gestures } from '../../../src-renderer/drawing/gestures'
import type { Ground } from '../../../src-renderer/drawing/gestures'
import type { Tool } from '../../../src-renderer/drawing/scene'

/** A ground of motifs 40 px wide side by side, named by column and row; a handle in the corner at (500, 500). */
const name = ({ x, y }: Point) =>
  x >= 0 && y >= 0 && x < 400 && y < 400 ? `${Math.floor(x / 40)},${Math.floor(y / 40)}` : null

/** Pointer events, which the test world lacks. */
class TestPointer extends MouseEvent {
  readonly pointerId: number
  readonly pointerType: string
  constructor(type: string, { pointerId = 1, pointerType = 'mouse', ...rest }: PointerEventInit) {
    super(type, rest)
    this.pointerId = pointerId
    this.pointerType = pointerType
  }
}

let heard: unknown[][]
let tool: Tool
let element: HTMLElement
let gestures: Gestures

const tell =
  (what: string) =>
  (...given: unknown[]) =>
    void heard.push([what, ...given])

const ground = (): Ground => ({
  get tool() {
    return tool
  },
  motifAt: name,
  handleAt: ({ x, y }) => (x === 500 && y === 500 ? 'both' : null),
  motifsAlong: (from, to) => {
    const met = new Set<string>()
    for (let i = 0; i <= 400; i++) {
      const id = name({ x: from.x + ((to.x - from.x) * i) / 400, y: from.y + ((to.y - from.y) * i) / 400 })
      if (id) met.add(id)
    }
    return [...met]
  },
  pivotOf: () => ({ x: 100, y: 100 }),
  motifsWithin: ({ left, top, width, height }) => [`${left},${top},${width},${height}`],
  pan: tell('pan'),
  zoom: tell('zoom'),
  select: tell('select'),
  focus: tell('focus'),
  paint: tell('paint'),
  mark: tell('mark'),
  resize: tell('resize'),
  turn: tell('turn'),
  take: tell('take'),
  move: tell('move'),
  line: tell('line'),
  band: tell('band'),
  hover: () => undefined,
  context: tell('context'),
  cursor: () => undefined,
})

beforeEach(() => {
  heard = []
  tool = 'select'
  element = document.createElement('div')
  document.body.append(element)
  gestures = new Gestures(element, ground())
})
afterEach(() => {
  gestures.destroy()
  element.remove()
})

function pointer(type: string, x: number, y: number, extra: PointerEventInit = {}): void {
  element.dispatchEvent(new TestPointer(type, { clientX: x, clientY: y, button: 0, bubbles: true, ...extra }))
}
const down = (x: number, y: number, extra?: PointerEventInit) => pointer('pointerdown', x, y, extra)
const move = (x: number, y: number, extra?: PointerEventInit) => pointer('pointermove', x, y, extra)
const up = (x: number, y: number, extra?: PointerEventInit) => pointer('pointerup', x, y, extra)
const key = (type: string, init: KeyboardEventInit) =>
  document.body.dispatchEvent(new KeyboardEvent(type, { bubbles: true, cancelable: true, ...init }))
const wheel = (init: WheelEventInit) =>
  element.dispatchEvent(new WheelEvent('wheel', { clientX: 10, clientY: 20, cancelable: true, ...init }))
const only = (what: string) => heard.filter(([first]) => first === what)

describe('selecting', () => {
  it('takes the pressed motif, adds with shift, toggles with control', () => {
    for (const extra of [{}, { shiftKey: true }, { ctrlKey: true }, { metaKey: true }]) {
      down(50, 10, extra)
      up(51, 11, extra)
    }
    expect(only('select').map(([, ids, how]) => [ids, how])).toEqual([
      [['1,0'], 'replace'],
      [['1,0'], 'add'],
      [['1,0'], 'toggle'],
      [['1,0'], 'toggle'],
    ])
    expect(only('focus')[0]).toEqual(['focus', '1,0'])
  })

  it('clears with a press beside all motifs, but not with shift', () => {
    down(600, 600)
    up(600, 600)
    down(600, 600, { shiftKey: true })
    up(600, 600, { shiftKey: true })
    expect(only('select')).toEqual([['select', [], 'replace']])
  })

  it('draws a band in any direction and selects what lies in it', () => {
    down(200, 150)
    move(120, 60)
    up(100, 50)
    expect(only('band').at(0)).toEqual(['band', { left: 120, top: 60, width: 80, height: 90 }])
    expect(only('band').at(-1)).toEqual(['band', null])
    expect(only('select')).toEqual([['select', ['100,50,100,100'], 'replace']])
  })

  it('takes a press that wanders a little for a press', () => {
    down(50, 10)
    move(52, 12)
    up(52, 12)
    expect(only('band')).toEqual([])
    expect(only('select')).toEqual([['select', ['1,0'], 'replace']])
  })

  it('opens the menu of a motif, or of none, with the second button', () => {
    element.dispatchEvent(new MouseEvent('contextmenu', { clientX: 50, clientY: 10, cancelable: true }))
    element.dispatchEvent(new MouseEvent('contextmenu', { clientX: 900, clientY: 10, cancelable: true }))
    expect(only('context').map(([, id]) => id)).toEqual(['1,0', null])
  })
})

describe('painting', () => {
  it('meets every motif under a fast stroke, each once', () => {
    tool = 'paint'
    down(10, 10)
    move(390, 10)
    move(10, 10)
    move(390, 390)
    up(390, 390)
    const met = only('paint').flatMap(([, ids]) => ids as string[])
    expect(new Set(met).size).toBe(met.length)
    for (let i = 0; i < 10; i++) expect(met).toContain(`${i},0`)
    for (let i = 0; i < 10; i++) expect(met).toContain(`${i},${i}`)
    expect(only('paint').at(0)).toEqual(['paint', ['0,0'], 'start'])
    expect(only('paint').at(-1)).toEqual(['paint', [], 'end'])
  })

  it('marks as it paints', () => {
    tool = 'mark'
    down(600, 10)
    move(390, 10)
    expect(heard.map(([what]) => what)).toContain('mark')
    expect(heard.map(([what]) => what)).not.toContain('paint')
  })

  it('can begin beside all motifs', () => {
    tool = 'paint'
    down(600, 10)
    move(390, 10)
    up(390, 10)
    expect(only('paint')[0]).toEqual(['paint', [], 'start'])
    expect(only('paint')[1]).toEqual(['paint', ['9,0'], 'move'])
  })

  it('is given up with Escape, and with a second finger, which zooms instead', () => {
    tool = 'paint'
    down(10, 10)
    key('keydown', { key: 'Escape' })
    expect(only('paint').at(-1)).toEqual(['paint', [], 'cancel'])
    move(300, 10)
    up(300, 10)
    expect(only('paint')).toHaveLength(2)
    heard = []
    down(100, 100, { pointerType: 'touch' })
    down(200, 100, { pointerType: 'touch', pointerId: 2 })
    expect(only('paint').at(-1)).toEqual(['paint', [], 'cancel'])
    move(300, 100, { pointerType: 'touch', pointerId: 2 })
    expect(only('zoom')).toEqual([['zoom', 2, { x: 200, y: 100 }]])
    up(300, 100, { pointerType: 'touch', pointerId: 2 })
    move(150, 100, { pointerType: 'touch' })
    up(150, 100, { pointerType: 'touch' })
    expect(gestures.busy).toBe(false)
    expect(only('select')).toEqual([])
  })
})

describe('moving the paper', () => {
  it('pans with the middle button, with the space bar, and with one finger', () => {
    down(10, 10, { button: 1 })
    move(25, 30)
    up(25, 30, { button: 1 })
    expect(only('pan')).toEqual([['pan', 15, 20]])
    heard = []
    pointer('pointerenter', 10, 10)
    key('keydown', { code: 'Space' })
    down(10, 10)
    move(20, 10)
    up(20, 10)
    key('keyup', { code: 'Space' })
    expect(only('pan')).toEqual([['pan', 10, 0]])
    expect(only('select')).toEqual([])
    heard = []
    down(10, 10, { pointerType: 'touch' })
    move(30, 10, { pointerType: 'touch' })
    move(40, 15, { pointerType: 'touch' })
    up(40, 15, { pointerType: 'touch' })
    expect(only('pan')).toEqual([['pan', 10, 5]])
    expect(only('select')).toEqual([])
  })

  it('leaves the space bar to fields and buttons', () => {
    const field = document.createElement('input')
    document.body.append(field)
    pointer('pointerenter', 10, 10)
    const event = new KeyboardEvent('keydown', { code: 'Space', bubbles: true, cancelable: true })
    field.dispatchEvent(event)
    expect(event.defaultPrevented).toBe(false)
    field.remove()
  })

  it('pans with the wheel, sideways with shift, and zooms at the pointer with control', () => {
    wheel({ deltaX: 3, deltaY: 20 })
    wheel({ deltaY: 20, shiftKey: true })
    wheel({ deltaY: 2, deltaMode: 1 })
    expect(only('pan')).toEqual([
      ['pan', -3, -20],
      ['pan', -20, -0],
      ['pan', -0, -48],
    ])
    wheel({ deltaY: -100, ctrlKey: true })
    wheel({ deltaY: 100, ctrlKey: true })
    const [[, larger, at], [, smaller]] = only('zoom') as [[string, number, Point], [string, number, Point]]
    expect(at).toEqual({ x: 10, y: 20 })
    expect(larger).toBeGreaterThan(1)
    expect(larger * smaller).toBeCloseTo(1)
  })
})

describe('dragging to size and rotating', () => {
  it('tells how far a handle was dragged, from start to end', () => {
    down(500, 500)
    move(520, 530)
    up(540, 560)
    expect(only('resize')).toEqual([
      ['resize', 'both', 0, 0, 'start'],
      ['resize', 'both', 20, 30, 'move'],
      ['resize', 'both', 40, 60, 'end'],
    ])
  })

  it('gives the old size back when it is given up', () => {
    down(500, 500)
    move(520, 530)
    pointer('pointercancel', 520, 530)
    expect(only('resize').at(-1)).toEqual(['resize', 'both', 0, 0, 'cancel'])
    expect(gestures.busy).toBe(false)
  })

  it('rotates with the hand round the motif, past half a turn, in steps of 15° with shift', () => {
    tool = 'turn'
    down(100, 60)
    move(140, 100)
    move(100, 140)
    move(60, 100)
    move(62, 88, { shiftKey: true })
    up(62, 88)
    expect(only('turn').map(([, degrees]) => degrees)).toEqual([0, 90, 180, 270, 285, 288])
    expect(only('turn').at(-1)![2]).toBe('end')
  })
})

describe('moving', () => {
  beforeEach(() => (tool = 'move'))

  it('selects what is pressed and not dragged', () => {
    down(50, 10)
    up(51, 11)
    expect(only('select')).toEqual([['select', ['1,0'], 'replace']])
    expect(only('move')).toEqual([])
  })

  it('takes what is dragged and tells how far it is since the start', () => {
    down(50, 10)
    move(60, 30)
    move(70, 20)
    up(70, 20)
    expect(only('take')).toEqual([['take', '1,0', 'replace']])
    expect(only('move')).toEqual([
      ['move', 0, 0, 'start', '1,0'],
      ['move', 10, 20, 'move', '1,0'],
      ['move', 20, 10, 'move', '1,0'],
      ['move', 20, 10, 'end', '1,0'],
    ])
    expect(only('band')).toEqual([])
  })

  it('adds what is dragged with shift, and keeps to the longer way', () => {
    down(50, 10, { shiftKey: true })
    move(60, 30, { shiftKey: true })
    up(60, 30, { shiftKey: true })
    expect(only('take')).toEqual([['take', '1,0', 'add']])
    expect(only('move').at(-1)).toEqual(['move', 0, 20, 'end', '1,0'])
  })

  it('is ten times finer with alt, from where alt is pressed', () => {
    down(50, 10)
    move(70, 10)
    move(90, 10, { altKey: true })
    expect(only('move').at(-1)).toEqual(['move', 22, 0, 'move', '1,0'])
  })

  it('draws a band beside everything, also with a drag', () => {
    down(600, 600)
    move(650, 650)
    up(650, 650)
    expect(only('move')).toEqual([])
    expect(only('select')).toHaveLength(1)
  })

  it('is given up with Escape', () => {
    down(50, 10)
    move(70, 10)
    key('keydown', { key: 'Escape' })
    up(90, 10)
    expect(only('move').at(-1)).toEqual(['move', 0, 0, 'cancel', '1,0'])
  })

  it('takes a finger on a motif for a drag of it, and beside it for a pan', () => {
    down(50, 10, { pointerType: 'touch' })
    move(70, 10, { pointerType: 'touch' })
    up(70, 10, { pointerType: 'touch' })
    expect(only('move')).toHaveLength(3)
    expect(only('pan')).toEqual([])
    down(600, 600, { pointerType: 'touch' })
    move(620, 600, { pointerType: 'touch' })
    move(640, 600, { pointerType: 'touch' })
    expect(only('pan')).toHaveLength(1)
  })
})

describe('drawing a line', () => {
  beforeEach(() => (tool = 'line'))

  it('tells the places of the hand, and not every pixel of them', () => {
    down(50, 10)
    move(51, 10)
    move(60, 10)
    move(60, 40)
    up(60, 40)
    expect(only('line').at(0)).toEqual(['line', [{ x: 50, y: 10 }], 'start'])
    expect(only('line').at(-1)).toEqual([
      'line',
      [
        { x: 50, y: 10 },
        { x: 60, y: 10 },
        { x: 60, y: 40 },
      ],
      'end',
    ])
    expect(only('line')).toHaveLength(4)
  })

  it('is given up with Escape', () => {
    down(50, 10)
    move(60, 10)
    key('keydown', { key: 'Escape' })
    expect(only('line').at(-1)).toEqual(['line', [], 'cancel'])
  })
})

describe('rotating finely', () => {
  it('goes in tenths of a degree with alt', () => {
    tool = 'turn'
    down(140, 100)
    move(140, 102, { altKey: true })
    const [, degrees] = only('turn').at(-1)!
    expect(degrees).toBeCloseTo((Math.atan2(2, 40) * 180) / Math.PI, 1)
    expect(Math.round((degrees as number) * 10)).toBe((degrees as number) * 10)
  })
})
