import { readdir } from 'node:fs/promises'
import { join } from 'node:path'

/** Names that Windows keeps for devices, whatever their ending. */
const DEVICES = /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i
const LONGEST = 100

/** A project's name as the name of a file that every system takes, without its ending. */
export function fileNameFor(name: string): string {
  const plain = name
    // eslint-disable-next-line no-control-regex -- file systems refuse or hide control characters
    .replace(/[\u0000-\u001f\u007f<>:"/\\|?*]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()
    .slice(0, LONGEST)
    .replace(/^[. ]+|[. ]+$/g, '')
  return plain === '' || DEVICES.test(plain) ? `Untitled ${plain}`.trim() : plain
}

/** A path in `folder` that nothing has yet: "Throw.petalyard", "Throw 2.petalyard"… */
export async function freePath(folder: string, name: string, ending: string): Promise<string> {
  const taken = new Set((await readdir(folder)).map((entry) => entry.toLowerCase()))
  const base = fileNameFor(name)
  for (let number = 1; ; number++) {
    const candidate = number === 1 ? `${base}${ending}` : `${base} ${number}${ending}`
    if (!taken.has(candidate.toLowerCase())) return join(folder, candidate)
  }
}
