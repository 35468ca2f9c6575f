import { join } from 'node:path'
import { z } from 'zod'
import { SMALL_FILE } from '../documents/limits'
import { readRegularText } from '../documents/regular-file'
import type { Written } from '../documents/session/ports'

const placeSchema = z.object({
  x: z.number().int(),
  y: z.number().int(),
  width: z.number().int().positive(),
  height: z.number().int().positive(),
  maximized: z.boolean(),
})
type WindowPlace = z.infer<typeof placeSchema>

interface Rectangle {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

const FIRST_SIZE = { width: 1280, height: 860 }
export const SMALLEST_SIZE = { width: 880, height: 600 }
/** Each further window stands this much lower and further right than the one before. */
const STEP = 28
/** At least this much of the title must be on a screen, so that the window can be taken hold of. */
const GRIP = 120

/** Where the next window goes: the remembered place, if a screen still shows it, moved off other windows. */
export function nextPlace(
  remembered: WindowPlace | null,
  openWindows: number,
  screens: readonly Rectangle[],
): Partial<Rectangle> & { readonly width: number; readonly height: number; readonly maximized: boolean } {
  const main = screens[0] ?? { x: 0, y: 0, ...FIRST_SIZE }
  if (!remembered)
    return {
      width: Math.min(FIRST_SIZE.width, main.width),
      height: Math.min(FIRST_SIZE.height, main.height),
      maximized: false,
    }
  const moved = { ...remembered, x: remembered.x + STEP * openWindows, y: remembered.y + STEP * openWindows }
  const screen = screens.find((each) => showsGrip(moved, each))
  if (!screen)
    return {
      width: Math.min(remembered.width, main.width),
      height: Math.min(remembered.height, main.height),
      maximized: remembered.maximized,
    }
  return {
    ...moved,
    width: Math.min(moved.width, screen.width),
    height: Math.min(moved.height, screen.height),
    maximized: remembered.maximized && openWindows === 0,
  }
}

function showsGrip(place: Rectangle, screen: Rectangle): boolean {
  return (
    place.x + place.width >= screen.x + GRIP &&
    place.x <= screen.x + screen.width - GRIP &&
    place.y >= screen.y &&
    place.y <= screen.y + screen.height - GRIP
  )
}

/** Remembers the place of the window that was moved last. */
export class WindowPlaceStore {
  #place: WindowPlace | null = null
  readonly #path: string
  readonly #write: (path: string, text: string) => Promise<Written>

  constructor(dataFolder: string, write: (path: string, text: string) => Promise<Written>) {
    this.#path = join(dataFolder, 'window.json')
    this.#write = write
  }

  get current(): WindowPlace | null {
    return this.#place
  }

  async load(): Promise<void> {
    try {
      this.#place = placeSchema.parse(JSON.parse(await readRegularText(this.#path, SMALL_FILE)))
    } catch {
      this.#place = null
    }
  }

  async remember(place: WindowPlace): Promise<void> {
    this.#place = place
    await this.#write(this.#path, JSON.stringify(place))
  }
}
