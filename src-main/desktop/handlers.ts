import { ipcMain } from 'electron'
import type { IpcMainEvent, IpcMainInvokeEvent } from 'electron'
import { z } from 'zod'
import type { Host } from '../host/host'
import { answer, OPERATIONS, runExport } from '../host/operations'
import type { Caller } from '../host/ports'
import {
  EXPORT_CANCEL_CHANNEL,
  EXPORT_CHANNEL,
  EXPORT_PROGRESS_CHANNEL,
  operationChannel,
  READY_TO_CLOSE_CHANNEL,
} from './channels'
import { isOwnMainFrame } from './origin'

interface HandlerPorts {
  /** The window that a message came from; null where it is none of ours. */
  callerOf(event: IpcMainInvokeEvent | IpcMainEvent): Caller | null
  flushed(projectId: string): void
}

const job = z.number().int().positive()
const exportMessage = z.strictObject({ job, request: z.unknown() })
const cancelMessage = z.strictObject({ job })

/** Listens to the windows: to their main frame at their own address, and to well-formed messages alone. */
export function setupHandlers(host: Host, ports: HandlerPorts): void {
  const jobs = new Map<string, AbortController>()

  const callerOf = (event: IpcMainInvokeEvent | IpcMainEvent): Caller => {
    const caller = isOwnMainFrame(event.senderFrame) ? ports.callerOf(event) : null
    if (!caller) throw new Error('only the main frame of a Petalyard window is listened to')
    return caller
  }

  for (const name of Object.keys(OPERATIONS))
    ipcMain.handle(operationChannel(name), (event, payload: unknown) =>
      answer(host, callerOf(event), name, payload),
    )

  ipcMain.handle(EXPORT_CHANNEL, async (event, message: unknown) => {
    const caller = callerOf(event)
    const read = exportMessage.parse(message)
    const key = `${caller.projectId}/${read.job}`
    const control = new AbortController()
    jobs.set(key, control)
    try {
      return await runExport(
        host,
        caller,
        read.request,
        (progress) => {
          if (!event.sender.isDestroyed())
            event.sender.send(EXPORT_PROGRESS_CHANNEL, { job: read.job, ...progress })
        },
        control.signal,
      )
    } finally {
      jobs.delete(key)
    }
  })

  ipcMain.on(EXPORT_CANCEL_CHANNEL, (event, message: unknown) => {
    const caller = callerOfQuietly(callerOf, event)
    const read = cancelMessage.safeParse(message)
    if (caller && read.success) jobs.get(`${caller.projectId}/${read.data.job}`)?.abort()
  })

  ipcMain.on(READY_TO_CLOSE_CHANNEL, (event) => {
    const caller = callerOfQuietly(callerOf, event)
    if (caller) ports.flushed(caller.projectId)
  })
}

/** For messages that get no answer: from a stranger they are dropped. */
function callerOfQuietly(callerOf: (event: IpcMainEvent) => Caller, event: IpcMainEvent): Caller | null {
  try {
    return callerOf(event)
  } catch {
    return null
  }
}
