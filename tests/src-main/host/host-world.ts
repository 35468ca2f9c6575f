/** A host with real files and a caller whose answers a test chooses. */
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { HostEvents } from '../../../shared-types/bridge'
import { projectFiles, writeAtomically } from '../../../src-main/documents/session/project-files'
import { Host } from '../../../src-main/host/host'
import type { HostPorts } from '../../../src-main/host/host'
import type { Caller, ChosenProject, Paper, Printed, Target } from '../../../src-main/host/ports'
import { projectText, titleOf } from '../documents/session/world'

const EXAMPLE = projectText('Example throw', { notes: 'A throw. For trying out.' })

/** A paper whose pages take a while, and stop when they are told to. */
const slowPaper: Paper = {
  make: async (request, onProgress, signal) => {
    for (let page = 1; page <= 20; page++) {
      onProgress({ done: page, total: 20, words: `page ${page}` })
      await new Promise((resolve) => setTimeout(resolve, 5))
      signal.throwIfAborted()
    }
    return { bytes: new TextEncoder().encode(`%PDF of ${request.kind}`), pages: 20 }
  },
  readFont: async (bytes, face) => {
    const text = new TextDecoder().decode(bytes)
    if (text === 'bad') throw new Error('it is damaged')
    if (text === 'two' && face === null) return { choose: ['One', 'Two'] }
    return { name: text, face: face ?? 1, scripts: ['Hebrew'], covers: '590-5f4' }
  },
  preview: async ({ page, text }) => ({
    svg: '<svg/>',
    page,
    pageCount: 20,
    title: `Overview of ${titleOf(text) || 'Untitled'}`,
    width: 210,
    height: 297,
  }),
  close: async () => undefined,
}

export const LICENCES = [
  { name: 'a-package', version: '1.0.0', licence: 'MIT', text: 'Permission is granted.' },
]

export interface HostWorld {
  readonly folder: string
  readonly host: Host
  readonly announced: {
    readonly project: string
    readonly event: keyof HostEvents
    readonly payload: unknown
  }[]
  end(): Promise<void>
}

export async function makeHost(more: Partial<HostPorts> = {}): Promise<HostWorld> {
  const folder = more.dataFolder ?? (await mkdtemp(join(tmpdir(), 'petalyard-host-')))
  const announced: HostWorld['announced'] = []
  const host = new Host({
    dataFolder: folder,
    facts: { host: 'desktop', platform: 'linux', version: '0.0.0', hasMenu: true },
    locale: 'en-GB',
    files: projectFiles,
    writeAtomically,
    examples: {
      list: async () => [{ name: 'throw', title: 'Example throw', words: 'A throw.' }],
      read: async (name) => (name === 'throw' ? EXAMPLE : null),
    },
    paper: slowPaper,
    licences: async () => LICENCES,
    build: async () => 'of these tests',
    announce: (project, event, payload) => announced.push({ project, event, payload }),
    ...more,
  })
  await host.start()
  return {
    folder,
    host,
    announced,
    end: async () => {
      await host.stop()
      await rm(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 50 })
    },
  }
}

export class TestCaller implements Caller {
  readonly shown: string[] = []
  chosen: ChosenProject | null = null
  place: string | null = null
  target: Target | null = null
  editState: unknown = null
  closed = 0
  cannotShow: string | null = null
  printed: Printed = 'printed'
  readonly printedOn: string[] = []

  constructor(readonly projectId: string) {}

  show = async (id: string) => void this.shown.push(id)
  chooseProject = async () => this.chosen
  placeToSave: Caller['placeToSave'] = async () =>
    this.place === null ? null : { path: this.place, isFree: false }
  placeToSaveAs = async () => (this.place === null ? null : { path: this.place })
  placeToExport = async () => this.target
  print = async (paper: string) => {
    this.printedOn.push(paper)
    return this.printed
  }
  showEngineLicences = async () => this.cannotShow
  closeWindow = () => void this.closed++
  showEditState = (state: unknown) => void (this.editState = state)
}
