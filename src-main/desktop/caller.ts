import type { EditState } from '../../shared-types/bridge'
import type { BrowserWindow } from 'electron'
import { writeBytes } from '../documents/session/project-files'
import type { Caller, Target } from '../host/ports'
import { askForPlace, askForProject, placeInWords } from './dialogs'
import { showEngineLicences } from './engine-licences'
import { printWindow } from './printing'

interface DesktopCallerPorts {
  show(projectId: string): void
  closeWindow(): void
  showEditState(state: EditState): void
}

/** A desktop window as the host sees it: places are asked for with the system's own dialogs. */
export function desktopCaller(projectId: string, window: BrowserWindow, ports: DesktopCallerPorts): Caller {
  return {
    projectId,
    show: async (id) => ports.show(id),
    chooseProject: async (purpose) => {
      const title = purpose === 'open' ? 'Open a Project' : 'Take a Motif or Yarn from a Project'
      const path = await askForProject(window, title)
      return path === null ? null : { path }
    },
    placeToSave: async (name) => {
      const path = await askForPlace(window, name, 'petalyard', 'Save the Project')
      return path === null ? null : { path, isFree: false }
    },
    placeToSaveAs: async (name) => {
      const path = await askForPlace(window, name, 'petalyard', 'Save the Project As')
      return path === null ? null : { path }
    },
    placeToExport: async (name, type) => {
      const path = await askForPlace(window, name, type, 'Export')
      return path === null ? null : fileTarget(path)
    },
    print: (paper) => printWindow(window, paper),
    showEngineLicences,
    closeWindow: () => ports.closeWindow(),
    showEditState: (state) => ports.showEditState(state),
  }
}

function fileTarget(path: string): Target {
  return { where: placeInWords(path), write: (bytes) => writeBytes(path, bytes) }
}
