import { Option } from 'commander'
import type { Finding } from '../../../shared-types/finding'
import { PAPERS, SHEET_STYLES } from '../../../shared-types/project'
import type { Hand, Project } from '../../../shared-types/project'
import { EDITION_NAMES } from '../../../src-core/editions'
import { listed } from '../../../src-core/figures/words'
import { withIsolatedNames } from '../../../src-core/letters/isolated'
import { planProject } from '../../../src-core/plan'
import { motifAlone, motifsAlone } from '../../../src-core/plans/alone'
import { CommandEnd, EXIT } from '../exit-codes'
import { readFonts, withFontOption } from '../font-files'
import { readHouse } from '../house-file'
import { oneOf, readEditionsOption } from '../options'
import { printOut } from '../print-out'
import type { PrintOptions } from '../print-out'
import type { AddCommand } from '../program'
import { exitFor, planToDraw } from '../project-file'
import { demandAlike } from '../write-out'

interface Options extends PrintOptions {
  readonly motif?: string
  readonly hand?: Hand
  readonly house?: string
  readonly font?: readonly string[]
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
    .action(async (file: string, options: Options) => {
      const said = (['paper', 'style', 'terms', 'hand'] as const).find((name) => options[name] !== undefined)
      if (options.editions && said)
        throw new CommandEnd(EXIT.wrongUse, `--editions says it already: leave --${said} out.`)
      const { house, fonts: houseFonts } = options.house ? await readHouse(options.house) : { fonts: [] }
      const fonts = await readFonts([...houseFonts, ...(options.font ?? [])])
      const covers = fonts.map((font) => font.covers)
      const alone = (own: Project): Project => {
        const project = motifAlone(own, motifOf(own, options.motif))
        return options.hand ? { ...project, hand: options.hand } : project
      }
      const isOfLetters = ({ code }: Finding): boolean => code.startsWith('letters/')
      const made = await planToDraw(file, options.out, 'pattern', around, isOfLetters, covers, alone)
      if (made.ended !== undefined) return end(made.ended)
      if (!options.editions) await demandAlike(options.out, 'PDF')
      const project = fonts.length > 0 ? withIsolatedNames(made.project) : made.project
      const plan = project === made.project ? made.plan : planProject(project, covers)
      await printOut(file, { project, plan }, { ...options, sheets: ['pattern'] }, { house, fonts }, around)
      return end(exitFor(plan.findings))
    })
}
