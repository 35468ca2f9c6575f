/** How large text and buttons of the window are shown, in percent: the steps that people know from browsers. */
export const ZOOM_STEPS = [50, 67, 75, 80, 90, 100, 110, 125, 150, 175, 200, 250, 300] as const
export const USUAL_ZOOM = 100

/** The next larger step (1) or the next smaller one (-1); at an end the same. */
export function nextZoom(zoom: number, direction: 1 | -1): number {
  const further =
    direction > 0 ? ZOOM_STEPS.find((step) => step > zoom) : ZOOM_STEPS.findLast((step) => step < zoom)
  return further ?? (direction > 0 ? ZOOM_STEPS.at(-1)! : ZOOM_STEPS[0])
}
