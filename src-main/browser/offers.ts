/** Finished files until the browser fetches them, each once. */
import { randomUUID } from 'node:crypto'
import type { ServerResponse } from 'node:http'
import type { FileType } from '../host/ports'
import { send } from './answering'

interface Offer {
  readonly name: string
  readonly type: FileType
  readonly bytes: Uint8Array
}

const OFFER_TYPES: Readonly<Record<FileType, string>> = {
  petalyard: 'application/json',
  pdf: 'application/pdf',
  png: 'image/png',
  svg: 'image/svg+xml',
  csv: 'text/csv; charset=utf-8',
  zip: 'application/zip',
  html: 'text/html; charset=utf-8',
}
/** A finished file that nobody fetched is dropped after this time (ms). */
const OFFER_HOLDS = 60_000
export class Offers {
  readonly #held = new Map<string, Offer>()

  /** Holds a file for a while; answers with the name under which it can be fetched. */
  hold(offer: Offer): string {
    const id = randomUUID()
    this.#held.set(id, offer)
    setTimeout(() => this.#held.delete(id), OFFER_HOLDS).unref()
    return id
  }

  /** Sends a file, and gives it up. */
  fetch(id: string, response: ServerResponse): void {
    const offer = this.#held.get(id)
    if (!offer) return send(response, 404, 'This file was fetched already.')
    send(response, 200, offer.bytes, OFFER_TYPES[offer.type], {
      'Content-Disposition': `attachment; filename*=UTF-8''${encodeURIComponent(offer.name)}`,
    })
    // Only what was sent is given up.
    this.#held.delete(id)
  }
}
