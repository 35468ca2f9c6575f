/** The overview of a large map with every motif as a form, against drawing each motif anew, in one run. */
import { mapGround } from '../src-core/figures/map-ground'
import { overviewMap } from '../src-core/figures/overview-map'
import { createPlanner } from '../src-core/plan'
import { readFaces } from '../src-main/paper/pdf/faces'
import { writePdf } from '../src-main/paper/pdf/file'
import { blanketProject } from './engine'

interface OverviewRun {
  readonly milliseconds: number
  readonly bytes: number
}

interface OverviewBench {
  readonly motifs: number
  readonly forms: OverviewRun
  readonly drawnAnew: OverviewRun
}

const COLUMNS = 50
const ROWS = 40

/** Draws the overview both ways, `repeats` times each in turn, and gives the fastest of each. */
export async function benchOverview(repeats = 3): Promise<OverviewBench> {
  const made = blanketProject(COLUMNS, ROWS)
  const plan = createPlanner().plan(made)
  const { figure } = overviewMap(mapGround(plan, 'ink'), 186, 240)
  const information = {
    title: made.title ?? '',
    author: '',
    subject: '',
    language: 'en-US',
    date: new Date(0),
    producer: 'bench',
  }
  const run = async (drawnAnew: boolean): Promise<OverviewRun> => {
    const faces = readFaces()
    const page = { figure: { ...figure, width: 210, height: 297 }, label: '1', bookmarks: [] }
    const start = performance.now()
    const bytes = await writePdf([page], information, { faces, drawnAnew })
    return { milliseconds: performance.now() - start, bytes: bytes.length }
  }
  const faster = (a: OverviewRun | null, b: OverviewRun): OverviewRun =>
    a && a.milliseconds < b.milliseconds ? a : b
  let forms: OverviewRun | null = null
  let drawnAnew: OverviewRun | null = null
  for (let i = 0; i < repeats; i++) {
    forms = faster(forms, await run(false))
    drawnAnew = faster(drawnAnew, await run(true))
  }
  return { motifs: plan.motifs.length, forms: forms!, drawnAnew: drawnAnew! }
}
