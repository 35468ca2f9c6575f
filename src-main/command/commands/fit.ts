import { Option } from 'commander'
import type { Project } from '../../../shared-types/project'
import type { Have } from '../../../src-core/layout/fit-have'
import { fitFromHave, fitProject } from '../../../src-core/plan'
import { blanketOf } from '../../../src-core/plans/layouts'
import { CommandEnd, EXIT } from '../exit-codes'
import { readCountOption, readLengthOption } from '../options'
import type { AddCommand } from '../program'
import { complainOf, exitFor, loadProject, printJson, printLines } from '../project-file'
import { findingSection } from '../reports/findings'
import { fitReport } from '../reports/fit'

interface Options {
  readonly width?: number
  readonly height?: number
  readonly stash?: true
  readonly motifs?: number
  readonly json?: boolean
}

/** `petalyard fit`: the arrangements nearest a target size. */
export const addFit: AddCommand = (program, around, end) => {
  program
    .command('fit')
    .summary('the arrangements nearest a target size, what holds first')
    .description(
      'Tries arrangements, counts and rotations, and tells those that come nearest to a target size: first ' +
        'those that hold (in one piece, no motif on a single join point). ' +
        'Without --width and --height it is the target size of the project. ' +
        'With --stash it tells the largest that the yarn on hand allows, with --motifs the arrangements of so many ' +
        'motifs, both in the proportions of that size.',
    )
    .argument('<file>', 'project file')
    .option('--width <length>', 'target width: mm, or with a unit ("130cm", "51in")', readLengthOption)
    .option('--height <length>', 'target height', readLengthOption)
    .addOption(
      new Option('--stash', 'the largest that the yarn on hand allows').conflicts([
        'motifs',
        'width',
        'height',
      ]),
    )
    .addOption(
      new Option('--motifs <number>', 'arrangements of so many motifs that are made already')
        .argParser(readCountOption)
        .conflicts(['width', 'height']),
    )
    .option('--json', 'print one JSON document')
    .addHelpText('after', '\nExample:\n  petalyard fit throw.petalyard --width 1300 --height 1600')
    .action(async (file: string, options: Options) => {
      const { project, findings: invalid } = await loadProject(file)
      if (!project) {
        if (options.json) printJson(around, { arrangements: [], findings: invalid })
        else complainOf(around, invalid)
        return end(exitFor(invalid))
      }
      const have = haveOf(options)
      const wish = have ? null : wishedSize(project, options)
      const { arrangements, findings } = have ? fitFromHave(project, have) : fitProject(project, wish!)
      if (options.json) printJson(around, { arrangements, findings })
      else {
        const found =
          arrangements.length > 0 ? fitReport(project, wish ?? have!, arrangements, around.width) : []
        const lines = [...found, ...findingSection(findings, around.width)]
        printLines(around, found.length > 0 ? lines : lines.slice(1))
      }
      return end(exitFor(findings))
    })
}

const haveOf = ({ stash, motifs }: Options): Have | null =>
  motifs !== undefined ? { motifs } : stash ? { stash } : null

function wishedSize(project: Project, options: Options): { width: number; height: number } {
  const target = blanketOf(project)?.target
  const width = options.width ?? target?.width
  const height = options.height ?? target?.height
  if (!width || !height || width < 0 || height < 0)
    throw new CommandEnd(
      EXIT.wrongUse,
      'which size? Give --width and --height, for example --width 1300 --height 1600',
    )
  return { width, height }
}
