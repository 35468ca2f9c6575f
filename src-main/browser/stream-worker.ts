/** The shared worker in which the stream of a browser lives: it is there as long as any of the tabs is. */
import { seatLock } from './envelope'
import type { Member } from './stream-hub'
import { StreamHub } from './stream-hub'

const hub = new StreamHub()

addEventListener('connect', (event) => {
  const [port] = (event as MessageEvent).ports
  if (!port) return
  port.onmessage = ({ data: member }: MessageEvent<Member>) => {
    hub.join(member, (heard) => port.postMessage(heard))
    // The tab holds this lock for as long as it lives, however it ends.
    void navigator.locks.request(seatLock(member.seat), () => hub.leave(member.seat))
  }
})
