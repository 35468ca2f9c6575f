import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../../shared-types/plan'
import type { Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { joiningWords, projectSentence, sentenceText, shapeName } from '../../../src-core/figures/sentence'
import { sampleMotif, samplePlan } from './sample'
import { settled } from '../../../src-core/settled'

const example = (name: string): Project =>
  JSON.parse(readFileSync(`examples/${name}.petalyard`, 'utf8')) as Project
const { project, plan } = samplePlan({ columns: 12, rows: 10 })
const sized: Plan = { ...plan, size: { ...plan.size, width: 975, height: 686 } }
const say = (p: Project, q: Plan): string => sentenceText(projectSentence({ ...q, settled: settled(p) }))

describe('the project as a sentence', () => {
  it('tells count, motif, size, arrangement, joining and finished size', () => {
    expect(say(project, sized)).toBe(
      '120 six-petal flowers of 78 mm in offset rows of 12, joined at their tips: 97.5 × 68.6 cm (38⅜ × 27 in).',
    )
  })

  it('tells both sizes where there is an edging, in the chosen terms', () => {
    const edging = { style: 'bridge', length: 3200, height: 10, rounds: [], yarn: 'y1' }
    const edged = { ...sized, size: { ...sized.size, width: 995, height: 706 }, edging }
    expect(say(project, edged)).toContain(
      '97.5 × 68.6 cm (38⅜ × 27 in) before the border, 99.5 × 70.6 cm with it.',
    )
    expect(sentenceText(projectSentence(edged, 'UK'))).toContain('before the edging')
  })

  it('speaks imperial when the project does', () => {
    expect(say({ ...project, units: 'imperial' }, sized)).toContain(
      '3⅛ in, in offset rows of 12, joined at their tips: 38⅜ × 27 in (97.5 × 68.6 cm).',
    )
  })

  it('names the field of every part that can be changed, and only of those', () => {
    const fields = projectSentence(sized).flatMap((part) => (part.field ? [[part.field, part.text]] : []))
    expect(fields).toEqual([
      ['count', '120'],
      ['motif', 'six-petal flowers'],
      ['motif-size', '78 mm'],
      ['arrangement', 'offset rows'],
      ['columns', '12'],
      ['joining', 'joined at their tips'],
      ['size', '97.5 × 68.6 cm (38⅜ × 27 in)'],
    ])
  })

  it('tells rows of two lengths, rings and a single motif', () => {
    const fewer = { ...sized, motifs: sized.motifs.filter((m) => m.row % 2 === 1 || m.column < 12) }
    expect(say(project, fewer)).toContain('115 six-petal flowers of 78 mm in offset rows of 12 and 11,')
    // Straight rows are as long as each other but for what is left out.
    const lacking = { ...sized, arrangement: 'straight-rows' as const, motifs: sized.motifs.slice(1) }
    expect(say(project, lacking)).toContain('119 six-petal flowers of 78 mm in straight rows of up to 12,')
    const rings = {
      ...sized,
      arrangement: 'rings' as const,
      motifs: sized.motifs.filter((m) => m.row < 8 && m.column < 4),
    }
    expect(say(project, rings)).toContain('in three rings round one in the middle')
    const one = { ...sized, motifs: sized.motifs.slice(0, 1) }
    expect(say(project, one)).toMatch(/^1 six-petal flower of 78 mm in one row/)
  })

  it('tells what stands between the motifs and at the ends of rows', () => {
    const cloth = example('orangery-cloth')
    expect(say(cloth, planProject(cloth))).toContain(
      'joined where they touch, with 88 fillers: 79.2 × 105.6 cm',
    )
    const both = { ...planProject(cloth), halves: planProject(example('slate-roof-lap-blanket')).halves }
    expect(say(cloth, both)).toContain(`, with 88 fillers and ${both.halves.length} half motifs: `)
    const blanket = example('slate-roof-lap-blanket')
    const halves = planProject(blanket).halves.length
    expect(halves).toBeGreaterThan(0)
    expect(say(blanket, planProject(blanket))).toContain(`, with ${halves} half motifs:`)
  })

  it('says so when nothing is laid out', () => {
    expect(say(project, { ...plan, motifs: [] })).toBe('Nothing is arranged yet.')
    expect(say(project, { ...plan, motif: null })).toBe('Nothing is arranged yet.')
  })

  it('says what is missing where something was begun', () => {
    const begun = (more: Partial<Project>): string => {
      const own = planProject({ format: 'petalyard-project', version: 1, ...more })
      return sentenceText(projectSentence(own))
    }
    const blanket = { kind: 'blanket', motif: 'm', columns: 5, rows: 6 } as const
    const measured = {
      ...({ id: 'm', kind: 'measured', outline: 'petals', petals: 6 } as const),
      ...{ overTips: 80, overValleys: 55 },
    }
    expect(begun({ motifs: [{ id: 'm', kind: 'rounds', name: 'Quince' }], layout: blanket })).toBe(
      'Nothing is arranged yet. Quince: it has no written rounds yet.',
    )
    expect(begun({ motifs: [{ id: 'm', kind: 'rounds' }], layout: blanket })).toBe(
      'Nothing is arranged yet. Motif m: it has no written rounds yet.',
    )
    const { overTips: _, ...sizeless } = measured
    expect(begun({ motifs: [sizeless], layout: blanket })).toBe(
      'Nothing is arranged yet. Motif m: the measure tip to tip is missing.',
    )
    const mixed = { ...blanket, alternate: { motifs: ['m', 'n'], by: 'cell' as const } }
    expect(begun({ motifs: [measured, { id: 'n', kind: 'rounds', name: 'Leaf' }], layout: mixed })).toBe(
      'Nothing is arranged yet. Leaf: it has no written rounds yet.',
    )
    expect(begun({ motifs: [measured], layout: { ...blanket, columns: 0 } })).toMatch(
      /^Nothing is arranged yet. Columns: found 0, /,
    )
    expect(begun({ layout: { kind: 'garland' } })).toBe('Nothing hangs on the cord yet.')
    // Nothing was begun.
    expect(begun({})).toBe('Nothing is arranged yet.')
  })

  it('tells tips and shoulders apart by what is joined of them', () => {
    const edges = settled({ ...project, joining: { rule: 'edges' } })
    const joins = (...anchors: string[]) => [
      ...[{ x: 0, y: 0, spread: 0, host: '1,1' }].map((node) => ({
        ...node,
        members: anchors.map((anchor, i) => ({ motif: `1,${i + 1}`, anchor })),
      })),
    ]
    const words = (...anchors: string[]) => joiningWords(edges, sampleMotif(), joins(...anchors))
    expect(words('tip-1', 'tip-4')).toBe('joined tip to tip')
    expect(words('tip-1', 'tip-3', 'tip-5')).toBe('joined at their tips')
    expect(words('tip-1', 'shoulder-4-1')).toBe('joined at tips and shoulders')
    expect(words('shoulder-1-2', 'shoulder-4-1')).toBe('joined at their shoulders')
    expect(joiningWords(edges, { ...sampleMotif(), shape: 'round' }, joins('place-1', 'place-2'))).toBe(
      'joined where they touch',
    )
  })

  it.each([
    [0, 'joined at tips and shoulders'],
    [15, 'joined at their shoulders'],
    [30, 'joined tip to tip'],
  ])('says of a whole plan rotated by %s° what its joins are', (turn, words) => {
    const base = example('lantern-table-mat')
    const layout = { ...base.layout, turn } as Project['layout']
    const turned: Project = { ...base, joining: { ...base.joining, rule: 'edges' }, layout }
    expect(say(turned, planProject(turned))).toContain(`, ${words}`)
  })

  it('tells every rule of joining', () => {
    const words = (joining: Project['joining'], shape: 'petals' | 'round' | 'straight' = 'petals'): string =>
      joiningWords(settled({ ...project, joining }), { ...sampleMotif(), shape })
    expect(words({ rule: 'tips' })).toBe('joined tip to tip')
    const three = {
      x: 0,
      y: 0,
      spread: 2,
      host: '1,1',
      members: [1, 2, 3].map((n) => ({ motif: `1,${n}`, anchor: 'tip-1' })),
    }
    expect(joiningWords(settled(project), sampleMotif(), [three])).toBe('joined at their tips')
    expect(words({ rule: 'tips' }, 'round')).toBe('joined where they touch')
    expect(words({ rule: 'tips' }, 'straight')).toBe('joined at the corners')
    expect(words({ rule: 'edges' })).toBe('joined at tips and shoulders')
    expect(words({ rule: 'bridge', bridgeChains: 3 })).toBe('joined with chains of 3')
    expect(words({ rule: 'seam', seam: 'whip' })).toBe('sewn together')
    expect(words({ rule: 'seam', seam: 'sc' })).toBe('crocheted together')
    expect(words({ rule: 'apart', gap: 5 })).toBe('laid 5 mm apart')
  })

  it('calls motifs what they are', () => {
    expect(shapeName({ ...sampleMotif(), petals: 24 }, false)).toBe('twenty-four-petal flower')
    expect(shapeName({ ...sampleMotif(), shape: 'straight', petals: 4 }, true)).toBe('squares')
    expect(shapeName({ ...sampleMotif(), shape: 'leaf' }, true)).toBe('leaves')
  })
})
