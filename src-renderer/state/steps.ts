/** Steps of an arrow key. */

/** One more or fewer, never below one. */
export const stepped = (value: number | undefined, steps: number): number => Math.max(1, (value ?? 1) + steps)

/** So many steps further among values that go round. */
export const cycled = <Value>(values: readonly Value[], value: Value, steps: number): Value =>
  values[(values.indexOf(value) + steps + values.length * Math.abs(steps)) % values.length]!
