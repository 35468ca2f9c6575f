import { extname } from 'node:path'
import { Option } from 'commander'
import { version } from '../../../package.json'
import type { Hand, RoundsMotif, Terms } from '../../../shared-types/project'
import type { Settled } from '../../../shared-types/settled'
import { accountOf, workedRounds } from '../../../src-core/accounts'
import { settled } from '../../../src-core/settled'
import { CommandEnd, EXIT } from '../exit-codes'
import { readFonts, withFontOption } from '../font-files'
import type { AddCommand } from '../program'
import { complainOf, exitFor, loadProject } from '../project-file'
import { demandAlike, demandApart, writeOut } from '../write-out'
import { oneOf } from '../options'

interface Options {
  readonly out: string
  readonly motif?: string
  readonly terms?: Terms
  readonly hand?: Hand
  readonly repeat?: boolean
  readonly font?: readonly string[]
}

/** `petalyard chart`: symbol charts of motifs in written rounds. */
export const addChart: AddCommand = (program, around, end) => {
  withFontOption(program.command('chart'))
    .summary('write the symbol chart of a motif as SVG or PDF')
    .description('Writes the symbol chart of each motif in written rounds, with its key.')
    .argument('<file>', 'project file')
    .requiredOption('-o, --out <chart>', 'the .svg or .pdf to write; one that is there is replaced')
    .option('--motif <id>', 'only this motif (an SVG holds one)')
    .addOption(oneOf(new Option('--terms <terms>', 'terms of the key'), ['US', 'UK']))
    .addOption(
      oneOf(new Option('--hand <hand>', 'for this hand (else as in the project)'), ['right', 'left']),
    )
    .option('--repeat', 'one repeat of the rounds, larger, in place of the whole')
    .addHelpText('after', '\nExample:\n  petalyard chart throw.petalyard --motif leaf --out leaf.svg')
    .action(async (file: string, options: Options) => {
      const ending = extname(options.out).toLowerCase()
      if (ending !== '.svg' && ending !== '.pdf')
        throw new CommandEnd(EXIT.wrongUse, `--out ${options.out} must end in .svg or .pdf.`)
      await demandApart(options.out, file, 'project')
      const fonts = await readFonts(options.font ?? [])
      const { project, findings: invalid } = await loadProject(file)
      if (!project) {
        complainOf(around, invalid)
        return end(exitFor(invalid))
      }
      const made = settled(options.hand ? { ...project, hand: options.hand } : project)
      const motifs = wanted(made, options.motif)
      const findings = motifs.flatMap((motif) => accountOf(made, motif).findings)
      const errors = findings.filter((finding) => finding.severity === 'error')
      complainOf(around, errors)
      if (ending === '.svg' && motifs.length > 1) {
        const ids = motifs.map((motif) => motif.id).join(', ')
        throw new CommandEnd(EXIT.wrongUse, `an SVG holds one chart: choose with --motif from ${ids}.`)
      }
      const drawable = motifs.filter((motif) => workedRounds(made, motif).beginning !== null)
      if (drawable.length === 0) {
        around.err('petalyard: there are no written rounds to draw, so no chart was written.\n')
        return end(EXIT.projectErrors)
      }
      await demandAlike(options.out, ending === '.svg' ? 'SVG' : 'PDF')
      // Loaded only here: the text face and the PDF writer are the largest part of the program.
      const { chartSvg, hasRepeat, renderCharts } = await import('../../paper')
      const { terms, repeat } = options
      const requests = drawable.map((motif) => ({ settled: made, motif, terms, repeat }))
      for (const request of repeat ? requests : [])
        if (!hasRepeat(request))
          around.err(
            `petalyard: ${nameOf(request.motif)}: one repeat would hardly be larger, so the whole chart is drawn.\n`,
          )
      const title = `${nameOf(drawable[0]!)}: symbol chart`
      const content =
        ending === '.svg'
          ? new TextEncoder().encode(chartSvg(requests[0]!, title, fonts))
          : await renderCharts(requests, { date: around.now(), version, fonts })
      await writeOut(options.out, content)
      around.out(`Wrote ${options.out}: ${drawable.map(nameOf).join(', ')}\n`)
      return end(exitFor(errors))
    })
}

const nameOf = ({ id, name }: RoundsMotif): string => name ?? id

/** The motifs in written rounds, or the one that is asked for. */
function wanted({ motifs: all }: Settled, id: string | undefined): RoundsMotif[] {
  const written = all.filter((motif): motif is RoundsMotif => motif.kind === 'rounds')
  if (id === undefined) return written
  const found = all.find((motif) => motif.id === id)
  const ids = all.map((motif) => motif.id).join(', ') || 'none'
  if (!found) throw new CommandEnd(EXIT.wrongUse, `there is no motif ${id}; there are: ${ids}.`)
  if (found.kind !== 'rounds')
    throw new CommandEnd(EXIT.wrongUse, `motif ${id} is measured; a chart needs written rounds.`)
  return [found]
}
