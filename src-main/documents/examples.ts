/// <reference types="vite/client" />
/** The example projects, which are part of the built program. */
import { readProjectText } from './read'

interface Example {
  /** Name to ask for it: the file name without its ending. */
  readonly name: string
  readonly title: string
  /** The first sentence of its notes. */
  readonly description: string
  /** The file as it is. */
  readonly text: string
}

const FILES = import.meta.glob<string>('../../examples/*.petalyard', {
  query: '?raw',
  import: 'default',
  eager: true,
})

/** Every example, by name. Each opens: a test says so. */
export function listExamples(files: Readonly<Record<string, string>> = FILES): Example[] {
  return Object.entries(files)
    .map(([path, text]) => {
      const name = path.replace(/^.*\//, '').replace(/\.petalyard$/, '')
      const outcome = readProjectText(text)
      if (outcome.kind !== 'opened') throw new Error(`example ${name} does not open: ${outcome.kind}`)
      const notes = outcome.project.notes ?? ''
      const description = /^.*?[.!?](?=\s|$)/s.exec(notes)?.[0].replace(/\s+/g, ' ') ?? notes
      return { name, title: outcome.project.title ?? name, description, text }
    })
    .sort((a, b) => (a.name < b.name ? -1 : 1))
}
