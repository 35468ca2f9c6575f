/** Who holds a connection: nobody on this machine can keep those who have the key from theirs. */
import type { Socket } from 'node:net'

/**
 * Connections on which nobody has shown a key yet. A page of ours speaks within a moment of its connection, so that
 * hundreds of others have to come in that moment before it is given up; a stranger's wait for their turn to go.
 */
const WAITING_AT_MOST = 400
/** More than all tabs of a person have at once, each browser with six. */
const KEPT_AT_MOST = 200
/** No more are taken in at all; what is given up is closed a moment later. */
export const CONNECTIONS_AT_MOST = 1_000

export class Places {
  /** In the order of their coming. */
  readonly #waiting = new Set<Socket>()
  /** In the order of their last word. */
  readonly #kept = new Set<Socket>()

  /** Somebody came: whoever waited longest without a key gives way where there are too many. */
  take(socket: Socket): void {
    this.#add(this.#waiting, socket, WAITING_AT_MOST)
    socket.once('close', () => {
      this.#waiting.delete(socket)
      this.#kept.delete(socket)
    })
  }

  /** Whoever is behind it has shown a key: strangers no longer move it from its place. */
  keep(socket: Socket): void {
    if (socket.destroyed) return
    this.#waiting.delete(socket)
    this.#kept.delete(socket)
    this.#add(this.#kept, socket, KEPT_AT_MOST)
  }

  #add(places: Set<Socket>, socket: Socket, most: number): void {
    places.add(socket)
    const [longest] = places
    if (places.size <= most || !longest) return
    places.delete(longest)
    longest.destroy()
  }
}
