import { listExamples } from '../../documents'
import { CommandEnd, EXIT } from '../exit-codes'
import type { AddCommand } from '../program'
import { printLines } from '../project-file'
import { listing } from '../text'
import { writeNew } from '../write-out'

interface Options {
  readonly out?: string
  readonly force?: boolean
}

/** `petalyard example`: lists the example projects, or writes one of them. */
export const addExample: AddCommand = (program, around) => {
  program
    .command('example')
    .summary('write one of the example projects; without NAME, list them')
    .description('Writes one of the example projects to a file of yours. Without NAME it lists them.')
    .argument('[name]', 'name of the example')
    .option('-o, --out <file>', 'the file to write')
    .option('-f, --force', 'replace the file if it is there already; a copy is kept')
    .addHelpText('after', '\nExample:\n  petalyard example                    (which ones there are)')
    .action(async (name: string | undefined, options: Options) => {
      const examples = listExamples()
      if (name === undefined) {
        if (options.out !== undefined)
          throw new CommandEnd(EXIT.wrongUse, 'which example? Name it before --out.')
        const pairs = examples.map(
          (example) => [example.name, `${example.title}. ${example.description}`] as const,
        )
        printLines(around, listing(pairs, around.width))
        return
      }
      const example = examples.find((each) => each.name === name)
      if (!example) {
        const names = examples.map((each) => each.name).join(', ')
        throw new CommandEnd(EXIT.wrongUse, `there is no example '${name}'; there are ${names}.`)
      }
      if (options.out === undefined)
        throw new CommandEnd(EXIT.wrongUse, `where to? Add --out ${name}.petalyard`)
      await writeNew(options.out, example.text, options.force === true)
      around.out(`Wrote ${options.out}: ${example.title}\n`)
    })
}
