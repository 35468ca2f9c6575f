/** What a file holds that would be written otherwise is told when it is opened; whatever is not told comes back. */
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readProjectText } from '../../../src-main/documents/read'
import { projectFiles } from '../../../src-main/documents/session/project-files'
import { unkeptIn } from '../../../src-main/documents/unkept'
import { seededRandom } from '../../../src-core/units/random'
import { runs } from '../../runs'

const project = (more: string) => `{"format":"petalyard-project","version":1,\n${more}}`

/** A whole number as it is written, without a power of ten. */
function plain(number: number): string {
  const [, first = '', more = '', power] = /^(\d)(?:\.(\d+))?e\+(\d+)$/.exec(String(number)) ?? []
  return power === undefined ? String(number) : first + more.padEnd(Number(power), '0')
}

describe('what cannot be kept', () => {
  it.each([
    ['"x": 12345678901234567890', 'line 2: the number 12345678901234567890'],
    ['"x": [1, 1e400]', 'line 2: the number 1e400'],
    ['"x": -1e-400', 'line 2: the number -1e-400'],
    ['"x": {"y": 0.1000000000000000055}', 'line 2: the number 0.1000000000000000055'],
    ['"x": 9007199254740993', 'line 2: the number 9007199254740993'],
    ['"x": 1,\n"x": 2', 'line 3: ‘x’ stands there twice'],
    ['"x": {"a": {"b": 1, "\\u0062": 2}}', 'line 2: ‘b’ stands there twice'],
  ])('is told of %j', (more, told) => {
    expect(unkeptIn(project(more))).toEqual([told])
    const checked = projectFiles.check(project(more), 'a.petalyard')
    expect(checked.ok && checked.findings.map(({ code, message }) => [code, message])).toEqual([
      ['app/not-kept', `not all of this file can be kept as it stands: ${told}.`],
    ])
  })

  it.each([
    '"x": [0, -0, 1.50, 1E3, 1e-7, 100000000000000000000, 0.30000000000000004, 5e-324, 1.7976931348623157e308]',
    '"x": [{"a": 1}, {"a": 1}], "y": {"a": {"a": 1}}',
    '"x": ["x", "x", "1e400", "\\"x\\": 12345678901234567890", "\\\\"], "__proto__": 1, "constructor": 2',
  ])('is nothing of %s', (more) => expect(unkeptIn(project(more))).toEqual([]))

  it('is nothing of any example', () => {
    const examples = new URL('../../../examples/', import.meta.url)
    for (const name of readdirSync(examples).filter((each) => each.endsWith('.petalyard')))
      expect(unkeptIn(readFileSync(new URL(name, examples), 'utf8')), name).toEqual([])
  })

  it('is every number that comes back otherwise, and no other', () => {
    const random = seededRandom(7)
    const digits = (count: number) => Array.from({ length: count }, () => random.below(10)).join('')
    for (let times = 0; times < runs(600); times++) {
      const whole = BigInt(`1${digits(random.below(22))}`)
      expect(unkeptIn(`[${whole}]`).length === 0, String(whole)).toBe(plain(Number(whole)) === String(whole))
      // What JavaScript writes comes back.
      const written = JSON.stringify(Number(`0.${digits(18)}e${random.below(600) - 300}`))
      expect(unkeptIn(`[${written}]`), written).toEqual([])
    }
  })

  it('keeps all else: fields, their order, and the digits of numbers', () => {
    const text = project('"zeta":{"n":[0.1,12345678901234,1e+21]},"yarns":[{"twist":"Z","id":"y1"}]').replace(
      '\n',
      '',
    )
    const outcome = readProjectText(text)
    expect(outcome.kind === 'opened' && outcome.unkept).toEqual([])
    expect(outcome.kind === 'opened' && JSON.stringify(outcome.project)).toBe(text)
  })
})
