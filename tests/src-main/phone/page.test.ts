import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project, RoundsMotif } from '../../../shared-types/project'
import { placedPieces } from '../../../src-core/layout/placed'
import { memoised } from '../../../src-core/memo'
import { planProject } from '../../../src-core/plan'
import { listExamples } from '../../../src-main/documents/examples'
import { readProjectText } from '../../../src-main/documents/read'
import { unpacked, wordsOf } from '../../../src-main/phone/packed'
import { phonePage } from '../../../src-main/phone/page'
import { edgingTitle } from '../../../src-main/paper/words-edging'
import { escaped } from '../../../src-main/paper/svg'
import { editionText } from '../../../src-core/notation/translate'

const VERSION = { version: '1.0.0' }
function made(project: Project) {
  const plan = planProject(project)
  return { plan, page: phonePage(plan, VERSION) }
}
const EXAMPLES = listExamples().map(({ name, text }) => {
  const outcome = readProjectText(text)
  if (outcome.kind !== 'opened') throw new Error(name)
  const { project } = outcome
  return { name, project, made: memoised(() => made(project)) }
})
const example = (name: string): Project => EXAMPLES.find((entry) => entry.name === name)!.project

const between = (page: string, before: string, after: string): string => {
  const from = page.indexOf(before) + before.length
  return page.slice(from, page.indexOf(after, from))
}
const dataOf = (page: string) =>
  unpacked(between(page, '<script type="application/json" id="data">', '</script>'))
const scriptOf = (page: string) => between(page, '</script>\n<script>', '</script>\n</body>')
const sha = (text: string) => createHash('sha256').update(text, 'utf8').digest('base64')

describe('the page for a phone', () => {
  it('says what its steps take for known: which side is which, and where a side is joined evenly', () => {
    const own = EXAMPLES.find(({ name }) => name === 'saltmarsh-bag')!
    const { page } = own.made()
    const data = dataOf(page)
    expect(data.words.some((words) => words.includes('evenly along the side'))).toBe(true)
    expect(page).toContain('Side 1 follows corner 1 in the direction of work')
    expect(page).toContain('Evenly along a side means a quarter, half and three quarters of the way')
    expect(page).toContain('Where three or more meet, every motif that comes later joins into the space')
    const { page: sewn } = EXAMPLES.find(({ name }) => name === 'slate-roof-lap-blanket')!.made()
    expect(sewn).toContain('Side 1 follows corner 1 in the direction of work')
    expect(sewn).not.toMatch(/Evenly along a side|Where three or more meet/)
  })

  it('names the yarns of a motif as the pages do', () => {
    const { page } = EXAMPLES.find(({ name }) => name === 'saltmarsh-bag')!.made()
    expect(dataOf(page).ways.map(({ yarns }) => yarns)).toContain(
      'Thrift pink middle, Brine rounds, Chalk path edge',
    )
  })

  it.each(EXAMPLES)('tells of $name every piece, its words as the plan has them, in working order', (own) => {
    const { plan, page } = own.made()
    const data = dataOf(page)
    const ids = data.pieces.map(({ id }) => id).filter((id) => id !== '')
    expect([...ids].sort()).toEqual(
      placedPieces(plan)
        .map(({ id }) => id)
        .sort(),
    )
    if (plan.kind === 'blanket') {
      const steps = new Map(plan.order.map(({ motif, words }) => [motif, words]))
      expect(ids.slice(0, plan.order.length)).toEqual(plan.order.map(({ motif }) => motif))
      for (const piece of data.pieces) expect(wordsOf(data, piece)).toBe(steps.get(piece.id) ?? '')
    }
    for (const { x, y, reach } of data.pieces) {
      expect(x).toBeGreaterThanOrEqual(0)
      expect(x).toBeLessThanOrEqual(data.width)
      expect(y).toBeGreaterThanOrEqual(0)
      expect(y).toBeLessThanOrEqual(data.height)
      expect(reach).toBeGreaterThan(0)
    }
  })

  it.each(EXAMPLES)(
    'has the border of $name in words, round by round, as its page on paper has them',
    (own) => {
      const { plan, page } = own.made()
      const { edging, settled } = plan
      const { terms } = settled.sheet
      const title = `<h2>${edgingTitle(terms)}</h2>`
      expect(page.includes(title)).toBe(edging !== null && edging !== undefined)
      if (!edging) return
      const part = between(page, title, '</section>')
      const loops = edging.loops ?? edging.plain ?? []
      for (const { number, stitches } of edging.rounds) {
        expect(part).toContain(`Round ${number}`)
        if (loops.length < 2) expect(part).toContain(stitches.toLocaleString('en'))
        else if (number === 1) for (const loop of loops) expect(part).toContain(`work ${loop.stitches} `)
      }
      for (const text of loops.flatMap(({ texts }) => texts))
        expect(part).toContain(escaped(editionText(text, settled.terms, terms)))
    },
  )

  it.each(EXAMPLES)('is one file of $name that loads nothing and runs its own script alone', (own) => {
    const { plan, page } = own.made()
    const policy = between(page, 'http-equiv="Content-Security-Policy" content="', '"')
    expect(policy).toContain("default-src 'none'")
    expect(policy).toContain(`script-src 'sha256-${sha(scriptOf(page))}'`)
    expect(policy).toContain(`style-src 'sha256-${sha(between(page, '<style>', '</style>'))}'`)
    // The one address is the name of a language for drawings, which nobody fetches.
    expect(page.match(/https?:\/\/[^"'`\s]+/g) ?? []).toEqual(['http://www.w3.org/2000/svg'])
    expect(page).not.toMatch(/\ssrc=|<link|@import|url\(/)
    expect(phonePage(plan, VERSION)).toBe(page)
  })

  it('stays within 400 kB with a border that follows all of its flowers', () => {
    const throwOf = example('hedgerow-baby-throw')
    const layout = { ...(throwOf.layout as BlanketLayout), columns: 40, rows: 25 }
    const edging = { ...layout.edging, style: 'follow' as const, rounds: ['sc'] }
    const plan = planProject({ ...throwOf, layout: { ...layout, edging } })
    expect(plan.motifs.length).toBeGreaterThan(980)
    expect(Buffer.byteLength(phonePage(plan, VERSION))).toBeLessThanOrEqual(400_000)
  })

  it('lists each filler in the row after whose motif it is joined, as paper does', () => {
    const plan = planProject(example('causeway-lap-blanket'))
    const { pieces } = unpacked(between(phonePage(plan, VERSION), 'id="data">', '</script>'))
    expect(pieces.some(({ name }) => name === 'filler')).toBe(true)
    let row = 0
    for (const piece of pieces) {
      if (piece.name === 'motif') row = piece.row
      expect(piece.row, piece.label).toBe(row)
    }
    // The first row is done before any filler is.
    expect(pieces.filter((piece) => piece.row === 1).every(({ name }) => name === 'motif')).toBe(true)
  })

  it('stays within them with many motifs left out, each a hole with a border of its own', () => {
    const throwOf = example('hedgerow-baby-throw')
    const layout = throwOf.layout as BlanketLayout
    const motifs = Object.fromEntries(
      Array.from({ length: 62 }, (_, i) => [`${2 + 3 * (i % 8)},${2 + 5 * Math.floor(i / 8)}`, null]),
    )
    const cells = { ...layout.cells, motifs }
    const plan = planProject({ ...throwOf, layout: { ...layout, columns: 40, rows: 25, cells } })
    expect(plan.motifs.length).toBeGreaterThan(920)
    expect(plan.edgingLines.length).toBeGreaterThan(60)
    expect(Buffer.byteLength(phonePage(plan, VERSION))).toBeLessThanOrEqual(400_000)
  })

  it('stays within 400 kB for a thousand motifs', () => {
    const project = example('market-stall-throw')
    const layout = { ...(project.layout as BlanketLayout), columns: 25, rows: 40 }
    const plan = planProject({ ...project, layout })
    expect(plan.motifs).toHaveLength(1000)
    expect(Buffer.byteLength(phonePage(plan, VERSION))).toBeLessThanOrEqual(400_000)
  })

  it('stays within them with rounds, joining rounds and charts of several motifs', () => {
    const project = example('orchard-wall-throw')
    const layout = { ...(project.layout as BlanketLayout), columns: 25, rows: 41 }
    const plan = planProject({ ...project, layout })
    expect(plan.motifs.length).toBeGreaterThan(1000)
    const page = phonePage(plan, VERSION)
    expect(page).toContain('class="chart"')
    expect(Buffer.byteLength(page)).toBeLessThanOrEqual(400_000)
  })

  it.each(['dovecote-runner', 'limekiln-cushion', 'orchard-wall-throw'])(
    'tells of %s how its motif is worked, folded away under its name, with its chart',
    (name) => {
      const project = example(name)
      const page = phonePage(planProject(project), VERSION)
      const {
        id,
        name: motifName,
        rounds,
      } = project.motifs!.find(({ kind }) => kind === 'rounds') as RoundsMotif
      const part = between(page, '<details class="motif">', '</details>')
      expect(part).toContain(`<summary>${motifName ?? id}: rounds and chart</summary>`)
      const terms = project.sheet?.terms ?? project.terms ?? 'US'
      const told = [...part.matchAll(/<dt>Round (\d+)[^<]*<\/dt>\n<dd>([^<]*)<\/dd>/g)]
      expect(told.map(([, number]) => Number(number))).toEqual(rounds!.map((_, i) => i + 1))
      rounds!.forEach(({ work }, i) => {
        expect(told[i]![2]).toBe(escaped(editionText(work, project.terms ?? 'US', terms)))
      })
      expect(part).toMatch(
        /<svg class="chart" viewBox="0 0 \d+ \d+" role="img" aria-label="Symbol chart of rounds 1/,
      )
      expect(part).toContain('<h3>Key to the chart</h3>')
      // Every name in the page is there once.
      const ids = [...page.matchAll(/ id="([^"]+)"/g)].map(([, each]) => each)
      expect(new Set(ids).size).toBe(ids.length)
    },
  )

  it('has no part of motifs where nobody wrote how they are worked', () => {
    expect(phonePage(planProject(example('pond-edge-bag')), VERSION)).not.toContain('class="motif"')
  })

  it('takes names as text, whatever stands in them', () => {
    const title = '</title></script><script>alert(1)</script>&"\'<b>'
    const project: Project = { ...example('saltmarsh-bag'), title }
    const page = phonePage(planProject(project), VERSION)
    expect(page).not.toContain('<script>alert')
    expect(page).not.toContain('<b>')
    expect(dataOf(page).title).toBe(title)
    expect(page.match(/<\/script>/g)).toHaveLength(2)
  })

  it('knows what is made, and draws no tick that cannot be taken away', () => {
    const project = example('market-stall-throw')
    const bare = phonePage(planProject(project), VERSION)
    const marked = phonePage(planProject({ ...project, made: { '1,1': '', '1,2': '' } }), VERSION)
    expect(dataOf(bare).made).toEqual([])
    expect(dataOf(marked).made).toEqual(['1,1', '1,2'])
    expect(marked).toContain('2 of 238 motifs made')
    expect(dataOf(marked).drawing).toEqual(dataOf(bare).drawing)
  })
})
