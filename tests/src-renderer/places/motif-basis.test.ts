/** A look at the other basis of a motif and back changes nothing; what was entered stays. */
import { fireEvent, screen, waitFor } from '@testing-library/svelte'
import { describe, expect, it } from 'vitest'
import type { MotifAccount } from '../../../shared-types/plan'
import type { MeasuredMotif, Motif, Project, RoundsMotif } from '../../../shared-types/project'
import { measureProject } from '../../../src-core/accounts'
import { planProject } from '../../../src-core/plan'
import { scaledProject } from '../../../src-core/ways/scale'
import MotifPlace from '../../../src-renderer/places/motif/MotifPlace.svelte'
import { toMeasured, toRounds } from '../../../src-renderer/places/motif/rounds/basis'
import { chooseOutline, setShape } from '../../../src-renderer/places/motif/rounds/said-shape'
import {
  measureOf,
  setBlocked,
  setMeasure,
  setOutline,
  setReading,
} from '../../../src-renderer/state/edits/motif'
import { insertRounds, setRoundSlot } from '../../../src-renderer/places/motif/rounds/edits'
import { readForEditor } from '../../../src-renderer/places/motif/rounds/reading'
import { leadingKey } from '../../../src-renderer/state/sentence'
import { renameSlot } from '../../../src-renderer/state/edits/slots'
import { inWindow } from '../in-window'
import { SMALL } from '../projects'

const GAUGE = { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 3.5 }
const WORK = [
  'Magic ring, 12 sc in ring, join with sl st in first sc',
  'ch 1, *sc in next sc, ch 5, sk next sc; rep from * 5 more times, join with sl st in first sc',
  '(sc, hdc, 3 dc, hdc, sc) in each ch-5 sp around, join with sl st in first sc',
]
const written = (more: Partial<RoundsMotif> = {}): Project => ({
  ...SMALL,
  motifs: [
    {
      ...{ id: 'm1', name: 'Flower', kind: 'rounds', gauge: GAUGE },
      rounds: WORK.map((work, i) => ({ slot: i === 0 ? 'centre' : 'petals', work })),
      ...more,
    },
  ],
})
const first = (project: Project): Motif => project.motifs![0]!
const accountOf = (project: Project): MotifAccount => measureProject(project).motifs[0]!
const look = (project: Project) => toMeasured(project, 'm1', accountOf(project))
const text = (project: Project) => JSON.stringify(project)

describe('a look at the measures of written rounds', () => {
  it('and back changes nothing, not even in the file', () => {
    for (const project of [
      written(),
      written({ measured: { overTips: 90 } }),
      written({ measured: { overTips: 90, overValleys: 61, blocked: false } }),
      written({ measured: { blocked: true } }),
      written({ weighed: { motifs: 10, grams: 43 } }),
    ]) {
      expect(JSON.parse(text(toRounds(look(project), 'm1')))).toEqual(project)
      expect(text(toRounds(look(look(toRounds(look(project), 'm1'))), 'm1'))).toBe(
        text(toRounds(look(project), 'm1')),
      )
    }
  })

  it('takes nothing for measured that nobody has measured', () => {
    const project = written()
    const own = accountOf(project)
    const there = accountOf(look(project))
    expect(own.provenance).toBe('gauge')
    expect(there.provenance).toBe('gauge')
    expect(there.overTips).toBeCloseTo(own.overTips, 1)
    expect(there.range.high / there.overTips).toBeCloseTo(1.1, 6)
    expect(accountOf(look(written({ gauge: undefined }))).provenance).toBe('rule-of-thumb')
    expect(accountOf(look(written({ measured: { overTips: 90 } }))).provenance).toBe('measured')
  })

  it('keeps what is entered there as measured, and only that', () => {
    const typed = setReading(look(written()), 'm1', 'across', 0.7, 'lead', 95)
    expect(accountOf(typed).provenance).toBe('measured')
    const back = toRounds(typed, 'm1')
    expect((first(back) as RoundsMotif).measured).toEqual({ overTips: 95 })
    expect(accountOf(back).overTips).toBeCloseTo(95, 6)
    const dip = toRounds(setReading(look(written()), 'm1', 'across', 0.7, 'second', 60), 'm1')
    expect((first(dip) as RoundsMotif).measured).toEqual({ overValleys: 60 })
  })

  it('keeps a number that was entered as it stood there', () => {
    const shown = look(written())
    const same = setMeasure(shown, 'm1', 'overTips', (first(shown) as MeasuredMotif).overTips)
    expect(accountOf(same).provenance).toBe('measured')
    expect((first(toRounds(same, 'm1')) as RoundsMotif).measured).toHaveProperty('overTips')
  })

  it('keeps grams that were entered there, and what is said of blocking', () => {
    const shown = setBlocked(look(written()), 'm1', false)
    const slots = [
      { slot: 'centre', grams: 1 },
      { slot: 'petals', grams: 3 },
    ]
    const typed = { ...shown, motifs: [{ ...first(shown), slots } as MeasuredMotif] }
    const back = first(toRounds(typed, 'm1')) as RoundsMotif
    expect(back.weighed).toMatchObject({ grams: 4 })
    expect(back.measured).toEqual({ blocked: false })
    expect(first(look(toRounds(typed, 'm1')))).toMatchObject({ slots })
  })

  it('keeps grams of a single colour, shows them beside the rounds, and tells what no round has', async () => {
    const some = [{ slot: 'centre', grams: 1.5 }, { slot: 'petals' }]
    const typed = {
      ...look(written()),
      motifs: [{ ...first(look(written())), slots: some } as MeasuredMotif],
    }
    const back = toRounds(typed, 'm1')
    const { app } = await inWindow(MotifPlace, {}, back)
    const field = (): HTMLInputElement => screen.getByLabelText('Weight of centre in one motif')
    expect(field().value).toMatch(/^1\.5/)
    expect(screen.getByLabelText('Share of petals in the weight')).toBeTruthy()
    const lost = () => app.document.plan.findings.filter(({ code }) => code === 'yarn/weighed-other-colours')
    expect(lost()).toEqual([])
    // A name that is changed beside the rounds is changed where it was weighed, too.
    app.document.change('rename', (project) => renameSlot(project, 'm1', 'centre', 'eye'))
    await waitFor(() => expect(screen.getByLabelText('Weight of eye in one motif')).toBeTruthy())
    expect(first(look(app.document.project))).toMatchObject({ slots: [{ slot: 'eye', grams: 1.5 }, {}] })
    app.document.change('color', (project) => setRoundSlot(project, 'm1', 0, 'petals'))
    await waitFor(() => expect(lost()).toHaveLength(1))
    await waitFor(() => expect(screen.getByText(/what was weighed of eye counts for nothing/)).toBeTruthy())
  })

  it('names rounds that are pasted later by the colors that were weighed, where no colorway names them', () => {
    const weighed = [
      { slot: 'centre', grams: 1 },
      { slot: 'petals', grams: 3 },
    ]
    const { colourways: _, ...bare } = SMALL
    const project = toRounds(
      { ...bare, motifs: [{ ...first(SMALL), slots: weighed } as MeasuredMotif] },
      'm1',
    )
    const pasted = insertRounds(
      project,
      'm1',
      0,
      WORK.map((work) => ({ work })),
    )
    expect((first(pasted) as RoundsMotif).rounds!.map(({ slot }) => slot)).toEqual([
      'centre',
      'petals',
      'petals',
    ])
  })

  it('shows the rounds as they are by then', () => {
    const gone = toRounds(look(written()), 'm1')
    const motif = first(gone) as RoundsMotif
    const shorter = { ...gone, motifs: [{ ...motif, rounds: motif.rounds!.slice(0, 1) }] }
    expect(first(look(shorter))).toMatchObject({ outline: 'round', slots: [{ slot: 'centre' }] })
  })

  it('follows another gauge without becoming a measure', () => {
    const larger = scaledProject(look(written()), 1.1)
    expect(first(larger)).not.toHaveProperty('asMeasured')
    expect(accountOf(larger).provenance).toBe('gauge')
    expect(accountOf(larger).overTips).toBeCloseTo(1.1 * accountOf(look(written())).overTips, 2)
  })
})

describe('a look at the rounds of a measured motif', () => {
  it('and back changes nothing of its measures; what is entered there is the measure', () => {
    const there = toRounds(SMALL, 'm1')
    expect(first(look(there))).toMatchObject(first(SMALL))
    const typed = setMeasure(there, 'm1', 'overTips', 91)
    expect(first(look(typed))).toMatchObject({ overTips: 91, overValleys: 56, outline: 'petals' })
    const again = setMeasure(look(typed), 'm1', 'overTips', 92)
    expect((first(toRounds(again, 'm1')) as RoundsMotif).measured).toMatchObject({ overTips: 92 })
  })

  it('keeps an outline that was chosen for the look', () => {
    const chosen = setOutline(look(written()), 'm1', 'round')
    expect(first(look(toRounds(chosen, 'm1')))).toMatchObject({ outline: 'round' })
  })
})

const EDGE =
  'ch 1, *sc in next 3 sts, 3 sc in next st, sc in next 3 sts; rep from * 5 more times, join with sl st in first sc'
const edged = (more: Partial<RoundsMotif> = {}): Project =>
  written({ rounds: [...WORK, EDGE].map((work) => ({ slot: 'petals', work })), ...more })

describe('what written rounds are said to be', () => {
  it('is undefined again as the rounds say', () => {
    expect(accountOf(edged()).shape).toBe('straight')
    const said = setShape(edged(), 'm1', 'petals')
    expect(accountOf(said).shape).toBe('petals')
    expect(text(setShape(said, 'm1', undefined))).toBe(text(edged()))
  })

  it('keeps what was measured across its tips across its tips, and never takes sides for tips', () => {
    const both = setShape(edged({ measured: { sideToSide: 70, pointToPoint: 81 } }), 'm1', 'petals')
    expect((first(both) as RoundsMotif).measured).toEqual({ overTips: 81, overValleys: 70 })
    expect(accountOf(both).overTips).toBeCloseTo(81, 6)
    const sides = setShape(edged({ measured: { sideToSide: 70 } }), 'm1', 'petals')
    expect(accountOf(sides).overTips).toBeGreaterThan(75)
    expect((first(setShape(both, 'm1', undefined)) as RoundsMotif).measured).toEqual({
      ...{ sideToSide: 70, pointToPoint: 81 },
    })
  })

  it('follows a kind that is chosen while they are looked at as measures', () => {
    const hexagon = look(edged())
    expect(first(hexagon)).toMatchObject({ outline: 'hexagon' })
    const flower = chooseOutline(hexagon, 'm1', 'petals')
    const worked = accountOf(setShape(edged(), 'm1', 'petals'))
    expect(first(flower)).toMatchObject({ outline: 'petals', petals: 6 })
    expect(accountOf(flower).overTips).toBeCloseTo(worked.overTips, 1)
    expect(accountOf(flower).provenance).toBe('gauge')
    expect(first(toRounds(flower, 'm1'))).toEqual({ ...first(edged()), shape: 'petals' })
  })

  it('reaches as far across as another kind did, where it was measured', () => {
    const hexagon: Motif = { id: 'm1', kind: 'measured', outline: 'hexagon', sideToSide: 100 }
    const flower = chooseOutline({ ...SMALL, motifs: [hexagon] }, 'm1', 'petals')
    expect(accountOf(flower).overTips).toBeCloseTo(115.5, 1)
    expect(accountOf(setOutline(SMALL, 'm1', 'hexagon')).overTips).toBeCloseTo(80, 0)
  })
})

describe('the place', () => {
  it('takes what shape the rounds make, as one step of undo, and the note goes', async () => {
    const { app } = await inWindow(MotifPlace, {}, edged())
    const pulled = () => app.document.findings.some(({ code }) => code === 'motif/petals-pulled')
    expect(pulled()).toBe(true)
    const select = screen.getByRole<HTMLSelectElement>('combobox', { name: 'Shape' })
    expect([...select.options].map(({ textContent }) => textContent)).toEqual([
      ...['as the rounds say: hexagon', 'hexagon', 'flower with petals', 'round'],
    ])
    await fireEvent.change(select, { target: { value: 'petals' } })
    expect(first(app.document.project)).toMatchObject({ shape: 'petals' })
    await waitFor(() => expect(pulled()).toBe(false))
    expect(app.document.plan.motif!.shape).toBe('petals')
    expect(app.document.undoLabel).toBe('change the shape')
    app.undo()
    expect(first(app.document.project)).not.toHaveProperty('shape')
  })

  it('says that nobody has measured it, and undoes a look in one step', async () => {
    const project = written()
    const { app } = await inWindow(MotifPlace, {}, project)
    await fireEvent.click(screen.getByRole('radio', { name: 'measurements' }))
    expect(await screen.findByText(/These sizes come from the written rounds, not from a ruler/)).toBeTruthy()
    await fireEvent.click(screen.getByRole('radio', { name: 'written rounds' }))
    expect(JSON.parse(text(app.document.project))).toEqual(project)
    expect(screen.queryByRole('button', { name: 'Clear what was measured' })).toBeNull()
  })

  it('clears what was measured, also by a shape that the rounds no longer have', async () => {
    const { app } = await inWindow(MotifPlace, {}, written({ measured: { sideToSide: 70, blocked: false } }))
    await fireEvent.click(screen.getByRole('button', { name: 'Clear what was measured' }))
    expect((first(app.document.project) as RoundsMotif).measured).toEqual({ blocked: false })
    expect(app.document.undoLabel).toBe('clear what was measured')
  })
})

describe('rounds of which no word is written', () => {
  const blank = (...work: string[]): Project =>
    written({ rounds: work.map((each) => ({ slot: 'petals', work: each })) })
  it.each([[[]], [['']], [['', '  ']]])('are a beginning, and no mistake: %j', async (work) => {
    const { app } = await inWindow(MotifPlace, {}, blank(...work))
    const told = app.document.findings.filter(({ code }) => /^(?:motif|rounds)\//.test(code))
    expect(told.map(({ code, severity }) => [code, severity])).toEqual([['motif/no-rounds', 'note']])
    expect(app.document.findings.filter(({ severity }) => severity === 'error')).toEqual([])
  })

  it('are one once something is there that is no round', async () => {
    const { app } = await inWindow(MotifPlace, {}, blank('hello'))
    expect(app.document.findings.some(({ severity }) => severity !== 'note')).toBe(true)
  })
})

it('says what the diameter behind a round runs through', () => {
  const facts = (project: Project) => {
    const motif = first(project) as RoundsMotif
    return readForEditor(motif, project).entries.map((entry) => entry.facts.join(' · '))
  }
  const told = facts(edged())
  expect(told[0]).toMatch(/mm across/)
  expect(told[2]).toMatch(/mm tip to tip/)
  expect(told[3]).toMatch(/mm point to point/)
  expect(facts(setShape(edged(), 'm1', 'petals'))[3]).toMatch(/mm tip to tip/)
})

describe('what another shape was measured by', () => {
  const ROUNDS = [
    'With white, make a magic ring, ch 1 (does not count as a st), 12 sc in the ring, join with a sl st to the first sc. (12 sc)',
    'Join blue with a sl st in any st. *Ch 3, 2 tr in same st, 2 tr in next st, ch 3, sl st in same st, sl st in next st*; repeat from * to * 5 more times. (6 petals)',
    'With grey, join with a sl st to the top of the first ch 3, [sc in next 2 tr, 2 sc in next tr, sc in next tr, ch 1] around.',
  ]
  const round = (measured?: RoundsMotif['measured']) =>
    written({
      rounds: ROUNDS.map((work, i) => ({ slot: `c${i}`, work })),
      foundation: undefined,
      ...(measured && { measured }),
    })

  it('rules nothing once the rounds are back: the field that is shown decides', () => {
    expect(accountOf(round()).shape).toBe('round')
    const typed = setMeasure(round(), 'm1', 'across', 80)
    const tried = chooseOutline(look(typed), 'm1', 'petals')
    const back = toRounds(tried, 'm1')
    expect(accountOf(back).shape).toBe('round')
    expect(accountOf(back).overTips).toBeCloseTo(80, 6)
    const larger = setMeasure(back, 'm1', 'across', 90)
    expect(accountOf(larger).overTips).toBeCloseTo(90, 6)
    // Whoever looks at that shape again finds the new size, not the one that was tried.
    expect(first(look(larger))).not.toMatchObject({ overTips: 80 })
  })

  it('gives way in a file that holds both, and without one of its own is what its field shows', () => {
    const both = round({ across: 84, overTips: 80 })
    expect(accountOf(both).overTips).toBeCloseTo(84, 6)
    expect(measureOf(first(both), 'across', 'round')).toBe(84)
    const other = round({ overTips: 80 })
    expect(accountOf(other).overTips).toBeCloseTo(80, 6)
    expect(measureOf(first(other), 'across', 'round')).toBe(80)
    const gone = setMeasure(other, 'm1', 'across', undefined)
    expect(accountOf(gone).provenance).toBe('gauge')
  })

  it('does not move with the arrow keys on the size in the sentence', () => {
    expect(leadingKey(round({ across: 84, overTips: 80 }))).toMatchObject({ key: 'across', value: 84 })
  })
})

describe('the weight of a motif that keeps its written rounds', () => {
  const yarnsOf = (project: Project) =>
    planProject(project).yarns.map(({ id, grams, split }) => ({ id, grams, split }))

  it('divides over its colors by their stitches, whatever it goes by', () => {
    const project = written({ weighed: { motifs: 10, grams: 62 } })
    const measures = look(project)
    expect(yarnsOf(project)[0]!.split).toEqual(['stitches'])
    expect(first(measures).kind).toBe('measured')
    yarnsOf(measures).forEach(({ split, grams }, i) => {
      expect(split).toEqual(['stitches'])
      expect(grams.expected / yarnsOf(project)[i]!.grams.expected).toBeCloseTo(1, 2)
    })
    // Without the rounds nothing tells but the drawing.
    const { rounds: _, ...alone } = first(measures)
    expect(yarnsOf({ ...measures, motifs: [alone as Motif] })[0]!.split).toEqual(['areas'])
  })
})
