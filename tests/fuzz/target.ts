import type { Random } from '../../src-core/units/random'

/** Something that is fuzzed. A case is text alone, so that it can be kept. */
export interface Target {
  readonly name: string
  /** Cases in a row, before the next target has its turn: what is quick gets more. */
  readonly perRound: number
  /** ms of processor that a case may take, where its budget is more than what counts as slow elsewhere. */
  readonly slow?: number
  /** Draws a case. */
  draw(random: Random): string
  /** Does with it what the program would; throws where something is wrong. */
  run(text: string): void | Promise<void>
}
