/** The commands, their options and their help. What each one does stands in `commands/`. */
import { Command, CommanderError } from 'commander'
import { version } from '../../package.json'
import { addArrange } from './commands/arrange'
import { addChart } from './commands/chart'
import { addCheck } from './commands/check'
import { addExample } from './commands/example'
import { addFit } from './commands/fit'
import { addMap } from './commands/map'
import { addMeasure } from './commands/measure'
import { addPage } from './commands/page'
import { addPhoto } from './commands/photo'
import { addPicture } from './commands/picture'
import { addPlan } from './commands/plan'
import { addRead } from './commands/read'
import { CommandEnd, EXIT } from './exit-codes'
import type { ExitCode } from './exit-codes'
import type { Surroundings } from './surroundings'
import { printable } from './text'

/** Adds one command to the program; it ends with the code that it gives back. */
export type AddCommand = (program: Command, around: Surroundings, end: (code: ExitCode) => void) => void

const COMMANDS: readonly AddCommand[] = [
  addCheck,
  addMeasure,
  addPhoto,
  addRead,
  addPlan,
  addFit,
  addArrange,
  addMap,
  addPage,
  addPicture,
  addChart,
  addExample,
]

const ABOUT = 'Plans what comes after the crocheted motif: arrangement, joins, yarn and the printed map.'

const EXAMPLES = `
Examples:
  petalyard example market-stall-throw --out throw.petalyard
  petalyard plan throw.petalyard
  petalyard map throw.petalyard --out throw.pdf
  petalyard map --help`

/** Runs one command line; never throws, never leaves the process. */
export async function run(args: readonly string[], around: Surroundings): Promise<ExitCode> {
  let code: ExitCode = EXIT.done
  const complain = (text: string) => around.err(`petalyard: ${printable(text).trim()}\n`)
  const program = new Command('petalyard')
    .description(ABOUT)
    .version(version, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .helpCommand('help [command]', 'print the help of a command')
    .exitOverride()
    .configureHelp({ helpWidth: around.width })
    .configureOutput({
      writeOut: around.out,
      writeErr: around.err,
      outputError: (text) => complain(text.replace(/^error: /, '')),
    })
    .addHelpText('after', EXAMPLES)
  for (const add of COMMANDS) add(program, around, (ended) => (code = ended))
  try {
    await program.parseAsync(args, { from: 'user' })
    return code
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.done : EXIT.wrongUse
    if (error instanceof CommandEnd) {
      complain(error.message)
      return error.code
    }
    const reason = error instanceof Error ? error.message : String(error)
    complain(`a fault of the program, not of your file: ${reason}. Your file was left as it is.`)
    if (process.env.PETALYARD_DEBUG && error instanceof Error) around.err(`${error.stack}\n`)
    return EXIT.fault
  }
}
