/** What the commands for paper write: one PDF, or a folder with one for each edition. */
import { basename, join } from 'node:path'
import { version } from '../../package.json'
import type { House } from '../../shared-types/house'
import type { Plan } from '../../shared-types/plan'
import type { Finding } from '../../shared-types/finding'
import type { Hand, Paper, Project, SheetStyle, Terms } from '../../shared-types/project'
import type { LabelCount, OptionalPage, SheetName } from '../../shared-types/sheets'
import { editionsOf } from '../../src-core/editions'
import { counted } from '../../src-core/figures/words'
import { withIsolatedNames } from '../../src-core/letters/isolated'
import { createPlanner, planProject } from '../../src-core/plan'
import { formatNumber } from '../../src-core/units/format'
import { nameOfFile } from '../documents/session/keeping-words'
import type { ChosenFont } from '../paper/pdf/fonts/chosen'
import { CommandEnd, EXIT } from './exit-codes'
import type { ExitCode } from './exit-codes'
import { readFonts } from './font-files'
import { readHouse } from './house-file'
import type { HouseFile } from './house-file'
import { exitFor, planToDraw } from './project-file'
import type { Surroundings } from './surroundings'
import { demandAlike, demandOurs, makeFolder, writeOut } from './write-out'

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
  readonly hand?: Hand
  readonly house?: string
  readonly font?: readonly string[]
}

const NO_HOUSE_FILE: Partial<HouseFile> & Pick<HouseFile, 'fonts'> = { fonts: [] }

interface Look {
  readonly house?: House | undefined
  readonly fonts: readonly ChosenFont[]
}

/** What is printed of a project: its own name in sentences, and the project that it is printed from. */
interface Printed {
  readonly what: string
  /** The project as it is printed, from the one in the file. */
  readonly as?: (project: Project) => Project
}

/** Reads the project, the house style and the fonts, and writes the PDFs; the code that the command ends with. */
export async function printSheets(
  file: string,
  options: PrintOptions,
  { what, as = (project) => project }: Printed,
  around: Surroundings,
): Promise<ExitCode> {
  const said = (['paper', 'style', 'terms', 'hand'] as const).find((name) => options[name] !== undefined)
  if (options.editions && said)
    throw new CommandEnd(EXIT.wrongUse, `--editions says it already: leave --${said} out.`)
  const { house, fonts: houseFonts } = options.house ? await readHouse(options.house) : NO_HOUSE_FILE
  const fonts = await readFonts([...houseFonts, ...(options.font ?? [])])
  const covers = fonts.map((font) => font.covers)
  const isOfLetters = ({ code }: Finding): boolean => code.startsWith('letters/')
  const forHand = (project: Project): Project =>
    options.hand ? { ...as(project), hand: options.hand } : as(project)
  const made = await planToDraw(file, options.out, what, around, isOfLetters, covers, forHand)
  if (made.ended !== undefined) return made.ended
  if (!options.editions) await demandAlike(options.out, 'PDF')
  const project = fonts.length > 0 ? withIsolatedNames(made.project) : made.project
  const plan = project === made.project ? made.plan : planProject(project, covers)
  await writeSheets(file, { project, plan }, options, { house, fonts }, around)
  return exitFor(made.plan.findings)
}

/** Writes the PDFs and says so. What has no title is called by its file. */
async function writeSheets(
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
