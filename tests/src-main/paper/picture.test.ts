import { SaxesParser } from 'saxes'
import { describe, expect, it } from 'vitest'
import type { PictureChoice } from '../../../shared-types/pictures'
import type { Plan } from '../../../shared-types/plan'
import { pictureMotif } from '../../../src-core/figures/motif-picture'
import { framedPicture } from '../../../src-core/figures/picture-frame'
import { wholePicture } from '../../../src-core/figures/whole-picture'
import { planProject } from '../../../src-core/plan'
import { listExamples } from '../../../src-main/documents/examples'
import { readProjectText } from '../../../src-main/documents/read'
import { NoSuchPictureError, renderPicture } from '../../../src-main/paper/picture'
import { flowers, planned } from './projects'
import { readPng } from './read-png'

const WHOLE: PictureChoice = { of: 'whole', format: 'png', width: 900, ground: null }
const HOSTILE = '</title><script>&"\u0001\ud800 \u05e9\u05dc\u05d5\u05dd \u{1f33c}'

function example(name: string): Plan {
  const outcome = readProjectText(listExamples().find((each) => each.name === name)!.text)
  if (outcome.kind !== 'opened') throw new Error(name)
  return planProject(outcome.project)
}

/** Where places of the plan are on its picture, in pixels: worked out from the scale, not from what was drawn. */
function onPicture(plan: Plan, ground: string | null, width: number) {
  const drawn = wholePicture(plan, { look: 'colour', plain: true })
  const frame = framedPicture(drawn, width, ground)
  const pixel = width / frame.figure.width
  const air = (frame.figure.width - drawn.width) / 2
  const down = (frame.figure.height - drawn.height) / 2
  return (x: number, y: number) => ({
    x: (air + drawn.left + x * drawn.scale) * pixel,
    y: (down + drawn.top + y * drawn.scale) * pixel,
  })
}

const elements = (svg: string): string[] => {
  const names: string[] = []
  const parser = new SaxesParser()
  parser.on('opentag', ({ name }) => names.push(name))
  parser.on('error', (error) => {
    throw error
  })
  parser.write(svg).close()
  return names
}

describe('a picture as PNG', () => {
  const plan = example('orchard-wall-throw')

  it('has the pixels that were asked for, and each yarn where its part is', async () => {
    const { bytes, width, height } = await renderPicture(plan, { ...WHOLE, ground: '#ffffff' })
    const png = readPng(bytes)
    expect([png.width, png.height]).toEqual([900, height])
    expect(width).toBe(900)
    const ratio = plan.size.height / plan.size.width
    expect(height / width).toBeGreaterThan(ratio * 0.9)
    expect(height / width).toBeLessThan(ratio * 1.1)
    expect(png.at(2, 2)).toEqual({ colour: '#ffffff', alpha: 255 })
    // The middle of every motif is in the yarn of its first part: no number stands there.
    const at = onPicture(plan, '#ffffff', 900)
    const [centre] = pictureMotif(plan)!.layers.slice(-1)
    for (const motif of plan.motifs) {
      const { x, y } = at(motif.x, motif.y)
      const way = plan.settled.colourways.find(({ id }) => id === motif.colourway)!
      const yarn = plan.settled.yarns.find(({ id }) => id === way.yarns?.[centre!.slot])!
      expect(png.at(x, y).colour).toBe(yarn.colour)
    }
  })

  it('is transparent beside and between the motifs, and the edging is in its yarn', async () => {
    const png = readPng((await renderPicture(plan, { ...WHOLE, width: 1800 })).bytes)
    const at = onPicture(plan, null, 1800)
    expect(png.at(1, 1).alpha).toBe(0)
    // A third of the way down, where three motifs leave an opening.
    const [first, second] = [plan.motifs[0]!, plan.motifs[1]!]
    const third = plan.motifs.find(({ row }) => row === 2)!
    const opening = at((first.x + second.x + third.x) / 3, (first.y + second.y + third.y) / 3)
    const row = Array.from({ length: 60 }, (_, i) => png.at(opening.x, opening.y - 30 + i).alpha)
    expect(row).toContain(0)
    const band = at(plan.size.width / 2, plan.edging!.height / 2)
    const yarn = plan.settled.yarns.find(({ id }) => id === plan.edging!.yarn)!
    expect(png.at(band.x, band.y)).toEqual({ colour: yarn.colour, alpha: 255 })
  })

  it('stands on the ground that is chosen, and is the same twice', async () => {
    const choice = { ...WHOLE, width: 300, ground: '#24527a' } as const
    const [one, two] = [await renderPicture(plan, choice), await renderPicture(plan, choice)]
    expect(readPng(one.bytes).at(3, 3)).toEqual({ colour: '#24527a', alpha: 255 })
    expect(Buffer.compare(one.bytes, two.bytes)).toBe(0)
  })

  it.each(['market-stall-throw', 'orchard-gate-garland', 'quince-wreath-cushion', 'saltmarsh-bag'])(
    'shows %s, its key and its motif',
    async (name) => {
      const other = example(name)
      for (const of of ['whole', 'map', 'key', 'motif'] as const) {
        const { bytes, height } = await renderPicture(other, { ...WHOLE, width: 200, of })
        const png = readPng(bytes)
        expect([png.width, png.height]).toEqual([200, height])
        const seen = Array.from({ length: 200 * height }, (_, i) => png.at(i % 200, Math.floor(i / 200)))
        expect(seen.some(({ alpha }) => alpha === 255)).toBe(true)
      }
    },
  )

  it('shows a motif in the colourway that is asked for', async () => {
    const { colourways, yarns } = plan.settled
    for (const way of colourways) {
      const { bytes, width, height } = await renderPicture(plan, {
        ...WHOLE,
        of: 'motif',
        colourway: way.id,
        width: 301,
      })
      const slot = pictureMotif(plan, way.motif)!.layers[1]!.slot
      const yarn = yarns.find(({ id }) => id === way.yarns?.[slot])!
      // Between the middle and the tip at 12 o'clock.
      expect(readPng(bytes).at(width / 2, height * 0.3).colour).toBe(yarn.colour)
    }
  })
})

describe('a picture as SVG', () => {
  it('is well-formed whatever the project is called, holds no text but outlines, and has the pixels', async () => {
    const { plan } = planned({ ...flowers({ columns: 3, rows: 2 }), title: HOSTILE })
    const named = {
      ...plan,
      settled: {
        ...plan.settled,
        colourways: plan.settled.colourways.map((way) => ({ ...way, name: HOSTILE })),
      },
    }
    for (const of of ['whole', 'map', 'key', 'motif'] as const) {
      const choice = { ...WHOLE, of, width: 640 }
      const svg = new TextDecoder().decode((await renderPicture(named, { ...choice, format: 'svg' })).bytes)
      const names = elements(svg)
      expect(names).not.toContain('script')
      expect(names).not.toContain('text')
      expect(svg).toMatch(/<svg [^>]*width="640" height="\d+" viewBox=/)
      // What draws pixels reads it, too.
      expect(readPng((await renderPicture(named, choice)).bytes).width).toBe(640)
    }
  })

  it('shows the chart of a motif in written rounds', async () => {
    const plan = example('orchard-wall-throw')
    const choice = { ...WHOLE, of: 'chart', motif: 'leaf', format: 'svg' } as const
    const svg = new TextDecoder().decode((await renderPicture(plan, choice)).bytes)
    expect(svg).toContain('<title>Leaf: symbol chart</title>')
    const dark = readPng((await renderPicture(plan, { ...choice, format: 'png', width: 400 })).bytes)
    expect(dark.at(0, 0).alpha).toBe(0)
  })
})

describe('a picture that cannot be drawn', () => {
  const plan = example('orchard-wall-throw')
  const measured = example('lantern-table-mat')
  it.each([
    [plan, { ...WHOLE, of: 'motif', motif: 'rose' }, /no motif rose is placed; there are: layered/],
    [plan, { ...WHOLE, of: 'motif', colourway: 'z' }, /no colourway z here/],
    [plan, { ...WHOLE, of: 'chart', motif: 'rose' }, /no motif rose; there are/],
    [measured, { ...WHOLE, of: 'chart', motif: 'star' }, /a chart needs written rounds/],
    [plan, { ...WHOLE, width: 12_000 }, /× .* pixels are too many; it can be 5,\d+ pixels wide/],
  ] as const)('is told (%#)', async (of, choice, words) => {
    await expect(renderPicture(of, choice)).rejects.toThrow(NoSuchPictureError)
    await expect(renderPicture(of, choice)).rejects.toThrow(words)
  })
})
