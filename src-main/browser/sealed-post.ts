import { KEY_HEADER } from './envelope'
import type { Reply } from './envelope'
import { answering, asking, newQuestion, readKey, seal, unseal } from './sealed'

/** Longest body that a browser still sends while its page goes away (the Fetch standard's 64 KiB). */
const FAREWELL_LIMIT = 60_000

/** What is answered where a page has no key any more, or one whose session was ended. */
const SHUT_OUT: Reply = { status: 403, body: null }

/**
 * Asks the server, sealed; null where it is not Petalyard that answers. Throws where nobody does. It is on its way
 * when this returns: a page that is closed has no later moment.
 */
export async function postSealed(
  keyText: string,
  path: string,
  message: unknown,
  isFarewell = false,
): Promise<Reply | null> {
  const key = readKey(keyText)
  if (!key) return SHUT_OUT
  const question = newQuestion()
  const body = seal(key, asking(path, question), JSON.stringify(message))
  const response = await fetch(path, {
    method: 'POST',
    headers: { 'Content-Type': 'application/octet-stream', [KEY_HEADER]: `${key.name}.${question}` },
    body,
    keepalive: isFarewell && body.length < FAREWELL_LIMIT,
  })
  const text = unseal(key, answering(question), new Uint8Array(await response.arrayBuffer()))
  return text === null ? null : (JSON.parse(text) as Reply)
}
