/** What a command knows of the machine around it; tests hand in their own. */
export interface Surroundings {
  readonly out: (text: string) => void
  readonly err: (text: string) => void
  /** Width to fit tables and prose to, in columns. */
  readonly width: number
  readonly now: () => Date
  /** As in "en-GB": what papers and the like are usual there. */
  readonly locale: string
}

/** Never wider than this, so that lines stay readable on wide screens (common practice). */
const WIDEST = 100
const USUAL = 80

export function processSurroundings(): Surroundings {
  return {
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    width: Math.min(WIDEST, process.stdout.columns || USUAL),
    now: () => new Date(),
    locale: Intl.DateTimeFormat().resolvedOptions().locale,
  }
}
