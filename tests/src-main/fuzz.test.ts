/**
 * A few seconds of `npm run fuzz` in every run of the tests: the same cases each time, and everything that longer runs
 * have found. `npm run fuzz -- --minutes 10` draws others.
 */
import { readFileSync } from 'node:fs'
import { afterAll, describe, expect, it } from 'vitest'
import { closeDoor } from '../fuzz/machine'
import { drawn, runCase, TARGETS } from '../fuzz/targets'
import { processorTime } from '../processor-time'
import { runs } from '../runs'

/** Rounds of cases, each target as often as it has its turn. */
const ROUNDS = 1
/** ms of processor for one case: a busy machine counts the same. */
const MOST = 20_000

const found = readFileSync(new URL('../fixtures/fuzz-found.jsonl', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line.trim() !== '')
  .map((line) => JSON.parse(line) as { target: string; what: string; text: string })

afterAll(closeDoor)

describe('hostile input', () => {
  it.each(TARGETS)('$name', async (target) => {
    for (let seed = 0; seed < runs(ROUNDS * target.perRound); seed++) {
      const before = processorTime()
      const text = drawn(target, seed)
      await runCase(target, text).catch((error: unknown) => {
        throw new Error(`${target.name}:${seed} ${String(error)}`, { cause: error })
      })
      expect(processorTime() - before, `${target.name}:${seed}`).toBeLessThan(MOST)
      // The same seed is the same case, or nobody could look at it again.
      if (seed === 0) expect(drawn(target, seed)).toBe(text)
    }
  })

  it.each(found)('found before: $what', async ({ target: name, text }) => {
    const target = TARGETS.find((known) => known.name === name)!
    const before = processorTime()
    await runCase(target, text)
    expect(processorTime() - before).toBeLessThan(MOST)
  })
})
