/**
 * How long this process has kept a processor busy, in ms. What takes time is measured by it, not by the clock, which
 * runs on while other tests have their turn.
 */
export function processorTime(): number {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}
