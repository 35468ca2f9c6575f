/** A host that lives in memory alone, for component tests. */
import type {
  ExportDone,
  ExportRequest,
  FontAdded,
  HostBridge,
  HostEvents,
  HostFacts,
  Job,
  Keeping,
  LicenceEntry,
  NewFont,
  OpenProject,
  Outcome,
  Progress,
  Settings,
} from '../../shared-types/bridge'
import { CANCELLED, done } from '../../shared-types/bridge'
import { NO_HOUSE } from '../../shared-types/house'
import type { Project } from '../../shared-types/project'

interface MemoryHost {
  readonly bridge: HostBridge
  /** What the window handed over, oldest first. */
  readonly kept: string[]
  /** What it asked for beside keeping: operation and payload. */
  readonly asked: { readonly name: string; readonly payload: unknown }[]
  /** Tells the window something. */
  emit<Name extends keyof HostEvents>(name: Name, value: HostEvents[Name]): void
  /** Lets the export under way come to its end. */
  finishExport(): void
}

export interface MemoryChoice {
  readonly facts?: Partial<HostFacts>
  readonly settings?: Partial<Settings>
  readonly origin?: OpenProject['origin']
  readonly licences?: readonly LicenceEntry[]
  /** What `addFont` answers. */
  readonly addFont?: (font: NewFont) => Outcome<FontAdded>
  /** What `takeFromProject` answers. */
  readonly other?: Project
}

const KEEPING: Keeping = {
  name: 'Untitled',
  place: 'app',
  where: 'in memory',
  revision: 0,
  savedRevision: 0,
  savedAt: null,
  problem: null,
  folderProblem: null,
  disk: 'same',
}

/** What somebody who has chosen nothing starts with. */
export const SETTINGS: Settings = {
  theme: 'light',
  zoom: 100,
  units: 'metric',
  terms: 'US',
  hand: 'right',
  currency: 'EUR',
  paper: 'A4',
  house: NO_HOUSE,
  fonts: [],
}

/** A bridge over one project in memory. */
export function memoryHost(project: Project, choice: MemoryChoice = {}): MemoryHost {
  const listeners = new Map<string, Set<(value: never) => void>>()
  const kept: string[] = []
  const asked: { name: string; payload: unknown }[] = []
  const { units, terms, hand, currency } = { ...SETTINGS, ...project }
  let settings: Settings = {
    ...SETTINGS,
    // Whoever made the project has these settings, too.
    ...{ units, terms, hand, currency },
    ...(project.sheet?.paper && { paper: project.sheet.paper }),
    ...choice.settings,
  }
  let keeping: Keeping = { ...KEEPING, name: project.title ?? 'Untitled' }
  let finish: (() => void) | null = null
  const on =
    <Name extends keyof HostEvents>(name: Name) =>
    (listener: (value: HostEvents[Name]) => void) => {
      const set = listeners.get(name) ?? new Set()
      listeners.set(name, set)
      set.add(listener as (value: never) => void)
      return () => void set.delete(listener as (value: never) => void)
    }
  const emit = <Name extends keyof HostEvents>(name: Name, value: HostEvents[Name]): void => {
    for (const listener of listeners.get(name) ?? []) listener(value as never)
  }
  const keep = async (change: { readonly revision: number; readonly text: string }) => {
    kept.push(change.text)
    keeping = { ...keeping, revision: change.revision, savedRevision: change.revision }
    emit('keeping', keeping)
    return done(keeping)
  }
  const note =
    <T>(name: string, answer: () => Outcome<T>) =>
    async (payload?: unknown): Promise<Outcome<T>> => {
      asked.push({ name, payload })
      return answer()
    }
  const open = (): OpenProject => ({
    text: JSON.stringify(project),
    origin: choice.origin ?? 'example',
    nextRevision: 1,
    findings: [],
    keeping,
  })

  const bridge: HostBridge = {
    facts: async () =>
      done({
        host: 'browser',
        platform: 'linux',
        version: '0.0.0',
        firstStart: false,
        hasMenu: false,
        ...choice.facts,
      }),
    currentProject: async () => done(open()),
    keepProject: keep,
    saveProject: keep,
    saveProjectAs: keep,
    duplicateProject: note('duplicateProject', () => done(null)),
    duplicateAsPlan: note('duplicateAsPlan', () => done(null)),
    newProject: note('newProject', () => done(null)),
    openProject: note('openProject', () => done(null)),
    openRecent: note('openRecent', () => done(null)),
    forgetRecent: note('forgetRecent', () => done(null)),
    listRecent: async () => done([]),
    listExamples: async () => done([]),
    takeFromProject: note('takeFromProject', () =>
      choice.other
        ? done({ name: choice.other.title ?? 'Other', text: JSON.stringify(choice.other) })
        : CANCELLED,
    ),
    answerDisk: note('answerDisk', () => done(open())),
    previewPage: async (request) =>
      done({
        svg: `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 210 297"><text x="20" y="40">${request.page}</text></svg>`,
        page: request.page,
        pageCount: 3,
        title: 'Overview',
        width: 210,
        height: 297,
      }),
    printSheets: note('printSheets', () => done(null)),
    settings: async () => done(settings),
    changeSettings: async (change) => {
      const { house, ...others } = change
      settings = { ...settings, ...others, house: { ...settings.house, ...house } }
      emit('settings', settings)
      return done(settings)
    },
    addFont: async (font) => {
      asked.push({ name: 'addFont', payload: font })
      const added = choice.addFont?.(font) ?? CANCELLED
      if (added.outcome === 'done' && 'settings' in added.value) {
        settings = added.value.settings
        emit('settings', settings)
      }
      return added
    },
    removeFont: async ({ id }) => {
      settings = { ...settings, fonts: settings.fonts.filter((font) => font.id !== id) }
      emit('settings', settings)
      return done(settings)
    },
    showEditState: async () => done(null),
    licences: async () => done(choice.licences ?? []),
    showEngineLicences: note('showEngineLicences', () => done(null)),
    closeWindow: note('closeWindow', () => done(null)),
    exportProject: (request: ExportRequest, onProgress?: (progress: Progress) => void): Job<ExportDone> => {
      asked.push({ name: 'exportProject', payload: request })
      onProgress?.({ done: 1, total: 3, words: 'Drawing page 1 of 3' })
      let cancel = (): void => undefined
      const finished = new Promise<Outcome<ExportDone>>((resolve) => {
        cancel = () => resolve(CANCELLED)
        finish = () => resolve(done({ where: 'in memory', bytes: 1000, pages: 3 }))
      })
      return { finished, cancel }
    },
    onKeeping: on('keeping'),
    onCommand: on('command'),
    onSettings: on('settings'),
    onRecent: on('recent'),
    onHostGone: on('hostGone'),
    onUpdated: on('updated'),
    onMovedElsewhere: (listener) => on('movedElsewhere')(() => listener()),
    onBeforeClose: () => () => undefined,
  }
  return { bridge, kept, asked, emit, finishExport: () => finish?.() }
}
