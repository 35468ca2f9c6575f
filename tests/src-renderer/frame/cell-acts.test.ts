import { screen } from '@testing-library/svelte'
import { tick } from 'svelte'
import { describe, expect, it } from 'vitest'
import Hand from '../../../src-renderer/frame/Hand.svelte'
import {
  bringBack,
  setAlternate,
  setCells,
  setInTheRound,
  setOutline,
} from '../../../src-renderer/state/edits/cells'
import { brushOfMotif, cellBrush, fillCells } from '../../../src-renderer/frame/cell-acts'
import { blanketOf } from '../../../src-renderer/state/edits/layout'
import { cellsProject } from '../../src-core/cells/projects'
import { inWindow } from '../in-window'

const blanket = (project: ReturnType<typeof cellsProject>) => blanketOf(project)!

describe('edits of cells', () => {
  it('leave out, put in, and give back to the pattern', () => {
    const one = cellsProject(['flower'])
    const out = setCells(one, ['1,2', '2,2'], null)
    expect(blanket(out).cells?.motifs).toEqual({ '1,2': null, '2,2': null })
    expect(blanket(bringBack(out, ['1,2'])).cells?.motifs).toEqual({ '2,2': null })
    expect(blanket(bringBack(out, ['1,2', '2,2'])).cells).toEqual({})
    // Its only motif put back in its place needs no word.
    expect(blanket(setCells(out, ['1,2'], 'flower')).cells?.motifs).toEqual({ '2,2': null })
    // Of two that alternate either may be put anywhere.
    const two = setCells(cellsProject(['flower', 'bud']), ['1,2'], 'flower')
    expect(blanket(two).cells?.motifs).toEqual({ '1,2': 'flower' })
  })

  it('alternate two motifs, and one alone again', () => {
    const one = cellsProject(['flower', 'bud'], { alternate: undefined })
    const two = setAlternate(one, 'bud', 'row')
    expect(blanket(two).alternate).toEqual({ motifs: ['flower', 'bud'], by: 'row' })
    expect('alternate' in blanket(setAlternate(two, null))).toBe(false)
  })

  it('give a motif that comes without a colourway one of its own', () => {
    const bare = cellsProject(['flower', 'bud'], { alternate: undefined })
    const without = { ...bare, colourways: bare.colourways!.filter((way) => way.motif === 'flower') }
    const made = setCells(without, ['1,2'], 'bud').colourways!.at(-1)
    expect(made).toMatchObject({ motif: 'bud', yarns: { all: 'y' } })
    expect(setAlternate(without, 'bud').colourways!.at(-1)).toMatchObject({ motif: 'bud' })
    // One that has some keeps them; what is left out needs none.
    expect(setCells(bare, ['1,2'], 'bud').colourways).toBe(bare.colourways)
    expect(setCells(without, ['1,2'], null).colourways).toBe(without.colourways)
  })

  it('cut out an outline as large as the blanket is, and keep its width from shape to shape', () => {
    const now = { width: 640.4, height: 480.2 }
    const cut = setOutline(cellsProject(['flower']), 'triangle', now, { points: 'up' })
    expect(blanket(cut).outlineShape).toEqual({ kind: 'triangle', size: 640, height: 480, points: 'up' })
    // A circle is as high as wide.
    expect(blanket(setOutline(cut, 'circle', { width: 100, height: 100 })).outlineShape).toEqual({
      ...{ kind: 'circle', size: 640, points: 'up' },
    })
    expect('outlineShape' in blanket(setOutline(cut, null, null))).toBe(false)
  })

  it('join in the round with three in a row at least', () => {
    const round = setInTheRound(cellsProject(['flower'], { columns: 2 }), true)
    expect(blanket(round)).toMatchObject({ inTheRound: true, columns: 3 })
    expect('inTheRound' in blanket(setInTheRound(round, false))).toBe(false)
  })

  it('tell brushes of cells from those of colours', () => {
    expect(cellBrush(brushOfMotif(null))).toEqual({ motif: null })
    expect(cellBrush(brushOfMotif('bud'))).toEqual({ motif: 'bud' })
    expect(cellBrush('c1')).toBeNull()
    expect(cellBrush(null)).toBeNull()
  })
})

describe('leaving out by hand', () => {
  it('goes on at the motif beside, and asks nothing of what is not there', async () => {
    const { app } = await inWindow(Hand, { map: null }, cellsProject(['flower']))
    app.selection.hold('2,3')
    fillCells(app, ['2,3'], null)
    expect(app.selection.focus).toBe('2,4')
    // The last one of all: the one before it.
    app.selection.hold('6,8')
    fillCells(app, ['6,8'], null)
    expect(app.selection.focus).toBe('6,7')
  })

  it('the hand shows the motif of its place', async () => {
    const project = cellsProject(['flower', 'square'], { alternate: undefined })
    const { app } = await inWindow(Hand, { map: null }, setCells(project, ['2,3'], 'square'))
    const pictureOf = async (id: string) => {
      app.selection.hold(id)
      await tick()
      return screen.getByRole('img').innerHTML.match(/ d="[^"]+"/)![0]
    }
    expect(await pictureOf('2,3')).not.toBe(await pictureOf('2,4'))
  })
})
