/** The export or print that is under way, how far it is, and how the last one ended. */
import type { ExportDone, ExportRequest, Job, Progress } from '../../shared-types/bridge'
import type { Finding } from '../../shared-types/finding'
import type { PrintDone } from './printing'
import { counted } from './summaries'

/** A request without the project, which is added when it starts. */
export type ExportWish = ExportRequest extends infer Request
  ? Request extends { readonly text: string }
    ? Omit<Request, 'text'>
    : never
  : never

export type ExportKind = ExportWish['kind']

type Act = 'export' | 'print'

type ExportEnd =
  | { readonly how: 'done'; readonly what: ExportDone | PrintDone }
  | { readonly how: 'cancelled'; readonly act: Act }
  | { readonly how: 'refused'; readonly problem: Finding }

/** "Exported: throw map.pdf in Documents, 7 pages." */
export function endWords({ what }: Extract<ExportEnd, { how: 'done' }>): string {
  if ('printed' in what) return `Sent to print: ${counted(what.printed, 'page')}.`
  return `Exported: ${what.where}${what.pages ? `, ${counted(what.pages, 'page')}` : ''}.`
}

export class ExportState {
  progress = $state.raw<Progress | null>(null)
  end = $state.raw<ExportEnd | null>(null)
  isRunning = $state(false)
  /** What is under way, or was last. */
  act = $state<Act>('export')
  /** Of what; sheets are printed as they are exported. */
  kind = $state<ExportKind>('map')
  #job: Job<ExportDone | PrintDone> | null = null

  /** Starts an export or a print; one that is under way is left to run, and nothing else starts. */
  async start(
    act: Act,
    begin: (onProgress: (progress: Progress) => void) => Job<ExportDone | PrintDone>,
    kind: ExportKind = 'map',
  ): Promise<ExportEnd | null> {
    if (this.isRunning) return null
    this.isRunning = true
    this.act = act
    this.kind = kind
    this.end = null
    this.progress = null
    const job = begin((progress) => (this.progress = progress))
    this.#job = job
    const outcome = await job.finished
    const end: ExportEnd =
      outcome.outcome === 'done'
        ? { how: 'done', what: outcome.value }
        : outcome.outcome === 'cancelled'
          ? { how: 'cancelled', act }
          : { how: 'refused', problem: outcome.problem }
    this.end = end
    this.isRunning = false
    this.progress = null
    this.#job = null
    return end
  }

  cancel(): void {
    this.#job?.cancel()
  }
}
