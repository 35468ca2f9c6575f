import { Worker } from 'node:worker_threads'
import type { ExportRequest, PagePreview, PageRequest, Progress } from '../../shared-types/bridge'
import type { FontRead } from '../../shared-types/fonts'
import type { Exported, Housed, Paper } from './ports'

export type PaperTask =
  | {
      readonly id: number
      readonly kind: 'font'
      readonly bytes: Uint8Array
      readonly face: number | null
    }
  | { readonly id: number; readonly kind: 'export'; readonly request: Housed<ExportRequest> }
  | { readonly id: number; readonly kind: 'preview'; readonly request: Housed<PageRequest> }

export type PaperAnswer =
  | { readonly id: number; readonly kind: 'font'; readonly font: FontRead }
  | { readonly id: number; readonly kind: 'progress'; readonly progress: Progress }
  | { readonly id: number; readonly kind: 'made'; readonly made: Exported }
  | { readonly id: number; readonly kind: 'previewed'; readonly page: PagePreview }
  | { readonly id: number; readonly kind: 'failed'; readonly reason: string }

/** What a worker may take before it is ended. The whole of the program shares one process with them. */
interface PaperLimits {
  /** MB of memory: several times what the largest example needs. */
  readonly memory: number
  /** ms without a sign of life: far longer than the largest plan takes on an old laptop. */
  readonly silence: number
}

const LIMITS: PaperLimits = { memory: 1_024, silence: 120_000 }

const startWorker = (script: string, { memory }: PaperLimits): Worker =>
  new Worker(script, { resourceLimits: { maxOldGenerationSizeMb: memory } })

/** Why a worker died, for people. */
function deathOf(error: Error & { code?: string }): Error {
  return error.code === 'ERR_WORKER_OUT_OF_MEMORY'
    ? new Error('it takes more memory than there is for paper')
    : error
}

/** Calls `end` once nothing was heard for so long; each `hear` starts anew. */
function watchSilence(ms: number, end: (error: Error) => void) {
  let timer: ReturnType<typeof setTimeout> | undefined
  const stop = (): void => clearTimeout(timer)
  const hear = (): void => {
    stop()
    timer = setTimeout(() => end(new Error(`it takes more than ${ms / 1000} seconds`)), ms)
  }
  return { hear, stop }
}

/**
 * Paper made in workers: each export in one of its own, which a cancel ends at once, and all previews in one
 * that remembers the last map. `script` is the built worker.
 */
export function createPaper(script: string, limits: PaperLimits = LIMITS): Paper {
  const previews = new PreviewWorker(script, limits)
  return {
    make: (request, onProgress, signal) => makeInWorker(script, limits, request, onProgress, signal),
    readFont: (bytes, face) => readFontInWorker(script, limits, bytes, face),
    preview: (request, asker) => previews.ask(request, asker),
    close: () => previews.close(),
  }
}

/**
 * A font may be damaged on purpose: it is read where nothing waits for it. What would take the whole process along,
 * as a list beyond all memory does, is refused before it is made (`paper/pdf/fonts/characters.ts`).
 */
async function readFontInWorker(
  script: string,
  limits: PaperLimits,
  bytes: Uint8Array,
  face: number | null,
): Promise<FontRead> {
  const worker = startWorker(script, limits)
  let stopWatching: () => void = () => undefined
  const read = new Promise<FontRead>((resolve, reject) => {
    const { hear, stop } = watchSilence(limits.silence, reject)
    stopWatching = stop
    worker.on('error', (error) => reject(deathOf(error)))
    worker.on('exit', () => reject(new Error('it could not be read')))
    worker.on('message', (answer: PaperAnswer) => {
      if (answer.kind === 'font') resolve(answer.font)
      else if (answer.kind === 'failed') reject(new Error(answer.reason))
    })
    const task: PaperTask = { id: 1, kind: 'font', bytes, face }
    worker.postMessage(task)
    hear()
  })
  return read.finally(() => {
    stopWatching()
    return worker.terminate()
  })
}

async function makeInWorker(
  script: string,
  limits: PaperLimits,
  request: Housed<ExportRequest>,
  onProgress: (progress: Progress) => void,
  signal: AbortSignal,
): Promise<Exported> {
  signal.throwIfAborted()
  const worker = startWorker(script, limits)
  let stopWatching: () => void = () => undefined
  const made = new Promise<Exported>((resolve, reject) => {
    signal.addEventListener('abort', () => reject(signal.reason as Error), { once: true })
    const { hear, stop } = watchSilence(limits.silence, reject)
    stopWatching = stop
    worker.on('error', (error) => reject(deathOf(error)))
    worker.on('exit', () => reject(new Error('the export ended before it was done')))
    worker.on('message', (answer: PaperAnswer) => {
      hear()
      if (answer.kind === 'progress') onProgress(answer.progress)
      else if (answer.kind === 'made') resolve(answer.made)
      else if (answer.kind === 'failed') reject(new Error(answer.reason))
    })
    const task: PaperTask = { id: 1, kind: 'export', request }
    worker.postMessage(task)
    hear()
  })
  return made.finally(() => {
    stopWatching()
    return worker.terminate()
  })
}

interface Question {
  readonly request: Housed<PageRequest>
  readonly asker: string
  resolve(page: PagePreview | null): void
  reject(error: Error): void
}

/** Pages are made one after the other; of those that somebody wants to look at, the last one asked for. */
class PreviewWorker {
  readonly #script: string
  readonly #limits: PaperLimits
  #worker: Worker | null = null
  #watch: ReturnType<typeof watchSilence> | null = null
  #asked: Question | null = null
  #waiting: Question[] = []
  #lastId = 0

  constructor(script: string, limits: PaperLimits) {
    this.#script = script
    this.#limits = limits
  }

  ask(request: Housed<PageRequest>, asker: string): Promise<PagePreview | null> {
    return new Promise((resolve, reject) => {
      const question: Question = { request, asker, resolve, reject }
      const isOvertaken = (other: Question): boolean =>
        other.asker === asker && isToLookAt(other.request) && isToLookAt(request)
      for (const overtaken of this.#waiting.filter(isOvertaken)) overtaken.resolve(null)
      this.#waiting = [...this.#waiting.filter((other) => !isOvertaken(other)), question]
      this.#next()
    })
  }

  async close(): Promise<void> {
    this.#watch?.stop()
    await this.#worker?.terminate()
  }

  #next(): void {
    if (this.#asked) return
    this.#asked = this.#waiting.shift() ?? null
    if (!this.#asked) return this.#watch?.stop()
    const task: PaperTask = { id: ++this.#lastId, kind: 'preview', request: this.#asked.request }
    this.#running().postMessage(task)
    this.#watch?.hear()
  }

  #running(): Worker {
    if (this.#worker) return this.#worker
    const worker = startWorker(this.#script, this.#limits)
    worker.unref()
    /** A worker that was ended already says nothing about the one that came after it. */
    const fail = (error: Error): void => {
      if (this.#worker !== worker) return
      watch.stop()
      this.#worker = null
      const failed = [...(this.#asked ? [this.#asked] : []), ...this.#waiting]
      this.#asked = null
      this.#waiting = []
      for (const question of failed) question.reject(error)
    }
    const watch = watchSilence(this.#limits.silence, (error) => {
      fail(error)
      void worker.terminate()
    })
    worker.on('message', (answer: PaperAnswer) => {
      const question = this.#asked
      if (answer.id !== this.#lastId) return
      this.#asked = null
      if (answer.kind === 'previewed') question?.resolve(answer.page)
      else if (answer.kind === 'failed') question?.reject(new Error(answer.reason))
      this.#next()
    })
    worker.on('error', (error) => fail(deathOf(error)))
    worker.on('exit', () => fail(new Error('the preview ended before it was done')))
    this.#worker = worker
    this.#watch = watch
    return worker
  }
}

const isToLookAt = ({ purpose }: PageRequest): boolean => purpose !== 'print'
