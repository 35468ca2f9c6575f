/** Days as the file writes them, "2026-12-01". The engine asks no clock: which day it is comes from the edge. */
import type { Terms } from '../../shared-types/project'

const DAY = /^(\d{4})-(\d{2})-(\d{2})$/
const MONTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const

/** The day after which every fourth year has one more, but for three in four hundred years (Gregorian calendar). */
const isLeap = (year: number): boolean => year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0)

/** Whether a text is a day of the calendar. */
export function isDay(text: string): boolean {
  const [, year = '', month = '', day = ''] = DAY.exec(text) ?? []
  const most = MONTHS[Number(month) - 1]
  if (most === undefined || Number(day) < 1) return false
  return Number(day) <= most + (month === '02' && isLeap(Number(year)) ? 1 : 0)
}

const MONTH_NAMES = [
  'January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November',
  'December',
] as const // prettier-ignore

/** A day as it is written where the terms are at home: "1 December 2026" in the UK, "December 1, 2026" in the US. */
export function dayIn(day: string, terms: Terms): string {
  const [, year = '', month = '', date = ''] = DAY.exec(day) ?? []
  const name = MONTH_NAMES[Number(month) - 1]
  if (name === undefined) return day
  return terms === 'UK' ? `${Number(date)} ${name} ${year}` : `${name} ${Number(date)}, ${year}`
}
