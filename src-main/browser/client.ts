/**
 * The browser's side of the bridge: what the preload is on the desktop. The server puts it before the window's
 * own scripts, with the project and the seat in its address.
 */
import type { ExportDone, HostEvents, Outcome, ProjectChange } from '../../shared-types/bridge'
import { CANCELLED, refused } from '../../shared-types/bridge'
import { finding } from '../../src-core/findings/finding'
import { makeBridge } from '../host/surface'
import { PICKING } from './envelope'
import type { Answer, JobProgress, Question, Upload } from './envelope'

/** Longest body that a browser still sends while its page goes away (the Fetch standard's 64 KiB). */
const FAREWELL_LIMIT = 60_000

/** Refusals after which a change is in memory alone. */
const UNKEPT = new Set(['app/cannot-keep', 'app/host-gone'])

const address = new URL((document.currentScript as HTMLScriptElement).src)
const project = address.searchParams.get('project') ?? ''
const seat = address.searchParams.get('seat') ?? ''

const events = new EventSource(`/events?project=${project}&seat=${seat}`)
const beforeClose = new Set<() => Promise<void>>()
/** Changes on their way that would be lost with the page: too long for a farewell. */
let longChangesOnTheirWay = 0
/** The last change that was handed over is in memory alone, or never arrived: the page must not go in silence. */
let isUnkept = false
let isLeaving = false
let lastJob = 0

// A stream that the server ended for good: the project went to another tab, or its time ran out.
let movedElsewhere = false
events.addEventListener('movedElsewhere', () => {
  movedElsewhere = true
  events.close()
})
events.addEventListener('error', () => {
  if (events.readyState === EventSource.CLOSED && !movedElsewhere && !isLeaving) location.reload()
})

async function post<T>(path: string, body: unknown): Promise<T | null> {
  const text = JSON.stringify(body)
  try {
    const response = await fetch(path, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: text,
      keepalive: isLeaving && text.length < FAREWELL_LIMIT,
    })
    return response.ok ? ((await response.json()) as T) : null
  } catch {
    return null
  }
}

function hostGone(): Outcome<never> {
  return refused(finding('app/host-gone', 'Petalyard'))
}

async function invoke(operation: string, payload: unknown): Promise<Outcome<unknown>> {
  let upload: Upload | undefined
  if (PICKING.has(operation)) {
    const picked = await pickProject()
    if (picked === null) return CANCELLED
    upload = picked
  }
  const isLong = operation === 'keepProject' && (payload as ProjectChange).text.length >= FAREWELL_LIMIT
  if (isLong) longChangesOnTheirWay++
  const question: Question = { project, seat, payload, upload }
  const answer = await post<Answer>(`/ask/${operation}`, question)
  if (isLong) longChangesOnTheirWay--
  if (operation === 'closeWindow') window.close()
  const outcome = answer ? carryOut(answer) : hostGone()
  if (operation === 'keepProject')
    isUnkept = outcome.outcome === 'refused' && UNKEPT.has(outcome.problem.code)
  return outcome
}

function carryOut(answer: Answer): Outcome<unknown> {
  if (answer.shown) {
    const url = `/?project=${answer.shown.project}`
    // A browser that lets no new tab open shows it here; this project is kept and in the list.
    if (answer.shown.inThisTab || !window.open(url)) location.assign(url)
  }
  if (answer.download) {
    const link = document.createElement('a')
    link.href = `/download/${answer.download}`
    link.download = ''
    link.click()
  }
  return answer.outcome
}

/** The browser's own picker; null where the user closed it. */
function pickProject(): Promise<Upload | null> {
  return new Promise((resolve) => {
    const input = document.createElement('input')
    input.type = 'file'
    input.accept = '.petalyard,application/json'
    input.addEventListener('cancel', () => resolve(null))
    input.addEventListener('change', () => {
      const file = input.files?.[0]
      if (!file) resolve(null)
      else void file.text().then((text) => resolve({ name: file.name, text }))
    })
    input.click()
  })
}

async function handOverEverything(): Promise<void> {
  await Promise.allSettled([...beforeClose].map((listener) => listener()))
}

document.addEventListener('visibilitychange', () => {
  if (document.visibilityState === 'hidden') void handOverEverything()
})
window.addEventListener('beforeunload', (event) => {
  isLeaving = true
  void handOverEverything()
  // Only where something would be lost does the browser ask whether to leave.
  if (longChangesOnTheirWay > 0 || isUnkept) event.preventDefault()
  setTimeout(() => (isLeaving = false), 1_000)
})

const bridge = makeBridge({
  invoke,
  listen: (event, listener) => {
    const wrapped = (message: MessageEvent<string>) =>
      listener(JSON.parse(message.data) as HostEvents[typeof event])
    events.addEventListener(event, wrapped)
    return () => events.removeEventListener(event, wrapped)
  },
  runExport: (request, onProgress) => {
    const job = ++lastJob
    const wrapped = (message: MessageEvent<string>) => {
      const progress = JSON.parse(message.data) as JobProgress
      if (progress.job === job) onProgress(progress)
    }
    events.addEventListener('progress', wrapped)
    const finished = post<Answer>('/export', { project, seat, job, payload: request }).then((answer) => {
      events.removeEventListener('progress', wrapped)
      return answer ? (carryOut(answer) as Outcome<ExportDone>) : hostGone()
    })
    return { finished, cancel: () => void post('/export/cancel', { project, seat, job }) }
  },
  onBeforeClose: (listener) => {
    beforeClose.add(listener)
    return () => {
      beforeClose.delete(listener)
    }
  },
})

Object.defineProperty(window, 'petalyard', { value: Object.freeze(bridge) })
