/** The window's own files, for the desktop's protocol and for the loopback server alike. */
import { readFile } from 'node:fs/promises'
import { extname, isAbsolute, join, relative, sep } from 'node:path'

/**
 * What the window may load and reach: its own files, pictures that it made itself, nothing else; no script
 * and no style in the page.
 */
export const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ')

/**
 * In a browser workers start from what the page keeps of them: their own address may be somebody else's by then. Only a
 * script of the page could make others, and that is one of its own files.
 */
const BROWSER_POLICY = CONTENT_SECURITY_POLICY.replace("worker-src 'self'", "worker-src 'self' blob:")

export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': CONTENT_SECURITY_POLICY,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(), microphone=(), geolocation=(), usb=(), serial=()',
  'Cache-Control': 'no-store',
}

export const BROWSER_HEADERS: Readonly<Record<string, string>> = {
  ...SECURITY_HEADERS,
  'Content-Security-Policy': BROWSER_POLICY,
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.webp': 'image/webp',
  '.ttf': 'font/ttf',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
}

interface StaticFile {
  readonly bytes: Uint8Array
  readonly type: string
}

/**
 * The file in `root` that a URL's path names, or null. The path is decoded first and checked afterwards:
 * URL parsers fold "../" away, but neither "..%2f" nor "..%5c".
 */
export function locate(root: string, urlPath: string): string | null {
  let decoded: string
  try {
    decoded = decodeURIComponent(urlPath)
  } catch {
    return null
  }
  if (decoded.includes('\0') || decoded.includes('\\') || decoded.includes(':')) return null
  const path = join(root, decoded === '/' ? 'index.html' : decoded)
  const inside = relative(root, path)
  if (inside === '' || inside === '..' || inside.startsWith(`..${sep}`) || isAbsolute(inside)) return null
  return path
}

/** Reads the file that a URL's path names; null where there is none or its kind is not served. */
export async function readStatic(root: string, urlPath: string): Promise<StaticFile | null> {
  const path = locate(root, urlPath)
  const type = path === null ? undefined : TYPES[extname(path)]
  if (path === null || type === undefined) return null
  try {
    return { bytes: await readFile(path), type }
  } catch {
    return null
  }
}
