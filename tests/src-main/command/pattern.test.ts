/** The pattern of one motif alone: what a buyer must find on it, and nothing of a blanket. The flower is our own. */
import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { motifAlone, motifsAlone } from '../../../src-core/plans/alone'
import { planProject } from '../../../src-core/plan'
import { readPdf } from '../paper/read-pdf'
import { newFolder, petalyard } from './sample'

const ROUNDS = [
  'Ch 1, 12 sc in ring; join with sl st in first sc. (12 sc)',
  '*(Sc, hdc, 2 dc, hdc, sc) in next sc, sl st in next sc; rep from * 5 more times. Fasten off. (6 petals)',
]
const PROJECT: Project = {
  ...{ format: 'petalyard-project', version: 1, title: 'Lower Meadow', designer: 'Wren Hollis' },
  ...{ units: 'metric', terms: 'US', sheet: { paper: 'A4', style: 'ink' } },
  notes: 'For the bench in the porch.',
  pattern: { line: 'A throw of stars', skill: 'easy', copyright: '© 2026 Wren Hollis. For your own use.' },
  gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 3.5 },
  yarns: [
    { id: 'y1', name: 'Saffron', colour: '#eeb33b', ballGrams: 50, ballMetres: 115, price: 4.5, onHand: 120 },
    { id: 'y2', name: 'Fern', colour: '#5f8a4a', ballGrams: 50, ballMetres: 115 },
  ],
  motifs: [
    {
      ...{ id: 'flower', name: 'Meadow Star', kind: 'rounds', foundation: { ring: 'adjustable' } },
      rounds: ROUNDS.map((work) => ({ slot: 'petals', work })),
    },
    {
      ...{ id: 'leaf', name: 'Leaf', kind: 'rounds', foundation: { chain: 8 } },
      goesWith: { motif: 'flower', each: 2 },
      rounds: [
        {
          slot: 'leaf',
          work: 'Sc in 2nd ch from hook, hdc in next ch, dc in next 3 ch, hdc in next ch, 3 sc in last ch; working along other side, hdc in next ch, dc in next 3 ch, hdc in next ch, sc in last ch. (15 sts)',
        },
      ],
    },
    {
      ...{ id: 'square', name: 'Hedge Square', kind: 'measured', outline: 'square', side: 60 },
      slots: [{ slot: 'all', grams: 3 }],
    },
  ],
  colourways: [
    { id: 'c1', code: 'A', motif: 'flower', yarns: { petals: 'y1' } },
    { id: 'c2', code: 'B', motif: 'leaf', yarns: { leaf: 'y2' } },
    { id: 'c3', code: 'C', motif: 'square', yarns: { all: 'y2' } },
  ],
  layout: {
    ...{ kind: 'blanket', arrangement: 'straight-rows', motif: 'flower', columns: 10, rows: 12 },
    edging: { style: 'follow', rounds: ['sc'], yarn: 'y2' },
  },
  order: 'there-and-back',
  made: { '1,1': '' },
}

async function written() {
  const folder = await newFolder()
  const file = join(folder, 'meadow.petalyard')
  await writeFile(file, JSON.stringify(PROJECT))
  return { folder, file }
}
const wordsOf = async (file: string): Promise<string> =>
  (await readPdf(new Uint8Array(await readFile(file)))).pages.map(({ words }) => words).join(' ')

describe('petalyard pattern', () => {
  it('prints all that a buyer needs of one motif, and what goes with it', async () => {
    const { folder, file } = await written()
    const out = join(folder, 'star.pdf')
    expect(await petalyard('pattern', file, '--motif', 'flower', '--out', out)).toMatchObject({ code: 0 })
    const words = await wordsOf(out)
    for (const told of [
      ...[
        'Meadow Star',
        'Designed by Wren Hollis',
        'Six-petal flower,',
        'tip to tip.',
        'Easy',
        '© 2026 Wren Hollis.',
      ],
      ...['3.5 mm', '20 sc (single crochet) × 22 rows to 10 cm', 'US terms', 'Materials', 'Saffron', 'Fern'],
      ...[...ROUNDS, 'Leaf', 'Sc in 2nd ch from hook, hdc in next ch', 'half double crochet', 'Chart'],
    ])
      expect(words).toContain(told)
    for (const other of [
      'Order of work',
      'Overview',
      'Joining',
      'Edging',
      'Hedge Square',
      'For the bench in the porch',
      'A throw of stars',
      'Progress',
      'on hand',
      '4.50',
    ])
      expect(words).not.toContain(other)
    expect(words).toMatch(/Finished size \S+ mm \([^)]*\) tip to tip/)
    // One flower and two leaves, not a hundred and twenty.
    const plan = planProject(motifAlone(PROJECT, 'flower'))
    expect(plan.motifs).toHaveLength(1)
    const [saffron, fern] = plan.yarns.map(({ metres }) => metres!.high)
    const leaf = planProject(
      motifAlone({ ...PROJECT, motifs: PROJECT.motifs!.map(({ goesWith: _, ...motif }) => motif) }, 'leaf'),
    )
    expect(saffron).toBeLessThan(20)
    expect(fern! / leaf.yarns.find(({ id }) => id === 'y2')!.metres!.high).toBeGreaterThan(1.8)
  })

  it('is of the motif that is named, or of the only one', async () => {
    const { folder, file } = await written()
    const out = join(folder, 'which.pdf')
    const asks = await petalyard('pattern', file, '--out', out)
    expect(asks).toMatchObject({ code: 2 })
    expect(asks.err).toContain(
      'Say with --motif which one is meant: flower (Meadow Star) and square (Hedge Square).',
    )
    expect((await petalyard('pattern', file, '--motif', 'rose', '--out', out)).err).toContain(
      "There is no motif 'rose'",
    )
    const one = { ...PROJECT, motifs: PROJECT.motifs!.slice(0, 2) }
    await writeFile(file, JSON.stringify(one))
    expect(await petalyard('pattern', file, '--out', out)).toMatchObject({ code: 0 })
    // A project of nothing else keeps its title.
    const words = await wordsOf(out)
    for (const told of ['Lower Meadow', 'A throw of stars', 'For the bench in the porch.'])
      expect(words).toContain(told)
  })

  it('has editions, each in its terms', async () => {
    const { folder, file } = await written()
    const out = join(folder, 'editions')
    expect(
      await petalyard('pattern', file, '--motif', 'flower', '--editions', 'us,uk', '--out', out),
    ).toMatchObject({ code: 0 })
    expect(await wordsOf(join(out, 'meadow-us-right-a4-ink.pdf'))).toContain('12 sc in ring')
    expect(await wordsOf(join(out, 'meadow-uk-right-a4-ink.pdf'))).toContain('12 dc in ring')
  })
})

describe('a motif alone', () => {
  it('leaves the project as it was, and keeps what is its own', () => {
    const before = JSON.stringify(PROJECT)
    const alone = motifAlone(PROJECT, 'flower')
    expect(JSON.stringify(PROJECT)).toBe(before)
    expect(alone.motifs!.map(({ id }) => id)).toEqual(['flower', 'leaf'])
    expect(alone.colourways!.map(({ id }) => id)).toEqual(['c1', 'c2'])
    expect(alone).not.toHaveProperty('made')
    expect(motifAlone(PROJECT, 'nobody')).toBe(PROJECT)
    expect(motifsAlone(PROJECT).map(({ id }) => id)).toEqual(['flower', 'square'])
  })
})
