/** Every edition of a map as a PDF, all of them in one ZIP. */
import { zipSync } from 'fflate'
import { version } from '../../package.json'
import type { ExportRequest, Progress } from '../../shared-types/bridge'
import type { Plan } from '../../shared-types/plan'
import { editionsOf } from '../../src-core/editions'
import { createPlanner } from '../../src-core/plan'
import { readProjectText } from '../documents/read'
import { renderMap } from '../paper'
import { fileNameFor } from './file-names'
import { fontsAt, planWith } from './paper-fonts'
import type { Exported, Housed } from './ports'

type EditionsRequest = Extract<ExportRequest, { kind: 'editions' }>

/** The finished ZIP. Its PDFs are packed already, so that they are stored as they are. */
export async function zipOfEditions(
  { text, editions: names, sheets, labels, reverse, leaveOut, house, fonts: places }: Housed<EditionsRequest>,
  plan: Plan,
  date: Date,
  onProgress: (progress: Progress) => void,
): Promise<Exported> {
  const outcome = readProjectText(text)
  if (outcome.kind !== 'opened') throw new Error(`the project could not be read (${outcome.kind})`)
  const planner = createPlanner()
  const fonts = fontsAt(places)
  const editions = editionsOf(names, plan.settled)
  const files: Record<string, Uint8Array> = {}
  let pages = 0
  for (const [i, { name, hand, ...choice }] of editions.entries()) {
    const onShare = (share: number): void => {
      pages++
      const done = Math.round(((i + share) / editions.length) * 100)
      onProgress({ done, total: 100, words: `Writing edition ${i + 1} of ${editions.length}` })
    }
    const chosen = {
      ...choice,
      ...(sheets ? { sheets } : {}),
      ...(labels ? { labels } : {}),
      ...(reverse ? { reverse } : {}),
      ...(leaveOut ? { leaveOut } : {}),
      ...(house ? { house } : {}),
    }
    const own = planWith(planner, { ...outcome.project, hand }, fonts)
    const bytes = await renderMap(own, { ...chosen, fonts, date, version, onProgress: onShare })
    files[`${fileNameFor(plan.settled.title || 'Untitled')}-${name}.pdf`] = bytes
  }
  return { bytes: zipSync(files, { level: 0, mtime: date }), pages }
}
