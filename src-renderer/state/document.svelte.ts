/**
 * The current project, its plan and its history. The project is immutable: an edit answers a new one that
 * shares what it did not touch, so that the planner can tell what stayed the same and undo is a list of
 * references, the older of them as what they differ in (`history.ts`).
 */
import type { Finding } from '../../shared-types/finding'
import type { CodePointRanges } from '../../shared-types/fonts'
import type { Plan, PlanNumbers } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import type { Settled } from '../../shared-types/settled'
import { lostMade, settleLost } from '../../src-core/progress/lost'
import type { LostMade } from '../../src-core/progress/lost'
import { EMPTY, createPlanner } from '../../src-core/plan'
import { settled } from '../../src-core/settled'
import { withFields } from '../../src-core/telling'
import { kindOf } from '../kinds/kinds'
import { allFindings, troubleOf } from './all-findings'
import type { Background } from './background'
import type { FirstPlan } from './first-plan'
import { held, HeldChanges } from './held-changes.svelte'
import { History } from './history'
import { measuredFrom } from './measured-from'
import type { MeasuredFrom } from './measured-from'
import { PlansAwaited } from './plans-awaited.svelte'

/** A change of the project: answers a new one, or the same where there is nothing to do. */
export type Edit = (project: Project) => Project

/** When the plan follows a change. */
type Pace = 'at-once' | 'typing'

/** A change that would take something from made motifs: it waits for an answer. */
interface Question {
  readonly label: string
  readonly project: Project
  readonly key: string | null
  readonly lost: LostMade
}

/** Motifs up to which a plan is made at once where there is no other thread for it. */
const AT_ONCE = 300

export class DocumentState {
  readonly #planner = createPlanner()
  readonly #background: Background | null
  /** Changes whose colours are sought in another thread; null where there is none. */
  readonly #beside: HeldChanges | null
  #isBare = false
  /** What was tried last, and of which project. */
  #tried: { readonly edit: Edit; readonly on: Project } | null = null
  /** What waits for the answer to a question. */
  #whenAnswered: (() => void)[] = []
  #hasBegun: boolean
  readonly #listeners = new Set<(project: Project) => void>()
  #committed: Project
  #preview: Project | null
  #before: Plan | null
  #label = ''
  #past: History
  #future: History
  #plan: Plan
  readonly #shown: Plan
  /** What the fonts cover that were chosen for other scripts. */
  covered: readonly CodePointRanges[]
  readonly #awaited = new PlansAwaited()
  /** Why there is no plan of the project as it is now; null where there is one. */
  #trouble: Finding | null
  #question: Question | null
  /** What followed before the motif was measured again; null where something else changed since. */
  #measuredFrom: MeasuredFrom | null
  /** The motifs of the project that was planned last. */
  #plannedMotifs: Project['motifs']
  readonly project: Project
  /** The project with every default: what to show, where `project` is what to change. */
  readonly settled: Settled
  readonly findings: readonly Finding[]
  readonly isPlanning: boolean
  readonly previous: Plan | null
  readonly undoLabel: string | null
  readonly redoLabel: string | null
  readonly isPreviewing: boolean

  /**
   * Without a background every plan is made at once. `first`: what was planned beside the window before it was
   * shown, or why nothing could be.
   */
  constructor(project: Project, background: Background | null = null, first: FirstPlan | null = null) {
    this.#background = background
    this.#beside = background?.isBeside ? new HeldChanges(background) : null
    this.#committed = $state.raw(project)
    this.#preview = $state.raw(null)
    this.#before = $state.raw(null)
    this.#past = $state.raw(History.empty)
    this.#future = $state.raw(History.empty)
    this.project = $derived(this.#preview ?? this.#committed)
    this.settled = $derived(settled(this.project))
    this.#plan = $state.raw(first?.plan ?? EMPTY)
    this.covered = $state.raw([])
    this.#shown = $derived(
      this.covered.length > 0 ? withFields(this.#plan, { covered: this.covered }) : this.#plan,
    )
    this.#trouble = $state.raw(first?.trouble ?? null)
    this.#question = $state.raw(null)
    this.#hasBegun = $state(false)
    this.#measuredFrom = $state.raw(null)
    if (first?.plan) this.#plannedMotifs = project.motifs
    // What the worker could plan this thread can too: it remembers it for the first change.
    if (!first || (first.plan && this.#isQuick(project))) this.#planHere(project)
    this.findings = $derived(
      allFindings(this.#planner, this.project, this.#plan, this.#trouble, this.covered),
    )
    this.isPlanning = $derived(this.#awaited.isAny)
    this.previous = $derived(this.#preview ? this.#before : null)
    this.isPreviewing = $derived(this.#preview !== null)
    this.undoLabel = $derived(this.#beside?.label ?? this.#past.last?.label ?? null)
    this.redoLabel = $derived(this.#future.last?.label ?? null)
  }

  /** What follows from the project; while a large one is planned, what followed from the one before. */
  get plan(): Plan {
    return this.#shown
  }

  /** What follows from the project in numbers: known before the plan of a large one is. */
  get numbers(): PlanNumbers {
    return this.#awaited.numbers ?? this.#shown
  }

  /** The change that has been worked out for a while; null where none is. */
  get working(): string | null {
    return this.#beside?.longLabel ?? null
  }

  /** Takes back the change that is worked out, and what waits for it. */
  stopWorking(): void {
    this.#beside?.cancel()
  }

  /** Does something once the plan is of the project as it is now, with every change that was asked for: at once, where it is. */
  whenPlanned(act: () => void): void {
    if (this.#beside?.label) this.#beside.queue(() => this.whenPlanned(act))
    else this.#awaited.whenNone(act)
  }

  /** Why the project as it is now could not be planned; null where `plan` is of it, or will be. */
  get trouble(): Finding | null {
    return this.#trouble
  }

  /** What a change would take from made motifs; null where nothing waits for an answer. */
  get question(): LostMade | null {
    return this.#question?.lost ?? null
  }

  /** What followed before the motif was measured again while a work is under way; null where it was not. */
  get measuredFrom(): MeasuredFrom | null {
    return this.#measuredFrom
  }

  /** Makes the change that waits, or leaves everything as it is. */
  answer(isMeant: boolean): void {
    const asked = this.#question
    this.#question = null
    if (asked && isMeant)
      this.#keepStep(asked.label, settleLost(asked.project, asked.lost), asked.key, 'at-once')
    const waiting = this.#whenAnswered
    this.#whenAnswered = []
    for (const act of waiting) act()
  }

  /** The project without what is only being tried. */
  get committed(): Project {
    return this.#committed
  }

  /** Calls `listener` with the project after every settled change, undo and redo. */
  onChange(listener: (project: Project) => void): () => void {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  /**
   * Changes the project under a name that undo tells. Steps with the same `key` in a row become one. While a hand is
   * typing (`pace: 'typing'`) the plan is made beside the window, however small it is.
   */
  change(label: string, edit: Edit, key: string | null = null, pace: Pace = 'at-once'): void {
    this.cancel()
    const again = () => this.change(label, edit, key, pace)
    if (this.#beside?.label) return this.#beside.queue(again)
    // What an answer keeps was made of the project as it was then.
    if (this.#question) return void this.#whenAnswered.push(again)
    this.#take(label, edit(this.#committed), key, pace)
  }

  /** Tries a change while a hand or a key is still at it; each try starts from the settled project. */
  preview(label: string, edit: Edit): void {
    if (this.#preview === null) this.#before = this.plan
    this.#tried = { edit, on: this.#committed }
    const tried = edit(this.#committed)
    // What is sought within limits is held when it is kept, and tried bare.
    this.#isBare = this.#isSlow(tried)
    this.#preview = this.#isBare ? tried : held(this.#committed, tried)
    this.#label = label
    this.#replan()
  }

  /** Keeps what was tried last; `key` as in `change`. */
  commit(key: string | null = null): void {
    const tried = this.#preview
    if (!tried) return
    const before = this.#before
    this.#preview = null
    this.#before = null
    if (tried === this.#committed) this.#replan()
    else if (this.#tried && (this.#beside?.label || this.#tried.on !== this.#committed)) {
      // It was tried without a change that was worked out meanwhile, or still is: it comes after that one.
      this.change(this.#label, this.#tried.edit, key)
      this.#replan()
    } else if (this.#isBare) this.#take(this.#label, tried, key, 'at-once', before)
    else this.#settle(this.#label, tried, key, 'at-once', before)
  }

  /** Drops what was tried. */
  cancel(): void {
    if (this.#preview === null) return
    this.#preview = null
    this.#before = null
    this.#replan()
  }

  undo(): void {
    this.#step('#past')
  }

  redo(): void {
    this.#step('#future')
  }

  /** Something of the user's is in it: it was begun here, or changed. */
  get isTheirs(): boolean {
    return this.#hasBegun || this.undoLabel !== null
  }

  /** Another project begins here. It is kept from now on, and undo never leads into the one before. */
  begin(project: Project): void {
    this.replace(project)
    this.#hasBegun = true
    for (const listener of this.#listeners) listener(project)
  }

  /** Another project altogether: nothing to undo in it yet, unless it is another version (`label`), as it stands, of this one. */
  replace(project: Project, label: string | null = null): void {
    this.cancel()
    this.#beside?.cancel()
    this.#question = null
    this.#whenAnswered = []
    this.#measuredFrom = null
    this.#past = label === null ? History.empty : this.#past.with({ label, key: null }, this.#committed)
    this.#future = History.empty
    this.#committed = project
    this.#replan()
  }

  #isSlow = (next: Project): boolean => this.#beside?.isSlow(this.#committed, next) ?? false

  /** Takes a change with its colours held: beside the window where they must be sought. */
  #take(
    label: string,
    next: Project,
    key: string | null,
    pace: Pace,
    before: PlanNumbers | null = null,
  ): void {
    const committed = this.#committed
    if (next === committed) return
    if (!this.#beside || !this.#isSlow(next))
      return this.#settle(label, held(committed, next), key, pace, before)
    this.#beside.hold(label, committed, next, (project, lost) => {
      if (lost) this.#question = { label, project, key, lost }
      else this.#keepStep(label, project, key, pace, before)
    })
    // What was tried is no longer shown.
    this.#replan()
  }

  /** Keeps a change, unless something made would be lost by it: then it is asked about first. */
  #settle(
    label: string,
    next: Project,
    key: string | null,
    pace: Pace = 'at-once',
    before: PlanNumbers | null = null,
  ): void {
    if (next === this.#committed) return
    const lost = lostMade(this.#committed, next)
    if (!lost) return this.#keepStep(label, next, key, pace, before)
    this.#question = { label, project: next, key, lost }
    // What was tried is no longer shown.
    this.#replan()
  }

  #keepStep(
    label: string,
    next: Project,
    key: string | null,
    pace: Pace,
    before: PlanNumbers | null = null,
  ): void {
    // What was tried may be planned already.
    this.#measuredFrom = measuredFrom(this.#committed, next, before ?? this.#plan, this.#measuredFrom)
    const isSame = key !== null && this.#past.last?.key === key && this.#future.last === null
    if (!isSame) this.#past = this.#past.with({ label, key }, this.#committed)
    this.#future = History.empty
    this.#committed = next
    this.#tell(pace)
  }

  #step(from: '#past' | '#future'): void {
    if (this.#preview) return this.cancel()
    // What is still worked out is the last change: it is taken back first.
    if (this.#beside?.cancel()) return
    this.#measuredFrom = null
    const [taken, given] = from === '#past' ? [this.#past, this.#future] : [this.#future, this.#past]
    const found = taken.back(this.#committed)
    if (!found) return
    const { step, project, rest } = found
    const back = given.with({ label: step.label, key: null }, this.#committed)
    if (from === '#past') [this.#past, this.#future] = [rest, back]
    else [this.#future, this.#past] = [rest, back]
    this.#committed = project
    this.#tell()
  }

  #tell(pace: Pace = 'at-once'): void {
    this.#replan(pace)
    for (const listener of this.#listeners) listener(this.#committed)
  }

  /** Plans the project as it is now: what is quick at once, everything else beside the window. */
  #replan(pace: Pace = 'at-once'): void {
    const project = this.project
    // What could not be planned is tried beside the window only: it may take for ever.
    const isHere = pace === 'at-once' && this.#isQuick(project) && this.#trouble === null
    if (!this.#background || isHere) {
      this.#planHere(project)
      return
    }
    const turn = this.#awaited.ask()
    void this.#background
      .plan('document', project, (numbers) => {
        if (!this.#isQuick(this.project)) this.#awaited.hear(turn, numbers)
      })
      .then(
        (plan) => {
          // A project may have been planned here meanwhile.
          if (plan && (project === this.project || !this.#isQuick(this.project)))
            this.#keep(project, plan, turn)
        },
        (error: unknown) => {
          this.#awaited.reach(turn)
          if (project === this.project) this.#trouble = troubleOf(error)
        },
      )
      .finally(() => this.#awaited.close())
  }

  /**
   * Whether a project is planned in the window's own thread. Beside another thread that is a panel alone: it remembers
   * what it measured, and whatever moves, only that is measured anew, sooner than it could be sent. But motifs that
   * were never planned, with whatever somebody wrote into them, are planned where what hangs can be ended.
   */
  #isQuick(project: Project): boolean {
    const kind = kindOf(project)
    if (!this.#background?.isBeside) return kind.motifsAbout(project) <= AT_ONCE
    return kind.isPlannedHere && project.motifs === this.#plannedMotifs
  }

  /** Plans in the window's own thread; what falls over leaves the last plan. */
  #planHere(project: Project): void {
    try {
      this.#keep(project, this.#planner.plan(project))
    } catch (error) {
      this.#trouble = troubleOf(error)
    }
  }

  #keep(project: Project, plan: Plan, turn = Infinity): void {
    this.#plan = plan
    this.#plannedMotifs = project.motifs
    this.#awaited.reach(turn)
    this.#trouble = null
  }
}
