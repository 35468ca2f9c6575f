/** When a project is saved: some time after the last change, at the latest some time after the first. */
import type { Pace } from './ports'

export class SaveTimer {
  readonly #pace: Pace
  readonly #now: () => number
  /** When the first change was made that is not saved (ms). */
  #since: number | null = null
  #timer: NodeJS.Timeout | undefined

  constructor(pace: Pace, now: () => number) {
    this.#pace = pace
    this.#now = now
  }

  /** Calls `save` when it is time after a change, or for another try where the last one failed. */
  start(hasFailed: boolean, save: () => void): void {
    const { saveAfter, saveAtMost, saveAgain } = this.#pace
    const now = this.#now()
    // A clock that was set back must not put the save off until it is as late again.
    this.#since = Math.min(this.#since ?? now, now)
    const wait = hasFailed ? saveAgain : Math.max(0, Math.min(saveAfter, this.#since + saveAtMost - now))
    this.stop()
    this.#timer = setTimeout(save, wait)
  }

  /** After a save: what changed meanwhile counts from now. */
  saved(isUnsaved: boolean): void {
    this.#since = isUnsaved ? this.#now() : null
  }

  stop(): void {
    clearTimeout(this.#timer)
  }
}
