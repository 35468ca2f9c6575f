import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Plan } from '../../../shared-types/plan'
import type { Project } from '../../../shared-types/project'
import { newFolder, petalyard, writeProject } from './sample'

const PROJECT: Project = {
  format: 'petalyard-project',
  version: 1,
  title: 'Shell cushion',
  yarns: [{ id: 'y1', name: 'Brick', ballGrams: 50, ballMetres: 125, price: 4 }],
  motifs: [
    {
      id: 'm1',
      name: 'Disc',
      kind: 'measured',
      outline: 'round',
      across: 40,
      slots: [{ slot: 'all', grams: 2 }],
      minutes: 10,
    },
  ],
  colourways: [{ id: 'a', code: 'A', motif: 'm1', yarns: { all: 'y1' } }],
  layout: {
    kind: 'applique',
    panel: { shape: 'rectangle', width: 450, height: 450, allowance: 15 },
    clearance: 5,
    items: [
      { motif: 'm1', colourway: 'a', x: 120, y: 80, turn: 15 },
      { motif: 'm1', colourway: 'a', x: 163, y: 80, turn: 0, flipped: true },
    ],
  },
}

describe('an appliqué on the command line', () => {
  let file = ''
  beforeAll(async () => {
    file = await writeProject(PROJECT)
  })

  it('plan tells panel, distances, sewing thread and every item', async () => {
    const ran = await petalyard('plan', file)
    expect(ran).toMatchObject({ code: 0, err: '' })
    for (const words of [
      'Panel      rectangle, 45 × 45 cm, with a seam allowance of 15 mm',
      '3 mm between items at the closest, 60 mm to the edge at the closest',
      'of sewing thread, tails included',
      '   2  Disc   A       163 mm  80 mm    0°  wrong side up',
    ])
      expect(ran.out).toContain(words)
    expect(ran.out).toMatch(/are 3 mm apart; the\s+minimum gap is 5 mm/)
    for (const line of ran.out.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
  })

  it('plan --json has the clearances, and places as in the file', async () => {
    const plan = JSON.parse((await petalyard('plan', file, '--json')).out) as Plan
    expect(plan.clearances!.items).toBeCloseTo(3, 2)
    expect(plan.clearances!.edge).toBeCloseTo(60, 2)
    expect(plan.size).toMatchObject({ width: 450, height: 450 })
    expect(plan.motifs).toMatchObject([
      { id: '1,1', x: 120, y: 80, turn: 15, motif: 'm1', colourway: 'a', flipped: false },
      { id: '1,2', x: 163, y: 80, turn: 0, motif: 'm1', colourway: 'a', flipped: true },
    ])
    expect(plan).not.toHaveProperty('accounts')
  })

  it('check ends with 1 where something reaches into the seam, and names it', async () => {
    const layout = { ...PROJECT.layout, items: [{ motif: 'm1', colourway: 'a', x: 30, y: 80 }] }
    const ran = await petalyard('check', await writeProject({ ...PROJECT, layout }))
    expect(ran.code).toBe(1)
    expect(ran.out).toContain('item 1 (Disc) reaches 5 mm into the seam allowance of 15 mm.')
  })

  it('check refuses hostile path data in one clear line', async () => {
    const panel = { shape: 'outline', path: '<svg onload="alert(1)"><path d="M0 0H9V9Z"/></svg>' }
    const layout = { ...PROJECT.layout, panel }
    const ran = await petalyard('check', await writeProject({ ...PROJECT, layout }))
    expect(ran.code).toBe(1)
    expect(ran.out.split('\n').filter((line) => line.includes('applique/path-markup'))).toHaveLength(1)
    expect(ran.out).not.toContain('alert')
  })

  it('map writes the template, reversed when asked, and nothing without a panel', async () => {
    const folder = await newFolder()
    const written = new Set<string>()
    for (const [i, options] of [[], ['--reverse'], ['--paper', 'Letter']].entries()) {
      const out = join(folder, `${i}.pdf`)
      const ran = await petalyard('map', file, '--out', out, ...options)
      expect(ran).toMatchObject({ code: 0, err: '' })
      written.add((await readFile(out)).toString('base64'))
    }
    expect(written.size).toBe(3)
    const layout = { ...PROJECT.layout, panel: { shape: 'circle' } }
    const out = join(folder, 'none.pdf')
    const ran = await petalyard('map', await writeProject({ ...PROJECT, layout }), '--out', out)
    expect(ran.code).toBe(1)
    expect(ran.err).toContain('diameter of the panel: found nothing, expected 20 mm to 300 cm.')
    await expect(readFile(out)).rejects.toThrow('ENOENT')
  })
})
