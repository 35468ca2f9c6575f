/** `petalyard read --out`: a project of the text of a pattern. */
import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { newFolder, petalyard } from './sample'

const ROUNDS = `With A, ch 4, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of ch-3. (12 dc)
Rnd 2: With B, ch 3, dc in same st, 2 dc in each dc around; join. (24 dc)
`
const PAGE = `Meadow Wheel
Yarn: DK cotton in Yellow (A) and White (B), 50 g / 125 m
Hook: 4 mm
Gauge: 16 dc = 4 in

${ROUNDS}`

let folder = ''
const file = (name: string) => join(folder, name)
beforeAll(async () => {
  folder = await newFolder()
  await writeFile(file('wheel.txt'), PAGE)
  await writeFile(
    file('bare.txt'),
    'Rnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: Inc in each st around. (12 sc)',
  )
  await writeFile(file('letter.txt'), 'Dear reader,\n\nthank you for the lovely afternoon.')
  await writeFile(file('wrong.txt'), ROUNDS.replace('(24 dc)', '(26 dc)'))
})
const projectIn = async (name: string) => JSON.parse(await readFile(file(name), 'utf8')) as Project

describe('read --out', () => {
  it('writes a project with rounds, hook, gauge and yarns, once', async () => {
    const ran = await petalyard('read', file('wheel.txt'), '--out', file('wheel.petalyard'))
    expect(ran).toMatchObject({ code: 0, err: '' })
    expect(ran.out).toMatch(/^2 +24 /m)
    expect(ran.out).toContain(`Wrote ${file('wheel.petalyard')}`)
    const project = await projectIn('wheel.petalyard')
    expect(project).toMatchObject({
      terms: 'US',
      motifs: [
        {
          name: 'Meadow Wheel',
          gauge: { hook: 4, stitch: 'dc', stitches: 16 },
          rounds: [{ slot: 'color A' }, { slot: 'color B' }],
        },
      ],
      yarns: [{ ballGrams: 50, ballMetres: 125 }, { ballGrams: 50 }],
      colourways: [{ yarns: { 'color A': 'y1', 'color B': 'y2' } }],
    })
    // As in the window: laid out for a first size, in the units of the page, and every colour in its yarn.
    expect(project).toMatchObject({
      title: 'Meadow Wheel',
      units: 'imperial',
      layout: { target: { width: 1016, height: 1270 }, cells: { fill: { colourways: ['A'] } } },
    })
    const { motifs, yarns, findings } = planProject(project)
    expect(motifs.length).toBeGreaterThan(50)
    expect(yarns.map(({ id, toBuy }) => [id, (toBuy ?? 0) > 0])).toEqual([
      ['y1', true],
      ['y2', true],
    ])
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([])
    for (const command of ['check', 'measure', 'plan'])
      expect((await petalyard(command, file('wheel.petalyard'))).code, command).toBe(0)
    expect((await petalyard('chart', file('wheel.petalyard'), '--out', file('wheel.svg'))).code).toBe(0)

    const again = await petalyard('read', file('wheel.txt'), '--out', file('wheel.petalyard'))
    expect(again).toMatchObject({ code: 4, out: '' })
    expect(again.err).toContain('is there already')
    expect(
      (await petalyard('read', file('wheel.txt'), '-o', file('wheel.petalyard'), '--force', '--json')).out,
    ).not.toContain('Wrote')
  })

  it('takes the name of the file where the page has none, and needs no yarns', async () => {
    expect((await petalyard('read', file('bare.txt'), '--out', file('bare.petalyard'))).code).toBe(0)
    expect(await projectIn('bare.petalyard')).toMatchObject({ motifs: [{ name: 'bare' }] })
    expect((await petalyard('plan', file('bare.petalyard'), '--json')).code).toBe(0)
  })

  it('writes what a text with a mistake says, and still tells it', async () => {
    const ran = await petalyard('read', file('wrong.txt'), '--out', file('wrong.petalyard'))
    expect(ran.code).toBe(1)
    expect((await projectIn('wrong.petalyard')).motifs).toHaveLength(1)
  })

  it('refuses what makes no project', async () => {
    const out = file('never.petalyard')
    expect(await petalyard('read', file('letter.txt'), '--out', out)).toMatchObject({ code: 1 })
    expect(await petalyard('read', file('bare.txt'), '--out', file('bare.txt'))).toMatchObject({ code: 2 })
    expect(await petalyard('read', file('bare.txt'), '--out', out, '--after', '{"ring": 6}')).toMatchObject({
      code: 2,
      out: '',
    })
    await expect(readFile(out)).rejects.toThrow()
  })
})

describe('a text in place of a project', () => {
  it.each(['chart', 'measure', 'check'])('is sent to read by %s', async (command) => {
    const out = command === 'chart' ? ['--out', file('x.svg')] : []
    const ran = await petalyard(command, file('wheel.txt'), ...out)
    expect(ran).toMatchObject({ code: 3, out: '' })
    expect(ran.err).toContain('"petalyard read"')
  })

  it('is no damaged project', async () => {
    await writeFile(file('torn.petalyard'), '{"format": "petalyard-project", "version": 1,')
    expect((await petalyard('check', file('torn.petalyard'))).err).not.toContain('petalyard read')
  })
})
