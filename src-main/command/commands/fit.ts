import { Option } from 'commander'
import type { Project } from '../../../shared-types/project'
import type { WishedSize } from '../../../shared-types/ways'
import type { Have } from '../../../src-core/layout/fit-have'
import { motifsIn } from '../../../src-core/layout/piles'
import type { Piles } from '../../../src-core/layout/piles'
import { fitFromHave, fitProject, waysForProject } from '../../../src-core/plan'
import { blanketOf } from '../../../src-core/plans/layouts'
import { CommandEnd, EXIT } from '../exit-codes'
import { readCountOption, readLengthOption, readPilesOption } from '../options'
import type { AddCommand } from '../program'
import { complainOf, exitFor, loadProject, printJson, printLines } from '../project-file'
import { findingSection } from '../reports/findings'
import { fitReport } from '../reports/fit'
import { waysReport } from '../reports/ways'

interface Options {
  readonly width?: number
  readonly height?: number
  readonly stash?: true
  readonly motifs?: number | Piles
  readonly count?: number
  readonly exactly?: true
  readonly json?: boolean
}

/** `petalyard fit`: the closest fits to a target size. */
export const addFit: AddCommand = (program, around, end) => {
  program
    .command('fit')
    .summary('the closest fits to a target size, what holds first')
    .description(
      'Tries arrangements, counts and rotations, and lists the closest fits to a target size: first ' +
        'those that hold (in one piece, no motif on a single join point). ' +
        'Without --width and --height it is the target size of the project. ' +
        'With --stash it lists the largest that the yarn on hand allows, one that lies closed before one whose ' +
        'joins partly gape where it is about as large, with --motifs the arrangements of so many ' +
        'motifs, with --count those that have that many or nearly as many; all of these in the proportions of that ' +
        'size, else of the project as it is. ' +
        'With --exactly it also says what to change so that the project comes out at that size to 1 mm, or ' +
        'as near as that goes; one of --width and --height is enough then.',
    )
    .argument('<file>', 'project file')
    .option('--width <length>', 'target width: mm, or with a unit ("130cm", "51in")', readLengthOption)
    .option('--height <length>', 'target height', readLengthOption)
    .addOption(new Option('--stash', 'the largest that the yarn on hand allows').conflicts('motifs'))
    .option(
      '--motifs <number>',
      'arrangements of so many motifs that are made already; of each colourway: A=120,B=90',
      readPilesOption,
    )
    .addOption(
      new Option('--count <number>', 'arrangements with so many motifs, or the nearest number')
        .argParser(readCountOption)
        .conflicts(['stash', 'motifs']),
    )
    .addOption(
      new Option('--exactly', 'ways to the size: what to change, the nearest first').conflicts([
        'stash',
        'motifs',
        'count',
      ]),
    )
    .option('--json', 'print one JSON document')
    .addHelpText('after', '\nExample:\n  petalyard fit throw.petalyard --width 1300 --height 1600')
    .action(async (file: string, options: Options) => {
      const { project, findings: invalid } = await loadProject(file)
      if (!project) {
        const none = { arrangements: [], ...(options.exactly && { ways: [] }) }
        if (options.json) printJson(around, { ...none, findings: invalid })
        else complainOf(around, invalid)
        return end(exitFor(invalid))
      }
      if (options.exactly) {
        const wish = exactSize(project, options)
        const { ways, findings } = waysForProject(project, wish)
        if (options.json) {
          const { width, height } = wish
          const { arrangements } =
            width && height ? fitProject(project, { width, height }) : { arrangements: [] }
          printJson(around, { ways, arrangements, findings })
        } else {
          const refused = findings.length > 0 && ways.length === 0
          const lines = [
            ...(refused ? [] : waysReport(project, wish, ways, around.width)),
            ...findingSection(findings, around.width),
          ]
          printLines(around, refused ? lines.slice(1) : lines)
        }
        return end(exitFor(findings))
      }
      const have = haveOf(options, project)
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

function haveOf({ stash, motifs, count, width, height }: Options, project: Project): Have | null {
  if (motifs === undefined && count === undefined && !stash) return null
  if ((width === undefined) !== (height === undefined)) {
    const told = 'proportions need both sides: give --width and --height, or neither'
    throw new CommandEnd(EXIT.wrongUse, told)
  }
  const like = width && height ? { like: { width, height } } : {}
  if (count !== undefined) return { count, ...like }
  if (motifs === undefined) return { stash: true, ...like }
  if (typeof motifs === 'number') return { motifs, ...like }
  const piles = pilesIn(project, motifs)
  return { motifs: motifsIn(piles), piles, ...like }
}

/** Piles by the ids of their colourways, which are told by code, id or name. */
function pilesIn({ colourways = [] }: Project, told: Piles): Piles {
  const idOf = (name: string): string => {
    const way = colourways.find(({ id, code, name: own }) => [id, code, own].includes(name))
    if (way) return way.id
    throw new CommandEnd(EXIT.wrongUse, `the project has no colourway ${name}`)
  }
  return Object.fromEntries(Object.entries(told).map(([name, many]) => [idOf(name), many]))
}

/** The sides that were asked for; without any the target size of the project. */
function exactSize(project: Project, options: Options): WishedSize {
  const { width, height } =
    options.width === undefined && options.height === undefined ? (blanketOf(project)?.target ?? {}) : options
  const sides = { ...(width && width > 0 && { width }), ...(height && height > 0 && { height }) }
  return Object.keys(sides).length > 0 ? sides : noSize()
}

function noSize(): never {
  throw new CommandEnd(
    EXIT.wrongUse,
    'which size? Give --width and --height, for example --width 1300 --height 1600',
  )
}

function wishedSize(project: Project, options: Options): { width: number; height: number } {
  const target = blanketOf(project)?.target
  const width = options.width ?? target?.width
  const height = options.height ?? target?.height
  if (!width || !height || width < 0 || height < 0) noSize()
  return { width, height }
}
