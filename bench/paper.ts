/** The overview as forms against every motif drawn anew, and a whole map of 10,000 motifs. */
import { createPlanner } from '../src-core/plan'
import { renderMap } from '../src-main/paper'
import { blanketProject } from './engine'
import { milliseconds } from './measure'
import type { Row } from './measure'
import { benchOverview } from './overview'

/** ms for all pages of 10,000 motifs, on a machine at rest. */
const WHOLE_MAP = 3_000

const kilobytes = (bytes: number): string => `${(bytes / 1000).toFixed(1)} kB`

export async function benchPaper(): Promise<Row[]> {
  const { motifs, forms, drawnAnew } = await benchOverview()
  const faster = drawnAnew.milliseconds / forms.milliseconds
  const smaller = drawnAnew.bytes / forms.bytes
  const project = blanketProject(100, 100)
  const plan = createPlanner().plan(project)
  const start = performance.now()
  const bytes = await renderMap(plan, { date: new Date(0), version: 'bench' })
  const whole = performance.now() - start
  return [
    {
      what: `overview, ${motifs} motifs as forms: time`,
      ours: milliseconds(forms.milliseconds),
      baseline: milliseconds(drawnAnew.milliseconds),
      ratio: `${faster.toFixed(1)} ×`,
      wanted: '≥ 5 ×',
      met: faster >= 5,
    },
    {
      what: `overview, ${motifs} motifs as forms: size`,
      ours: kilobytes(forms.bytes),
      baseline: kilobytes(drawnAnew.bytes),
      ratio: `${smaller.toFixed(1)} ×`,
      wanted: '≥ 2 ×',
      met: smaller >= 2,
    },
    {
      what: `whole map, 10,000 motifs (${kilobytes(bytes.length)})`,
      ours: milliseconds(whole),
      baseline: '',
      ratio: '',
      wanted: '≤ 3 s',
      met: whole <= WHOLE_MAP,
    },
  ]
}
