import type { MotifAccount } from '../../../shared-types/plan'
import { measureProject } from '../../../src-core/accounts'
import type { AddCommand } from '../program'
import { complainOf, exitFor, loadProject, printJson, printLines } from '../project-file'
import { findingSection } from '../reports/findings'
import { measureReport } from '../reports/measure'

/** `petalyard measure`: the account of each motif. */
export const addMeasure: AddCommand = (program, around, end) => {
  program
    .command('measure')
    .summary('each motif: size, rounds, how it lies, stitches and yarn')
    .description(
      'Says of each motif how large it comes out, how it lies, where it can be joined, what it takes.',
    )
    .argument('<file>', 'project file')
    .option('--json', 'print one JSON document')
    .addHelpText('after', '\nExample:\n  petalyard measure throw.petalyard')
    .action(async (file: string, options: { readonly json?: boolean }) => {
      const { project, findings: invalid } = await loadProject(file)
      if (!project) {
        if (options.json) printJson(around, { motifs: [], findings: invalid })
        else complainOf(around, invalid)
        return end(exitFor(invalid))
      }
      const { motifs, findings } = measureProject(project)
      if (options.json) printJson(around, { motifs: motifs.map(motifJson), findings })
      else {
        const lines = [
          ...measureReport(project, motifs, around.width),
          ...findingSection(findings, around.width),
        ]
        printLines(around, lines)
      }
      return end(exitFor(findings))
    })
}

/** An account as the contract has it: outlines as lists of pairs. */
function motifJson(motif: MotifAccount): object {
  const pairs = (outline: MotifAccount['outline']) => outline.map(({ x, y }) => [x, y])
  return {
    ...motif,
    outline: pairs(motif.outline),
    layers: motif.layers.map((layer) => ({ ...layer, outline: pairs(layer.outline) })),
  }
}
