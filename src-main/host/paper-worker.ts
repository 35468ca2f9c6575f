/** The worker in which paper is made, so that neither windows nor saving ever wait for it. */
import { parentPort } from 'node:worker_threads'
import { readFont } from './paper-fonts'
import { makeExport, makePreview } from './paper-work'
import type { PaperAnswer, PaperTask } from './paper'

const port = parentPort
if (!port) throw new Error('this is a worker')
const reply = (answer: PaperAnswer) => port.postMessage(answer)

async function work(task: PaperTask): Promise<void> {
  const date = new Date()
  try {
    if (task.kind === 'font') reply({ id: task.id, kind: 'font', font: readFont(task.bytes, task.face) })
    else if (task.kind === 'preview')
      reply({ id: task.id, kind: 'previewed', page: makePreview(task.request, date) })
    else {
      const made = await makeExport(task.request, date, (progress) =>
        reply({ id: task.id, kind: 'progress', progress }),
      )
      reply({ id: task.id, kind: 'made', made })
    }
  } catch (error) {
    reply({ id: task.id, kind: 'failed', reason: error instanceof Error ? error.message : String(error) })
  }
}

port.on('message', (task: PaperTask) => void work(task))
