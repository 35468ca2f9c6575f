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

/** What the server tells a tab, on the stream of its browser. */
export interface Told {
  readonly seat: string
  readonly event: string
  readonly payload: unknown
}

/** In which header a page shows its key, and how the key comes to it: behind the # of its address, which no server gets. */
export const KEY_HEADER = 'x-petalyard-key'
export const KEY_MARK = '#key='

/** The door of the server: a page that holds nothing, and where it hands in the token behind the # of its address. */
export const ENTRY = '/enter'
export const TOKEN_MARK = '#token='

/** What the door answers a token that it takes. */
export interface Admission {
  readonly key: string
}

/** The name of the lock that the page with this seat holds. */
export const seatLock = (seat: string): string => `petalyard-seat-${seat}`

export interface JobProgress extends Progress {
  readonly job: number
}

/** Operations for which the client asks for a file first, with the browser's own picker. */
export const PICKING = new Set(['openProject', 'takeFromProject'])
