import { fireEvent, screen, waitFor, within } from '@testing-library/svelte'
import { describe, expect, it } from 'vitest'
import ArrangementPlace from '../../../src-renderer/places/arrangement/ArrangementPlace.svelte'
import ColoursPlace from '../../../src-renderer/places/colours/ColoursPlace.svelte'
import { madeWords } from '../../../src-renderer/places/colours/words'
import JoinsPlace from '../../../src-renderer/places/joins/JoinsPlace.svelte'
import MotifPlace from '../../../src-renderer/places/motif/MotifPlace.svelte'
import YarnPlace from '../../../src-renderer/places/yarn/YarnPlace.svelte'
import Ledger from '../../../src-renderer/frame/Ledger.svelte'
import type { MeasuredMotif, Project } from '../../../shared-types/project'
import { example, SMALL } from '../projects'
import { inWindow } from '../in-window'

const fill = async (label: string, text: string) => {
  const field = screen.getByRole('textbox', { name: label })
  await fireEvent.input(field, { target: { value: text } })
  await fireEvent.keyDown(field, { key: 'Enter' })
}

describe('Motif', () => {
  it('is measured on its own drawing, and undone by name', async () => {
    const { app } = await inWindow(MotifPlace, {}, SMALL)
    await fill('Tip to tip, across', '9 cm')
    expect(app.document.project.motifs![0]).toMatchObject({ overTips: 90 })
    expect(app.document.undoLabel).toBe('change tip to tip')
    await fireEvent.click(screen.getByRole('checkbox', { name: /^Measured as it will stay/ }))
    expect(app.document.project.motifs![0]).toMatchObject({ blocked: false })
  })

  it('with odd petals takes what a ruler can reach', async () => {
    const odd = { ...SMALL, motifs: [{ ...SMALL.motifs![0]!, petals: 5 }] } as typeof SMALL
    const { app } = await inWindow(MotifPlace, {}, odd)
    // A flower of 80 mm through its tips and 56 mm through its dips, as the file has it.
    const field = (name: string) => screen.getByRole('textbox', { name }) as HTMLInputElement
    expect(field('Tip to opposite dip').value).toBe('68 mm')
    expect(field('Center to dip').value).toBe('28 mm')
    await fill('Tip to opposite dip', '82 mm')
    await fill('Center to dip', '30 mm')
    expect(field('Tip to opposite dip').value).toBe('82 mm')
    expect(app.document.project.motifs![0]).toMatchObject({ overTips: 104, overValleys: 60 })
    expect(app.document.undoLabel).toBe('change center to dip')
    screen.getByText('A flower of 104 mm through its tips.')
    await fireEvent.change(screen.getByRole('combobox', { name: 'Measured from' }), {
      target: { value: 'centre' },
    })
    expect(app.document.project.motifs![0]).toMatchObject({ ruler: 'centre', overTips: 104, overValleys: 60 })
    await fill('Center to tip', '45 mm')
    expect(app.document.project.motifs![0]).toMatchObject({ overTips: 90, overValleys: 60 })
  })

  it('lets the second measure follow the first until it is typed', async () => {
    const { overValleys: _, ...bare } = SMALL.motifs![0] as MeasuredMotif
    const { app } = await inWindow(MotifPlace, {}, { ...SMALL, motifs: [bare] })
    const second = () => screen.getByRole('textbox', { name: 'Dip to dip, across' }) as HTMLInputElement
    expect([second().value, second().placeholder]).toEqual(['', '54.4 mm'])
    screen.getByText(/^Assumed: it follows the first/)
    await fill('Tip to tip, across', '100 mm')
    expect(second().placeholder).toBe('68 mm')
    await fill('Dip to dip, across', '70 mm')
    await fill('Tip to tip, across', '110 mm')
    expect(second().value).toBe('70 mm')
    expect(app.document.project.motifs![0]).toMatchObject({ overTips: 110, overValleys: 70 })
    expect(screen.queryByText(/^Assumed, and follows/)).toBeNull()
  })

  it('is measured in inches or cm, as switched beside its numbers', async () => {
    const { app } = await inWindow(MotifPlace, {}, SMALL)
    await fireEvent.click(screen.getByRole('radio', { name: 'inches' }))
    expect(app.document.project).toMatchObject({ units: 'imperial' })
    const field = screen.getByRole('textbox', { name: 'Tip to tip, across' }) as HTMLInputElement
    expect(field.value).toBe('3⅛ in')
    await fireEvent.input(field, { target: { value: '1/64 in' } })
    expect(screen.getByRole('alert').textContent).toMatch(/^It can be from ⅛ in to 118 in\./)
  })

  it('is weighed ten at a time unless said otherwise', async () => {
    const { app } = await inWindow(MotifPlace, {}, SMALL)
    await fill('Together they weigh', '43 g')
    expect(app.document.project.motifs![0]!.weighed).toEqual({ motifs: 10, grams: 43 })
  })

  it('says that colours are counted where the whole weighs otherwise, and brings them to it', async () => {
    const [flower] = SMALL.motifs!
    const slots = [
      { slot: 'centre', grams: 0.9 },
      { slot: 'petals', grams: 4.1 },
    ]
    const own = { ...flower!, slots } as typeof flower & object
    const { app } = await inWindow(MotifPlace, {}, { ...SMALL, units: 'metric', motifs: [own] })
    const adjust = () => screen.queryByRole('button', { name: /^Adjust the colors to/ })
    await fill('Together they weigh', '50 g')
    expect(adjust()).toBeNull()
    // 5.3 g each: within what a warning allows, and not what is counted.
    await fill('Together they weigh', '53 g')
    expect(await screen.findByText(/^One motif: 5 g, by its colors/)).toBeTruthy()
    expect(
      await screen.findByText(
        /^The colors come to 5 g, each of the motifs weighed together to 5.3 g\. The colors/,
      ),
    ).toBeTruthy()
    await fireEvent.click(adjust()!)
    // 0.9 · 5.3 / 5 and 4.1 · 5.3 / 5.
    expect((app.document.project.motifs![0] as MeasuredMotif).slots).toEqual([
      { slot: 'centre', grams: 0.954 },
      { slot: 'petals', grams: 4.346 },
    ])
    expect(app.document.undoLabel).toBe('adjust the weights of the colors')
    expect(await screen.findByText(/^One motif: 5.3 g, of 10 motifs/)).toBeTruthy()
    expect(adjust()).toBeNull()
    // What is far off is warned of, with the same way out.
    await fill('Together they weigh', '70 g')
    expect(await screen.findByText(/its colors weigh 5.3 g, the whole motif 7 g\./)).toBeTruthy()
    expect(adjust()).toBeTruthy()
  })

  it('says what it makes of a weight that cannot be, and offers that it was one motif', async () => {
    const [flower] = SMALL.motifs!
    const bare = { ...flower!, slots: [{ slot: 'centre' }, { slot: 'petals' }] } as typeof flower & object
    const { app } = await inWindow(MotifPlace, {}, { ...SMALL, motifs: [bare] })
    await fill('Together they weigh', '2 g')
    expect(await screen.findByText(/^One motif: 0.2 g, of 10 motifs/)).toBeTruthy()
    await fireEvent.click(await screen.findByRole('button', { name: 'It was one motif' }))
    expect(app.document.project.motifs![0]!.weighed).toEqual({ motifs: 1, grams: 2 })
    expect(screen.queryByRole('button', { name: 'It was one motif' })).toBeNull()
  })

  it('keeps its instructions as they were typed, undone by name; blank ones are none', async () => {
    const { app } = await inWindow(MotifPlace, {}, SMALL)
    const field = screen.getByLabelText('How it is worked, printed with the motif') as HTMLTextAreaElement
    const type = (value: string) => fireEvent.change(field, { target: { value } })
    const kept = () => app.document.project.motifs![0]!.instructions
    await type('Rnd 1: 6 sc in ring.\nRnd 2: 2 sc in each sc.')
    expect(kept()).toBe('Rnd 1: 6 sc in ring.\nRnd 2: 2 sc in each sc.')
    expect(app.document.undoLabel).toBe('change the instructions')
    await type('  ')
    expect(kept()).toBeUndefined()
    app.document.undo()
    await waitFor(() => expect(field.value).toMatch(/^Rnd 1/))
  })

  it('cannot be removed while something needs it, and says what', async () => {
    await inWindow(MotifPlace, {}, SMALL)
    expect((screen.getByRole('button', { name: 'Remove Flower' }) as HTMLButtonElement).disabled).toBe(true)
    screen.getByText(/It is needed by the arrangement/)
  })

  it('teaches where there is none', async () => {
    await inWindow(MotifPlace, {}, { format: 'petalyard-project', version: 1 })
    screen.getByText(/A project begins with one motif/)
  })
})

describe('Arrangement', () => {
  it('offers what fits a target size, and takes it', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, SMALL)
    await fill('Target width', '60 cm')
    await fill('Target height', '50 cm')
    const list = await screen.findByRole('list', { name: 'What fits best' })
    const best = await waitFor(() => within(list).getAllByRole('button')[0]!)
    await fireEvent.click(best)
    const { width, height } = app.document.plan.size
    expect(Math.abs(width - 600)).toBeLessThan(80)
    expect(Math.abs(height - 500)).toBeLessThan(80)
    expect(app.document.undoLabel).toMatch(/^take /)
  })

  it('lists ways to a target size, and applies one in a step that can be undone', async () => {
    const target = { width: 620, height: 500 }
    const { app } = await inWindow(
      ArrangementPlace,
      {},
      {
        ...SMALL,
        layout: { ...SMALL.layout, kind: 'blanket' as const, motif: 'm1', target },
      },
    )
    const before = app.document.project
    await fireEvent.change(screen.getByRole('combobox', { name: 'Sides to match' }), {
      target: { value: 'width' },
    })
    await fireEvent.click(screen.getByRole('button', { name: 'Find ways' }))
    const list = await screen.findByRole('list', { name: 'Ways to the size' })
    const first = within(list).getAllByRole('listitem')[0]!
    expect(first.textContent).toMatch(/exactly that|too wide|too narrow/)
    expect(first.textContent).toMatch(/ (more|less)|as now/)
    const apply = within(first).getByRole('button', { name: /^Apply: / })
    const change = apply.getAttribute('aria-label')!.slice('Apply: '.length)
    await fireEvent.click(apply)
    expect(Math.abs(app.document.plan.size.width - 620)).toBeLessThan(10)
    expect(app.document.undoLabel).toBe(`apply: ${change}`)
    // What was found was found for the project before; the keyboard stays where it can go on.
    await waitFor(() => expect(screen.queryByRole('list', { name: 'Ways to the size' })).toBeNull())
    expect(document.activeElement).toBe(screen.getByRole('button', { name: 'Find ways' }))
    expect(screen.getByText(/^Applied: /).textContent).toContain(change)
    // What is undone is not told as applied.
    app.undo()
    await waitFor(() => expect(screen.queryByText(/^Applied: /)).toBeNull())
    // The list is that of the project again, without another search.
    const again = await screen.findByRole('list', { name: 'Ways to the size' })
    expect(within(again).getByRole('button', { name: `Apply: ${change}` })).toBeDefined()
    app.redo()
    app.document.undo()
    expect(app.document.project).toEqual(before)
  })

  it('asks for rings where there are rings', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, SMALL)
    await fireEvent.click(screen.getByRole('radio', { name: /^Rings/ }))
    await fill('Rings round the middle', '3')
    // M31: n rings of six hold 3n(n + 1) + 1 motifs.
    expect(app.document.plan.counts.motifs).toBe(37)
    expect(screen.queryByRole('textbox', { name: 'Motifs in a row' })).toBeNull()
  })

  it('offers no rotation of circles, which lie the same however they are rotated', async () => {
    const circle = { ...SMALL.motifs![0]!, outline: 'round' as const, across: 80 }
    await inWindow(ArrangementPlace, {}, { ...SMALL, motifs: [circle] as typeof SMALL.motifs })
    expect(screen.queryByRole('button', { name: 'Best rotation' })).toBeNull()
  })

  it('finds the best rotation and says what it gains', async () => {
    const askew = { ...SMALL, layout: { ...SMALL.layout, kind: 'blanket' as const, motif: 'm1', turn: 17 } }
    const { app } = await inWindow(ArrangementPlace, {}, askew)
    const button = screen.getByRole('button', { name: 'Best rotation' })
    expect(button.closest('details')).toBeNull()
    await fireEvent.click(button)
    await screen.findByText(/(°|^Not rotated).*instead of/)
    expect(app.document.undoLabel).toBe('take the best rotation')
    await fireEvent.click(button)
    await screen.findByText('This is the best rotation already.')
  })

  it('begins an edging from a picture, whose words can be changed, counted and taken back', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, SMALL)
    await fireEvent.click(screen.getByRole('button', { name: 'Shell' }))
    const words = screen.getByRole<HTMLTextAreaElement>('textbox', { name: 'Round 2 in words' })
    // The round that it is worked into is there, too.
    expect(screen.getByRole<HTMLSelectElement>('combobox', { name: 'Round 1' }).value).toBe('sc')
    expect(words.value).toContain('5')
    const { edging } = app.document.plan
    expect(edging?.multiple).toMatchObject({ of: 6, plus: 0 })
    const round = edging!.rounds.at(-1)!
    expect(document.body.textContent).toContain(`${round.repeats} repeats`)
    await fireEvent.input(words, { target: { value: `${words.value.replace('5', '7')}` } })
    expect(app.document.project.layout).toMatchObject({
      edging: { written: [{ work: expect.stringContaining('7') as string }] },
    })
    await fireEvent.click(screen.getByRole('button', { name: 'Remove round 2' }))
    expect(app.document.project.layout).toMatchObject({ edging: { written: [] } })
    app.document.undo()
    app.document.undo()
    app.document.undo()
    expect(app.document.plan.edging?.loops).toBeUndefined()
  })

  it('works an edging round by round', async () => {
    const { app } = await inWindow(ArrangementPlace, {}, SMALL)
    await fireEvent.click(screen.getByText('Border'))
    await fireEvent.click(screen.getByRole('button', { name: 'Add a border' }))
    await fireEvent.change(screen.getByRole('combobox', { name: 'Round 1' }), { target: { value: 'dc' } })
    expect(app.document.project.layout).toMatchObject({ edging: { rounds: ['dc'] } })
    expect(app.document.plan.edging?.height).toBeGreaterThan(0)
  })
})

describe('Joins', () => {
  it('asks of each rule only what it needs', async () => {
    const { app } = await inWindow(JoinsPlace, {}, SMALL)
    await fireEvent.click(screen.getByRole('radio', { name: /^With joining chains/ }))
    await fill('Chains between', '5')
    expect(app.document.project.joining).toMatchObject({ rule: 'bridge', bridgeChains: 5 })
    await fireEvent.click(screen.getByRole('radio', { name: /^Seamed afterwards/ }))
    expect(screen.queryByRole('textbox', { name: 'Chains between' })).toBeNull()
    await fireEvent.change(screen.getByRole('combobox', { name: 'Seam' }), { target: { value: 'mattress' } })
    expect(app.document.project.joining?.seam).toBe('mattress')
  })
})

describe('Joining round in words', () => {
  it('is told when it is opened, copied as one text, and not there where motifs are sewn', async () => {
    const copied: string[] = []
    window.document.execCommand = () => {
      copied.push((window.document.activeElement as HTMLTextAreaElement).value)
      return true
    }
    const { app } = await inWindow(JoinsPlace, {}, example('orchard-wall-throw'))
    expect(screen.queryByRole('list', { name: 'Joining round in words' })).toBeNull()
    const fold = screen.getByText('Joining round in words').closest('details')!
    fold.open = true
    await fireEvent(fold, new Event('toggle'))
    const list = screen.getByRole('list', { name: 'Joining round in words' })
    expect(within(list).getAllByRole('listitem')).toHaveLength(4)
    expect(within(list).getByText(/^Joined at petals 5 and 6: 22 motifs/)).toBeTruthy()
    const button = screen.getByRole('button', { name: 'Copy the words' })
    button.focus()
    await fireEvent.click(button)
    expect(screen.getByRole('status').textContent).toBe('Copied')
    expect(window.document.activeElement).toBe(button)
    expect(copied[0]).toContain(
      'Joined at petals 5 and 6: 22 motifs: 2–14, 28, 55, 82, 109, 136, 163, 190, 217 and 244\nRnd 5: Sl st in first ch-5 sp, ch 1,',
    )
    app.document.change('change', (project) => ({ ...project, joining: { rule: 'seam' } }))
    await waitFor(() => expect(screen.queryByText('Joining round in words')).toBeNull())
  })
})

describe('Colours', () => {
  it('add a colourway, place them by a pattern, and shuffle with a seed', async () => {
    const { app } = await inWindow(ColoursPlace, {}, SMALL)
    await fireEvent.click(screen.getByRole('button', { name: 'Add a colorway' }))
    await fireEvent.click(screen.getByRole('radio', { name: /^No two alike touching/ }))
    const counts = app.document.plan.counts.byColourway
    expect(Object.values(counts).reduce((sum, count) => sum + count, 0)).toBe(20)
    expect(Object.keys(counts)).toHaveLength(3)
    await fireEvent.click(screen.getByRole('radio', { name: /^Scattered/ }))
    const before = app.document.plan.motifs.map((motif) => motif.colourway)
    await fireEvent.click(screen.getByRole('button', { name: 'Shuffle' }))
    expect(app.document.plan.motifs.map((motif) => motif.colourway)).not.toEqual(before)
  })

  it('take every colourway there is for a pattern of several, and count fillers and halves', async () => {
    const one: Project = {
      ...SMALL,
      layout: { ...SMALL.layout, cells: { fill: { pattern: 'one', colourways: ['c1'] } } } as never,
    }
    const { app } = await inWindow(ColoursPlace, {}, one)
    await fireEvent.click(screen.getByRole('radio', { name: /^No two alike touching/ }))
    expect(Object.keys(app.document.plan.counts.byColourway)).toHaveLength(2)
    const { counts, fillers, halves } = app.document.plan
    const half = { id: '1,left', colourway: 'c1' } as never
    const filler = { id: 'x', colourway: 'c1' } as never
    const more = { ...app.document.plan, counts, fillers: [...fillers, filler], halves: [...halves, half] }
    expect(madeWords(more, 'c1')).toBe(`${(counts.byColourway['c1'] ?? 0) + 1} × and 1 half`)
    expect(madeWords(more, 'c2')).toBe(`${counts.byColourway['c2'] ?? 0} ×`)
  })

  it('paint what is selected by pressing a letter, and wipe it off again', async () => {
    const { app } = await inWindow(ColoursPlace, {}, SMALL)
    app.selection.replace(['1,1', '1,2'])
    await fireEvent.click(screen.getByRole('button', { name: 'Paint with B Noon' }))
    expect(app.document.undoLabel).toBe('paint 2 motifs')
    await fireEvent.click(screen.getByRole('button', { name: 'Free all colors' }))
    expect(app.document.project.layout).toMatchObject({ cells: { painted: {} } })
  })

  it('refuse letters that paper confuses with numbers', async () => {
    const { app } = await inWindow(ColoursPlace, {}, SMALL)
    await fill('Letter of A Dawn', 'O')
    expect(screen.getByRole('alert').textContent).toContain('without I and O')
    expect(app.document.project.colourways![0]!.code).toBe('A')
  })
})

describe('Yarn', () => {
  it('says what a weight was split by', async () => {
    const slots = [{ slot: 'centre' }, { slot: 'petals' }]
    const whole = { ...SMALL.motifs![0]!, slots, weighed: { motifs: 10, grams: 40 } }
    await inWindow(YarnPlace, {}, { ...SMALL, motifs: [whole as never] })
    expect(screen.getAllByText('split by area')).toHaveLength(2)
  })

  it('follows what is on hand, in grams, metres and balls together', async () => {
    const { app } = await inWindow(YarnPlace, {}, SMALL)
    const before = app.document.plan.yarns.find((need) => need.id === 'y1')!
    await fill('Skeins of Brick on hand', '2.5')
    expect(app.document.plan.yarns.find(({ id }) => id === 'y1')!.onHand).toBe(20 + 2.5 * 50)
    await fill('Skeins of Brick on hand', '0')
    await fill('Brick on hand, by weight', '10 oz')
    expect(app.document.project.yarns![0]!.onHandGrams).toBeCloseTo(283.495, 3)
    const after = app.document.plan.yarns.find((need) => need.id === 'y1')!
    expect(after.balls).toBe(before.balls)
    expect(after.toBuy).toBe(0)
    expect(screen.getAllByText('enough on hand').length).toBeGreaterThan(0)
  })

  it('says balls in UK terms and skeins in US terms', async () => {
    await inWindow(YarnPlace, {}, { ...SMALL, terms: 'UK' })
    expect(screen.getAllByText('Balls').length).toBe(2)
  })
})

describe('the ledger', () => {
  it('shows the difference while something is tried, and only then', async () => {
    const { app } = await inWindow(Ledger, {}, example('hedgerow-baby-throw'))
    const counts = () => screen.getByText('Motifs').parentElement!.textContent!.replace(/\s+/g, ' ')
    const motifs = app.document.plan.counts.motifs
    app.document.preview('change the rows', (project) => ({
      ...project,
      layout: { ...project.layout, kind: 'blanket' as const, rows: 5 },
    }))
    await waitFor(() => expect(counts()).toContain(`−${motifs - app.document.plan.counts.motifs}`))
    app.document.cancel()
    await waitFor(() => expect(counts()).not.toContain('−'))
  })
})
