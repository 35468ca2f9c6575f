/** The window's own address. Only its main frame, at this address, is listened to. */
export const SCHEME = 'app'
export const APP_HOST = 'petalyard'
export const WINDOW_URL = `${SCHEME}://${APP_HOST}/index.html`

/** Is this URL one of the window's own files? (For a scheme of one's own, `URL.origin` is "null".) */
export function isOwnUrl(url: string): boolean {
  try {
    const { protocol, host, username, password } = new URL(url)
    return protocol === `${SCHEME}:` && host === APP_HOST && username === '' && password === ''
  } catch {
    return false
  }
}

interface FrameFacts {
  readonly url: string
  readonly parent: unknown
}

/** Is this the main frame of one of our windows? A frame that is already gone is nobody. */
export function isOwnMainFrame(frame: FrameFacts | null | undefined): boolean {
  return frame != null && frame.parent === null && isOwnUrl(frame.url)
}
