/** Tasks that never overlap: each waits for the one before, whatever became of it. */
export class Turns {
  #last: Promise<unknown> = Promise.resolve()

  take<T>(task: () => Promise<T>): Promise<T> {
    const next = this.#last.then(task, task)
    this.#last = next.catch(() => undefined)
    return next
  }

  /** Resolves when everything asked for so far is done. */
  get done(): Promise<unknown> {
    return this.#last
  }
}
