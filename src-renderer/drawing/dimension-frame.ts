/**
 * The finished size on screen: dimension lines over the width and beside the height, clear space for their
 * numbers (set there by the window), and the handles that drag it to size. All in CSS pixels.
 */
import type { Point } from '../../shared-types/plan'
import { boxOnScreen } from './camera'
import type { Camera, Viewport } from './camera'
import type { ScreenBox, Size } from './scene'

export type HandleKind = 'width' | 'height' | 'both'

export interface DimensionLine {
  readonly from: Point
  readonly to: Point
  /** Whether an end is the frame's own and takes a tick (else the frame goes on outside the window). */
  readonly startsHere: boolean
  readonly endsHere: boolean
}

export interface DimensionFrame {
  readonly frame: ScreenBox
  readonly width: DimensionLine
  readonly height: DimensionLine
  readonly widthNumber: ScreenBox
  readonly heightNumber: ScreenBox
  /** The height's number stands level, under its line or on its left: the line is too short to hold it. */
  readonly levelHeight: boolean
  readonly handles: readonly { readonly kind: HandleKind; readonly at: Point }[]
  /** The frame has moved under the lines: they stand on a strip of paper at the window's edge. */
  readonly overMap: { readonly top: boolean; readonly left: boolean }
}

/** Distance of a dimension line from the frame, and the least one from the window's edge. */
const LINE_OFF = 30
const LINE_LEAST = 22
/** The clear space in a line for its number. */
const NUMBER = { long: 132, across: 36, short: 96 } as const
/** Way of the corner handle from the frame's corner; farther where the corner carries a number. */
const CORNER_OFF = { x: 14, y: 14 } as const
const BESIDE_NUMBER = { x: 25, y: 8 } as const
/** How near a pointer must come to a handle. A finger needs 24 CSS pixels across at least (WCAG 2.2, 2.5.8). */
const HANDLE_REACH = 13
/** The frame's right and bottom edges can be dragged from just outside it. */
const EDGE_REACH = 9

/** What of a plan is measured, in mm from its top left: as a rule all of it. */
export interface Measured {
  readonly across: readonly [number, number]
  readonly down: readonly [number, number]
  /** The size can be dragged. */
  readonly withHandles: boolean
  /** The corners of its border carry numbers. */
  readonly hasNumbers?: boolean
}

/** Lines, number boxes and handles for a size seen through a camera; null for no size. */
export function dimensionFrame(
  camera: Camera,
  size: Size,
  viewport: Viewport,
  measured: Measured = { across: [0, size.width], down: [0, size.height], withHandles: true },
): DimensionFrame | null {
  if (!(size.width > 0 && size.height > 0)) return null
  const frame = boxOnScreen(camera, size)
  const right = frame.left + frame.width
  const bottom = frame.top + frame.height
  const y = Math.min(viewport.height - LINE_LEAST, Math.max(LINE_LEAST, frame.top - LINE_OFF))
  const x = Math.min(viewport.width - LINE_LEAST, Math.max(LINE_LEAST, frame.left - LINE_OFF))
  const overMap = { top: frame.top < y + LINE_LEAST, left: frame.left < x + LINE_LEAST }
  // A line that is pinned to the edge keeps clear of the other one's strip.
  const { across, down, withHandles, hasNumbers = false } = measured
  const off = hasNumbers ? BESIDE_NUMBER : CORNER_OFF
  const fromX = frame.left + across[0] * camera.scale
  const toX = frame.left + across[1] * camera.scale
  const fromY = frame.top + down[0] * camera.scale
  const toY = frame.top + down[1] * camera.scale
  const startX = Math.max(fromX, overMap.left ? 2 * LINE_LEAST : 0)
  const startY = Math.max(fromY, overMap.top ? 2 * LINE_LEAST : 0)
  const endX = Math.min(toX, viewport.width)
  const endY = Math.min(toY, viewport.height)
  const levelHeight = toY - fromY < NUMBER.long && toY < viewport.height
  // In a low window what stands at the bottom would lie under it there: it goes to the left, if that is free.
  const isBeside = levelHeight && endY + NUMBER.across > viewport.height && x - NUMBER.short - 10 >= 0
  const middleX = within((startX + endX) / 2, NUMBER.long / 2, viewport.width)
  const middleY = within((startY + endY) / 2, NUMBER.long / 2, viewport.height)
  return {
    frame,
    width: {
      from: { x: startX, y },
      to: { x: Math.max(startX, endX), y },
      startsHere: startX === fromX,
      endsHere: endX === toX,
    },
    height: {
      from: { x, y: startY },
      to: { x, y: Math.max(startY, endY) },
      startsHere: startY === fromY,
      endsHere: endY === toY,
    },
    widthNumber: {
      left: middleX - NUMBER.long / 2,
      top: y - NUMBER.across / 2,
      width: NUMBER.long,
      height: NUMBER.across,
    },
    heightNumber: isBeside
      ? {
          left: x - NUMBER.short - 10,
          top: within((startY + endY) / 2, NUMBER.across / 2, viewport.height) - NUMBER.across / 2,
          width: NUMBER.short,
          height: NUMBER.across,
        }
      : levelHeight
        ? {
            left: within(x, NUMBER.short / 2 + 10, viewport.width) - NUMBER.short / 2,
            top: within(endY + NUMBER.across / 2 + 2, NUMBER.across / 2, viewport.height) - NUMBER.across / 2,
            width: NUMBER.short,
            height: NUMBER.across,
          }
        : {
            left: x - NUMBER.across / 2,
            top: middleY - NUMBER.long / 2,
            width: NUMBER.across,
            height: NUMBER.long,
          },
    levelHeight,
    handles: withHandles
      ? [
          { kind: 'width', at: { x: right, y } },
          { kind: 'height', at: { x, y: bottom } },
          { kind: 'both', at: { x: right + off.x, y: bottom + off.y } },
        ]
      : [],
    overMap,
  }
}

const within = (value: number, half: number, room: number): number =>
  Math.min(Math.max(value, half), Math.max(half, room - half))

/** The handle, or draggable edge, under a point. */
export function handleAt(frame: DimensionFrame, at: Point): HandleKind | null {
  for (const handle of frame.handles)
    if (Math.hypot(handle.at.x - at.x, handle.at.y - at.y) <= HANDLE_REACH) return handle.kind
  if (frame.handles.length === 0) return null
  const { left, top, width, height } = frame.frame
  const right = left + width
  const bottom = top + height
  if (at.x > right && at.x <= right + EDGE_REACH && at.y >= top && at.y <= bottom) return 'width'
  if (at.y > bottom && at.y <= bottom + EDGE_REACH && at.x >= left && at.x <= right) return 'height'
  return null
}

/** Smallest width or height in mm that the hand can ask for. */
const LEAST_SIZE = 20

/** The size that a drag of a handle by (dx, dy) CSS pixels asks for. */
export function resized(start: Size, kind: HandleKind, dx: number, dy: number, scale: number): Size {
  return {
    width: kind === 'height' ? start.width : Math.max(LEAST_SIZE, start.width + dx / scale),
    height: kind === 'width' ? start.height : Math.max(LEAST_SIZE, start.height + dy / scale),
  }
}
