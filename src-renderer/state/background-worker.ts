/** The worker that plans beside the window. */
import { createPlanner } from '../../src-core/plan'
import type { Message, Question } from './background-work'
import { answerer } from './background-work'

const answer = answerer(createPlanner)

addEventListener('message', ({ data }: MessageEvent<{ id: number; question: Question }>) => {
  const { id, question } = data
  const message: Message = { id, answer: answer(question, (numbers) => postMessage({ id, numbers })) }
  postMessage(message)
})
