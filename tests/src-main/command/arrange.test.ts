import { readdir, readFile, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import type { AppliqueLayout, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { openProject } from '../../../src-main/documents'
import { newFolder, petalyard, SAMPLE, writeProject } from './sample'

const LAYOUT: AppliqueLayout = {
  kind: 'applique',
  panel: { shape: 'rectangle', width: 450, height: 450, allowance: 15 },
  clearance: 5,
  items: [{ motif: 'bud', x: 225, y: 225, turn: 0 }],
}
const PROJECT: Project & { ours: number } = {
  format: 'petalyard-project',
  version: 1,
  title: 'Sill cushion',
  ours: 7,
  motifs: [
    {
      id: 'star',
      name: 'Star',
      kind: 'measured',
      outline: 'petals',
      petals: 5,
      overTips: 60,
      overValleys: 36,
    },
    { id: 'leaf', name: 'Leaf', kind: 'measured', outline: 'leaf', length: 40, width: 18 },
    { id: 'bud', name: 'Bud', kind: 'measured', outline: 'round', across: 20 },
  ],
  colourways: [{ id: 'pale', code: 'A', motif: 'star' }],
  layout: LAYOUT,
}

describe('arrange', () => {
  let file = ''
  let out = ''
  beforeEach(async () => {
    file = await writeProject(PROJECT, 'cushion.petalyard')
    out = join(dirname(file), 'new.petalyard')
  })
  const laid = async () => {
    const opened = await openProject(out)
    if (opened.kind !== 'opened') throw new Error(opened.kind)
    return opened.project
  }
  const itemsOf = (project: Project) => (project.layout as AppliqueLayout).items!

  it('lays a wreath beside what lies there, and writes a file of its own with everything else kept', async () => {
    const before = await readFile(file, 'utf8')
    const ran = await petalyard(
      ...['arrange', file, '--wreath', '--motifs', 'star:pale,leaf', '--count', '8', '--width', '30cm'],
      ...['--out', out],
    )
    expect(ran).toMatchObject({ code: 0, err: '', out: `Wrote ${out}: 8 placed, 9 on the panel\n` })
    const project = await laid()
    expect(project).toMatchObject({ title: 'Sill cushion', ours: 7 })
    const items = itemsOf(project)
    expect(items[0]).toEqual(LAYOUT.items![0])
    expect(items[1]).toEqual({ motif: 'star', colourway: 'pale', x: 225, y: 75, turn: 0 })
    expect(items[2]).toMatchObject({ motif: 'leaf', turn: 45 })
    expect(await readFile(file, 'utf8')).toBe(before)
    expect((await readdir(dirname(file))).sort()).toEqual(['cushion.petalyard', 'new.petalyard'])
  })

  it('fills in what is not asked for: as many as keep the distance, every motif by turns', async () => {
    for (const how of [['--wreath'], ['--scatter', '--seed', '9'], ['--spray', 'top-right']]) {
      const ran = await petalyard('arrange', file, ...how, '--replace', '--force', '--out', out)
      expect(ran, how[0]!).toMatchObject({ code: 0, err: '' })
      const project = await laid()
      expect(itemsOf(project).length).toBeGreaterThanOrEqual(6)
      expect(new Set(itemsOf(project).map(({ motif }) => motif))).toEqual(new Set(['star', 'leaf', 'bud']))
      expect(planProject(project).clearances!.items).toBeGreaterThanOrEqual(4.99)
    }
  })

  it('lays a row along path data, or along a line of an SVG file', async () => {
    const path = 'M 60 120 Q 225 60 390 120'
    expect(
      await petalyard('arrange', file, '--row', path, '--motifs', 'bud', '--count', '5', '--out', out),
    ).toMatchObject({ code: 0 })
    const typed = itemsOf(await laid()).slice(1)
    expect(typed.map(({ x }) => Math.round(x!))).toEqual([
      60,
      expect.any(Number) as number,
      225,
      expect.any(Number) as number,
      390,
    ])
    const svg = join(dirname(file), 'line.svg')
    await writeFile(
      svg,
      `<svg width="450mm" viewBox="0 0 900 900"><path transform="scale(2)" d="${path}"/></svg>`,
    )
    await petalyard('arrange', file, '--row', svg, '--motifs', 'bud', '--count', '5', '--force', '--out', out)
    itemsOf(await laid())
      .slice(1)
      .forEach(({ x, y }, i) => {
        expect(Math.hypot(x! - typed[i]!.x!, y! - typed[i]!.y!)).toBeLessThan(0.1)
      })
  })

  it('scatters the same for the same seed, at most so many, as far apart as is asked', async () => {
    const scatter = async (...more: string[]) => {
      await petalyard('arrange', file, '--scatter', '--motifs', 'bud', '--out', out, '--force', ...more)
      return itemsOf(await laid()).slice(1)
    }
    const first = await scatter('--seed', '4', '--distance', '18')
    expect(await scatter('--seed', '4', '--distance', '18')).toEqual(first)
    expect(await scatter('--seed', '5', '--distance', '18')).not.toEqual(first)
    const [a, b] = [await scatter('--distance', '30', '--turn', '0', '--count', '4'), first]
    expect(a).toHaveLength(4)
    expect(a.every(({ turn }) => turn === 0)).toBe(true)
    const closest = Math.min(
      ...b.flatMap((p, i) => b.slice(i + 1).map((q) => Math.hypot(p.x! - q.x!, p.y! - q.y!))),
    )
    expect(closest).toBeGreaterThanOrEqual(38 - 0.01)
  })

  it('takes the panel out of an SVG file, in its size or by a unit that is said', async () => {
    const svg = join(dirname(file), 'bag.svg')
    await writeFile(
      svg,
      '<svg width="40cm" viewBox="0 0 800 600"><rect id="hole" width="9" height="9"/><circle id="front" cx="400" cy="300" r="290"/></svg>',
    )
    expect(await petalyard('arrange', file, '--panel', svg, '--out', out)).toMatchObject({ code: 0, err: '' })
    expect(planProject(await laid()).size.width).toBeCloseTo(290, 1)
    await writeFile(svg, '<svg viewBox="0 0 800 600"><rect id="front" width="400" height="500"/></svg>')
    const asked = await petalyard('arrange', file, '--panel', svg, '--out', out, '--force')
    expect(asked).toMatchObject({ code: 3, out: '' })
    expect(asked.err).toContain('does not say how large it is')
    expect(asked.err).toContain('--unit MM')
    const ran = await petalyard('arrange', file, '--panel', svg, '--unit', '1', '--out', out, '--force')
    expect(ran.code).toBe(0)
    expect(planProject(await laid()).size).toMatchObject({ width: 400, height: 500 })
    const other = await petalyard(
      'arrange',
      file,
      '--panel',
      svg,
      '--unit',
      '1',
      '--line',
      'back',
      '--out',
      out,
      '--force',
    )
    expect(other).toMatchObject({ code: 2 })
    expect(other.err).toContain("no line 'back'; it has front")
  })

  it.each([
    ['a program', '<svg onload="alert(1)"><path d="M0 0H9V9Z"/></svg>', 'contains a program'],
    ['entities', '<!DOCTYPE svg [<!ENTITY a "b">]><svg><path d="&a;"/></svg>', 'declares entities'],
    ['a broken file', '<svg><path d="M0 0H9V9Z"></svg>', 'cannot be read at line 1'],
    ['no drawing', '<html></html>', 'is not an SVG drawing'],
    [
      'no numbers',
      '<svg width="9mm" viewBox="0 0 9 9"><path id="p" d="M 0 0 L 1e999 0"/></svg>',
      "in path 'p': the outline has a number",
    ],
    [
      'too many',
      `<svg width="9mm" viewBox="0 0 9 9"><path d="M0 0${'l1 1'.repeat(6000)}"/></svg>`,
      'more than 5,000 corners',
    ],
    ['an endless path', `<svg><path d="${'M0 0'.padEnd(150_000)}"/></svg>`, 'at most 100,000'],
    ['bytes', '\u0000\u0001', 'it is not a text'],
  ])('refuses %s in one clear line, and writes nothing', async (_, text, words) => {
    const svg = join(dirname(file), 'hostile.svg')
    await writeFile(svg, text)
    for (const how of ['--panel', '--row']) {
      const ran = await petalyard('arrange', file, how, svg, '--out', out)
      expect(ran).toMatchObject({ code: 3, out: '' })
      expect(ran.err.trim().split('\n')).toHaveLength(1)
      expect(ran.err).toContain(words)
      expect(ran.err).not.toContain('alert(1)')
    }
    expect(await readdir(dirname(file))).not.toContain('new.petalyard')
  })

  it('never writes over a file, its own input above all, unless told to; then it keeps a copy', async () => {
    const before = await readFile(file, 'utf8')
    const refused = await petalyard('arrange', file, '--scatter', '--out', file)
    expect(refused).toMatchObject({ code: 4, out: '' })
    expect(refused.err).toContain('is there already; it was left as it is. --force replaces it.')
    expect(await readFile(file, 'utf8')).toBe(before)
    expect((await petalyard('arrange', file, '--scatter', '--out', file, '--force')).code).toBe(0)
    expect(await readFile(`${file}~`, 'utf8')).toBe(before)
    expect(
      await petalyard('arrange', file, '--wreath', '--replace', '--out', join(await newFolder(), 'no', 'x')),
    ).toMatchObject({
      code: 4,
    })
  })

  it('tells what overlaps and writes it all the same; writes nothing where nothing was laid', async () => {
    const crowded = await petalyard('arrange', file, '--wreath', '--count', '40', '--out', out)
    expect(crowded.code).toBe(1)
    expect(crowded.err).toContain('applique/overlap')
    expect(itemsOf(await laid())).toHaveLength(41)
    const small = await writeProject({
      ...PROJECT,
      layout: { ...LAYOUT, panel: { ...LAYOUT.panel, width: 40, height: 40 }, items: [] },
    })
    const none = await petalyard('arrange', small, '--scatter', '--motifs', 'star', '--out', `${small}.new`)
    expect(none).toMatchObject({ code: 1, out: '' })
    expect(none.err).toContain('there was no room: nothing was placed.')
    const bare = await writeProject({ ...PROJECT, layout: { ...LAYOUT, panel: { shape: 'circle' } } })
    const without = await petalyard('arrange', bare, '--scatter', '--out', `${bare}.new`)
    expect(without).toMatchObject({ code: 1, out: '' })
    expect(without.err).toContain('diameter of the panel')
    await expect(readFile(`${bare}.new`)).rejects.toThrow('ENOENT')
  })

  it.each([
    [[], 'nothing to place.'],
    [['--wreath', '--scatter'], 'one at a time: --wreath or --scatter'],
    [['--wreath', '--seed', '3'], '--seed says nothing to --wreath'],
    [['--count', '3'], '--count needs --wreath or --row'],
    [['--spray', 'middle'], 'top-left'],
    [['--scatter', '--motifs', 'star,rose'], "no motif 'rose'; there are star, leaf, bud"],
    [['--scatter', '--motifs', 'star:dark'], "no colourway 'dark'; there are pale"],
    [['--row', '<svg onload="x">'], 'tags, quotes or entities'],
    [['--row', 'M 0 0 L 9 9 M 1 1 L 5 5'], '2 pieces'],
    [['--row', 'M 0 0 L nowhere'], 'cannot be read at character'],
    [['--wreath', '--count', '0'], 'whole number from 1'],
    [['--wreath', '--centre', '5'], 'Two lengths'],
    [['--scatter', '--distance', 'near'], 'distance'],
    [['--scatter', '--seed', '-1'], 'seed'],
  ])('wrong use is told: %j', async (options, words) => {
    const ran = await petalyard('arrange', file, ...options, '--out', out)
    expect(ran).toMatchObject({ code: 2, out: '' })
    expect(ran.err).toContain(words)
    expect(ran.err.trim().split('\n')).toHaveLength(1)
  })

  it('is for appliqués', async () => {
    const ran = await petalyard('arrange', await writeProject(SAMPLE), '--scatter', '--out', out)
    expect(ran).toMatchObject({ code: 2 })
    expect(ran.err).toContain('this is a blanket')
  })
})
