import { describe, expect, it } from 'vitest'
import {
  bringBack,
  setAlternate,
  setCells,
  setInTheRound,
  setOutline,
} from '../../../src-renderer/state/edits/cells'
import { brushOfMotif, cellBrush } from '../../../src-renderer/frame/cell-acts'
import { blanketOf } from '../../../src-renderer/state/edits/layout'
import { cellsProject } from '../../src-core/cells/projects'

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

  it('cut out an outline as wide as the blanket is, and keep its width from shape to shape', () => {
    const cut = setOutline(cellsProject(['flower']), 'triangle', { width: 640.4 }, { points: 'up' })
    expect(blanket(cut).outlineShape).toEqual({ kind: 'triangle', size: 640, points: 'up' })
    expect(blanket(setOutline(cut, 'circle', { width: 100 })).outlineShape?.size).toBe(640)
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
