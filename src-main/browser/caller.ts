import { realpath } from 'node:fs/promises'
import { basename, dirname } from 'node:path'
import { makePath } from '../documents/make-path'
import { FILE_ENDING } from '../documents/session/session'
import { fileNameFor, freePath } from '../host/file-names'
import type { Caller, FileType, Target } from '../host/ports'
import type { Answer, Upload } from './envelope'

/** What a file is called as long as its project has no title. */
const UNNAMED = /^Untitled( \d+)?$/

/** What the client is to do when the answer arrives. */
export type Errand = Pick<Answer, 'shown' | 'download'>

interface BrowserCallerPorts {
  /** Where saved projects go. */
  readonly folder: string
  readonly upload: Upload | null
  isUntouched(): boolean
  /** Keeps a finished file for one fetch; answers with its id. */
  offer(file: { readonly name: string; readonly type: FileType; readonly bytes: Uint8Array }): string
  onErrand(errand: Errand): void
}

/**
 * A tab as the host sees it. A browser gives no places: projects live in the program's folder, what is opened
 * comes as an upload, and copies and exports go out as downloads.
 */
export function browserCaller(projectId: string, ports: BrowserCallerPorts): Caller {
  const download = (name: string, type: FileType): Target => ({
    where: `${fileNameFor(name)}.${type} in your downloads`,
    write: async (bytes) => {
      ports.onErrand({ download: ports.offer({ name: `${fileNameFor(name)}.${type}`, type, bytes }) })
      return { ok: true }
    },
  })
  return {
    projectId,
    show: async (id) => {
      if (id !== projectId) ports.onErrand({ shown: { project: id, inThisTab: ports.isUntouched() } })
    },
    chooseProject: async () => ports.upload,
    placeToSave: async (name, taken) => {
      await makePath(ports.folder)
      return { path: await freePath(ports.folder, name, FILE_ENDING, taken), isFree: true }
    },
    placeToFollow: async (path, name) => {
      const isNamedByUs = UNNAMED.test(basename(path, FILE_ENDING))
      const isHere = dirname(path) === (await realpath(ports.folder).catch(() => ports.folder))
      if (!isNamedByUs || !isHere || UNNAMED.test(fileNameFor(name))) return null
      return freePath(ports.folder, name, FILE_ENDING)
    },
    placeToSaveAs: async (name) => ({ copy: download(name, 'petalyard') }),
    placeToExport: async (name, type) => download(name, type),
    // The page opens its browser's own dialog and asks nobody.
    print: async () => 'printed',
    // The browser is not ours, and shows its own.
    showEngineLicences: async () => 'your browser shows its own',
    closeWindow: () => undefined,
    showEditState: () => undefined,
  }
}
