import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { readPdf } from '../paper/read-pdf'
import { newFolder, petalyard } from './sample'

async function example(name: string): Promise<{ folder: string; file: string }> {
  const folder = await newFolder()
  const file = join(folder, 'mine.petalyard')
  await petalyard('example', name, '--out', file)
  return { folder, file }
}

describe('chart', () => {
  it('writes one motif as SVG, in its hand and terms', async () => {
    const { folder, file } = await example('orchard-wall-throw')
    const out = join(folder, 'leaf.svg')
    const ran = await petalyard('chart', file, '--motif', 'leaf', '--out', out, '--terms', 'UK')
    expect(ran).toMatchObject({ code: 0, err: '', out: `Wrote ${out}: Leaf\n` })
    const svg = await readFile(out, 'utf8')
    expect(svg).toContain('<title>Leaf: symbol chart</title>')
    expect(svg).toContain('dtr: double treble crochet')
    expect(svg).not.toContain('sc: single')
  })

  it('writes every motif in written rounds as a page of a PDF', async () => {
    const { folder, file } = await example('orchard-wall-throw')
    const out = join(folder, 'charts.pdf')
    expect(await petalyard('chart', file, '--out', out)).toMatchObject({ code: 0, err: '' })
    const { pages: read } = await readPdf(new Uint8Array(await readFile(out)))
    const pages = read.map((page) => page.words)
    expect(pages).toHaveLength(3)
    expect(pages[0]).toContain('Layered six-petal flower')
    expect(pages[0]).toContain('Rounds 4 and 5, worked behind')
    expect(pages[1]).toContain('adjustable ring (magic ring)')
    expect(pages[2]).toContain('Leaf')
  })

  it('draws one repeat, larger, and says where that would be no help', async () => {
    const { folder, file } = await example('dovecote-runner')
    const out = join(folder, 'repeat.pdf')
    const ran = await petalyard('chart', file, '--motif', 'rosette', '--repeat', '--out', out)
    expect(ran).toMatchObject({ code: 0, err: '' })
    const { pages } = await readPdf(new Uint8Array(await readFile(out)))
    expect(pages[0]!.words).toContain('One of 8 repeats, larger. Rounds 1 to 4')
    expect(pages[0]!.words).toContain('× 8')
    const whole = await example('limekiln-cushion')
    const small = join(whole.folder, 'whole.pdf')
    const kept = await petalyard('chart', whole.file, '--repeat', '--out', small)
    expect(kept.code).toBe(0)
    expect(kept.err).toContain('one repeat would hardly be larger, so the whole chart is drawn.')
    expect((await readPdf(new Uint8Array(await readFile(small)))).pages[0]!.words).not.toContain('repeats')
  })

  it('asks which one where an SVG would hold several, and tells what there is', async () => {
    const { folder, file } = await example('orchard-wall-throw')
    const several = await petalyard('chart', file, '--out', join(folder, 'x.svg'))
    expect(several).toMatchObject({ code: 2, out: '' })
    expect(several.err).toContain('--motif from layered, blossom, leaf')
    const none = await petalyard('chart', file, '--out', join(folder, 'x.svg'), '--motif', 'rose')
    expect(none.err).toContain('there is no motif rose; there are: layered, blossom, leaf.')
  })

  it('refuses other endings, the project itself, and measured motifs', async () => {
    const { folder, file } = await example('lantern-table-mat')
    expect((await petalyard('chart', file, '--out', join(folder, 'x.png'))).code).toBe(2)
    const measured = await petalyard('chart', file, '--out', join(folder, 'x.svg'), '--motif', 'star')
    expect(measured).toMatchObject({ code: 2, out: '' })
    expect(measured.err).toContain('a chart needs written rounds')
    const all = await petalyard('chart', file, '--out', join(folder, 'x.pdf'))
    expect(all).toMatchObject({ code: 1, out: '' })
    expect(all.err).toContain('no written rounds to draw')
  })

  it('says when it cannot write', async () => {
    const { folder, file } = await example('limekiln-cushion')
    expect((await petalyard('chart', file, '--out', join(folder, 'no', 'x.pdf'))).code).toBe(4)
  })
})

describe('measure', () => {
  it('tells how each round lies in words, and stitches in the terms of the project', async () => {
    const { file } = await example('limekiln-cushion')
    const ran = await petalyard('measure', file)
    expect(ran.out).toMatch(/Round\s+Across\s+Stitches\s+Fullness\s+How it lies/)
    expect(ran.out).toMatch(/^\s+4\s.*48\s.*lies flat$/m)
    const runner = await example('dovecote-runner')
    const uk = await petalyard('measure', runner.file)
    expect(uk.out).toMatch(/32 tr/)
    expect(uk.out).not.toMatch(/ sc\b/)
  })
})
