import { readdir } from 'node:fs/promises'
import { basename, join } from 'node:path'
import { oneLine } from '../../src-core/letters/one-line'
import { shortenedTo } from '../documents/byte-length'

/** Names that Windows keeps for devices, whatever their ending (from memory). */
const DEVICES = /^(con|prn|aux|nul|conin\$|conout\$|(com|lpt)[\d¹²³])\s*(\.|$)/i
/**
 * Bytes, without an ending. File systems allow 255; a number, the ending and the mark of a backup copy go on top.
 * The title of a project may be longer.
 */
const LONGEST = 200

/** A project's name as the name of a file that every system takes, without its ending. */
export function fileNameFor(name: string): string {
  // File systems refuse or hide control characters; overrides of direction could disguise an ending.
  const whole = oneLine(name)
    .replace(/[<>:"/\\|?*]+/g, ' ')
    // Half of a pair is no character: no file system, and no address, takes it.
    .replace(/\p{Surrogate}+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim()
  const plain = shortenedTo(whole, LONGEST).replace(/^[. ]+|[. ]+$/g, '')
  return plain === '' || DEVICES.test(plain) ? `Untitled ${plain}`.trim() : plain
}

/**
 * A path in `folder` that nothing has yet, and is none of `others`: "Throw.petalyard", "Throw 2.petalyard"… Somebody
 * else may take it before it is written.
 */
export async function freePath(
  folder: string,
  name: string,
  ending: string,
  others: readonly string[] = [],
): Promise<string> {
  const names = [...(await readdir(folder)), ...others.map((path) => basename(path))]
  const taken = new Set(names.map((entry) => entry.toLowerCase()))
  const base = fileNameFor(name)
  for (let number = 1; ; number++) {
    const candidate = number === 1 ? `${base}${ending}` : `${base} ${number}${ending}`
    if (!taken.has(candidate.toLowerCase())) return join(folder, candidate)
  }
}
