/** The export that is under way, how far it is, and how the last one ended. */
import type { ExportDone, ExportRequest, HostBridge, Job, Progress } from '../../shared-types/bridge'
import type { Finding } from '../../shared-types/finding'

/** A request without the project, which is added when it starts. */
export type ExportWish = ExportRequest extends infer Request
  ? Request extends { readonly text: string }
    ? Omit<Request, 'text'>
    : never
  : never

export type ExportEnd =
  | { readonly how: 'done'; readonly what: ExportDone }
  | { readonly how: 'cancelled' }
  | { readonly how: 'refused'; readonly problem: Finding }

export class ExportState {
  progress = $state.raw<Progress | null>(null)
  end = $state.raw<ExportEnd | null>(null)
  isRunning = $state(false)
  #job: Job<ExportDone> | null = null

  /** Starts an export; one that is under way is left to run, and nothing else starts. */
  async start(bridge: HostBridge, request: ExportRequest): Promise<ExportEnd | null> {
    if (this.isRunning) return null
    this.isRunning = true
    this.end = null
    this.progress = null
    const job = bridge.exportProject(request, (progress) => (this.progress = progress))
    this.#job = job
    const outcome = await job.finished
    const end: ExportEnd =
      outcome.outcome === 'done'
        ? { how: 'done', what: outcome.value }
        : outcome.outcome === 'cancelled'
          ? { how: 'cancelled' }
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
