/** How a command ends, for whoever called it. Documented in docs/command-line.md. */
export const EXIT = {
  done: 0,
  /** The project has errors. */
  projectErrors: 1,
  wrongUse: 2,
  /** The file could not be read, is no project, or is newer than the program. */
  unreadable: 3,
  notWritten: 4,
  /** A fault of the program itself (EX_SOFTWARE of sysexits.h). */
  fault: 70,
} as const

export type ExitCode = (typeof EXIT)[keyof typeof EXIT]

/** Ends a command early: `message` is one line for the person, `code` is for the caller. */
export class CommandEnd extends Error {
  override readonly name = 'CommandEnd'
  constructor(
    readonly code: ExitCode,
    message: string,
  ) {
    super(message)
  }
}
