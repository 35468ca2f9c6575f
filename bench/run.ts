/**
 * `npm run bench`: how fast we are against a baseline in the same run, and how cost grows with size.
 * Ratios carry over to other machines, milliseconds do not. Ends with 1 when a wanted ratio is missed.
 * `npm run bench -- engine` (paper, drawing) runs one part alone.
 */
import { BENCH_ITEMS, benchDrawing } from './drawing'
import { benchGrowth, benchJoins, benchPanelDrag, benchTouching } from './engine'
import { milliseconds, table } from './measure'
import type { Row } from './measure'
import { benchPaper } from './paper'

/** Script of one frame at the 95th percentile, and how much better frames are, that the drawing must keep. */
const DRAWING = { script: 10, frames: 5, dragScript: 16, dragFrames: 1 } as const

async function drawingRows(): Promise<Row[]> {
  const results = await benchDrawing()
  if (!results) {
    console.log('drawing: no Chromium here, not measured')
    return []
  }
  return results.flatMap(({ gesture, drawing, nodes, ratio }) => {
    const what = gesture === 'drag' ? `drag 1 of ${BENCH_ITEMS} items` : `${gesture} 2,500 motifs`
    // The nodes of a panel know nothing of distances: here their frames are met while all of it is planned anew.
    const script = gesture === 'drag' ? DRAWING.dragScript : DRAWING.script
    const frames = gesture === 'drag' ? DRAWING.dragFrames : DRAWING.frames
    return [
      {
        what: `${what}: script, 95th percentile`,
        ours: milliseconds(drawing.script.p95),
        baseline: milliseconds(nodes.script.p95),
        ratio: `${(nodes.script.p95 / drawing.script.p95).toFixed(1)} ×`,
        wanted: `≤ ${script} ms`,
        met: drawing.script.p95 <= script,
      },
      {
        what: `${what}: frame, median (95th ${milliseconds(drawing.frame.p95)})`,
        ours: milliseconds(drawing.frame.median),
        baseline: milliseconds(nodes.frame.median),
        ratio: `${ratio.toFixed(1)} ×`,
        wanted: `≥ ${frames} ×`,
        met: ratio >= frames,
      },
    ]
  })
}

const parts: Record<string, () => Row[] | Promise<Row[]>> = {
  engine: () => [benchTouching(), benchJoins(), benchPanelDrag(), ...benchGrowth()],
  paper: benchPaper,
  drawing: drawingRows,
}

const wanted = process.argv.slice(2)
const rows: Row[] = []
for (const [name, part] of Object.entries(parts))
  if (wanted.length === 0 || wanted.includes(name)) rows.push(...(await part()))
console.log(table(rows))
if (rows.some((row) => !row.met)) process.exitCode = 1
