/// <reference types="vite/client" />
/** Reads and measures pictures beside the window: the work of seconds never holds up a key. */
import type { PhotoAnswer } from '../../src-core/photo/photo'
import { damaged, LARGEST_PICTURE, PictureError } from '../../src-core/photo/picture-file'
import type { Asked } from '../../src-core/photo/scale'
import type { SheetChoice } from '../../src-core/photo/sheet-sizes'
import type { KeptPhoto } from '../../shared-types/project'
import { keepScript, startFrom } from '../state/worker-scripts'
import address from './photo-worker.ts?worker&url'

/** A picture that was read: its size, and what is shown of it. */
export interface OpenedPicture {
  readonly width: number
  readonly height: number
  /** The whole of it in no more pixels than a screen shows. */
  readonly shown: ImageBitmap
}

/** What a window asks of whoever reads its pictures. One picture at a time. */
export interface PhotoFinder {
  /** Throws a `PictureError` in words where it cannot be read. */
  open(file: Blob): Promise<OpenedPicture>
  /** Of the picture that was opened last. */
  measure(choice: Asked, onProgress?: (share: number) => void): Promise<PhotoAnswer>
  /** The picture that was opened last, as small as a project keeps it; null where it cannot be made so small. */
  keep(sheet: SheetChoice): Promise<KeptPhoto | null>
  /** Ends what is under way, which then throws a `FinderStopped`, and forgets the picture. */
  stop(): void
}

/** What was asked is not wanted any more. */
export class FinderStopped extends Error {}

export type PhotoQuestion =
  { readonly open: Blob } | { readonly measure: Asked } | { readonly keep: SheetChoice }
export type PhotoReply =
  /** How far it has come, 0 to 1; the answer is still to come. */
  | { readonly come: number }
  | { readonly opened: OpenedPicture }
  | { readonly answer: PhotoAnswer }
  | { readonly kept: KeptPhoto | null }
  | { readonly refused: string }
  | { readonly failed: string }

interface Waiting {
  readonly done: (reply: PhotoReply) => void
  readonly fail: (error: Error) => void
  readonly come: (share: number) => void
}

const script = keepScript(address)
const startWorker = (): Worker => startFrom(script)

/** Reads and measures in a worker of its own, which is begun with the first picture. */
export function workerFinder(start = startWorker): PhotoFinder {
  let worker: Worker | null = null
  const waiting = new Map<number, Waiting>()
  let last = 0

  function stop(reason: Error = new FinderStopped()): void {
    worker?.terminate()
    worker = null
    for (const { fail } of waiting.values()) fail(reason)
    waiting.clear()
  }

  function ask(
    question: PhotoQuestion,
    come: (share: number) => void = () => undefined,
  ): Promise<PhotoReply> {
    if (!worker) {
      worker = start()
      worker.addEventListener('message', ({ data }: MessageEvent<{ id: number; reply: PhotoReply }>) => {
        const asked = waiting.get(data.id)
        if ('come' in data.reply) return asked?.come(data.reply.come)
        asked?.done(data.reply)
        waiting.delete(data.id)
      })
      // What a picture does to its decoder ends with the worker.
      worker.addEventListener('error', () => stop(damaged()))
    }
    const id = ++last
    return new Promise((done, fail) => {
      waiting.set(id, { done, fail, come })
      worker!.postMessage({ id, question })
    })
  }

  const held = (reply: PhotoReply): PhotoReply => {
    if ('refused' in reply) throw new PictureError(reply.refused)
    if ('failed' in reply) throw new Error(reply.failed)
    return reply
  }

  return {
    async open(file) {
      if (file.size > LARGEST_PICTURE)
        throw new PictureError(`is too large; at most ${LARGEST_PICTURE / 1_000_000} MB are read`)
      const reply = held(await ask({ open: file }))
      if (!('opened' in reply)) throw damaged()
      return reply.opened
    },
    async measure(choice, onProgress) {
      const reply = held(await ask({ measure: choice }, onProgress))
      if (!('answer' in reply)) throw damaged()
      return reply.answer
    },
    async keep(sheet) {
      const reply = held(await ask({ keep: sheet }))
      if (!('kept' in reply)) throw damaged()
      return reply.kept
    },
    stop: () => stop(),
  }
}
