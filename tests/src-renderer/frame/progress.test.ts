import { fireEvent, screen } from '@testing-library/svelte'
import { describe, expect, it, vi } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import MadeQuestion from '../../../src-renderer/frame/MadeQuestion.svelte'
import MapTable from '../../../src-renderer/frame/MapTable.svelte'
import { isMarked, markPieces, upTo } from '../../../src-renderer/frame/mark-acts'
import { runKey } from '../../../src-renderer/frame/keys'
import { MAP_KEYS } from '../../../src-renderer/frame/map-keys'
import YarnPlace from '../../../src-renderer/places/yarn/YarnPlace.svelte'
import ProgressPlace from '../../../src-renderer/places/progress/ProgressPlace.svelte'
import { dayAfter, dayIn } from '../../../src-core/progress/days'
import { today } from '../../../src-renderer/state/today'
import { ledgerOf } from '../../../src-renderer/state/ledger'
import type { WindowState } from '../../../src-renderer/state/window.svelte'
import { inWindow } from '../in-window'
import { SMALL } from '../projects'

// jsdom has the element, not what opens it.
HTMLDialogElement.prototype.showModal = function show() {
  this.open = true
}
HTMLDialogElement.prototype.close = function close() {
  this.open = false
}

const LARGE: Project = {
  ...SMALL,
  layout: { ...(SMALL.layout as BlanketLayout), columns: 16, rows: 15 },
}
const planned = ({ document }: WindowState) => vi.waitFor(() => expect(document.isPlanning).toBe(false), 5000)
const patch = (app: WindowState, layout: Partial<BlanketLayout>) =>
  app.document.change('change the layout', (project) => ({
    ...project,
    layout: { ...(project.layout as BlanketLayout), ...layout },
  }))
const coloursOf = (app: WindowState) =>
  new Map(app.document.plan.motifs.map(({ id, colourway }) => [id, colourway]))
const press = (app: WindowState, key: string) =>
  runKey(MAP_KEYS.blanket.keys, {
    ...{ key, shiftKey: false, altKey: false, ctrlKey: false, metaKey: false, state: app },
    drawing: null as never,
  })

describe('marking in the window', () => {
  it('marks by key, up to here and by table, tells it, and is undone by name', async () => {
    const { app } = await inWindow(MapTable, {}, SMALL)
    const { document, selection } = app
    selection.hold('1,2')
    expect(press(app, '1')).toBe(true)
    expect(document.project.made).toEqual({ '1,2': today() })
    expect(app.said).toBe('Mark 1 motif as made: 1 of 20 motifs made, 0 joined.')
    expect(document.undoLabel).toBe('mark 1 motif as made')
    // Another press takes it away.
    press(app, '1')
    expect(document.project.made).toEqual({})
    app.undo()
    app.undo()
    expect(document.project.made).toBeUndefined()
    app.redo()
    // There and back: row 2 is worked from the right.
    selection.hold('2,4')
    press(app, '3')
    expect(Object.keys(document.project.made!).sort()).toEqual([
      '1,1',
      '1,2',
      '1,3',
      '1,4',
      '1,5',
      '2,4',
      '2,5',
    ])
    expect(upTo(app, '2,4')).toHaveLength(7)
    await fireEvent.click(await screen.findByRole('checkbox', { name: 'motif 1 is made', checked: true }))
    expect(isMarked(document.project, '1,1', 'made')).toBe(false)
    expect(ledgerOf(document.project, document.numbers, null).figures).toContainEqual(
      expect.objectContaining({ name: 'Made', value: '6', unit: 'of 20' }),
    )
  })

  it('says what is not joined yet once somebody says so', async () => {
    const { app } = await inWindow(ProgressPlace, {}, SMALL)
    markPieces(app, ['1,1', '1,2'], 'made', true)
    expect(app.document.plan.progress).toMatchObject({ made: 2, joined: 2 })
    markPieces(app, ['1,2'], 'joined', false)
    expect(app.document.plan.progress).toMatchObject({ made: 2, joined: 1 })
    markPieces(app, ['1,3'], 'joined', true)
    expect(app.document.plan.progress).toMatchObject({ made: 3, joined: 2 })
  })
})

describe('made motifs in the window', () => {
  it('keep colour and place: 200 made, then filling, seed, measures and rows', async () => {
    const { app } = await inWindow(MadeQuestion, {}, LARGE)
    const { document } = app
    await planned(app)
    markPieces(
      app,
      document.plan.motifs.slice(0, 200).map(({ id }) => id),
      'made',
      true,
    )
    await planned(app)
    const made = document.plan.marks.made
    const stood = coloursOf(app)
    const isHeld = () => made.every((id) => coloursOf(app).get(id) === stood.get(id))
    const layout = () => document.project.layout as BlanketLayout
    for (const change of [
      { pattern: 'rows' },
      { pattern: 'scatter', seed: 4 },
      { colourways: ['c2'] },
    ] as const) {
      const fill = { ...layout().cells!.fill, ...change }
      patch(app, {
        cells: { ...layout().cells, fill: { ...fill, colourways: [...(fill.colourways ?? [])] } },
      })
      await planned(app)
      expect(document.question).toBeNull()
      expect(isHeld()).toBe(true)
    }
    patch(app, { rows: 18 })
    await planned(app)
    expect(isHeld()).toBe(true)
    // Fewer rows than are made: nothing happens before it is answered.
    const before = document.project
    patch(app, { rows: 10 })
    await vi.waitFor(() => screen.getByRole('dialog', { name: 'Made motifs' }))
    expect(document.project).toBe(before)
    expect(screen.getByText(/40 made motifs would no longer fit in/)).toBeTruthy()
    await fireEvent.click(screen.getByRole('button', { name: 'Keep as it was' }))
    expect(document.project).toBe(before)
    expect(document.question).toBeNull()
    patch(app, { rows: 10 })
    await fireEvent.click(await screen.findByRole('button', { name: 'Clear 40 marks' }))
    await planned(app)
    expect(document.plan.progress.made).toBe(160)
    expect(document.findings.filter(({ code }) => code.startsWith('progress/'))).toEqual([])
    app.undo()
    await planned(app)
    expect(document.plan.progress.made).toBe(200)
    expect(isHeld()).toBe(true)
  })

  it('are asked about also where a drag or a scrub tried it out first', async () => {
    const { app } = await inWindow(MadeQuestion, {}, SMALL)
    const { document } = app
    markPieces(app, ['4,1'], 'made', true)
    const before = document.project
    document.preview('change the rows', (project) => ({
      ...project,
      layout: { ...(project.layout as BlanketLayout), rows: 2 },
    }))
    expect(document.plan.motifs).toHaveLength(10)
    document.commit()
    expect(document.question).toMatchObject({ gone: 1 })
    expect(document.project).toBe(before)
    expect(document.plan.motifs).toHaveLength(20)
  })
})

describe('the place Progress', () => {
  it('teaches while nothing is made', async () => {
    await inWindow(ProgressPlace, {}, SMALL)
    expect(screen.getByText(/Nothing is marked as made yet/)).toBeTruthy()
  })

  it('weighs yarn again and tells how far it goes', async () => {
    const { app } = await inWindow(ProgressPlace, {}, { ...SMALL, order: 'one-way' })
    markPieces(app, upTo(app, '1,4'), 'made', true)
    // Two of A and two of B take 2 · 3 + 2 · 1 = 8 g of Brick, 8.8 g with waste; so do 5 to 8, and 9 is too much.
    const field = await screen.findByRole('textbox', { name: 'Brick: left now' })
    await fireEvent.input(field, { target: { value: '11.2 g' } })
    await fireEvent.keyDown(field, { key: 'Enter' })
    expect(app.document.project.yarns![0]!.left).toEqual({ grams: 11.2, at: 4 })
    expect(app.document.plan.progress.forecast[0]).toMatchObject({ yarn: 'y1', at: 4, start: 20 })
    expect(screen.getByText(/^At this rate Brick lasts to motif 8 of 20/)).toBeTruthy()
    // Nobody said how much there was: what it is taken to be, and from where.
    const start = screen.getByRole('textbox', { name: 'weight at the start' }) as HTMLInputElement
    expect(start.placeholder).toBe('20 g')
    expect(screen.getByText('what is on hand')).toBeTruthy()
    await fireEvent.input(field, { target: { value: '' } })
    await fireEvent.keyDown(field, { key: 'Enter' })
    expect(app.document.project.yarns![0]!.left).toBeUndefined()
  })

  it('says of a yarn weighed again what is used and still to come, beside what the plan says', async () => {
    const made = Object.fromEntries(['1,1', '1,2', '1,3', '1,4'].map((id) => [id, '2026-12-01']))
    // Of 20 motifs the plan takes five times the 8.8 g; 12.4 g of 20 g are left, so 7.6 g are used of 38 g.
    const yarns = SMALL.yarns!.map((yarn, i) => (i === 0 ? { ...yarn, left: { grams: 12.4, at: 4 } } : yarn))
    const { app } = await inWindow(YarnPlace, {}, { ...SMALL, order: 'one-way', made, yarns })
    const { left, missing, start } = app.document.plan.progress.forecast[0]!
    expect([start, left]).toEqual([20, 12.4])
    expect(left + missing).toBeCloseTo(30.4, 6)
    screen.getByText('7.6 g used, 30 g still to come at this rate')
    expect(screen.getByText('38 g').tagName).toBe('DD')
    expect(screen.getAllByText('By the plan')).toHaveLength(1)
  })

  it('says when the last one is made, at the pace of the log or another one', async () => {
    const days = { '1,1': '2026-11-20', '1,2': '2026-11-21', '1,3': '2026-11-21', '1,4': '2026-11-21' }
    const { app } = await inWindow(ProgressPlace, {}, { ...SMALL, made: days })
    expect(app.document.plan.progress.left.motifs).toBe(16)
    screen.getByText(
      /^At 2 motifs a day, as from November 20, 2026 to November 21, 2026, the last one is made on /,
    )
    const field = screen.getByRole<HTMLInputElement>('textbox', { name: 'Motifs a day' })
    expect(field.placeholder).toBe('2')
    await fireEvent.input(field, { target: { value: '16' } })
    await fireEvent.keyDown(field, { key: 'Enter' })
    const tomorrow = dayIn(dayAfter(today(), 1), 'US')
    await screen.findByText(`At 16 motifs a day, the last one is made on ${tomorrow}.`)
    expect(app.document.project.made).toEqual(days)
  })

  it('takes what is entered first while something is made as what there is now', async () => {
    const bare = { ...SMALL, yarns: SMALL.yarns!.map(({ onHandGrams: _, onHandBalls: __, ...yarn }) => yarn) }
    const { app } = await inWindow(YarnPlace, {}, { ...bare, order: 'one-way' })
    const brick = () => app.document.project.yarns![0]!
    const type = async (name: string, value: string) => {
      const field = await screen.findByRole('textbox', { name })
      await fireEvent.input(field, { target: { value } })
      await fireEvent.keyDown(field, { key: 'Enter' })
    }
    await type('Brick on hand, by weight', '30 g')
    // Nothing is made: it is of the beginning, and nothing is asked.
    expect(brick().onHandAt).toBeUndefined()
    expect(screen.queryByRole('textbox', { name: 'Motifs made when you counted it' })).toBeNull()
    await type('Brick on hand, by weight', '')
    markPieces(app, upTo(app, '1,4'), 'made', true)
    await planned(app)
    await type('Brick on hand, by weight', '30 g')
    expect(brick()).toMatchObject({ onHandGrams: 30, onHandAt: 4 })
    await planned(app)
    expect(app.document.plan.progress.forecast[0]).toMatchObject({ yarn: 'y1', at: 4, left: 30 })
    // More is made, and it is counted again.
    markPieces(app, upTo(app, '1,5'), 'made', true)
    await type('Brick on hand, by weight', '28 g')
    expect(brick()).toMatchObject({ onHandGrams: 28, onHandAt: 4 })
    await fireEvent.click(screen.getByRole('button', { name: 'This is what I have now, with 5 made' }))
    expect(brick()).toMatchObject({ onHandGrams: 28, onHandAt: 5 })
    expect(app.document.undoLabel).toBe('take what is on hand of Brick as of now')
    expect(screen.queryByRole('button', { name: /^This is what I have now/ })).toBeNull()
    await type('Brick on hand, by weight', '')
    expect(brick().onHandAt).toBeUndefined()
  })

  it('says that yarn on hand counts for this plan alone, once there is some', async () => {
    const bare = { ...SMALL, yarns: SMALL.yarns!.map(({ onHandGrams: _, onHandBalls: __, ...yarn }) => yarn) }
    const { app } = await inWindow(YarnPlace, {}, bare)
    expect(screen.queryByText(/^What is on hand counts for this plan alone/)).toBeNull()
    app.document.change('have some', (project) => ({
      ...project,
      yarns: project.yarns!.map((yarn) => ({ ...yarn, onHandGrams: 20 })),
    }))
    await planned(app)
    expect(await screen.findByText(/^What is on hand counts for this plan alone/)).toBeTruthy()
  })

  it('says what was made when a yarn was counted, half motifs apart', async () => {
    const layout: BlanketLayout = {
      ...(SMALL.layout as BlanketLayout),
      ...{ arrangement: 'offset-rows', alternateRows: 'oneFewer', halves: true },
    }
    const days = { '1,1': '2026-12-01', '1,2': '2026-12-01', '2,left': '2026-12-02', '2,right': '2026-12-03' }
    const yarns = SMALL.yarns!.map((yarn, i) => (i === 0 ? { ...yarn, onHandGrams: 30, onHandAt: 3 } : yarn))
    await inWindow(YarnPlace, {}, { ...SMALL, layout, yarns, made: days, order: 'one-way' })
    const field = await screen.findByRole('textbox', {
      name: 'Motifs and half motifs made when you counted it',
    })
    const hint = document.getElementById(field.getAttribute('aria-describedby')!.split(' ')[0]!)
    expect(hint?.textContent).toContain('These were 2 motifs and 1 half motif.')
    screen.getByRole('button', { name: 'This is what I have now, with 2 motifs and 2 half motifs made' })
  })

  it('says what measuring again changed', async () => {
    const { app } = await inWindow(ProgressPlace, {}, SMALL)
    const { document } = app
    const measure = (overTips: number) =>
      document.change('change the measures', (project) => ({
        ...project,
        motifs: project.motifs!.map((motif) => ({ ...motif, overTips })) as never,
      }))
    measure(81)
    expect(document.measuredFrom).toBeNull()
    markPieces(app, ['1,1'], 'made', true)
    measure(82)
    measure(84)
    const line = await screen.findByText(/^New measurements: size .* → .*\.$/)
    expect(line.textContent).toContain('→')
    app.undo()
    expect(document.measuredFrom).toBeNull()
  })

  it('says what measuring again changed also where colours follow from the yarn on hand', async () => {
    const layout = SMALL.layout as BlanketLayout
    const fill = {
      ...{ pattern: 'no-two-alike' as const, colourways: ['c1', 'c2'], seed: 1 },
      withinStash: true,
    }
    const { app } = await inWindow(
      ProgressPlace,
      {},
      { ...SMALL, layout: { ...layout, cells: { ...layout.cells, fill } } },
    )
    const { document } = app
    markPieces(app, ['1,1'], 'made', true)
    document.change('change the measures', (project) => ({
      ...project,
      motifs: project.motifs!.map((motif) => ({ ...motif, overTips: 84 })) as never,
    }))
    await screen.findByText(/^New measurements: size .* → /)
    // What is left of a yarn moves its limits, and with them colours of what is still to be made.
    document.change('weigh', (project) => ({
      ...project,
      yarns: project.yarns!.map((yarn) => ({ ...yarn, left: { grams: 15, at: 1 } })),
    }))
    expect(document.measuredFrom?.what).toEqual(['measures', 'yarn'])
    // Another colouring is something else.
    patch(app, { cells: { ...(document.project.layout as BlanketLayout).cells, fill: { ...fill, seed: 2 } } })
    expect(document.measuredFrom).toBeNull()
  })

  it('says that a weight is new where a motif is weighed, and no measure', async () => {
    const { app } = await inWindow(ProgressPlace, {}, SMALL)
    const { document } = app
    const edit = (part: object) =>
      document.change('change the motif', (project) => ({
        ...project,
        motifs: project.motifs!.map((motif) => ({ ...motif, ...part })) as never,
      }))
    markPieces(app, ['1,1'], 'made', true)
    edit({ name: 'Rose' })
    expect(document.measuredFrom).toBeNull()
    edit({ slots: [{ slot: 'petals', grams: 5.5 }] })
    await screen.findByText(/^New weight: Brick .* → .*\.$/)
    edit({ overTips: 84 })
    await screen.findByText(/^New weight and measurements: size .* → /)
  })
})
