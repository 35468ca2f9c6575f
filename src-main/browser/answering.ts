/** Answers of the loopback server, and the words of those that refuse. */
import type { IncomingMessage, ServerResponse } from 'node:http'
import { BROWSER_HEADERS } from '../host/static-files'
import type { Verdict } from './doorkeeper'

export const WORDS: Readonly<Record<Exclude<Verdict, 'welcome'> | 'used-twice', string>> = {
  'wrong-host': 'Petalyard answers at 127.0.0.1 alone.',
  'foreign-origin': 'Petalyard answers its own pages alone.',
  'used-twice':
    'This address was used before. In case that was somebody else, whoever was let in with it is shut out now. Press Enter in the terminal where Petalyard runs for another.',
  'no-session':
    'Each address lets in once, and this one does not. Press Enter in the terminal where Petalyard runs for another.',
  'no-key':
    'This page has lost its key. Press Enter in the terminal where Petalyard runs for another address.',
}

export function send(
  response: ServerResponse,
  status: number,
  body: string | Uint8Array,
  type = 'text/plain; charset=utf-8',
  more: Readonly<Record<string, string>> = {},
): void {
  response.writeHead(status, { ...BROWSER_HEADERS, 'Content-Type': type, ...more })
  response.end(body)
}

export function sendJson(
  response: ServerResponse,
  value: unknown,
  more: Readonly<Record<string, string>> = {},
): void {
  send(response, 200, JSON.stringify(value), 'application/json; charset=utf-8', more)
}

export function redirect(
  response: ServerResponse,
  to: string,
  more: Readonly<Record<string, string>> = {},
): void {
  response.writeHead(303, { ...BROWSER_HEADERS, Location: to, ...more })
  response.end()
}

/** The body, or null where it is longer than `limit` bytes (the rest is not read). */
export async function readBody(request: IncomingMessage, limit: number): Promise<Buffer | null> {
  if (Number(request.headers['content-length'] ?? 0) > limit) return null
  const chunks: Buffer[] = []
  let size = 0
  for await (const chunk of request as AsyncIterable<Buffer>) {
    size += chunk.length
    if (size > limit) return null
    chunks.push(chunk)
  }
  return Buffer.concat(chunks)
}
