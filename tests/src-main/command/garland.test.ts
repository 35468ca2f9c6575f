import { readFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { listExamples } from '../../../src-main/documents'
import { readPdf } from '../paper/read-pdf'
import { petalyard, writeProject } from './sample'

const text = listExamples().find(({ name }) => name === 'orchard-gate-garland')!.text
const example = JSON.parse(text) as { layout: { kit?: object; spacing: object } }
const file = () => writeProject(example, 'garland.petalyard')

describe('a garland kit on the command line', () => {
  it('plan --json has the fields of the contract', async () => {
    const ran = await petalyard('plan', await file(), '--json')
    expect(ran).toMatchObject({ code: 0, err: '' })
    const plan = JSON.parse(ran.out) as Record<string, unknown> & {
      items: object[]
      kit: { perKit: object[] }
    }
    expect(plan).toMatchObject({
      cord: { length: expect.any(Number) as number, chains: expect.any(Number) as number },
      swags: { a: expect.any(Number) as number, length: expect.any(Number) as number },
      kit: { costPerKit: expect.any(Number) as number, price: expect.any(Number) as number },
    })
    expect(Object.keys(plan.items[0]!)).toEqual(
      expect.arrayContaining(['x', 'y', 'turn', 'along', 'motif', 'colourway']),
    )
    expect(Object.keys(plan.kit.perKit[0]!)).toEqual(['yarn', 'grams', 'metres'])
    expect(ran.out).not.toMatch(/-0[,\s]|NaN|Infinity/)
  })

  it('plan tells cord, swags, what hangs where, kit and price in 80 columns', async () => {
    const ran = await petalyard('plan', await file(), '--order')
    expect(ran.out).toContain('in 3 swags of 70 cm each, 110 mm deep: a wall of 210 cm')
    expect(ran.out).toMatch(/^ 2 {2}Six-petal bloom .* sc in petal 1, ch 7, sc in next petal$/m)
    expect(ran.out).toMatch(/^Price {12}€\d+\.\d\d before tax, €\d+\.\d\d with €\d+\.\d\d of tax in it$/m)
    for (const line of ran.out.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
  })

  it.each([
    ['materials', 'yarn,grams,'],
    ['order', 'number,row,'],
    ['cord', 'number,what,colourway,'],
    ['kit', 'kind,what,in one kit,'],
    [
      'purchase',
      'what,fibre,dye lot,grams each,metres each,how many,on hand,to order,grams in all,grams left over,price,cost,currency',
    ],
  ])('plan --csv %s prints that list', async (list, heading) => {
    const ran = await petalyard('plan', await file(), '--csv', list)
    expect(ran).toMatchObject({ code: 0, err: '' })
    expect(ran.out.startsWith(heading)).toBe(true)
    expect(ran.out.endsWith('\r\n')).toBe(true)
    const widths = ran.out.trimEnd().split('\r\n')
    expect(list === 'order' ? widths.length : widths.length > 2).toBeTruthy()
  })

  it.each([
    ['card', 1],
    ['packing', 1],
    ['labels', 1],
  ])('map --sheets %s writes that alone', async (sheet, count) => {
    const path = await file()
    const out = join(dirname(path), `${sheet}.pdf`)
    const ran = await petalyard('map', path, '--out', out, '--sheets', sheet)
    expect(ran).toMatchObject({ code: 0, err: '' })
    expect((await readPdf(new Uint8Array(await readFile(out)))).pages).toHaveLength(count)
  })

  it('map --labels run writes a label for each kit; what there is none of ends with 2', async () => {
    const path = await file()
    const out = join(dirname(path), 'labels.pdf')
    expect(await petalyard('map', path, '--out', out, '--labels', 'run')).toMatchObject({ code: 0 })
    expect((await readPdf(new Uint8Array(await readFile(out)))).pages.length).toBeGreaterThan(1)
    const without = await writeProject({ ...example, layout: { ...example.layout, kit: undefined } })
    const ran = await petalyard('map', without, '--out', out, '--sheets', 'packing')
    expect(ran.code).toBe(2)
    expect(ran.err).toContain("there is no sheet 'packing' of this project: it is for layouts with a kit")
    expect(await petalyard('map', path, '--out', out, '--sheets', 'cover')).toMatchObject({ code: 2 })
  })

  it('counts yarn, hooks and everything else of a batch with what is to spare', async () => {
    const kit = { ...example.layout.kit, count: 25, sparePercent: 5, extras: [{ name: 'hook', price: 1 }] }
    const path = await writeProject({ ...example, layout: { ...example.layout, kit } })
    const { kit: told } = JSON.parse((await petalyard('plan', path, '--json')).out) as {
      kit: { perKit: { grams: number }[] }
    }
    const { out } = await petalyard('plan', path)
    expect(out).toMatch(/^hook +× 1 +× 27 /m)
    const grams = told.perKit[0]!.grams
    expect(out).toMatch(new RegExp(` ${grams} g .* ${(grams * 27).toLocaleString('en-US')} g `))
  })

  it('the purchase list adds up to the cost of the run', async () => {
    const ran = await petalyard('plan', await file(), '--csv', 'purchase')
    const planned = JSON.parse((await petalyard('plan', await file(), '--json')).out) as {
      kit: { runCost: number }
    }
    const costs = ran.out
      .trimEnd()
      .split('\r\n')
      .slice(1)
      .map((line) => Number(line.split(',').at(-2)))
    expect(costs.reduce((sum, cost) => sum + cost, 0)).toBeCloseTo(planned.kit.runCost, 6)
  })

  it('ends with 2 for a list that there is none of', async () => {
    const without = await writeProject({ ...example, layout: { ...example.layout, kit: undefined } })
    expect(await petalyard('plan', without, '--csv', 'kit')).toMatchObject({ code: 2, out: '' })
    const nothing = await writeProject({ ...example, layout: undefined })
    expect(await petalyard('plan', nothing, '--csv', 'cord')).toMatchObject({ code: 2, out: '' })
    expect(await petalyard('plan', without, '--csv', 'colours')).toMatchObject({ code: 2 })
    expect(await petalyard('plan', without, '--csv', 'cord', '--json')).toMatchObject({ code: 2 })
  })

  it('fit says that it is for blankets', async () => {
    const ran = await petalyard('fit', await file(), '--width', '1000', '--height', '1000')
    expect(ran.code).toBe(1)
    expect(ran.out).toContain('only a blanket is fitted to a size; this is a garland.')
  })

  it('check tells an impossible margin and ends with 1', async () => {
    const kit = { ...example.layout.kit, marginPercent: 100 }
    const ran = await petalyard(
      'check',
      await writeProject({ ...example, layout: { ...example.layout, kit } }),
    )
    expect(ran.code).toBe(1)
    expect(ran.out).toMatch(/^error {4}kit\/margin +layout\.kit\.marginPercent: a margin of 100 %/m)
  })
})
