/** Puts back into the drawing what stands in the file as numbers. */
import type { Runs } from '../drawing'
import { byId, drawn } from './dom'

export function completeDrawing({ runs, styles }: Runs): void {
  const whole = byId('whole', SVGSVGElement)
  whole.querySelectorAll<SVGGElement>('[data-run]').forEach((place) => {
    for (const [what, x, y, text] of runs[Number(place.dataset.run)] ?? []) {
      const element =
        text === undefined
          ? drawn('use', { href: `#symbol-${what}`, x, y })
          : drawn('text', { x, y, ...styles[what] })
      if (text !== undefined) element.textContent = text
      place.append(element)
    }
  })
}
