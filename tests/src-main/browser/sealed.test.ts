/** The seal between page and server, against the one that Node brings (OpenSSL's). */
import { createCipheriv, createDecipheriv } from 'node:crypto'
import { expect, it } from 'vitest'
import { newKey, readKey, seal, unseal, writeKey } from '../../../src-main/browser/sealed'

const key = newKey()
const TEXT = 'Überwurf 130 × 160 cm 🌼'

it('is ChaCha20-Poly1305 with the number that is used once before it and the check behind it', () => {
  const sealed = Buffer.from(seal(key, 'ask /here', TEXT))
  const open = createDecipheriv('chacha20-poly1305', key.bytes, sealed.subarray(0, 12), { authTagLength: 16 })
  open.setAAD(Buffer.from('ask /here'), { plaintextLength: sealed.length - 28 })
  open.setAuthTag(sealed.subarray(-16))
  const text = Buffer.concat([open.update(sealed.subarray(12, -16)), open.final()])
  expect(text.toString()).toBe(TEXT)

  const close = createCipheriv('chacha20-poly1305', key.bytes, Buffer.alloc(12, 7), { authTagLength: 16 })
  close.setAAD(Buffer.from('answer 1'), { plaintextLength: Buffer.byteLength(TEXT) })
  const closed = Buffer.concat([close.update(TEXT), close.final()])
  expect(unseal(key, 'answer 1', Buffer.concat([Buffer.alloc(12, 7), closed, close.getAuthTag()]))).toBe(TEXT)
})

it('opens with its key and as what it is, and is never twice the same', () => {
  expect(unseal(key, 'tell a', seal(key, 'tell a', TEXT))).toBe(TEXT)
  expect(unseal(key, 'tell b', seal(key, 'tell a', TEXT))).toBeNull()
  expect(unseal(newKey(), 'tell a', seal(key, 'tell a', TEXT))).toBeNull()
  expect(unseal(key, 'tell a', new Uint8Array(3))).toBeNull()
  expect(Buffer.from(seal(key, 'a', TEXT)).equals(Buffer.from(seal(key, 'a', TEXT)))).toBe(false)
  expect(Buffer.from(seal(key, 'a', TEXT)).includes('160 cm')).toBe(false)
})

it('is made with keys that are written and read again, and with nothing else', () => {
  expect(readKey(writeKey(key))).toEqual(key)
  expect(key.bytes).toHaveLength(32)
  expect(newKey().bytes).not.toEqual(key.bytes)
  for (const wrong of ['', 'guess', writeKey(key).slice(1), `${writeKey(key)}0`, '.'.repeat(97)])
    expect(readKey(wrong)).toBeNull()
})
