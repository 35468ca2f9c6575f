import { app, session } from 'electron'
import { WINDOW_URL } from './origin'

/** Requests that a window may make: its own files, what it made itself, and the inspector of its developers. */
const OWN_REQUESTS = /^(app|blob|data|devtools|chrome-devtools):/

/** Nobody leaves the window's own page, opens another, asks for a permission or reaches the network. */
export function setupSecurity(): void {
  app.on('web-contents-created', (_event, contents) => {
    contents.on('will-navigate', (event) => event.preventDefault())
    // The empty page is shown without a word before; nothing is left of the window then, and it is loaded again.
    contents.on('did-navigate', (_gone, url) => {
      if (url === 'about:blank') void contents.loadURL(WINDOW_URL)
    })
    contents.on('will-redirect', (event) => event.preventDefault())
    contents.on('will-frame-navigate', (event) => event.preventDefault())
    contents.on('will-attach-webview', (event) => event.preventDefault())
    // Connections between browsers pass the filter below; without a proxy none of them finds an address.
    contents.setWebRTCIPHandlingPolicy('disable_non_proxied_udp')
    contents.setWindowOpenHandler(() => ({ action: 'deny' }))
  })
  const own = session.defaultSession
  // Chromium fetches a word list for each language of its spelling checker as soon as there is a window, whether or
  // not the window checks spelling, and past the filter below. On a Mac the system checks, without any list.
  own.setSpellCheckerEnabled(false)
  if (process.platform !== 'darwin') own.setSpellCheckerLanguages([])
  own.setPermissionRequestHandler((_contents, _permission, answer) => answer(false))
  own.setPermissionCheckHandler(() => false)
  own.setDevicePermissionHandler(() => false)
  own.on('will-download', (event) => event.preventDefault())
  own.webRequest.onBeforeRequest((details, answer) => answer({ cancel: !OWN_REQUESTS.test(details.url) }))
}
