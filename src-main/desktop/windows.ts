/** One window per project: made, titled, placed, closed without losing anything. */
import { BrowserWindow, nativeTheme, screen } from 'electron'
import type { WebContents } from 'electron'
import type { HostEvents, Keeping } from '../../shared-types/bridge'
import type { Finding } from '../../shared-types/finding'
import { USUAL_ZOOM } from '../../shared-types/zoom'
import { windowTitle } from '../host/title'
import { BEFORE_CLOSE_CHANNEL, eventChannel } from './channels'
import { WINDOW_URL } from './origin'
import type { WindowPlaceStore } from './window-place'
import { nextPlace, SMALLEST_SIZE } from './window-place'

interface WindowsPorts {
  readonly preload: string
  readonly icon: string | null
  readonly locale: string
  readonly isMac: boolean
  readonly places: WindowPlaceStore
  readonly forDevelopers: boolean
  keepingOf(projectId: string): Keeping | null
  pathOf(projectId: string): string | null
  /** Saves what is not saved yet; the problem is why its file could not be written. */
  settleProject(projectId: string): Promise<Finding | null>
  /** Ends the project; what its file does not have stays in the program's own folder. */
  endProject(projectId: string): Promise<unknown>
  askToCloseUnsaved(window: BrowserWindow, problem: Finding): Promise<boolean>
  /** The window in front changed, or there is none any more. */
  onFront(projectId: string | null): void
  onFocus(projectId: string): void
  onClosed(): void
}

/** The window gets this long to hand over its last change; the one before it is kept already. */
const FLUSH_TIME = 1_500
/** A page that keeps crashing is not reloaded for ever. */
const RELOADS = 3
/** The grounds of the two themes, shown until the page itself is drawn. */
const GROUND = { light: '#f7f2ea', dark: '#1c1a18' }

export class Windows {
  readonly #ports: WindowsPorts
  readonly #windows = new Map<string, BrowserWindow>()
  readonly #flushed = new Map<string, () => void>()
  readonly #closing = new Set<string>()
  #zoom = USUAL_ZOOM

  constructor(ports: WindowsPorts) {
    this.#ports = ports
  }

  get count(): number {
    return this.#windows.size
  }

  /** Shows the window of a project; makes it where there is none. */
  show(projectId: string): void {
    const existing = this.#windows.get(projectId)
    if (existing) {
      if (existing.isMinimized()) existing.restore()
      existing.show()
      existing.focus()
      return
    }
    const screens = [screen.getPrimaryDisplay(), ...screen.getAllDisplays()].map((each) => each.workArea)
    const { maximized, ...place } = nextPlace(this.#ports.places.current, this.#windows.size, screens)
    const window = new BrowserWindow({
      ...place,
      minWidth: SMALLEST_SIZE.width,
      minHeight: SMALLEST_SIZE.height,
      show: false,
      title: 'Petalyard',
      backgroundColor: nativeTheme.shouldUseDarkColors ? GROUND.dark : GROUND.light,
      ...(this.#ports.icon ? { icon: this.#ports.icon } : {}),
      webPreferences: {
        preload: this.#ports.preload,
        sandbox: true,
        contextIsolation: true,
        nodeIntegration: false,
        webviewTag: false,
        zoomFactor: this.#zoom / 100,
        // No word lists either (`security.ts`): there is nothing to check with.
        spellcheck: false,
        devTools: this.#ports.forDevelopers,
      },
    })
    this.#windows.set(projectId, window)
    if (maximized) window.maximize()
    this.#listen(window, projectId)
    this.showKeeping(projectId)
    void window.loadURL(WINDOW_URL)
  }

  /** Shows text and buttons of every window, and of those that come, in this size (percent). */
  zoomTo(zoom: number): void {
    this.#zoom = zoom
    for (const window of this.#windows.values()) this.#zoomed(window)
  }

  #zoomed(window: BrowserWindow): void {
    if (!window.isDestroyed()) window.webContents.setZoomFactor(this.#zoom / 100)
  }

  front(): BrowserWindow | null {
    return BrowserWindow.getFocusedWindow() ?? [...this.#windows.values()].at(-1) ?? null
  }

  projectOf(contents: WebContents): string | null {
    for (const [id, window] of this.#windows)
      if (!window.isDestroyed() && window.webContents === contents) return id
    return null
  }

  windowOf(projectId: string): BrowserWindow | null {
    return this.#windows.get(projectId) ?? null
  }

  announce<Name extends keyof HostEvents>(projectId: string, event: Name, payload: HostEvents[Name]): void {
    const window = this.#windows.get(projectId)
    if (window && !window.isDestroyed()) window.webContents.send(eventChannel(event), payload)
  }

  /** Title, and on a Mac the file behind it and whether it holds everything. */
  showKeeping(projectId: string): void {
    const window = this.#windows.get(projectId)
    const keeping = this.#ports.keepingOf(projectId)
    if (!window || window.isDestroyed() || !keeping) return
    window.setTitle(windowTitle(keeping, this.#ports.locale))
    if (!this.#ports.isMac) return
    window.setRepresentedFilename(this.#ports.pathOf(projectId) ?? '')
    window.setDocumentEdited(keeping.savedRevision < keeping.revision)
  }

  /** The window has handed over everything and may close. */
  flushed(projectId: string): void {
    this.#flushed.get(projectId)?.()
  }

  /** Closes the window of a project; false where the user went back to it. */
  async close(projectId: string): Promise<boolean> {
    const window = this.#windows.get(projectId)
    if (!window || this.#closing.has(projectId)) return true
    this.#closing.add(projectId)
    try {
      await this.#flush(window, projectId)
      const problem = await this.#ports.settleProject(projectId)
      if (problem && !(await this.#ports.askToCloseUnsaved(window, problem))) return false
      await this.#ports.endProject(projectId)
      this.#windows.delete(projectId)
      window.destroy()
      this.#ports.onClosed()
      return true
    } finally {
      this.#closing.delete(projectId)
    }
  }

  async #flush(window: BrowserWindow, projectId: string): Promise<void> {
    if (window.isDestroyed() || window.webContents.isCrashed()) return
    await new Promise<void>((resolve) => {
      const timer = setTimeout(resolve, FLUSH_TIME)
      this.#flushed.set(projectId, () => {
        clearTimeout(timer)
        resolve()
      })
      window.webContents.send(BEFORE_CLOSE_CHANNEL)
    })
    this.#flushed.delete(projectId)
  }

  #listen(window: BrowserWindow, projectId: string): void {
    window.once('ready-to-show', () => window.show())
    // Chromium remembers a size for our address, too; what the settings have goes.
    window.webContents.on('dom-ready', () => this.#zoomed(window))
    window.on('page-title-updated', (event) => event.preventDefault())
    window.on('focus', () => {
      this.#ports.onFront(projectId)
      this.#ports.onFocus(projectId)
    })
    window.on('close', (event) => {
      event.preventDefault()
      void this.close(projectId)
    })
    for (const event of ['moved', 'resized', 'maximize', 'unmaximize'] as const)
      window.on(event as 'maximize', () => this.#remember(window))
    // Some window managers tell only these, many times a second.
    window.on('resize', () => this.#rememberSoon(window))
    window.on('move', () => this.#rememberSoon(window))
    let reloads = 0
    window.webContents.on('render-process-gone', (_event, details) => {
      if (details.reason === 'clean-exit' || this.#closing.has(projectId)) return
      if (++reloads <= RELOADS) window.webContents.reload()
    })
  }

  #soon: NodeJS.Timeout | undefined
  #rememberSoon(window: BrowserWindow): void {
    clearTimeout(this.#soon)
    this.#soon = setTimeout(() => this.#remember(window), 400)
  }

  #remember(window: BrowserWindow): void {
    if (window.isDestroyed() || window.isMinimized() || window.isFullScreen()) return
    const { x, y, width, height } = window.getNormalBounds()
    void this.#ports.places.remember({ x, y, width, height, maximized: window.isMaximized() })
  }
}
