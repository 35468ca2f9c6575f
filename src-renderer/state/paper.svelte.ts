/** What is printed, and the page of it that is looked at. Not part of the project, and not undone. */
import { SvelteSet } from 'svelte/reactivity'
import type { HostBridge, PagePreview, PaperChoice, Settings } from '../../shared-types/bridge'
import type { Paper, SheetStyle, Terms } from '../../shared-types/project'
import type { LabelCount, OptionalPage, SheetName } from '../../shared-types/sheets'
import { capital } from '../../src-core/figures/words'
import { motifAlone, motifsAlone } from '../../src-core/plans/alone'
import { pagesLeftOut } from '../../src-core/progress/for-buyers'
import type { DocumentState } from './document.svelte'
import type { PaperOfKind } from '../kinds/kind'
import { kindOf } from '../kinds/kinds'
import { isMade, offersOf, sheetsOf } from './paper-offers'
import type { Offer } from './paper-offers'

/** A page is asked for when the hand rests this long (ms). */
const REST = 350

export class PaperState {
  readonly #bridge: HostBridge
  readonly #document: DocumentState
  readonly #settingsOf: () => Settings
  /** The sheets that were chosen last. */
  chosen = $state<Offer>('main')
  labels = $state<LabelCount>('page')
  /** Of which motif the pattern is printed; the first where it is gone or none was chosen. */
  ownMotif = $state('')
  /** Names of what editions are saved in; they stay ticked after saving. */
  readonly editions = new SvelteSet<string>(['us', 'uk'])
  /** Pages that are left out this time; null as long as the house style says. */
  ownLeaveOut = $state.raw<readonly OptionalPage[] | null>(null)
  /** A template for the right side, or mirrored for the back. */
  reverse = $state(false)
  /** The page that is wanted, from 1. */
  wanted = $state(1)
  /** The page that is shown; it may still be one of the project before. */
  page = $state.raw<PagePreview | null>(null)
  /** Its picture. */
  source = $state('')
  /** Why the page could not be made. */
  problem = $state('')
  /** The page fills the middle of the window. */
  isLarge = $state(false)
  /** It did until just now: the keyboard goes back to where it was enlarged. */
  wasLarge = false
  #asked = 0
  #lastKey = ''

  constructor(bridge: HostBridge, document: DocumentState, settingsOf: () => Settings) {
    this.#bridge = bridge
    this.#document = document
    this.#settingsOf = settingsOf
  }

  /** What the kind of layout prints. */
  get own(): PaperOfKind {
    return kindOf(this.#document.project).paper
  }

  get offers() {
    return offersOf(this.own, this.#document.plan)
  }

  get offer() {
    return this.offers.find(({ value }) => value === this.chosen) ?? this.offers[0]!
  }

  /** The motifs of which a pattern can be printed. */
  get motifs() {
    return motifsAlone(this.#document.project)
  }

  get motif(): string {
    const { motifs, ownMotif } = this
    return (motifs.find(({ id }) => id === ownMotif) ?? motifs[0])?.id ?? ''
  }

  get paper(): Paper {
    return this.#document.project.sheet?.paper ?? this.#settingsOf().paper
  }

  get style(): SheetStyle {
    return this.#document.project.sheet?.style ?? 'colour'
  }

  get terms(): Terms {
    return this.#document.settled.sheet.terms
  }

  /** Whether a title page comes first: as the project says, else as the house style. */
  get titlePage(): boolean {
    return this.#document.project.sheet?.titlePage ?? this.#settingsOf().house.titlePage
  }

  /** Pages that are left out: as they were chosen here, else as the house style says, and as a buyer need not see them. */
  get leaveOut(): readonly OptionalPage[] {
    const { leaveOut: house } = this.#settingsOf().house
    return pagesLeftOut({ chosen: this.ownLeaveOut, house, isForBuyer: this.isForBuyer })
  }

  /** Whether the pages go to somebody else: with a kit, or as a pattern with a title page. */
  get isForBuyer(): boolean {
    return this.titlePage || this.offer.value === 'pattern' || Boolean(this.#document.plan.kit)
  }

  get isTemplate(): boolean {
    return this.own.isTemplate && isMade(this.offer.value)
  }

  /** What preview, print and export are asked for, by button, menu and key alike. */
  get choice(): PaperChoice & { readonly paper: Paper } {
    const { offer, paper, style, terms } = this
    const named = sheetsOf(offer.value, this.#document.plan)
    const sheets = named && this.titlePage && offer.value === 'main' ? (['title', ...named] as const) : named
    return {
      paper,
      style,
      terms,
      ...(sheets ? { sheets } : {}),
      ...(offer.value === 'labels' ? { labels: this.labels } : {}),
      ...(this.ownLeaveOut ? { leaveOut: this.ownLeaveOut } : {}),
      ...(this.isTemplate && this.reverse ? { reverse: true } : {}),
    }
  }

  /** The text that sheets are printed from: of a pattern alone that of its motif, else the project's as it is. */
  textFor(text: string, sheets: readonly SheetName[] | undefined): string {
    return sheets?.includes('pattern') ? JSON.stringify(motifAlone(this.#document.project, this.motif)) : text
  }

  /** Shows the pattern of a motif. */
  showPattern(motif: string): void {
    this.ownMotif = motif
    this.choose('pattern')
  }

  choose(offer: Offer): void {
    this.chosen = offer
    this.wanted = 1
  }

  get pageCount(): number {
    return this.page?.pageCount ?? 0
  }

  /** Turns to a page, as far as there are pages. */
  turnTo(page: number): void {
    if (this.page) this.wanted = Math.max(1, Math.min(page, this.pageCount))
  }

  /**
   * Asks for the wanted page once the hand rests; to be called from an effect, which it makes follow the project
   * and the choice. Answers how to give the question up.
   */
  follow(): () => void {
    const project = this.#document.project
    const page = this.wanted
    const choice = this.choice
    // Only the project is waited for: a page that is turned comes at once, and so does the first.
    const { motif } = this
    const key = JSON.stringify([page, choice, motif, this.#settingsOf().house, this.#settingsOf().fonts])
    const wait = key === this.#lastKey ? REST : 0
    this.#lastKey = key
    const text = (): string => this.textFor(JSON.stringify(project), choice.sheets)
    const timer = setTimeout(() => void this.#ask(text(), page, choice), wait)
    return () => clearTimeout(timer)
  }

  async #ask(text: string, page: number, choice: PaperChoice): Promise<void> {
    const turn = ++this.#asked
    const answer = await this.#bridge.previewPage({ text, page, ...choice })
    // A later question overtook this one.
    if (turn !== this.#asked || answer.outcome === 'cancelled') return
    if (answer.outcome === 'refused') {
      this.problem = `${capital(answer.problem.message)} ${answer.problem.mend}`
      return
    }
    this.problem = ''
    this.page = answer.value
    if (this.source) URL.revokeObjectURL(this.source)
    this.source = URL.createObjectURL(new Blob([answer.value.svg], { type: 'image/svg+xml' }))
    if (page > answer.value.pageCount) this.wanted = answer.value.pageCount
  }
}
