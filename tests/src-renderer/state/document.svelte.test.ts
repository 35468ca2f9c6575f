import { flushSync } from 'svelte'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { sameThreadBackground } from '../../../src-renderer/state/background'
import { DocumentState } from '../../../src-renderer/state/document.svelte'
import { patchBlanket } from '../../../src-renderer/state/edits/layout'
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
    expect([rows(document.project), rows(document.settled)]).toEqual([7, 4])
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
