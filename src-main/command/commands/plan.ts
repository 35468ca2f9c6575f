import { Option } from 'commander'
import type { Finding } from '../../../shared-types/finding'
import type { GarlandAccount, Plan, Range } from '../../../shared-types/plan'
import { PROJECT_FORMAT, PROJECT_VERSION } from '../../../shared-types/project'
import type { ListName } from '../../../shared-types/sheets'
import { LISTS } from '../../../shared-types/sheets'
import { joiningRounds } from '../../../src-core/joining-round/joining-round'
import { wholeCost } from '../../../src-core/materials/whole-cost'
import { planProject } from '../../../src-core/plan'
import { CommandEnd, EXIT } from '../exit-codes'
import type { AddCommand } from '../program'
import { placeInRow } from '../../../src-core/layout/placed'
import { complainOf, exitFor, loadProject, printJson, printLines } from '../project-file'
import { planReport } from '../reports/plan'
import { oneOf } from '../options'

interface Options {
  readonly json?: boolean
  readonly order?: boolean
  readonly csv?: ListName
}

/** `petalyard plan`: size, counts, joins, order, yarn, cost. */
export const addPlan: AddCommand = (program, around, end) => {
  program
    .command('plan')
    .summary('size, counts, joins, order, yarn, cost')
    .description('Says what the project becomes: size, counts, joins, working order, yarn, cost.')
    .argument('<file>', 'project file')
    .option('--order', 'show the whole working order')
    .option('--json', 'print one JSON document')
    .addOption(
      oneOf(new Option('--csv <list>', 'print one list for a spreadsheet instead'), LISTS).conflicts('json'),
    )
    .addHelpText('after', '\nExample:\n  petalyard plan throw.petalyard')
    .action(async (file: string, options: Options) => {
      const { project, findings: invalid } = await loadProject(file)
      if (!project) {
        if (options.json) printJson(around, planJson(emptyPlan(invalid)))
        else complainOf(around, invalid)
        return end(exitFor(invalid))
      }
      const plan = planProject(project)
      if (options.json) printJson(around, planJson(plan))
      else if (options.csv) around.out(await csvOf(options.csv, plan))
      else printLines(around, planReport(project, plan, around.width, options.order === true))
      return end(exitFor(plan.findings))
    })
}

/** One list as CSV; a list that the project does not have ends the command. */
async function csvOf(list: ListName, plan: Plan): Promise<string> {
  // Loaded only here: the other answers do not need it.
  const { LIST_OWNERS, listCsv } = await import('../../paper/lists')
  const text = listCsv(list, plan)
  if (text !== null) return text
  const message = `there is no such list of this project: --csv ${list} is for ${LIST_OWNERS[list] ?? 'others'}.`
  throw new CommandEnd(EXIT.wrongUse, message)
}

/**
 * A plan as the contract has it: one number for metres and minutes, their ranges beside them. The accounts
 * of the motifs themselves are what `measure` prints.
 */
function planJson(plan: Plan): object {
  const { settled: _, motif: _motif, fillerMotifs: _fillers, accounts: _accounts, ...told } = plan
  const { garland, progress, beside, ...rest } = told
  return {
    ...rest,
    // Beside its column, that counts the places: which one it is of those that stand in its row.
    ...(plan.arrangement && {
      motifs: plan.motifs.map((motif) => ({ ...motif, place: placeInRow(plan, motif) })),
    }),
    ...(beside && { beside: beside.map(({ account: _account, ...each }) => each) }),
    ...(garland ? garlandJson(garland) : {}),
    ...inNumbers(rest),
    wholeCost: wholeCost(plan.yarns, plan.settled.yarns),
    joiningRounds: joiningRounds(plan, plan.settled.terms),
    progress: { ...progress, left: { ...progress.left, ...inNumbers(progress.left) } },
  }
}

/** What is needed, or left, with one number for metres and minutes. */
function inNumbers<Yarn extends { readonly metres: Range | null }>({
  yarns,
  minutes,
}: {
  readonly yarns: readonly Yarn[]
  readonly minutes: Range | null
}) {
  return {
    yarns: yarns.map(({ metres, ...yarn }) => ({
      ...yarn,
      metres: metres?.expected ?? null,
      metresRange: metres,
    })),
    minutes: minutes?.expected ?? null,
    minutesRange: minutes,
  }
}

/** Cord, items and swags stand by themselves, and what else a garland tells beside them. */
const garlandJson = ({ cord, items, swags, ...garland }: GarlandAccount): object => ({
  ...{ cord, items, swags, garland },
})

/** The plan of a project without anything in it, with the findings that keep the real one from being made. */
function emptyPlan(findings: readonly Finding[]): Plan {
  return { ...planProject({ format: PROJECT_FORMAT, version: PROJECT_VERSION }), findings }
}
