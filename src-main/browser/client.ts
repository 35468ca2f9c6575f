/**
 * The browser's side of the bridge: what the preload is on the desktop. The server puts it before the window's
 * own scripts, with the project and the seat in its address.
 */
import type { ExportDone, HostGone, Outcome, ProjectChange } from '../../shared-types/bridge'
import { CANCELLED, done, refused } from '../../shared-types/bridge'
import { finding } from '../../src-core/findings/finding'
import { makeBridge } from '../host/surface'
import { ENTRY, LOST_MARK, PICKING } from './envelope'
import type { Answer, JobProgress, Question, Upload } from './envelope'
import { postSealed } from './sealed-post'
import type { Heard } from './stream-hub'
import { TabKey } from './tab-key'
import { tabStream } from './tab-stream'

/** A change of this many characters and more may be too long for a farewell (`postSealed`). */
const LONG_CHANGE = 50_000

/** Refusals after which a change is in memory alone. */
const UNKEPT = new Set(['app/cannot-keep', 'app/host-gone', 'app/shut-out'])

/** What still works without the program: the page has the project. */
const COPIES = new Set(['saveProject', 'saveProjectAs'])
/** While the program cannot be reached it is tried again this often (ms). */
const KNOCK_AGAIN = 2_000
/** A copy is on its way to the downloads by then (ms). */
const COPY_HOLDS = 60_000

const address = new URL((document.currentScript as HTMLScriptElement).src)
const project = address.searchParams.get('project') ?? ''
const seat = address.searchParams.get('seat') ?? ''
const stream = tabStream(seat, hear)
const key = new TabKey(
  () => sessionStorage,
  () => stream.anotherKey(),
)
/** While a key is on its way. */
let keyComes: Promise<void> | null = null

const beforeClose = new Set<() => Promise<void>>()
/** Changes on their way that would be lost with the page: too long for a farewell. */
let longChangesOnTheirWay = 0
/** The last change that was handed over is in memory alone, or never arrived: the page must not go in silence. */
let isUnkept = false
let isLeaving = false
/** Why the program behind the page cannot be reached. */
let gone: HostGone = null
let movedElsewhere = false
/** Something was handed over from this page. */
let hasChanges = false
let lastJob = 0

const listeners = new Map<string, Set<(payload: never) => void>>()

function listen(event: string, listener: (payload: never) => void): () => void {
  const set = listeners.get(event) ?? new Set()
  listeners.set(event, set)
  set.add(listener)
  return () => void set.delete(listener)
}

function tell(event: string, payload: unknown): void {
  for (const listener of listeners.get(event) ?? []) listener(payload as never)
}

function setGone(why: HostGone): void {
  // That it shut this page out counts until it lets it in again.
  if (why === gone || isLeaving || (why === 'app/host-gone' && gone !== null)) return
  const wasThere = gone === null
  gone = why
  tell('hostGone', why)
  if (wasThere) setTimeout(knock, KNOCK_AGAIN)
}

/** Asks for anything, to learn whether the program is there again. */
function knock(): void {
  if (gone === null) return
  const question: Question = { project, seat, payload: null }
  void post<Answer>('/ask/facts', question).then(() => setTimeout(knock, KNOCK_AGAIN))
}

function hear(heard: Heard): void {
  if (heard.kind === 'told') {
    if (heard.event === 'movedElsewhere') movedElsewhere = true
    if (heard.event === 'shutOut') return setGone('app/shut-out')
    tell(heard.event, heard.payload)
  } else if (heard.kind === 'unknown') {
    // The project was ended, its time ran out: loading it again opens it.
    if (!movedElsewhere && !isLeaving) location.reload()
  } else setGone(heard.kind === 'gone' ? 'app/host-gone' : null)
}

/** Before its first word this page needs a key; after it was shut out, another. */
async function obtainKey(): Promise<void> {
  try {
    const isNew = key.text === ''
    if (await (isNew ? key.begin() : key.renew())) stream.join({ project, seat, key: key.text })
    // The door says what to do; this page was loaded from an address that somebody typed.
    else if (isNew) location.replace(`${ENTRY}${LOST_MARK}`)
  } catch {
    setGone('app/host-gone')
  }
}

async function post<T>(path: string, body: unknown): Promise<T | null> {
  // A page that is closed waits for nothing.
  if ((key.text === '' || gone === 'app/shut-out') && !isLeaving) {
    keyComes ??= obtainKey().finally(() => (keyComes = null))
    await keyComes
    if (key.text === '') return null
  }
  try {
    const reply = await postSealed(key.text || key.former, path, body, isLeaving)
    if (reply?.status === 200) {
      setGone(null)
      return reply.body as T
    }
    if (reply === null || reply.status === 403) setGone(reply ? 'app/shut-out' : 'app/host-gone')
  } catch {
    setGone('app/host-gone')
  }
  return null
}

function hostGone(): Outcome<never> {
  return refused(finding(gone ?? 'app/host-gone', 'Petalyard'))
}

async function invoke(operation: string, payload: unknown): Promise<Outcome<unknown>> {
  if (operation === 'printSheets') return printHere()
  let upload: Upload | undefined
  if (PICKING.has(operation)) {
    const picked = await pickProject()
    if (picked === null) return CANCELLED
    upload = picked
  }
  if (operation === 'keepProject') hasChanges = true
  const isLong = operation === 'keepProject' && (payload as ProjectChange).text.length >= LONG_CHANGE
  if (isLong) longChangesOnTheirWay++
  const question: Question = { project, seat, payload, upload }
  const answer = await post<Answer>(`/ask/${operation}`, question)
  if (isLong) longChangesOnTheirWay--
  if (operation === 'closeWindow') window.close()
  if (!answer && COPIES.has(operation)) return copyHere(payload as ProjectChange)
  const outcome = answer ? carryOut(answer) : hostGone()
  if (operation === 'keepProject')
    isUnkept = outcome.outcome === 'refused' && UNKEPT.has(outcome.problem.code)
  return outcome
}

/** The browser's own print dialog; some browsers answer at once and tell later that it was closed. */
function printHere(): Promise<Outcome<null>> {
  return new Promise((resolve) => {
    window.addEventListener('afterprint', () => resolve(done(null)), { once: true })
    window.print()
  })
}

/** Without the program behind it, the page itself hands out a copy of the project. */
function copyHere({ text }: ProjectChange): Outcome<never> {
  const { title } = JSON.parse(text) as { title?: string }
  const link = document.createElement('a')
  link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }))
  link.download = `${title?.trim() || 'Untitled'}.petalyard`
  link.click()
  setTimeout(() => URL.revokeObjectURL(link.href), COPY_HOLDS)
  return CANCELLED
}

function carryOut(answer: Answer): Outcome<unknown> {
  if (answer.shown) {
    const url = `/?project=${answer.shown.project}`
    // A browser that lets no new tab open shows it here; this project is kept and in the list.
    const opened = answer.shown.inThisTab ? null : window.open(url)
    // What that tab may show later, from this address, has no way back to this page.
    if (opened) opened.opener = null
    else location.assign(url)
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
  if (longChangesOnTheirWay > 0 || isUnkept || (gone !== null && hasChanges)) event.preventDefault()
  setTimeout(() => (isLeaving = false), 1_000)
})

const bridge = makeBridge({
  invoke,
  listen,
  runExport: (request, onProgress) => {
    const job = ++lastJob
    const stop = listen('progress', (progress: JobProgress) => {
      if (progress.job === job) onProgress(progress)
    })
    const finished = post<Answer>('/export', { project, seat, job, payload: request }).then((answer) => {
      stop()
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
keyComes = obtainKey().finally(() => (keyComes = null))
