/** Who holds a connection: nobody on this machine can keep those who were let in from theirs. */
import type { Socket } from 'node:net'

/**
 * Connections on which nobody has shown anything yet. A page of ours speaks within a moment of its connection, so that
 * hundreds of others have to come in that moment before it is given up; a stranger's wait for their turn to go.
 */
const WAITING_AT_MOST = 400
/**
 * Those that have shown the cookie: pages that are loaded. Another port of the machine can hear it, so that they have
 * places of their own, and take none from those with a key.
 */
const KNOWN_AT_MOST = 200
/** Those that have shown a key. More than all tabs of a person have at once, each browser with six. */
const KEPT_AT_MOST = 200
/** No more are taken in at all; what is given up is closed a moment later. */
export const CONNECTIONS_AT_MOST = 1_200

export class Places {
  /** In the order of their coming. */
  readonly #waiting = new Set<Socket>()
  /** In the order of their last word. */
  readonly #known = new Set<Socket>()
  readonly #kept = new Set<Socket>()

  /** Somebody came: whoever waited longest without a word gives way where there are too many. */
  take(socket: Socket): void {
    this.#waiting.add(socket)
    socket.once('close', () => {
      for (const places of [this.#waiting, this.#known, this.#kept]) places.delete(socket)
    })
    giveUp(this.#waiting, WAITING_AT_MOST)
  }

  /** Whoever is behind it has shown the cookie: those without it no longer move it from its place. */
  know(socket: Socket): void {
    if (!this.#kept.has(socket)) this.#move(socket, this.#known, KNOWN_AT_MOST)
  }

  /** Whoever is behind it has shown a key: nobody without one moves it from its place. */
  keep(socket: Socket): void {
    this.#known.delete(socket)
    this.#move(socket, this.#kept, KEPT_AT_MOST)
  }

  #move(socket: Socket, places: Set<Socket>, most: number): void {
    if (socket.destroyed) return
    this.#waiting.delete(socket)
    places.delete(socket)
    places.add(socket)
    giveUp(places, most)
  }
}

function giveUp(places: Set<Socket>, most: number): void {
  for (const longest of places) {
    if (places.size <= most) return
    places.delete(longest)
    longest.destroy()
  }
}
