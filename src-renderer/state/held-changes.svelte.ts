/**
 * Changes whose colours must be sought within limits, beside the window: which colours stay, and what made motifs
 * would lose. One at a time; what is changed meanwhile waits for it, and whoever takes it back has nothing changed.
 */
import type { Project } from '../../shared-types/project'
import { isUsableOrZero } from '../../src-core/units/usable'
import type { LostMade } from '../../src-core/progress/lost'
import { holdWork } from '../../src-core/progress/hold'
import { withEdit } from '../../src-core/ways/edit'
import { kindOf } from '../kinds/kinds'
import type { Background } from './background'
import { blanketOf } from './edits/layout'

/** Motifs from which on colours within limits take longer than a frame. */
const MANY = 60
/** ms. What takes longer is shown, with a way to cancel it. */
const LONG = 300

type Deliver = (held: Project, lost: LostMade | null) => void

interface Pending {
  readonly label: string
}

/** The project after an edit; colours are held where they can be, but an edit is never lost for it. */
export function held(before: Project, after: Project): Project {
  try {
    return holdWork(before, after)
  } catch {
    return after
  }
}

export class HeldChanges {
  readonly #background: Background
  #pending = $state.raw<Pending | null>(null)
  #isLong = $state(false)
  #later: (() => void)[] = []

  constructor(background: Background) {
    this.#background = background
  }

  /** The change that is worked out; null where none is. */
  get label(): string | null {
    return this.#pending?.label ?? null
  }

  /** The same once it has taken so long that it is worth to be shown. */
  get longLabel(): string | null {
    return this.#isLong ? this.label : null
  }

  /** Whether an edit moves colours that are sought within limits. */
  isSlow(before: Project, after: Project): boolean {
    const isMoved =
      before.layout !== after.layout ||
      before.colourways !== after.colourways ||
      before.yarns !== after.yarns ||
      before.made !== after.made
    return isMoved && kindOf(after).motifsAbout(after) >= MANY && [before, after].some(isLimited)
  }

  /** Does something when the change that is worked out is there. */
  queue(act: () => void): void {
    this.#later.push(act)
  }

  hold(label: string, before: Project, after: Project, deliver: Deliver): void {
    const pending = (this.#pending = { label })
    const timer = setTimeout(() => {
      if (this.#pending === pending) this.#isLong = true
    }, LONG)
    void this.#background
      .hold(before, after)
      .then((found) => {
        if (this.#pending !== pending) return
        this.#end()
        // Where it cannot be found out the edit is not lost for it.
        deliver(found ? withEdit(after, found.edit) : after, found?.lost ?? null)
        // Each of them may have to be worked out in its turn: the rest waits on.
        const waiting = this.#later
        this.#later = []
        for (const act of waiting) act()
      })
      .finally(() => clearTimeout(timer))
  }

  /** Takes back what is worked out, and what waits for it; answers whether there was any. */
  cancel(): boolean {
    const was = this.#pending !== null
    this.#end()
    this.#later = []
    return was
  }

  #end(): void {
    this.#pending = null
    this.#isLong = false
  }
}

function isLimited(project: Project): boolean {
  const fill = blanketOf(project)?.cells?.fill
  if (!fill) return false
  const hasLimit = (limits: Readonly<Record<string, number>> | undefined) =>
    Object.values(limits ?? {}).some(isUsableOrZero)
  return fill.withinStash === true || hasLimit(fill.most) || hasLimit(fill.mostGrams)
}
