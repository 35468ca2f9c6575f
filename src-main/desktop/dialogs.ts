/** The system's own dialogs. Paths that they give stay in the main process. */
import { basename, dirname, join } from 'node:path'
import { app, dialog } from 'electron'
import type { BrowserWindow, FileFilter, OpenDialogOptions } from 'electron'
import type { Finding } from '../../shared-types/finding'
import { fileNameFor } from '../host/file-names'
import type { FileType } from '../host/ports'
import { placeAsked } from './place-asked'

const FILTERS: Readonly<Record<FileType, FileFilter>> = {
  petalyard: { name: 'Petalyard project', extensions: ['petalyard'] },
  pdf: { name: 'PDF', extensions: ['pdf'] },
  png: { name: 'PNG picture', extensions: ['png'] },
  svg: { name: 'SVG drawing', extensions: ['svg'] },
  csv: { name: 'Table (CSV)', extensions: ['csv'] },
  zip: { name: 'PDFs in a ZIP', extensions: ['zip'] },
  html: { name: 'Page (HTML)', extensions: ['html'] },
}

let lastFolder: string | null = null
const startFolder = () => lastFolder ?? app.getPath('documents')

export async function askForProject(window: BrowserWindow | null, title: string): Promise<string | null> {
  const options: OpenDialogOptions = {
    title,
    defaultPath: startFolder(),
    filters: [FILTERS.petalyard, { name: 'All files', extensions: ['*'] }],
    properties: ['openFile'],
  }
  const { canceled, filePaths } = await (window
    ? dialog.showOpenDialog(window, options)
    : dialog.showOpenDialog(options))
  return remembered(canceled ? undefined : filePaths[0])
}

/** Where to write; nobody has to fear for a file that is there already: it is asked before one is named. */
export function askForPlace(
  window: BrowserWindow,
  name: string,
  type: FileType,
  title: string,
): Promise<string | null> {
  const ending = `.${type}`
  return placeAsked(join(startFolder(), fileNameFor(name) + ending), ending, {
    place: async (suggested) => {
      const { canceled, filePath } = await dialog.showSaveDialog(window, {
        title,
        defaultPath: suggested,
        filters: [FILTERS[type]],
        properties: ['createDirectory', 'showOverwriteConfirmation'],
      })
      return remembered(canceled ? undefined : filePath)
    },
    mayReplace: async (path) => {
      const { response } = await dialog.showMessageBox(window, {
        type: 'question',
        message: `${basename(path)} is there already.`,
        detail:
          type === 'petalyard'
            ? `If you replace it, what is in it now is kept as ${basename(path)}~.`
            : 'If you replace it, what is in it now is gone.',
        buttons: ['Replace', 'Choose Another Name'],
        defaultId: 1,
        cancelId: 1,
      })
      return response === 0
    },
  })
}

/** Tells a problem in the catalogue's words, with nothing to decide. */
export async function tellProblem(window: BrowserWindow | null, problem: Finding): Promise<void> {
  const options = {
    type: 'warning' as const,
    message: sentence(problem.message),
    detail: problem.mend,
    buttons: ['OK'],
  }
  await (window ? dialog.showMessageBox(window, options) : dialog.showMessageBox(options))
}

/** Something could not be saved at closing, and the user should know. True: close all the same. */
export async function askToCloseUnsaved(window: BrowserWindow, problem: Finding): Promise<boolean> {
  const { response } = await dialog.showMessageBox(window, {
    type: 'warning',
    message: sentence(problem.message),
    detail:
      problem.code === 'app/cannot-keep'
        ? problem.mend
        : "Everything is kept in the program's own folder and will be there at the next start.",
    buttons: ['Close', 'Back to the Project'],
    defaultId: 1,
    cancelId: 1,
  })
  return response === 0
}

/** Where a path is, in words: "throw.petalyard in Documents". */
export const placeInWords = (path: string) => `${basename(path)} in ${basename(dirname(path)) || '/'}`

function remembered(path: string | undefined): string | null {
  if (path === undefined || path === '') return null
  lastFolder = dirname(path)
  return path
}

const sentence = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)
