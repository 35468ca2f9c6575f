/** What goes over the wire between the browser's client and the loopback server, besides the outcomes. */
import type { Outcome, Progress } from '../../shared-types/bridge'

/** A file that the browser's own picker gave; the server never learns where it lies. */
export interface Upload {
  readonly name: string
  readonly text: string
}

export interface Question {
  readonly project: string
  /** Which tab asks: the page that was loaded last has the project. */
  readonly seat: string
  readonly payload: unknown
  readonly upload?: Upload | undefined
}

export interface Answer {
  readonly outcome: Outcome<unknown>
  /** A project to show in a tab of its own, or in this one where nothing was touched. */
  readonly shown?: { readonly project: string; readonly inThisTab: boolean } | undefined
  /** A finished file, to be fetched once. */
  readonly download?: string | undefined
}

/** What the server tells a tab, on the stream of its browser; which tab, all may read. */
export interface Told {
  readonly seat: string
  readonly sealed: string
}
/** What is sealed in it. */
export interface Telling {
  readonly event: string
  readonly payload: unknown
}

/** What is sealed in every answer to a tab: a status of HTTP, and words or a value. */
export interface Reply {
  readonly status: number
  readonly body: unknown
}

/** In which header a page names its key and its question; the key itself is never sent. */
export const KEY_HEADER = 'x-petalyard-key'
/** Where a tab keeps its key from one page to the next: in the storage of that tab alone. */
export const KEY_PLACE = 'petalyard-key'

/** The door of the server: a page that holds nothing, and where it hands in the token behind the # of its address. */
export const ENTRY = '/enter'
export const TOKEN_MARK = '#token='
/** Behind the address of the door: a page found no key. */
export const LOST_MARK = '#lost'

/** Where whoever has a key is given another one. */
export const KEY_PATH = '/key'
/** Where a page that was shut out asks whether a key that it was offered (by its name) is one of Petalyard's. */
export const KNOWN_PATH = '/known'

/** What the door answers a token that it takes. */
export interface Admission {
  /** As `readKey` reads it. */
  readonly key: string
}

/** The name of the lock that the page with this seat holds. */
export const seatLock = (seat: string): string => `petalyard-seat-${seat}`

export interface JobProgress extends Progress {
  readonly job: number
}

/** Operations for which the client asks for a file first, with the browser's own picker. */
export const PICKING = new Set(['openProject', 'takeFromProject'])
