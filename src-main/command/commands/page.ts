import { basename } from 'node:path'
import { version } from '../../../package.json'
import { counted } from '../../../src-core/figures/words'
import { formatNumber } from '../../../src-core/units/format'
import { nameOfFile } from '../../documents/session/keeping-words'
import type { AddCommand } from '../program'
import { exitFor, planToDraw } from '../project-file'
import { demandAlike, writeOut } from '../write-out'

/** `petalyard page`: the map as one file for a phone. */
export const addPage: AddCommand = (program, around, end) => {
  program
    .command('page')
    .summary('write the map as a page for a phone')
    .description(
      'Writes the map as one HTML file to open on a phone: it works without a network and loads nothing. Select a motif to see how it is joined, mark what is made, and bring the marks home as a short text.',
    )
    .argument('<file>', 'project file')
    .requiredOption('-o, --out <html>', 'the page to write; one that is there is replaced')
    .addHelpText('after', '\nExample:\n  petalyard page throw.petalyard --out throw.html')
    .action(async (file: string, { out }: { readonly out: string }) => {
      const made = await planToDraw(file, out, 'page', around)
      if (made.ended !== undefined) return end(made.ended)
      await demandAlike(out, 'HTML page')
      const { plan } = made
      // Loaded only here: the other commands need none of it.
      const { phonePage } = await import('../../phone/page')
      // What has no title is called by its file.
      const title = plan.settled.title || nameOfFile(basename(file))
      const page = phonePage({ ...plan, settled: { ...plan.settled, title } }, { version })
      const bytes = new TextEncoder().encode(page)
      await writeOut(out, bytes)
      around.out(
        `Wrote ${out}: ${counted(plan.motifs.length, 'motif')}, ${formatNumber(bytes.length / 1000)} kB\n`,
      )
      return end(exitFor(plan.findings))
    })
}
