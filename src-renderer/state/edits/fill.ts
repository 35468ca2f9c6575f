/** Edits of the order in which a pattern takes colourways: entries, each so many times in a row. */
import type { Project } from '../../../shared-types/project'
import { blanketOf, patchFill } from './layout'

/** A colourway that comes so many times in a row. */
interface Entry {
  readonly id: string
  readonly times: number
}

/** The entries of a list of colourways: A A B C is A twice, B, C. */
export function entriesOf(ids: readonly string[]): Entry[] {
  const entries: { id: string; times: number }[] = []
  for (const id of ids) {
    const last = entries.at(-1)
    if (last?.id === id) last.times++
    else entries.push({ id, times: 1 })
  }
  return entries
}

const edited = (project: Project, edit: (entries: Entry[]) => Entry[]): Project => {
  const ids = blanketOf(project)?.cells?.fill?.colourways ?? []
  const colourways = edit(entriesOf(ids)).flatMap(({ id, times }) => new Array<string>(times).fill(id))
  return patchFill(project, { colourways })
}

/** Moves an entry to another place in the order. */
export const moveEntry = (project: Project, from: number, to: number): Project =>
  edited(project, (entries) => {
    const [moved] = entries.splice(from, 1)
    if (moved) entries.splice(to, 0, moved)
    return entries
  })

export const setTimes = (project: Project, index: number, times: number): Project =>
  edited(project, (entries) => entries.map((entry, at) => (at === index ? { ...entry, times } : entry)))

export const removeEntry = (project: Project, index: number): Project =>
  edited(project, (entries) => entries.filter((_, at) => at !== index))

export const addEntry = (project: Project, id: string): Project =>
  edited(project, (entries) => [...entries, { id, times: 1 }])
