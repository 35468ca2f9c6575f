/**
 * Switches of Chromium that open its windows to whoever reaches a port or a pipe. A fuse closes the main process to
 * inspectors; no fuse closes these, and a shortcut or a file manager's entry could bring them.
 */
const DOORS = [
  'remote-debugging-port',
  'remote-debugging-pipe',
  'remote-debugging-address',
  'remote-allow-origins',
] as const

/** Who tests the packed program opens them by this variable. */
const OPENED_BY = 'PETALYARD_INSPECT'

/** To be called before Chromium looks at them, which it does once the main script has run. */
export function closeDoors(
  isPackaged: boolean,
  commandLine: { removeSwitch(name: string): void },
  env: Readonly<Record<string, string | undefined>> = process.env,
): void {
  if (!isPackaged || env[OPENED_BY] === 'yes') return
  for (const door of DOORS) commandLine.removeSwitch(door)
}
