/** What a hand does to items of a panel: where overlaps are not allowed, they are refused. */
import { expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import type { WindowState } from '../../../src-renderer/state/window.svelte'
import MapTable from '../../../src-renderer/frame/MapTable.svelte'
import { settleItems } from '../../../src-renderer/frame/keep-apart'
import { nudgeItems } from '../../../src-renderer/frame/map-acts'
import { itemsOf, moveItems } from '../../../src-renderer/state/edits/applique'
import { example } from '../projects'
import { inWindow } from '../in-window'

const CUSHION = example('quince-wreath-cushion')
const panel = (more: object = {}): Project => ({
  ...CUSHION,
  layout: {
    kind: 'applique',
    panel: { shape: 'rectangle', width: 450, height: 450, allowance: 15 },
    items: [100, 250].map((x) => ({ motif: 'bud', colourway: 'closed', x, y: 200, turn: 0 })),
    ...more,
  },
})
/** As a mouse does: moved, and dropped. */
const drop = (app: WindowState, ids: readonly string[], dx: number) => {
  app.document.preview('move', (project) => moveItems(project, ids, { dx, dy: 0 }))
  settleItems(app, ids)
}
const xs = (project: Project) => itemsOf(project).map(({ x }) => x)

it('an item stays where it was rather than lie on another, and it is said why', async () => {
  const { app } = await inWindow(MapTable, {}, panel())
  drop(app, ['1,1'], 10)
  expect(xs(app.document.committed)).toEqual([110, 250])
  drop(app, ['1,1'], 135)
  expect(xs(app.document.committed)).toEqual([110, 250])
  expect(app.notices.map(({ code }) => code)).toEqual(['applique/kept-apart'])
  expect(app.said).toContain('item 1 stays where it was: it would overlap item 2')
  // What is possible again puts the remark away; both together may go anywhere.
  drop(app, ['1,1', '1,2'], 20)
  expect(app.notices).toEqual([])
  expect(xs(app.document.committed)).toEqual([130, 270])
})

it('an item lies on another where overlaps are allowed', async () => {
  const { app } = await inWindow(MapTable, {}, panel({ overlaps: 'allowed' }))
  drop(app, ['1,1'], 145)
  expect(xs(app.document.committed)).toEqual([245, 250])
  expect(app.notices).toEqual([])
})

it('keys pass over another item, and what they leave on it is told', async () => {
  const { app } = await inWindow(MapTable, {}, panel())
  nudgeItems(app, ['1,1'], 145, 0)
  expect(xs(app.document.committed)).toEqual([245, 250])
  expect(app.document.plan.findings.map(({ code }) => code)).toContain('applique/overlap')
})
