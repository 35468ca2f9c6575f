/**
 * The desktop's main process. The order of the steps matters: the scheme and the sandbox come before the app
 * is ready, the handlers before the first window that may call them.
 */
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { app, dialog, Menu, nativeTheme } from 'electron'
import { version } from '../../package.json'
import type { EditState, Outcome, RecentEntry } from '../../shared-types/bridge'
import type { CommandId } from '../../shared-types/commands'
import { oneLine } from '../../src-core/letters/one-line'
import { projectFiles, writeAtomically } from '../documents/session/project-files'
import { builtIn } from '../host/build'
import { dataFolderIn, platformName, programFolder } from '../host/data-folder'
import { examples } from '../host/examples'
import { Host } from '../host/host'
import { licencesIn } from '../host/licences'
import { createPaper } from '../host/paper'
import { archiveAt } from './archive'
import { filesFromArguments } from './arguments'
import { desktopCaller } from './caller'
import { askForProject, askToCloseUnsaved, tellProblem } from './dialogs'
import { setupHandlers } from './handlers'
import { menuTemplate } from './menu-template'
import { mayRun } from './profile'
import { registerScheme, setupProtocol } from './protocol'
import { setupSecurity } from './security'
import { closeDoors } from './switches'
import { WindowPlaceStore } from './window-place'
import { Windows } from './windows'

const platform = platformName(process.platform)
const forDevelopers = !app.isPackaged

// Every page is sandboxed, and nothing later can undo it. Only where the whole sandbox of the system is off by
// a switch (tests as root, which it refuses) would this keep the app from starting.
if (!app.commandLine.hasSwitch('no-sandbox')) app.enableSandbox()
registerScheme()
closeDoors(app.isPackaged, app.commandLine)
// A folder given by a switch (a test, a second profile) wins over the program's own.
const isElsewhere = app.commandLine.hasSwitch('user-data-dir')
const home = isElsewhere ? app.getPath('userData') : programFolder()
if (!isElsewhere) app.setPath('userData', home)

// What the system asks for before the app is ready waits here.
let waiting: string[] | null = filesFromArguments(process.argv, process.cwd(), app.getAppPath())
let openFile = (path: string) => void waiting?.push(path)
app.on('open-file', (event, path) => {
  event.preventDefault()
  openFile(path)
})

if (mayRun(home)) void app.whenReady().then(run).catch(giveUp)
else app.quit()

/** Says why nothing is shown and ends: a program without a window that keeps its lock would bar the next start. */
function giveUp(error: unknown): void {
  dialog.showErrorBox('Petalyard could not start', error instanceof Error ? error.message : String(error))
  app.exit(1)
}

async function run(): Promise<void> {
  const dataFolder = dataFolderIn(home)
  const editStates = new Map<string, EditState>()
  let recent: readonly RecentEntry[] = []
  let front: string | null = null
  let quitting = false

  const host = new Host({
    dataFolder,
    facts: { host: 'desktop', platform, version, hasMenu: true },
    locale: app.getLocale(),
    files: projectFiles,
    writeAtomically,
    examples,
    paper: createPaper(join(__dirname, 'paper.cjs')),
    licences: () => licencesIn([__dirname, join(__dirname, '..', 'renderer')]),
    build: () =>
      app.isPackaged ? archiveAt(app.getAppPath()) : builtIn([__dirname, join(__dirname, '..', 'renderer')]),
    announce: (projectId, event, payload) => {
      windows.announce(projectId, event, payload)
      if (event === 'keeping') windows.showKeeping(projectId)
      if (event === 'recent') void refreshRecent()
      if (event === 'settings') {
        nativeTheme.themeSource = host.settings.current.theme
        windows.zoomTo(host.settings.current.zoom)
      }
    },
  })

  const places = new WindowPlaceStore(dataFolder, host.own.write)
  const windows = new Windows({
    preload: join(__dirname, 'preload.cjs'),
    icon: platform === 'linux' ? iconIn(app.getAppPath()) : null,
    locale: app.getLocale(),
    isMac: platform === 'mac',
    places,
    forDevelopers,
    keepingOf: (id) => host.session(id)?.keeping ?? null,
    pathOf: (id) => host.session(id)?.path ?? null,
    settleProject: async (id) => (await host.session(id)?.settle()) ?? null,
    endProject: (id) => host.close(id),
    askToCloseUnsaved: async (window, problem) => {
      const isClosing = await askToCloseUnsaved(window, problem)
      if (!isClosing) quitting = false
      return isClosing
    },
    onFront: (id) => {
      front = id
      refreshMenu()
    },
    onFocus: (id) => {
      // While everything is closed, each window comes to the front once.
      if (!quitting) host.use(id)
      void host.lookAtDisk()
    },
    onClosed: () => {
      if (front !== null && !windows.windowOf(front)) front = null
      refreshMenu()
    },
  })

  const show = (opened: Outcome<string>) => {
    if (opened.outcome === 'done') windows.show(opened.value)
    else if (opened.outcome === 'refused') void tellProblem(windows.front(), opened.problem)
  }

  function refreshMenu(): void {
    const state = (front && editStates.get(front)) || { undo: null, redo: null, terms: 'US' }
    const hasWindow = windows.count > 0
    const template = menuTemplate(
      { platform, recent, ...state, hasWindow, forDevelopers },
      {
        command: (id: CommandId) => {
          const projectId = front ?? host.openIds.at(-1)
          if (projectId) windows.announce(projectId, 'command', id)
        },
        openRecent: (id) => void host.openRecent(id).then(show),
        withoutWindow: (id) => void withoutWindow(id),
      },
    )
    Menu.setApplicationMenu(Menu.buildFromTemplate(template))
  }

  async function refreshRecent(): Promise<void> {
    recent = await host.recent.list().catch(() => recent)
    refreshMenu()
  }

  async function withoutWindow(id: 'new' | 'open'): Promise<void> {
    if (id === 'new') return windows.show(host.openBlank())
    const path = await askForProject(null, 'Open a Project')
    if (path !== null) show(await host.openPath(path))
  }

  /** Opens the files; with none, or none that opens, what was open last. */
  async function openAll(paths: readonly string[]): Promise<void> {
    for (const path of paths) show(await host.openPath(path))
    if (windows.count === 0) windows.show(await host.openAtStart())
  }

  await host.start()
  if (forDevelopers && host.own.problem === null)
    process.stdout.write(
      `Projects are kept in ${oneLine(dataFolder)}; saved files stay where you put them.\n`,
    )
  await places.load()
  nativeTheme.themeSource = host.settings.current.theme
  windows.zoomTo(host.settings.current.zoom)
  setupProtocol(join(__dirname, '..', 'renderer'), host.build)
  setupSecurity()
  setupHandlers(host, {
    callerOf: ({ sender }) => {
      const projectId = windows.projectOf(sender)
      const window = projectId === null ? null : windows.windowOf(projectId)
      if (projectId === null || window === null) return null
      return desktopCaller(projectId, window, {
        show: (id) => {
          const isReplaced = host.session(projectId)?.isUntouched === true && id !== projectId
          windows.show(id)
          // An example or an empty page that nobody touched makes room for what was opened from it.
          if (isReplaced) void windows.close(projectId)
        },
        closeWindow: () => void windows.close(projectId),
        showEditState: (state) => {
          editStates.set(projectId, state)
          if (front === projectId) refreshMenu()
        },
      })
    },
    flushed: (projectId) => windows.flushed(projectId),
  })

  app.on('second-instance', (_event, argv, folder) => {
    const paths = filesFromArguments(argv, folder, app.getAppPath())
    const shown = front ?? host.openIds.at(-1)
    if (paths.length === 0 && shown) windows.show(shown)
    else void openAll(paths)
  })
  app.on('activate', () => {
    if (windows.count === 0) void openAll([])
  })
  app.on('before-quit', () => {
    quitting = true
  })
  app.on('window-all-closed', () => {
    if (platform !== 'mac' || quitting) app.quit()
  })
  // A terminal that is closed, or a system that shuts down, ends the app as its menu does.
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => app.quit())
  let isStopped = false
  app.on('will-quit', (event) => {
    if (isStopped) return
    event.preventDefault()
    void host.stop().finally(() => {
      isStopped = true
      app.quit()
    })
  })

  const asked = waiting ?? []
  waiting = null
  openFile = (path) => void openAll([path])
  await refreshRecent()
  const interrupted = await host.openInterrupted()
  for (const id of interrupted) windows.show(id)
  await openAll(asked)
}

/** Of a packed program; on other systems the program itself carries it. */
function iconIn(folder: string): string | null {
  const path = join(folder, 'out', 'renderer', 'icon.png')
  return existsSync(path) ? path : null
}
