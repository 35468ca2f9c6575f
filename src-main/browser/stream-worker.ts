/** The shared worker in which the stream of a browser lives: it is there as long as any of the tabs is. */
import { seatLock } from './envelope'
import { WANTS_KEY } from './tab-stream'
import type { FromTab, ToTab } from './tab-stream'
import { StreamHub } from './stream-hub'

const hub = new StreamHub()

addEventListener('connect', (event) => {
  const [port] = (event as MessageEvent).ports
  if (!port) return
  const send = (message: ToTab) => port.postMessage(message)
  port.onmessage = ({ data }: MessageEvent<FromTab>) => {
    if (data === WANTS_KEY) return void hub.anotherKey().then((key) => send({ kind: 'key', key }))
    hub.join(data, send)
    // The tab holds this lock for as long as it lives, however it ends.
    void navigator.locks.request(seatLock(data.seat), () => hub.leave(data.seat))
  }
})
