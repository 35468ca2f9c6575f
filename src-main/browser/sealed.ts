/**
 * What page and server say to each other, sealed with the key that the door gave (ChaCha20-Poly1305, RFC 8439). Whoever
 * takes the port over after Petalyard has none of the keys: nothing that a page sends can be read there, nothing that
 * is answered passes for an answer, and nothing has to be asked first.
 */
import { chacha20poly1305 } from '@noble/ciphers/chacha.js'
import { bytesToHex, bytesToUtf8, hexToBytes, randomBytes, utf8ToBytes } from '@noble/ciphers/utils.js'

/** Bytes of a number that is used once. At random, 2^32 of them are within reason for a key; a tab sends thousands. */
const ONCE = 12

/** A key, and the name under which its session is found: that may be heard by anybody. */
export interface Key {
  readonly name: string
  readonly bytes: Uint8Array
}

export const newKey = (): Key => ({ name: bytesToHex(randomBytes(16)), bytes: randomBytes(32) })

export const writeKey = ({ name, bytes }: Key): string => `${name}.${bytesToHex(bytes)}`

export function readKey(text: string): Key | null {
  const [, name, hex] = /^([\da-f]{32})\.([\da-f]{64})$/.exec(text) ?? []
  return name !== undefined && hex !== undefined ? { name, bytes: hexToBytes(hex) } : null
}

/** `what` it is goes in unread: the same text in another place does not open. */
export function seal({ bytes }: Key, what: string, text: string): Uint8Array<ArrayBuffer> {
  const once = randomBytes(ONCE)
  const closed = chacha20poly1305(bytes, once, utf8ToBytes(what)).encrypt(utf8ToBytes(text))
  const sealed = new Uint8Array(ONCE + closed.length)
  sealed.set(once)
  sealed.set(closed, ONCE)
  return sealed
}

/** The text; null where it was not sealed with this key as this. */
export function unseal({ bytes }: Key, what: string, sealed: Uint8Array): string | null {
  try {
    const open = chacha20poly1305(bytes, sealed.subarray(0, ONCE), utf8ToBytes(what))
    return bytesToUtf8(open.decrypt(sealed.subarray(ONCE)))
  } catch {
    return null
  }
}

/** A text of its own for every question, so that its answer is no answer to another. */
export const newQuestion = (): string => bytesToHex(randomBytes(16))

/** What each sealed text is. */
export const asking = (path: string, question: string): string => `ask ${path} ${question}`
export const answering = (question: string): string => `answer ${question}`
export const telling = (seat: string): string => `tell ${seat}`

export const toText = bytesToHex
export function fromText(text: string): Uint8Array {
  try {
    return hexToBytes(text)
  } catch {
    return new Uint8Array()
  }
}
