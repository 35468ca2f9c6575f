/** Fillers and half motifs in the window: in the hand, by keys, in the table, painted. */
import { cleanup, fireEvent, screen, within } from '@testing-library/svelte'
import { describe, expect, it } from 'vitest'
import { pieceAt, placedPieces } from '../../../src-core/layout/placed'
import { rowOf } from '../../../src-renderer/drawing/groups'
import type { MapDrawing } from '../../../src-renderer/drawing/map-drawing'
import { stepFrom, stepInOrder } from '../../../src-renderer/drawing/steps'
import Hand from '../../../src-renderer/frame/Hand.svelte'
import { runCommand } from '../../../src-renderer/frame/commands'
import { planProject } from '../../../src-core/plan'
import { paintCells } from '../../../src-renderer/frame/map-acts'
import { onMapKey } from '../../../src-renderer/frame/map-keys'
import MapTable from '../../../src-renderer/frame/MapTable.svelte'
import GapFields from '../../../src-renderer/places/arrangement/blanket/GapFields.svelte'
import { addFillerWay } from '../../../src-renderer/state/edits/gaps'
import { blanketOf, patchBlanket } from '../../../src-renderer/state/edits/layout'
import { inWindow } from '../in-window'
import { example } from '../projects'

/** A corner of the cloth: 20 motifs with 12 fillers between them. */
const WHOLE = example('orangery-cloth')
const openings = planProject(WHOLE).openings
const withWay = addFillerWay(WHOLE, { kind: openings[0]!, all: openings })
const CLOTH = patchBlanket(withWay, { columns: 5, rows: 4 })
const SLATE = patchBlanket(example('slate-roof-lap-blanket'), { columns: 4, rows: 4 })
const way = CLOTH.colourways!.at(-1)!

const drawing = { revealMotif: () => undefined, cancelGesture: () => false } as unknown as MapDrawing

describe('a filler in the hand', () => {
  it('is told with the motifs round it, its colourway and how it is joined, and is painted', async () => {
    const { app } = await inWindow(Hand, { map: null }, CLOTH)
    const { plan } = app.document
    const filler = plan.fillers[0]!
    app.selection.hold(filler.id)
    const heading = await screen.findByRole('heading', { name: /^Filler \d+ between 1, 2, 9 and 10$/ })
    expect(heading).toBeTruthy()
    const paint = screen.getByRole('combobox', { name: /^Paint it/ })
    // Colourways of its own motif alone.
    expect(within(paint).getAllByRole('option')).toHaveLength(2)
    const other = CLOTH.colourways!.find(({ motif, id }) => motif === way.motif && id !== way.id)!
    await fireEvent.change(paint, { target: { value: other.id } })
    expect(app.document.plan.fillers.filter(({ colourway }) => colourway === other.id)).toEqual([
      expect.objectContaining({ id: filler.id }),
    ])
    expect(app.document.undoLabel).toBe('paint 1 filler')
  })

  it('a half motif is told with its row and side', async () => {
    const { app } = await inWindow(Hand, { map: null }, SLATE)
    app.selection.hold('2,left')
    expect(await screen.findByRole('heading', { name: /^Half motif \d+ row 2, left$/ })).toBeTruthy()
    const step = app.document.plan.order.find(({ motif }) => motif === '2,left')!
    expect(step.joins.length).toBeGreaterThan(1)
    // Its picture tells its joins, and has the corners of one side alone.
    const picture = screen.getByRole('img')
    for (const { words } of step.joins) expect(picture.getAttribute('aria-label')).toContain(words)
    expect(picture.querySelectorAll('text').length).toBeLessThanOrEqual(4)
  })
})

describe('keys and groups', () => {
  it('comma and full stop reach every motif, filler and half once', async () => {
    for (const project of [CLOTH, SLATE]) {
      const { app } = await inWindow(MapTable, {}, project)
      const { plan } = app.document
      const press = (key: string) => onMapKey(new KeyboardEvent('keydown', { key }), app, drawing)
      const met = new Set<string>()
      for (const _ of placedPieces(plan)) {
        press('.')
        met.add(app.selection.focus!)
      }
      expect(met.size).toBe(placedPieces(plan).length)
      const last = app.selection.focus
      press('.')
      expect(app.selection.focus).toBe(last)
      press(',')
      expect(app.selection.focus).toBe(stepInOrder(plan, last, -1))
      cleanup()
    }
  })

  it('arrows keep to the row, halves at its ends included; from a filler along the fillers', async () => {
    const { app } = await inWindow(MapTable, {}, SLATE)
    expect(stepFrom(app.document.plan, '2,1', 'left')).toBe('2,left')
    expect(stepFrom(app.document.plan, '2,left', 'right')).toBe('2,1')
    expect(rowOf(app.document.plan, '2,1')).toContain('2,left')
    cleanup()
    const cloth = await inWindow(MapTable, {}, CLOTH)
    const { plan } = cloth.app.document
    const [first, second] = plan.fillers
    expect(stepFrom(plan, first!.id, 'right')).toBe(second!.id)
    expect(plan.motifs.map(({ id }) => id)).toContain(stepFrom(plan, first!.id, 'down'))
    expect(rowOf(plan, first!.id)).toHaveLength(4)
    expect(stepFrom(plan, '1,1', 'down')).toBe('2,1')
  })

  it('all are selected together; a letter paints those that can be worked in it', async () => {
    const { app } = await inWindow(MapTable, {}, CLOTH)
    runCommand('select-all', app, null)
    expect(app.selection.ids.size).toBe(20 + 12)
    paintCells(app.document, [...app.selection.ids], way.id, 'change')
    const { plan } = app.document
    expect(plan.fillers.every(({ colourway }) => colourway === way.id)).toBe(true)
    expect(plan.motifs.some(({ colourway }) => colourway === way.id)).toBe(false)
    expect(app.document.undoLabel).toBe('paint 12 fillers')
  })
})

describe('the table', () => {
  it('lists half motifs and fillers after the motifs, and selects them', async () => {
    const { app } = await inWindow(MapTable, {}, CLOTH)
    // Row 2 is worked to the left: its last filler, of the 4 along it, is the first from the left.
    const button = screen.getByRole('button', { name: 'Select filler 24' })
    expect(button.closest('tr')!.textContent).toMatch(/^24\s*filler\s*between 1, 2, 9 and 10/)
    await fireEvent.click(button)
    expect(pieceAt(app.document.plan, app.selection.focus)).toMatchObject({ kind: 'filler', label: '24' })
  })
})

describe('the fields of openings', () => {
  it('make a round filler with a colourway at one press', async () => {
    const bare = { ...CLOTH, layout: { ...CLOTH.layout!, fillers: undefined } } as typeof CLOTH
    const { app } = await inWindow(GapFields, {}, bare)
    await fireEvent.click(screen.getByRole('button', { name: 'Make a round filler' }))
    expect(app.document.plan.fillers).toHaveLength(12)
    expect(app.document.plan.fillers[0]!.colourway).not.toBe('')
    expect(screen.getByText(/^12 fillers\./)).toBeTruthy()
  })

  it('list each kind of openings with its picture, and what fills it; every step can be undone', async () => {
    // Seven petals, every other row upside down: two kinds of openings between four motifs.
    const seven = patchBlanket(
      {
        ...CLOTH,
        motifs: CLOTH.motifs!.map((motif) =>
          motif.id === 'slice'
            ? { ...motif, outline: 'petals', petals: 7, overTips: 80, overValleys: 56 }
            : motif,
        ) as NonNullable<typeof CLOTH.motifs>,
      },
      { alternateTurn: 180, fillers: undefined },
    )
    const { app } = await inWindow(GapFields, {}, seven)
    const rows = within(screen.getByRole('list', { name: 'Openings by kind' })).getAllByRole('listitem')
    expect(rows).toHaveLength(2)
    const { openings } = app.document.plan
    openings.forEach(({ count }, i) => {
      expect(rows[i]!.textContent).toMatch(new RegExp(`^\\s*${count} openings\\s+between 4 motifs, the `))
      expect(rows[i]!.querySelector('svg circle')).not.toBeNull()
    })
    const smaller = screen.getByRole('combobox', { name: 'Filler between 4 motifs, the smaller' })
    await fireEvent.change(smaller, { target: { value: 'blossom' } })
    expect(app.document.plan.openings.map(({ filler }) => filler)).toEqual([null, 'blossom'])
    expect(app.document.plan.fillers).toHaveLength(openings[1]!.count)
    expect(app.document.undoLabel).toBe('choose the filler')
    await fireEvent.click(within(rows[0]!).getByRole('button', { name: 'Make a round filler' }))
    const made = app.document.project.motifs!.at(-1)!.id
    expect(app.document.plan.openings.map(({ filler }) => filler)).toEqual([made, 'blossom'])
    expect(app.document.plan.fillers).toHaveLength(openings[0]!.count + openings[1]!.count)
    expect(rows[0]!.querySelector('svg circle')).toBeNull()
    await fireEvent.change(smaller, { target: { value: '' } })
    expect(app.document.plan.openings.map(({ filler }) => filler)).toEqual([made, null])
    app.document.undo()
    app.document.undo()
    expect(app.document.plan.openings.map(({ filler }) => filler)).toEqual([null, 'blossom'])
  })

  it('say what waits for openings that are not there, and forget it', async () => {
    const waiting = patchBlanket(CLOTH, {
      fillers: { openings: [{ between: ['slice', 'slice', 'slice'], motif: 'blossom' }] },
    })
    const { app } = await inWindow(GapFields, {}, waiting)
    expect(app.document.plan.findings.map(({ code }) => code)).toContain('layout/filler-kind-missing')
    await fireEvent.click(screen.getByRole('button', { name: 'Forget it' }))
    expect(blanketOf(app.document.project)!.fillers).toBeUndefined()
  })
})
