/** What tabs ask, once it is known who does: each question has one reply. */
import { refused } from '../../shared-types/bridge'
import { finding } from '../../src-core/findings/finding'
import type { Host } from '../host/host'
import { answer, runExport } from '../host/operations'
import { browserCaller } from './caller'
import type { Errand } from './caller'
import type { Reply } from './envelope'
import type { Offers } from './offers'
import { cancelSchema, exportSchema, joinSchema, memberSchema, questionSchema } from './requests'
import type { Key } from './sealed'
import type { Tabs } from './tabs'

interface QuestionPorts {
  readonly host: Host
  readonly tabs: Tabs
  readonly offers: Offers
  /** Where saved projects go. */
  readonly saveFolder: string
}

const said = (status: number, body: unknown): Reply => ({ status, body })
const done = (body: unknown = null): Reply => said(200, body)
const NO_QUESTION = said(400, 'Not a question.')

export class Questions {
  readonly #ports: QuestionPorts
  readonly #jobs = new Map<string, AbortController>()

  constructor(ports: QuestionPorts) {
    this.#ports = ports
  }

  /** `text` is what was sealed with `key`, for this path. */
  async reply(path: string, text: string, key: Key): Promise<Reply> {
    let message: unknown
    try {
      message = JSON.parse(text)
    } catch {
      return said(400, 'Not JSON.')
    }
    if (path === '/export') return this.#export(message)
    if (path === '/export/cancel') return this.#cancel(message)
    if (path === '/stream/join') return this.#join(message, key)
    if (path === '/stream/leave') return this.#leave(message)
    if (path.startsWith('/ask/')) return this.#ask(path.slice('/ask/'.length), message)
    return said(404, 'Not here.')
  }

  async #ask(name: string, message: unknown): Promise<Reply> {
    const question = questionSchema.safeParse(message)
    if (!question.success) return NO_QUESTION
    const { project, seat, payload, upload } = question.data
    if (!this.#ports.tabs.hasSeat(project, seat)) return this.#notSeated(project)
    let errand: Errand = {}
    const caller = this.#caller(project, (more) => (errand = { ...errand, ...more }), upload ?? null)
    const outcome = await answer(this.#ports.host, caller, name, payload)
    return done({ outcome, ...errand })
  }

  async #export(message: unknown): Promise<Reply> {
    const read = exportSchema.safeParse(message)
    if (!read.success) return NO_QUESTION
    const { project, seat, job, payload } = read.data
    const { host, tabs } = this.#ports
    if (!tabs.hasSeat(project, seat)) return this.#notSeated(project)
    const control = new AbortController()
    const running = `${project}/${job}`
    this.#jobs.set(running, control)
    let errand: Errand = {}
    try {
      const outcome = await runExport(
        host,
        this.#caller(project, (more) => (errand = { ...errand, ...more }), null),
        payload,
        (progress) => tabs.announce(project, 'progress', { job, ...progress }),
        control.signal,
      )
      return done({ outcome, ...errand })
    } finally {
      this.#jobs.delete(running)
    }
  }

  #cancel(message: unknown): Reply {
    const read = cancelSchema.safeParse(message)
    if (!read.success) return NO_QUESTION
    const { project, seat, job } = read.data
    if (this.#ports.tabs.hasSeat(project, seat)) this.#jobs.get(`${project}/${job}`)?.abort()
    return done()
  }

  #join(message: unknown, key: Key): Reply {
    const read = joinSchema.safeParse(message)
    if (!read.success) return NO_QUESTION
    const { project, seat, stream } = read.data
    const { host, tabs } = this.#ports
    const joined = tabs.join(project, seat, stream, key)
    if (joined === 'no-seat') return said(404, 'This tab no longer has the project.')
    if (joined === 'no-stream') return said(409, 'This stream was cut off.')
    // What was told while nobody listened.
    const keeping = host.session(project)?.keeping
    if (keeping) tabs.announce(project, 'keeping', keeping)
    if (host.build.wasReplaced) tabs.announce(project, 'updated', null)
    return done()
  }

  #leave(message: unknown): Reply {
    const read = memberSchema.safeParse(message)
    if (!read.success) return NO_QUESTION
    this.#ports.tabs.leave(read.data.project, read.data.seat)
    return done()
  }

  #notSeated(project: string): Reply {
    const name = this.#ports.host.session(project)?.keeping.name ?? 'this project'
    return done({ outcome: refused(finding('app/open-elsewhere', name)) })
  }

  #caller(
    project: string,
    onErrand: (errand: Errand) => void,
    upload: { readonly name: string; readonly text: string } | null,
  ) {
    const { host, offers, saveFolder } = this.#ports
    return browserCaller(project, {
      folder: saveFolder,
      upload,
      isUntouched: () => host.session(project)?.isUntouched === true,
      offer: (offer) => offers.hold(offer),
      onErrand,
    })
  }
}
