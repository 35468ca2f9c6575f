import { Worker } from 'node:worker_threads'
import type { ExportRequest, PagePreview, PageRequest, Progress } from '../../shared-types/bridge'
import type { Exported, Paper } from './ports'

export type PaperTask =
  | { readonly id: number; readonly kind: 'export'; readonly request: ExportRequest }
  | { readonly id: number; readonly kind: 'preview'; readonly request: PageRequest }

export type PaperAnswer =
  | { readonly id: number; readonly kind: 'progress'; readonly progress: Progress }
  | { readonly id: number; readonly kind: 'made'; readonly made: Exported }
  | { readonly id: number; readonly kind: 'previewed'; readonly page: PagePreview }
  | { readonly id: number; readonly kind: 'failed'; readonly reason: string }

/**
 * Paper made in workers: each export in one of its own, which a cancel ends at once, and all previews in one
 * that remembers the last map. `script` is the built worker.
 */
export function createPaper(script: string): Paper {
  const previews = new PreviewWorker(script)
  return {
    make: (request, onProgress, signal) => makeInWorker(script, request, onProgress, signal),
    preview: (request) => previews.ask(request),
    close: () => previews.close(),
  }
}

async function makeInWorker(
  script: string,
  request: ExportRequest,
  onProgress: (progress: Progress) => void,
  signal: AbortSignal,
): Promise<Exported> {
  signal.throwIfAborted()
  const worker = new Worker(script)
  const made = new Promise<Exported>((resolve, reject) => {
    signal.addEventListener('abort', () => reject(signal.reason as Error), { once: true })
    worker.on('error', reject)
    worker.on('exit', () => reject(new Error('the export ended before it was done')))
    worker.on('message', (answer: PaperAnswer) => {
      if (answer.kind === 'progress') onProgress(answer.progress)
      else if (answer.kind === 'made') resolve(answer.made)
      else if (answer.kind === 'failed') reject(new Error(answer.reason))
    })
    const task: PaperTask = { id: 1, kind: 'export', request }
    worker.postMessage(task)
  })
  return made.finally(() => worker.terminate())
}

interface Waiting {
  resolve(page: PagePreview): void
  reject(error: Error): void
}

class PreviewWorker {
  readonly #script: string
  readonly #waiting = new Map<number, Waiting>()
  #worker: Worker | null = null
  #lastId = 0

  constructor(script: string) {
    this.#script = script
  }

  ask(request: PageRequest): Promise<PagePreview> {
    return new Promise((resolve, reject) => {
      const task: PaperTask = { id: ++this.#lastId, kind: 'preview', request }
      this.#waiting.set(task.id, { resolve, reject })
      this.#running().postMessage(task)
    })
  }

  async close(): Promise<void> {
    await this.#worker?.terminate()
  }

  #running(): Worker {
    if (this.#worker) return this.#worker
    const worker = new Worker(this.#script)
    worker.unref()
    worker.on('message', (answer: PaperAnswer) => {
      const waiting = this.#waiting.get(answer.id)
      this.#waiting.delete(answer.id)
      if (answer.kind === 'previewed') waiting?.resolve(answer.page)
      else if (answer.kind === 'failed') waiting?.reject(new Error(answer.reason))
    })
    const fail = (error: Error) => {
      for (const waiting of this.#waiting.values()) waiting.reject(error)
      this.#waiting.clear()
      this.#worker = null
    }
    worker.on('error', fail)
    worker.on('exit', () => fail(new Error('the preview ended before it was done')))
    this.#worker = worker
    return worker
  }
}
