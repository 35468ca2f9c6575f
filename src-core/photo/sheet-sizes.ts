/** Sheets of known size: what gives a picture its millimetres. */
import type { Millimetres } from '../units/quantity'

export interface SheetSize {
  readonly width: Millimetres
  readonly height: Millimetres
  /** The motif lies beside it, not on it. */
  readonly beside?: true
}

/** A4 and A5: ISO 216; Letter: ANSI/ASME Y14.1; card: ISO/IEC 7810, ID-1 (bank and identity cards). */
export const SHEET_SIZES = {
  A4: { width: 210, height: 297 },
  Letter: { width: 215.9, height: 279.4 },
  A5: { width: 148, height: 210 },
  card: { width: 53.98, height: 85.6, beside: true },
} as const satisfies Record<string, SheetSize>

export type SheetName = keyof typeof SHEET_SIZES
