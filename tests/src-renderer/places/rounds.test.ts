import { cleanup, fireEvent, screen, waitFor, within } from '@testing-library/svelte'
import { afterEach, beforeAll, describe, expect, it } from 'vitest'
import type { Project, RoundsMotif } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { takeApart } from '../../../src-core/notation/take-apart'
import * as edits from '../../../src-renderer/places/motif/rounds/edits'
import { exampleBlock } from '../../../src-renderer/places/motif/rounds/example'
import { readForEditor } from '../../../src-renderer/places/motif/rounds/reading'
import RoundsEditor from '../../../src-renderer/places/motif/rounds/RoundsEditor.svelte'
import { inWindow } from '../in-window'
import { SMALL } from '../projects'

afterEach(cleanup)
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
    const there = edits.toRounds(SMALL, 'm1')
    expect(there.motifs![0]).toMatchObject({ kind: 'rounds', measured: { overTips: 80, overValleys: 56 } })
    expect(edits.toMeasured(there, 'm1', null).motifs![0]).toMatchObject(measured)
    const full = edits.replaceRounds(there, 'm1', takeApart(exampleBlock('US'), 'US'))
    const back = edits.toMeasured(full, 'm1', null)
    expect(back.motifs![0]).toMatchObject(measured)
    expect(edits.toRounds(back, 'm1').motifs![0]).toMatchObject(motifOf(full))
  })

  it('takes the measures that were not taken from the rounds', () => {
    const project = written()
    const { account } = readForEditor(motifOf(project), project)
    const [motif] = edits.toMeasured(project, 'm1', account).motifs!
    expect(motif).toMatchObject({
      kind: 'measured',
      outline: 'petals',
      petals: 6,
      slots: [{ slot: 'petals' }],
    })
    const plan = planProject(edits.toMeasured(project, 'm1', account))
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
    expect(motifOf(more).rounds!.map(({ slot }) => slot)).toEqual(['centre', 'petals', 'colour C'])
    for (const way of more.colourways!.filter(({ motif }) => motif === 'm1'))
      expect(way.yarns).toHaveProperty(['colour C'])
  })

  it('are renamed where no other round has them', () => {
    const project = edits.setRoundSlot(edits.setRoundSlot(written(), 'm1', 0, 'middle'), 'm1', 0, 'eye')
    expect(motifOf(project).rounds!.map(({ slot }) => slot)).toEqual(['eye', 'petals', 'petals'])
    expect(project.colourways![0]!.yarns).toHaveProperty('eye')
  })
})

describe('the editor', () => {
  const open = (project: Project) => inWindow(RoundsEditor, { motif: motifOf(project) }, project)
  const round = (number: number) =>
    screen.getByRole<HTMLTextAreaElement>('textbox', { name: `Round ${number}` })

  it('teaches where nothing is written, and takes its example', async () => {
    const { app } = await open(withMotif(empty))
    await fireEvent.click(screen.getByRole('button', { name: 'Try this example' }))
    expect(motifOf(app.document.project).rounds).toHaveLength(3)
    expect(app.document.undoLabel).toBe('paste 3 rounds')
  })

  it('asks for the terms where no word tells them', async () => {
    const { app } = await open(withMotif(empty))
    const field = screen.getByRole('textbox', { name: /^Paste the rounds/ })
    await fireEvent.input(field, {
      target: { value: 'Rnd 1: Magic ring, 12 dc in ring.\nRnd 2: 2 dc in each st.' },
    })
    const take = screen.getByRole<HTMLButtonElement>('button', { name: 'Take it apart' })
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
    const chart = screen.getByRole('img', { name: /^Chart of Flower/ })
    const marks = chart.querySelectorAll('[data-mark]')
    expect(marks.length).toBeGreaterThan(60)
    await fireEvent.click(marks[marks.length - 1]!)
    await waitFor(() => expect(document.activeElement).toBe(round(3)))
    expect(chart.querySelectorAll('.lit').length).toBeGreaterThan(40)
  })
})
