import type { Finding } from '../../../shared-types/finding'
import type { Plan } from '../../../shared-types/plan'
import { PROJECT_FORMAT, PROJECT_VERSION } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import type { AddCommand } from '../program'
import { complainOf, exitFor, loadProject, printJson, printLines } from '../project-file'
import { planReport } from '../reports/plan'

interface Options {
  readonly json?: boolean
  readonly order?: boolean
}

/** `petalyard plan`: size, counts, joins, order, yarn, cost. */
export const addPlan: AddCommand = (program, around, end) => {
  program
    .command('plan')
    .summary('size, counts, joins, order, yarn, cost')
    .description('Tells what the project becomes: size, counts, joins, working order, yarn, cost.')
    .argument('<file>', 'project file')
    .option('--order', 'show the whole working order')
    .option('--json', 'print one JSON document')
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
      else printLines(around, planReport(project, plan, around.width, options.order === true))
      return end(exitFor(plan.findings))
    })
}

/**
 * A plan as the contract has it: one number for metres and minutes, their ranges beside them. The accounts
 * of the motifs themselves are what `measure` prints.
 */
function planJson(plan: Plan): object {
  const { motif: _, fillerMotif: _filler, accounts: _accounts, minutes, yarns, ...rest } = plan
  return {
    ...rest,
    yarns: yarns.map(({ metres, ...yarn }) => ({
      ...yarn,
      metres: metres?.expected ?? null,
      metresRange: metres,
    })),
    minutes: minutes?.expected ?? null,
    minutesRange: minutes,
  }
}

/** The plan of a project without anything in it, with the findings that keep the real one from being made. */
function emptyPlan(findings: readonly Finding[]): Plan {
  return { ...planProject({ format: PROJECT_FORMAT, version: PROJECT_VERSION }), findings }
}
