/** What the numbers typed at the start come to: a plan, or for a blanket the arrangements to choose from. */
import type { Finding } from '../../shared-types/finding'
import type { MotifAccount, Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import type { Proposals } from '../../src-core/layout/proposals'
import { KINDS } from '../kinds/kinds'
import type { Background } from '../state/background'
import { laidAsProposed } from '../state/resize'
import type { Made } from './own-motif'

interface Shown {
  /** What was asked for; `project` and `plan` are those of the picture. */
  readonly asked: Project
  readonly project: Project
  readonly plan: Plan | null
  readonly proposals: Proposals | null
  readonly findings: readonly Finding[]
}

export class StartPreview {
  readonly #background: Background
  #shown = $state.raw<Shown | null>(null)
  /** Which of the proposals is chosen, from 0. */
  chosen = $state(0)

  constructor(background: Background) {
    this.#background = background
  }

  get proposals(): Proposals | null {
    return this.#shown?.proposals ?? null
  }

  get picture(): { readonly project: Project; readonly plan: Plan } | null {
    const shown = this.#shown
    if (shown?.proposals) return shown.proposals.proposals[this.index] ?? null
    return shown?.plan ? { project: shown.project, plan: shown.plan } : null
  }

  /** Whether what is shown answers another question than this one: that is still worked on. */
  isBehind(project: Project): boolean {
    return this.#shown !== null && this.#shown.asked !== project
  }

  get account(): MotifAccount | null {
    return this.picture?.plan.motif ?? this.picture?.plan.accounts[0] ?? null
  }

  get problem(): Finding | undefined {
    return this.#shown?.findings.find(({ severity }) => severity === 'error')
  }

  /** Index of the proposal that is chosen; the first where the one chosen before is no longer there. */
  get index(): number {
    return this.chosen < (this.proposals?.proposals.length ?? 0) ? this.chosen : 0
  }

  /** Asks beside the window; what is asked next overtakes it. */
  async ask(asked: Project, made: Made): Promise<void> {
    const wish = KINDS[made.kind].start.wish(made)
    if (wish) {
      const proposals = await this.#background.proposals(asked, wish)
      if (proposals)
        this.#shown = { asked, project: asked, plan: null, proposals, findings: proposals.findings }
      return
    }
    const plan = await this.#background.plan('picture', asked)
    if (plan) this.#shown = { asked, project: asked, plan, proposals: null, findings: plan.findings }
  }

  /** The project to start with: as chosen, or as proposed first where the answer has not come yet. */
  take(project: Project, made: Made): Project {
    if (!KINDS[made.kind].start.wish(made)) return project
    const proposal = this.#shown?.asked === project ? this.proposals?.proposals[this.index] : undefined
    return proposal?.project ?? laidAsProposed(project)
  }
}
