/**
 * The engine's memory, by identity: a stage whose inputs are the same objects (and equal numbers and texts) is not run
 * again. Projects are immutable with structural sharing, so an unchanged part is the same object.
 */

/** Remembers the last `remember` different calls of `stage`. */
export function memoised<Input extends readonly unknown[], Output>(
  stage: (...input: Input) => Output,
  remember = 1,
): (...input: Input) => Output {
  const calls: { readonly input: Input; readonly output: Output }[] = []
  return (...input) => {
    const known = calls.findIndex(
      (call) =>
        call.input.length === input.length && input.every((value, i) => Object.is(value, call.input[i])),
    )
    const call = known < 0 ? { input, output: stage(...input) } : calls.splice(known, 1)[0]!
    calls.unshift(call)
    if (calls.length > remember) calls.pop()
    return call.output
  }
}

/**
 * Remembers for each object, as long as it is in use, the last `remember` calls of a stage that is about it:
 * whoever asks again gets the same answer, and what is gone is forgotten by itself.
 */
export function remembered<About extends object, Rest extends readonly unknown[], Output>(
  stage: (about: About, ...rest: Rest) => Output,
  remember = 1,
): (about: About, ...rest: Rest) => Output {
  const stages = new WeakMap<About, (...rest: Rest) => Output>()
  return (about, ...rest) => {
    const known = stages.get(about)
    if (known) return known(...rest)
    const made = memoised((...input: Rest) => stage(about, ...input), remember)
    stages.set(about, made)
    return made(...rest)
  }
}
