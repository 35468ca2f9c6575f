import { describe, expect, it } from 'vitest'
import { planProject } from '../../../src-core/plan'
import {
  addFillerWay,
  chooseFiller,
  fillerWay,
  makeFiller,
  removeFillers,
} from '../../../src-renderer/state/edits/gaps'
import { blanketOf, paint } from '../../../src-renderer/state/edits/layout'
import { removeColourway } from '../../../src-renderer/state/edits/yarn'
import { ledgerOf } from '../../../src-renderer/state/ledger'
import { placeSummary } from '../../../src-renderer/state/summaries'
import { example } from '../projects'

const cloth = example('orangery-cloth')
const bare = removeFillers({
  ...cloth,
  colourways: cloth.colourways!.filter(({ motif }) => motif !== 'blossom'),
})

describe('fillers of a blanket', () => {
  it('get a colourway where they are chosen, with yarn in the ledger', () => {
    const filled = chooseFiller(bare, 'blossom')
    const way = fillerWay(filled)!
    expect(way).toMatchObject({ motif: 'blossom' })
    expect(Object.keys(way.yarns!).length).toBeGreaterThan(0)
    expect(blanketOf(filled)!.fillers).toEqual({ motif: 'blossom', colourway: way.id })
    const plan = planProject(filled)
    expect(plan.findings.map(({ code }) => code)).not.toContain('yarn/no-colourway')
    const figures = ledgerOf(filled, plan, null).figures
    // Four joins for each: the list of places counts them as the ledger does.
    const points = (plan.joins.length + 4 * 88).toLocaleString('en')
    expect(figures.find(({ name }) => name === 'Joins')!.value).toBe(points)
    expect(placeSummary('joins', filled, plan).lines.join(' ')).toContain(`${points} `)
    expect(figures.find(({ name }) => name === 'Fillers')!.value).toBe('88')
    expect(ledgerOf(bare, planProject(bare), null).figures.some(({ name }) => name === 'Fillers')).toBe(false)
  })

  it('keep a colourway that is there', () => {
    expect(chooseFiller(removeFillers(cloth), 'blossom').colourways).toEqual(cloth.colourways)
  })

  it('are made to fit an opening where there is no second motif', () => {
    const radius = planProject(bare).holes.find(({ sides }) => sides > 2)!.radius
    const made = makeFiller(bare, radius)
    const plan = planProject(made)
    expect(made.motifs!.at(-1)).toMatchObject({ outline: 'round', across: Math.round(20 * radius) / 10 })
    expect(plan.fillers).toHaveLength(88)
    expect(plan.fillers.every(({ colourway }) => colourway === fillerWay(made)!.id)).toBe(true)
  })

  it('take another colourway, and the first again where theirs is gone', () => {
    const more = addFillerWay(cloth)
    const way = fillerWay(more)!
    expect(way.id).not.toBe(fillerWay(cloth)!.id)
    const without = removeColourway(more, way.id)
    expect(blanketOf(without)!.fillers!.colourway).toBeUndefined()
    expect(planProject(without).fillers[0]!.colourway).toBe(fillerWay(cloth)!.id)
  })

  it('keep what is painted on single ones when they are left out and come back', () => {
    const id = planProject(cloth).fillers[0]!.id
    const more = addFillerWay(cloth)
    const way = more.colourways!.at(-1)!.id
    const again = chooseFiller(removeFillers(paint(cloth, [id], way)), 'blossom')
    expect(blanketOf(again)!.cells!.painted![id]).toBe(way)
  })
})
