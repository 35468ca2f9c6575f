import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import {
  addFillerWay,
  chosenFor,
  fillerWay,
  fillKind,
  forgetWaiting,
  makeFiller,
  removeFillers,
  setFillerWay,
  waitingFillers,
} from '../../../src-renderer/state/edits/gaps'
import { blanketOf, paint, patchBlanket } from '../../../src-renderer/state/edits/layout'
import { usesOfMotif } from '../../../src-renderer/state/edits/motif'
import { removeColourway } from '../../../src-renderer/state/edits/yarn'
import { ledgerOf } from '../../../src-renderer/state/ledger'
import { placeSummary } from '../../../src-renderer/state/summaries'
import { openingName } from '../../../src-renderer/places/arrangement/blanket/words'
import { example } from '../projects'

const cloth = example('orangery-cloth')
const bare = removeFillers({
  ...cloth,
  colourways: cloth.colourways!.filter(({ motif }) => motif !== 'blossom'),
})

/** A kind of openings of a project as it is planned; 0 the largest. */
function kindOf(project: Project, index = 0) {
  const all = planProject(project).openings
  return { kind: all[index]!, all }
}
const chosen = (project: Project) => {
  const all = planProject(project).openings
  return all.map((kind) => chosenFor(project, { kind, all }))
}
const standing = (project: Project) => planProject(project).openings.map(({ filler }) => filler)

describe('fillers of a blanket', () => {
  it('get a colourway where they are chosen, with yarn in the ledger', () => {
    const filled = fillKind(bare, kindOf(bare), 'blossom')
    const way = fillerWay(filled, kindOf(filled))!
    expect(way).toMatchObject({ motif: 'blossom' })
    expect(Object.keys(way.yarns!).length).toBeGreaterThan(0)
    expect(blanketOf(filled)!.fillers).toEqual({ motif: 'blossom', colourway: way.id })
    const plan = planProject(filled)
    expect(plan.findings.map(({ code }) => code)).not.toContain('yarn/no-colourway')
    const figures = ledgerOf(filled, plan, null).figures
    // Four joins for each: the list of places counts them as the ledger does.
    const points = (plan.joins.length + 4 * 88).toLocaleString('en')
    expect(figures.find(({ name }) => name === 'Join points')!.value).toBe(points)
    expect(placeSummary('joins', filled, plan).lines.join(' ')).toContain(`${points} `)
    expect(figures.find(({ name }) => name === 'Fillers')!.value).toBe('88')
    expect(ledgerOf(bare, planProject(bare), null).figures.some(({ name }) => name === 'Fillers')).toBe(false)
  })

  it('keep a colourway that is there', () => {
    const empty = removeFillers(cloth)
    expect(fillKind(empty, kindOf(empty), 'blossom').colourways).toEqual(cloth.colourways)
  })

  it('are made to fit an opening where there is no second motif', () => {
    const one = kindOf(bare)
    const made = makeFiller(bare, one)
    const plan = planProject(made)
    expect(made.motifs!.at(-1)).toMatchObject({
      ...{ outline: 'round', across: Math.round(20 * one.kind.radius) / 10 },
    })
    expect(plan.fillers).toHaveLength(88)
    const way = fillerWay(made, kindOf(made))!
    expect(plan.fillers.every(({ colourway }) => colourway === way.id)).toBe(true)
  })

  it('take another colourway, and the first again where theirs is gone', () => {
    const more = addFillerWay(cloth, kindOf(cloth))
    const way = fillerWay(more, kindOf(more))!
    const first = fillerWay(cloth, kindOf(cloth))!
    expect(way.id).not.toBe(first.id)
    const without = removeColourway(more, way.id)
    expect(blanketOf(without)!.fillers!.colourway).toBeUndefined()
    expect(planProject(without).fillers[0]!.colourway).toBe(first.id)
  })

  it('keep what is painted on single ones when they are left out and come back', () => {
    const id = planProject(cloth).fillers[0]!.id
    const more = addFillerWay(cloth, kindOf(cloth))
    const way = more.colourways!.at(-1)!.id
    const empty = removeFillers(paint(cloth, [id], way))
    const again = fillKind(empty, kindOf(empty), 'blossom')
    expect(blanketOf(again)!.cells!.painted![id]).toBe(way)
  })
})

describe('fillers by kind of opening', () => {
  // Seven petals, every other row upside down: two kinds of openings between four motifs.
  const seven = patchBlanket(
    {
      ...bare,
      motifs: [
        ...bare.motifs!,
        { id: 'seven', kind: 'measured', outline: 'petals', petals: 7, overTips: 80, overValleys: 56 },
      ],
    },
    { ...{ motif: 'seven', turn: 0, alternateTurn: 180, columns: 6, rows: 5 }, edging: undefined },
  )
  const two = makeFiller(makeFiller(seven, kindOf(seven, 1)), kindOf(seven, 0))

  it('are chosen for each; the rest stays as it was', () => {
    expect(kindOf(seven).all.map(({ between, nth }) => [between.length, nth])).toEqual([
      [4, 1],
      [4, 2],
    ])
    const small = makeFiller(seven, kindOf(seven, 1))
    expect(standing(small)).toEqual([null, small.motifs!.at(-1)!.id])
    expect(standing(two)).toEqual(
      two
        .motifs!.slice(-2)
        .map(({ id }) => id)
        .reverse(),
    )
    expect(chosen(two)).toEqual(standing(two))
    // Either can be left open again, the other stays.
    for (const index of [0, 1]) {
      const open = fillKind(two, kindOf(two, index), null)
      expect(standing(open)).toEqual(standing(two).map((id, i) => (i === index ? null : id)))
      expect(chosen(open)).toEqual(standing(open).map((id) => id ?? ''))
    }
    const none = fillKind(fillKind(two, kindOf(two, 0), null), kindOf(two, 1), null)
    expect(blanketOf(none)!.fillers).toBeUndefined()
  })

  it('come beside the filler of all of a file without kinds', () => {
    const { across } = two.motifs!.at(-2) as { across: number }
    expect(across).toBeLessThan((two.motifs!.at(-1) as { across: number }).across)
    const [large, small] = [two.motifs!.at(-1)!.id, two.motifs!.at(-2)!.id]
    const old = patchBlanket(two, { fillers: { motif: small } })
    expect(standing(old)).toEqual([null, small])
    const both = fillKind(old, kindOf(old, 0), large)
    expect(standing(both)).toEqual([large, small])
    expect(blanketOf(both)!.fillers!.motif).toBe(small)
    // Where its own kind gets another one, nothing of it comes back elsewhere.
    const swapped = fillKind(old, kindOf(old, 1), large)
    expect(standing(swapped)).toEqual([null, large])
    expect(blanketOf(swapped)!.fillers!.motif).toBeUndefined()
  })

  it('have colourways of their own', () => {
    const one = kindOf(two, 1)
    const more = addFillerWay(two, one)
    const way = more.colourways!.at(-1)!
    expect(fillerWay(more, kindOf(more, 1))!.id).toBe(way.id)
    expect(fillerWay(more, kindOf(more, 0))!.id).toBe(fillerWay(two, kindOf(two, 0))!.id)
    const plan = planProject(more)
    const small = plan.openings[1]!.filler
    expect(plan.fillers.every(({ motif, colourway }) => (colourway === way.id) === (motif === small))).toBe(
      true,
    )
    const back = setFillerWay(more, kindOf(more, 1), fillerWay(two, one)!.id)
    expect(planProject(back).fillers).toEqual(planProject(two).fillers)
    const without = removeColourway(more, way.id)
    expect(planProject(without).findings.map(({ code }) => code)).not.toContain('file/unknown-colourway')
  })

  it('wait while their kind is not there, and can be forgotten', () => {
    const gone = patchBlanket(two, { alternateTurn: 0, arrangement: 'offset-rows' })
    const { openings } = planProject(gone)
    expect(openings.every(({ between }) => between.length === 3)).toBe(true)
    expect(waitingFillers(gone, openings)).toBe(2)
    expect(waitingFillers(two, planProject(two).openings)).toBe(0)
    expect(blanketOf(forgetWaiting(gone, openings))!.fillers).toBeUndefined()
  })

  it('are used: their motifs cannot be thrown away unseen', () => {
    const small = two.motifs!.at(-2)!.id
    expect(usesOfMotif(two, small)).toEqual(['the fillers'])
    expect(usesOfMotif(seven, 'blossom')).toEqual([])
  })

  it('are told apart by what lies round them, and by their size', () => {
    expect(kindOf(two).all.map((kind, _, all) => openingName(two, { kind, all }))).toEqual([
      'between 4 motifs, the larger',
      'between 4 motifs, the smaller',
    ])
  })
})
