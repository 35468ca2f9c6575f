/** Paper from a project's text: what the worker does, free of threads. */
import { version } from '../../package.json'
import type {
  ExportRequest,
  PagePreview,
  PageRequest,
  PaperChoice,
  Progress,
} from '../../shared-types/bridge'
import type { Plan } from '../../shared-types/plan'
import type { ListName } from '../../shared-types/sheets'
import { zipOfEditions } from './editions-work'
import { createPlanner } from '../../src-core/plan'
import { readProjectText } from '../documents/read'
import type { Faces, MapOptions, MapPage } from '../paper'
import { mapPages, NoSuchPageError, readFaces, renderMap } from '../paper'
import { LIST_OWNERS, listCsv } from '../paper/lists'
import { renderPicture } from '../paper/picture'
import { figureToSvg } from '../paper/svg'
import { phonePage } from '../phone/page'
import type { ChosenFont } from '../paper/pdf/fonts/chosen'
import { fontsAt, planWith } from './paper-fonts'
import type { Exported, Housed } from './ports'

/** The finished file of an export; progress in percent. */
export async function makeExport(
  request: Housed<ExportRequest>,
  date: Date,
  onProgress: (progress: Progress) => void,
): Promise<Exported> {
  onProgress({ done: 0, total: 100, words: 'Working out the plan' })
  const fonts = fontsAt(request.fonts)
  const plan = planOf(request.text, fonts)
  if (plan.motifs.length === 0) throw new Error('there is nothing to draw yet')
  switch (request.kind) {
    case 'map': {
      // It is told once a page.
      let pages = 0
      const onShare = (share: number) => {
        pages++
        onProgress({ done: Math.round(share * 100), total: 100, words: 'Writing the pages' })
      }
      const options = { ...optionsOf(request, date), fonts, version, onProgress: onShare }
      const bytes = await renderMap(plan, options)
      return { bytes, pages }
    }
    case 'picture':
      onProgress({ done: 50, total: 100, words: 'Drawing the picture' })
      return { bytes: (await renderPicture(plan, request, fonts)).bytes, pages: null }
    case 'editions':
      return zipOfEditions(request, plan, date, onProgress)
    case 'page':
      // A page is set in the fonts of the phone.
      return textFile(phonePage(planOf(request.text), { version }))
    case 'table':
      return textFile(tableOf(request.table, planOf(request.text)))
  }
}

function tableOf(table: ListName, plan: Plan): string {
  const text = listCsv(table, plan)
  if (text === null) throw new Error(`this list is for ${LIST_OWNERS[table] ?? 'other projects'}`)
  return text
}

interface Previewed {
  readonly key: string
  readonly pages: readonly MapPage[]
  readonly faces: Faces
}

/** The map that was looked at last: turning pages does not work them out anew. */
let last: Previewed | null = null

/** One page as a picture of what is printed, letter by letter; a page beyond the last is the last. */
export function makePreview(request: Housed<PageRequest>, date: Date): PagePreview {
  const { text, page, purpose: _purpose, ...choice } = request
  const key = JSON.stringify([text, choice])
  if (key !== last?.key) {
    const fonts = fontsAt(choice.fonts)
    const plan = planOf(text, fonts)
    const faces = readFaces(fonts)
    last = { key, faces, pages: mapPages(plan, optionsOf(choice, date), faces) }
  }
  const { pages, faces } = last
  const shown = pages[Math.min(page, pages.length) - 1]
  if (!shown) throw new NoSuchPageError([page], pages.length)
  const { figure, label, number, name } = shown
  const { width, height } = figure
  return {
    svg: figureToSvg(figure, label, faces),
    page: number,
    pageCount: pages.length,
    title: name,
    width,
    height,
  }
}

function planOf(text: string, fonts: readonly ChosenFont[] = []): Plan {
  const outcome = readProjectText(text)
  if (outcome.kind !== 'opened') throw new Error(`the project could not be read (${outcome.kind})`)
  return planWith(createPlanner(), outcome.project, fonts)
}

function optionsOf(choice: Housed<PaperChoice>, date: Date): MapOptions {
  const { paper, style, terms, pages, sheets, labels, reverse, leaveOut, house } = choice
  return {
    date,
    ...(paper ? { paper } : {}),
    ...(style ? { style } : {}),
    ...(terms ? { terms } : {}),
    ...(pages ? { pages } : {}),
    ...(sheets ? { sheets } : {}),
    ...(labels ? { labels } : {}),
    ...(reverse ? { reverse } : {}),
    ...(leaveOut ? { leaveOut } : {}),
    ...(house ? { house } : {}),
  }
}

function textFile(text: string): Exported {
  return { bytes: new TextEncoder().encode(text), pages: null }
}
