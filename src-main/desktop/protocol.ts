import { protocol } from 'electron'
import type { Build } from '../host/build'
import { updatedPage } from '../host/build'
import { readStatic, SECURITY_HEADERS } from '../host/static-files'
import { APP_HOST, SCHEME } from './origin'

/** Makes the window's scheme a proper one. Once, before the app is ready. */
export function registerScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ])
}

/**
 * Serves the window's files from `root`, with the security headers, and nothing else; a page of another build says so
 * instead.
 */
export function setupProtocol(root: string, build: Build): void {
  protocol.handle(SCHEME, async (request) => {
    const url = new URL(request.url)
    const isPlainGet = request.method === 'GET' && url.host === APP_HOST
    const isPage = url.pathname === '/' || url.pathname === '/index.html'
    if (isPlainGet && isPage && (await build.isReplaced()))
      return new Response(updatedPage(), { headers: { ...SECURITY_HEADERS, 'Content-Type': 'text/html' } })
    const file = isPlainGet ? await readStatic(root, url.pathname) : null
    if (!file) return new Response('Not here.', { status: 404, headers: { ...SECURITY_HEADERS } })
    return new Response(Buffer.from(file.bytes), {
      headers: { ...SECURITY_HEADERS, 'Content-Type': file.type },
    })
  })
}
