/**
 * Memoising by identity: a stage whose inputs are the same objects (and equal numbers and texts) is not run
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
