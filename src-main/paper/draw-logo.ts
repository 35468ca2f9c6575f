/** The logo of the house style, where a page has room for it. */
import type { Job } from './page'
import type { Sheet } from './setting'
import { logoOf } from './logo'
import { FIGURE_WORDS } from './words-figures'

/** Room in mm; a logo fills it as far as its shape does. */
interface Room {
  readonly width: number
  readonly height: number
}

/** Its size in mm within a room; null where the house has none. */
export function logoSize({ house, style }: Job, room: Room): Room | null {
  const logo = logoOf(house, style)
  if (!logo) return null
  const scale = Math.min(room.width / logo.width, room.height / logo.height)
  return { width: logo.width * scale, height: logo.height * scale }
}

/** Draws it with its top left at (x, y), or its top right at `right`; returns the y below, `y` where there is none. */
export function drawLogo(
  job: Job,
  sheet: Sheet,
  at: { readonly x: number; readonly y: number } | { readonly right: number; readonly y: number },
  room: Room,
): number {
  const logo = logoOf(job.house, job.style)
  const size = logoSize(job, room)
  if (!logo || !size) return at.y
  const x = 'right' in at ? at.right - size.width : at.x
  const box = { x, y: at.y, ...size }
  const part = sheet.own('Figure', { alt: FIGURE_WORDS.logo(job.house.name), box })
  sheet.items.push({ kind: 'image', png: logo.png, ...box, part })
  return at.y + size.height
}
