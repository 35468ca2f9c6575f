/** Timing for the bench: the best of several runs, since everything else on the machine only ever adds time. */

/** Best time of `runs` calls in ms; `prepare` is not counted. */
export function bestOf<T>(runs: number, work: (input: T) => unknown, prepare: (run: number) => T): number {
  let best = Infinity
  for (let run = 0; run < runs; run++) {
    const input = prepare(run)
    const start = performance.now()
    work(input)
    best = Math.min(best, performance.now() - start)
  }
  return best
}

/**
 * Best time in ms of each of two works, run by turns: what is compared as a ratio meets the same state of the machine
 * and of the compiler. Both run a few times before they are timed.
 */
export function bestOfBoth<T>(
  runs: number,
  work: (input: T) => unknown,
  prepare: readonly [() => T, () => T],
  warm = 2,
): [number, number] {
  const best: [number, number] = [Infinity, Infinity]
  for (let run = -warm; run < runs; run++)
    for (const which of [0, 1] as const) {
      const time = bestOf(1, work, prepare[which])
      if (run >= 0) best[which] = Math.min(best[which], time)
    }
  return best
}

export interface Spread {
  readonly median: number
  readonly p95: number
}

/** Median and 95th percentile. */
export function spread(values: readonly number[]): Spread {
  const sorted = [...values].sort((a, b) => a - b)
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN
  return { median: at(0.5), p95: at(0.95) }
}

export interface Row {
  readonly what: string
  readonly ours: string
  readonly baseline: string
  readonly ratio: string
  readonly wanted: string
  readonly met: boolean
}

export const milliseconds = (value: number): string =>
  value < 1
    ? `${(value * 1000).toFixed(0)} µs`
    : value < 1000
      ? `${value.toFixed(1)} ms`
      : `${(value / 1000).toFixed(2)} s`

/** Rows as an aligned table. */
export function table(rows: readonly Row[]): string {
  const head = { what: 'what', ours: 'ours', baseline: 'baseline', ratio: 'ratio', wanted: 'wanted', met: '' }
  const cells = [head, ...rows.map((row) => ({ ...row, met: row.met ? 'yes' : 'NO' }))]
  const keys = ['what', 'ours', 'baseline', 'ratio', 'wanted', 'met'] as const
  const widths = keys.map((key) => Math.max(...cells.map((row) => row[key].length)))
  return cells
    .map((row) =>
      keys
        .map((key, i) => (i === 0 ? row[key].padEnd(widths[i]!) : row[key].padStart(widths[i]!)))
        .join('  '),
    )
    .join('\n')
}
