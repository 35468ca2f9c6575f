import { Option } from 'commander'
import type { Project } from '../../../shared-types/project'
import { arrange, CORNERS, FACINGS, groundFor, roomFinding } from '../../../src-core/composing/arrange'
import { groundOf } from '../../../src-core/composing/ground'
import { finding } from '../../../src-core/findings/finding'
import { planProject } from '../../../src-core/plan'
import { KIND_WORDS } from '../../../src-core/figures/kind-words'
import { appliqueOf, layoutKindOf } from '../../../src-core/plans/layouts'
import { formatNumber } from '../../../src-core/units/format'
import { readPanelFile, readTurns, readWish } from '../arrange-options'
import type { ArrangeOptions } from '../arrange-options'
import { CommandEnd, EXIT } from '../exit-codes'
import {
  oneOf,
  readCountOption,
  readDegreesOption,
  readDistanceOption,
  readLengthOption,
  readPlaceOption,
  readSeedOption,
  readUnitOption,
} from '../options'
import type { AddCommand } from '../program'
import { complainOf, exitFor, loadProject } from '../project-file'
import { demandFree, writeNewProject } from '../write-out'

/** `petalyard arrange`: places motifs on the panel of an appliqué, and writes what comes of it as a new project. */
export const addArrange: AddCommand = (program, around, end) => {
  program
    .command('arrange')
    .summary('appliqué: place a wreath, a row, a spray or a scatter')
    .description(
      'Places motifs on the panel of an appliqué and writes the project with them to a file of its own. What is not asked for follows from the panel and the motifs: as wide as there is room, as many as keep the minimum gap.',
    )
    .argument('<file>', 'project file')
    .requiredOption('-o, --out <file>', 'the project file to write')
    .option('-f, --force', 'replace the file if it is there already; a copy is kept')
    .option('--panel <svg>', 'take the outline of the panel from an SVG file')
    .option('--line <id>', 'which line of an SVG file (else the largest)')
    .option('--unit <mm>', 'how many mm one unit of an SVG file is, where it does not say', readUnitOption)
    .option('--wreath', 'place a wreath')
    .option('--row <path>', 'place a row: path data in mm ("M 40 200 Q 225 100 410 200"), or an SVG file')
    .addOption(oneOf(new Option('--spray <corner>', 'place a spray out of a corner'), CORNERS))
    .option('--scatter', 'place as many as there is room for, by chance')
    .option('--motifs <list>', 'alternating: "blossom:light,leaf" (else every motif)')
    .option('--replace', 'in place of what lies there (else that is kept)')
    .option('--count <n>', 'how many; of a scatter at most', readCountOption)
    .option('--width <length>', 'width of a wreath, from centre to centre', readLengthOption)
    .option('--height <length>', 'its height (else it is a circle)', readLengthOption)
    .option('--centre <x,y>', 'its centre, from the top left of the panel', readPlaceOption)
    .option('--start <degrees>', 'where it begins, clockwise from the top', readDegreesOption)
    .addOption(oneOf(new Option('--facing <way>', 'where petal 1 faces'), FACINGS))
    .option('--turn <degrees>', 'rotates every item; of a scatter, all alike', readDegreesOption)
    .option('--first <length>', 'spray: from the corner to the first item', readDistanceOption)
    .option('--step <length>', 'spray: from arc to arc', readLengthOption)
    .option('--opening <degrees>', 'spray: how wide it opens', readDegreesOption)
    .option('--distance <length>', 'scatter: minimum gap (else that of the project)', readDistanceOption)
    .option('--seed <n>', 'scatter: another number gives another one', readSeedOption)
    .addHelpText(
      'after',
      `
Examples:
  petalyard arrange cushion.petalyard --wreath --count 8 --out wreath.petalyard
  petalyard arrange bag.petalyard --panel bag.svg --scatter --out full.petalyard
  petalyard arrange yoke.petalyard --row "M 40 60 H 410" --out row.petalyard`,
    )
    .action(async (file: string, options: ArrangeOptions) => {
      const wish = await readWish(options)
      if (!wish && options.panel === undefined)
        throw new CommandEnd(
          EXIT.wrongUse,
          'nothing to place. Add --wreath, --row, --spray or --scatter, or --panel for the panel alone.',
        )
      const { project, findings: invalid } = await loadProject(file)
      if (!project) {
        complainOf(around, invalid)
        return end(exitFor(invalid))
      }
      await demandFree(options.out, options.force === true)
      const ground = await withPanel(project, options)
      const turns = wish ? readTurns(options.motifs, project) : []
      const laid = wish ? arrange(ground, turns, wish, options.replace !== true) : ground
      const plan = planProject(laid)
      const told = plan.findings.filter(
        ({ severity, code }) => severity !== 'note' && code.startsWith('applique/'),
      )
      if (wish && laid === ground) {
        const code = plan.panel ? 'applique/nothing-laid' : 'applique/no-panel'
        complainOf(around, [...told, finding(code, 'layout.panel')])
        around.err('petalyard: nothing was placed, so nothing was written.\n')
        return end(EXIT.projectErrors)
      }
      const added = itemsOf(laid) - (options.replace ? 0 : itemsOf(ground))
      const on = groundOf(ground)
      const room = wish && on && roomFinding(groundFor(on, options.replace !== true), turns, wish, added)
      complainOf(around, room ? [room, ...told] : told)
      await writeNewProject(options.out, laid, options.force === true)
      around.out(
        `Wrote ${options.out}: ${formatNumber(added)} placed, ${formatNumber(itemsOf(laid))} on the panel\n`,
      )
      return end(exitFor(plan.findings))
    })
}

const itemsOf = (project: Project): number => appliqueOf(project)?.items?.length ?? 0

/** The project with the panel that the options name; ends the command where it is no appliqué. */
async function withPanel(project: Project, options: ArrangeOptions): Promise<Project> {
  const layout = appliqueOf(project)
  if (!layout)
    throw new CommandEnd(
      EXIT.wrongUse,
      `this is ${project.layout ? KIND_WORDS[layoutKindOf(project)].one : 'a project without a layout'}; only on the panel of an appliqué can anything be placed.`,
    )
  if (options.panel === undefined) return project
  const path = await readPanelFile(options.panel, options)
  const { points: _, ...panel } = layout.panel ?? {}
  return { ...project, layout: { ...layout, panel: { ...panel, shape: 'outline', path } } }
}
