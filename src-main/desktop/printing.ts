/** The system's print dialog, on what a window has laid out for print. */
import type { BrowserWindow } from 'electron'
import type { Paper } from '../../shared-types/project'
import type { Printed } from '../host/ports'

/** The sheets have margins of their own and are as large as the paper: nothing is scaled. */
export function printWindow(window: BrowserWindow, paper: Paper): Promise<Printed> {
  return new Promise((resolve) => {
    const options = {
      silent: false,
      margins: { marginType: 'none' },
      scaleFactor: 100,
      pageSize: paper,
    } as const
    window.webContents.print(options, (isDone, reason) => resolve(printedAs(isDone, reason)))
  })
}

/** The words of the shell are for developers; these are for people. */
function printedAs(isDone: boolean, reason: string): Printed {
  if (isDone) return 'printed'
  if (/cancell?ed/i.test(reason)) return 'cancelled'
  if (/printers|printer name/i.test(reason)) return { reason: 'no printer was found' }
  return { reason: reason === '' ? 'the system did not say why' : `the system says “${reason}”` }
}
