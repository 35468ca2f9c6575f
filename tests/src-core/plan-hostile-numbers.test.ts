/**
 * Every number of the project file, whatever stands in it: planning neither throws nor grows without bounds, and what
 * is refused is not used. The fields are found in the schema itself, so that a new one cannot be forgotten.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { ZodType } from 'zod'
import type { Project } from '../../shared-types/project'
import { projectSchema } from '../../shared-types/project'
import { createPlanner, planProject } from '../../src-core/plan'
import { BASES } from './hostile-projects'
import { runs } from '../runs'

/** Numbers that nobody means. 1.8e308 is no number any more: `read.test.ts` has it. */
const HOSTILE = [0, -1, 1e-300, 1e300, -1e300, 0.1, 2 ** 53]

/** Nothing that a plan tells is larger: mm, g, minutes, money or pieces. Ten thousand kits of a large blanket are less. */
const MOST = 1e12
/** Motifs, join points, steps, fillers, items and findings of one plan. */
const MOST_THINGS = 20_000

type Base = keyof typeof BASES
const baseNames = Object.keys(BASES) as Base[]

type Step = string | number
interface Leaf {
  /** Where it stands in this project, and the field of the schema that it is. */
  readonly path: readonly Step[]
  readonly field: string
}

interface Def {
  type: string
  shape?: Record<string, ZodType>
  element?: ZodType
  innerType?: ZodType
  valueType?: ZodType
  options?: ZodType[]
  values?: unknown[]
}
const defOf = (schema: ZodType) => schema.def as unknown as Def

/** Fields of the schema that take a number. */
function numberFields(schema: ZodType, field = ''): string[] {
  const { type, shape, element, innerType, valueType, options } = defOf(schema)
  if (type === 'number') return [field]
  if (shape)
    return Object.entries(shape).flatMap(([key, inner]) =>
      numberFields(inner, `${field}${kindOf(schema)}.${key}`),
    )
  if (options) return options.flatMap((option) => numberFields(option, field))
  const inner = element ?? innerType ?? valueType
  return inner ? numberFields(inner, element ? `${field}[]` : valueType ? `${field}{}` : field) : []
}

/** The kind that a shape is of, where there are several. */
function kindOf(schema: ZodType): string {
  const kind = defOf(schema).shape?.kind
  return kind ? `(${String(defOf(kind).values?.[0])})` : ''
}

/** Every number in a value, with the field of the schema that it is. */
function leavesOf(schema: ZodType, value: unknown, path: readonly Step[] = [], field = ''): Leaf[] {
  const { type, shape, element, innerType, valueType, options } = defOf(schema)
  if (value === undefined || value === null) return []
  if (type === 'number') return [{ path, field }]
  if (innerType) return leavesOf(innerType, value, path, field)
  if (options) {
    const fitting = options.find((option) => option.safeParse(value).success)
    return fitting ? leavesOf(fitting, value, path, field) : []
  }
  if (element)
    return (value as unknown[]).flatMap((entry, i) => leavesOf(element, entry, [...path, i], `${field}[]`))
  if (valueType)
    return Object.entries(value).flatMap(([key, entry]) =>
      leavesOf(valueType, entry, [...path, key], `${field}{}`),
    )
  if (!shape) return []
  return Object.entries(shape).flatMap(([key, inner]) =>
    leavesOf(
      inner,
      (value as Record<string, unknown>)[key],
      [...path, key],
      `${field}${kindOf(schema)}.${key}`,
    ),
  )
}

const LEAVES = Object.fromEntries(
  baseNames.map((name) => [name, leavesOf(projectSchema, BASES[name])]),
) as Record<Base, Leaf[]>

/** A field is tried in the first project that has it; several at once are tried in all of them. */
function firstMet(name: Base): Leaf[] {
  const earlier = baseNames.slice(0, baseNames.indexOf(name)).flatMap((base) => LEAVES[base])
  const known = new Set(earlier.map(({ field }) => field))
  return LEAVES[name].filter(({ field }) => !known.has(field))
}

function withNumber<T>(value: T, [step, ...rest]: readonly Step[], number: number): T {
  if (step === undefined) return number as T
  const copy = (Array.isArray(value) ? [...(value as unknown[])] : { ...value }) as Record<Step, unknown>
  copy[step] = withNumber(copy[step], rest, number)
  return copy as T
}

const project = (name: Base) => BASES[name] as unknown as Project

const isAbsurd = (value: unknown): boolean =>
  typeof value === 'number'
    ? !Number.isFinite(value) || Math.abs(value) > MOST
    : typeof value === 'string' && /\b(?:NaN|Infinity|undefined)\b/.test(value)

/** Whether nothing in it is absurd: asked of every value of thousands of plans, so without naming places. */
function isSound(value: unknown): boolean {
  if (value === null || typeof value !== 'object') return !isAbsurd(value)
  for (const inner of Array.isArray(value) ? value : Object.values(value)) if (!isSound(inner)) return false
  return true
}

/** Where a plan tells something that no work comes to. */
function absurd(value: unknown, path = 'plan'): string[] {
  if (isSound(value)) return []
  if (value === null || typeof value !== 'object') return [`${path}: ${String(value)}`]
  return Object.entries(value).flatMap(([key, inner]) => absurd(inner, `${path}.${key}`))
}

function check(given: Project, planner = createPlanner()): void {
  const plan = planner.plan(given)
  // What it is the plan of stands there as it was written; everything else is told.
  const { findings, settled: _, ...told } = plan
  expect(absurd(told)).toEqual([])
  expect(findings.flatMap(({ message, mend }) => absurd([message, mend]))).toEqual([])
  const { motifs, joins, order, fillers, halves, garland } = plan
  const things = [motifs, joins, order, fillers, halves, findings, garland?.items ?? []]
  expect(things.reduce((sum, list) => sum + list.length, 0)).toBeLessThan(MOST_THINGS)
  expect(absurd(planner.unplaced(given, plan).map(({ message, mend }) => [message, mend]))).toEqual([])
}

describe('numbers that nobody means', () => {
  it('every number of the project file stands in one of the projects here, and each of these plans', () => {
    const fields = new Set(numberFields(projectSchema))
    const met = new Set(Object.values(LEAVES).flatMap((leaves) => leaves.map(({ field }) => field)))
    expect([...fields].filter((field) => !met.has(field)).sort()).toEqual([])
    expect(fields.size).toBeGreaterThan(100)
    for (const name of baseNames) {
      expect(projectSchema.safeParse(BASES[name]).success, name).toBe(true)
      check(project(name))
      expect(planProject(project(name)).motifs.length, name).toBeGreaterThan(0)
    }
  })

  it.each(baseNames)(
    '%s: one of them in any field',
    (name) => {
      const failed: string[] = []
      // What a number does not touch is remembered, as in a window.
      const planner = createPlanner()
      for (const { path } of firstMet(name))
        for (const value of HOSTILE)
          try {
            check(withNumber(project(name), path, value), planner)
          } catch (error) {
            failed.push(`${path.join('.')} = ${value}: ${String(error).slice(0, 300)}`)
          }
      expect(failed).toEqual([])
    },
    120_000,
  )

  it('several of them at once', () => {
    const some = fc.constantFrom(...baseNames).chain((name) =>
      fc.tuple(
        fc.constant(name),
        fc.array(fc.tuple(fc.constantFrom(...LEAVES[name]), fc.constantFrom(...HOSTILE)), {
          minLength: 2,
          maxLength: 5,
        }),
      ),
    )
    fc.assert(
      fc.property(some, ([name, changes]) =>
        check(changes.reduce((whole, [{ path }, value]) => withNumber(whole, path, value), project(name))),
      ),
      { numRuns: runs(200) },
    )
  })
})
