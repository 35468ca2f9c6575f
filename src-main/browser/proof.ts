/** Whether it is Petalyard that answers on the port of a page. */

/**
 * Asks for the word of this page to come back signed with its key. After Petalyard was stopped, somebody else may
 * listen on its port: nothing that says the key, and nothing of a project, is handed over before. Throws where nobody
 * answers.
 */
export async function isProven(key: string): Promise<boolean> {
  const word = crypto.randomUUID()
  const response = await fetch(`/prove?word=${word}`)
  if (!response.ok) return false
  const bytes = (text: string) => new TextEncoder().encode(text)
  const algorithm = { name: 'HMAC', hash: 'SHA-256' }
  const own = await crypto.subtle.importKey('raw', bytes(key), algorithm, false, ['sign'])
  const signed = new Uint8Array(await crypto.subtle.sign('HMAC', own, bytes(word)))
  const proof = [...signed].map((byte) => byte.toString(16).padStart(2, '0')).join('')
  const proofs: unknown = await response.json()
  return Array.isArray(proofs) && proofs.includes(proof)
}
