/** What the commands for paper write: one PDF, or a folder with one for each edition. */
import { basename, join } from 'node:path'
import { version } from '../../package.json'
import type { House } from '../../shared-types/house'
import type { Plan } from '../../shared-types/plan'
import type { Paper, Project, SheetStyle, Terms } from '../../shared-types/project'
import type { LabelCount, OptionalPage, SheetName } from '../../shared-types/sheets'
import { editionsOf } from '../../src-core/editions'
import { counted } from '../../src-core/figures/words'
import { createPlanner } from '../../src-core/plan'
import { formatNumber } from '../../src-core/units/format'
import { nameOfFile } from '../documents/session/keeping-words'
import type { ChosenFont } from '../paper/pdf/fonts/chosen'
import { CommandEnd, EXIT } from './exit-codes'
import type { Surroundings } from './surroundings'
import { demandOurs, makeFolder, writeOut } from './write-out'

export interface PrintOptions {
  readonly out: string
  readonly paper?: Paper
  readonly style?: SheetStyle
  readonly terms?: Terms
  readonly pages?: readonly number[]
  readonly reverse?: boolean
  readonly sheets?: readonly SheetName[]
  readonly labels?: LabelCount
  readonly leaveOut?: readonly OptionalPage[]
  readonly titlePage?: boolean
  readonly editions?: readonly string[]
  readonly force?: boolean
}

interface Look {
  readonly house?: House | undefined
  readonly fonts: readonly ChosenFont[]
}

/** Writes the PDFs and says so. What has no title is called by its file. */
export async function printOut(
  file: string,
  { project, plan }: { readonly project: Project; readonly plan: Plan },
  options: PrintOptions,
  { house, fonts }: Look,
  around: Surroundings,
): Promise<void> {
  // Loaded only here: it is the largest part of the program, and the other commands do not need it.
  const { isMadeHere, NoSuchPageError, NoSuchSheetError, renderMap } = await import('../paper')
  const { paper, style, terms, pages, reverse, sheets, labels, leaveOut, titlePage } = options
  const sheet = {
    ...(paper && { paper }),
    ...(style && { style }),
    ...(terms && { terms }),
    ...(pages && { pages }),
    ...(reverse && { reverse }),
    ...(sheets && { sheets }),
    ...(labels && { labels }),
    ...(leaveOut && { leaveOut }),
    ...(titlePage !== undefined && { titlePage }),
  }
  const name = nameOfFile(basename(file))
  const write = async (
    own: Plan,
    target: string,
    choice: Pick<PrintOptions, 'paper' | 'style' | 'terms'>,
  ): Promise<void> => {
    const title = own.settled.title || name
    const task = renderMap(
      { ...own, settled: { ...own.settled, title } },
      { ...sheet, ...choice, ...(house && { house }), fonts, date: around.now(), version },
    )
    const bytes = await task.catch((error: unknown) => {
      const isAsked = error instanceof NoSuchPageError || error instanceof NoSuchSheetError
      throw isAsked ? new CommandEnd(EXIT.wrongUse, error.message) : error
    })
    await writeOut(target, bytes)
    around.out(
      `Wrote ${target}: ${counted(own.motifs.length, 'motif')}, ${formatNumber(bytes.length / 1000)} kB\n`,
    )
  }
  if (!options.editions) return write(plan, options.out, {})
  await makeFolder(options.out)
  const planner = createPlanner()
  const covers = fonts.map((font) => font.covers)
  const wanted = editionsOf(options.editions, plan.settled).map((edition) => ({
    ...edition,
    target: join(options.out, `${name}-${edition.name}.pdf`),
  }))
  await demandOurs(
    wanted.map(({ target }) => target),
    isMadeHere,
    options.force ?? false,
  )
  for (const { name: _, hand, target, ...choice } of wanted)
    await write(planner.plan({ ...project, hand }, covers), target, choice)
}
