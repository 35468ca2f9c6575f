/**
 * The window's side of the bridge, on any transport: one function per operation. The desktop's preload and
 * the browser's client both make it from here, so that the window meets the same surface in both.
 */
import type {
  ExportDone,
  ExportRequest,
  HostBridge,
  HostEvents,
  Job,
  OperationName,
  OperationPayload,
  OperationValue,
  Outcome,
  Progress,
  Unsubscribe,
} from '../../shared-types/bridge'

interface Transport {
  invoke(operation: OperationName, payload: unknown): Promise<Outcome<unknown>>
  listen<Name extends keyof HostEvents>(
    event: Name,
    listener: (payload: HostEvents[Name]) => void,
  ): Unsubscribe
  runExport(request: ExportRequest, onProgress: (progress: Progress) => void): Job<ExportDone>
  onBeforeClose(listener: () => Promise<void>): Unsubscribe
}

/** The bridge on a transport. Plain functions alone, since that is what crosses from preload to window. */
export function makeBridge(transport: Transport): HostBridge {
  // Operations that ask for nothing send null.
  const ask =
    <Name extends OperationName>(name: Name) =>
    (payload?: OperationPayload<Name>) =>
      transport.invoke(name, payload ?? null) as Promise<Outcome<OperationValue<Name>>>
  return {
    facts: ask('facts'),
    currentProject: ask('currentProject'),
    keepProject: ask('keepProject'),
    saveProject: ask('saveProject'),
    saveProjectAs: ask('saveProjectAs'),
    duplicateProject: ask('duplicateProject'),
    duplicateAsPlan: ask('duplicateAsPlan'),
    newProject: ask('newProject'),
    openProject: ask('openProject'),
    openRecent: ask('openRecent'),
    forgetRecent: ask('forgetRecent'),
    listRecent: ask('listRecent'),
    listExamples: ask('listExamples'),
    takeFromProject: ask('takeFromProject'),
    answerDisk: ask('answerDisk'),
    previewPage: ask('previewPage'),
    printSheets: ask('printSheets'),
    settings: ask('settings'),
    changeSettings: ask('changeSettings'),
    addFont: ask('addFont'),
    removeFont: ask('removeFont'),
    showEditState: ask('showEditState'),
    licences: ask('licences'),
    showEngineLicences: ask('showEngineLicences'),
    closeWindow: ask('closeWindow'),
    exportProject: (request, onProgress) => runToItsEnd(transport, request, onProgress ?? (() => undefined)),
    onKeeping: (listener) => transport.listen('keeping', listener),
    onCommand: (listener) => transport.listen('command', listener),
    onSettings: (listener) => transport.listen('settings', listener),
    onRecent: (listener) => transport.listen('recent', listener),
    onMovedElsewhere: (listener) => transport.listen('movedElsewhere', () => listener()),
    onHostGone: (listener) => transport.listen('hostGone', listener),
    onUpdated: (listener) => transport.listen('updated', () => listener()),
    onBeforeClose: (listener) => transport.onBeforeClose(listener),
  }
}

/** An answer may overtake the events before it: what is done is told as done, whichever of them came through. */
function runToItsEnd(
  transport: Transport,
  request: ExportRequest,
  onProgress: (progress: Progress) => void,
): Job<ExportDone> {
  let last: Progress = { done: 0, total: 100, words: 'Writing the pages' }
  const job = transport.runExport(request, (progress) => {
    last = progress
    onProgress(progress)
  })
  const finished = job.finished.then((outcome) => {
    if (outcome.outcome === 'done' && last.done < last.total) onProgress({ ...last, done: last.total })
    return outcome
  })
  return { finished, cancel: () => job.cancel() }
}
