/** A canvas that draws nothing and remembers everything: drawing is tested by its list of calls. */
import type { Pen } from '../../../src-renderer/drawing/canvas'

export interface Call {
  readonly name: string
  readonly arguments: readonly unknown[]
  /** Fill and stroke colour when it was made. */
  readonly fill: unknown
  readonly stroke: unknown
}

export interface Recorder {
  readonly pen: Pen
  readonly calls: Call[]
  count(name: string): number
  clear(): void
}

export function recorder(): Recorder {
  const calls: Call[] = []
  const state: Record<string, unknown> = {}
  const pen = new Proxy(state, {
    get(target, name: string) {
      if (name in target) return target[name]
      return (...given: unknown[]) => {
        calls.push({ name, arguments: given, fill: target['fillStyle'], stroke: target['strokeStyle'] })
      }
    },
    set(target, name: string, value) {
      target[name] = value
      return true
    },
  })
  return {
    pen: pen as unknown as Pen,
    calls,
    count: (name) => calls.filter((call) => call.name === name).length,
    clear: () => (calls.length = 0),
  }
}

/** Radii of the circles that were traced, whichever way. */
export function circles({ calls }: Pick<Recorder, 'calls'>): number[] {
  // A figure's circle starts at its right, with a quarter towards its lowest point.
  const quarters = calls.filter(({ name }) => name === 'bezierCurveTo')
  return [
    ...calls.filter(({ name }) => name === 'arc').map(({ arguments: given }) => Number(given[2])),
    ...quarters
      .filter((_, i) => i % 4 === 0)
      .map(({ arguments: [x, , , , middle] }) => Number(x) - Number(middle)),
  ]
}

/** Stands in for the browser's paths, which the test world lacks. */
export class FakePath {
  readonly points: [number, number][] = []
  moveTo(x: number, y: number): void {
    this.points.push([x, y])
  }
  lineTo(x: number, y: number): void {
    this.points.push([x, y])
  }
  bezierCurveTo(_ax: number, _ay: number, _bx: number, _by: number, x: number, y: number): void {
    this.points.push([x, y])
  }
  closePath(): void {}
}
