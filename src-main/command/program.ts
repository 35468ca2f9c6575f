/** The commands, their options and their help. What each one does stands in `commands/`. */
import { Command, CommanderError } from 'commander'
import { version } from '../../package.json'
import { forTerminal } from '../../src-core/letters/one-line'
import { CommandEnd, EXIT } from './exit-codes'
import type { ExitCode } from './exit-codes'
import type { Surroundings } from './surroundings'
import { printable } from './text'

/** Adds one command to the program; it ends with the code that it gives back. */
export type AddCommand = (program: Command, around: Surroundings, end: (code: ExitCode) => void) => void

/** The commands in the order in which the help lists them. Each is loaded when it is called, so that none waits for the others. */
const COMMANDS: Readonly<Record<string, () => Promise<AddCommand>>> = {
  check: async () => (await import('./commands/check')).addCheck,
  measure: async () => (await import('./commands/measure')).addMeasure,
  photo: async () => (await import('./commands/photo')).addPhoto,
  read: async () => (await import('./commands/read')).addRead,
  plan: async () => (await import('./commands/plan')).addPlan,
  fit: async () => (await import('./commands/fit')).addFit,
  arrange: async () => (await import('./commands/arrange')).addArrange,
  map: async () => (await import('./commands/map')).addMap,
  pattern: async () => (await import('./commands/pattern')).addPattern,
  page: async () => (await import('./commands/page')).addPage,
  picture: async () => (await import('./commands/picture')).addPicture,
  chart: async () => (await import('./commands/chart')).addChart,
  example: async () => (await import('./commands/example')).addExample,
}

/** The command that is called, or all of them where help is asked for, or none of them is named first. */
const commandsFor = (name = ''): Promise<AddCommand[]> =>
  Promise.all(
    (Object.hasOwn(COMMANDS, name) ? [COMMANDS[name]!] : Object.values(COMMANDS)).map((load) => load()),
  )

const ABOUT = 'Plans what comes after the crocheted motif: arrangement, joins, yarn and the printed map.'

const EXAMPLES = `
Examples:
  petalyard example market-stall-throw --out throw.petalyard
  petalyard plan throw.petalyard
  petalyard map throw.petalyard --out throw.pdf
  petalyard map --help`

/** Many tools take `-` for standard output; a file of that name is what nobody wants. */
function demandFile(out: string | undefined): void {
  if (out === '-')
    throw new CommandEnd(
      EXIT.wrongUse,
      '--out takes the name of a file; nothing is written to standard output. ./- is a file called "-".',
    )
}

/** Runs one command line; never throws, never leaves the process. */
export async function run(args: readonly string[], outside: Surroundings): Promise<ExitCode> {
  // Names of files, values of a project, words of a fault: nothing reaches the terminal past this.
  const around: Surroundings = {
    ...outside,
    out: (text) => outside.out(forTerminal(text)),
    err: (text) => outside.err(forTerminal(text)),
  }
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
    .hook('preAction', (_program, command) => demandFile(command.opts<{ out?: string }>().out))
  try {
    for (const add of await commandsFor(args[0])) add(program, around, (ended) => (code = ended))
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
