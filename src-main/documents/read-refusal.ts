/** Why the system does not let a file be read, in a few words: the same for projects and for what else is read. */
import { NO_FILE } from './regular-file'

/** Path names that no file can have, a zero byte in them for one: refused before the system is asked. */
export const NO_NAME = 'ERR_INVALID_ARG_VALUE'

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'it does not exist',
  ENOTDIR: 'it does not exist',
  EACCES: 'you may not read it',
  EPERM: 'you may not read it',
  EISDIR: 'it is a folder',
  [NO_FILE]: 'it is a device or a pipe, not a file',
  ENAMETOOLONG: 'its name is too long',
  ELOOP: 'its links lead in a circle',
  EBUSY: 'another program holds it',
  EIO: 'the disk gives an error',
  EMFILE: 'too many files are open',
  ENFILE: 'too many files are open',
  [NO_NAME]: 'no file can have this name',
}

export function whyNotRead(code: string): string {
  return REASONS[code] ?? (code || 'something went wrong')
}
