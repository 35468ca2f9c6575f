import { fireEvent, screen, waitFor, within } from '@testing-library/svelte'
import { beforeAll, describe, expect, it } from 'vitest'
import type { MeasuredMotif, Project, RoundsMotif } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { takeApart } from '../../../src-core/notation/take-apart'
import { withValue } from '../../../src-core/fields/field'
import { WEIGHT } from '../../../src-core/fields/motif'
import * as basis from '../../../src-renderer/places/motif/rounds/basis'
import * as edits from '../../../src-renderer/places/motif/rounds/edits'
import { exampleBlock } from '../../../src-renderer/places/motif/rounds/example'
import { ownRoundsProject } from '../../../src-renderer/places/motif/rounds/own-rounds'
import { readForEditor } from '../../../src-renderer/places/motif/rounds/reading'
import { inWindow } from '../in-window'
import { SMALL } from '../projects'
import RoundsOfFirst from './RoundsOfFirst.svelte'
import { SETTINGS } from '../memory-bridge'

// jsdom lays nothing out, so nothing can be scrolled to.
beforeAll(() => {
  Element.prototype.scrollIntoView = () => undefined
})

const GAUGE = { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 3.5 }
const empty: RoundsMotif = { id: 'm1', name: 'Flower', kind: 'rounds', gauge: GAUGE, rounds: [] }
const withMotif = (motif: RoundsMotif): Project => ({ ...SMALL, motifs: [motif] })
const written = (block = exampleBlock('US')): Project =>
  edits.replaceRounds(withMotif(empty), 'm1', takeApart(block, 'US'))
const motifOf = (project: Project): RoundsMotif => {
  const motif = project.motifs![0]!
  if (motif.kind !== 'rounds') throw new Error('not in written rounds')
  return motif
}

describe('the reading of rounds', () => {
  it.each(['US', 'UK'] as const)('of the example in %s terms finds nothing to mark', (terms) => {
    const project = {
      ...withMotif(empty),
      terms,
      motifs: [{ ...empty, gauge: { ...GAUGE, stitch: terms === 'US' ? 'sc' : 'dc' } }],
    }
    const full = edits.replaceRounds(project, 'm1', takeApart(exampleBlock(terms), terms, terms))
    const { entries, account, general } = readForEditor(motifOf(full), full)
    expect(entries.flatMap(({ findings }) => findings.map(({ finding }) => finding.message))).toEqual([])
    expect(general).toEqual([])
    expect(entries[0]!.facts.slice(0, 2)).toEqual([
      terms === 'US' ? 'makes 12 sc' : 'makes 12 dc',
      'in the ring',
    ])
    expect(entries[1]!.facts[1]).toBe('uses all 12 sts')
    expect(entries[2]!.facts[1]).toBe('uses all 6 spaces')
    expect(account).toMatchObject({ shape: 'petals', petals: 6 })
  })

  it('tells what is left', () => {
    const project = written('Rnd 1: Magic ring, 12 sc in ring.\nRnd 2: Sc in next 10 sc; join.')
    const entry = readForEditor(motifOf(project), project).entries[1]!
    expect(entry.facts.slice(0, 3)).toEqual(['makes 10 sc', 'uses 10 of 12 sts', '2 sts left'])
    expect(entry.findings[0]!.finding.code).toBe('rounds/stitches-left')
  })
})

describe('switching between measures and rounds', () => {
  it('loses nothing that was entered either way', () => {
    const measured = SMALL.motifs![0]!
    const there = basis.toRounds(SMALL, 'm1')
    expect(there.motifs![0]).toMatchObject({ kind: 'rounds', measured: { overTips: 80, overValleys: 56 } })
    expect(basis.toMeasured(there, 'm1', null).motifs![0]).toMatchObject(measured)
    const full = edits.replaceRounds(there, 'm1', takeApart(exampleBlock('US'), 'US'))
    const back = basis.toMeasured(full, 'm1', null)
    expect(back.motifs![0]).toMatchObject(measured)
    expect(basis.toRounds(back, 'm1').motifs![0]).toMatchObject(motifOf(full))
  })

  it('takes the measures that were not taken from the rounds', () => {
    const project = written()
    const { account } = readForEditor(motifOf(project), project)
    const [motif] = basis.toMeasured(project, 'm1', account).motifs!
    expect(motif).toMatchObject({
      kind: 'measured',
      outline: 'petals',
      petals: 6,
      slots: [{ slot: 'centre' }, { slot: 'petals' }],
    })
    const plan = planProject(basis.toMeasured(project, 'm1', account))
    expect(plan.motif!.overTips).toBeCloseTo(account!.overTips, 1)
    expect(plan.findings.filter(({ severity }) => severity === 'error')).toEqual([])
  })
})

describe('colours of rounds', () => {
  it('are those that the text names, and get a yarn in the colourways', () => {
    const project = written(
      'Rnd 1: With A, magic ring, 6 sc in ring.\nRnd 2: With B, 2 sc in each st around.',
    )
    expect(motifOf(project).rounds!.map(({ slot }) => slot)).toEqual(['centre', 'petals'])
    const more = written(
      'Rnd 1: With A, magic ring, 6 sc in ring.\nRnd 2: With B, 2 sc in each st.\nRnd 3: With C, sc in each st.',
    )
    expect(motifOf(more).rounds!.map(({ slot }) => slot)).toEqual(['centre', 'petals', 'color C'])
    for (const way of more.colourways!.filter(({ motif }) => motif === 'm1'))
      expect(way.yarns).toHaveProperty(['color C'])
  })

  it('are renamed where no other round has them', () => {
    const project = edits.setRoundSlot(edits.setRoundSlot(written(), 'm1', 0, 'middle'), 'm1', 0, 'eye')
    expect(motifOf(project).rounds!.map(({ slot }) => slot)).toEqual(['eye', 'petals', 'petals'])
    expect(project.colourways![0]!.yarns).toHaveProperty('eye')
  })

  it('leave the colourways with the last round that had them', () => {
    const of = (project: Project, ...slots: string[]) =>
      slots.reduce((next, slot, i) => edits.setRoundSlot(next, 'm1', i, slot), project)
    const project = of(written(), 'middle', 'rays', 'rays')
    expect(Object.keys(project.colourways![0]!.yarns!).sort()).toEqual(['middle', 'rays'])
    expect(planProject(project).findings.map(({ code }) => code)).not.toContain('file/unknown-slot')
  })
})

describe('a project that begins with rounds', () => {
  const begun = () => ownRoundsProject(SETTINGS, { kind: 'blanket', width: 1000, height: 1300 })
  const strangers = (project: Project) =>
    planProject(project).findings.filter(
      ({ code, severity }) => /slot|colourway|unknown/.test(code) && severity !== 'note',
    )

  it('takes a block that names no colour as one colour, with a yarn, and misses none', () => {
    const project = edits.replaceRounds(begun(), 'm1', takeApart(exampleBlock('US'), 'US'))
    expect(motifOf(project).rounds!.map(({ slot }) => slot)).toEqual(['main', 'main', 'main'])
    expect(project.colourways![0]!.yarns).toEqual({ main: project.yarns![0]!.id })
    expect(strangers(project)).toEqual([])
    expect(planProject(project).findings.filter(({ severity }) => severity === 'error')).toEqual([])
  })

  it('gives colours that a block names one yarn after the other', () => {
    const block = 'Rnd 1: With A, magic ring, 6 sc in ring.\nRnd 2: With B, 2 sc in each st around.'
    const project = edits.replaceRounds(begun(), 'm1', takeApart(block, 'US'))
    const [first, second] = project.yarns!
    expect(project.colourways![0]!.yarns).toEqual({ 'color A': first!.id, 'color B': second!.id })
    expect(strangers(project)).toEqual([])
  })

  it('has a colour for rounds that are written by hand', () => {
    const one = edits.insertRounds(begun(), 'm1', 0, [{ work: 'magic ring, 6 sc in ring' }])
    const two = edits.insertRounds(one, 'm1', 1, [{ work: '2 sc in each st around' }])
    expect(motifOf(two).rounds!.map(({ slot }) => slot)).toEqual(['main', 'main'])
    expect(strangers(two)).toEqual([])
  })

  it('drops no colour of a motif that goes from measures to rounds, and misses none when a block names none', () => {
    const there = basis.toRounds(SMALL, 'm1')
    const one = edits.insertRounds(there, 'm1', 0, [{ work: 'magic ring, 6 sc in ring' }])
    const two = edits.insertRounds(one, 'm1', 1, [{ work: '2 sc in each st around' }])
    expect(motifOf(two).rounds!.map(({ slot }) => slot)).toEqual(['centre', 'petals'])
    expect(two.colourways).toEqual(SMALL.colourways)
    const pasted = edits.replaceRounds(there, 'm1', takeApart(exampleBlock('US'), 'US'))
    expect(strangers(pasted)).toEqual([])
  })

  it('gives rounds that name no colours those of the motif, from the centre outward, and keeps their weights', () => {
    const motif = SMALL.motifs![0] as MeasuredMotif
    const slots = [
      { slot: 'centre', grams: 0.5 },
      { slot: 'petals', grams: 1.5 },
    ]
    const project: Project = { ...SMALL, motifs: [{ ...motif, slots, weighed: undefined }] }
    const block =
      'Rnd 1: Magic ring, 8 sc in ring.\nRnd 2: 2 sc in each st around.\nRnd 3: Sc in each st around.'
    const there = edits.replaceRounds(basis.toRounds(project, 'm1'), 'm1', takeApart(block, 'US'))
    expect(motifOf(there).rounds!.map(({ slot }) => slot)).toEqual(['centre', 'petals', 'petals'])
    expect(there.colourways).toEqual(SMALL.colourways)
    expect(motifOf(there).weighed).toEqual({ motifs: 1, grams: 2, shares: { centre: 0.25, petals: 0.75 } })
    const other = withValue(there, WEIGHT.share, 0.3, ['m1', 'centre'])
    expect(motifOf(other).weighed!.shares).toEqual({ centre: 0.3, petals: 0.75 })
    expect(motifOf(withValue(other, WEIGHT.share, undefined, ['m1', 'petals'])).weighed!.shares).toEqual({
      centre: 0.3,
    })
  })
})

describe('the editor', () => {
  const open = (project: Project) => inWindow(RoundsOfFirst, {}, project)
  const round = (number: number) =>
    screen.getByRole<HTMLTextAreaElement>('textbox', { name: `Round ${number}` })

  it('teaches where nothing is written, and takes its example', async () => {
    const { app } = await open(withMotif(empty))
    await fireEvent.click(screen.getByRole('button', { name: 'Try this example' }))
    expect(motifOf(app.document.project).rounds).toHaveLength(3)
    expect(app.document.undoLabel).toBe('paste 3 rounds')
  })

  it('lays out as many as were wished for, once a pasted pattern has a size', async () => {
    const project = withMotif(empty)
    const target = { width: 900, height: 1100 }
    const { app } = await open({ ...project, layout: { ...project.layout, target } as Project['layout'] })
    expect(app.document.plan.motifs).toEqual([])
    await fireEvent.click(screen.getByRole('button', { name: 'Try this example' }))
    const { pitch, size } = app.document.plan
    expect(Math.abs(size.width - target.width)).toBeLessThanOrEqual(pitch.column)
    expect(Math.abs(size.height - target.height)).toBeLessThanOrEqual(pitch.row)
    app.document.undo()
    expect(app.document.project.layout).toEqual({ ...project.layout, target })
  })

  it('asks for the rounds, then for the gauge where there is none, and keeps its fields while they are filled in', async () => {
    const { app } = await open(withMotif({ ...empty, gauge: undefined }))
    const [rounds, gauge, then] = screen.getAllByRole('heading', { level: 3 })
    expect([rounds, gauge, then].map((node) => node!.textContent)).toEqual([
      'Your rounds',
      'Your gauge',
      'What happens then',
    ])
    const stitches = screen.getByRole('textbox', { name: 'Stitches' })
    await fireEvent.input(stitches, { target: { value: '20' } })
    await fireEvent.blur(stitches)
    expect(motifOf(app.document.project).gauge).toMatchObject({ stitches: 20 })
    expect(screen.getByRole('textbox', { name: 'Rows' })).toBeTruthy()
  })

  it('asks for no gauge that it has', async () => {
    await open(withMotif(empty))
    expect(screen.queryByRole('heading', { name: 'Your gauge' })).toBeNull()
    expect(screen.getByRole('heading', { name: 'Your rounds' })).toBeTruthy()
  })

  it('begins with round 1 where there is nothing to paste', async () => {
    const { app } = await open(withMotif(empty))
    await fireEvent.click(screen.getByRole('button', { name: 'Write round 1' }))
    expect(motifOf(app.document.project).rounds).toHaveLength(1)
    await waitFor(() => expect(document.activeElement).toBe(round(1)))
  })

  const TWIN = 'Special stitches: Twin: (Sc, hdc) in same st'
  const special = () => screen.getByRole<HTMLTextAreaElement>('textbox', { name: /^Stitches of the pattern/ })

  it('takes special stitches of a pasted block into their field, where they can be changed', async () => {
    const { app } = await open(withMotif(empty))
    const block = `${TWIN}\n\nRnd 1: Magic ring, 6 sc in ring.\nRnd 2: *Twin in next st; rep from * around.`
    await fireEvent.input(screen.getByRole('textbox', { name: /^Paste the rounds/ }), {
      target: { value: block },
    })
    await fireEvent.click(screen.getByRole('button', { name: 'Read the rounds' }))
    expect(motifOf(app.document.project)).toMatchObject({ special: 'Twin: (Sc, hdc) in same st' })
    expect(screen.getAllByRole('listitem', { name: /^Rnd/ })).toHaveLength(2)
    expect(special().value).toBe('Twin: (Sc, hdc) in same st')
    expect(screen.getByText('The rounds may use twin.')).toBeTruthy()
    expect(within(screen.getByRole('listitem', { name: 'Rnd 2' })).getByText(/^makes 12 sts/)).toBeTruthy()
    await fireEvent.change(special(), { target: { value: 'Twin: 3 sc in same st' } })
    expect(app.document.undoLabel).toBe('change the special stitches')
    await waitFor(() =>
      expect(within(screen.getByRole('listitem', { name: 'Rnd 2' })).getByText(/^makes 18 sc/)).toBeTruthy(),
    )
    await fireEvent.change(special(), { target: { value: 'two of each' } })
    expect(screen.getByText(/^Nothing is explained yet/)).toBeTruthy()
    await fireEvent.change(special(), { target: { value: '' } })
    expect(motifOf(app.document.project).special).toBeUndefined()
  })

  it('adds what a block explains that is pasted after a round, and forgets nothing', async () => {
    const project = edits.setSpecial(written(), 'm1', 'Picot: ch 3, sl st in first ch')
    const { app } = await open(project)
    const text = `${TWIN}\nRnd 4: Sc in each st around.\nRnd 5: Sc in each st around.`
    await fireEvent.paste(round(3), { clipboardData: { getData: () => text } })
    expect(motifOf(app.document.project).special).toBe(
      'Picot: ch 3, sl st in first ch\nTwin: (Sc, hdc) in same st',
    )
    const whole = edits.replaceRounds(app.document.project, 'm1', takeApart(exampleBlock('US'), 'US'))
    expect(motifOf(whole).special).toContain('Picot:')
  })

  it('shows special stitches that an older file has as a round under their own name', async () => {
    const older = { ...motifOf(written()), rounds: [{ work: TWIN }, ...motifOf(written()).rounds!] }
    await open(withMotif(older))
    expect(screen.getByRole('listitem', { name: 'Special stitches' })).toBeTruthy()
    expect(within(screen.getByRole('listitem', { name: 'Rnd 1' })).getByText('makes 12 sc')).toBeTruthy()
  })

  it('uses another wording for the rounds when asked; undo brings the old one back', async () => {
    const motif = {
      ...empty,
      rounds: [
        { work: 'Magic ring, 6 single crochet in ring.', slot: 'a', across: 30 },
        { work: 'Rnds 2-3: *sc in next st*, repeat from * to * 5 times more.', slot: 'b' },
        { work: 'sc in each stitch around.', slot: 'c', across: 50 },
      ],
    }
    const { app } = await open(withMotif(motif))
    await fireEvent.click(screen.getByText('Printed back'))
    await fireEvent.click(screen.getByRole('radio', { name: 'Consistent' }))
    await fireEvent.click(screen.getByRole('button', { name: 'Use this wording for the rounds' }))
    expect(motifOf(app.document.project).rounds).toEqual([
      { work: 'Magic ring, 6 sc in ring.', slot: 'a', across: 30 },
      { work: 'Rnds 2-3: *Sc in next st; rep from * 5 more times.', slot: 'b' },
      { work: 'Sc in each st around.', slot: 'c', across: 50 },
    ])
    expect(app.document.undoLabel).toBe('reword the rounds')
    app.document.undo()
    expect(motifOf(app.document.project).rounds).toEqual(motif.rounds)
  })

  it('counts at every key, before the project and its plan follow', async () => {
    const { app } = await open(written())
    const before = app.document.project
    await fireEvent.input(round(3), { target: { value: '(Sc, dc, sc) in each ch-4 sp around; join' } })
    const item = screen.getByRole('listitem', { name: 'Rnd 3' })
    expect(within(item).getByText(/^makes 18 sts/)).toBeTruthy()
    expect(app.document.project).toBe(before)
    await waitFor(() => expect(app.document.project).not.toBe(before))
  })

  it('asks for the terms where no word tells them', async () => {
    const { app } = await open(withMotif(empty))
    const field = screen.getByRole('textbox', { name: /^Paste the rounds/ })
    await fireEvent.input(field, {
      target: { value: 'Rnd 1: Magic ring, 12 dc in ring.\nRnd 2: 2 dc in each st.' },
    })
    const take = screen.getByRole<HTMLButtonElement>('button', { name: 'Read the rounds' })
    expect(take.disabled).toBe(true)
    await fireEvent.change(screen.getByRole('combobox', { name: 'Written in' }), { target: { value: 'UK' } })
    await fireEvent.click(take)
    expect(motifOf(app.document.project).rounds![0]!.work).toBe('Magic ring, 12 sc in ring.')
  })

  it('keeps what is typed as one step of the document, and takes it back by key', async () => {
    const project = written()
    const { app } = await open(project)
    const before = round(3).value
    for (const text of [`${before} F`, `${before} Fa`, `${before} Fasten off.`])
      await fireEvent.input(round(3), { target: { value: text } })
    await fireEvent.blur(round(3))
    expect(motifOf(app.document.project).rounds![2]!.work).toBe(`${before} Fasten off.`)
    expect(app.document.undoLabel).toBe('change round 3')
    await fireEvent.keyDown(round(3), { key: 'z', ctrlKey: true })
    expect(motifOf(app.document.project).rounds).toEqual(motifOf(project).rounds)
    expect(app.document.undoLabel).toBeNull()
  })

  it('marks a slip at its round and words', async () => {
    const project = written(exampleBlock('US').replace('4 more times', '5 more times'))
    await open(project)
    expect(round(2).getAttribute('aria-invalid')).toBe('true')
    expect(round(1).getAttribute('aria-invalid')).toBeNull()
    const item = screen.getByRole('listitem', { name: 'Rnd 2' })
    await fireEvent.click(within(item).getByRole('button', { name: /^Error/ }))
    await waitFor(() => {
      const { value, selectionStart, selectionEnd } = round(2)
      expect(value.slice(selectionStart, selectionEnd)).toBe('rep from * 5 more times')
    })
  })

  it('takes several rounds pasted into one apart, leaves a single line to the field', async () => {
    const { app } = await open(written())
    const paste = (text: string) => fireEvent.paste(round(3), { clipboardData: { getData: () => text } })
    expect(await paste('ch 3')).toBe(true)
    await paste('Rnd 4: Sl st in each st around.\nRnd 5: Fasten off, sc in each st around.')
    expect(app.document.undoLabel).toBe('paste 2 rounds')
    expect(motifOf(app.document.project).rounds).toHaveLength(5)
  })

  it('selects the words of a stitch that is pressed in the chart', async () => {
    await open(written())
    const chart = await screen.findByRole('img', { name: /^Chart of Flower/ })
    const marks = chart.querySelectorAll('[data-mark]')
    expect(marks.length).toBeGreaterThan(60)
    await fireEvent.click(marks[marks.length - 1]!)
    await waitFor(() => expect(document.activeElement).toBe(round(3)))
    expect(chart.querySelectorAll('.lit').length).toBeGreaterThan(40)
  })

  it('keeps its chart until the next is drawn, and says why there is none', async () => {
    const { app } = await open(written())
    const chart = await screen.findByRole('img', { name: /^Chart of Flower/ })
    const marks = () => document.querySelectorAll('[data-mark]').length
    const before = marks()
    const draws = app.background.chart
    app.background.chart = () => Promise.reject(new Error('it ended unexpectedly'))
    await fireEvent.input(round(3), { target: { value: 'sl st in each sp around' } })
    expect(chart.isConnected).toBe(true)
    const alert = await screen.findByText(/The chart cannot be drawn: it ended unexpectedly/)
    expect(screen.queryByRole('img', { name: /^Chart of Flower/ })).toBeNull()
    app.background.chart = draws
    await fireEvent.click(within(alert).getByRole('button', { name: 'Try again' }))
    await screen.findByRole('img', { name: /^Chart of Flower/ })
    expect(marks()).toBeLessThan(before)
    expect(marks()).toBeGreaterThan(0)
  })
})
