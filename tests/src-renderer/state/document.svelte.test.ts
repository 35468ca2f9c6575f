import { flushSync } from 'svelte'
import { describe, expect, it, vi } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { holdWork } from '../../../src-core/progress/hold'
import { NoAnswerError, sameThreadBackground } from '../../../src-renderer/state/background'
import type { Background } from '../../../src-renderer/state/background'
import { DocumentState } from '../../../src-renderer/state/document.svelte'
import { patchBlanket } from '../../../src-renderer/state/edits/layout'
import { planFirst } from '../../../src-renderer/state/first-plan'
import { SMALL } from '../projects'

const rows = (project: Project) => (project.layout?.kind === 'blanket' ? project.layout.rows : undefined)
const setRows = (count: number) => (project: Project) => patchBlanket(project, { rows: count })

describe('the document', () => {
  it('undoes and redoes by name, and keeps what was not touched by identity', () => {
    const document = new DocumentState(SMALL)
    document.change('change the rows', setRows(6))
    document.change('change the title', (project) => ({ ...project, title: 'Other' }))
    expect(document.project.yarns).toBe(SMALL.yarns)
    expect(document.undoLabel).toBe('change the title')
    document.undo()
    expect(document.undoLabel).toBe('change the rows')
    expect(document.redoLabel).toBe('change the title')
    document.undo()
    expect(document.project).toBe(SMALL)
    expect(document.undoLabel).toBeNull()
    document.redo()
    document.redo()
    expect([rows(document.project), document.project.title]).toEqual([6, 'Other'])
  })

  it('tries things out and keeps them only when told, as one step', () => {
    const document = new DocumentState(SMALL)
    const before = document.plan
    document.preview('change the rows', setRows(5))
    document.preview('change the rows', setRows(7))
    expect([rows(document.project), rows(document.committed)]).toEqual([7, 4])
    expect(document.previous).toBe(before)
    expect(document.undoLabel).toBeNull()
    document.commit()
    expect(document.previous).toBeNull()
    document.undo()
    expect(document.project).toBe(SMALL)
  })

  it('forgets what was tried when it is given up, and undo gives up first', () => {
    const document = new DocumentState(SMALL)
    document.change('change the rows', setRows(6))
    document.preview('change the rows', setRows(9))
    document.undo()
    expect([rows(document.project), document.undoLabel]).toEqual([6, 'change the rows'])
    document.preview('change the rows', setRows(9))
    document.cancel()
    expect(document.plan.counts.motifs).toBe(30)
  })

  it('makes one step of changes with the same key, and none of changes that change nothing', () => {
    const document = new DocumentState(SMALL)
    document.change('nudge', setRows(5), 'rows')
    document.change('nudge', setRows(6), 'rows')
    document.change('nothing', (project) => project)
    document.undo()
    expect(document.project).toBe(SMALL)
  })

  it('tells every settled change, undo and redo, but nothing that is only tried', () => {
    const document = new DocumentState(SMALL)
    const heard: (number | undefined)[] = []
    document.onChange((project) => heard.push(rows(project)))
    document.preview('change the rows', setRows(9))
    document.cancel()
    document.change('change the rows', setRows(6))
    document.undo()
    document.redo()
    expect(heard).toEqual([6, 4, 6])
  })

  it('runs effects when the plan follows (a renderer without effects would pass everything else)', () => {
    const document = new DocumentState(SMALL)
    const seen: number[] = []
    const stop = $effect.root(() => {
      $effect(() => {
        seen.push(document.plan.counts.motifs)
      })
    })
    flushSync()
    document.change('change the rows', setRows(6))
    flushSync()
    stop()
    expect(seen).toEqual([20, 30])
  })

  it('plans beside the window while a hand is typing, and lets no late plan overtake a newer one', async () => {
    const settle = () => new Promise((resolve) => setTimeout(resolve))
    const document = new DocumentState(SMALL, sameThreadBackground())
    document.change('type', setRows(6), 'typing', 'typing')
    expect(document.plan.counts.motifs).toBe(20)
    expect(document.isPlanning).toBe(true)
    await settle()
    expect(document.plan.counts.motifs).toBe(30)
    expect(document.isPlanning).toBe(false)
    document.change('type', setRows(8), 'typing', 'typing')
    document.change('change the rows', setRows(5))
    await settle()
    expect(document.plan).toEqual(planProject(document.project))
    expect(document.plan.counts.motifs).toBe(25)
  })

  it('plans beside the window whatever may hang, however small; here only a panel whose motifs were planned', async () => {
    const asked: string[] = []
    const own = sameThreadBackground()
    const background: Background = {
      ...own,
      isBeside: true,
      plan: (lane, project, hearNumbers) => {
        asked.push(project.title ?? '')
        return own.plan(lane, project, hearNumbers)
      },
    }
    const rename = (title: string) => (project: Project) => ({ ...project, title })
    const blanket = new DocumentState(SMALL, background, await planFirst(SMALL, background))
    blanket.change('change the title', rename('blanket'))
    const panel: Project = { ...SMALL, layout: { kind: 'applique' }, title: 'panel' }
    const document = new DocumentState(panel, background, await planFirst(panel, background))
    document.change('change the title', rename('the same motifs'))
    document.change('write a motif', (project) => ({
      ...project,
      title: 'other motifs',
      motifs: [{ id: 'm1', kind: 'rounds', text: 'Rnd 1: 6 sc in ring.' }],
    }))
    await vi.waitFor(() => expect(document.isPlanning).toBe(false))
    document.change('change the title', rename('known by now'))
    expect(asked).toEqual([SMALL.title, 'blanket', 'panel', 'other motifs'])
    expect(document.plan).toEqual(planProject(document.project))
  })

  it('shows what a large plan comes to before the plan itself', async () => {
    let arrive = (): void => undefined
    const background: Background = {
      ...sameThreadBackground(),
      plan: (_lane, project, hearNumbers) => {
        const plan = planProject(project)
        hearNumbers?.(plan)
        return new Promise((resolve) => (arrive = () => resolve(plan)))
      },
    }
    const document = new DocumentState(SMALL, background)
    const before = document.plan
    document.change('grow', (project) => patchBlanket(project, { columns: 30, rows: 30 }))
    expect(document.numbers.counts.motifs).toBe(900)
    expect(document.plan).toBe(before)
    // What is to be told of it waits for it.
    const told: number[] = []
    document.whenPlanned(() => told.push(document.plan.motifs.length))
    expect(told).toEqual([])
    arrive()
    await vi.waitFor(() => expect(document.isPlanning).toBe(false))
    expect(document.plan.motifs).toHaveLength(900)
    expect(told).toEqual([900])
    document.whenPlanned(() => told.push(1))
    expect(told).toEqual([900, 1])
    expect(document.numbers).toBe(document.plan)
  })

  it('keeps the numbers of a later change where the plan before it comes after them', async () => {
    const arrive: (() => void)[] = []
    const background: Background = {
      ...sameThreadBackground(),
      plan: (_lane, project, hearNumbers) => {
        const plan = planProject(project)
        hearNumbers?.(plan)
        return new Promise((resolve) => arrive.push(() => resolve(plan)))
      },
    }
    const document = new DocumentState(SMALL, background)
    for (const count of [30, 31])
      document.change('grow', (project) => patchBlanket(project, { columns: 30, rows: count }))
    arrive[0]!()
    await vi.waitFor(() => expect(document.plan.motifs).toHaveLength(900))
    expect(document.numbers.counts.motifs).toBe(930)
    arrive[1]!()
    await vi.waitFor(() => expect(document.isPlanning).toBe(false))
    expect(document.numbers).toBe(document.plan)
    expect(document.plan.motifs).toHaveLength(930)
  })

  it('plans a large project in the background and comes to the same plan', async () => {
    const document = new DocumentState(SMALL, sameThreadBackground())
    document.change('grow', (project) => patchBlanket(project, { rows: 40, columns: 20 }))
    expect(document.isPlanning).toBe(true)
    await Promise.resolve()
    await new Promise((resolve) => setTimeout(resolve))
    expect(document.isPlanning).toBe(false)
    expect(document.plan).toEqual(planProject(document.project))
    document.undo()
    expect(document.plan.counts.motifs).toBe(20)
  })
})

describe('a project that cannot be planned', () => {
  /** A background whose plans of projects with this title fall over. */
  function falling(title: string): Background {
    const background = sameThreadBackground()
    return {
      ...background,
      plan: (lane, project) =>
        project.title === title
          ? Promise.reject(new NoAnswerError('a bug in the engine'))
          : background.plan(lane, project),
    }
  }
  const rename = (title: string) => (project: Project) => ({ ...project, title })

  it('stays open with an error and the last plan, and goes on when it is mended', async () => {
    const document = new DocumentState(SMALL, falling('bad'))
    const before = document.plan
    document.change('change the title', rename('bad'), null, 'typing')
    await vi.waitFor(() => expect(document.trouble?.code).toBe('app/not-planned'))
    expect(document.plan).toBe(before)
    expect(document.findings[0]).toMatchObject({ code: 'app/not-planned', severity: 'error' })
    expect(document.project.title).toBe('bad')
    document.undo()
    await vi.waitFor(() => expect(document.trouble).toBeNull())
    expect(document.plan).toEqual(before)
  })

  it('opens without a plan, and is planned as soon as it can be', async () => {
    const project = { ...SMALL, title: 'bad' }
    const background = falling('bad')
    const document = new DocumentState(project, background, await planFirst(project, background))
    expect(document.plan.motifs).toEqual([])
    expect(document.trouble?.message).toContain('a bug in the engine')
    document.change('change the title', rename('good'))
    await vi.waitFor(() => expect(document.trouble).toBeNull())
    expect(document.plan.counts.motifs).toBe(planProject(SMALL).counts.motifs)
  })

  it('stays open where the window itself plans it', () => {
    const document = new DocumentState(SMALL)
    const before = document.plan
    const broken = new Proxy(SMALL, {
      get: (project, key) => {
        if (key === 'joining') throw new Error('a bug in the engine')
        return project[key as keyof Project]
      },
    })
    document.change('break it', () => broken)
    expect(document.trouble?.message).toContain('a bug in the engine')
    expect(document.plan).toBe(before)
    document.undo()
    expect(document.trouble).toBeNull()
  })
})

describe('colours within limits', () => {
  /** Ten rows of ten in two colourways that do not touch their like, at most so many of A. */
  const limited = (most: number): Project =>
    patchBlanket(SMALL, {
      ...{ columns: 10, rows: 10 },
      cells: { fill: { pattern: 'no-two-alike', colourways: ['c1', 'c2'], seed: 2, most: { c1: most } } },
    })
  const mostOf = (project: Project) =>
    project.layout?.kind === 'blanket' ? project.layout.cells?.fill?.most?.['c1'] : undefined
  const setMost = (most: number) => (project: Project) =>
    patchBlanket(project, { cells: (limited(most).layout as BlanketLayout).cells })
  /** A background whose search ends when the test says so. */
  function slow() {
    const inner = sameThreadBackground()
    const asked: (() => void)[] = []
    const background: Background = {
      ...inner,
      isBeside: true,
      hold: (before, after) =>
        new Promise((resolve) => asked.push(() => void inner.hold(before, after).then(resolve))),
    }
    return { background, asked }
  }

  it('are sought beside the window: what is changed meanwhile waits, and all of it comes in order', async () => {
    const { background, asked } = slow()
    const document = new DocumentState(limited(60), background)
    document.change('change a limit', setMost(50))
    document.change('change the title', (project) => ({ ...project, title: 'Later' }))
    expect([mostOf(document.project), document.project.title]).toEqual([60, SMALL.title])
    expect(document.undoLabel).toBe('change a limit')
    asked.shift()!()
    await vi.waitFor(() => expect(document.project.title).toBe('Later'))
    expect(mostOf(document.project)).toBe(50)
    expect(document.project).toEqual({
      ...holdWork(limited(60), setMost(50)(limited(60))),
      title: 'Later',
    })
    // What no edit touched is the same object still.
    expect(document.project.motifs).toBe(SMALL.motifs)
    document.undo()
    document.undo()
    expect(mostOf(document.project)).toBe(60)
  })

  it.each(['before', 'after'] as const)(
    'lose nothing that was tried while they were sought, and kept %s they were found',
    async (when) => {
      const { background, asked } = slow()
      const document = new DocumentState(limited(60), background)
      const both = (most: number | undefined, title: string | undefined) =>
        expect([mostOf(document.project), document.project.title]).toEqual([most, title])
      document.change('change a limit', setMost(50))
      document.preview('change the title', (project) => ({ ...project, title: 'Tried' }))
      if (when === 'before') document.commit()
      asked.shift()!()
      await vi.waitFor(() => expect(mostOf(document.committed)).toBe(50))
      if (when === 'after') document.commit()
      both(50, 'Tried')
      expect(document.undoLabel).toBe('change the title')
      // A second limit that is typed while the first is sought.
      document.change('change a limit', setMost(45))
      document.preview('change the rows', setRows(9))
      if (when === 'before') document.commit()
      asked.shift()!()
      if (when === 'after') {
        await vi.waitFor(() => expect(mostOf(document.committed)).toBe(45))
        document.commit()
      }
      await vi.waitFor(() => expect(asked).toHaveLength(1))
      asked.shift()!()
      await vi.waitFor(() => expect(rows(document.committed)).toBe(9))
      both(45, 'Tried')
    },
  )

  it('wait with what was changed meanwhile until a question is answered', async () => {
    for (const isMeant of [true, false]) {
      const { background, asked } = slow()
      const document = new DocumentState({ ...limited(60), made: { '10,1': '' } }, background)
      document.change('change the rows', setRows(8))
      document.change('change the title', (project) => ({ ...project, title: 'Later' }))
      asked.shift()!()
      await vi.waitFor(() => expect(document.question?.gone).toBe(1))
      expect(document.project.title).toBe(SMALL.title)
      document.answer(isMeant)
      expect([rows(document.project), document.project.title]).toEqual([isMeant ? 8 : 10, 'Later'])
    }
  })

  it('are there before what waits for the plan is said', async () => {
    const { background, asked } = slow()
    const document = new DocumentState(limited(60), background)
    const told: unknown[] = []
    document.change('change a limit', setMost(50))
    document.whenPlanned(() => told.push(mostOf(document.project), document.plan.counts.byColourway['c1']))
    expect(told).toEqual([])
    asked.shift()!()
    await vi.waitFor(() => expect(told).toEqual([50, 50]))
  })

  it('are taken back by undo or Cancel while they are sought, with what waits for them', async () => {
    const { background, asked } = slow()
    const document = new DocumentState(limited(60), background)
    document.change('change a limit', setMost(50))
    document.change('change the title', (project) => ({ ...project, title: 'Later' }))
    document.undo()
    document.change('change a limit', setMost(40))
    document.stopWorking()
    expect(document.undoLabel).toBeNull()
    for (const answer of asked) answer()
    await Promise.resolve()
    await new Promise((resolve) => setTimeout(resolve))
    expect([mostOf(document.project), document.project.title]).toEqual([60, SMALL.title])
  })

  it('say that they are sought once that takes long, and no edit is lost where it finds no answer', async () => {
    vi.useFakeTimers()
    const { background } = slow()
    let fail = (): void => undefined
    const failing = {
      ...background,
      hold: () => new Promise<null>((resolve) => (fail = () => resolve(null))),
    }
    const document = new DocumentState(limited(60), failing)
    document.change('change a limit', setMost(50))
    expect(document.working).toBeNull()
    vi.advanceTimersByTime(1_000)
    expect(document.working).toBe('change a limit')
    vi.useRealTimers()
    fail()
    await vi.waitFor(() => expect(mostOf(document.project)).toBe(50))
    expect(document.working).toBeNull()
  })

  it('ask before a made motif loses its place, as elsewhere', async () => {
    const { background, asked } = slow()
    const document = new DocumentState({ ...limited(60), made: { '10,1': '' } }, background)
    document.change('change the rows', setRows(8))
    asked.shift()!()
    await vi.waitFor(() => expect(document.question?.gone).toBe(1))
    expect(rows(document.project)).toBe(10)
  })
})
