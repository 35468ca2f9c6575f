/** Colours by count and stash, and arrangements from what there is, in the window. */
import { fireEvent, screen, waitFor, within } from '@testing-library/svelte'
import { describe, expect, it, vi } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import SentenceEditor from '../../../src-renderer/frame/SentenceEditor.svelte'
import ArrangementPlace from '../../../src-renderer/places/arrangement/ArrangementPlace.svelte'
import ColoursPlace from '../../../src-renderer/places/colours/ColoursPlace.svelte'
import YarnPlace from '../../../src-renderer/places/yarn/YarnPlace.svelte'
import type { WindowState } from '../../../src-renderer/state/window.svelte'
import { SMALL } from '../projects'
import { ledgerOf } from '../../../src-renderer/state/ledger'
import { inWindow } from '../in-window'

const fillOf = (app: WindowState) => (app.document.project.layout as BlanketLayout).cells!.fill!
const enter = async (label: string, text: string) => {
  const field = screen.getByRole('textbox', { name: label })
  await fireEvent.input(field, { target: { value: text } })
  await fireEvent.keyDown(field, { key: 'Enter' })
}
const rich: Project = { ...SMALL, yarns: SMALL.yarns!.map((yarn) => ({ ...yarn, onHandGrams: 60 })) }

describe('As the stash goes', () => {
  it('deals the colorways out by what is on hand, in one step of undo', async () => {
    const yarns = SMALL.yarns!.map((yarn, i) => ({ ...yarn, onHandGrams: [300, 100][i]! }))
    const ways = SMALL.colourways!.map((way, i) => ({
      ...way,
      yarns: { centre: `y${i + 1}`, petals: `y${i + 1}` },
    }))
    const { app } = await inWindow(ColoursPlace, {}, { ...SMALL, yarns, colourways: ways })
    await fireEvent.click(screen.getByRole('radio', { name: /^As the stash goes/ }))
    // 3 : 1 of twenty.
    await vi.waitFor(() => expect(app.document.plan.counts.byColourway).toEqual({ c1: 15, c2: 5 }), 5000)
    // It stays within what is on hand anyway.
    expect(screen.queryByLabelText('Stay within the yarn on hand')).toBeNull()
    app.document.undo()
    expect(fillOf(app).pattern).toBe('repeat')
    await waitFor(() => expect(screen.getByLabelText('Stay within the yarn on hand')).toBeTruthy())
  })

  it('leads to the yarn where nothing is on hand yet, without a warning, unless limits were set', async () => {
    const yarns = SMALL.yarns!.map(({ onHandGrams: _, ...yarn }) => yarn)
    const { app } = await inWindow(ColoursPlace, {}, { ...SMALL, yarns })
    const told = () => app.document.findings.map(({ code }) => code).filter((code) => /^colours/.test(code))
    const hint = () => screen.queryByText(/^How much yarn is on hand for each colorway is not known yet/)
    expect(hint()).toBeNull()
    await fireEvent.click(screen.getByRole('radio', { name: /^As the stash goes/ }))
    await vi.waitFor(() => expect(told()).toEqual(['colours/stash-unknown']), 5000)
    await waitFor(() => expect(hint()).not.toBeNull())
    await enter('A Dawn at most', '3')
    await enter('B Noon at most', '3')
    await vi.waitFor(() => expect(told().join()).toMatch(/limits-/), 5000)
    await fireEvent.click(screen.getByRole('button', { name: 'Enter yarn on hand' }))
    expect(app.view.place).toBe('yarn')
  })
})

describe('a yarn of which no more can be had', () => {
  it('is said with a tick, in one step of undo: nothing of it is to buy, and what is missing is said', async () => {
    const yarns = SMALL.yarns!.map((yarn) => ({ ...yarn, onHandGrams: 20, price: 4 }))
    const { app } = await inWindow(YarnPlace, {}, { ...SMALL, yarns })
    const [first] = app.document.project.yarns!
    const line = () => ledgerOf(app.document.project, app.document.plan, null).yarns[0]!
    expect(line().short).toMatch(/^buy \d/)
    const tick = () => screen.getByLabelText(`No more of ${first!.name!} can be had`)
    await fireEvent.click(tick())
    expect(app.document.project.yarns![0]!.noMore).toBe(true)
    await vi.waitFor(() => expect(line().short).toMatch(/^[\d.]+ g short, no more to be had$/), 5000)
    await waitFor(() =>
      expect(screen.getAllByText(/g( of .+)? missing, and no more can be had/).length).toBe(2),
    )
    // Its colours are chosen without regard to it: what keeps to it is a click away.
    await fireEvent.click(screen.getByRole('button', { name: 'Colors' }))
    expect(app.view.place).toBe('colours')
    app.document.undo()
    expect(app.document.project.yarns![0]!.noMore).toBeUndefined()
    await waitFor(() => expect((tick() as HTMLInputElement).checked).toBe(false))
  })
})

describe('what is added', () => {
  it.each([
    [ColoursPlace, 'Add a colorway', /^Name of C/],
    [YarnPlace, 'Add a yarn', /^Name of /],
  ])('has its name under the keyboard', async (place, button, name) => {
    await inWindow(place, {}, SMALL)
    const before = screen.getAllByLabelText(/^Name of /).length
    await fireEvent.click(screen.getByRole('button', { name: button }))
    const names = screen.getAllByLabelText(/^Name of /)
    expect(names).toHaveLength(before + 1)
    await waitFor(() => expect(document.activeElement).toBe(names.at(-1)))
    expect(screen.getAllByLabelText(name)).toContain(document.activeElement)
  })
})

describe('Order of colorways', () => {
  it('is moved by keyboard, counted, added to, taken out of, each undone in one step', async () => {
    const { app } = await inWindow(ColoursPlace, {}, SMALL)
    const order = () => fillOf(app).colourways!.join(' ')
    const list = screen.getByRole('list', { name: 'Order of colorways' })
    await enter('Times in a row, A Dawn, number 1', '2')
    expect(order()).toBe('c1 c1 c2')
    await fireEvent.keyDown(within(list).getByRole('button', { name: 'A Dawn, number 1 of 2' }), {
      ...{ key: 'ArrowDown', altKey: true },
    })
    expect(order()).toBe('c2 c1 c1')
    expect(app.document.undoLabel).toBe('move A Dawn')
    await waitFor(() =>
      expect(document.activeElement?.getAttribute('aria-label')).toBe('A Dawn, number 2 of 2'),
    )
    await fireEvent.change(screen.getByLabelText('Add to the order'), { target: { value: 'c2' } })
    expect(order()).toBe('c2 c1 c1 c2')
    await fireEvent.click(screen.getByRole('button', { name: 'Take out B Noon, number 1' }))
    expect(order()).toBe('c1 c1 c2')
    app.document.undo()
    app.document.undo()
    app.document.undo()
    expect(order()).toBe('c1 c1 c2')
  })
})

describe('Limits', () => {
  it('are entered by colourway and by yarn, and the table follows', async () => {
    const { app } = await inWindow(ColoursPlace, {}, rich)
    await enter('A Dawn at most', '4')
    expect(fillOf(app).most).toEqual({ c1: 4 })
    expect(app.document.undoLabel).toBe('change the limit of A Dawn')
    const table = screen.getByRole('table', { name: 'Motifs by colorway' })
    expect(within(table).getByRole('row', { name: /^A Dawn/ }).textContent).toContain('4')
    expect(app.document.plan.counts.byColourway).toMatchObject({ c1: 4, c2: 16 })
    expect((await screen.findByText(/leave the order/)).textContent).toBe(
      '6 of 20 motifs leave the order, so that A stays within 4 motifs.',
    )
    await enter('Brick at most', '30 g')
    expect(fillOf(app).mostGrams).toEqual({ y1: 30 })
    app.document.undo()
    app.document.undo()
    expect(fillOf(app).most ?? {}).toEqual({})
    await waitFor(() => expect(screen.queryByText(/leave the order/)).toBeNull())
  })

  it('stay within the yarn on hand by one tick, undone by name', async () => {
    const { app } = await inWindow(ColoursPlace, {}, rich)
    await fireEvent.click(screen.getByRole('checkbox', { name: 'Stay within the yarn on hand' }))
    expect(fillOf(app).withinStash).toBe(true)
    expect(app.document.undoLabel).toBe('stay within the yarn on hand')
    expect(app.document.plan.yarns.every(({ toBuy }) => toBuy === 0)).toBe(true)
  })

  it('say of which yarn nothing is on hand, and where one yarn alone is limited', async () => {
    const [first, ...others] = SMALL.yarns!
    const { onHandGrams: _, onHandBalls: __, ...none } = first!
    const yarns = [none, ...others.map((yarn) => ({ ...yarn, onHandGrams: 5000 }))]
    await inWindow(ColoursPlace, {}, { ...SMALL, yarns })
    const words = () =>
      screen
        .queryByText(/^Nothing is on hand of/)
        ?.textContent.replace(/\s+/g, ' ')
        .trim()
    expect(words()).toBeUndefined()
    await fireEvent.click(screen.getByRole('checkbox', { name: 'Stay within the yarn on hand' }))
    expect(words()).toBe(
      'Nothing is on hand of Brick, so that nothing can be worked in it. To limit one yarn alone, clear the tick and enter its grams under “At most” below.',
    )
  })

  it('mirror the pattern', async () => {
    const { app } = await inWindow(ColoursPlace, {}, SMALL)
    await fireEvent.change(screen.getByLabelText('Mirror'), { target: { value: 'left-right' } })
    expect(fillOf(app).symmetry).toBe('left-right')
    await fireEvent.change(screen.getByLabelText('Mirror'), { target: { value: 'none' } })
    expect(fillOf(app).symmetry).toBeUndefined()
  })
})

describe('One band for several shades', () => {
  it('is put over those that are ticked, in one step', async () => {
    const three: Project = {
      ...SMALL,
      yarns: [
        { ...SMALL.yarns![0]!, ballGrams: 100, ballMetres: 240, price: 6.5 },
        SMALL.yarns![1]!,
        { ...SMALL.yarns![1]!, id: 'y3', name: 'Slate', assumed: ['ballGrams', 'ballMetres'] },
      ],
    }
    const { app } = await inWindow(YarnPlace, {}, three)
    const [first] = screen.getAllByRole('group', { name: 'Same band for other shades' })
    await fireEvent.click(within(first!).getByRole('button', { name: 'Select all' }))
    await fireEvent.click(within(first!).getByRole('button', { name: 'Use for 2 shades' }))
    for (const yarn of app.document.project.yarns!)
      expect(yarn).toMatchObject({ ballGrams: 100, ballMetres: 240, price: 6.5 })
    expect(app.document.project.yarns![2]!.assumed).toBeUndefined()
    expect(app.document.project.yarns![1]!.name).toBe('Straw')
    app.document.undo()
    expect(app.document.project.yarns![1]!.ballGrams).toBe(50)
  })
})

describe('Arrangements from what there is', () => {
  it('are shown for motifs already made, with what is left over', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, rich)
    await fireEvent.change(screen.getByLabelText('Fit to'), { target: { value: 'motifs' } })
    await enter('Motifs already made', '31')
    const list = await screen.findByRole('list', { name: 'What fits best' })
    const [first] = within(list).getAllByRole('button', { name: /left over/ })
    await fireEvent.click(first!)
    expect(app.document.plan.motifs.length).toBeLessThanOrEqual(31)
    expect(app.document.plan.motifs.length).toBeGreaterThan(24)
  })

  it('keep to how many there are of each colorway, which make up how many there are', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, rich)
    await fireEvent.change(screen.getByLabelText('Fit to'), { target: { value: 'motifs' } })
    const group = within(screen.getByRole('group', { name: 'Of each colorway' }))
    const [dawn, noon] = group.getAllByRole('textbox')
    for (const [field, many] of [
      [dawn!, '18'],
      [noon!, '7'],
    ] as const) {
      await fireEvent.input(field, { target: { value: many } })
      await fireEvent.keyDown(field, { key: 'Enter' })
    }
    expect((screen.getByLabelText('Motifs already made') as HTMLInputElement).value).toBe('25')
    const list = await screen.findByRole('list', { name: 'What fits best' })
    const whole = within(list).getAllByRole('button', { name: /, none left over/ })
    await fireEvent.click(whole[0]!)
    await vi.waitFor(() => expect(app.document.plan.counts.byColourway).toEqual({ c1: 18, c2: 7 }), 5000)
    expect(app.document.plan.progress.made).toBe(25)
    app.document.undo()
    expect(app.document.project).toEqual(rich)
  })

  it('begin with those that no small hand fits through where it is for a child, and say so', async () => {
    const pane = { id: 'm1', kind: 'measured', outline: 'octagon', sideToSide: 100 } as const
    const project = {
      ...{ format: 'petalyard-project', version: 1, forChild: true, joining: { rule: 'edges' } },
      motifs: [pane],
      layout: { kind: 'blanket', motif: 'm1', arrangement: 'straight-rows', columns: 8, rows: 8 },
    } as unknown as Project
    await inWindow(ArrangementPlace, {}, project)
    const list = await screen.findByRole('list', { name: 'What fits best' })
    const [first, ...others] = within(list).getAllByRole('button')
    expect(first!.textContent).toMatch(/Leaves openings of about 17\.\d mm/)
    expect(first!.getAttribute('aria-label')).toMatch(/, leaves openings of about 17\.\d mm between motifs$/)
    const isWide = (one: Element) => /Leaves openings of about 4[\d.]+ mm/.test(one.textContent)
    expect(others.some(isWide)).toBe(true)
    for (const one of others)
      if (isWide(one))
        expect(within(one as HTMLElement).getByText(/^Leaves openings/).className).toMatch(/warn/)
    screen.getByText(/^For a child, what has no openings of 25 mm or more comes first/)
  })

  it('take those that are marked for the motifs already made, until another number is typed', async () => {
    const keys = ['1,1', '1,2', '1,3']
    const begun = { ...rich, made: Object.fromEntries(keys.map((key) => [key, '2026-12-01'])) } as Project
    const { app } = await inWindow(ArrangementPlace, {}, rich)
    const choose = (value: string) => fireEvent.change(screen.getByLabelText('Fit to'), { target: { value } })
    const shown = () => (screen.getByLabelText('Motifs already made') as HTMLInputElement).value
    await choose('motifs')
    expect(shown()).toBe(String(app.document.plan.motifs.length))
    app.document.change('mark three as made', () => begun)
    await vi.waitFor(() => expect(shown()).toBe('3'))
    await enter('Motifs already made', '31')
    expect(shown()).toBe('31')
    await choose('size')
    await choose('motifs')
    expect(shown()).toBe('31')
  })

  it('taken of the yarn on hand keep the target size', async () => {
    const target = { width: 1300, height: 1600 }
    const asked = { ...rich, layout: { ...rich.layout, target } } as Project
    const { app } = await inWindow(ArrangementPlace, {}, asked)
    await fireEvent.change(screen.getByLabelText('Fit to'), { target: { value: 'stash' } })
    const list = await screen.findByRole('list', { name: 'What fits best' })
    await fireEvent.click(within(list).getAllByRole('button')[0]!)
    await vi.waitFor(() => expect(app.document.isPlanning).toBe(false), 5000)
    expect(app.document.undoLabel).toMatch(/^take /)
    expect(app.document.project.layout).toMatchObject({ target })
  })

  it('taken of motifs already made are marked as made; what was asked for before is asked no more', async () => {
    const asked = { ...rich, layout: { ...rich.layout, target: { width: 1300, height: 1600 } } } as Project
    const { app } = await inWindow(ArrangementPlace, {}, asked)
    const { document, view } = app
    expect(document.plan.findings.map(({ code }) => code)).toContain('layout/off-target')
    await fireEvent.change(screen.getByLabelText('Fit to'), { target: { value: 'motifs' } })
    // As many as there are, to begin with.
    expect((screen.getByLabelText('Motifs already made') as HTMLInputElement).value).toBe(
      String(document.plan.motifs.length),
    )
    await enter('Motifs already made', '31')
    const list = await screen.findByRole('list', { name: 'What fits best' })
    await fireEvent.click(within(list).getAllByRole('button', { name: /left over/ })[0]!)
    await vi.waitFor(() => expect(document.isPlanning).toBe(false), 5000)
    expect(document.plan.findings.map(({ code }) => code)).not.toContain('layout/off-target')
    expect(view.fitTo).toEqual({
      ...{ from: 'motifs', motifs: 31, isTyped: true, like: { width: 1300, height: 1600 } },
    })
    await vi.waitFor(() => expect(document.isPlanning).toBe(false), 5000)
    const many = document.plan.motifs.length
    // They were made before: on no day that is known, and joined to nothing yet; nothing is to be bought for them.
    expect(document.plan.progress.made).toBe(many)
    expect(new Set(Object.values(document.project.made!))).toEqual(new Set(['']))
    expect(document.plan.progress.joined).toBe(0)
    expect(document.plan.yarns.every(({ toBuy }) => !toBuy)).toBe(true)
    await screen.findByText(/All of them are marked as made: no yarn is to be bought for them/)
    // Finished motifs have no last round left to be joined in.
    expect(document.plan.settled.joining.rule).toBe('tips')
    await fireEvent.click(screen.getByRole('button', { name: 'Join by seams' }))
    expect(document.plan.settled.joining.rule).toBe('seam')
    expect([document.plan.progress.made, document.plan.progress.joined]).toEqual([many, 0])
    expect(screen.queryByRole('button', { name: 'Join by seams' })).toBeNull()
    document.undo()
    // Another of the arrangements takes the same motifs, without a question; each is one step for undo.
    const others = within(screen.getByRole('list', { name: 'What fits best' })).getAllByRole('button', {
      name: /left over/,
    })
    await fireEvent.click(others.find((button) => button.getAttribute('aria-pressed') === 'false')!)
    expect(document.question).toBeNull()
    await vi.waitFor(() => expect(document.plan.progress.made).toBe(document.plan.motifs.length), 5000)
    document.undo()
    document.undo()
    expect(document.project).toEqual(asked)
  })

  it('are shown for the yarn on hand, and colours stay within it', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, rich)
    await fireEvent.change(screen.getByLabelText('Fit to'), { target: { value: 'stash' } })
    const list = await screen.findByRole('list', { name: 'What fits best' })
    await fireEvent.click(within(list).getAllByRole('button')[0]!)
    expect(fillOf(app).withinStash).toBe(true)
    expect(app.document.plan.yarns.every(({ toBuy }) => toBuy === 0)).toBe(true)
  })
})

describe('the number of motifs in the sentence', () => {
  it('is typed, and what has that number or the nearest is taken in one step that undo takes back', async () => {
    const outlineShape = { kind: 'hexagon', size: 600 }
    const cut = { ...SMALL, layout: { ...SMALL.layout, outlineShape } } as Project
    const { app } = await inWindow(SentenceEditor, { field: 'count' as const }, cut)
    await enter('Number of motifs', '61')
    const list = await screen.findByRole('list', { name: 'Arrangements with that number' })
    const [first] = within(list).getAllByRole('button', { name: /^61 motifs, as asked/ })
    await fireEvent.click(first!)
    await waitFor(() => expect(app.document.plan.motifs).toHaveLength(61))
    expect((app.document.project.layout as BlanketLayout).outlineShape?.kind).toBe('hexagon')
    app.document.undo()
    expect(app.document.project.layout).toEqual(cut.layout)
  })
})

describe('the largest from the yarn on hand', () => {
  it('says what stops it', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, rich)
    app.view.fitTo = { ...app.view.fitTo, from: 'stash' }
    await vi.waitFor(
      () =>
        expect(
          screen.getByText(/^What stops (the first|this one): One more row, \d+ motifs?, would need/),
        ).toBeTruthy(),
      10_000,
    )
  })
})
