import { fireEvent, screen, within } from '@testing-library/svelte'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import Hand from '../../../src-renderer/frame/Hand.svelte'
import { paintCells } from '../../../src-renderer/frame/map-acts'
import { missingOnMap } from '../../../src-renderer/frame/missing-on-map'
import MapTable from '../../../src-renderer/frame/MapTable.svelte'
import { kindOf } from '../../../src-renderer/kinds/kinds'
import { DocumentState } from '../../../src-renderer/state/document.svelte'
import { EXAMPLE_GROUPS, EXAMPLES } from '../../../src-renderer/start/examples'
import { inWindow } from '../in-window'
import { example } from '../projects'
import { CUSHION, GARLAND } from './on-map'

describe('painting as a gesture', () => {
  it('keeps to the settled project while it is tried', () => {
    const document = new DocumentState(example(CUSHION))
    paintCells(document, ['1,2'], 'light', 'preview')
    expect(document.isPreviewing).toBe(true)
    document.cancel()
    expect(document.project).toEqual(example(CUSHION))
  })
})

describe('a map that something is missing for', () => {
  const told = (project: Project) =>
    missingOnMap(project, new DocumentState(project).plan, kindOf(project).emptyMap)
  const own = (motif: NonNullable<Project['motifs']>[number], columns = 5): Project => ({
    ...{ format: 'petalyard-project', version: 1, motifs: [motif] },
    layout: { kind: 'blanket', motif: motif.id, columns, rows: 6 },
  })

  it('says what, and leads there', () => {
    expect(told(own({ id: 'm', kind: 'rounds', name: 'Quince' }))).toEqual({
      what: 'Nothing is arranged yet.',
      then: 'Quince: it has no written rounds yet. Write or paste its rounds, or enter the measures of a finished motif.',
      way: 'Go to Motif',
      to: { place: 'motif', motif: 'm' },
    })
    const sized = { id: 'm', kind: 'measured', outline: 'round', across: 60 } as const
    expect(told(own(sized, 0))).toMatchObject({
      then: expect.stringMatching(/^Columns: found 0, .+ Enter how many you want/),
      way: 'Go to Arrangement',
      to: { place: 'arrangement' },
    })
  })

  it('leads to a panel that cannot be used in the words of its kind', () => {
    const panel = { shape: 'outline', path: '<svg/>', allowance: 10 } as const
    const layout = { kind: 'applique' as const, panel, items: [] }
    expect(told({ format: 'petalyard-project', version: 1, layout })).toMatchObject({
      what: 'There is no panel to place anything on.',
      then: expect.stringContaining('This is part of a document'),
      way: 'To the panel',
      to: { place: 'arrangement' },
    })
  })

  it('says nothing of what is drawn, or was never begun', () => {
    expect(told(example(CUSHION))).toBeNull()
    expect(told({ format: 'petalyard-project', version: 1 })).toBeNull()
  })
})

describe('numbers on the dimension lines', () => {
  const measures = (project: Project) => {
    const { plan } = new DocumentState(project)
    return { ...kindOf(project).measures(project, plan, plan), project }
  }
  const sized = (project: Project) => new DocumentState(project).plan

  it('change a panel', () => {
    const { across, down, project } = measures(example(CUSHION))
    expect([across.label, across.value, down.value]).toEqual(['Width of the panel', 450, 450])
    expect(sized(across.edit!(project, 500)).size).toMatchObject({ width: 500, height: 450 })
    expect(sized(down.edit!(project, 400)).size).toMatchObject({ width: 450, height: 400 })
  })

  it('change a circle both ways, and leave a drawn outline alone', () => {
    const own = example(CUSHION)
    if (own.layout?.kind !== 'applique') throw new Error('the example is a panel')
    const round: Project = {
      ...own,
      layout: { ...own.layout, panel: { shape: 'circle', diameter: 400, allowance: 10 } },
    }
    const { across, down } = measures(round)
    expect(across.label).toBe('Diameter of the panel')
    expect(sized(down.edit!(round, 420)).size).toMatchObject({ width: 420, height: 420 })
    expect(measures(example('pond-edge-bag')).across.edit).toBeNull()
  })

  it('change the wall and the drop of a garland in swags', () => {
    const { across, down, project } = measures(example(GARLAND))
    expect([across.label, across.value]).toEqual(['Width of the wall', 2100])
    expect([down.label, down.value]).toEqual(['Drop of a swag', 110])
    expect(sized(across.edit!(project, 2400)).garland!.swags).toMatchObject({
      count: 3,
      span: 800,
      width: 2400,
    })
    expect(sized(down.edit!(project, 150)).garland!.swags).toMatchObject({ drop: 150 })
  })

  it('change the cord of a straight one where it is given, and are told where they follow', () => {
    const own = example(GARLAND)
    if (own.layout?.kind !== 'garland') throw new Error('the example is a garland')
    const { swags: _, ...straight } = own.layout
    const given: Project = {
      ...own,
      layout: { ...straight, cord: { ...straight.cord, length: 1800 } },
    }
    const { across, down } = measures(given)
    expect([across.label, across.value]).toEqual(['Length of the cord between the ties', 1800])
    expect(sized(across.edit!(given, 2000)).garland!.cord).toMatchObject({ length: 2000 })
    expect(down.edit).toBeNull()
    const following: Project = {
      ...own,
      layout: { ...straight, spacing: { between: 'edges', mm: 30, count: 9 } },
    }
    expect(measures(following).across.edit).toBeNull()
  })
})

describe('the map in words', () => {
  it('says what it is of', () => {
    const label = (name: string) => {
      const project = example(name)
      return kindOf(project).mapLabel(new DocumentState(project).plan)
    }
    expect(label(GARLAND)).toBe('Garland of 29 items')
    expect(label(CUSHION)).toBe('Panel of 27 items')
    expect(label('limekiln-cushion')).toBe('Map of 19 motifs')
  })

  const cells = (row: HTMLElement) =>
    within(row)
      .getAllByRole('cell')
      .map((cell) => cell.textContent!.trim())
  const heads = () => screen.getAllByRole('columnheader').map((head) => head.textContent)

  it('is a table of what hangs on a cord', async () => {
    const { app } = await inWindow(MapTable, {}, example(GARLAND))
    expect(heads()).toEqual([
      'Number',
      'What',
      'Colorway',
      'Made',
      'Along the cord',
      'Chains before',
      'How it is fastened',
    ])
    const rows = screen.getAllByRole('row').slice(1)
    expect(rows).toHaveLength(29)
    const second = app.document.plan.garland!.items[1]!
    const told = cells(rows[1]!)
    expect(told[0]).toBe('Six-petal bloom')
    expect(told.slice(2)).toEqual(['', '13.4 cm', String(second.chains), second.words])
    await fireEvent.click(screen.getByRole('button', { name: 'Select item 2' }))
    expect(app.selection.focus).toBe('1,2')
  })

  it('offers an item of a cord the colourways of its motif', async () => {
    await inWindow(MapTable, {}, example(GARLAND))
    const choice = screen.getByRole('combobox', { name: 'Colorway of item 2' })
    expect(
      within(choice)
        .getAllByRole('option')
        .map((option) => option.textContent),
    ).toEqual(['A Quince bloom'])
  })

  it('is a table of what lies on a panel, with how high', async () => {
    const { app } = await inWindow(MapTable, {}, example(CUSHION))
    expect(heads()).toEqual([
      'Item',
      'Motif',
      'Colourway',
      'Made',
      'From the left',
      'From the top',
      'Rotated',
      'Wrong side up',
      'Layer from below',
    ])
    const rows = screen.getAllByRole('row').slice(1)
    expect(rows).toHaveLength(27)
    const told = cells(rows[0]!)
    expect(told[0]).toBe('Quince blossom')
    expect(told.slice(2)).toEqual(['', '225 mm', '85 mm', '0°', '', '1'])
    const leaf = app.document.plan.motifs.findIndex(({ flipped }) => flipped)
    if (leaf >= 0) expect(cells(rows[leaf]!)[6]).toBe('yes')
  })
})

describe('the hand', () => {
  it('shows the item of a panel with its own motif and its findings', async () => {
    const own = example(CUSHION)
    if (own.layout?.kind !== 'applique') throw new Error('the example is a panel')
    const [first, ...rest] = own.layout.items!
    const { app } = await inWindow(
      Hand,
      { map: null },
      {
        ...own,
        layout: { ...own.layout, items: [{ ...first!, y: 40 }, ...rest] },
      },
    )
    app.selection.hold('1,1')
    await Promise.resolve()
    expect(screen.getByRole('heading', { name: 'Item 1 Quince blossom' })).toBeTruthy()
    expect(screen.getByText(/reaches .* into the seam allowance/)).toBeTruthy()
    app.selection.hold('1,9')
    await Promise.resolve()
    expect(screen.getByRole('heading', { name: 'Item 9 Leaf' })).toBeTruthy()
    expect(screen.queryByText(/into the seam allowance/)).toBeNull()
  })

  it('shows what hangs on a cord with where it is fastened', async () => {
    const { app } = await inWindow(Hand, { map: null }, example(GARLAND))
    app.selection.hold('1,2')
    await Promise.resolve()
    expect(screen.getByRole('heading', { name: 'Item 2 Six-petal bloom' })).toBeTruthy()
    const { words } = app.document.plan.garland!.items[1]!
    expect(screen.getByRole('img', { name: `Six-petal bloom; ${words}; ${words}` })).toBeTruthy()
  })
})

describe('the examples of the first start', () => {
  it('are all there, in groups by what they are made into', () => {
    expect(EXAMPLE_GROUPS.map(({ kind }) => kind)).toEqual(['garland', 'applique', 'blanket'])
    expect(EXAMPLE_GROUPS.flatMap(({ examples }) => examples)).toHaveLength(EXAMPLES.length)
    expect(EXAMPLES.map(({ name }) => name)).toEqual(
      expect.arrayContaining([GARLAND, CUSHION, 'pond-edge-bag']),
    )
  })
})
