import { fromGallery, galleryRounds } from '../../../src-core/edging/gallery'
import { describe, expect, it } from 'vitest'
import type { MeasuredMotif, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { freeLetter, LETTERS } from '../../../src-renderer/state/edits/ids'
import { paint } from '../../../src-renderer/state/edits/layout'
import * as motifs from '../../../src-renderer/state/edits/motif'
import { renameSlot } from '../../../src-renderer/state/edits/slots'
import { takeMotif, takeYarn } from '../../../src-renderer/state/edits/take'
import { setTerms } from '../../../src-renderer/state/edits/terms'
import {
  addColourway,
  newColourway,
  removeColourway,
  usesOfYarn,
} from '../../../src-renderer/state/edits/yarn'
import { fitted, resized } from '../../../src-renderer/state/resize'
import { example, SMALL } from '../projects'

describe('letters', () => {
  it('leave out I and O, and go on with pairs', () => {
    expect(LETTERS).not.toMatch(/[IO]/)
    expect(freeLetter([...LETTERS].map((code) => ({ code })))).toBe('AA')
    expect(freeLetter([{ code: 'A' }, { code: 'C' }])).toBe('B')
  })
})

describe('painting', () => {
  it('paints and wipes, and changes nothing where nothing changes', () => {
    const painted = paint(SMALL, ['1,1', '2,2'], 'c2')
    expect(planProject(painted).motifs.find((motif) => motif.id === '1,1')?.colourway).toBe('c2')
    expect(paint(painted, ['1,1'], 'c2')).toBe(painted)
    expect(paint(paint(painted, ['1,1', '2,2'], null), ['1,1'], null)).toEqual(
      paint(painted, ['1,1', '2,2'], null),
    )
  })
})

describe('colourways', () => {
  it('come with the next letter and go with their paint', () => {
    const way = newColourway(SMALL, 'm1')
    expect(way.code).toBe('C')
    const more = paint(addColourway(SMALL, way), ['1,1'], way.id)
    expect(more.layout).toMatchObject({ cells: { fill: { colourways: ['c1', 'c2', way.id] } } })
    expect(removeColourway(more, way.id).layout).toMatchObject({
      cells: { fill: { colourways: ['c1', 'c2'] }, painted: {} },
    })
  })

  it('are born unlike those there: unused yarns first, then a combination that is not there', () => {
    const unused: Project = {
      ...SMALL,
      yarns: [{ id: 'y1' }, { id: 'y2' }, { id: 'y3' }, { id: 'y4' }],
    }
    const first = newColourway(unused, 'm1')
    // The centre stays in the yarn it is in; the petals take the first that nothing uses.
    expect(first.yarns).toEqual({ centre: 'y1', petals: 'y3' })
    let project: Project = addColourway(unused, first)
    const seen = new Set(project.colourways!.map(({ yarns }) => JSON.stringify(yarns)))
    for (let many = 0; many < 8; many++) {
      const way = newColourway(project, 'm1')
      const own = JSON.stringify(way.yarns)
      expect(seen.has(own)).toBe(false)
      expect(new Set(Object.values(way.yarns!)).size).toBe(2)
      seen.add(own)
      project = addColourway(project, way)
    }
    const one: Project = { ...SMALL, yarns: [{ id: 'y1' }], colourways: [] }
    const only = addColourway(one, newColourway(one, 'm1'))
    expect(newColourway(only, 'm1').yarns).toEqual({ centre: 'y1', petals: 'y1' })
  })

  it('hold their yarns', () => {
    expect(usesOfYarn(SMALL, 'y1')).toEqual(['colorway A', 'colorway B'])
    expect(usesOfYarn(SMALL, 'y9')).toEqual([])
  })
})

describe('motifs', () => {
  it('keep a measure wherever their kind keeps it', () => {
    const next = motifs.setMeasure(SMALL, 'm1', 'overTips', 90)
    expect(motifs.measureOf(next.motifs![0]!, 'overTips')).toBe(90)
    const rounds = { ...SMALL, motifs: [{ id: 'm1', kind: 'rounds' as const, rounds: [] }] }
    expect(motifs.setMeasure(rounds, 'm1', 'overTips', 90).motifs![0]).toMatchObject({
      measured: { overTips: 90 },
    })
  })

  it('of every kind can be started from, and plan without an error', () => {
    for (const outline of ['petals', 'round', 'square', 'hexagon', 'octagon', 'leaf'] as const) {
      const changed = motifs.setOutline(SMALL, 'm1', outline)
      const errors = planProject(changed).findings.filter((finding) => finding.severity === 'error')
      expect(errors, outline).toEqual([])
      expect(planProject(changed).counts.motifs, outline).toBe(20)
    }
  })

  it('rename a colour everywhere, and refuse a name that is taken', () => {
    const next = renameSlot(SMALL, 'm1', 'petals', 'ring')
    expect(motifs.slotsOf(next.motifs![0]!)).toEqual(['centre', 'ring'])
    expect(next.colourways![0]!.yarns).toEqual({ centre: 'y2', ring: 'y1' })
    expect(planProject(next).yarns).toEqual(planProject(SMALL).yarns)
    expect(renameSlot(SMALL, 'm1', 'petals', 'centre')).toBe(SMALL)
  })

  it('are copied with their colourways, under letters of their own', () => {
    const twice = motifs.duplicateMotif(SMALL, 'm1')
    expect(twice.motifs!.at(-1)).toMatchObject({ id: 'm2', name: 'Flower 2' })
    expect(twice.colourways!.slice(2)).toEqual([
      { ...SMALL.colourways![0], id: 'c3', code: 'C', motif: 'm2' },
      { ...SMALL.colourways![1], id: 'c4', code: 'D', motif: 'm2' },
    ])
  })

  it('that are laid out are needed', () => {
    expect(motifs.usesOfMotif(SMALL, 'm1')).toEqual(['the arrangement'])
    expect(motifs.usesOfMotif(motifs.duplicateMotif(SMALL, 'm1'), 'm2')).toEqual([])
  })
})

describe('taking over', () => {
  const other = example('lantern-table-mat')

  it('brings a motif with colourways, yarns and the gauge of its project, in the terms of this one', () => {
    const { project, id } = takeMotif(SMALL, other, other.motifs![0]!.id)
    const taken = project.motifs!.find((motif) => motif.id === id)!
    expect(taken.gauge?.stitch).toBe('sc')
    expect(other.gauge?.stitch).toBe('dc')
    const ways = project.colourways!.filter((way) => way.motif === id)
    expect(ways).toHaveLength(other.colourways!.length)
    const known = new Set(project.yarns!.map((yarn) => yarn.id))
    for (const way of ways) for (const yarn of Object.values(way.yarns ?? {})) expect(known).toContain(yarn)
    expect(new Set(project.colourways!.map((way) => way.code)).size).toBe(project.colourways!.length)
  })

  it('brings a yarn once, without the stash of the other project', () => {
    const yarn = other.yarns![0]!
    const first = takeYarn(SMALL, yarn)
    const again = takeYarn(first.project, yarn)
    expect(again.project).toBe(first.project)
    expect(first.project.yarns!.find((entry) => entry.id === first.id)?.onHandGrams).toBeUndefined()
  })
})

// US and UK names of stitches: §us-uk.
describe('terms', () => {
  it('are switched in gauge, edging and rounds, and back', () => {
    const project = example('hedgerow-baby-throw')
    const british = setTerms(project, 'UK')
    expect(british.gauge?.stitch).toBe('dc')
    expect(setTerms(british, 'US')).toEqual(project)
    const plans = [planProject(project), planProject(british)]
    expect(plans[1]!.size).toEqual(plans[0]!.size)
  })

  it('leave texts as they are that were written in the terms that are switched to, all that belong together', () => {
    const shells = [
      '*sk 2, (3 dc, ch 1, 3 dc) in next st, sk 2, sc in next st; rep from *',
      '3 dc in next st',
    ]
    const rounds = [{ work: '6 sc in ring' }, { work: 'ch 3, dc in same st, 2 dc in each st around' }]
    const project: Project = {
      ...SMALL,
      terms: 'UK',
      motifs: [{ id: 'm1', kind: 'rounds', special: 'Shell: 3 dc in next st', rounds }],
      layout: { kind: 'blanket', edging: { written: shells.map((work) => ({ work })) } },
    }
    const american = setTerms(project, 'US')
    expect(american.motifs).toEqual(project.motifs)
    expect(american.layout).toEqual(project.layout)
    // What could be either is taken for what the project said.
    const layout = { kind: 'blanket' as const, edging: { written: [{ work: '3 tr in next st' }] } }
    expect(setTerms({ ...project, layout }, 'US').layout).toMatchObject({
      edging: { written: [{ work: '3 dc in next st' }] },
    })
  })

  it('spell the colour that the program names in a new motif', () => {
    const slotsIn = (terms: 'US' | 'UK') =>
      motifs.newMotif({ ...SMALL, terms }, 'petals').slots!.map(({ slot }) => slot)
    expect(slotsIn('US')).toEqual(['center', 'petals'])
    expect(slotsIn('UK')).toEqual(['centre', 'petals'])
  })

  it('bring over the names that the program gave, and the terms of sheets that had the same', () => {
    const project: Project = {
      ...SMALL,
      terms: 'US',
      sheet: { terms: 'US' },
      motifs: [],
      yarns: [
        { id: 'y1', name: 'Center yarn' },
        { id: 'y2', name: 'Center of town' },
      ],
      colourways: [
        { id: 'c1', name: 'Colorway A' },
        { id: 'c2', name: 'Colorway At dusk' },
      ],
    }
    const british = setTerms(project, 'UK')
    expect(british.sheet?.terms).toBe('UK')
    expect(british.yarns?.map(({ name }) => name)).toEqual(['Centre yarn', 'Center of town'])
    expect(british.colourways?.map(({ name }) => name)).toEqual(['Colourway A', 'Colorway At dusk'])
    expect(setTerms(british, 'US')).toEqual(project)
    expect(setTerms({ ...project, sheet: { terms: 'UK' } }, 'UK').sheet?.terms).toBe('UK')
  })

  it('bring over the colours of motifs that the program named, with their weights and yarns', () => {
    const project: Project = {
      ...SMALL,
      terms: 'US',
      motifs: [
        {
          id: 'm1',
          kind: 'measured',
          outline: 'petals',
          slots: [{ slot: 'center' }, { slot: 'center ring' }],
          weighed: { motifs: 1, grams: 5, shares: { center: 2, 'center ring': 3 } },
        },
      ],
      colourways: [{ id: 'c1', motif: 'm1', yarns: { center: 'y1', 'center ring': 'y2' } }],
    }
    const british = setTerms(project, 'UK')
    const [motif] = british.motifs as MeasuredMotif[]
    expect(motif?.slots).toEqual([{ slot: 'centre' }, { slot: 'center ring' }])
    expect(motif?.weighed?.shares).toEqual({ centre: 2, 'center ring': 3 })
    expect(british.colourways?.[0]?.yarns).toEqual({ centre: 'y1', 'center ring': 'y2' })
    expect(setTerms(british, 'US')).toEqual(project)
  })

  it('are switched in the written rounds of an edging, and back', () => {
    const shell = {
      ...SMALL,
      layout: { ...SMALL.layout!, kind: 'blanket' as const, edging: fromGallery({}, 'shell', 'US') },
    }
    const british = setTerms(shell, 'UK')
    expect(british.layout).toMatchObject({ edging: { written: [{ work: galleryRounds('shell', 'UK')[0] }] } })
    expect(setTerms(british, 'US').layout).toEqual(shell.layout)
  })

  it('are switched in written rounds', () => {
    const us = 'ch 1, sc in ch-3 sp, sk 2, FPdc in next dc, sl st to join'
    const uk = 'ch 1, dc in 3-ch sp, miss 2, FPtr in next tr, ss to join'
    const written = (work: string): Project => ({
      ...SMALL,
      terms: work === us ? 'US' : 'UK',
      motifs: [{ id: 'm9', kind: 'rounds', special: `Shell: ${work}`, rounds: [{ work }] }],
    })
    expect(setTerms(written(us), 'UK').motifs).toEqual(written(uk).motifs)
    expect(setTerms(written(uk), 'US').motifs).toEqual(written(us).motifs)
  })
})

describe('sizes', () => {
  it.each(['straight-rows', 'offset-rows', 'rings'] as const)(
    'asked of %s come as near as counts allow',
    (kind) => {
      const project = {
        ...SMALL,
        layout: {
          ...SMALL.layout,
          kind: 'blanket' as const,
          motif: 'm1',
          arrangement: kind,
          columns: 5,
          rows: 4,
          rings: 2,
        },
      }
      const plan = planProject(project)
      const wish = { width: 1000, height: 1000 }
      const next = planProject(resized(project, plan, wish))
      const step = kind === 'rings' ? 2 : 1
      expect(Math.abs(next.size.width - wish.width)).toBeLessThanOrEqual(plan.pitch.column * step * 0.75)
      expect(Math.abs(next.size.height - wish.height)).toBeLessThanOrEqual(plan.pitch.row * step * 1.5)
    },
  )

  it('keeps the target of the side that nobody typed', () => {
    const target = { width: 700, height: 1600 }
    const wished = { ...SMALL, layout: { ...SMALL.layout, target } as Project['layout'] }
    const plan = planProject(wished)
    const { width, height } = plan.size
    const typed = fitted(wished, plan, { width: 1300, height }).layout
    expect(typed).toMatchObject({ target: { width: 1300, height: 1600 } })
    expect(fitted(wished, plan, { width, height: 900 }).layout).toMatchObject({
      target: { width: 700, height: 900 },
    })
  })

  it('that are there already change nothing; a typed one is remembered as the wish', () => {
    const plan = planProject(SMALL)
    expect(resized(SMALL, plan, plan.size)).toBe(SMALL)
    expect(fitted(SMALL, plan, { width: 500, height: 400 }).layout).toMatchObject({
      target: { width: 500, height: 400 },
    })
  })

  it('of a shawl are typed and dragged: what is cut out follows, and what is made stays', () => {
    const shawl = example('estuary-dusk-shawl')
    const { made: _, ...unmade } = shawl
    const plan = planProject(unmade)
    const wish = { width: plan.size.width + 300, height: plan.size.height + 150 }
    const typed = planProject(fitted(unmade, plan, wish))
    expect(Math.abs(typed.size.width - wish.width)).toBeLessThan(plan.pitch.column * 0.75)
    expect(Math.abs(typed.size.height - wish.height)).toBeLessThan(plan.pitch.row * 0.75)
    const dragged = planProject(resized(unmade, plan, wish))
    expect(Math.abs(dragged.size.width - wish.width)).toBeLessThan(plan.pitch.column * 2)
    expect(Math.abs(dragged.size.height - wish.height)).toBeLessThan(plan.pitch.row * 2)
    expect(resized(unmade, plan, plan.size)).toBe(unmade)
    const begun = { ...unmade, made: { [plan.motifs[0]!.id]: '' } }
    const shape = (project: Project) =>
      project.layout?.kind === 'blanket' ? project.layout.outlineShape : undefined
    expect(shape(resized(begun, planProject(begun), wish))?.size).toBe(shape(begun)?.size)
  })

  it('of a circle keep its proportions: the side that was typed rules', () => {
    const round: Project = {
      ...SMALL,
      layout: {
        ...{ kind: 'blanket', motif: 'm1', arrangement: 'straight-rows', columns: 9, rows: 9 },
        outlineShape: { kind: 'circle', size: 700 },
      },
    }
    const plan = planProject(round)
    const next = fitted(round, plan, { width: 1000, height: plan.size.height })
    const { size } = planProject(next)
    expect(Math.abs(size.width - 1000)).toBeLessThan(plan.pitch.column)
    expect(Math.abs(size.height - 1000)).toBeLessThanOrEqual(plan.pitch.row * 1.5)
  })
})

// Geometry: for an odd count a dip lies opposite every tip, so the ruler shows one radius of each.
describe('odd petals (M16)', () => {
  const five = {
    ...SMALL,
    motifs: [{ id: 'm1', kind: 'measured', outline: 'petals', petals: 5, overTips: 90, overValleys: 60 }],
  } as Project
  const circles = (project: Project) => {
    const { overTips, overValleys } = motifs.findMotif(project, 'm1') as MeasuredMotif
    return [overTips, overValleys]
  }

  it('keep what the ruler showed besides, when one of its numbers changes', () => {
    expect(motifs.flowerReadings(motifs.findMotif(five, 'm1')!, 'opposite', 0.7)).toEqual({
      lead: 75,
      second: 30,
    })
    expect(circles(motifs.setReading(five, 'm1', 'opposite', 0.7, 'lead', 82))).toEqual([104, 60])
    expect(circles(motifs.setReading(five, 'm1', 'opposite', 0.7, 'second', 25))).toEqual([100, 50])
    expect(circles(motifs.setReading(five, 'm1', 'centre', 0.7, 'lead', 50))).toEqual([100, 60])
  })

  it('follow the first number where the second is emptied', () => {
    const alone = motifs.setReading(five, 'm1', 'opposite', 0.5, 'second', undefined)
    expect(circles(alone)).toEqual([100, undefined])
    expect(motifs.flowerReadings(motifs.findMotif(alone, 'm1')!, 'opposite', 0.5)).toEqual({
      lead: 75,
      second: undefined,
    })
  })

  it('remember how they were measured', () => {
    const told = motifs.setRuler(five, 'm1', 'centre')
    expect(motifs.layingOfMotif(motifs.findMotif(told, 'm1')!, 5)).toBe('centre')
    expect(motifs.layingOfMotif(motifs.findMotif(told, 'm1')!, 6)).toBe('across')
    expect(circles(told)).toEqual([90, 60])
    expect(planProject(told).motif).toMatchObject({ ruler: 'centre', overTips: 90 })
  })
})
