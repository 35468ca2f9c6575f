/** Which day it is where the window stands: "2026-12-01". The engine asks no clock. */
export function today(now = new Date()): string {
  const two = (value: number): string => String(value).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}
