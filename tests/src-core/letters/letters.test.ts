import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { colourwayMarks } from '../../../src-core/figures/marks'
import { createLetterFindings } from '../../../src-core/letters/findings'
import { printableText, unprintable } from '../../../src-core/letters/printable'
import { scriptsOf } from '../../../src-core/letters/scripts'
import { checkProject, createPlanner } from '../../../src-core/plan'
import { samplePlan } from '../figures/sample'
import { settled } from '../../../src-core/settled'

const base: Project = {
  format: 'petalyard-project',
  version: 1,
  title: 'Λουλούδια · Цветочный плед · Kwiat ½ – “Ørsted” ✓ →',
  yarns: [{ id: 'y1', name: 'Żółty', colour: '#e8c14a' }],
  motifs: [{ id: 'm1', kind: 'measured', outline: 'petals', petals: 6, overTips: 78, name: 'Flower' }],
  colourways: [{ id: 'c1', code: 'A', name: 'Ёлка', motif: 'm1', yarns: {} }],
  layout: { kind: 'blanket', motif: 'm1', columns: 3, rows: 3 },
}
const letters = (project: Project) => checkProject(project).filter(({ code }) => code.startsWith('letters/'))

describe('texts that paper cannot print', () => {
  it('are none in Latin, Greek and Cyrillic', () => {
    expect(letters(base)).toEqual([])
  })

  it('are told with what they are, their characters and their script', () => {
    const [one] = letters({ ...base, title: 'Throw שלום' })
    expect(one).toMatchObject({ code: 'letters/missing', severity: 'warning', where: 'title' })
    expect(one!.message).toBe('the title: the font used on paper has no ש, ל, ו and ם (Hebrew).')
    expect(one!.mend).toContain('spelled in Latin letters')
  })

  it('are found in every field that is printed', () => {
    const odd = '毛'
    const rounds: Project = {
      ...base,
      ...{ title: odd, designer: odd, notes: odd, gauge: { stitch: odd } },
      yarns: [{ id: 'y1', name: odd, fibre: odd }],
      motifs: [
        {
          ...{ id: 'm1', kind: 'rounds', name: odd, special: odd, instructions: odd },
          rounds: [{ slot: odd, work: `Rnd 1: 6 sc in ring. ${odd}` }],
        },
        { id: 'm2', kind: 'measured', outline: 'round', across: 50, slots: [{ slot: `${odd}糸` }] },
      ],
      colourways: [{ id: 'c1', code: odd, name: odd, motif: 'm1', yarns: {} }],
      layout: {
        kind: 'garland',
        items: [{ bead: odd, size: 8 }, { motif: 'm2' }, { bead: odd, size: 8 }],
        kit: { count: 2, extras: [{ name: odd }], care: odd, pattern: { by: odd } },
      },
    }
    expect(
      letters(rounds)
        .map(({ where }) => where)
        .sort(),
    ).toEqual(
      [
        ...['title', 'designer', 'notes', 'gauge.stitch', 'yarns[0].name', 'yarns[0].fibre'],
        ...['motifs[0].name', 'motifs[0].instructions', 'motifs[0].slots', 'motifs[0].rounds'],
        ...['motifs[0].special', 'motifs[1].slots', 'colourways[0].code', 'colourways[0].name'],
        ...['layout.items[0].bead', 'layout.kit.extras[0].name', 'layout.kit.care', 'layout.kit.pattern.by'],
      ].sort(),
    )
  })

  it('name eight characters and count the rest', () => {
    const [one] = letters({ ...base, notes: 'ไหมพรมสีฟ้าอ่อนนุ่ม' })
    expect(one!.message).toMatch(/and \d+ more \(Thai\)\.$/)
  })

  it('are not worked out again while no text changes', () => {
    const find = createLetterFindings()
    const project = { ...base, title: '花' }
    const first = find(project)
    expect(find({ ...project, units: 'imperial', layout: { kind: 'blanket', rows: 9 } })).toBe(first)
    expect(find({ ...project, title: '花🌼' })).not.toBe(first)
  })

  it('stand in the plan, with which the window and the command line work', () => {
    const { findings } = createPlanner().plan({ ...base, notes: 'مرحبا' })
    expect(findings.map(({ code }) => code)).toContain('letters/missing')
  })
})

describe('printable text', () => {
  const spell = (text: string): string => `<${text}>`

  it('keeps what the face has and composes accents', () => {
    expect(printableText('Cafe\u0301\tau\nlait', spell)).toBe('Café au lait')
  })

  it('spells a character as a reader counts it, and drops what prints nothing', () => {
    expect(printableText('a\u202e👩‍👩‍👧b\u0000', spell)).toBe('a<👩👩👧>b')
    expect(unprintable('שׁ and שׁ')).toHaveLength(1)
    expect(unprintable('\ud800')).toHaveLength(1)
  })

  it('knows the scripts by name', () => {
    expect(scriptsOf(['ש', 'م', '毛', 'ウ', '양', 'ไ', '🧶', '⸘'])).toEqual([
      ...['Hebrew', 'Arabic', 'Chinese or Japanese', 'Japanese', 'Korean', 'Thai', 'emoji'],
    ])
  })
})

describe('the letter of a colourway that paper lacks', () => {
  it('is another one that no colourway has', () => {
    const { project, plan } = samplePlan({ columns: 4, rows: 4, colourways: 4 })
    const codes = ['B', 'א', undefined, 'ב']
    const colourways = project.colourways!.map((way, i) => ({ ...way, code: codes[i] }))
    const marks = colourwayMarks({
      ...plan,
      settled: settled({ ...project, colourways: colourways.slice(0, 4) }),
    })
    // The third has none of its own and is C by its place, in the plan and on paper; what paper lacks comes after it.
    expect(marks.map(({ code }) => code)).toEqual(['B', 'D', 'C', 'E'])
  })
})
