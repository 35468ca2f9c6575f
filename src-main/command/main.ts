/** The built command line starts here. */
import { run } from './program'
import { processSurroundings } from './surroundings'

/** Runs the command line of this process and sets its exit code. */
export async function main(args: readonly string[]): Promise<void> {
  // A reader that has seen enough (`| head`) is no error. Leave at once: nobody reads the rest.
  const leaveQuietly = (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit()
    throw error
  }
  process.stdout.on('error', leaveQuietly)
  process.stderr.on('error', leaveQuietly)
  process.exitCode = await run(args, processSurroundings())
}
