/** A walk with Tab through a page: what has the keyboard, whether it is seen, and whether its ring is. */
import type { Page } from 'playwright-core'

interface Stop {
  readonly name: string
  /** What is wrong with it; empty where it is seen with a ring. */
  readonly amiss: string
  /** CSS pixels of what is clicked: of a tick together with its words. Of what stands in a sentence nothing is asked. */
  readonly target?: { readonly width: number; readonly height: number }
}

/** CSS pixels (WCAG 2.2, 2.5.8). */
const TARGET = 24

function stopOf(page: Page): Promise<Stop | null> {
  return page.evaluate(() => {
    const node = document.activeElement as HTMLElement | null
    if (!node || node === document.body) return null
    const labelled = node.getAttribute('aria-labelledby')
    const own =
      node.getAttribute('aria-label') ??
      (labelled ? document.getElementById(labelled.split(' ')[0]!)?.textContent : null) ??
      (node as HTMLInputElement).labels?.[0]?.textContent ??
      node.textContent
    const name = `${node.tagName.toLowerCase()} ${(own ?? '').replace(/\s+/g, ' ').trim().slice(0, 60)}`
    const hasRing = (at: Element): boolean => {
      const { outlineStyle, outlineWidth } = getComputedStyle(at)
      return outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2
    }
    // A tick that is drawn by its label has its ring there.
    const ringed = [...((node as HTMLInputElement).labels ?? []), node].find(hasRing)
    if (!ringed) return { name, amiss: 'no ring' }
    const shown = ringed
    const { left, right, top, bottom } = shown.getBoundingClientRect()
    if (right - left < 3 || bottom - top < 3) return { name, amiss: 'nothing to be seen' }
    const x = Math.min(innerWidth - 1, Math.max(0, (left + right) / 2))
    const y = Math.min(innerHeight - 1, Math.max(0, (top + bottom) / 2))
    if (right < 1 || bottom < 1 || left > innerWidth - 1 || top > innerHeight - 1)
      return { name, amiss: 'outside of the window' }
    // Not hidden altogether (WCAG 2.2, 2.4.11): some of it is met by a pointer.
    const points = [
      [x, y],
      [left + 3, top + 3],
      [right - 3, top + 3],
      [left + 3, bottom - 3],
      [right - 3, bottom - 3],
      // Words may break over two lines: the first of them.
      [shown.getClientRects()[0]!.left + 3, shown.getClientRects()[0]!.top + 3],
    ] as const
    const met = points.some(([a, b]) => {
      const at = document.elementFromPoint(a, b)
      return at !== null && (shown.contains(at) || at.contains(shown))
    })
    const boxes = [node, ...((node as HTMLInputElement).labels ?? [])].map((at) => at.getBoundingClientRect())
    const isInline = node.matches('a, button') && getComputedStyle(node).display === 'inline'
    const target = {
      width: Math.max(...boxes.map((box) => box.width)),
      height: Math.max(...boxes.map((box) => box.height)),
    }
    return { name, amiss: met ? '' : 'under something else', ...(!isInline && { target }) }
  })
}

/** Presses Tab until it is round once; every stop with what is wrong with it. */
export async function walk(page: Page, most = 250): Promise<readonly Stop[]> {
  const stops: Stop[] = []
  // Where it began, so that the walk knows when it is round.
  await page.evaluate(() => {
    for (const node of document.querySelectorAll('[data-walked]')) node.removeAttribute('data-walked')
  })
  for (let i = 0; i < most; i++) {
    await page.keyboard.press('Tab')
    const stop = await stopOf(page)
    // The end of the page: the browser's own bars come next.
    if (!stop) {
      if (stops.length > 0) return stops
      continue
    }
    const again = await page.evaluate(() => {
      const node = document.activeElement as HTMLElement
      const was = node.dataset.walked !== undefined
      node.dataset.walked = ''
      return was
    })
    if (again) return stops
    stops.push(stop)
  }
  throw new Error(`Tab goes on after ${most} stops`)
}

/** What is too small to be hit. */
export const smallIn = (stops: readonly Stop[]): readonly string[] =>
  stops.flatMap(({ name, target }) =>
    target && Math.min(target.width, target.height) < TARGET - 0.5
      ? [`${name}: ${Math.round(target.width)} × ${Math.round(target.height)}`]
      : [],
  )

export const amissIn = (stops: readonly Stop[]): readonly string[] =>
  stops.filter(({ amiss }) => amiss).map(({ name, amiss }) => `${name}: ${amiss}`)
