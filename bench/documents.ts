/** Opening, saving and exporting, each against the least that any program would do for it. */
import { mkdtemp, open, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Project } from '../shared-types/project'
import { createPlanner } from '../src-core/plan'
import { openProject } from '../src-main/documents/read'
import { saveProject } from '../src-main/documents/save'
import { renderMap } from '../src-main/paper'
import { blanketProject } from './engine'
import { milliseconds } from './measure'
import type { Row } from './measure'

const RUNS = 7

/** Best ms of each of two works, by turns; both run once before they are timed. */
async function bestOfTwo(
  one: () => Promise<unknown>,
  other: () => Promise<unknown>,
  runs = RUNS,
): Promise<[number, number]> {
  const best: [number, number] = [Infinity, Infinity]
  for (let run = -1; run < runs; run++)
    for (const [which, work] of [one, other].entries()) {
      const start = performance.now()
      await work()
      if (run >= 0) best[which as 0 | 1] = Math.min(best[which as 0 | 1], performance.now() - start)
    }
  return best
}

/** A blanket in which every motif was painted by hand: the largest that a file of so many motifs gets. */
function painted(columns: number, rows: number): Project {
  const project = blanketProject(columns, rows)
  if (project.layout?.kind !== 'blanket') throw new Error('the bench plans a blanket')
  const ways = ['c1', 'c2', 'c3']
  const cells = Array.from({ length: columns * rows }, (_, at) => [
    `${Math.floor(at / columns) + 1},${(at % columns) + 1}`,
    ways[(at * 7) % 3]!,
  ])
  return {
    ...project,
    layout: { ...project.layout, cells: { ...project.layout.cells, painted: Object.fromEntries(cells) } },
  }
}

/** How many times the least they may take: our own choice. */
const MOST = { open: 5, save: 5, export: 5 } as const

function row(what: string, [ours, baseline]: [number, number], most: number): Row {
  const ratio = ours / baseline
  return {
    ...{ what, ours: milliseconds(ours), baseline: milliseconds(baseline), ratio: `${ratio.toFixed(1)} ×` },
    ...{ wanted: `≤ ${most} ×`, met: ratio <= most },
  }
}

export async function benchDocuments(): Promise<Row[]> {
  const folder = await mkdtemp(join(tmpdir(), 'petalyard-bench-'))
  try {
    const path = join(folder, 'Painted.petalyard')
    const project = painted(100, 100)
    await saveProject(path, project)
    const opened = await openProject(path)
    if (opened.kind !== 'opened') throw new Error(`the bench's own project does not open: ${opened.kind}`)
    const opening = await bestOfTwo(
      () => openProject(path),
      async () => JSON.parse(await readFile(path, 'utf8')) as unknown,
    )
    const plain = join(folder, 'plain')
    const saving = await bestOfTwo(
      () => saveProject(path, project),
      async () => {
        const handle = await open(plain, 'w')
        const text = JSON.stringify(project, null, 2)
        JSON.parse(text)
        await handle.writeFile(text)
        await handle.sync()
        await handle.close()
      },
    )
    const small = blanketProject(20, 15)
    const plan = createPlanner().plan(small)
    const exporting = await bestOfTwo(
      () => renderMap(plan, { date: new Date(0), version: 'bench' }),
      async () => createPlanner().plan(structuredClone(small)).order,
      3,
    )
    return [
      row('open 10,000 painted motifs, against reading JSON', opening, MOST.open),
      row('save 10,000 painted motifs, against JSON, read again, and a synced write', saving, MOST.save),
      row('export the map of 300 motifs, against its plan', exporting, MOST.export),
    ]
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}
