/** Plans that were asked for in the background and have not come yet, with the numbers that come before them. */
import type { PlanNumbers } from '../../shared-types/plan'

export class PlansAwaited {
  #asked = 0
  #open: number
  #ahead: { readonly numbers: PlanNumbers; readonly turn: number } | null
  /** What waits for the last of them. */
  readonly #whenNone: (() => void)[] = []

  constructor() {
    this.#open = $state(0)
    this.#ahead = $state.raw(null)
  }

  get isAny(): boolean {
    return this.#open > 0
  }

  /** What a plan comes to that is still on its way; null where there is none. */
  get numbers(): PlanNumbers | null {
    return this.#ahead?.numbers ?? null
  }

  /** Another one is asked for: which turn it has. */
  ask(): number {
    this.#open++
    return ++this.#asked
  }

  hear(turn: number, numbers: PlanNumbers): void {
    this.#ahead = { numbers, turn }
  }

  /**
   * The plan of a turn is there, or cannot be. Numbers of a later one stay: they may come before the plan that was in
   * hand when it was asked for.
   */
  reach(turn = Infinity): void {
    if (this.#ahead && this.#ahead.turn <= turn) this.#ahead = null
  }

  /** A plan that was asked for is awaited no longer. */
  close(): void {
    this.#open--
    if (this.#open === 0) for (const act of this.#whenNone.splice(0)) act()
  }

  /** Does something once none is awaited: at once, where none is. */
  whenNone(act: () => void): void {
    if (this.isAny) this.#whenNone.push(act)
    else act()
  }
}
