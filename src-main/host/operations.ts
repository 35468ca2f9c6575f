/**
 * One row per thing that the window may ask for: the shape its payload must have, and what is done. Both hosts
 * answer from this table; nothing that is not in it can be asked for.
 */
import { lstat, realpath } from 'node:fs/promises'
import { z } from 'zod'
import type {
  ExportDone,
  OperationName,
  OperationPayload,
  OperationValue,
  Outcome,
  Progress,
} from '../../shared-types/bridge'
import { CANCELLED, done, refused } from '../../shared-types/bridge'
import { FONT_LIMITS } from '../../shared-types/fonts'
import { PAPERS } from '../../shared-types/project'
import type { Project } from '../../shared-types/project'
import { finding, spelledValue } from '../../src-core/findings/finding'
import { asNewPlan } from '../../src-core/progress/new-plan'
import { oneLine } from '../../src-core/letters/one-line'
import { isWriteRefusal, whyNotWritten } from '../documents/replace-file'
import type { ProjectSession } from '../documents/session/session'
import { UpdatedError } from './build'
import { exportFile } from './export-names'
import { FontProblem } from './fonts'
import type { Host } from './host'
import { change, entry, exportSchema, PAGES_AT_MOST, paperChoice, text, words } from './payloads'
import type { Caller, PlaceToSave } from './ports'
import { settingsChangeSchema } from './settings'

interface Call {
  readonly host: Host
  readonly caller: Caller
  readonly session: ProjectSession
}

interface Operation<Name extends OperationName> {
  readonly payload: z.ZodType<OperationPayload<Name>>
  run(payload: OperationPayload<Name>, call: Call): Promise<Outcome<OperationValue<Name>>>
}

export const OPERATIONS: { readonly [Name in OperationName]: Operation<Name> } = {
  facts: {
    payload: z.null(),
    run: async (_, { host }) => done({ ...host.ports.facts, firstStart: host.settings.isFirstStart }),
  },
  currentProject: {
    payload: z.null(),
    run: async (_, { session }) => done(session.opened()),
  },
  keepProject: {
    payload: change,
    run: async (payload, { session }) => session.keep(payload),
  },
  saveProject: {
    payload: change,
    run: async (payload, call) => {
      if (call.session.path !== null) return saveAndFollow(payload, call)
      // Kept first: the dialog may stand open for long, and the name may just have been changed.
      const kept = await call.session.keep(payload)
      if (isInTheWay(kept)) return kept
      const taken: string[] = []
      for (;;) {
        const place = await call.caller.placeToSave(call.session.keeping.name, taken)
        if (place === null) return CANCELLED
        const saved = await saveTo(place, payload, call)
        // What is there after nothing could be written is somebody else's.
        if (saved.outcome === 'done' || !place.isFree || !(await isThere(place.path))) return saved
        taken.push(place.path)
      }
    },
  },
  saveProjectAs: {
    payload: change,
    run: async (payload, call) => {
      const kept = await call.session.keep(payload)
      if (isInTheWay(kept)) return kept
      const place = await call.caller.placeToSaveAs(call.session.keeping.name)
      if (place === null) return CANCELLED
      if ('path' in place) return saveTo({ ...place, isFree: false }, payload, call)
      const written = await place.copy.write(new TextEncoder().encode(call.session.text))
      return written.ok ? done(call.session.keeping) : refused(cannotWrite(place.copy.where, written.reason))
    },
  },
  duplicateProject: {
    payload: change,
    run: (payload, call) => copyOf(payload.text, call),
  },
  duplicateAsPlan: {
    payload: change,
    run: (payload, call) => copyOf(changed(payload.text, asNewPlan), call),
  },
  newProject: {
    payload: z.union([
      z.strictObject({ from: z.literal('blank') }),
      z.strictObject({ from: z.literal('example'), name: z.string().min(1).max(128) }),
    ]),
    run: async (payload, { host, caller }) =>
      shown(payload.from === 'blank' ? done(host.openBlank()) : await host.openExample(payload.name), caller),
  },
  openProject: {
    payload: z.null(),
    run: async (_, { host, caller }) => {
      const chosen = await caller.chooseProject('open')
      if (chosen === null) return CANCELLED
      const opened =
        'path' in chosen
          ? await host.openPath(chosen.path)
          : await host.openText(chosen.text, chosen.name, 'file')
      return shown(opened, caller)
    },
  },
  openRecent: {
    payload: entry,
    run: async (payload, { host, caller }) => shown(await host.openRecent(payload.id), caller),
  },
  forgetRecent: {
    payload: entry,
    run: async (payload, { host }) => host.forgetRecent(payload.id),
  },
  listRecent: {
    payload: z.null(),
    run: async (_, { host }) => done(await host.recent.list()),
  },
  listExamples: {
    payload: z.null(),
    run: async (_, { host }) => done(await host.ports.examples.list()),
  },
  takeFromProject: {
    payload: z.null(),
    run: async (_, { host, caller }) => {
      const chosen = await caller.chooseProject('take')
      if (chosen === null) return CANCELLED
      const read =
        'path' in chosen
          ? await host.ports.files.open(chosen.path)
          : host.ports.files.check(chosen.text, chosen.name)
      return read.ok ? done({ name: read.title || 'Untitled', text: read.text }) : refused(read.problem)
    },
  },
  answerDisk: {
    payload: change.extend({ answer: z.enum(['keep-mine', 'take-theirs']) }),
    run: async (payload, { session }) => session.answerDisk(payload),
  },
  previewPage: {
    payload: z.strictObject({
      text,
      page: z.number().int().min(1).max(PAGES_AT_MOST),
      purpose: z.enum(['look', 'print']).optional(),
      ...paperChoice,
    }),
    run: async (payload, { host, session }) => {
      const checked = host.ports.files.check(payload.text, session.keeping.name)
      if (!checked.ok) return refused(checked.problem)
      const asked = {
        ...named(payload, checked.title, session),
        house: host.settings.current.house,
        fonts: host.fonts.places,
      }
      const page = await host.paper.preview(asked, session.id)
      return page ? done(page) : CANCELLED
    },
  },
  printSheets: {
    payload: z.strictObject({ paper: z.enum(PAPERS) }),
    run: async ({ paper }, { caller, session }) => {
      const printed = await caller.print(paper)
      if (printed === 'printed') return done(null)
      if (printed === 'cancelled') return CANCELLED
      return refused(finding('app/cannot-print', session.keeping.name, { reason: printed.reason }))
    },
  },
  settings: {
    payload: z.null(),
    run: async (_, { host }) => done(host.settings.current),
  },
  changeSettings: {
    payload: settingsChangeSchema,
    run: async (payload, { host }) => done(await host.changeSettings(payload)),
  },
  addFont: {
    payload: z.strictObject({
      name: z.string().max(255),
      data: z.base64().max(Math.ceil(FONT_LIMITS.bytes / 3) * 4),
      face: z.number().int().min(1).max(10_000).nullable(),
    }),
    run: async ({ name, data, face }, { host }) => {
      try {
        const added = await host.fonts.add(Buffer.from(data, 'base64'), face)
        return done('choose' in added ? added : { settings: added })
      } catch (error) {
        if (!(error instanceof FontProblem)) throw error
        return refused(finding('app/font-refused', oneLine(name), { reason: error.message }))
      }
    },
  },
  removeFont: {
    payload: z.strictObject({ id: z.string().max(64) }),
    run: async ({ id }, { host }) => done(await host.fonts.remove(id)),
  },
  showEditState: {
    payload: z.strictObject({ undo: words.nullable(), redo: words.nullable(), terms: z.enum(['US', 'UK']) }),
    run: async (payload, { caller }) => {
      caller.showEditState(payload)
      return done(null)
    },
  },
  licences: {
    payload: z.null(),
    run: async (_, { host }) => done(await host.ports.licences()),
  },
  showEngineLicences: {
    payload: z.null(),
    run: async (_, { caller, session }) => {
      const reason = await caller.showEngineLicences()
      if (reason === null) return done(null)
      return refused(
        finding('app/cannot-show', session.keeping.name, { what: spelledValue('its licences'), reason }),
      )
    },
  },
  closeWindow: {
    payload: z.null(),
    run: async (_, { caller }) => {
      caller.closeWindow()
      return done(null)
    },
  },
}

/** Answers one message of a window. Never throws: what goes wrong becomes a refusal with its words. */
export async function answer(
  host: Host,
  caller: Caller,
  name: string,
  payload: unknown,
): Promise<Outcome<unknown>> {
  const session = host.session(caller.projectId)
  if (!session) return badMessage(name, 'its project is closed')
  if (!Object.hasOwn(OPERATIONS, name)) return badMessage(name, 'there is no such operation')
  const operation = OPERATIONS[name as OperationName] as Operation<OperationName>
  const read = operation.payload.safeParse(payload)
  if (!read.success) return badMessage(name, z.prettifyError(read.error).split('\n')[0] ?? 'wrong shape')
  session.use()
  try {
    return await operation.run(read.data, { host, caller, session })
  } catch (error) {
    const project = session.keeping.name
    if (error instanceof UpdatedError) return refused(error.finding)
    if (isWriteRefusal(error))
      return refused(cannotWrite(project, `${project} could not be written: ${whyNotWritten(error)}.`))
    return refused(finding('app/failed', project, { task: `'${name}'`, reason: reasonOf(error) }))
  }
}

/** Computes an export, asks for its place first, writes it whole. Aborting ends it with 'cancelled'. */
export async function runExport(
  host: Host,
  caller: Caller,
  payload: unknown,
  onProgress: (progress: Progress) => void,
  signal: AbortSignal,
): Promise<Outcome<ExportDone>> {
  const session = host.session(caller.projectId)
  if (!session) return badMessage('exportProject', 'its project is closed')
  const request = exportSchema.safeParse(payload)
  if (!request.success)
    return badMessage('exportProject', z.prettifyError(request.error).split('\n')[0] ?? '')
  const name = session.keeping.name
  const checked = host.ports.files.check(request.data.text, name)
  if (!checked.ok) return refused(checked.problem)
  const file = exportFile(name, request.data)
  try {
    const target = await caller.placeToExport(file.name, file.type)
    if (target === null || signal.aborted) return CANCELLED
    const { house } = host.settings.current
    const asked = { ...named(request.data, checked.title, session), house, fonts: host.fonts.places }
    const made = await host.paper.make(asked, onProgress, signal)
    if (signal.aborted) return CANCELLED
    const written = await target.write(made.bytes)
    if (!written.ok) return refused(cannotWrite(target.where, written.reason))
    return done({ where: target.where, bytes: made.bytes.length, pages: made.pages })
  } catch (error) {
    if (signal.aborted) return CANCELLED
    if (error instanceof UpdatedError) return refused(error.finding)
    return refused(finding('app/failed', name, { task: 'the export', reason: reasonOf(error) }))
  }
}

/** Saves into the project's file; one that has a name only because there was no title yet gets that of the title. */
async function saveAndFollow(
  payload: OperationPayload<'saveProject'>,
  { host, session, caller }: Call,
): Promise<Outcome<OperationValue<'saveProject'>>> {
  const saved = await session.save(payload)
  const path = session.path
  const place =
    saved.outcome === 'done' && path !== null ? await caller.placeToFollow?.(path, session.title) : null
  if (path === null || !place || !(await session.renameFile(place))) return saved
  await host.renamed(path, session.path ?? place, session.title)
  return done(session.keeping)
}

async function saveTo(
  { path, isFree }: PlaceToSave,
  payload: OperationPayload<'saveProject'>,
  { host, session }: Call,
): Promise<Outcome<OperationValue<'saveProject'>>> {
  const target = await realpath(path).catch(() => path)
  for (const id of host.openIds)
    if (id !== session.id && host.session(id)?.path === target)
      return refused(finding('app/open-elsewhere', session.keeping.name))
  const saved = await (isFree ? session.saveToFree(path, payload) : session.saveTo(path, payload))
  if (saved.outcome === 'done') await host.remember(session.path ?? path, session.title)
  return saved
}

const isThere = (path: string): Promise<boolean> =>
  lstat(path).then(
    () => true,
    () => false,
  )

async function shown(opened: Outcome<string>, caller: Caller): Promise<Outcome<null>> {
  if (opened.outcome !== 'done') return opened
  await caller.show(opened.value)
  return done(null)
}

/** A change that was not taken is not saved elsewhere either; one that is in memory alone just needs that. */
const isInTheWay = (kept: Outcome<unknown>): boolean =>
  kept.outcome === 'refused' && kept.problem.code !== 'app/cannot-keep'

function badMessage(operation: string, reason: string) {
  return refused(
    finding('app/bad-message', 'the window', { operation: String(operation).slice(0, 60), reason }),
  )
}

function cannotWrite(file: string, reason: string) {
  return finding('app/cannot-write', file, { reason })
}

/** The same text with another title; a text that is no project is left to the check that follows. */
const retitled = (projectText: string, title: string): string =>
  changed(projectText, (project) => ({ ...project, title }))

/** The text of a project after a change; as it is where it is none. */
function changed(projectText: string, change: (project: Project) => Project): string {
  try {
    const project: unknown = JSON.parse(projectText)
    return typeof project === 'object' && project !== null
      ? JSON.stringify(change(project as Project), null, 2)
      : projectText
  } catch {
    return projectText
  }
}

/** What a project calls itself; '' where it has no title. */
function titleIn(projectText: string): string {
  let title = ''
  changed(projectText, (project) => {
    if (typeof project.title === 'string') title = project.title.trim()
    return project
  })
  return title
}

/** Opens a copy in a window of its own, called after the title, else after the file. */
async function copyOf(projectText: string, { host, caller, session }: Call): Promise<Outcome<null>> {
  const title = `Copy of ${titleIn(projectText) || session.keeping.name}`
  const opened = await host.openText(retitled(projectText, title), title, 'duplicate')
  return shown(opened, caller)
}

/** A request for paper: what has no title is called by its file there, as in the window. */
const named = <Request extends { readonly text: string }>(
  request: Request,
  title: string,
  { path, keeping }: ProjectSession,
): Request =>
  title.trim() !== '' || path === null ? request : { ...request, text: retitled(request.text, keeping.name) }

function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error)
}
