/** Any value at any place of a project: the commands answer, tell findings, and never fail themselves. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { planReport } from '../../../src-main/command/reports/plan'
import { fitReport } from '../../../src-main/command/reports/fit'
import { measureReport } from '../../../src-main/command/reports/measure'
import { readProjectText } from '../../../src-main/documents'
import { measureProject } from '../../../src-core/accounts'
import { checkProject, fitProject, planProject } from '../../../src-core/plan'
import { SAMPLE } from './sample'
import { runs } from '../../runs'

/** The same every time; `PETALYARD_FUZZ=RUNS,SEED` looks further. What is found becomes a case below. */
const [numRuns, seed] = (process.env.PETALYARD_FUZZ ?? `${runs(150)},1`).split(',').map(Number)
const FUZZ = { numRuns, seed }

/** Found by looking further. */
const FOUND: readonly (readonly [Path, unknown])[] = [
  [['layout', 'turn'], Number.MAX_VALUE],
  [['layout', 'cells', 'fill', 'colourways', 0], 'constructor'],
]

type Path = readonly (string | number)[]

/** Paths of everything in a document, itself left out. */
function pathsOf(value: unknown, above: Path = []): Path[] {
  if (value === null || typeof value !== 'object') return []
  const keys = Array.isArray(value) ? value.map((_, index) => index) : Object.keys(value)
  return keys.flatMap((key) => {
    const path = [...above, key]
    return [path, ...pathsOf((value as Record<string | number, unknown>)[key], path)]
  })
}

/** A copy with another value at a path. */
function withValue(document: unknown, path: Path, value: unknown): unknown {
  const [key, ...rest] = path
  if (key === undefined) return value
  const copy = (
    Array.isArray(document) ? [...(document as unknown[])] : { ...(document as object) }
  ) as Record<string | number, unknown>
  copy[key] = withValue(copy[key], rest, value)
  return copy
}

const absurdNumber = fc.oneof(
  fc.constantFrom(
    0,
    -0,
    -1,
    -3,
    0.5,
    1,
    2,
    3,
    24,
    25,
    1e-300,
    1e-9,
    1e6,
    1e9,
    1e15,
    1e300,
    Number.MAX_VALUE,
    5e-324,
  ),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.integer({ min: -50, max: 50 }),
)
const anyValue = fc.oneof(
  { weight: 3, arbitrary: absurdNumber },
  fc.constantFrom(null, true, '', 'm1', 'y1', 'c1', '__proto__', 'constructor', '1,1', [], {}),
  fc.jsonValue({ maxDepth: 2 }),
)
const changes = fc.array(fc.tuple(fc.constantFrom(...pathsOf(SAMPLE)), anyValue), {
  minLength: 1,
  maxLength: 4,
})

function change(list: readonly (readonly [Path, unknown])[]): string {
  const changed = list.reduce<unknown>((document, [path, value]) => {
    try {
      return withValue(document, path, value)
    } catch {
      return document
    }
  }, SAMPLE)
  return JSON.stringify(changed)
}

/** Numbers of a plan that are none; JSON would turn them into null. */
function notFinite(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} = ${value}`]
  if (value === null || typeof value !== 'object') return []
  return Object.entries(value).flatMap(([key, inner]) => notFinite(inner, `${path}.${key}`))
}

describe('whatever stands in a project', () => {
  it('text of any kind has an outcome', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json(), fc.string({ unit: 'binary' })), (text) => {
        expect(readProjectText(text).kind).toMatch(/^(too-deep|not-json|not-a-project|invalid|newer)$/)
      }),
      { ...FUZZ, numRuns: runs(500) },
    )
  })

  it.each(FOUND)('%j as %j is answered', (path, value) => {
    const outcome = readProjectText(change([[path, value]]))
    if (outcome.kind !== 'opened') throw new Error(outcome.kind)
    answers(outcome.project)
  })

  it('wrong values are findings with a place; the engine answers with numbers', () => {
    fc.assert(
      fc.property(changes, (list) => {
        const outcome = readProjectText(change(list))
        if (outcome.kind === 'invalid') {
          for (const finding of outcome.findings) {
            expect(finding.where).not.toBe('')
            expect(finding.message).not.toMatch(/undefined|\[object|another value/)
          }
        }
        if (outcome.kind === 'opened') answers(outcome.project)
      }),
      FUZZ,
    )
  })
})

function answers(project: Project): void {
  const plan = planProject(project)
  expect(notFinite(plan)).toEqual([])
  expect(planReport(project, plan, 80, true).join('\n')).not.toMatch(
    /\bNaN\b(?!')|undefined|Infinity|\[object/,
  )
  const told = measureProject(project)
  expect(notFinite(told)).toEqual([])
  measureReport(project, told.motifs, 80)
  const wish = { width: 500, height: 400 }
  const fit = fitProject(project, wish)
  expect(notFinite(fit)).toEqual([])
  fitReport(project, wish, fit.arrangements, 80)
  expect(checkProject(project).every((finding) => finding.where !== '')).toBe(true)
}
