/** What was read of a text that stands as it was, but farther on or back: words were put in or taken out before it. */

/** Looks the same, with everything from a place in the old text on moved by so many characters and lines. */
export class Moved {
  private readonly known = new Map<object, unknown>()

  constructor(
    /** In the old text; begins a line, so that columns stay. */
    readonly from: number,
    readonly by: number,
    readonly lines: number,
  ) {}

  /** The same value in its new place; what stands before it stays the same object. */
  of<T>(value: T): T {
    if (typeof value !== 'object' || value === null) return value
    const before = this.known.get(value)
    if (before !== undefined) return before as T
    const after = Array.isArray(value) ? this.list(value) : this.record(value)
    this.known.set(value, after)
    return after as T
  }

  private list(values: readonly unknown[]): readonly unknown[] {
    const after = values.map((each) => this.of(each))
    return after.some((each, i) => each !== values[i]) ? after : values
  }

  private record(value: object): object {
    if (Object.getPrototypeOf(value) !== Object.prototype) return value
    const entries = Object.entries(value)
    const after = entries.map(([name, each]) => [name, this.of(each)] as const)
    const isMoved = isSpan(value) && value.start >= this.from
    if (!isMoved && after.every(([, each], i) => each === entries[i]![1])) return value
    const copy: Record<string, unknown> = Object.fromEntries(after)
    return isMoved && isSpan(value)
      ? { ...copy, start: value.start + this.by, end: value.end + this.by, line: value.line + this.lines }
      : copy
  }
}

const isSpan = (value: object): value is { start: number; end: number; line: number } =>
  'start' in value && 'end' in value && 'line' in value && typeof value.start === 'number'

const linesOf = (text: string, end: number): number => {
  let lines = 0
  for (let at = text.indexOf('\n'); at >= 0 && at < end; at = text.indexOf('\n', at + 1)) lines++
  return lines
}

/** Where two texts end alike, from the beginning of a line on that is whole in both; null where they do not. */
export function movedTail(
  old: string,
  text: string,
  common: number,
): { readonly moved: Moved; readonly from: number } | null {
  const most = Math.min(old.length, text.length) - common
  let alike = 0
  while (alike < most && old.charCodeAt(old.length - 1 - alike) === text.charCodeAt(text.length - 1 - alike))
    alike++
  const line = text.indexOf('\n', text.length - alike)
  if (alike === 0 || line < 0) return null
  const from = line + 1
  const by = text.length - old.length
  return { moved: new Moved(from - by, by, linesOf(text, from) - linesOf(old, from - by)), from }
}
