/** Sheets of known size: what gives a picture its millimetres. */
import type { Millimetres } from '../units/quantity'

/** Pixels of a picture. */
export interface PictureSize {
  readonly width: number
  readonly height: number
}

export interface SheetSize {
  readonly width: Millimetres
  readonly height: Millimetres
  /** The motif lies beside it, not on it. */
  readonly beside?: true
  /** It is no sheet: the motif lies anywhere in the picture. */
  readonly whole?: true
}

/** A4 and A5: ISO 216; Letter: ANSI/ASME Y14.1; card: ISO/IEC 7810, ID-1 (bank and identity cards). */
export const SHEET_SIZES = {
  A4: { width: 210, height: 297 },
  Letter: { width: 215.9, height: 279.4 },
  A5: { width: 148, height: 210 },
  card: { width: 53.98, height: 85.6, beside: true },
} as const satisfies Record<string, SheetSize>

export type SheetName = keyof typeof SHEET_SIZES

/** What gives a picture its millimetres: a sheet, or two points on a ruler that are set by hand. */
export type SheetChoice = SheetName | 'ruler'
export const SHEET_CHOICES: readonly SheetChoice[] = [...(Object.keys(SHEET_SIZES) as SheetName[]), 'ruler']
