/** Checks a document against the schema of the project file and tells each wrong value at its path. */
import type { Finding } from '../../shared-types/finding'
import { projectSchema } from '../../shared-types/project'
import type { Project } from '../../shared-types/project'
import { finding } from '../../src-core/findings/finding'
import type { Issue } from './issues'
import { issuesOf } from './issues'
import { INVALID_VALUES_COUNTED, INVALID_VALUES_TOLD } from './limits'
import type { JsonObject } from './migrations'

type Path = readonly PropertyKey[]

/**
 * The document as a project, or what is wrong with it. The project is the document itself: unknown fields,
 * their order and the order of keys stay as they were read.
 */
export function validateProject(
  document: JsonObject,
): { readonly project: Project } | { readonly findings: readonly Finding[] } {
  const issues = issuesOf(projectSchema, document, INVALID_VALUES_COUNTED + 1)
  if (issues.length === 0) return { project: document as Project }
  const wrong = issues.flatMap((issue) => sharpen(issue))
  const findings = wrong.slice(0, INVALID_VALUES_TOLD).map((issue) => invalidValue(document, issue))
  const count = Math.min(wrong.length, INVALID_VALUES_COUNTED) - findings.length
  if (wrong.length > INVALID_VALUES_COUNTED)
    findings.push(finding('file/many-invalid-values', 'project', { count }))
  else if (count > 0) findings.push(finding('file/more-invalid-values', 'project', { count }))
  return { findings }
}

/** One wrong value as a finding. */
function invalidValue(document: JsonObject, issue: Expectation): Finding {
  return finding('file/invalid-value', formatPath(issue.path), {
    received: describeValue(valueAt(document, issue.path)),
    expected: oneOf(issue.choices),
  })
}

interface Expectation {
  readonly path: Path
  /** What may stand there, in words. */
  readonly choices: readonly string[]
}

/** An issue as expectations at their exact places: unions are opened and the branch that got furthest is told. */
function sharpen(issue: Issue, above: Path = []): Expectation[] {
  const path = [...above, ...issue.path]
  if (issue.code !== 'invalid_union') return [{ path, choices: describeExpected(issue) }]
  if ('options' in issue && issue.options)
    return [{ path, choices: issue.options.map((option) => describeLiteral(option)) }]
  const branches = issue.errors.map((errors) => errors.flatMap((inner) => sharpen(inner, path)))
  const deep = branches.find((branch) => branch.some((inner) => inner.path.length > path.length))
  if (deep) return deep
  return [{ path, choices: branches.flat().flatMap((inner) => inner.choices) }]
}

const KINDS: Record<string, string> = {
  string: 'a text',
  number: 'a number',
  boolean: 'true or false',
  array: 'a list',
  object: 'a group { … }',
  record: 'a group { … }',
  null: 'null',
}

function describeExpected(issue: Issue): readonly string[] {
  switch (issue.code) {
    case 'invalid_type':
      return [KINDS[issue.expected] ?? issue.expected]
    case 'invalid_value':
      return issue.values.map((value) => describeLiteral(value))
    case 'too_small':
      return ['a text that is not empty']
    case 'too_big':
      return [`a text of at most ${issue.maximum} characters`]
    default:
      return ['another value']
  }
}

const describeLiteral = (value: unknown): string => (typeof value === 'string' ? `'${value}'` : String(value))

/** "a", "a or b", "a, b or c". */
function oneOf(words: readonly string[]): string {
  const last = words.at(-1) ?? ''
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} or ${last}`
}

/** `['colourways', 2, 'yarns', 'petals']` as "colourways[2].yarns.petals"; other keys than words in quotes. */
function formatPath(path: Path): string {
  const words = path.map((key) => {
    if (typeof key === 'number') return `[${key}]`
    const name = String(key)
    return /^[\p{L}_$][\p{L}\p{N}_$-]*$/u.test(name) ? `.${name}` : `[${JSON.stringify(name)}]`
  })
  return words.join('').replace(/^\./, '') || 'project'
}

function valueAt(document: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      value !== null && typeof value === 'object' && Object.hasOwn(value, key)
        ? (value as Record<PropertyKey, unknown>)[key]
        : undefined,
    document,
  )
}

/** A wrong value in a few words: "the text 'abc'", "a list", "nothing". */
function describeValue(value: unknown): string {
  if (value === undefined) return 'nothing'
  if (value === null) return 'null'
  if (Array.isArray(value)) return 'a list'
  if (typeof value === 'object') return 'a group { … }'
  if (typeof value === 'string') return value === '' ? 'an empty text' : `the text '${shorten(value)}'`
  if (typeof value === 'number' && !Number.isFinite(value)) return 'a number beyond all bounds'
  return String(value)
}

const shorten = (text: string): string => (text.length > 40 ? `${text.slice(0, 39)}…` : text)
