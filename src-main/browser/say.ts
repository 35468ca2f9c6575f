/** Lines on the terminal for whoever started the program. */
import type { Writable } from 'node:stream'
import { oneLine } from '../../src-core/letters/one-line'

/**
 * Says one line at a time, safe whatever file, folder or value it names: none makes another line of it. Where nobody
 * listens any more (`| head`), lines are lost and nothing else: tabs are served as before.
 */
export function sayTo(stream: Writable): (line: string) => void {
  stream.on('error', () => undefined)
  return (line) => void stream.write(`${oneLine(line)}\n`)
}
