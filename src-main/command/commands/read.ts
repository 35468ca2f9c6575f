import { parse } from 'node:path'
import { Option } from 'commander'
import type { Terms } from '../../../shared-types/project'
import { specialStitches } from '../../../src-core/notation/abbreviations'
import { readAfterRounds } from '../../../src-core/notation/after-rounds'
import type { RoundAccount } from '../../../src-core/notation/read'
import { proposalsOfText } from '../../../src-core/page/proposals'
import type { Proposal } from '../../../src-core/page/proposals'
import { readAfterOption } from '../after'
import type { AfterOption } from '../after'
import { CommandEnd, EXIT } from '../exit-codes'
import type { AddCommand } from '../program'
import { exitFor, printJson, printLines } from '../project-file'
import { findingSection } from '../reports/findings'
import { pageReport, readReport, specialReport, suggestionReport } from '../reports/read'
import { loadRoundsText } from '../rounds-text'
import { oneOf } from '../options'

interface ReadOptions {
  readonly terms?: Terms
  readonly after?: AfterOption
  readonly json?: boolean
  readonly out?: string
  readonly force?: boolean
}

/** `petalyard read`: the stitch account of written rounds. */
export const addRead: AddCommand = (program, around, end) => {
  program
    .command('read')
    .summary('written rounds: what each makes, uses and leaves')
    .description(
      'Reads rounds as patterns write them and gives the account of each: stitches made, used and left, and every mistake in the text.',
    )
    .argument('<file>', 'text file, or - for standard input')
    .addOption(
      oneOf(new Option('--terms <terms>', 'terms of the text; recognized where they are not given'), [
        'US',
        'UK',
      ]),
    )
    .option('--after <json>', 'what the round before left', readAfterOption)
    .option('--json', 'print one JSON document')
    .option('-o, --out <file>', 'write a project with those rounds and what the page says besides')
    .option('-f, --force', 'replace the project if it is there already; a copy is kept')
    .addHelpText(
      'after',
      `
Examples:
  petalyard read flower.txt
  petalyard read flower.txt --out flower.petalyard
  petalyard read - --terms UK < round.txt
  petalyard read round.txt --after '{"stitches": 12, "spaces": {"ch-3": 4}}'
  petalyard read round.txt --after '{"ring": 6}'
  petalyard read leaf.txt --after '{"start": true}'
  petalyard read round.txt --after '{"rounds": "Rnd 1: 12 sc in ring."}'`,
    )
    .action(async (file: string, options: ReadOptions) => {
      const { out, force = false } = options
      if (out !== undefined) {
        if (options.after)
          throw new CommandEnd(
            EXIT.wrongUse,
            'A project begins with its own rounds: --out does without --after.',
          )
        const { demandApart, demandFree } = await import('../write-out')
        if (file !== '-') await demandApart(out, file, 'text')
        await demandFree(out, force)
      }
      const text = await loadRoundsText(file)
      const { rounds: earlier = '', ...after } = options.after ?? {}
      const how = { terms: options.terms, ...(Object.keys(after).length > 0 && { after }) }
      const { rounds, findings, terms, tree, suggestions } = readAfterRounds(text, earlier, how)
      const special = specialStitches(tree).map(({ abbreviation, meaning }) => ({
        name: abbreviation,
        explanation: meaning,
      }))
      const proposals = proposalsOfText(text, terms)
      if (options.json)
        printJson(around, {
          terms,
          special,
          rounds: rounds.map(roundJson),
          proposals: proposals.map(proposalJson),
          findings,
          suggestions: suggestions.map(({ start: _start, end: _end, ...told }) => told),
        })
      else
        printLines(around, [
          ...pageReport(proposals, around.width),
          ...specialReport(special, around.width),
          ...readReport(rounds, terms, around.width),
          ...findingSection(findings, around.width),
          ...suggestionReport(suggestions, around.width),
        ])
      if (out === undefined) return end(exitFor(findings))
      // What only a project needs is loaded for it alone.
      const { projectOfPage } = await import('../../../src-core/page/project-of-page')
      const project = projectOfPage(text, terms, file === '-' ? undefined : parse(file).name)
      if (!project) {
        around.err('petalyard: there are no written rounds to take, so no project was written.\n')
        return end(EXIT.projectErrors)
      }
      await (await import('../write-out')).writeNew(out, `${JSON.stringify(project, null, 2)}\n`, force)
      if (!options.json) around.out(`Wrote ${out}\n`)
      return end(exitFor(findings))
    })
}

/** An account without the place of its text as offsets; line and column are what people count by. */
function roundJson({ span, ...account }: RoundAccount): object {
  return { ...account, line: span.line, column: span.column }
}

/** A proposal with its words and where they stand by line and column. */
function proposalJson({ id, kind, at, label, value, sets }: Proposal): object {
  const { words, line, column } = at
  return { id, kind, label, value, sets, words, line, column }
}
