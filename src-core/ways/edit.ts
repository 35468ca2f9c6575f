/** What differs between two projects as a list of fields, and a project with such a list applied. */
import type { Project } from '../../shared-types/project'
import type { FieldEdit } from '../../shared-types/ways'

type Fields = Readonly<Record<string, unknown>>
type Step = string | number

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** The fields in which `after` differs; a list of another length is one field. */
export function differences(before: unknown, after: unknown, at: readonly Step[] = []): FieldEdit[] {
  if (before === after) return []
  if (Array.isArray(before) && Array.isArray(after) && before.length === after.length)
    return after.flatMap((value, index) => differences(before[index], value, [...at, index]))
  if (isFields(before) && isFields(after))
    return [...new Set([...Object.keys(before), ...Object.keys(after)])].flatMap((name) =>
      differences(before[name], after[name], [...at, name]),
    )
  return [after === undefined ? { at } : { at, value: after }]
}

/** The project with the fields of an edit as it says; everything else stays the same object. */
export const withEdit = (project: Project, edit: readonly FieldEdit[]): Project =>
  edit.reduce<unknown>((held, { at, value }) => put(held, at, value), project) as Project

function put(held: unknown, [step, ...rest]: readonly Step[], value: unknown): unknown {
  if (step === undefined) return value
  if (Array.isArray(held))
    return held.map((entry: unknown, index) => (index === step ? put(entry, rest, value) : entry))
  const { [step]: inner, ...others } = isFields(held) ? held : {}
  const placed = put(inner, rest, value)
  return placed === undefined ? others : { ...(held as Fields), [step]: placed }
}
