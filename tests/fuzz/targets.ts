/** All that is fuzzed, and how one case is run. */
import { seededRandom } from '../../src-core/units/random'
import { isPolluted, must } from './asserts'
import { ENGINE } from './engine'
import { MACHINE } from './machine'
import type { Target } from './target'

export const TARGETS: readonly Target[] = [...ENGINE, ...MACHINE]

/** The case that a target draws for a seed. */
export const drawn = (target: Target, seed: number): string => target.draw(seededRandom(seed))

/** Runs one case, and looks at what it left behind. */
export async function runCase(target: Target, text: string): Promise<void> {
  await target.run(text)
  must(!isPolluted(), () => 'a shared prototype was written to')
}
