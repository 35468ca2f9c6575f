import { cleanup, fireEvent, screen, within } from '@testing-library/svelte'
import { createRawSnippet } from 'svelte'
import { describe, expect, it, vi } from 'vitest'
import type { DocumentState } from '../../../src-renderer/state/document.svelte'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import MapTable from '../../../src-renderer/frame/MapTable.svelte'
import MapTools from '../../../src-renderer/frame/MapTools.svelte'
import { runCommand } from '../../../src-renderer/frame/commands'
import { paintAndTell } from '../../../src-renderer/frame/paint-acts'
import { kindOf } from '../../../src-renderer/kinds/kinds'
import Fold from '../../../src-renderer/parts/Fold.svelte'
import ColoursPlace from '../../../src-renderer/places/colours/ColoursPlace.svelte'
import { pieceAt } from '../../../src-core/layout/placed'
import { inWindow } from '../in-window'
import { SMALL } from '../projects'

const WAYS = ['c1', 'c2', 'c3', 'c4', 'c5']
/** 368 motifs in five colourways, no two alike. */
const LARGE: Project = {
  ...SMALL,
  colourways: WAYS.map((id, index) => ({ ...SMALL.colourways![0]!, id, code: 'ABCDE'[index]! })),
  layout: {
    ...(SMALL.layout as BlanketLayout),
    arrangement: 'offset-rows',
    columns: 16,
    rows: 23,
    cells: { fill: { pattern: 'no-two-alike', colourways: WAYS, seed: 3 } },
  },
}
const painted = (project: Project) => (project.layout as BlanketLayout).cells?.painted ?? {}

/** A large blanket is planned beside the window. */
const planned = (document: DocumentState) => vi.waitFor(() => expect(document.isPlanning).toBe(false), 5000)

describe('painting in the window', () => {
  it('says how many others changed, marks them, and takes it all back by undo', async () => {
    const { app } = await inWindow(MapTable, {}, LARGE)
    const { document } = app
    const before = document.plan.motifs.map(({ colourway }) => colourway)
    const project = document.project
    const cell = document.plan.motifs.find(
      ({ row, column, colourway }) => row === 9 && column === 8 && colourway,
    )!
    paintAndTell(
      app,
      [cell.id],
      WAYS.find((id) => id !== cell.colourway)!,
    )
    await planned(document)
    const others = document.plan.motifs.filter(
      ({ id, colourway }, index) => id !== cell.id && colourway !== before[index],
    )
    expect(others.length).toBeLessThan(8)
    const said =
      others.length === 0
        ? ''
        : others.length === 1
          ? '; 1 other changed'
          : `; ${others.length} others changed`
    expect(app.said).toBe(`Painted 1 motif${said}.`)
    expect(app.view.painted?.words).toBe(app.said)
    expect(app.view.painted?.others).toEqual(new Set(others.map(({ id }) => id)))
    document.undo()
    await planned(document)
    expect(document.project).toBe(project)
    expect(document.plan.motifs.map(({ colourway }) => colourway)).toEqual(before)
  })

  it('says nothing late over what was said since', async () => {
    const { app } = await inWindow(MapTable, {}, LARGE)
    const { document } = app
    const cell = document.plan.motifs.find(({ colourway }) => colourway === 'c1')!
    paintAndTell(app, [cell.id], 'c2', () => 'It is c2.')
    app.say('Nothing to keep that is not kept.')
    await planned(document)
    expect(app.said).toBe('Nothing to keep that is not kept.')
  })

  it('says of a motif what it is now, although its plan is made beside the window', async () => {
    const { app } = await inWindow(MapTable, {}, LARGE)
    const { document } = app
    const cell = document.plan.motifs.find(({ colourway }) => colourway === 'c1')!
    const words = () =>
      kindOf(document.project).pieceWords(document.project, document.plan, pieceAt(document.plan, cell.id)!)
    const was = words()
    paintAndTell(app, [cell.id], 'c2', words)
    await planned(document)
    expect(words()).not.toBe(was)
    expect(app.said).toMatch(/^Painted 1 motif/)
    expect(app.said).toContain(words())
  })

  it('leaves what is there for a new row, and keeps and frees what is selected or all', async () => {
    const { app } = await inWindow(MapTable, {}, LARGE)
    const { document, selection } = app
    const before = new Map(document.plan.motifs.map(({ id, colourway }) => [id, colourway]))
    document.change('add a row', (project) => ({
      ...project,
      layout: { ...(project.layout as BlanketLayout), rows: 24 },
    }))
    await planned(document)
    const now = new Map(document.plan.motifs.map(({ id, colourway }) => [id, colourway]))
    expect([...before].filter(([id, way]) => now.get(id) !== way)).toEqual([])
    expect(now.size).toBe(384)
    selection.replace(['1,1', '1,2'])
    runCommand('keep-colours', app, null)
    expect(painted(document.project)).toEqual({ '1,1': now.get('1,1'), '1,2': now.get('1,2') })
    expect(document.undoLabel).toBe('keep the colors of 2 motifs')
    expect(app.said).toBe('Kept 2 motifs.')
    const words = kindOf(document.project).pieceWords(
      document.project,
      document.plan,
      pieceAt(document.plan, '1,1')!,
    )
    expect(words).toContain(', fixed,')
    selection.clear()
    runCommand('keep-colours', app, null)
    expect(Object.keys(painted(document.project))).toHaveLength(384)
    runCommand('free-colours', app, null)
    expect(painted(document.project)).toEqual({})
    expect(app.said).toBe('Freed 384 motifs.')
    await planned(document)
    expect(document.plan.motifs.map(({ colourway }) => colourway)).toEqual([...now.values()])
    runCommand('free-colours', app, null)
    expect(app.said).toBe('Nothing is fixed there.')
  })

  it('does not change what is kept when something beside it is painted', async () => {
    const { app } = await inWindow(MapTable, {}, LARGE)
    const { document, selection } = app
    selection.replace(document.plan.motifs.filter(({ id }) => id !== '9,8').map(({ id }) => id))
    runCommand('keep-colours', app, null)
    const kept = { ...painted(document.project) }
    const beside = document.plan.motifs.find(({ id }) => id === '9,9')!
    paintAndTell(app, ['9,8'], beside.colourway)
    expect(painted(document.project)).toEqual({ ...kept, '9,8': beside.colourway })
    expect(app.said).toBe('Painted 1 motif.')
    await planned(document)
    expect(document.findings.map(({ code }) => code)).toContain('colours/painted-alike')
  })

  it('shows in the table what is fixed, to be fixed or freed there', async () => {
    const { app } = await inWindow(MapTable, {}, SMALL)
    const box = screen.getByRole<HTMLInputElement>('checkbox', { name: 'Color of motif 1 is fixed' })
    expect(box.checked).toBe(false)
    await fireEvent.click(box)
    const id = app.document.plan.motifs.find(({ label }) => label === '1')!.id
    expect(Object.keys(painted(app.document.project))).toEqual([id])
    expect(box.checked).toBe(true)
    await fireEvent.click(box)
    expect(painted(app.document.project)).toEqual({})
  })

  it('has buttons over the map and in the place', async () => {
    const { app } = await inWindow(MapTools, { zoom: 1, drawing: null }, SMALL)
    app.view.tool = 'paint'
    await fireEvent.click(await screen.findByRole('button', { name: 'Keep all' }))
    const all = app.document.plan.counts.motifs
    expect(Object.keys(painted(app.document.project))).toHaveLength(all)
    await fireEvent.click(screen.getByRole('button', { name: 'Free all' }))
    cleanup()
    const place = await inWindow(ColoursPlace, {}, SMALL)
    place.app.selection.replace(['1,1'])
    const group = await screen.findByRole('group', { name: 'Fixed colors' })
    await fireEvent.click(await within(group).findByRole('button', { name: 'Keep these colors' }))
    expect(Object.keys(painted(place.app.document.project))).toEqual(['1,1'])
    await fireEvent.click(within(group).getByRole('button', { name: 'Free these colors' }))
    expect(painted(place.app.document.project)).toEqual({})
  })
})

describe('a fold', () => {
  const children = createRawSnippet(() => ({ render: () => '<p>inside</p>' }))

  it('stays as it was left for the session, in its place', async () => {
    const { app } = await inWindow(Fold, { title: 'Gaps', children }, SMALL)
    const details = () => document.querySelector('details')!
    expect(details().open).toBe(false)
    details().open = true
    await fireEvent(details(), new Event('toggle'))
    expect([...app.view.folds]).toEqual([['null Gaps', true]])
  })
})
