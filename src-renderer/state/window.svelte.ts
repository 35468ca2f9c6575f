/** Everything that one window knows, made once at its start and handed down to the components. */
import { createContext, untrack } from 'svelte'
import type {
  HostBridge,
  HostFacts,
  HostGone,
  Keeping,
  OpenProject,
  Outcome,
  ProjectChange,
  RecentEntry,
  Settings,
  SettingsChange,
} from '../../shared-types/bridge'
import type { Finding } from '../../shared-types/finding'
import type { Project, Terms } from '../../shared-types/project'
import { rangesOfText } from '../../src-core/letters/coverage'
import { finding } from '../../src-core/findings/finding'
import type { Background } from './background'
import { sameThreadBackground, workerBackground } from './background'
import { DocumentState } from './document.svelte'
import { planFirst } from './first-plan'
import type { FirstPlan } from './first-plan'
import type { ExportWish } from './exporting.svelte'
import { ExportState } from './exporting.svelte'
import { forReader } from './for-reader'
import { openingOf, pageStore } from './opening'
import type { Opening } from './opening'
import { PaperState } from './paper.svelte'
import { PictureState } from './picture.svelte'
import { printJob } from './printing'
import { ProjectKeeper } from './project-keeper'
import { sayIn } from './say'
import { SelectionState } from './selection.svelte'
import { ViewState } from './view.svelte'

/** A project that cannot be shown: its text is there, and can be saved. */
export interface Stranded {
  readonly outcome: 'stranded'
  readonly problem: Finding
  readonly change: ProjectChange
}

interface OpeningChoice {
  /** Also where earlier starts were cut off over it. */
  readonly again?: boolean
  /** Where the starts of this page are marked; the page's own. */
  readonly store?: ReturnType<typeof pageStore>
}

/** What fell over in the window, for people. */
export const notShown = (error: unknown): Finding =>
  finding('app/not-shown', 'project', { reason: error instanceof Error ? error.message : String(error) })

/** ms. A polite region is read when its words come, and nothing of it when they go (ours). */
const READ_OUT = 1000

/** Why a project was not saved: told until it is, or until somebody said which version holds. */
const UNSAVED = new Set(['app/cannot-write', 'app/changed-on-disk', 'app/gone-from-disk'])

export class WindowState {
  readonly document: DocumentState
  readonly selection = new SelectionState()
  readonly view = new ViewState()
  readonly exporting = new ExportState()
  readonly paper: PaperState
  readonly picture: PictureState
  readonly bridge: HostBridge
  readonly background: Background
  readonly facts: HostFacts
  readonly origin: OpenProject['origin']
  keeping: Keeping = $state.raw()!
  settings: Settings = $state.raw()!
  recent: readonly RecentEntry[] = $state.raw([])
  /** What the host refused, or what reading the file remarked: told above the drawing until it is put away. */
  notices: readonly Finding[] = $state.raw([])
  /** The project is being worked on in another tab; this one may only look on. */
  isElsewhere = $state(false)
  /** The program behind the window cannot be reached; nothing is kept until it can. */
  hostGone = $state<HostGone>(null)
  /** Said to screen readers; gone when the project has moved on. */
  said = $state('')
  #stale: ReturnType<typeof setTimeout> | undefined
  readonly #keeper: ProjectKeeper
  #opening: Opening | null = null
  /** What was remarked last of how the project is kept. */
  #remark: string | undefined
  readonly #stops: (() => void)[] = []

  constructor(
    bridge: HostBridge,
    facts: HostFacts,
    settings: Settings,
    opened: OpenProject,
    project: Project,
    background: Background,
    first: FirstPlan,
  ) {
    this.bridge = bridge
    this.facts = facts
    this.origin = opened.origin
    this.settings = settings
    this.notices = opened.findings
    this.#kept(opened.keeping)
    this.background = background
    this.document = new DocumentState(project, background, first)
    this.paper = new PaperState(bridge, this.document, () => this.settings)
    this.picture = new PictureState(this.document)
    this.#settle(settings)
    this.#keeper = new ProjectKeeper(bridge, opened.nextRevision, (problem) => this.tell(problem))
    this.#stops.push(
      this.document.onChange((project) => this.#keeper.changed(project)),
      this.document.onChange(() => this.#moveOn()),
      bridge.onKeeping((keeping) => this.#kept(keeping)),
      bridge.onRecent((entries) => (this.recent = entries)),
      bridge.onMovedElsewhere(() => (this.isElsewhere = true)),
      bridge.onHostGone((gone) => this.#reach(gone)),
      bridge.onUpdated(() => this.tell(finding('app/updated', 'Petalyard'))),
      bridge.onSettings((next) => this.#settle(next)),
    )
  }

  /** Asks the host for everything that a window starts with; what falls over the project is told with its text. */
  static async open(
    bridge: HostBridge,
    { again = false, store = pageStore() }: OpeningChoice = {},
  ): Promise<Outcome<WindowState> | Stranded> {
    const [facts, settings, opened] = await Promise.all([
      bridge.facts(),
      bridge.settings(),
      bridge.currentProject(),
    ])
    if (facts.outcome !== 'done') return facts
    if (settings.outcome !== 'done') return settings
    if (opened.outcome !== 'done') return opened
    const { text, nextRevision, unreadable } = opened.value
    const stranded = (problem: Finding): Stranded => ({
      outcome: 'stranded',
      problem,
      change: { text, revision: nextRevision },
    })
    if (unreadable) return stranded(unreadable)
    const opening = openingOf(text, store)
    if (opening.wasCutOff && !again) return stranded(finding('app/not-opened-before', 'project'))
    opening.begin()
    const background = typeof Worker === 'undefined' ? sameThreadBackground() : workerBackground()
    try {
      const given = JSON.parse(text) as Project
      const project = opened.value.origin === 'example' ? forReader(given, settings.value) : given
      const first = await planFirst(project, background)
      const state = new WindowState(
        bridge,
        facts.value,
        settings.value,
        opened.value,
        project,
        background,
        first,
      )
      state.#opening = opening
      // What changed while the first plan was made was heard by nobody yet.
      const [recent, now] = await Promise.all([bridge.listRecent(), bridge.settings()])
      if (recent.outcome === 'done') state.recent = recent.value
      if (now.outcome === 'done') state.#settle(now.value)
      return { outcome: 'done', value: state }
    } catch (error) {
      opening.end()
      background.stop()
      return stranded(notShown(error))
    }
  }

  /** The window shows the project: from now on it is known to open. */
  shown(): void {
    this.#opening?.end()
    this.#opening = null
  }

  /** Nothing of the user's is in this window yet: it may be filled with something else. */
  get isUntouched(): boolean {
    const isGiven = this.origin === 'example' || this.origin === 'blank'
    return isGiven && this.keeping.place !== 'file' && !this.document.isTheirs
  }

  tell(problem: Finding): void {
    // How the project is kept stands in a line of its own, for as long as it holds.
    if (problem.code === 'app/host-gone' || problem.code === 'app/shut-out') this.hostGone = problem.code
    else if (problem.code === 'app/cannot-keep') this.keeping = { ...this.keeping, problem }
    else if (!this.notices.some((known) => known.code === problem.code && known.message === problem.message))
      this.notices = [...this.notices, problem]
  }

  /** How the project is kept now; what is remarked of that is told once. */
  #kept(keeping: Keeping): void {
    this.keeping = keeping
    const { remark } = keeping
    if (remark && remark.message !== this.#remark) this.tell(remark)
    this.#remark = remark?.message
  }

  putAway(notice: Finding): void {
    this.notices = this.notices.filter((known) => known !== notice)
  }

  /** How often something was said: what comes late is not said over what came since. */
  spoken = 0

  /** Says something to screen readers; the same words twice are said twice. */
  say(words: string): void {
    this.spoken++
    this.said = this.said === words ? `${words}\u00a0` : words
  }

  /**
   * What was said of a project that is another one by now is taken away, after the moment in which it is still read
   * out; what is said of the change itself stays.
   */
  #moveOn(): void {
    const words = this.said
    if (words === '') return
    clearTimeout(this.#stale)
    this.#stale = setTimeout(() => {
      if (this.said === words) this.said = ''
    }, READ_OUT)
  }

  /** Takes the last change back, and says which. */
  undo(): void {
    const label = this.document.undoLabel
    this.document.undo()
    if (label !== null) this.say(`Undone: ${label}`)
  }

  /** Does again what was taken back last, and says what. */
  redo(): void {
    const label = this.document.redoLabel
    this.document.redo()
    if (label !== null) this.say(`Redone: ${label}`)
  }

  /** What the project is called: by its title, else by the name of its file. */
  get name(): string {
    const { name, place } = this.keeping
    return this.document.project.title?.trim() || (place === 'file' ? name : '') || 'Untitled'
  }

  /** The project as it is, to send with an operation of its own. */
  change(): ProjectChange {
    this.document.commit()
    return this.#keeper.change(this.document.committed)
  }

  /** Runs an operation and tells what the host refused; answers its value, or null. */
  async ask<T>(asked: Promise<Outcome<T>>): Promise<T | null> {
    const answer = await asked
    if (answer.outcome === 'refused') this.tell(answer.problem)
    return answer.outcome === 'done' ? answer.value : null
  }

  async save(): Promise<void> {
    this.#saved(await this.ask(this.bridge.saveProject(this.change())))
  }

  async saveAs(): Promise<void> {
    this.#saved(await this.ask(this.bridge.saveProjectAs(this.change())))
  }

  /** What could not be written before holds no longer once it is saved. */
  #saved(keeping: Keeping | null): void {
    if (!keeping) return
    this.#kept(keeping)
    this.notices = this.notices.filter(({ code }) => !UNSAVED.has(code))
  }

  /** The file was changed by somebody else: keeps this window's version, or takes the file's. */
  async answerDisk(answer: 'keep-mine' | 'take-theirs'): Promise<void> {
    const opened = await this.ask(this.bridge.answerDisk({ ...this.change(), answer }))
    if (!opened) return
    this.#saved(opened.keeping)
    if (answer === 'take-theirs') {
      // What was here comes back with Undo; saved again, it leaves the file's version beside it.
      this.document.replace(JSON.parse(opened.text) as Project, 'use the file on disk')
      this.selection.hold(null)
    }
    this.#keeper.continueFrom(opened.nextRevision)
  }

  /** Exports the project as it is now. */
  startExport(wish: ExportWish): void {
    const sheets = wish.kind === 'map' || wish.kind === 'editions' ? wish.sheets : undefined
    const text = this.paper.textFor(this.change().text, sheets)
    void this.exporting.start(
      'export',
      (onProgress) => this.bridge.exportProject({ ...wish, text }, onProgress),
      wish.kind,
    )
  }

  /** Prints what the Paper place shows, as the project is now. */
  print(): void {
    this.view.place = 'paper'
    const { choice } = this.paper
    const text = this.paper.textFor(this.change().text, choice.sheets)
    void this.exporting.start('print', (onProgress) => printJob(this.bridge, { ...choice, text }, onProgress))
  }

  async changeSettings(change: SettingsChange): Promise<void> {
    const settings = await this.ask(this.bridge.changeSettings(change))
    if (settings) this.#settle(settings)
  }

  stop(): void {
    for (const stop of this.#stops) stop()
    clearTimeout(this.#stale)
    this.#keeper.stop()
    this.background.stop()
  }

  /** What could not be handed over while nobody was there is handed over again. */
  #reach(gone: HostGone): void {
    const isBack = this.hostGone !== null && gone === null
    this.hostGone = gone
    if (isBack && this.document.isTheirs) this.#keeper.changed(this.document.committed)
  }

  #settle(settings: Settings): void {
    this.settings = settings
    this.document.covered = settings.fonts.map(({ covers }) => rangesOfText(covers))
    this.view.wishTheme(settings.theme)
  }
}

const [getWindow, keepWindow] = createContext<WindowState>()

export { getWindow }

/** For all parts below: the window's state, whose texts are spelled as its project's terms do. */
export function setWindow(app: WindowState): void {
  keepWindow(app)
  // Before the first text is drawn, and before what a change of the terms draws anew.
  // What is begun at the start comes in the terms for new projects.
  const terms = (): Terms => (app.view.dialog === 'start' ? app.settings.terms : app.document.settled.terms)
  sayIn(untrack(terms))
  $effect.pre(() => sayIn(terms()))
}
