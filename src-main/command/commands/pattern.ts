import { Option } from 'commander'
import { PAPERS, SHEET_STYLES } from '../../../shared-types/project'
import type { Project } from '../../../shared-types/project'
import { EDITION_NAMES } from '../../../src-core/editions'
import { listed } from '../../../src-core/figures/words'
import { motifAlone, motifsAlone } from '../../../src-core/plans/alone'
import { CommandEnd, EXIT } from '../exit-codes'
import { withFontOption } from '../font-files'
import { oneOf, readEditionsOption } from '../options'
import { printSheets } from '../print-out'
import type { PrintOptions } from '../print-out'
import type { AddCommand } from '../program'

interface Options extends PrintOptions {
  readonly motif?: string
}

/** Which motif is meant: the one that is named, or the only one. */
function motifOf(project: Project, asked: string | undefined): string {
  const motifs = motifsAlone(project)
  const there = listed(motifs.map(({ id, name }) => (id === name ? id : `${id} (${name})`)))
  if (asked !== undefined) {
    if (project.motifs?.some(({ id }) => id === asked)) return asked
    throw new CommandEnd(EXIT.wrongUse, `There is no motif '${asked}' in this project, but ${there}.`)
  }
  const [only, ...others] = motifs
  if (!only) throw new CommandEnd(EXIT.projectErrors, 'There is no motif in this project yet.')
  if (others.length > 0) throw new CommandEnd(EXIT.wrongUse, `Say with --motif which one is meant: ${there}.`)
  return only.id
}

/** `petalyard pattern`: the pattern of one motif as a PDF. */
export const addPattern: AddCommand = (program, around, end) => {
  withFontOption(program.command('pattern'))
    .summary('write the pattern of one motif as a PDF')
    .description(
      'Writes the pattern of one motif alone, with nothing to put together: title page, materials for one, its rounds, its chart, and the pieces that go with it.',
    )
    .argument('<file>', 'project file')
    .requiredOption(
      '-o, --out <pdf>',
      'the PDF to write (of editions the folder); a PDF that is there is replaced',
    )
    .option('--motif <id>', 'which motif (unless there is only one)')
    .addOption(oneOf(new Option('--paper <size>', 'paper (else as in the project)'), PAPERS))
    .addOption(oneOf(new Option('--style <style>', 'with colours, or ink alone'), SHEET_STYLES))
    .addOption(oneOf(new Option('--terms <terms>', 'terms to print stitches in'), ['US', 'UK']))
    .addOption(
      oneOf(new Option('--hand <hand>', 'for this hand (else as in the project)'), ['right', 'left']),
    )
    .option(
      '--editions <list>',
      `a PDF for each of these crossed: ${EDITION_NAMES.join(', ')}, or all`,
      readEditionsOption,
    )
    .option('-f, --force', 'of editions: replace PDFs in the folder that others made, too')
    .option('--house <json>', 'a house style: name, address, accent, logo (PNG or SVG), fonts')
    .addHelpText(
      'after',
      '\nExamples:\n  petalyard pattern throw.petalyard --motif m1 --out flower.pdf\n  petalyard read flower.txt --out flower.petalyard\n  petalyard pattern flower.petalyard --editions us,uk --out flower',
    )
    .action(async (file: string, { motif, ...options }: Options) => {
      const as = (own: Project): Project => motifAlone(own, motifOf(own, motif))
      end(await printSheets(file, { ...options, sheets: ['pattern'] }, { what: 'pattern', as }, around))
    })
}
