/** The worker that plans beside the window. */
import { createPlanner } from '../../src-core/plan'
import { bytesIn } from './background-work'
import { openDesk } from './background-desk'
import type { Question } from './background-work'

/** Behind everything that waits to be heard; a timer would add its shortest time to each plan. */
const { port1, port2 } = new MessageChannel()
const lookUp = () =>
  new Promise<void>((resolve) => {
    port1.onmessage = () => resolve()
    port2.postMessage(null)
  })

const take = openDesk({
  makePlanner: createPlanner,
  post: (message) => postMessage(message, { transfer: bytesIn(message) }),
  lookUp,
  now: () => performance.now(),
  pause: (time) => new Promise((resolve) => setTimeout(resolve, time)),
})

addEventListener('message', ({ data }: MessageEvent<{ id: number; question: Question }>) =>
  take(data.id, data.question),
)
