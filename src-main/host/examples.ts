import { listExamples } from '../documents'
import type { Examples } from './ports'

/** The examples that come with the program. */
export const examples: Examples = {
  list: async () =>
    listExamples().map(({ name, title, description }) => ({ name, title, words: description })),
  read: async (name) => listExamples().find((example) => example.name === name)?.text ?? null,
}
