/** The worker that plans beside the window. */
import { createPlanner } from '../../src-core/plan'
import type { Question } from './background-work'
import { answerer } from './background-work'

const answer = answerer(createPlanner)

addEventListener('message', ({ data }: MessageEvent<{ id: number; question: Question }>) => {
  postMessage({ id: data.id, answer: answer(data.question) })
})
