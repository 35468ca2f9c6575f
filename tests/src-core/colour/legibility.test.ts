import { readFileSync } from 'node:fs'
import { parse } from 'culori'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { newColourway } from '../../../src-renderer/state/edits/yarn'
import {
  colourDifference,
  greyDifference,
  legibilityFindings,
  letterFindings,
} from '../../../src-core/colour/legibility'

const hex = (text: string) => {
  const colour = parse(text)
  if (!colour) throw new Error(text)
  return colour
}

const pairs = readFileSync(new URL('../../fixtures/ciede2000-pairs.csv', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => /^\d/.test(line))
  .map((line) => line.split(',').map(Number))

describe('colour difference', () => {
  it('agrees with the 34 published pairs of §ciede2000 to four decimals', () => {
    // Sharma, Wu, Dalal, Color Res. Appl. 30 (2005) 21–30, supplementary test data.
    expect(pairs).toHaveLength(34)
    for (const [, l1 = 0, a1 = 0, b1 = 0, l2 = 0, a2 = 0, b2 = 0, published = 0] of pairs) {
      const first = { mode: 'lab65', l: l1, a: a1, b: b1 } as const
      const second = { mode: 'lab65', l: l2, a: a2, b: b2 } as const
      expect(Math.abs(colourDifference(first, second) - published)).toBeLessThan(5.1e-5)
      expect(Math.abs(colourDifference(second, first) - published)).toBeLessThan(5.1e-5)
    }
  })

  it('takes greys apart by lightness alone', () => {
    expect(greyDifference(hex('#777777'), hex('#777777'))).toBe(0)
    expect(greyDifference(hex('#000000'), hex('#ffffff'))).toBeCloseTo(100, 3)
    expect(greyDifference(hex('#009e73'), hex('#d55e00'))).toBeLessThan(5)
  })
})

const yarns = [
  { id: 'y1', name: 'Cream', colour: '#f4ecd8' },
  { id: 'y2', name: 'Ivory', colour: '#f6efdf' },
  { id: 'y3', name: 'Leaf', colour: '#009e73' },
  { id: 'y4', name: 'Brick', colour: '#d55e00' },
  { id: 'y5', name: 'Ink', colour: '#10182c' },
]
const colourway = (code: string, centre: string, petals: string) => ({
  id: `c${code}`,
  code,
  motif: 'm1',
  yarns: { centre, petals },
})

describe('letters of colourways and of yarns in the pattern', () => {
  const way = (code: string, ...parts: string[]) => ({
    ...{ id: `c${code}`, code, motif: 'm1' },
    yarns: Object.fromEntries(parts.map((part) => [part, 'y1'])),
  })

  it('are told where they meet, and only where there are several colourways', () => {
    const found = letterFindings(['A', 'B', 'C'].map((code) => way(code, 'main', 'color B', 'color C')))
    expect(found.map(({ code, severity }) => [code, severity])).toEqual([['colours/letters-meet', 'note']])
    expect(found[0]!.message).toMatch(/letters B and C .*“Join B”/)
    expect(letterFindings([way('B', 'color B')])).toEqual([])
    expect(letterFindings([way('D', 'colour B'), way('E', 'colour B')])).toEqual([])
    expect(letterFindings([way('B', 'petals'), way('C', 'petals')])).toEqual([])
  })

  it('keep apart of themselves where a colourway is added', () => {
    const colourways = [way('A', 'main', 'color B', 'color C')]
    const rounds = ['main', 'color B', 'color C'].map((slot) => ({ slot, work: 'ch 1' }))
    const project: Project = {
      ...{ format: 'petalyard-project', version: 1, yarns: [{ id: 'y1' }], colourways },
      motifs: [{ id: 'm1', kind: 'rounds', rounds }],
    }
    expect(newColourway(project, 'm1').code).toBe('D')
  })
})

describe('legibility', () => {
  it('reports yarns that are hard to tell apart, with their difference and the colourways', () => {
    const found = legibilityFindings(yarns, [colourway('A', 'y5', 'y1'), colourway('B', 'y5', 'y2')])
    expect(found.map((finding) => finding.code)).toEqual(['colours/close'])
    expect(found[0]?.message).toContain('Cream and Ivory')
    expect(found[0]?.message).toContain('A and B')
  })

  it('reports yarns that print to the same grey', () => {
    const found = legibilityFindings(yarns, [colourway('A', 'y5', 'y3'), colourway('B', 'y5', 'y4')])
    expect(found.map((finding) => finding.code)).toEqual(['colours/same-grey'])
  })

  it('leaves in peace what no two colourways differ by', () => {
    expect(legibilityFindings(yarns, [colourway('A', 'y1', 'y2')])).toEqual([])
    expect(legibilityFindings(yarns, [colourway('A', 'y1', 'y5'), colourway('B', 'y5', 'y2')])).toEqual([])
    expect(legibilityFindings(yarns, [])).toEqual([])
  })

  it('names a colour that cannot be read, and takes a yarn without one as it is', () => {
    const found = legibilityFindings([{ id: 'y1', colour: 'sea-ish' }, { id: 'y2' }], [])
    expect(found.map((finding) => finding.code)).toEqual(['colours/unreadable'])
  })
})
