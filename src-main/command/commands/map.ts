import { Option } from 'commander'
import { PAPERS, SHEET_STYLES } from '../../../shared-types/project'
import { LABEL_COUNTS } from '../../../shared-types/sheets'
import { EDITION_NAMES } from '../../../src-core/editions'
import { withFontOption } from '../font-files'
import { oneOf, readEditionsOption, readLeaveOutOption, readPagesOption, readSheetsOption } from '../options'
import type { AddCommand } from '../program'
import { printSheets } from '../print-out'
import type { PrintOptions } from '../print-out'

/** `petalyard map`: the printed map as a PDF. */
export const addMap: AddCommand = (program, around, end) => {
  withFontOption(program.command('map'))
    .summary('write the assembly map as a PDF')
    .description(
      'Writes the map to put the project together by: overview, key, joins, order, materials. Of a garland it is the card and the list along the cord, of an appliqué the template at full size; with a kit also its card. --sheets writes one of them alone, and the packing list with its costs.',
    )
    .argument('<file>', 'project file')
    .requiredOption(
      '-o, --out <pdf>',
      'the PDF to write (of editions the folder); a PDF that is there is replaced',
    )
    .addOption(oneOf(new Option('--paper <size>', 'paper (else as in the project)'), PAPERS))
    .addOption(oneOf(new Option('--style <style>', 'with colours, or ink alone'), SHEET_STYLES))
    .addOption(oneOf(new Option('--terms <terms>', 'terms to print stitches in'), ['US', 'UK']))
    .addOption(
      oneOf(new Option('--hand <hand>', 'for this hand (else as in the project)'), ['right', 'left']),
    )
    .option('--reverse', 'appliqué: mirrored, for marking from the back')
    .option(
      '--sheets <sheets>',
      'only these: title, map, card, packing, labels, or pattern of a project of one motif, with commas between (else map and card, the title page where the project or the house style asks for it)',
      readSheetsOption,
    )
    .addOption(
      oneOf(
        new Option(
          '--labels <count>',
          'of a kit: one page of labels to copy (unless you say run), or run: one label for each kit',
        ),
        LABEL_COUNTS,
      ),
    )
    .option(
      '--leave-out <pages>',
      'without these: order, materials, motif, progress, with commas between, or none (else as in the house style; of a kit, or with a title page, without progress and ticks)',
      readLeaveOutOption,
    )
    .option('--title-page', 'with a title page, whatever project and house style say')
    .option('--no-title-page', 'without one')
    .option('--pages <pages>', 'only these pages: "1-3,5"', readPagesOption)
    .option(
      '--editions <list>',
      `a PDF for each of these crossed: ${EDITION_NAMES.join(', ')}, or all`,
      readEditionsOption,
    )
    .option('-f, --force', 'of editions: replace PDFs in the folder that others made, too')
    .option(
      '--house <json>',
      'a house style: name, address, accent, logo (PNG or SVG), titlePage, leaveOut, fonts; on title page and labels',
    )
    .addHelpText(
      'after',
      '\nExamples:\n  petalyard map throw.petalyard --out throw.pdf --paper A4 --style ink\n  petalyard map garland.petalyard --out card.pdf --sheets card\n  petalyard map throw.petalyard --editions us,uk,a4,letter --out throw\n  petalyard map throw.petalyard --house house.json --out throw.pdf',
    )
    .action(async (file: string, options: PrintOptions) =>
      end(await printSheets(file, withLabels(options), { what: 'map' }, around)),
    )
}

/** Whoever says how many labels wants them: alone, unless sheets are named. */
function withLabels(options: PrintOptions): PrintOptions {
  if (!options.labels || options.sheets) return options
  return { ...options, sheets: ['labels'] }
}
