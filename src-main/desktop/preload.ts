/**
 * What the window gets of the desktop: plain functions, one per operation, and nothing of Electron. It runs
 * sandboxed and must be one piece (the build checks that).
 */
import { contextBridge, ipcRenderer } from 'electron'
import type { IpcRendererEvent } from 'electron'
import type { Outcome, Progress } from '../../shared-types/bridge'
import { makeBridge } from '../host/surface'
import {
  BEFORE_CLOSE_CHANNEL,
  eventChannel,
  EXPORT_CANCEL_CHANNEL,
  EXPORT_CHANNEL,
  EXPORT_PROGRESS_CHANNEL,
  operationChannel,
  READY_TO_CLOSE_CHANNEL,
} from './channels'

let lastJob = 0
const beforeClose = new Set<() => Promise<void>>()

function listen(channel: string, listener: (payload: unknown) => void): () => void {
  const wrapped = (_event: IpcRendererEvent, payload: unknown) => listener(payload)
  ipcRenderer.on(channel, wrapped)
  return () => {
    ipcRenderer.removeListener(channel, wrapped)
  }
}

const bridge = makeBridge({
  invoke: (operation, payload) =>
    ipcRenderer.invoke(operationChannel(operation), payload) as Promise<Outcome<unknown>>,
  listen: (event, listener) =>
    listen(eventChannel(event), (payload) => listener(payload as Parameters<typeof listener>[0])),
  runExport: (request, onProgress) => {
    const job = ++lastJob
    const stop = listen(EXPORT_PROGRESS_CHANNEL, (payload) => {
      const progress = payload as Progress & { readonly job: number }
      if (progress.job === job) onProgress(progress)
    })
    return {
      finished: ipcRenderer.invoke(EXPORT_CHANNEL, { job, request }).finally(stop),
      cancel: () => ipcRenderer.send(EXPORT_CANCEL_CHANNEL, { job }),
    }
  },
  onBeforeClose: (listener) => {
    beforeClose.add(listener)
    return () => {
      beforeClose.delete(listener)
    }
  },
})

ipcRenderer.on(BEFORE_CLOSE_CHANNEL, () => {
  void Promise.allSettled([...beforeClose].map((listener) => listener())).then(() =>
    ipcRenderer.send(READY_TO_CLOSE_CHANNEL, null),
  )
})

contextBridge.exposeInMainWorld('petalyard', bridge)
