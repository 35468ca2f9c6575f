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

/** Days since 1 January of year 1, for sums of days; of a day of the calendar. */
function numberOf(day: string): number {
  const [year = 1, month = 1, date = 1] = day.split('-').map(Number)
  const past = year - 1
  const leaps = Math.floor(past / 4) - Math.floor(past / 100) + Math.floor(past / 400)
  const months = MONTHS.slice(0, month - 1).reduce((sum: number, days) => sum + days, 0)
  return past * 365 + leaps + months + (month > 2 && isLeap(year) ? 1 : 0) + date - 1
}

/** How many days one day comes after another. */
export const daysBetween = (from: string, to: string): number => numberOf(to) - numberOf(from)

/** The day that comes so many days after one; empty beyond the year 9999. */
export function dayAfter(day: string, days: number): string {
  const [from = 1] = day.split('-').map(Number)
  let year = from
  let left = numberOf(day) + days - numberOf(`${year}-01-01`)
  while (left >= (isLeap(year) ? 366 : 365)) left -= isLeap(year++) ? 366 : 365
  if (year > 9999) return ''
  let month = 1
  const lengthOf = (of: number): number => MONTHS[of - 1]! + (of === 2 && isLeap(year) ? 1 : 0)
  while (left >= lengthOf(month)) left -= lengthOf(month++)
  const two = (value: number): string => String(value).padStart(2, '0')
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(left + 1)}`
}
