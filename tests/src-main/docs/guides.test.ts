/** The guides stay true: the numbers they give are those of the project beside them, and the window has the names. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../../shared-types/plan'
import type { Project } from '../../../shared-types/project'
import { projectSchema } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import {
  formatLength,
  formatMass,
  formatMassRange,
  formatMoney,
  formatNumber,
  formatSize,
} from '../../../src-core/units/format'

const root = fileURLToPath(new URL('../../../', import.meta.url))
const textOf = (path: string): string => readFileSync(join(root, path), 'utf8')
const projectOf = (name: string): Project =>
  projectSchema.parse(JSON.parse(textOf(`docs/projects/${name}.petalyard`)))

const size = ({ width, height }: Plan['size']): string => formatSize(width, height, 'metric')
const nameOf = ({ yarns }: Project, id: string): string => yarns?.find((yarn) => yarn.id === id)?.name ?? id
/** The cells of tables, with one blank between. */
const flat = (page: string): string => textOf(page).replace(/\s+/g, ' ')

describe('the guide for makers', () => {
  const page = flat('docs/guide-maker.md')
  const project = projectOf('harbour-lap-blanket')
  const plan = planProject(project)
  const { layout } = project
  const bare = planProject({
    ...project,
    layout: layout?.kind === 'blanket' ? { ...layout, edging: undefined } : layout,
  })

  it('gives the sizes and counts of its blanket, before and after the edging', () => {
    expect(page).toContain(`${size(bare.size).replace(' cm', '')} | ${bare.counts.motifs} | 658`)
    expect(bare.counts.joins).toBe(658)
    expect(page).toContain(`brings the blanket to ${size(plan.size)}`)
    expect(page).toContain(`the blanket takes ${formatNumber(bare.minutes!.expected / 60)} hours`)
  })

  it('gives its shopping list', () => {
    for (const { id, grams, balls, toBuy } of bare.yarns)
      expect(page).toContain(
        `| ${nameOf(project, id)} | ${formatMassRange(grams, 'metric')} | ${balls} | ${toBuy} |`,
      )
  })

  it('gives the joins of the motif that its picture shows', () => {
    expect(page).toContain('Motif 32, row 3, motif 2')
    expect(plan.motifs.find(({ label }) => label === '32')).toMatchObject({ row: 3, column: 2 })
  })
})

describe('the guide for sellers', () => {
  const page = flat('docs/guide-seller.md')
  const project = projectOf('lemon-grove-garland')
  const plan = planProject(project)

  it('gives the cord of its garland and what hangs on it', () => {
    const { cord, items } = plan.garland!
    expect(page).toContain(`${items.length} things hang on it, 14 flowers and 13 leaves`)
    expect(page).toContain(`That makes ${cord.whole.chains} chains with both ties`)
  })

  it('gives what one kit takes, costs and sells for', () => {
    const kit = plan.kit!
    for (const { yarn, grams } of kit.perKit)
      expect(page).toContain(`| ${nameOf(project, yarn)} | ${formatMass(grams, 'metric')} |`)
    expect(page).toContain(`| it costs you | ${formatMoney(kit.costPerKit!, 'GBP')} |`)
    expect(page).toContain(`| price, tax not included | ${formatMoney(kit.asked!.withTax, 'GBP')} |`)
  })
})

describe('the guide for designers', () => {
  const page = flat('docs/guide-designer.md')
  const project = projectOf('quay-side-runner')
  const plan = planProject(project)

  it('gives the size of its runner and its yarn', () => {
    expect(page).toContain(`${plan.counts.motifs} rosettes, ${size(plan.size)}`)
    for (const { id, grams } of plan.yarns)
      expect(page).toContain(`${formatMass(grams.expected, 'metric')} of ${nameOf(project, id)}`)
    expect(formatLength(plan.motif!.overTips, 'metric')).toBe('60 mm')
  })

  it('has the rounds that it shows', () => {
    const motif = project.motifs![0]!
    const rounds = motif.kind === 'rounds' ? motif.rounds! : []
    expect(rounds.length).toBe(3)
    for (const { work } of rounds) expect(page).toContain(work)
  })
})

describe.each(['guide-maker', 'guide-seller', 'guide-designer', 'how-do-i', 'window'])(
  'docs/%s.md',
  (name) => {
    /** What is set in bold and is no name of the window. */
    const EMPHASIS =
      /^(What may go wrong\.|An odd number of petals\??|Error\.|Look at the findings\.|Joined at .*)$/
    const sources = ['src-renderer', 'src-core', 'src-main/paper']
      .flatMap((room) =>
        readdirSync(join(root, room), { recursive: true, encoding: 'utf8' }).map((path) => `${room}/${path}`),
      )
      .filter((path) => /\.(ts|svelte)$/.test(path))
      .map(textOf)
      .join('\n')
      .replace(/\s+/g, ' ')
      .toLowerCase()
    /** Names that the window puts together, with the parts that stand in its source. */
    const PUT_TOGETHER: Readonly<Record<string, readonly string[]>> = {
      'Dip to dip, across': ['dip to dip', ', across'],
      'Ball band and price': [' band and price'],
      'Balls on hand': [' on hand'],
      'Winding and cutting (CSV)': ['winding and cutting', ' (csv)'],
      'Purchases (CSV)': ['purchases', ' (csv)'],
      'Export the map as PDF': ['export ', ' as pdf'],
      'Save … PDFs in a ZIP': ['save ', ' in a zip'],
      'Print the map…': ['print ', 'the map'],
      'Use for … shades': ['use for '],
      'Skip to the map': ['skip to the'],
      'Motifs made when you counted it': [' made when you counted it'],
    }
    const isInTheWindow = (phrase: string): boolean =>
      (PUT_TOGETHER[phrase] ?? [phrase.toLowerCase().replace('colors', 'colours')]).every((part) =>
        sources.includes(part),
      )

    it('names what the window names', () => {
      const bold = [...textOf(`docs/${name}.md`).matchAll(/\*\*([^*]+)\*\*/g)].map(
        ([, phrase = '']) => phrase,
      )
      expect(bold.length).toBeGreaterThan(10)
      expect(bold.filter((phrase) => !EMPHASIS.test(phrase) && !isInTheWindow(phrase))).toEqual([])
    })
  },
)
