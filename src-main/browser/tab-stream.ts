/** The stream of its browser as a tab reaches it. */
import { seatLock } from './envelope'
import { StreamHub } from './stream-hub'
import type { Heard, Member } from './stream-hub'

/** What a tab and the worker that all tabs share say to each other. */
export const WANTS_KEY = 'key'
export type FromTab = Member | typeof WANTS_KEY
export type ToTab = Heard | { readonly kind: 'key'; readonly key: string | null }

export interface TabStream {
  /** Joins it, or says with which key it speaks from now on. */
  join(member: Member): void
  /** A key for this tab, which another tab asks the server for; null where no other has one. */
  anotherKey(): Promise<string | null>
}

/** By the worker that all tabs share; in a browser without such, one of its own, with nobody to ask. */
export function tabStream(seat: string, hear: (heard: Heard) => void): TabStream {
  if (typeof SharedWorker === 'undefined' || !('locks' in navigator)) {
    const hub = new StreamHub()
    return { join: (member) => hub.join(member, hear), anotherKey: () => Promise.resolve(null) }
  }
  const { port } = new SharedWorker('/stream.js')
  const send = (message: FromTab) => port.postMessage(message)
  const waiting: ((key: string | null) => void)[] = []
  port.onmessage = ({ data }: MessageEvent<ToTab>) =>
    data.kind === 'key' ? waiting.shift()?.(data.key) : hear(data)
  // The lock tells the worker that this page is there, until it is not.
  const isHeld = new Promise<void>((resolve) => {
    void navigator.locks.request(seatLock(seat), () => {
      resolve()
      return new Promise<never>(() => undefined)
    })
  })
  return {
    join: (member) => void isHeld.then(() => send(member)),
    anotherKey: () =>
      new Promise((resolve) => {
        waiting.push(resolve)
        send(WANTS_KEY)
      }),
  }
}
