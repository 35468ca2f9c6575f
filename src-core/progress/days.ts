/** Days as the file writes them, "2026-12-01". The engine asks no clock: which day it is comes from the edge. */

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
