import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { renderMap } from '../../../src-main/paper'
import { listCsv } from '../../../src-main/paper/lists'
import { planReport } from '../../../src-main/command/reports/plan'
import { DATE, flowers, VERSION } from './projects'
import { readPdf } from './read-pdf'

/** A blanket whose motif has one weight for two colours, and whose bands nobody entered. */
function guessed(): Project {
  const project = flowers()
  return {
    ...project,
    yarns: (project.yarns ?? []).map((yarn, i) => ({
      ...{ ...yarn, ballGrams: 50, ballMetres: 125, price: 4, assumed: ['ballGrams', 'ballMetres'] },
      onHandGrams: 0,
      ...(i === 0 ? { onHandBalls: 2 } : {}),
    })),
    motifs: (project.motifs ?? []).map((motif) => ({
      ...motif,
      slots: [{ slot: 'centre' }, { slot: 'petals' }],
      weighed: { motifs: 10, grams: 40 },
    })),
    layout: { ...project.layout!, kit: { count: 3, marginPercent: 30 } },
  } as Project
}

/** The same with the bands entered. */
const known = (project: Project): Project => ({
  ...project,
  yarns: (project.yarns ?? []).map(({ assumed: _, ...yarn }) => yarn),
})

const textOf = async (project: Project): Promise<string> => {
  const bytes = await renderMap(planProject(project), { date: DATE, version: VERSION })
  return (await readPdf(bytes)).pages.map(({ words }) => words).join('\n')
}

describe('a ball band that nobody entered', () => {
  it('stars every number of the materials and the kit that follows from it, and says once what that means', async () => {
    const project = guessed()
    const plan = planProject(project)
    const words = await textOf(project)
    // Cost and what is on hand are told where no kit is sold: with one the materials are for who buys it.
    const own: Project = { ...project, layout: { ...project.layout, kit: undefined } as Project['layout'] }
    const ownWords = await textOf(own)
    const materials = ownWords.slice(ownWords.indexOf('Materials'))
    for (const { balls, cost, onHand, metres } of plan.yarns) {
      expect(materials).toContain(`${balls}*`)
      expect(materials).toContain(`€${cost!.toFixed(2)}*`)
      expect(materials).toContain(`${metres!.expected.toFixed(0).replace(/\B(?=(\d{3})+$)/, ',')} m*`)
      if (onHand > 0) expect(materials).toContain(`${onHand} g*`)
    }
    expect(materials).toContain('split by area')
    expect(words).toContain('(assumed)')
    expect(words.match(/\* assumed, as the skein band is not entered yet/g)!.length).toBeLessThanOrEqual(2)
    const sure = await textOf(known(project))
    expect(sure).not.toMatch(/\d\*|assumed: nobody/)
  })

  it('has a column in the lists for a spreadsheet, where numbers stay numbers', () => {
    const project = guessed()
    const plan = planProject(project)
    const materials = listCsv('materials', plan)!.split('\r\n')
    expect(materials[0]).toMatch(/currency,weight of a colour,assumed$/)
    expect(materials[1]).toMatch(
      /,100,\d+,[\d.]+,\d+,EUR,split by area,"metres, yards, balls, grams on hand, balls to buy, grams left over, cost"$/,
    )
    expect(listCsv('kit', plan)!.split('\r\n')[1]).toMatch(/,"metres, yards"$/)
    expect(listCsv('purchase', plan)!.split('\r\n')[1]).toMatch(/^Brick \(assumed\),[^,]*,,50,/)
    const sure = known(project)
    expect(listCsv('materials', planProject(sure))!.split('\r\n')[1]).toMatch(/,split by area,$/)
  })

  it('is marked on the command line, within 80 columns', () => {
    const project = guessed()
    const lines = planReport(project, planProject(project), 80, false)
    const text = lines.join('\n')
    expect(text).toMatch(/on hand/)
    expect(text).toMatch(/^\S.* 100 g\* +\d+\* +\d+ g\* +€\d+\.\d\d\*$/m)
    expect(text.match(/\* assumed, as the skein band is not entered yet/g)).toHaveLength(1)
    expect(text.replace(/\s+/g, ' ')).toContain('split by area')
    expect(text).toMatch(/€\d+\.\d\d \(assumed\) for the batch/)
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(80)
  })
})

describe('a motif that nobody weighed', () => {
  it('has no weight of 0 on paper or in the report, and nothing summed up', async () => {
    const project = flowers()
    const bare: Project = {
      ...project,
      motifs: (project.motifs ?? []).map(({ weighed: _w, unravelled: _u, ...motif }) => ({
        ...motif,
        ...(motif.kind === 'measured' && { slots: [{ slot: 'centre' }, { slot: 'petals' }] }),
      })),
    } as Project
    expect(planProject(bare).yarns.every(({ grams }) => grams.high === 0)).toBe(true)
    const words = await textOf(bare)
    expect(words).toContain('not known yet')
    expect(words).not.toMatch(/\b0\*? (?:g|oz|m|yd)\b|together/)
    const report = planReport(bare, planProject(bare), 80, false).join('\n')
    expect(report).toContain('not known yet')
    expect(report).not.toMatch(/\b0 g\b/)
  })
})
