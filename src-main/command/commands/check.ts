import { checkProject } from '../../../src-core/plan'
import type { AddCommand } from '../program'
import { exitFor, loadProject, printJson, printLines } from '../project-file'
import { countFindings, findingLines } from '../reports/findings'

/** `petalyard check`: every finding, one a line. */
export const addCheck: AddCommand = (program, around, end) => {
  program
    .command('check')
    .summary('everything that a good tech editor would mark')
    .description('Lists every finding, one a line, worst first. Ends with 1 when one of them is an error.')
    .argument('<file>', 'project file')
    .option('--json', 'print one JSON document')
    .addHelpText('after', '\nExample:\n  petalyard check throw.petalyard')
    .action(async (file: string, options: { readonly json?: boolean }) => {
      const { project, findings: invalid } = await loadProject(file)
      const findings = project ? checkProject(project) : invalid
      if (options.json) printJson(around, { findings })
      else {
        printLines(around, findingLines(findings))
        around.err(`${file}: ${countFindings(findings)}\n`)
      }
      end(exitFor(findings))
    })
}
