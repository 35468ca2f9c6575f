/**
 * The engine's memory, by identity: a stage whose inputs are the same objects (and equal numbers and texts) is not run
 * again. Projects are immutable with structural sharing, so an unchanged part is the same object.
 */

interface Call<Input, Output> {
  readonly input: Input
  readonly output: Output
}

function isSame(before: readonly unknown[], now: readonly unknown[]): boolean {
  if (before.length !== now.length) return false
  for (let i = 0; i < now.length; i++) if (!Object.is(before[i], now[i])) return false
  return true
}

/** The answer to `input`: the one among `calls` (the latest first), else a new one, of which `most` are kept. */
function answered<Input extends readonly unknown[], Output>(
  calls: Call<Input, Output>[],
  input: Input,
  stage: () => Output,
  most: number,
): Output {
  // Nearly always it is the latest: thousands of items ask at every step of a drag.
  const latest = calls[0]
  if (latest && isSame(latest.input, input)) return latest.output
  const known = calls.findIndex((call) => isSame(call.input, input))
  const call = known < 0 ? { input, output: stage() } : calls.splice(known, 1)[0]!
  calls.unshift(call)
  if (calls.length > most) calls.pop()
  return call.output
}

/** Remembers the last `remember` different calls of `stage`. */
export function memoised<Input extends readonly unknown[], Output>(
  stage: (...input: Input) => Output,
  remember = 1,
): (...input: Input) => Output {
  const calls: Call<Input, Output>[] = []
  return (...input) => answered(calls, input, () => stage(...input), remember)
}

/**
 * Remembers for each object, as long as it is in use, the last `remember` calls of a stage that is about it:
 * whoever asks again gets the same answer, and what is gone is forgotten by itself.
 */
export function remembered<About extends object, Rest extends readonly unknown[], Output>(
  stage: (about: About, ...rest: Rest) => Output,
  remember = 1,
): (about: About, ...rest: Rest) => Output {
  const about = new WeakMap<About, Call<Rest, Output>[]>()
  return (object, ...rest) => {
    const known = about.get(object)
    const calls = known ?? []
    const output = answered(calls, rest, () => stage(object, ...rest), remember)
    if (!known) about.set(object, calls)
    return output
  }
}

/**
 * Gives back the earlier object where a new one has the value of one of the last `remember`: what follows from a value
 * that was worked out anew and came out the same is then remembered too.
 */
export function likeBefore<Value>(
  isEqual: (before: Value, now: Value) => boolean,
  remember = 1,
): (now: Value) => Value {
  const kept: Value[] = []
  return (now) => {
    const at = kept.findIndex((before) => before === now || isEqual(before, now))
    const value = at < 0 ? now : kept.splice(at, 1)[0]!
    kept.unshift(value)
    if (kept.length > remember) kept.pop()
    return value
  }
}
